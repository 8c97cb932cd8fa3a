package lesson

import (
	"os"
	"strconv"
	"strings"
	"testing"

	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/timber"
)

const lessons = "../../testdata/lessons/"

func explanation(t *testing.T, name string) *Explanation {
	t.Helper()
	data, err := os.ReadFile(lessons + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	if !IsExplanation(data) {
		t.Fatalf("%s says of itself that it is none", name)
	}
	e, err := ParseExplanation(name, data)
	if err != nil {
		t.Fatalf("%s:\n%v", name, err)
	}
	return e
}

// with hangs the explanation's door with fields set to numbers.
func (e *Explanation) with(t *testing.T, sets ...any) *fit.Fit {
	t.Helper()
	own := *e
	for i := 0; i < len(sets); i += 2 {
		job, err := own.With(sets[i].(string), sets[i+1].(float64))
		if err != nil {
			t.Fatal(err)
		}
		own.Job = job
	}
	var f fit.Fit
	fit.Evaluate(&f, &own.Job.Door)
	return &f
}

// mm writes a number of mm as the texts do, to the tenth.
func mm(x float64) string {
	return strings.TrimSuffix(strconv.FormatFloat(x, 'f', 1, 64), ".0") + " mm"
}

func percent(x float64) string { return strconv.FormatFloat(x, 'f', 1, 64) + " %" }

// says tells whether a text holds every phrase, and no figure beside them.
func says(t *testing.T, e *Explanation, phrases ...string) {
	t.Helper()
	rest := e.Text
	for _, p := range phrases {
		if !strings.Contains(e.Text, p) {
			t.Errorf("%s does not say %q, which the model gives", e.Name, p)
		}
		rest = strings.ReplaceAll(rest, p, "")
	}
	if i := strings.IndexAny(rest, "0123456789"); i >= 0 {
		t.Errorf("%s: nothing in the model gives the figure at %q", e.Name, rest[max(0, i-20):min(len(rest), i+20)])
	}
}

func TestWhyAClosingEdgeIsBevelled(t *testing.T) {
	e := explanation(t, "why-bevel")
	const bevel, thick = "leaf.bevel.closing", "leaf.thickness"
	loses := func(thickness float64) string {
		f := e.with(t, bevel, 0.0, thick, thickness)
		return mm(f.Gaps[door.LatchSide].Least - f.Swing[door.LatchSide].Least)
	}
	square, two, three := e.with(t), e.with(t, bevel, 2.0), e.with(t, bevel, 3.0)
	says(t, e,
		"A leaf of 44 mm with a square edge loses "+loses(44), "of 35 mm, "+loses(35), "of 22 mm, "+loses(22),
		"has "+mm(square.Gaps[door.LatchSide].Least)+" at the latch side when it is shut, and only "+mm(square.Swing[door.LatchSide].Least)+" as it comes past",
		"with 2° it keeps all but a hair", "with 3° it comes nowhere nearer", "at the face, stays "+mm(three.Shown[door.LatchSide].Least))
	const hair = 0.05
	if lost := two.Gaps[door.LatchSide].Least - two.Swing[door.LatchSide].Least; lost <= 0 || lost > hair {
		t.Errorf("with 2° it loses %v", lost)
	}
	if three.Swing[door.LatchSide].Least != three.Gaps[door.LatchSide].Least {
		t.Errorf("with 3° it comes as near as %v", three.Swing[door.LatchSide].Least)
	}
	if e.Open != 3.3 || square.Swing[door.LatchSide].Angle.Degrees() < 3.25 || square.Swing[door.LatchSide].Angle.Degrees() >= 3.35 {
		t.Errorf("it comes nearest at %v°, and %v° are shown", square.Swing[door.LatchSide].Angle.Degrees(), e.Open)
	}
}

func TestWhatOneMillimetreAtTheTopHingeDoes(t *testing.T) {
	e := explanation(t, "why-one-millimetre")
	h := e.Job.Door.Hinges
	was := e.with(t)
	is := e.with(t, "hinges[0].leaf_gain", h[0].LeafGain+1)
	change := func(e door.Edge, at float64) float64 { return is.Gaps[e].At(at) - was.Gaps[e].At(at) }
	apart := h[0].JambHeight - h[1].JambHeight
	const closing, foot, top = 764, 14, 1990
	says(t, e,
		"Let the top hinge 1 mm deeper", "These hinges are "+mm(apart)+" apart",
		"the gap at the head falls by "+mm(-change(door.HeadSide, closing)), "the one over the floor grows by "+mm(change(door.FloorSide, closing)),
		"the latch side grows by "+mm(change(door.LatchSide, top)), "it closes by "+mm(-change(door.LatchSide, foot)))
	if half := e.Job.Door.Leaf.Width / apart; half < 0.49 || half > 0.51 {
		t.Errorf("the leaf is %v as wide as its hinges are apart, and the text says half", half)
	}
	if change(door.HingeSide, top)*change(door.LatchSide, top) >= 0 || change(door.HingeSide, foot)*change(door.LatchSide, foot) >= 0 {
		t.Error("on the hinge side it is not the other way about")
	}
}

func TestHowWindIsShared(t *testing.T) {
	e := explanation(t, "why-wind-is-shared")
	const wind, latch = "leaf.face.closing.wind", "latch.height"
	flat, half, low := e.with(t, wind, 0.0), e.with(t), e.with(t, latch, 500.0)
	const foot, top = 12, 1993
	at := func(f *fit.Fit, y float64) float64 { return f.Stops[door.LatchSide].At(y) }
	says(t, e,
		"This leaf is 6 mm in wind", "the fourth stands "+mm(e.Job.Door.Leaf.Face(762, 1981))+" out",
		"The top stands out by "+mm(at(half, top)-at(flat, top))+" and the foot goes in by "+mm(at(flat, foot)-at(half, foot)),
		"of "+mm(at(flat, foot))+" between leaf and stop, "+mm(at(half, foot))+" are left at the foot and there are "+mm(at(half, top))+" at the top",
		"With the latch at 500 mm the foot goes in by only "+mm(at(flat, foot)-at(low, foot)), "the top stands out by "+mm(at(low, top)-at(flat, top)))
}

func TestWhyAGapIsLeft(t *testing.T) {
	e := explanation(t, "why-a-gap")
	coats := timber.Face{On: []timber.Layers{{Paint: timber.Primer, Coats: 1}, {Paint: timber.Alkyd, Coats: 2}}}
	year := timber.PresetFor(timber.Maritime, timber.Heated).Year(false)
	moisture := year.Moisture()
	const february, august = 1, 7
	grows := func(across float64) float64 {
		s := timber.SeasonOf(across, timber.Softwood.Tangential, moisture[february], moisture)
		return s.Grows[august]
	}
	l, a := &e.Job.Door.Leaf, &e.Job.Anatomy
	framed := timber.MovingOf(l, a).Across
	boards := *a
	boards.Make = door.Boarded
	boarded := timber.MovingOf(l, &boards).Across
	says(t, e,
		"take about "+mm(timber.AllowanceOf(coats, coats).Loses())+" of the gap",
		"it comes to "+percent(moisture[february])+" moisture in February and "+percent(moisture[august])+" in August",
		"The two stiles of a framed leaf, "+mm(framed/2)+" each, are then "+mm(grows(framed))+" wider together",
		"A boarded leaf "+mm(boarded)+" wide grows by "+mm(grows(boarded)),
		"A gap of 2 mm")
	if left := 2 - grows(framed); left <= 0 || left >= e.Job.Wanted.Gaps[door.LatchSide].Least {
		t.Errorf("%v is left for the framed leaf", left)
	}
	if 2-grows(boarded) > 0 {
		t.Error("the boarded leaf has a gap left")
	}
}
