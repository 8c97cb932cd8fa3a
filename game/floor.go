package game

import (
	"slices"

	"leafwright/game/measure"
	"leafwright/geom"
	"leafwright/geom/door"
)

// A file gives a floor as the simplest of three things that says it: one number,
// a level with a threshold under the closed leaf, or heights by distance and
// angle.

// sill is the angle over which a threshold falls off to the floor.
const sill = 1 * geom.Degree

// quarter is the angle a simple rise under the swing is given at.
const quarter = 90 * geom.Degree

// threshold gives a floor level at one height with a threshold's at angle 0.
func threshold(level, height float64) door.Floor {
	return door.Floor{Radii: []float64{0}, Angles: []geom.Angle{0, sill}, Heights: [][]float64{{height}, {level}}}
}

// isLevel tells whether the floor is one number, and which.
func isLevel(f *door.Floor) (level float64, ok bool) {
	if len(f.Radii) == 1 && f.Radii[0] == 0 && len(f.Angles) == 1 && f.Angles[0] == 0 {
		return f.Heights[0][0], true
	}
	return 0, false
}

// isThreshold tells whether the floor is a level with a threshold.
func isThreshold(f *door.Floor) (level, height float64, ok bool) {
	if len(f.Radii) == 1 && f.Radii[0] == 0 && len(f.Angles) == 2 && f.Angles[0] == 0 && f.Angles[1] == sill {
		return f.Heights[1][0], f.Heights[0][0], true
	}
	return 0, 0, false
}

// floor is a floor in the file.
type floor struct{ p *door.Floor }

func (v floor) read(n *node, miss missing) {
	if n.kind == numberNode {
		*v.p = door.FlatFloor(n.num)
		return
	}
	if n.kind != groupNode {
		miss("", n, "a number, a group with level and threshold, or a group with radii, angles and heights")
		return
	}
	sound := true
	wrong := func(under string, n *node, want string) { miss(under, n, want); sound = false }
	number := func(under string, n *node) float64 {
		if n.kind != numberNode {
			wrong(under, n, wantNumber)
		}
		return n.num
	}
	numbers := func(under string, n *node) (xs []float64) {
		if n.kind != listNode {
			wrong(under, n, "a list of numbers")
			return nil
		}
		for i := range n.items {
			xs = append(xs, number(under+index(i), &n.items[i]))
		}
		return xs
	}
	if n.get("level") != nil || n.get("threshold") != nil {
		n.strangers([]string{"level", "threshold"}, wrong)
		var level, height float64
		if m := n.get("level"); m != nil {
			level = number(".level", m)
		}
		if m := n.get("threshold"); m != nil {
			height = number(".threshold", m)
		}
		switch {
		case !sound:
		case n.get("threshold") == nil:
			*v.p = door.FlatFloor(level)
		default:
			*v.p = threshold(level, height)
		}
		return
	}
	n.strangers([]string{"radii", "angles", "heights"}, wrong)
	var f door.Floor
	for _, need := range []string{"radii", "angles", "heights"} {
		m := n.get(need)
		if m == nil {
			wrong("."+need, nil, "missing; a list is wanted beside "+other(need))
			continue
		}
		switch need {
		case "radii":
			f.Radii = numbers(".radii", m)
		case "angles":
			for _, a := range numbers(".angles", m) {
				f.Angles = append(f.Angles, geom.Angle(a)*geom.Degree)
			}
		case "heights":
			if m.kind != listNode {
				wrong(".heights", m, "a list of rows, one for each angle")
				continue
			}
			for i := range m.items {
				f.Heights = append(f.Heights, numbers(".heights"+index(i), &m.items[i]))
			}
		}
	}
	if sound {
		*v.p = f
	}
}

func other(name string) string {
	switch name {
	case "radii":
		return "angles and heights"
	case "angles":
		return "radii and heights"
	}
	return "radii and angles"
}

func (v floor) write() node {
	f := v.p
	if y, ok := isLevel(f); ok {
		return num(y)
	}
	if level, height, ok := isThreshold(f); ok {
		n := node{kind: groupNode}
		if level != 0 {
			n.put("level", num(level))
		}
		n.put("threshold", num(height))
		return n
	}
	n := node{kind: groupNode}
	n.put("radii", row(f.Radii...))
	angles := node{kind: listNode}
	for _, a := range f.Angles {
		angles.items = append(angles.items, num(inDegrees(a)))
	}
	n.put("angles", angles)
	heights := node{kind: listNode}
	for _, h := range f.Heights {
		heights.items = append(heights.items, row(h...))
	}
	n.put("heights", heights)
	return n
}

func (v floor) set(from value) { *v.p = door.Door{Floor: *from.(floor).p}.Clone().Floor }

func (v floor) same(as value) bool {
	a, b := v.p, as.(floor).p
	return slices.Equal(a.Radii, b.Radii) && slices.Equal(a.Angles, b.Angles) &&
		slices.EqualFunc(a.Heights, b.Heights, func(x, y []float64) bool { return slices.Equal(x, y) })
}

func (v floor) show(measure.Unit) string         { return "" }
func (v floor) take(string, measure.Unit) string { return "a value for one height at a time" }

// plainFloor is a floor that three numbers say: its level, the top of a threshold
// under the closed leaf, and its height at the closing edge with the leaf square
// open.
type plainFloor struct{ level, sill, open, reach float64 }

// plainOf tells whether a floor is a plain one, and which.
func plainOf(f *door.Floor) (plainFloor, bool) {
	var p plainFloor
	a, h := f.Angles, f.Heights
	switch {
	case len(a) == 1 && a[0] == 0:
		p.sill, p.level, p.open = h[0][0], h[0][0], h[0][0]
	case len(a) == 2 && a[0] == 0 && a[1] == sill:
		p.sill, p.level, p.open = h[0][0], h[1][0], h[1][0]
	case len(a) == 2 && a[0] == 0 && a[1] == quarter && len(f.Radii) == 2:
		p.sill, p.level, p.open = h[0][0], h[0][0], h[1][1]
	case len(a) == 3 && a[0] == 0 && a[1] == sill && a[2] == quarter && len(f.Radii) == 2:
		p.sill, p.level, p.open = h[0][0], h[1][0], h[2][1]
	default:
		return p, false
	}
	p.reach = f.Radii[len(f.Radii)-1]
	made := p.floor()
	return p, floor{f}.same(floor{&made})
}

// floor makes the simplest floor of the numbers.
func (p plainFloor) floor() door.Floor {
	if p.open == p.level {
		if p.sill == p.level {
			return door.FlatFloor(p.level)
		}
		return threshold(p.level, p.sill)
	}
	f := door.Floor{
		Radii:   []float64{0, p.reach},
		Angles:  []geom.Angle{0, quarter},
		Heights: [][]float64{{p.level, p.level}, {p.level, p.open}},
	}
	if p.sill != p.level {
		f.Angles = []geom.Angle{0, sill, quarter}
		f.Heights = append([][]float64{{p.sill, p.sill}}, f.Heights...)
	}
	return f
}
