package draw

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/fit"
)

func TestTheHandleGivesTheSwingBack(t *testing.T) {
	var l List
	var sc Scene
	for _, s := range doors(t, 60) {
		for _, show := range []Show{Both, Plan} {
			s.view.Show = show
			s.draw(&l, &sc, 800, 600)
			if got := sc.SwingAt(sc.Grip()); math.Abs((got - sc.Swing()).Degrees()) > 0.05 {
				t.Errorf("%s: the handle of %.3f° reads %.3f°", s.name, sc.Swing().Degrees(), got.Degrees())
			}
			if got := sc.Hit(sc.Grip()); got.Kind != SwingHandle {
				t.Errorf("%s: the handle is hit as %+v", s.name, got)
			}
		}
	}
}

func TestSwingAtStaysWithinTheSwing(t *testing.T) {
	var l List
	var sc Scene
	for _, s := range doors(t, 20) {
		s.view.Show = Plan
		f := s.draw(&l, &sc, 500, 500)
		for x := 0.0; x <= 500; x += 50 {
			for y := 0.0; y <= 500; y += 50 {
				if a := sc.SwingAt(Pt{x, y}); a < f.Closed || a > max(s.d.Opens, f.Closed) {
					t.Errorf("%s: (%g, %g) reads %.2f°", s.name, x, y, a.Degrees())
				}
			}
		}
	}
}

func TestTheSectionLineGivesItsHeightBack(t *testing.T) {
	var l List
	var sc Scene
	for _, s := range doors(t, 60) {
		s.view.Show = Both
		s.draw(&l, &sc, 800, 600)
		if got := sc.SectionAt(sc.SectionGrip()); math.Abs(got-sc.Section()) > 0.01 {
			t.Errorf("%s: the line at %.2f reads %.2f", s.name, sc.Section(), got)
		}
		if got := sc.Hit(sc.SectionGrip()); got.Kind != SectionLine {
			t.Errorf("%s: its handle is hit as %+v", s.name, got)
		}
	}
}

func TestAPlaceOnAnEdgeIsFoundAgain(t *testing.T) {
	var l List
	var sc Scene
	for _, s := range doors(t, 60) {
		s.view.Show = Front
		f := s.draw(&l, &sc, 800, 900)
		for e := range fit.Edges {
			r := f.Gaps[e].Range()
			for _, part := range []float64{0.2, 0.45, 0.7} {
				place := r.Lo + part*r.Length()
				at := sc.LensPoint(e, place)
				edge, got, near := sc.LensAt(at)
				if !near || edge != e || math.Abs(got-place) > 1 {
					t.Errorf("%s: edge %d at %.1f reads edge %d at %.1f, near %v", s.name, e, place, edge, got, near)
				}
				if hit := sc.Hit(at); hit.Kind != GapEdge || hit.Edge != e {
					t.Errorf("%s: edge %d at %.1f is hit as %+v", s.name, e, place, hit)
				}
			}
		}
	}
}

func TestHit(t *testing.T) {
	var l List
	var sc Scene
	s := situations()[0]
	s.view.Swing = 45 * geom.Degree
	s.draw(&l, &sc, 1000, 850)
	c := sc.cutLeaf(sc.Section(), sc.now)
	mid := sc.plan.to(between(c.knuckle[0], c.knuckle[1], 0.4))
	tests := []struct {
		name string
		at   Pt
		want TargetKind
	}{
		{"off the sheet", Pt{-50, -50}, Nothing},
		{"the middle of the leaf from the front", Pt{sc.frontBox.middle(), 500}, Nothing},
		{"the leaf in plan", mid, PlanLeaf},
		{"beside the leaf in plan", Pt{mid.X + 60, mid.Y - 60}, Nothing},
		{"the latch jamb in plan", sc.plan.to(Pt{769, -20}), GapEdge},
		{"the section line", Pt{sc.outer.x0 + 3, sc.SectionGrip().Y + 5}, SectionLine},
		{"a little above the section line", Pt{sc.outer.x0 + 3, sc.SectionGrip().Y - lineReach - 2}, Nothing},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := sc.Hit(tt.at); got.Kind != tt.want {
				t.Errorf("Hit(%v) = %+v, want kind %d", tt.at, got, tt.want)
			}
		})
	}
}

// The loupe must not lie under the finger that calls it.
func TestTheLoupeKeepsClearOfTheFinger(t *testing.T) {
	var l List
	var sc Scene
	s := situations()[1]
	for _, sh := range sheets {
		s.view.Show = sh.show
		for x := 4.0; x < sh.width; x += 24 {
			for y := 4.0; y < sh.height; y += 24 {
				s.view.Lens = Lens{On: true, Edge: fit.LatchSide, Place: 1500, Near: Pt{x, y}}
				s.draw(&l, &sc, sh.width, sh.height)
				r := min(max(0.2*min(sh.width, sh.height), loupeLeast), loupeMost)
				at := sc.loupePlace(Pt{x, y}, r, sc.loupeTag(fit.LatchSide, 1500))
				if d := distance(at, Pt{x, y}); d < r+10 {
					t.Errorf("%s: finger at (%g, %g), loupe of %.0f at %v", sh.name, x, y, r, at)
				}
			}
		}
	}
}
