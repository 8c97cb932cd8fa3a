package trim

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
)

// narrow is the widest angle a threshold fills: a floor whose next heights lie
// farther off is a floor that falls away.
const narrow = 30 * geom.Degree

// threshold lets a threshold in under the closed leaf: its top is level at height
// Cover, and where the floor was higher it stays. It reaches Wide through the wall,
// from the frame's front edge towards the room.
//
// The floor is given by distance and angle, so a straight threshold can only be
// nearly said: its top is the row at angle 0, and the floor is what it was from
// the angle on at which a place as far out as the closing edge's foot is Wide in
// front of the plane z = 0. Between the two it falls off straight, which is lower
// than the threshold by as much as half its height there; and nearer the hinges,
// where Wide fills a greater angle, the fall comes too soon. A leaf is nearest to
// its threshold closed, where the row holds exactly.
func (w *work) threshold(m *Move) *Care {
	d := &w.p.Door
	f := grounded(d.Floor)
	const least = 0.1 * geom.Degree // between two angles of a floor
	r := d.Leaf.Corners(0).ClosingFoot.X
	if len(d.Hinges) > 0 {
		r += d.Hinges[len(d.Hinges)-1].Gap()
	}
	past := max(geom.Angle(math.Asin(max(0, min(1, m.Wide/max(r, 1))))), least)
	top, before, raised := make([]float64, len(f.Radii)), make([]float64, len(f.Radii)), false
	lowest := math.Inf(1)
	for k, radius := range f.Radii {
		was := f.Polar(radius, 0)
		top[k], before[k] = max(was, m.Cover), f.Polar(radius, past)
		lowest = min(lowest, was)
		raised = raised || m.Cover > was
	}
	if !raised {
		return &Care{About: TooThin, Left: m.Cover, Need: lowest}
	}
	is := door.Floor{Radii: f.Radii, Angles: []geom.Angle{0, past}, Heights: [][]float64{top, before}}
	for i, a := range f.Angles {
		switch {
		case a <= past:
		case a < past+least: // too near to tell apart: the fall ends there
			is.Angles[1], is.Heights[1] = a, f.Heights[i]
		default:
			is.Angles, is.Heights = append(is.Angles, a), append(is.Heights, f.Heights[i])
		}
	}
	d.Floor = is
	w.done.Frame = true
	return nil
}

// cover lays a covering of thickness Cover over the floor: all of it, or with a
// threshold all but that.
func (w *work) cover(m *Move) *Care {
	if m.Cover == 0 {
		return nil
	}
	f := grounded(w.p.Door.Floor)
	bare := hasThreshold(&f)
	rows := make([][]float64, len(f.Heights))
	for i, row := range f.Heights {
		rows[i] = row
		if bare && f.Angles[i] <= 0 {
			continue
		}
		rows[i] = make([]float64, len(row))
		for k, y := range row {
			rows[i][k] = y + m.Cover
		}
	}
	f.Heights = rows
	w.p.Door.Floor = f
	return nil
}

// hasThreshold tells whether the floor under the closed leaf stands above the floor
// beside it, everywhere along it.
func hasThreshold(f *door.Floor) bool {
	for i, a := range f.Angles {
		if a <= 0 {
			continue
		}
		if i == 0 || a > narrow {
			return false
		}
		for k, y := range f.Heights[i-1] {
			if y <= f.Heights[i][k] {
				return false
			}
		}
		return true
	}
	return false
}

// grounded gives the floor with heights to it: the level one says none.
func grounded(f door.Floor) door.Floor {
	if len(f.Radii) == 0 || len(f.Angles) == 0 {
		return door.FlatFloor(0)
	}
	return f
}
