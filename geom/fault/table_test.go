package fault_test

import (
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fault"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// sizes are the opening's height and width.
func sizes(d *door.Door) (high, wide float64) {
	hinge, latch := d.Frame.HeadCorners()
	return (hinge.Y + latch.Y) / 2, latch.X - hinge.X
}

// sloped gives a profile of two stations or more raised by so much at one place, straight
// from nothing at 0.
func sloped(p geom.Profile, at, by float64) geom.Profile {
	q := p.Shift(0)
	for i := range q {
		q[i].Value += by * q[i].At / at
	}
	return q
}

// settled lets the hinge jamb go down beside the latch jamb by so much: seen from its
// foot, head and floor rise towards the latch.
func settled(d *door.Door, by float64) {
	_, wide := sizes(d)
	d.Frame.Head = sloped(d.Frame.Head, wide, by)
	for _, row := range d.Floor.Heights {
		for i, r := range d.Floor.Radii {
			row[i] += by * r / wide
		}
	}
}

// TestFaultTables takes what manuals' tables list beside the kinds of fault of this
// package: what a building, a hinge or a season does to a sound door, what is seen, and
// what is done.
func TestFaultTables(t *testing.T) {
	type act struct {
		by    float64
		moves []trim.Move
	}
	for _, row := range []struct {
		listed string // and its source
		do     func(d *door.Door, f *fit.Fit) (a act, ok bool)
		says   func(s *seen) bool
		leaves map[fault.SymptomKind]bool // what the cure does not reach
	}{
		{"gains too shallow: wide hinge gap, lock edge rubs; cut them deeper (Griffith; Noyes)", func(d *door.Door, f *fit.Fit) (a act, ok bool) {
			a.by = f.Gaps[door.LatchSide].Least + 0.6
			for i := range d.Hinges {
				h := &d.Hinges[i]
				if h.LeafGain < a.by/2 || h.JambGain < a.by/2 {
					return a, false
				}
				h.LeafGain -= a.by / 2
				h.JambGain -= a.by / 2
			}
			a.moves = []trim.Move{{Kind: trim.Sink, On: trim.OnBoth, First: a.by / 2}}
			return a, true
		}, func(s *seen) bool {
			return s.has(fault.Light, door.HingeSide, 0, 1) && s.has(fault.Rubs, door.LatchSide, 0, 1)
		}, nil},
		{"hinges off one line: creak; re-align the pins (Fairham)", func(d *door.Door, _ *fit.Fit) (a act, ok bool) {
			if len(d.Hinges) < 3 {
				return a, false
			}
			d.Hinges[1].JambPacker += 1.4
			a.moves = []trim.Move{{Kind: trim.Pack, Hinge: 2, On: trim.OnJamb, First: -1.4}}
			return a, true
		}, func(s *seen) bool { return s.any(fault.Creaks) }, nil},
		{"shrunk leaf; shim each hinge alike (US Navy 14045; Whitman)", func(d *door.Door, f *fit.Fit) (a act, ok bool) {
			a.by = 4.3 - f.Gaps[door.LatchSide].Most
			d.Leaf.Closing = d.Leaf.Closing.Shift(-a.by)
			a.moves = []trim.Move{{Kind: trim.Pack, On: trim.OnLeaf, First: 0.5}}
			return a, f.Gaps[door.HingeSide].Most < 3.5
		}, func(s *seen) bool { return s.has(fault.Light, door.LatchSide, 0, 1) }, nil},
		{"hinge side of the building settles: lock corner drags the floor; plane the bottom, a strip in the gap (US Navy 14045; a household encyclopedia)", func(d *door.Door, f *fit.Fit) (a act, ok bool) {
			a.by = gap(f, door.FloorSide, 1) + 1
			settled(d, a.by)
			a.moves = []trim.Move{
				{Kind: trim.Plane, Edge: door.FloorSide, Last: a.by},
				{Kind: trim.Plane, Edge: door.HeadSide, First: 8, Last: 8},
				{Kind: trim.Splice, Edge: door.HeadSide, Face: trim.Knuckle, Stock: d.Leaf.Thickness, First: 8, Last: 8 + a.by},
			}
			return a, true
		}, func(s *seen) bool {
			return s.has(fault.Rubs, door.FloorSide, 0.5, 1) || s.any(fault.RubsFloor)
		}, nil},
		{"lock side settles: binds at the head; plane the top (US Navy 14045)", func(d *door.Door, f *fit.Fit) (a act, ok bool) {
			a.by = gap(f, door.HeadSide, 1) + 0.8
			settled(d, -a.by)
			a.moves = []trim.Move{{Kind: trim.Plane, Edge: door.HeadSide, Last: a.by}}
			return a, true
		}, func(s *seen) bool { return s.has(fault.Rubs, door.HeadSide, 0.5, 1) }, nil},
		{"frame racked: sticks at a corner, gaps at the others; plane the corners (a household encyclopedia)", func(d *door.Door, f *fit.Fit) (a act, ok bool) {
			high, wide := sizes(d)
			rise := gap(f, door.HeadSide, 1) + 0.4
			a.by = rise * high / wide // at the head, towards the hinges
			d.Frame.HingeJamb, d.Frame.LatchJamb = sloped(d.Frame.HingeJamb, high, -a.by), sloped(d.Frame.LatchJamb, high, -a.by)
			a.moves = []trim.Move{{Kind: trim.Plane, Edge: door.HeadSide, Last: rise}}
			var g fit.Fit
			fit.Evaluate(&g, d)
			if off := fault.Wanted().SwingFloor.Least + 0.3 - g.Swing[door.FloorSide].Least; off > 0 {
				a.moves = append(a.moves, trim.Move{Kind: trim.Plane, Edge: door.FloorSide, First: off, Last: off})
			}
			return a, true
		}, func(s *seen) bool {
			return s.has(fault.Rubs, door.HeadSide, 0.5, 1) && gap(s.now, door.FloorSide, 1) > gap(s.was, door.FloorSide, 1)+1
		}, map[fault.SymptomKind]bool{fault.SwingsOpen: true}}, // its jamb leans on
	} {
		t.Run(row.listed, func(t *testing.T) {
			tried := 0
			for n := range many(*doors * 2) {
				sound := fault.Sound(uint64(n), float64(n%5)/4)
				var s seen
				s.sound = &sound
				s.was, _ = look(t, &sound)
				is := sound
				is.Door = sound.Door.Clone()
				a, ok := row.do(&is.Door, s.was)
				if !ok {
					continue
				}
				tried++
				s.is = &is
				s.now, s.shows = look(t, &is)
				if !row.says(&s) {
					t.Fatalf("seed %d, by %v: shows %+v", n, a.by, s.shows)
				}
				cured, steps := trim.All(is, a.moves)
				for _, x := range steps {
					if x.Why != nil {
						t.Fatalf("seed %d: %+v is refused: %+v", n, x.Move, x.Why)
					}
				}
				out, shows := wrong(t, &cured)
				for _, x := range shows {
					if !row.leaves[x.Kind] {
						t.Fatalf("seed %d, by %v: cured, it shows %+v", n, a.by, shows)
					}
				}
				if len(out) > 0 {
					t.Fatalf("seed %d, by %v: cured, it has %+v", n, a.by, out)
				}
			}
			if tried < many(*doors*2)/20 {
				t.Errorf("on %d doors only", tried)
			}
		})
	}
}

// Whitman, First Aid for the Ailing House, and a home-repair guide: a toe that drags is
// raised by a shim behind the bottom hinge or by sinking the top one, a corner that
// hits the head lowered by a shim behind the top hinge or by sinking the bottom one.
func TestWhichWayAShimMovesTheToe(t *testing.T) {
	for n := range many(*doors) {
		p := fault.Sound(uint64(n), float64(n%5)/4)
		last := len(p.Door.Hinges)
		was, _ := look(t, &p)
		s := seen{sound: &p}
		for _, row := range []struct {
			move trim.Move
			up   bool
		}{
			{trim.Move{Kind: trim.Pack, Hinge: last, On: trim.OnLeaf, First: 1}, true},
			{trim.Move{Kind: trim.Sink, Hinge: 1, On: trim.OnLeaf, First: 1}, true},
			{trim.Move{Kind: trim.Pack, Hinge: 1, On: trim.OnLeaf, First: 1}, false},
			{trim.Move{Kind: trim.Sink, Hinge: last, On: trim.OnLeaf, First: 1}, false},
		} {
			is, _, why := trim.Do(p, row.move)
			if why != nil {
				t.Fatalf("seed %d: %+v is refused: %+v", n, row.move, why)
			}
			now, _ := look(t, &is)
			if rise := s.toe(now, 0) - s.toe(was, 0); rise == 0 || rise > 0 != row.up {
				t.Errorf("seed %d: %+v raises the toe by %v", n, row.move, rise)
			}
		}
	}
}
