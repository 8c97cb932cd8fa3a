package draw

import (
	"slices"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/internal/demos"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// situation is a door worth drawing, made up for these tests.
type situation struct {
	name string
	d    door.Door
	a    door.Anatomy
	w    judge.Wanted
	view View // sizes apart
}

func wanted() judge.Wanted {
	var w judge.Wanted
	for e := range fit.Edges {
		w.Gaps[e] = judge.Limits{Least: 2, Target: 3, Most: 5}
	}
	w.Gaps[fit.FloorSide] = judge.Limits{Least: 4, Target: 6, Most: 12}
	w.Stop = judge.Limits{Least: 0, Target: 1, Most: 3}
	w.Swing = judge.Limits{Least: 1, Target: 2}
	w.SwingFloor = judge.Limits{Least: 2, Target: 4}
	return w
}

// square is a leaf 4 mm clear all round and 6 over the floor.
func square() door.Door {
	const width, height = 762, 1981
	d := door.Door{
		Leaf:  door.Rectangle(width, height, 40),
		Frame: door.Square(width+7, height+6+3, 42, 13),
		Floor: door.FlatFloor(0),
		Latch: door.Latch{Height: 990},
		Opens: 90 * geom.Degree,
	}
	for _, v := range []float64{height - 200, 260} {
		d.Hinges = append(d.Hinges, door.Hinge{
			JambHeight: v + 6, LeafHeight: v, LeafGain: 2.5, JambGain: 2,
			Closed: 8, Pin: 5, Height: 100,
		})
	}
	return d
}

func fourPanels() door.Anatomy {
	return door.Anatomy{
		Make: door.Framed, HangingStile: 110, ClosingStile: 110,
		Rails:   []door.Rail{{Name: "bottom", From: 0, To: 215}, {Name: "lock", From: 800, To: 990}, {Name: "top", From: 1871, To: 1981}},
		Muntins: []door.Muntin{{At: 381, Width: 95, From: 215, To: 800}, {At: 381, Width: 95, From: 990, To: 1871}},
		Panels:  door.Raised, Timber: "redwood",
		Lock: door.Lock{Kind: door.Rim, Height: 895, Backset: 60, Case: 95, Depth: 140},
	}
}

// situations are made up to be awkward to draw; demos gives the ones people see.
func situations() []situation {
	var all []situation
	add := func(name string, change func(*situation)) {
		s := situation{name: name, d: square(), a: fourPanels(), w: wanted()}
		change(&s)
		all = append(all, s)
	}
	add("square", func(*situation) {})
	add("falling-head", func(s *situation) {
		s.d.Frame.Head = geom.Through(0, 1990, 769, 1983)
		s.d.Frame.LatchJamb = geom.Profile{{At: 0, Value: 770}, {At: 1000, Value: 769}, {At: 1990, Value: 765.2}}
		s.d.Frame.HingeJamb = geom.Profile{{At: 0, Value: 0}, {At: 1000, Value: 1}, {At: 1990, Value: 0.4}}
		s.view.Swing = 24 * geom.Degree
	})
	add("wind-in-leaf", func(s *situation) {
		s.d.Leaf.ClosingFace = geom.Through(0, 0, 1981, 7)
		s.a.Panels = door.Flat
		s.a.Lock.Kind = door.Mortice
		s.view.Swing = 60 * geom.Degree
	})
	add("square-edge-fouls", func(s *situation) {
		s.d.Leaf.Thickness = 44
		s.d.Frame.PlantStops(46)
		s.d.Frame.LatchJamb = geom.Through(0, 767.2, 1990, 767.2)
		s.view.Swing = 2.5 * geom.Degree
		s.view.Lens = Lens{On: true, Edge: fit.LatchSide, Place: 1200}
	})
	add("rising-floor", func(s *situation) {
		s.d.Floor = door.Floor{
			Radii:   []float64{0, 400, 800},
			Angles:  []geom.Angle{0, 45 * geom.Degree, 90 * geom.Degree},
			Heights: [][]float64{{0, 0, 0}, {0, 2, 5}, {0, 3.5, 9}},
		}
		s.a.Make = door.Boarded
		s.a.Rails = []door.Rail{{From: 180, To: 330}, {From: 950, To: 1100}, {From: 1650, To: 1800}}
		s.view.Swing = 40 * geom.Degree
		s.view.Lens = Lens{On: true, Edge: fit.FloorSide, Place: 700}
	})
	add("hinge-bound", func(s *situation) {
		s.d.Frame.HingeStop = s.d.Frame.HingeFront.Shift(-39.2)
		s.d.Hinges[0].LeafGain, s.d.Hinges[0].JambGain = 3.6, 2.8
		s.d.Hinges[1].JambPacker = 1.5
		s.a.Panels = door.Glass
		s.view.Lens = Lens{On: true, Edge: fit.HeadSide, Place: 500}
	})
	add("right-hung-bevel", func(s *situation) {
		s.d.Leaf.ClosingBevel = 3.5 * geom.Degree
		s.d.Frame.LatchFront = geom.Through(0, -3, 1990, 4)
		s.d.Frame.PlantStops(42)
		s.d.Opens = 120 * geom.Degree
		s.view.RightHung = true
		s.view.Swing = 100 * geom.Degree
	})
	add("flush-short", func(s *situation) {
		s.a = door.Anatomy{Make: door.Flush, Lock: s.a.Lock}
		s.d.Leaf.Top = geom.Through(0, 1931, 762, 1927)
		s.d.Opens = 175 * geom.Degree
		s.view.Swing = 150 * geom.Degree
	})
	add("in-september", func(s *situation) {
		s.d.Hinges[0].LeafGain, s.d.Hinges[0].JambGain = 3.6, 2.8
		s.view.Month = "September, painted"
		s.view.Swing = 30 * geom.Degree
	})
	return all
}

func (s *situation) draw(l *List, scene *Scene, width, height float64) *fit.Fit {
	f := new(fit.Fit)
	fit.Evaluate(f, &s.d)
	v := s.view
	v.Width, v.Height = width, height
	scene.Draw(l, f, &s.d, &s.a, &s.w, v)
	return f
}

// sheets are the sizes the drawing must hold up at: phones, a tablet, a desk and
// an A4 page.
var sheets = []struct {
	name          string
	width, height float64
	show          Show
}{
	{"phone-front", 360, 400, Front},
	{"phone-plan", 360, 400, Plan},
	{"phone-both", 360, 640, Both},
	{"tablet", 820, 560, Both},
	{"desk", 1000, 850, Both},
	{"paper", 718, 1020, Both},
}

// demoJobs are the demo jobs, each with the leaf a little open.
func demoJobs(t testing.TB) (all []situation) {
	t.Helper()
	names := demos.Names(t)
	slices.SortStableFunc(names, func(a, b string) int { return len(strings.SplitN(a, "-", 2)[0]) - len(strings.SplitN(b, "-", 2)[0]) }) // 10 after 9
	for i, name := range names {
		job := demos.Job(t, name)
		s := situation{name: name, d: job.Door, a: job.Anatomy, w: job.Wanted}
		s.view.RightHung = job.Hand == game.Right
		s.view.Swing = geom.Angle(i*14) * geom.Degree
		all = append(all, s)
	}
	return all
}
