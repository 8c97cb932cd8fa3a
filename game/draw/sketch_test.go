package draw

import (
	"testing"
)

// sketches has one for each tool, each close-up and each thing.
func sketches() (names []string, all []Sketch) {
	const w, h = 768, 1992
	opening := Sketch{Of: TheOpening, Width: w, Height: h, Hinges: []float64{1790, 270}}
	leaf := Sketch{Of: TheLeaf, Width: 762, Height: 1978, Hinges: []float64{1786, 270}}
	hung, floor := leaf, Sketch{Of: TheFloor, Width: w, Height: w}
	hung.Of = TheHung
	add := func(name string, k Sketch, laid ...Laid) {
		k.Laid = laid
		names, all = append(names, name), append(all, k)
	}
	add("tape", opening, Laid{Tape, Pt{0, 1000}, Pt{w, 1000}, Along})
	add("level", opening, Laid{Level, Pt{w, 50}, Pt{w, 1950}, Inside})
	add("straightedge", leaf, Laid{Straightedge, Pt{762, 50}, Pt{762, 1900}, Outside}, Laid{Place, Pt{762, 990}, Pt{762, 990}, Outside})
	add("stick", leaf, Laid{Stick, Pt{0, 50}, Pt{762, 50}, Along}, Laid{Stick, Pt{0, 1900}, Pt{762, 1900}, Along})
	add("cord", opening, Laid{Cord, Pt{0, 0}, Pt{w, h}, Along}, Laid{Cord, Pt{0, h}, Pt{w, 0}, Along})
	add("blade", leaf, Laid{Blade, Pt{762, 1978}, Pt{262, 1978}, Outside}, Laid{Blade, Pt{762, 1978}, Pt{762, 1478}, Outside})
	add("floor", floor, Laid{Level, Pt{0, 0}, Pt{500, 500}, Along})
	right := opening
	right.RightHung = true
	add("right-hung", right, Laid{Tape, Pt{0, 0}, Pt{0, 1790}, Inside})
	for i, c := range []struct {
		name string
		k    Sketch
		near CloseUp
		spot Pt
	}{
		{"gap", hung, GapNear, Pt{762, 100}}, {"gap-floor", hung, GapNear, Pt{600, 0}}, {"rub", hung, RubNear, Pt{300, 1978}}, {"stop-gap", hung, StopNear, Pt{762, 1800}},
		{"rebate", opening, RebateNear, Pt{0, 1000}}, {"stop-width", opening, StopWidthNear, Pt{0, 0}}, {"stand", hung, StandNear, Pt{762, 990}},
		{"thickness", leaf, ThickNear, Pt{0, 0}}, {"bevel", leaf, BevelNear, Pt{762, 0}}, {"leaf-gain", hung, LeafGainNear, Pt{0, 1786}},
		{"jamb-gain", hung, JambGainNear, Pt{0, 1786}}, {"leaf-packer", hung, LeafPackerNear, Pt{0, 270}}, {"jamb-packer", hung, JambPackerNear, Pt{0, 270}},
		{"folded", hung, FoldedNear, Pt{0, 1786}}, {"pin", hung, PinNear, Pt{0, 1786}}, {"plate", hung, PlateNear, Pt{0, 1786}},
	} {
		c.k.Near, c.k.Spot, c.k.RightHung = c.near, c.spot, i%4 == 3
		add(c.name, c.k)
	}
	return names, all
}

// The small pictures as text; open them in a browser to look at them. After a change
// that is meant: go test ./game/draw -run Sketch -update
func TestSketchGolden(t *testing.T) {
	names, all := sketches()
	for i, name := range names {
		t.Run(name, func(t *testing.T) {
			var l List
			all[i].Draw(&l, 160, 200)
			golden(t, "sketch-"+name, l.SVG(&Day))
		})
	}
}

// A sketch keeps to its sheet at any size, and a right-hung one is the mirror image.
func TestSketchKeepsToItsSheet(t *testing.T) {
	names, all := sketches()
	for i := range all {
		for _, w := range []float64{96, 120, 160, 320} {
			h := 1.25 * w
			var l, m List
			all[i].Draw(&l, w, h)
			if len(l.Marks) < 8 {
				t.Errorf("%s: %d marks", names[i], len(l.Marks))
			}
			other := all[i]
			other.RightHung = !other.RightHung
			other.Draw(&m, w, h)
			for _, p := range l.Points {
				if !(p.X > -2 && p.X < w+2 && p.Y > -2 && p.Y < h+2) {
					t.Fatalf("%s on %v px: a point at %v", names[i], w, p)
				}
			}
			if len(m.Marks) != len(l.Marks) {
				t.Fatalf("%s: %d marks, mirrored %d", names[i], len(l.Marks), len(m.Marks))
			}
			for k := range l.Marks {
				a, b := l.Points[l.Marks[k].From], m.Points[m.Marks[k].From]
				if l.Marks[k].Kind == Fill && l.Marks[k].To-l.Marks[k].From == 4 && all[i].Near == NoCloseUp && (a.X+b.X-w > 1e-6 || a.X+b.X-w < -1e-6) {
					t.Errorf("%s: a corner at %v is at %v in the mirror", names[i], a, b)
				}
			}
		}
	}
}

func TestSketchOfNothing(t *testing.T) {
	for _, k := range []Sketch{{}, {Width: 700}, {Width: -1, Height: 2000}} {
		var l List
		k.Draw(&l, 160, 200)
		if len(l.Marks) != 0 {
			t.Errorf("%+v: %d marks", k, len(l.Marks))
		}
	}
}

// The place asked for is marked on the front picture, and nowhere in plan.
func TestAskedIsMarked(t *testing.T) {
	names, all := sketches()
	for i := range all {
		for _, s := range situations() {
			if s.name != "square" {
				continue
			}
			var sc Scene
			var bare, marked List
			s.view.Show = Front
			s.draw(&bare, &sc, 600, 700)
			s.view.Asked = &all[i]
			s.draw(&marked, &sc, 600, 700)
			if got, want := len(marked.Marks) > len(bare.Marks), all[i].Of != TheFloor; got != want {
				t.Errorf("%s: marked %v", names[i], got)
			}
		}
	}
}
