package draw

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// textBox is the room a text takes up.
func textBox(l *List, m *Mark) box {
	at, w := l.Points[m.From], TextWidth(m.Text, m.Size, m.Bold)
	x := at.X
	switch m.Anchor {
	case Middle:
		x -= w / 2
	case End:
		x -= w
	}
	return box{x, at.Y - ascent*m.Size, x + w, at.Y + descent*m.Size}
}

// jogged is a door as a crooked house would have it: every measure of the square
// one put out by a few mm.
func jogged(r *rand.Rand) situation {
	s := situation{d: square(), a: fourPanels(), w: wanted()}
	by := func(mm float64) float64 { return mm * (2*r.Float64() - 1) }
	w, h := 769+by(120), 1990+by(150)
	s.d.Frame.HingeJamb = geom.Profile{{At: 0, Value: 0}, {At: 900, Value: by(4)}, {At: h, Value: by(9)}}
	s.d.Frame.LatchJamb = geom.Profile{{At: 0, Value: w}, {At: 1100, Value: w + by(4)}, {At: h, Value: w + by(9)}}
	s.d.Frame.Head = geom.Profile{{At: 0, Value: h}, {At: w / 2, Value: h + by(3)}, {At: w, Value: h + by(15)}}
	s.d.Frame.HingeFront, s.d.Frame.LatchFront = geom.Through(0, 0, h, by(6)), geom.Through(0, by(5), h, by(6))
	s.d.Frame.PlantStops(42)
	lw, lh := w-7+by(4), h-9-max(0, by(60))
	l := door.Rectangle(lw, lh, 40+by(8))
	l.Closing = geom.Profile{{At: 0, Value: lw + by(3)}, {At: lh / 2, Value: lw + by(2)}, {At: lh, Value: lw + by(3)}}
	l.Top = geom.Through(0, lh, lw, lh+by(8))
	l.ClosingFace = geom.Profile{{At: 0, Value: by(3)}, {At: lh / 2, Value: by(4)}, {At: lh, Value: by(8)}}
	l.ClosingBevel = geom.Angle(max(0, by(4))) * geom.Degree
	s.d.Leaf = l
	s.d.Hinges[0].LeafHeight, s.d.Hinges[0].JambHeight = lh-200, lh-194
	s.d.Hinges[0].LeafGain += by(1)
	s.d.Hinges[1].JambPacker = max(0, by(1.5))
	for i := range s.a.Rails {
		s.a.Rails[i].From *= lh / 1981
		s.a.Rails[i].To *= lh / 1981
	}
	if r.IntN(3) == 0 {
		s.d.Floor = door.Floor{
			Radii:   []float64{0, 500, w},
			Angles:  []geom.Angle{0, 90 * geom.Degree},
			Heights: [][]float64{{0, by(3), by(5)}, {0, by(6), by(12)}},
		}
	}
	s.d.Opens = geom.Angle(60+120*r.Float64()) * geom.Degree
	s.view.Swing = geom.Angle(r.Float64()) * s.d.Opens
	s.view.RightHung = r.IntN(2) == 0
	s.view.Section = r.Float64() * 2200
	if r.IntN(3) == 0 {
		s.view.Format, s.view.Length, s.view.TextSize = inches, inches, 15
	}
	s.name = fmt.Sprintf("jogged %.0f×%.0f open %.0f°", lw, lh, s.d.Opens.Degrees())
	return s
}

// inches writes a length as wide as figures get.
func inches(mm float64) string {
	n := int(math.Round(math.Abs(mm) / 25.4 * 32))
	s := fmt.Sprintf(`%d %d/32"`, n/32, n%32)
	if mm < 0 {
		s = "−" + s
	}
	return s
}

// doors gives all the made-up doors, the demo jobs and some crooked ones.
func doors(t testing.TB, crooked int) []situation {
	all := append(situations(), demoJobs(t)...)
	r := rand.New(rand.NewPCG(1, 2)) // a fixed seed: the doors are always the same
	for range crooked {
		all = append(all, jogged(r))
	}
	return all
}

