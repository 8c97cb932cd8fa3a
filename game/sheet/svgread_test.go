package sheet

import (
	"bytes"
	"encoding/xml"
	"io"
	"math"
	"strings"
	"testing"

	"github.com/srwiley/oksvg"
	"github.com/srwiley/rasterx"
	"golang.org/x/image/math/fixed"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/geom"
	"leafwright/geom/fit"
)

// outlines reads a picture by oksvg, a library of others: the points of every line and
// face, one list for each stroke's or face's run of points, and whether it is closed.
type run struct {
	closed bool
	pts    []draw.Pt
}

func outlines(t *testing.T, data []byte) (all []run) {
	t.Helper()
	icon, err := oksvg.ReadIconStream(bytes.NewReader(data), oksvg.IgnoreErrorMode)
	if err != nil {
		t.Fatal(err)
	}
	px := func(x fixed.Int26_6) float64 { return float64(x) / 64 }
	for i := range icon.SVGPaths {
		p := icon.SVGPaths[i].Path
		for k := 0; k < len(p); {
			switch rasterx.PathCommand(p[k]) {
			case rasterx.PathMoveTo:
				all = append(all, run{pts: []draw.Pt{{X: px(p[k+1]), Y: px(p[k+2])}}})
				k += 3
			case rasterx.PathLineTo:
				r := &all[len(all)-1]
				r.pts = append(r.pts, draw.Pt{X: px(p[k+1]), Y: px(p[k+2])})
				k += 3
			case rasterx.PathClose:
				all[len(all)-1].closed = true
				k++
			default:
				t.Fatalf("a curve in the picture: command %d", p[k])
			}
		}
	}
	return all
}

// texts reads a picture's writing by encoding/xml.
func texts(t *testing.T, data []byte) (all []string) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(data))
	inside := false
	for {
		token, err := d.Token()
		if err == io.EOF {
			return all
		}
		if err != nil {
			t.Fatal(err)
		}
		switch e := token.(type) {
		case xml.StartElement:
			if inside = e.Name.Local == "text"; inside {
				all = append(all, "")
			}
		case xml.EndElement:
			inside = false
		case xml.CharData:
			if inside {
				all[len(all)-1] += string(e)
			}
		}
	}
}

// rounding is what the picture's figures and oksvg's, a 64th of a px, are good for.
const rounding = 0.05 + 1.0/64 + 1e-5

// A page read back from its SVG has the points and the words that were laid down.
func TestPagesReadBackFromSVG(t *testing.T) {
	read := 0
	for _, kind := range []Kind{Client, Work, Template} {
		for _, name := range []string{"Terrace house, back bedroom", "Station house, waiting room"} {
			j := clientJob(t, name)
			for _, p := range pagesOf(t, &Ask{Job: &j, Kind: kind, Paper: Papers[0], Options: []int{len(j.Options) - 1}, Words: "UK"}) {
				data := p.SVG(&draw.Print)
				got := outlines(t, data)
				var said []string
				n := 0
				for _, m := range p.Marks {
					if m.Kind == draw.Text {
						said = append(said, m.Text)
						continue
					}
					want := p.Points[m.From:m.To]
					if n >= len(got) || len(got[n].pts) != len(want) || got[n].closed != (m.Closed || m.Kind == draw.Fill) {
						t.Fatalf("%s, %s: mark %d is not read back", name, kind, n)
					}
					for i, q := range got[n].pts {
						if math.Abs(q.X-want[i].X) > rounding || math.Abs(q.Y-want[i].Y) > rounding {
							t.Fatalf("%s, %s: %v is read back as %v", name, kind, want[i], q)
						}
					}
					n++
					read++
				}
				if n != len(got) {
					t.Errorf("%s, %s: %d marks read back of %d laid down", name, kind, len(got), n)
				}
				if back := texts(t, data); strings.Join(back, "\n") != strings.Join(said, "\n") {
					t.Errorf("%s, %s: the words are read back as %q", name, kind, back)
				}
			}
		}
	}
	if read < 1000 {
		t.Errorf("only %d marks", read)
	}
}

