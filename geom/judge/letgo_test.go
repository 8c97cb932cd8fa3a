package judge_test

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/caseone"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// A leaf on pins out of plumb by more than friction holds is told to swing, which way,
// by how much and why; its verdict stays good, and advice does not hear of it. A jamb
// that leans towards the latch shuts the door from wide open and one that leans out of
// the wall opens it from ajar (common practice, no published source).
func TestALeafLetGo(t *testing.T) {
	for _, c := range []struct {
		name   string
		put    func(*door.Door)
		worst  float64 // 0 = nothing is told
		wide   bool
		cause  judge.Departure
		amount float64
	}{
		{"plumb", func(*door.Door) {}, 0, false, "", 0},
		{"top pin out by less than friction holds", func(d *door.Door) { d.Hinges[0].Pin += 2.5 }, 0, false, "", 0},
		{"top pin out", func(d *door.Door) { d.Hinges[0].Pin += 3 }, 3, false, judge.PinsUneven, 3},
		{"top pin far out", func(d *door.Door) { d.Hinges[0].Pin += 8 }, 8, false, judge.PinsUneven, 8},
		{"bottom pin out", func(d *door.Door) { d.Hinges[1].Pin += 4 }, -4, false, judge.PinsUneven, -4},
		{"jamb leans to the latch", func(d *door.Door) { d.Frame.HingeJamb = geom.Through(0, 0, 2000, 6) }, -4.5, true, judge.HingeJambLeans, 6},
		{"jamb leans from the latch", func(d *door.Door) { d.Frame.HingeJamb = geom.Through(0, 0, 2000, -6) }, 4.5, true, judge.HingeJambLeans, -6},
		{"frame leans out", func(d *door.Door) {
			out := geom.Through(0, 0, 2000, 8)
			d.Frame.HingeFront, d.Frame.LatchFront, d.Frame.HeadFront = out, out, geom.Level(8)
			d.Frame.PlantStops(42)
		}, 6, false, judge.FrameLeans, 8},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := caseone.Door()
			c.put(&d)
			var got []judge.Finding
			all := findings(d, caseone.Wanted())
			for i, f := range all {
				if f.Subject != judge.LetGo {
					continue
				}
				got = append(got, f)
				if f.Verdict != judge.Good || i > 0 && all[i-1].Verdict == judge.Good && all[i-1].Subject != judge.LetGo {
					t.Errorf("finding %d is judged %d, after subject %d", i, f.Verdict, all[max(0, i-1)].Subject)
				}
			}
			var f fit.Fit
			w := caseone.Wanted()
			fit.Evaluate(&f, &d)
			for _, v := range judge.Verdicts(&f, &d, &w) {
				if v.Subject == judge.LetGo {
					t.Error("it is a verdict")
				}
			}
			if c.worst == 0 {
				if len(got) > 0 {
					t.Fatalf("%+v", got)
				}
				return
			}
			if len(got) != 1 {
				t.Fatalf("%d findings: %+v", len(got), got)
			}
			is := got[0]
			if math.Abs(is.Worst-c.worst) > 1e-6 || is.WideOpen() != c.wide || is.Opened != c.wide {
				t.Errorf("%v mm at %v°, wide open %v; want %v, %v", is.Worst, is.Angle.Degrees(), is.WideOpen(), c.worst, c.wide)
			}
			if len(is.Causes) != 1 || is.Causes[0].Departure != c.cause || math.Abs(is.Causes[0].Amount-c.amount) > 0.02 {
				t.Errorf("causes %+v, want %s of %v", is.Causes, c.cause, c.amount)
			}
		})
	}
}

// Pins that lean along the wall and out of it have the leaf rest between: it opens from
// ajar and closes from wide open, and both are told.
func TestALeafThatRestsHalfOpen(t *testing.T) {
	d := caseone.Door()
	d.Hinges[0].Pin += 6
	d.Frame.HingeJamb = geom.Through(0, 0, 2000, 8)
	var ways []float64
	for _, f := range findings(d, caseone.Wanted()) {
		if f.Subject == judge.LetGo {
			ways = append(ways, f.Worst)
		}
	}
	if len(ways) != 2 || math.Abs(ways[0]-6) > 1e-6 || math.Abs(ways[1]+6) > 1e-6 {
		t.Errorf("let go it is told to swing by %v, want 6 open and 6 shut", ways)
	}
}