func TestEverythingLiesOnTheSheet(t *testing.T) {
	var l List
	var sc Scene
	for i, s := range doors(t, 200) {
		for _, sh := range sheets {
			s.view.Show = sh.show
			s.view.Lens = Lens{On: i%2 == 0, Edge: fit.Edge(i % 4), Place: float64(i * 37 % 2000)}
			s.draw(&l, &sc, sh.width, sh.height)
			const hem = 0.5 // half a line's width
			sheet := box{-hem, -hem, sh.width + hem, sh.height + hem}
			for k := range l.Marks {
				m := &l.Marks[k]
				for _, p := range l.Points[m.From:m.To] {
					if !sheet.holds(p) { // false for NaN too
						t.Fatalf("%s on %s: mark %d %+v has the point %v", s.name, sh.name, k, *m, p)
					}
				}
				if m.Kind != Text {
					continue
				}
				if b := textBox(&l, m); !(b.x0 >= -1 && b.x1 <= sh.width+1 && b.y0 >= 0 && b.y1 <= sh.height) {
					t.Errorf("%s on %s: %q takes up %.0f", s.name, sh.name, m.Text, b)
				}
				if m.Size < 12 {
					t.Errorf("%s on %s: %q is written %g px high", s.name, sh.name, m.Text, m.Size)
				}
			}
		}
	}
}

func TestNoTwoTextsMeet(t *testing.T) {
	var l List
	var sc Scene
	for _, s := range doors(t, 200) {
		for _, sh := range sheets {
			s.view.Show, s.view.Lens = sh.show, Lens{}
			s.draw(&l, &sc, sh.width, sh.height)
			var boxes []box
			var texts []string
			for k := range l.Marks {
				m := &l.Marks[k]
				if m.Kind != Text {
					continue
				}
				b := textBox(&l, m)
				for i, o := range boxes {
					if b.meets(o) {
						t.Errorf("%s on %s: %q meets %q", s.name, sh.name, m.Text, texts[i])
					}
				}
				boxes, texts = append(boxes, b), append(texts, m.Text)
			}
			if len(boxes) < 2 {
				t.Errorf("%s on %s: only %d texts", s.name, sh.name, len(boxes))
			}
		}
	}
}

func TestMarksStayFew(t *testing.T) {
	var l List
	var sc Scene
	for _, s := range doors(t, 50) {
		for _, sh := range sheets {
			s.view.Show = sh.show
			s.draw(&l, &sc, sh.width, sh.height)
			strokes := 0
			for _, m := range l.Marks {
				if m.Kind == Stroke {
					strokes++
				}
			}
			if strokes > 1500 {
				t.Errorf("%s on %s: %d strokes", s.name, sh.name, strokes)
			}
		}
	}
}

func TestGapsAreEnlargedExactly(t *testing.T) {
	var l List
	var sc Scene
	for _, s := range doors(t, 50) {
		for _, k := range []float64{0, 1, 7} {
			s.view.Factor, s.view.Show = k, Front
			f := s.draw(&l, &sc, 800, 800)
			for e := range fit.Edges {
				r := f.Gaps[e].Range()
				for i := range 9 {
					at := r.Lo + r.Length()*float64(i)/8
					a, b := sc.onFront(e, sc.frameAt(e, at)), sc.onFront(e, sc.leafAt(e, at))
					gap := f.Gaps[e].Curve.At(at)
					want := math.Abs(gap) * sc.Factor() * sc.front.s
					if got := distance(a, b); math.Abs(got-want) > 1e-6 {
						t.Errorf("%s, factor %g: gap %.2f on edge %d drawn %.4f px wide, want %.4f", s.name, k, gap, e, got, want)
					}
					if level := a.Y == b.Y; e.Upright() != level && gap != 0 {
						t.Errorf("%s: gap on edge %d is drawn from %v to %v", s.name, e, a, b)
					}
				}
			}
		}
	}
}

func TestCornersOfTheOpeningAgree(t *testing.T) {
	var l List
	var sc Scene
	for _, s := range doors(t, 100) {
		s.draw(&l, &sc, 800, 800)
		h, l := sc.frame[fit.HingeSide], sc.frame[fit.LatchSide]
		top, floor := sc.frame[fit.HeadSide], sc.frame[fit.FloorSide]
		for i, c := range [4][2]Pt{
			{sc.big.at(fit.HingeSide, h[len(h)-1].X, h[len(h)-1].Y), sc.big.at(fit.HeadSide, top[0].X, top[0].Y)},
			{sc.big.at(fit.LatchSide, l[len(l)-1].X, l[len(l)-1].Y), sc.big.at(fit.HeadSide, top[len(top)-1].X, top[len(top)-1].Y)},
			{sc.big.at(fit.HingeSide, h[0].X, h[0].Y), sc.big.at(fit.FloorSide, floor[0].X, floor[0].Y)},
			{sc.big.at(fit.LatchSide, l[0].X, l[0].Y), sc.big.at(fit.FloorSide, floor[len(floor)-1].X, floor[len(floor)-1].Y)},
		} {
			if d := distance(c[0], c[1]); d > 0.01 {
				t.Errorf("%s: corner %d lies at %v by its upright, at %v by its level edge", s.name, i, c[0], c[1])
			}
		}
	}
}