// The leaf's outline read back from a picture at true scale is the model's to 0.01 mm.
func TestLeafReadBackFromSVG(t *testing.T) {
	for _, name := range []string{"Terrace house, back bedroom", "Weaver's cottage, stair door", "Coach house, tack room"} {
		j := clientJob(t, name)
		after := j.Try(0)
		var f fit.Fit
		fit.Evaluate(&f, &after.Door)
		var l draw.List
		var s draw.Scene
		s.Draw(&l, &f, &after.Door, &after.Anatomy, &j.Wanted, draw.View{Width: 40000, Height: 40000, Show: draw.Front, Factor: 1, Still: true, RightHung: j.Hand == game.Right})
		if s.Factor() != 1 {
			t.Fatalf("drawn %v times true size", s.Factor())
		}
		// the first face of the leaf's ink is its whole outline
		var drawn []draw.Pt
		n := 0
		all := outlines(t, l.SVG(&draw.Print))
		for _, m := range l.Marks {
			if m.Kind == draw.Fill && m.Ink == draw.Timber {
				drawn = all[n].pts
				break
			}
			if m.Kind != draw.Text {
				n++
			}
		}
		var model []draw.Pt // as it hangs, mm, y down as on paper
		leaf := &after.Door.Leaf
		c := leaf.Corners(0)
		place := func(u, v float64) {
			p := f.Place(geom.Vec{X: u, Y: v, Z: leaf.Face(u, v)}, f.Closed)
			if j.Hand == game.Right {
				p.X = -p.X
			}
			model = append(model, draw.Pt{X: p.X, Y: -p.Y})
		}
		for i := range 201 {
			k := float64(i) / 200
			between := func(a, b float64) float64 { return a + k*(b-a) }
			v := between(c.HangingFoot.Y, c.HangingHead.Y)
			place(leaf.Hanging.At(v), v)
			v = between(c.ClosingFoot.Y, c.ClosingHead.Y)
			place(leaf.Closing.At(v), v)
			u := between(c.HangingHead.X, c.ClosingHead.X)
			place(u, leaf.Top.At(u))
			u = between(c.HangingFoot.X, c.ClosingFoot.X)
			place(u, leaf.Bottom.At(u))
		}
		box := func(pts []draw.Pt) (lo, hi draw.Pt) {
			lo, hi = pts[0], pts[0]
			for _, p := range pts {
				lo, hi = draw.Pt{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}, draw.Pt{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
			}
			return lo, hi
		}
		lo, hi := box(drawn)
		from, to := box(model)
		scale := (hi.Y - lo.Y) / (to.Y - from.Y)
		if across := (hi.X - lo.X) / (to.X - from.X); scale < 10 || math.Abs(across/scale-1) > 2e-5 {
			t.Errorf("%s: %v px to the mm up, %v across", name, scale, across)
		}
		for _, p := range model {
			q := draw.Pt{X: lo.X + scale*(p.X-from.X), Y: lo.Y + scale*(p.Y-from.Y)}
			if d := aside(q, drawn) / scale; !(d <= 0.01) {
				t.Fatalf("%s: a place of the leaf is %.4f mm off the outline drawn", name, d)
			}
		}
	}
}

// aside gives how far a point lies from a closed line.
func aside(p draw.Pt, line []draw.Pt) float64 {
	least := math.Inf(1)
	for i, a := range line {
		b := line[(i+1)%len(line)]
		dx, dy := b.X-a.X, b.Y-a.Y
		k := 0.0
		if d := dx*dx + dy*dy; d > 0 {
			k = min(1, max(0, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/d))
		}
		least = min(least, math.Sqrt((p.X-a.X-k*dx)*(p.X-a.X-k*dx)+(p.Y-a.Y-k*dy)*(p.Y-a.Y-k*dy)))
	}
	return least
}
