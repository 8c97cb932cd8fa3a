package survey

import (
	"math"
	"slices"
	"testing"
)

// plainDoor is a least set of a door that hangs.
func plainDoor() []Reading {
	return []Reading{
		{Kind: OpeningWidth, At: 1000, Value: 768}, {Kind: OpeningHeight, At: 400, Value: 1996},
		{Kind: LeafWidth, At: 1000, Value: 762}, {Kind: LeafHeight, At: 400, Value: 1981}, {Kind: LeafThickness, Value: 40},
		{Kind: HingeOnLeaf, Value: 1791}, {Kind: HingeOnLeaf, Hinge: 1, Value: 265},
	}
}

// The mean of two readings by their variances, in closed form.
func TestMemberIsTheWeightedMean(t *testing.T) {
	res := Adjust(append(plainDoor(),
		Reading{Kind: StileWidth, Side: Latch, Value: 102, Sigma: 1}, Reading{Kind: StileWidth, Side: Latch, Value: 105, Sigma: 2},
		Reading{Kind: RailHeight, Rail: 1, Value: 770}, Reading{Kind: StileWidth, Side: Hinge, Value: 99, Sigma: 1}))
	if len(res.Members) != 3 || len(res.Doubts) > 0 {
		t.Fatalf("members %+v, doubts %v", res.Members, res.Doubts)
	}
	m := res.Members[0]
	if m.Kind != StileWidth || m.Side != Latch || !slices.Equal(m.Readings, []int{7, 8}) {
		t.Errorf("%+v", m)
	}
	if want := (102.0/1 + 105.0/4) / (1 + 1.0/4); math.Abs(m.Mean-want) > 1e-12 {
		t.Errorf("mean %v, want %v", m.Mean, want)
	}
	if want := math.Sqrt(1 / (1 + 1.0/4)); math.Abs(m.Sigma-want) > 1e-12 {
		t.Errorf("sigma %v, want %v", m.Sigma, want)
	}
	// 3 mm apart where √(1² + 2²) is ordinary, whichever is held against the other
	for i, want := range map[int]float64{7: -3 / math.Sqrt(5), 8: 3 / math.Sqrt(5)} {
		if j := res.Readings[i]; j.State != Used || math.Abs(j.Standardised-want) > 1e-12 || math.Abs(j.Fitted-m.Mean) > 1e-12 {
			t.Errorf("reading %d: %+v", i, j)
		}
	}
	if r := res.Members[1]; r.Kind != RailHeight || r.Rail != 1 || r.Mean != 770 {
		t.Errorf("%+v", r)
	}
}

func TestMembersThatDisagree(t *testing.T) {
	stile := func(v float64) Reading { return Reading{Kind: StileWidth, Side: Hinge, Value: v, Sigma: 1} }
	for _, row := range []struct {
		situation string
		values    []float64
		mean      float64
		states    []State
		doubts    int
	}{
		{"two as near as they may be", []float64{100, 104.2}, 102.1, []State{Used, Used}, 0},
		{"two too far apart: neither can be told wrong", []float64{100, 104.3}, 102.15, []State{Doubted, Doubted}, 1},
		{"three, one off", []float64{100, 109, 101}, 100.5, []State{Used, Suspect, Used}, 0},
		{"figures changed round", []float64{102, 120, 102}, 102, []State{Used, Suspect, Used}, 0},
		{"three, no two alike", []float64{100, 110, 121}, 331.0 / 3, []State{Doubted, Doubted, Doubted}, 1},
		{"two off of five", []float64{100, 100, 130, 100, 90}, 100, []State{Used, Used, Suspect, Used, Suspect}, 0},
	} {
		t.Run(row.situation, func(t *testing.T) {
			rs := plainDoor()
			for _, v := range row.values {
				rs = append(rs, stile(v))
			}
			res := Adjust(rs)
			var states []State
			for _, j := range res.Readings[len(plainDoor()):] {
				states = append(states, j.State)
			}
			if !slices.Equal(states, row.states) || len(res.Doubts) != row.doubts {
				t.Errorf("states %v, doubts %v", states, res.Doubts)
			}
			if m := res.Members[0]; math.Abs(m.Mean-row.mean) > 1e-9 {
				t.Errorf("mean %v, want %v", m.Mean, row.mean)
			}
			if row.situation == "figures changed round" {
				if s := res.Readings[8].Slips; len(s) == 0 || s[0].Kind != Transposed || s[0].Value != 102 {
					t.Errorf("slips %v", s)
				}
			}
		})
	}
}

// Nothing of the shapes, or of what is known of them, follows a stile or a rail.
func TestMembersSayNothingOfShapes(t *testing.T) {
	without := Adjust(plainDoor())
	with := Adjust(append(plainDoor(), Reading{Kind: StileWidth, Side: Hinge, Value: 100}, Reading{Kind: StileWidth, Side: Hinge, Value: 300},
		Reading{Kind: RailWidth, Value: 200}))
	if len(without.adj.x) != len(with.adj.x) || without.Sigma0 != with.Sigma0 || without.Redundancy != with.Redundancy || !with.Hangs || len(with.Faults) > 0 {
		t.Errorf("faults %v, %d unknowns, %d without", with.Faults, len(with.adj.x), len(without.adj.x))
	}
	for i, x := range without.adj.x {
		if with.adj.x[i] != x {
			t.Fatalf("unknown %d is %v, %v without", i, with.adj.x[i], x)
		}
	}
}

func TestMemberReadingsOutOfRange(t *testing.T) {
	res := Adjust(append(plainDoor(), Reading{Kind: RailWidth, Rail: 12, Value: 100}, Reading{Kind: StileWidth, Side: Head, Value: 100},
		Reading{Kind: StileWidth, Side: Hinge, Value: 4}))
	if len(res.Faults) != 3 || len(res.Members) != 0 {
		t.Errorf("%v, %+v", res.Faults, res.Members)
	}
	want := []string{"readings[7].rail", "readings[8].side", "readings[9].value"}
	for i, f := range res.Faults {
		if i < 3 && f.Path != want[i] {
			t.Errorf("%s, want %s", f.Path, want[i])
		}
	}
}