func TestThePlanIsTrueToScale(t *testing.T) {
	var l List
	var sc Scene
	for _, s := range doors(t, 50) {
		s.view.Show = Plan
		s.draw(&l, &sc, 500, 500)
		c := sc.cutLeaf(sc.section, sc.now)
		closed := sc.cutLeaf(sc.section, sc.closed)
		for i := range 2 {
			drawn := distance(sc.plan.to(c.knuckle[i]), sc.plan.to(c.stop[i])) / sc.plan.s
			if want := distance(closed.knuckle[i], closed.stop[i]); math.Abs(drawn-want) > 0.05 {
				t.Errorf("%s: edge %d is drawn %.3f mm thick turned, %.3f closed", s.name, i, drawn, want)
			}
		}
	}
}

func TestVerdictsShow(t *testing.T) {
	var l List
	var sc Scene
	for _, s := range doors(t, 100) {
		s.view.Show, s.view.Lens = Front, Lens{}
		f := s.draw(&l, &sc, 800, 800)
		var drawn, want [Inks]bool
		for _, m := range l.Marks {
			drawn[m.Ink] = true
		}
		for e := range fit.Edges {
			g, limits := f.Gaps[e], s.w.Gaps[e]
			if g.Least < -hair {
				want[BindFill] = true
			}
			if g.Least < limits.Least-hair {
				want[TightFill] = true // also under what binds
			}
			if g.Most > limits.Most+hair {
				want[SlackFill] = true
			}
		}
		for _, ink := range []Ink{BindFill, TightFill, SlackFill} {
			if drawn[ink] != want[ink] {
				t.Errorf("%s: ink %d drawn: %v, want %v", s.name, ink, drawn[ink], want[ink])
			}
		}
	}
}

func TestTheFactorIsAlwaysWritten(t *testing.T) {
	tests := []struct {
		name   string
		factor float64
		want   string
	}{
		{"chosen for a square door", 0, "drawn 12 times true size"},
		{"asked for", 5, "drawn 5 times true size"},
		{"with a decimal", 2.5, "drawn 2.5 times true size"},
		{"true to scale", 1, "Drawn true to scale"},
		{"more than the door bears", 1e4, "times true size"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var l List
			var sc Scene
			s := situations()[0]
			s.view.Factor, s.view.Show = tt.factor, Front
			s.draw(&l, &sc, 360, 400)
			all := ""
			for _, m := range l.Marks {
				if m.Kind == Text {
					all += m.Text + " "
				}
			}
			if !strings.Contains(all, tt.want) {
				t.Errorf("texts are %q, want %q among them", all, tt.want)
			}
			if sc.Factor() > 1e3 {
				t.Errorf("factor %g was used", sc.Factor())
			}
		})
	}
}

func TestAMirroredDrawingIsTheMirrorImage(t *testing.T) {
	for _, s := range append(doors(t, 20), worked()...) {
		s.view.Show, s.view.Lens, s.view.Sight = Front, Lens{}, nil
		var left, right List
		var sc Scene
		s.view.RightHung = false
		s.draw(&left, &sc, 600, 700)
		s.view.RightHung = true
		s.draw(&right, &sc, 600, 700)
		if len(left.Marks) != len(right.Marks) {
			t.Errorf("%s: %d marks, mirrored %d", s.name, len(left.Marks), len(right.Marks))
			continue
		}
		for k := range left.Marks {
			a, b := &left.Marks[k], &right.Marks[k]
			if a.Ink != b.Ink || a.To-a.From != b.To-b.From || a.Kind == Text && a.Anchor != End-b.Anchor {
				t.Fatalf("%s: mark %d is %+v, mirrored %+v", s.name, k, *a, *b)
			}
			if a.Ink == Paper {
				continue // the sheet itself
			}
			for i := range a.To - a.From {
				p, q := left.Points[a.From+i], right.Points[b.From+i]
				if math.Abs(600-p.X-q.X) > 1e-6 || math.Abs(p.Y-q.Y) > 1e-6 {
					t.Fatalf("%s: mark %d %+v has %v, mirrored %v", s.name, k, *a, p, q)
				}
			}
		}
	}
}

