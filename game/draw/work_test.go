package draw

import (
	"math"
	"strings"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// worked are doors that something was done to since they were found: each has its
// Was, and most a tool in hand. The shapes are put together here; package trim has
// its own tests.
func worked() []situation {
	var all []situation
	add := func(name string, change func(s *situation, w *Work)) {
		s := situation{name: name, d: square(), a: fourPanels(), w: wanted()}
		s.d.Frame.Head = geom.Through(0, 1990, 769, 1983)
		was := s.d
		was.Hinges = append([]door.Hinge(nil), s.d.Hinges...)
		s.view.Was = &was
		s.view.Show = Front
		var w Work
		change(&s, &w)
		if w.Text != "" {
			s.view.Work = &w
		}
		all = append(all, s)
	}
	add("planed-and-spliced", func(s *situation, _ *Work) {
		l := &s.d.Leaf
		l.Closing = geom.Profile{{At: 0, Value: 762}, {At: 900, Value: 762}, {At: 1000, Value: 760}, {At: 1981, Value: 758}}
		l.Bottom = geom.Through(0, -12, 762, -12)
		s.a.Strips = []door.Strip{{Edge: fit.FloorSide, Joint: geom.Through(0, 0, 762, 0), Stock: 34, Back: 3}}
		l.Sections[fit.FloorSide] = door.Section{KnuckleBack: 3, StopBack: 3}
		l.Sections[fit.LatchSide].KnuckleEase = 2
		l.Sections[fit.HeadSide].KnuckleEase = 1
		l.Top = geom.Through(0, 1981, 762, 1974)
		for i := range s.d.Hinges {
			s.d.Hinges[i].JambHeight += 8
		}
		s.view.Show = Both
		s.view.Swing = 20 * geom.Degree
	})
	add("strip-on-top-right-hung", func(s *situation, _ *Work) {
		l := &s.d.Leaf
		l.Hanging = geom.Through(0, 1.5, 1981, 0.5)
		l.Closing = geom.Through(0, 766, 1981, 766)
		s.view.Was.Leaf.Top = geom.Through(0, 1960, 762, 1960)
		s.a.Strips = []door.Strip{
			{Edge: fit.HeadSide, Joint: geom.Through(0, 1960, 762, 1955), Stock: 40},
			{Edge: fit.LatchSide, Joint: geom.Through(0, 762, 1981, 762), Stock: 40},
		}
		s.view.RightHung = true
	})
	add("frame-planed-and-packed", func(s *situation, _ *Work) {
		s.d.Frame.LatchJamb = geom.Through(0, 769, 1000, 771, 1990, 771)
		s.d.Frame.HingeJamb = geom.Through(0, 0, 1000, 0, 1990, 2)
		s.d.Floor = door.FlatFloor(4)
		h := &s.d.Hinges[1]
		h.LeafHeight += 30
	})
	add("plane-strokes", func(s *situation, w *Work) {
		s.d.Leaf.Closing = geom.Profile{{At: 0, Value: 762}, {At: 900, Value: 762}, {At: 1000, Value: 760}, {At: 1981, Value: 760}}
		s.view.Held = HeldPlane
		*w = Work{Edge: fit.LatchSide, From: 1000, To: 1700, At: 1500, Text: "0.5 mm off, 1000 mm to 1700 mm", Note: "Gap 6.1 mm, slack", Pressed: true}
	})
	add("plane-refused", func(s *situation, w *Work) {
		s.view.Held = HeldPlane
		*w = Work{Edge: fit.HeadSide, From: 0, To: 762, At: 500, Text: "Cuts 4 mm into the top rail's tenon: nothing is left, 6 mm is wanted", Bad: true, Pressed: true}
	})
	add("hinge-dragged", func(s *situation, w *Work) {
		s.d.Hinges[0].JambHeight += 60
		s.d.Hinges[0].LeafHeight += 60
		s.view.Held = HeldHinge
		*w = Work{Hinge: 1, Text: "Top hinge up 60.0 mm", Pressed: true}
	})
	add("strip-pulled", func(s *situation, w *Work) {
		s.d.Leaf.Top = geom.Through(0, 1981, 762, 1981)
		s.view.Was.Leaf.Top = geom.Through(0, 1973, 762, 1973)
		s.a.Strips = []door.Strip{{Edge: fit.HeadSide, Joint: geom.Through(0, 1973, 762, 1973), Stock: 40}}
		s.view.Held = HeldStrip
		*w = Work{Edge: fit.HeadSide, From: 0, To: 762, At: 300, Text: "Strip 8.0 mm high", Note: "Gap 3.1 mm, good", Pressed: true}
	})
	add("saw-line-right-hung", func(s *situation, w *Work) {
		s.view.Held = HeldSaw
		s.view.RightHung = true
		s.view.Show = Both
		g := sightOf(s)
		s.view.Sight = &g
		s.d.Leaf.Top = geom.Through(0, 1981, 762, 1975)
		*w = Work{Edge: fit.HeadSide, From: 0, To: 762, At: 381, End: 1, Last: 6, Text: "0.0 mm off at the hanging corner, 6.0 mm off at the closing corner", Note: "Gap 8.2 mm, slack", Pressed: true}
	})
	return all
}

// workedSheet is the size of a sheet that a worked door is drawn on for looking at.
func workedSheet(i int) (w, h float64) {
	s := sheets[[]int{4, 0, 5, 0, 0, 3, 5, 3}[i%8]]
	return s.width, s.height
}

func sightOf(s *situation) Sight {
	var l List
	var sc Scene
	s.draw(&l, &sc, 820, 560)
	return sc.Sight()
}

// The pictures of worked doors, as text, and how they stand in a table's column; look
// at them before go test ./game/draw -update.
func TestGoldenWorked(t *testing.T) {
	for i, s := range worked() {
		var l List
		var sc Scene
		w, h := workedSheet(i)
		s.draw(&l, &sc, w, h)
		palette := &Day
		if i%3 == 2 {
			palette = &Night
		}
		golden(t, s.name, l.SVG(palette))
		if i > 1 {
			continue
		}
		v := Column(240, 300)
		v.RightHung, v.Was = s.view.RightHung, s.view.Was
		s.view = v
		s.draw(&l, &sc, 240, 300)
		golden(t, "column-"+s.name, l.SVG(palette))
	}
}

// A tool's label and what has been done keep on the sheet and off the figures, on
// every sheet.
func TestWorkedTextsKeepApart(t *testing.T) {
	var l List
	var sc Scene
	for _, s := range worked() {
		for _, sh := range sheets {
			if sh.show == Plan {
				continue
			}
			s.view.Show, s.view.Sight = sh.show, nil
			s.draw(&l, &sc, sh.width, sh.height)
			var boxes []box
			var texts []string
			for k := range l.Marks {
				m := &l.Marks[k]
				for _, p := range l.Points[m.From:m.To] {
					if !(box{-0.5, -0.5, sh.width + 0.5, sh.height + 0.5}).holds(p) {
						t.Fatalf("%s on %s: mark %d %+v has the point %v", s.name, sh.name, k, *m, p)
					}
				}
				if m.Kind != Text {
					continue
				}
				if m.Size < 12 {
					t.Errorf("%s on %s: %q is %g px high", s.name, sh.name, m.Text, m.Size)
				}
				b := textBox(&l, m)
				for i, o := range boxes {
					if b.meets(o) {
						t.Errorf("%s on %s: %q meets %q", s.name, sh.name, m.Text, texts[i])
					}
				}
				boxes, texts = append(boxes, b), append(texts, m.Text)
			}
			if w := s.view.Work; w != nil && !strings.Contains(strings.Join(texts, " "), w.Text) {
				t.Errorf("%s on %s: the label %q is not among %q", s.name, sh.name, w.Text, texts)
			}
		}
	}
}

func TestAPictureSaysNothingOfWhatWasNotDone(t *testing.T) {
	for _, s := range doors(t, 10) {
		var plain, same List
		var sc Scene
		s.draw(&plain, &sc, 800, 800)
		was := s.d
		s.view.Was = &was
		s.draw(&same, &sc, 800, 800)
		if string(plain.SVG(&Day)) != string(same.SVG(&Day)) {
			t.Errorf("%s: as found it is drawn otherwise for having been found", s.name)
		}
	}
}

func TestASightGivesPlacesBack(t *testing.T) {
	var l List
	var sc Scene
	for _, s := range doors(t, 60) {
		s.view.Show = Front
		s.draw(&l, &sc, 700, 900)
		g := sc.Sight()
		for e := range fit.Edges {
			lo, hi := g.Ends(e)
			for i := range 9 {
				at := lo + (hi-lo)*float64(i)/8
				p := g.On(e, at)
				if got := g.Place(e, p); math.Abs(got-at) > 1e-3 {
					t.Errorf("%s: %.3f on edge %d is found at %.3f", s.name, at, e, got)
				}
				// pulled out by what 2.5 mm of gap are wide, it is 2.5 mm
				px := 2.5 * sc.Factor() * sc.front.s
				q := inset(e, sc.mirrored(p, sc.frontBox), -px)
				if got := g.Out(e, p, sc.mirrored(q, sc.frontBox)); math.Abs(got-2.5) > 1e-9 {
					t.Errorf("%s: pulled out 2.5 mm on edge %d reads %v", s.name, e, got)
				}
			}
			if g.Place(e, Pt{-1e9, 1e9}) < lo-1e-9 || g.Place(e, Pt{1e9, -1e9}) > hi+1e-9 {
				t.Errorf("%s: places run off edge %d", s.name, e)
			}
		}
		for i := range s.d.Hinges { // from its middle to where it would be 70 mm higher
			a := sc.HingeAt(i + 1)
			y := s.d.Hinges[i].JambHeight
			b := sc.mirrored(sc.front.to(sc.big.upright(fit.HingeSide, 0, y+70)), sc.frontBox)
			if got := g.Up(a, b); math.Abs(got-70) > 1e-6 {
				t.Errorf("%s: hinge %d dragged up 70 mm reads %v", s.name, i+1, got)
			}
		}
	}
}

// While something is tried the picture keeps still: only the leaf changes.
func TestAKeptSightKeepsThePictureStill(t *testing.T) {
	var l List
	var sc Scene
	for _, s := range doors(t, 30) {
		s.view.Show = Front
		s.draw(&l, &sc, 700, 900)
		g := sc.Sight()
		before := append([]geom.Vec(nil), sc.frame[fit.LatchSide]...)
		s.d.Leaf.Top = s.d.Leaf.Top.Shift(-9)
		s.d.Leaf.Closing = s.d.Leaf.Closing.Shift(-3)
		s.view.Sight = &g
		s.draw(&l, &sc, 700, 900)
		if sc.Factor() != g.big.k || sc.front != g.front || sc.outer != g.outer {
			t.Errorf("%s: drawn %v times at %v, before %v times at %v", s.name, sc.Factor(), sc.front, g.big.k, g.front)
		}
		for i, p := range sc.frame[fit.LatchSide] {
			was := g.front.to(g.big.at(fit.LatchSide, before[i].X, before[i].Y))
			if now := sc.onFront(fit.LatchSide, p); math.Abs(now.X-was.X) > 1e-9 {
				t.Errorf("%s: the latch jamb went from %v to %v", s.name, was, now)
			}
		}
	}
}

// Targets for a tool are 44 px across, on either hand.
func TestToolsReachTheirTargets(t *testing.T) {
	var l List
	var sc Scene
	const reach = 21.0
	for _, s := range doors(t, 20) {
		for _, right := range []bool{false, true} {
			s.view.RightHung, s.view.Show = right, Front
			for _, held := range []Held{HeldPlane, HeldStrip} {
				s.view.Held = held
				s.draw(&l, &sc, 700, 900)
				g := sc.Sight()
				for e := range fit.Edges {
					lo, hi := g.Ends(e)
					at := lo + 0.45*(hi-lo)
					for _, off := range []float64{-reach, 0, reach} {
						p := sc.mirrored(inset(e, g.on(e, at), off), sc.frontBox)
						got := sc.Hit(p)
						if got.Kind != LeafEdge || got.Edge != e || math.Abs(got.Place-at) > 0.01 {
							t.Errorf("%s, right %v: %.0f px from edge %d at %.1f hits %+v", s.name, right, off, e, at, got)
						}
					}
				}
			}
			s.view.Held, s.view.Show = HeldPlane, Both // beside the section's handle too
			s.draw(&l, &sc, 360, 640)
			g := sc.Sight()
			at := g.Place(fit.LatchSide, sc.SectionGrip())
			if got := sc.Hit(g.On(fit.LatchSide, at)); got.Kind != LeafEdge || got.Edge != fit.LatchSide {
				t.Errorf("%s, right %v: the closing edge beside the section's handle is hit as %+v", s.name, right, got)
			}
			if got := sc.Hit(sc.SectionGrip()); got.Kind != SectionLine {
				t.Errorf("%s, right %v: the section's handle is hit as %+v", s.name, right, got)
			}
			s.view.Held, s.view.Show = HeldHinge, Front
			s.draw(&l, &sc, 700, 900)
			for i := range s.d.Hinges {
				c := sc.HingeAt(i + 1)
				for _, d := range []Pt{{}, {reach, 0}, {-reach, 0}, {0, reach}, {0, -reach}, {reach, reach}} {
					if got := sc.Hit(Pt{c.X + d.X, c.Y + d.Y}); got.Kind != HingeBody || got.Hinge != i+1 {
						t.Errorf("%s, right %v: %v from hinge %d hits %+v", s.name, right, d, i+1, got)
					}
				}
			}
			s.view.Held = HeldSaw
			s.draw(&l, &sc, 700, 900)
			for _, e := range []fit.Edge{fit.HeadSide, fit.FloorSide} {
				for _, end := range []int{-1, 0, 1} {
					c := sc.CutGrip(e, end)
					for _, d := range []Pt{{}, {0, reach}, {0, -reach}} {
						if got := sc.Hit(Pt{c.X + d.X, c.Y + d.Y}); got.Kind != CutEnd || got.Edge != e || got.End != end {
							t.Errorf("%s, right %v: %v from end %d of edge %d hits %+v", s.name, right, d, end, e, got)
						}
					}
				}
			}
			if sc.Hit(Pt{sc.frontBox.middle(), 450}).Kind != Nothing {
				t.Errorf("%s: the middle of the leaf is something", s.name)
			}
		}
	}
}

// Nothing that is no number reaches the list, whatever is marked.
func TestWorkThatIsNoWork(t *testing.T) {
	var l List
	var sc Scene
	nan, far := math.NaN(), 1e300
	broken := square()
	broken.Leaf.Top = geom.Level(nan)
	for _, d := range []door.Door{square(), {}, broken} {
		for held := NoTool; held <= HeldSaw+1; held++ {
			for _, w := range []Work{
				{}, {Text: "x", At: nan, From: nan, To: far}, {Edge: 9, Text: "x"}, {Edge: -1, Text: "x"},
				{Hinge: 7, End: 5, First: nan, Last: -far, Text: "no", Bad: true, Pressed: true},
			} {
				a, want, was := fourPanels(), wanted(), square()
				a.Strips = []door.Strip{{Edge: 7}, {Edge: fit.HeadSide, Joint: geom.Level(nan)}, {Edge: fit.FloorSide, Joint: geom.Level(far)}}
				f := new(fit.Fit)
				if len(d.Hinges) > 0 && d.Leaf.Top.At(0) > 0 {
					fit.Evaluate(f, &d)
				}
				sc.Draw(&l, f, &d, &a, &want, View{Width: 400, Height: 500, Was: &was, Held: held, Work: &w})
				for _, p := range l.Points {
					if p.X-p.X != 0 || p.Y-p.Y != 0 {
						t.Fatalf("%+v: the point %v", w, p)
					}
				}
				sc.Hit(Pt{200, 200})
				g := sc.Sight()
				g.Place(w.Edge, Pt{nan, far})
			}
		}
	}
}
