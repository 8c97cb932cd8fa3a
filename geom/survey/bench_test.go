package survey

import (
	"fmt"
	"math"
	"testing"

	"leafwright/geom/fit"
)

// readings gives count readings of one door: the card's, and those again.
func readings(count int) []Reading {
	s := simulate(7)
	d := s.door()
	card := Card(math.Round(d.Frame.LatchJamb.At(1000)), math.Round(d.Frame.Head.At(300)), 2)
	for len(card) < count {
		card = append(card, card...)
	}
	return s.read(&d, card[:count])
}

func BenchmarkAdjust(b *testing.B) {
	for _, count := range []int{10, 20, 28, 40, 80} {
		rs := readings(count)
		b.Run(fmt.Sprint(count, " readings"), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Adjust(rs)
			}
		})
	}
}

func BenchmarkAdjustHung(b *testing.B) {
	s := simulate(7)
	d := s.door()
	rs := readings(28) // and 12 gaps make 40
	var truth fit.Fit
	fit.EvaluateClosed(&truth, &d)
	rs = append(rs, s.read(&d, feelers(&truth))...)
	for b.Loop() {
		Adjust(rs)
	}
}

func BenchmarkGaps(b *testing.B) {
	for _, count := range []int{20, 40, 80} {
		res := Adjust(readings(count))
		b.Run(fmt.Sprint(count, " readings"), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				res.Gaps()
			}
		})
	}
}

func BenchmarkSwing(b *testing.B) {
	res := Adjust(readings(40))
	for b.Loop() {
		res.Swing()
	}
}

func BenchmarkNext(b *testing.B) {
	g := Adjust(readings(40)).Gaps()
	for b.Loop() {
		g.NextForTightest()
	}
}

func BenchmarkBinds(b *testing.B) {
	g := Adjust(readings(40)).Gaps()
	for b.Loop() {
		g.Binds(fit.LatchSide)
	}
}

// The same as BenchmarkAdjustHung with the gaps read after a move.
func BenchmarkAdjustMade(b *testing.B) {
	s := simulate(7)
	d := s.door()
	made := planed(2)
	then := made(d, 1)
	var truth fit.Fit
	fit.EvaluateClosed(&truth, &then)
	rs := append(readings(28), s.read(&then, feelers(&truth))...)
	for i := range rs[28:] {
		rs[28+i].After = 1
	}
	for b.Loop() {
		AdjustMade(rs, made)
	}
}

// One step of the swing, of which a page does as many as it has time for.
func BenchmarkSwingStep(b *testing.B) {
	res := Adjust(readings(40))
	w := res.SwingWork(nil)
	w.Step()
	for b.Loop() {
		if w.Step() {
			w = res.SwingWork(nil)
			w.Step()
		}
	}
}
