package survey

import (
	"math"
	"slices"
	"testing"

	"leafwright/geom"
)

// A slip in a job where all was read, to the whole or the half millimetre: the
// reading is named and left out, and what it probably was comes first among the
// guesses.
func TestSlips(t *testing.T) {
	d := square()
	d.Floor.Heights[0] = []float64{0, -8}
	d.Frame.LatchFront = geom.Through(0, 0, 2000, 4)
	d.Leaf.Top = geom.Through(0, 1990, 792, 1981)
	card := whole(&d)
	sound := slices.Clone(card)
	for i := range sound {
		sound[i].Value = math.Round(2*Expect(&d, sound[i])) / 2
	}
	for _, row := range []struct {
		situation string
		kind      Kind
		side      Side
		spoil     func(float64) float64
		want      SlipKind
		righted   float64
	}{
		{"two figures changed places", LeafDiagonal, Falling, func(float64) float64 { return 2124 }, Transposed, 2142},
		{"tape held at its 100 mark", LeafWidth, "", func(v float64) float64 { return v + 100 }, WrongZero, 792},
		{"tape hooked a centimetre in", LeafHeight, "", func(v float64) float64 { return v - 10 }, WrongZero, 1989.5},
		{"point slipped", JambPlumbAcross, Latch, func(v float64) float64 { return 10 * v }, PointSlipped, 4},
		{"sign", FloorSlope, "", func(v float64) float64 { return -v }, WrongSign, -7},
		{"the other diagonal", LeafDiagonal, Rising, func(float64) float64 { return 2142 }, OtherDiagonal, 2133.5},
	} {
		t.Run(row.situation, func(t *testing.T) {
			rs := slices.Clone(sound)
			i := slices.IndexFunc(rs, func(r Reading) bool { return r.Kind == row.kind && r.Side == row.side })
			was := rs[i].Value
			rs[i].Value = row.spoil(was)
			res := Adjust(rs)
			j := res.Readings[i]
			if j.State != Suspect {
				t.Fatalf("%.2f for %.2f: state %d, standardised %.1f, doubts %v", rs[i].Value, was, j.State, j.Standardised, res.Doubts)
			}
			if len(j.Slips) == 0 || j.Slips[0].Kind != row.want || math.Abs(j.Slips[0].Value-row.righted) > 1.5 {
				t.Errorf("%.2f for %.2f: guesses %v, want %q, %.1f", rs[i].Value, was, j.Slips, row.want, row.righted)
			}
			if math.Abs(j.Fitted-was) > 1.5 || math.Abs(j.Residual-(rs[i].Value-j.Fitted)) > 1e-9 {
				t.Errorf("fitted %.2f, truly %.2f", j.Fitted, was)
			}
			for k, other := range res.Readings {
				if k != i && other.State != Used {
					t.Errorf("%s %s: state %d", other.Kind, other.Side, other.State)
				}
			}
		})
	}
	t.Run("none", func(t *testing.T) {
		for _, j := range Adjust(sound).Readings {
			if j.State != Used || len(j.Slips) > 0 {
				t.Errorf("%s %s: state %d", j.Kind, j.Side, j.State)
			}
		}
	})
	t.Run("inches for millimetres", func(t *testing.T) {
		rs := append(plainLeast(), Reading{Kind: RebateDepth, Side: Hinge, At: 900, Value: 42}, Reading{Kind: RebateDepth, Side: Hinge, At: 930, Value: 41.7},
			Reading{Kind: RebateDepth, Side: Hinge, At: 960, Value: 42}, Reading{Kind: RebateDepth, Side: Hinge, At: 940, Value: 5}, Reading{Kind: HingeClosed, Value: 6})
		rs[10].Value = 42 / 25.4 * 4 // not an inch figure: no such guess
		if j := Adjust(rs).Readings[10]; j.State != Suspect || len(j.Slips) > 0 {
			t.Errorf("state %d, guesses %v", j.State, j.Slips)
		}
		rs[7].Value, rs[8].Value, rs[9].Value = 139.7, 139.5, 139.7
		rs[10].Value = 5.5 // inches
		if j := Adjust(rs).Readings[10]; j.State != Suspect || len(j.Slips) == 0 || j.Slips[0].Kind != Inches {
			t.Errorf("state %d, guesses %v", j.State, j.Slips)
		}
	})
}

// Two readings of one thing that contradict each other: neither is named, both are
// doubted, and the shape between them is known to no better than they differ.
func TestContradiction(t *testing.T) {
	rs := append(plainLeast(), Reading{Kind: LeafWidth, At: 1020, Value: 772})
	res := Adjust(rs)
	if len(res.Doubts) != 1 || !slices.Equal(res.Doubts[0].Readings, []int{2, 7}) {
		t.Fatalf("doubts %v", res.Doubts)
	}
	for _, i := range []int{2, 7} {
		if res.Readings[i].State != Doubted {
			t.Errorf("reading %d: state %d", i, res.Readings[i].State)
		}
	}
	if !res.Hangs || len(res.Faults) > 0 {
		t.Errorf("hangs %v, %v", res.Hangs, res.Faults)
	}
	u := res.Gaps().At(1, 1000)
	if u.Sigma < 4 {
		t.Errorf("widths of 762 and 772 give the latch gap as %.1f ± %.1f", u.Value, u.Margin())
	}
	t.Run("beyond repair", func(t *testing.T) {
		rs[7].Value = 862
		res := Adjust(rs)
		var paths []string
		for _, f := range res.Faults {
			paths = append(paths, f.Path)
		}
		if !slices.Contains(paths, "readings[2].value") || !slices.Contains(paths, "readings[7].value") {
			t.Errorf("faults %v", res.Faults)
		}
		if s := res.Readings[7].Slips; len(s) == 0 || s[0].Kind != WrongZero || s[0].Value != 762 {
			t.Errorf("guesses %v", s)
		}
	})
	t.Run("settled by a third", func(t *testing.T) {
		rs[7].Value = 772
		res := Adjust(append(rs, Reading{Kind: LeafWidth, At: 990, Value: 762.5}))
		if res.Readings[7].State != Suspect || res.Readings[2].State != Used || len(res.Doubts) > 0 {
			t.Errorf("states %d %d, doubts %v", res.Readings[2].State, res.Readings[7].State, res.Doubts)
		}
		if w := res.Door.Leaf.Closing.At(1000); math.Abs(w-762.25) > 0.1 {
			t.Errorf("width %.2f: the slip was averaged in", w)
		}
	})
}

// A rub holds the gap no wider than nothing, and leaves one that binds anyway as
// it is.
func TestRubIsOneSided(t *testing.T) {
	rub := Reading{Kind: Rub, Side: Latch, At: 1000}
	for _, row := range []struct {
		situation   string
		width       float64
		lo, hi      float64
		informative bool
	}{
		{"a gap of 4 by the tape", 768, -0.3, 0.6, true},
		{"binding by 6 by the tape", 758, -6.6, -5.4, false},
	} {
		t.Run(row.situation, func(t *testing.T) {
			rs := plainLeast()
			rs[0].Value = row.width
			without := Adjust(rs).Gaps().At(1, 1000)
			res := Adjust(append(rs, rub))
			with := res.Gaps().At(1, 1000)
			if with.Value < row.lo || with.Value > row.hi {
				t.Errorf("gap %.2f, without the rub %.2f", with.Value, without.Value)
			}
			if sharper := with.Sigma < without.Sigma/2; sharper != row.informative {
				t.Errorf("± %.2f, without the rub ± %.2f", with.Margin(), without.Margin())
			}
		})
	}
}
