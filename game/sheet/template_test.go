package sheet

import (
	"math"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/internal/demos"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// scribed is a job with a scribed line on every edge, hung on the hand given.
func scribed(t *testing.T, hand game.Hand, e door.Edge) game.Job {
	j := demos.Job(t, "2-terrace-falling-head")
	j.Hand = hand
	line := geom.Through(100, 0, 333, 2.2, 520, 0.4, 700, 1.9)
	if e.Upright() {
		line = geom.Through(300, 0, 700, 3.3, 1100, 1.2, 1900, 2.4)
	}
	j.Options = []game.Option{{Name: "Scribe", Moves: []trim.Move{{Kind: trim.Scribe, Edge: e, Line: line}}}}
	return j
}

// A template's two lines stand as far apart as the model's edges, everywhere along them, and
// the line to cut to on the side the timber is on: leaf knuckle face up, hinges where they are.
func TestTemplateIsTheModel(t *testing.T) {
	for _, hand := range []game.Hand{game.Left, game.Right} {
		for e := range door.Edges {
			j := scribed(t, hand, e)
			a := &Ask{Job: &j, Options: []int{0}, Kind: Template, Paper: Papers[0]}
			p := planOf(a, 0)
			all := p.templates(a, a.bench(&p.before.Door, nil))
			if len(all) != 1 {
				t.Fatalf("%d templates", len(all))
			}
			q := &all[0]
			was, now := p.before.Door.Leaf, p.after.Door.Leaf
			old, in := was.Line(e)
			is, _ := now.Line(e)
			ends := was.Ends(e, 0)
			// to the right on the page is +u, or against v where the edge lies; mirrored for
			// the other hand
			right := 1.0
			if !e.Upright() {
				right = -1
			}
			if hand == game.Right {
				right = -right
			}
			for i := range 101 {
				s := q.lo + (q.hi-q.lo)*float64(i)/100
				edge, cut := acrossAt(q.lines[0].at, s), acrossAt(q.lines[1].at, s)
				want := in * (is.At(ends.Lo+s) - old.At(ends.Lo+s))
				if got := (cut - edge) * right * in; math.Abs(got-want) > 1e-9 {
					t.Errorf("%s, edge %d, %.0f along: %.4f off, the model %.4f", hand, e, s, got, want)
				}
			}
			// nothing comes off outside what is drawn
			for _, s := range []float64{q.lo - 0.5, q.hi + 0.5} {
				if s > 0 && s < ends.Length() && math.Abs(is.At(ends.Lo+s)-old.At(ends.Lo+s)) > 0.05 {
					t.Errorf("edge %d: %v is off at %v, outside the template", e, is.At(ends.Lo+s)-old.At(ends.Lo+s), s)
				}
			}
		}
	}
}

func acrossAt(p []spot, s float64) float64 {
	for i := 1; i < len(p); i++ {
		if s <= p[i].along || i == len(p)-1 {
			a, b := p[i-1], p[i]
			return a.across + (b.across-a.across)*(s-a.along)/(b.along-a.along)
		}
	}
	return math.NaN()
}

// Like letters lie on each other: a joint's crosses stand as far apart on both strips, and the
// heavy line as far from them; every strip is true to size.
func TestStripsMeet(t *testing.T) {
	for _, paper := range Papers {
		j := scribed(t, game.Left, door.LatchSide)
		pages, err := Pages(&Ask{Job: &j, Options: []int{0}, Kind: Template, Paper: paper})
		if err != nil {
			t.Fatal(err)
		}
		joints := map[string][]float64{} // letter: where its crosses and the heavy line stand, from the first cross
		for i := range pages {
			p := &pages[i]
			var crosses, heavy [][2]draw.Pt
			for k := range p.Marks {
				m := &p.Marks[k]
				if m.Kind != draw.Stroke || m.To-m.From < 2 {
					continue
				}
				a, b := p.Points[m.From], p.Points[m.To-1]
				if m.To-m.From == 2 && math.Abs(b.X-a.X-3*MM) < 1e-6 && math.Abs(b.Y-a.Y-3*MM) < 1e-6 {
					crosses = append(crosses, [2]draw.Pt{a, b})
				}
				if m.Width == thick && m.To-m.From >= 2 && math.Abs(b.Y-a.Y) > 50 {
					heavy = append(heavy, [2]draw.Pt{a, b})
				}
			}
			for k := range p.Marks {
				m := &p.Marks[k]
				if m.Kind != draw.Text || !m.Bold || len(m.Text) != 1 {
					continue
				}
				at := p.Points[m.From]
				y := at.Y + 1*MM // of the joint, which the letter stands on
				var xs []float64
				for _, c := range crosses {
					mid := draw.Pt{X: (c[0].X + c[1].X) / 2, Y: (c[0].Y + c[1].Y) / 2}
					if math.Abs(mid.Y-y) < 0.5 && mid.X > at.X-10*MM && mid.X < at.X+60*MM {
						xs = append(xs, mid.X)
					}
				}
				if len(xs) < 2 {
					t.Fatalf("%s: joint %s has crosses at %v", paper.Name, m.Text, xs)
				}
				for _, h := range heavy {
					if h[0].X > xs[0] && h[0].X < xs[1] {
						joints[m.Text] = append(joints[m.Text], xs[1]-xs[0], h[0].X+(h[1].X-h[0].X)*(y-h[0].Y)/(h[1].Y-h[0].Y)-xs[0])
						break
					}
				}
			}
		}
		if len(joints) < 4 {
			t.Errorf("%s: only %d joints", paper.Name, len(joints))
		}
		for letter, x := range joints {
			if len(x) != 4 || math.Abs(x[0]-x[2]) > 0.01 || math.Abs(x[1]-x[3]) > 0.2*MM {
				t.Errorf("%s: joint %s: %v", paper.Name, letter, x)
			}
		}
	}
}

// Straight even cuts need no template, and it is said.
func TestNoTemplate(t *testing.T) {
	j := demos.Job(t, "7-station-house-hinge-bound")
	pages, err := Pages(&Ask{Job: &j, Options: []int{1}, Kind: Template, Paper: Papers[0]})
	if err != nil || len(pages) != 1 {
		t.Fatalf("%d pages, %v", len(pages), err)
	}
	said := ""
	for _, m := range pages[0].Marks {
		said += m.Text + " "
	}
	if !strings.Contains(said, "the marking-out sheet is enough") {
		t.Errorf("%q", said)
	}
}
