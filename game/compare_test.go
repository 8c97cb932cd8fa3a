package game

import (
	"math"
	"reflect"
	"testing"

	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// beforeAfter is a square leaf 762 by 1981 by 40 hung 12 mm up in a square opening 768
// by 1996: gaps of 2 mm at the hinges, 4 at the latch, 3 at the head, 12 at the floor.
func beforeAfter(t *testing.T, options ...Option) Job {
	t.Helper()
	j := framedJob(t)
	j.Options = options
	if faults := j.Check(); len(faults) > 0 {
		t.Fatal(faults)
	}
	return j
}

// Hand-made: gaps from the sizes, areas of strips and wedges by their formulas.
func TestCompareByHand(t *testing.T) {
	top := func(first, last float64) trim.Move {
		return trim.Move{Kind: trim.Plane, Edge: fit.HeadSide, First: first, Last: last}
	}
	off := top(2, 2)
	off.Off = true
	j := beforeAfter(t,
		Option{"Tapered", []trim.Move{top(0, 3)}},
		Option{"Twice", []trim.Move{top(1, 1), off, top(1, 1)}},
		Option{"Both ends", []trim.Move{top(0, 2), top(2, 0)}},
		Option{"Nothing yet", nil},
	)
	near := func(what string, got, want, give float64) {
		t.Helper()
		if !(math.Abs(got-want) <= give) {
			t.Errorf("%s: %v, want %v", what, got, want)
		}
	}
	cols := j.Compare()
	if len(cols) != 5 || cols[0].Option != AsFound || cols[1].Option != 0 {
		t.Fatalf("%d columns, the first of %d, the second of %d", len(cols), cols[0].Option, cols[1].Option)
	}
	for i, want := range []struct {
		name      string
		head      [2]float64
		spread    float64
		off, cm3  float64
		cuts, out int
		top       judge.Verdict
	}{
		{"As found", [2]float64{3, 3}, 2, 0, 0, 0, 1, judge.Good},
		{"Tapered", [2]float64{3, 6}, 4, 3, 762 * 3 / 2 * 40.0 / 1000, 1, 2, judge.Slack},
		{"Twice", [2]float64{5, 5}, 3, 2, 762 * 2 * 40.0 / 1000, 2, 2, judge.Slack},
		{"Both ends", [2]float64{5, 5}, 3, 2, 762 * 2 * 40.0 / 1000, 2, 2, judge.Slack},
		{"Nothing yet", [2]float64{3, 3}, 2, 0, 0, 0, 1, judge.Good},
	} {
		c := &cols[i]
		if c.Name != want.name {
			t.Errorf("column %d is %s", i, c.Name)
		}
		near(want.name+", hinge side", c.Edges[fit.HingeSide].Least, 2, 0.01)
		near(want.name+", latch side", c.Edges[fit.LatchSide].Most, 4, 0.01)
		near(want.name+", least at the head", c.Edges[fit.HeadSide].Least, want.head[0], 0.01)
		near(want.name+", most at the head", c.Edges[fit.HeadSide].Most, want.head[1], 0.02)
		near(want.name+", floor", c.Edges[fit.FloorSide].Least, 12, 0.01)
		near(want.name+", spread", c.Evenness, want.spread, 0.02)
		near(want.name+", off", c.Off, want.off, 1e-9)
		near(want.name+", timber", c.Volume, want.cm3, 0.05)
		if c.Cuts != want.cuts || len(c.Out()) != want.out || c.Edges[fit.HeadSide].Verdict != want.top || c.Refused != 0 || c.Strips != 0 || c.Frame {
			t.Errorf("%s: cuts %d, out %d, head %v, %+v", want.name, c.Cuts, len(c.Out()), c.Edges[fit.HeadSide].Verdict, c)
		}
	}
	if n := cols[1].Narrows; len(n) != 1 || n[0].Member.Part != trim.Rail || n[0].Member.Index != 2 {
		t.Errorf("planing the top narrows %+v", n)
	}
}

// A column is the door the option gives, hung.
func TestColumnsAreTheOptions(t *testing.T) {
	j := framedJob(t)
	for _, spec := range trim.Kinds {
		j.Options = append(j.Options, Option{Name: string(spec.Kind), Moves: []trim.Move{j.NewMove(trim.Sink), j.NewMove(spec.Kind)}})
	}
	j.Made = []trim.Move{j.NewMove(trim.Sink)}
	cols := j.Compare()
	if len(cols) != len(j.Options)+2 || cols[1].Option != AsItStands {
		t.Fatalf("%d columns", len(cols))
	}
	if !reflect.DeepEqual(cols[1].Tried, j.Stands()) {
		t.Error("as it stands is another door")
	}
	for i := range j.Options {
		c, want := &cols[i+2], j.Try(i)
		if !reflect.DeepEqual(c.Tried, want) {
			t.Errorf("%s is another door", c.Name)
		}
		var f fit.Fit
		fit.Evaluate(&f, &want.Door)
		for e := range fit.Edges {
			if c.Edges[e].Least != f.Gaps[e].Least || c.Edges[e].Most != f.Gaps[e].Most {
				t.Errorf("%s: edge %d is %+v, hung it is %v to %v", c.Name, e, c.Edges[e], f.Gaps[e].Least, f.Gaps[e].Most)
			}
		}
		if alone := j.Column(i); !reflect.DeepEqual(alone.Findings, c.Findings) || alone.Off != c.Off {
			t.Errorf("%s by itself is another column", c.Name)
		}
	}
}

// A leaf hung 12 mm up has every rail 12 mm above its place on the leaf.
func TestSightlines(t *testing.T) {
	j := beforeAfter(t, Option{"Lower", []trim.Move{{Kind: trim.Raise, On: trim.OnJamb, First: -2}}})
	lock := j.Anatomy.Rails[1]
	j.Neighbour = []door.Rail{{Name: "LOCK", From: lock.From + 12, To: lock.To + 12}, {Name: "frieze", From: 1500, To: 1600}}
	for i, above := range []float64{0, -2} {
		got := j.Compare()[i].Sightlines
		if len(got) != 1 || got[0].Rail != 1 || math.Abs(got[0].Above-above) > 0.01 {
			t.Errorf("column %d: %+v, want the lock rail %v above", i, got, above)
		}
	}
	j.Neighbour[0].Name = ""
	if got := j.Compare()[0].Sightlines; len(got) != 1 || got[0].Rail != 0 {
		t.Errorf("without a name the lowest is beside the lowest: %+v", got)
	}
}

func BenchmarkColumn(b *testing.B) {
	j := framedJob(b)
	for range 10 {
		j.Options[0].Moves = append(j.Options[0].Moves, trim.Move{Kind: trim.Plane, Edge: fit.HeadSide, First: 0.2, Last: 0.2})
	}
	b.ReportAllocs()
	for b.Loop() {
		j.Column(0)
	}
}

// Typing in a move's field while the job has many.
func BenchmarkSetInAMove(b *testing.B) {
	j := framedJob(b)
	for range 100 {
		j.Options[0].Moves = append(j.Options[0].Moves, trim.Move{Kind: trim.Plane, Edge: fit.HeadSide, First: 0.2, Last: 0.2})
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := (Form{}).Set(j, "options[0].moves[50].first", "0.3"); err != nil {
			b.Fatal(err)
		}
	}
}
