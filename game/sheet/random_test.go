package sheet_test

import (
	"math/rand/v2"
	"testing"

	"leafwright/game"
	"leafwright/game/internal/demos"
	"leafwright/game/measure"
	"leafwright/game/sheet"
	"leafwright/game/words"
	"leafwright/geom"
	"leafwright/geom/trim"
)

// randomMove gives some move of a kind on the job's door, its numbers like those a person
// types: to the hundredth of a mm.
func randomMove(r *rand.Rand, j *game.Job, spec *trim.Spec) trim.Move {
	some := func(lo, hi float64) float64 { return float64(int((lo+(hi-lo)*r.Float64())*100)) / 100 }
	m := j.NewMove(spec.Kind)
	if len(spec.Edges) > 0 {
		m.Edge = spec.Edges[r.IntN(len(spec.Edges))]
	}
	if spec.Needs&trim.NeedFirst != 0 && m.Kind != trim.Reuse {
		m.First = max(spec.Amount.Lo, min(spec.Amount.Hi, m.First*some(0.2, 3)))
		if m.First == 0 {
			m.First = some(0, 2)
		}
	}
	if spec.Needs&trim.NeedLast != 0 {
		m.Last = max(spec.Amount.Lo, min(spec.Amount.Hi, some(0, 6)))
		if m.Kind == trim.Splice {
			m.Last = some(8, 20)
		}
	}
	if spec.Needs&trim.NeedHinge != 0 {
		m.Hinge = r.IntN(len(j.Door.Hinges) + 1)
	}
	if spec.Needs&trim.NeedOn != 0 {
		m.On = []trim.Part{trim.OnLeaf, trim.OnJamb, trim.OnBoth}[r.IntN(3)]
	}
	if spec.Needs&trim.NeedSpan != 0 && r.IntN(2) == 0 {
		m.From = some(0, 400)
		m.To = m.From + some(50, 300)
	}
	if spec.Needs&trim.NeedLine != 0 {
		end := 1900.0
		if !m.Edge.Upright() {
			end = 700
		}
		m.Line = geom.Through(some(0, 50), some(0, 4), end/3, some(0, 4), end*0.6, some(0, 4), end, some(0, 4))
	}
	if spec.Needs&trim.NeedAngle != 0 {
		m.Angle = geom.Angle(some(-2, 6)) * geom.Degree
	}
	if m.Kind == trim.Rehinge {
		m.Plates = some(60, 120)
	}
	return m
}

// Options of random moves on random demos are carried out from their sheets as the named
// ones are; every sheet of them is laid out.
func TestCarryingOutAtRandom(t *testing.T) {
	all := demos.All(t)
	r := rand.New(rand.NewPCG(7, 26))
	done := 0
	for n := range 150 {
		j := all[r.IntN(len(all))].Clone()
		if game.Rated(&j) {
			continue
		}
		o := game.Option{Name: "Random"}
		for range 1 + r.IntN(5) {
			o.Moves = append(o.Moves, randomMove(r, &j, &trim.Kinds[r.IntN(len(trim.Kinds))]))
		}
		j.Options = []game.Option{o}
		for _, s := range j.Try(0).Steps {
			if s.Why == nil {
				done++
			}
		}
		unit := measure.Unit(n % 2)
		carry(t, &j, 0, unit)
		for _, kind := range sheet.Kinds {
			if kind == sheet.Client && n%10 > 0 {
				continue // whose choices take longer
			}
			if _, err := sheet.Pages(&sheet.Ask{Job: &j, Options: []int{0}, Kind: kind, Paper: sheet.Papers[1], Unit: unit, Words: words.US}); err != nil {
				t.Error(err)
			}
		}
		if t.Failed() {
			t.Fatalf("at the %d-th: %+v", n, o.Moves)
		}
	}
	if done < 200 {
		t.Errorf("only %d moves were done", done)
	}
}