func TestDrawingAgainMakesNoGarbage(t *testing.T) {
	var l List
	var sc Scene
	all := worked()
	for _, s := range situations() {
		s.view.Show = Both
		all = append(all, s)
	}
	for _, s := range all {
		f := new(fit.Fit)
		fit.Evaluate(f, &s.d)
		v := s.view
		v.Width, v.Height = 1000, 850
		again := func() { sc.Draw(&l, f, &s.d, &s.a, &s.w, v) }
		again()
		if n := testing.AllocsPerRun(20, again); n > 4 {
			t.Errorf("%s: %g allocations a drawing", s.name, n)
		}
	}
}

func TestNothingToDrawDrawsNothingBad(t *testing.T) {
	var l List
	var sc Scene
	nan := math.NaN()
	broken := square()
	broken.Frame.HingeJamb = geom.Level(nan)
	broken.Leaf.Width = 0
	for name, d := range map[string]door.Door{"empty door": {}, "measures that are no numbers": broken} {
		t.Run(name, func(t *testing.T) {
			for _, sh := range sheets {
				var a door.Anatomy
				w := wanted()
				sc.Draw(&l, new(fit.Fit), &d, &a, &w, View{Width: sh.width, Height: sh.height, Show: sh.show, Lens: Lens{On: true}})
				if len(l.Marks) == 0 {
					t.Error("not even the sheet")
				}
				for _, p := range l.Points {
					if p.X-p.X != 0 || p.Y-p.Y != 0 {
						t.Fatalf("%s: the point %v", sh.name, p)
					}
				}
				sc.Hit(Pt{100, 100})
				sc.LensAt(Pt{100, 100})
				sc.SwingAt(Pt{100, 100})
				sc.SectionAt(Pt{100, 100})
			}
		})
	}
}

// However a door is looked at, nothing that is no number reaches the list.
func FuzzView(f *testing.F) {
	f.Add(360.0, 640.0, 12.0, 1000.0, 0.5, 700.0, 13.0, uint8(0))
	f.Add(1.0, 1e4, -3.0, -1e9, 4.0, math.Inf(1), 1e3, uint8(7))
	f.Add(math.NaN(), 0.0, 1e9, math.NaN(), math.NaN(), 0.0, -1.0, uint8(0xff))
	all := append(situations(), demoJobs(f)...)
	f.Fuzz(func(t *testing.T, w, h, factor, section, swing, place, size float64, how uint8) {
		s := all[int(how)%len(all)]
		var fitted fit.Fit
		fit.Evaluate(&fitted, &s.d)
		var l List
		var sc Scene
		sc.Draw(&l, &fitted, &s.d, &s.a, &s.w, View{
			Width: w, Height: h, Show: Show(how % 3), Factor: factor, Section: section, Swing: geom.Angle(swing),
			Lens: Lens{On: how&8 != 0, Edge: fit.Edge(how % 5), Place: place}, RightHung: how&16 != 0, TextSize: size,
		})
		for k := range l.Marks {
			m := &l.Marks[k]
			for _, p := range l.Points[m.From:m.To] {
				if p.X-p.X != 0 || p.Y-p.Y != 0 {
					t.Fatalf("mark %+v has the point %v", *m, p)
				}
			}
		}
		sc.Hit(Pt{w / 2, h / 2})
		l.SVG(&Day)
	})
}

func BenchmarkDraw(b *testing.B) {
	for _, s := range situations()[:5] {
		b.Run(s.name, func(b *testing.B) {
			var l List
			var sc Scene
			f := new(fit.Fit)
			fit.Evaluate(f, &s.d)
			v := s.view
			v.Width, v.Height = 1000, 850
			b.ReportAllocs()
			for i := range b.N {
				v.Swing = geom.Angle(i%90) * geom.Degree
				sc.Draw(&l, f, &s.d, &s.a, &s.w, v)
			}
		})
	}
}
