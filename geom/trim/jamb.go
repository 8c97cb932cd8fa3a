package trim

import (
	"leafwright/geom"
	"leafwright/geom/door"
)

// planeJamb takes First..Last off the face of jamb or head, away from the opening. On
// the hinge jamb the gains' floors stay where they are: the leaf hangs where it hung
// and the gap grows.
func (w *work) planeJamb(m *Move) *Care {
	side, away := w.p.Door.Frame.Face(m.Edge)
	if side == nil {
		return &Care{About: NotThere, Member: Member{Part: Jamb, Edge: m.Edge}}
	}
	off := w.taper(m)
	*side = bent(*side, off, away, w.p.Door.Frame.Run(m.Edge))
	w.done.Frame = true
	w.done.Cuts++
	if m.Edge != door.HingeSide {
		return nil
	}
	w.p.Door.Hinges = append([]door.Hinge(nil), w.p.Door.Hinges...)
	for i := range w.p.Door.Hinges {
		h := &w.p.Door.Hinges[i]
		was := h.JambGain
		h.JambGain = max(0, was-max(0, off.At(h.JambHeight)))
		if h.JambGain < was {
			w.mind(Care{About: GainShallow, Member: Member{Part: Jamb, Edge: door.HingeSide, Index: i}, Left: h.JambGain, Need: was})
		}
	}
	return nil
}

// packJamb brings the face of jamb or head into the opening by First..Last: the
// whole lining is packed out, and on the hinge jamb the gains in it go with it as
// deep as they were.
func (w *work) packJamb(m *Move) *Care {
	side, away := w.p.Door.Frame.Face(m.Edge)
	if side == nil {
		return &Care{About: NotThere, Member: Member{Part: Jamb, Edge: m.Edge}}
	}
	*side = bent(*side, w.taper(m), -away, w.p.Door.Frame.Run(m.Edge))
	w.done.Frame = true
	return nil
}

// taper gives the move's amount along a side of the frame: First at its foot or its
// hinge end, Last at the other.
func (w *work) taper(m *Move) geom.Line {
	return straight(m.First, m.Last, w.p.Door.Frame.Run(m.Edge))
}

// bent gives the profile plus sign times the line; a profile of fewer than two
// stations gets them at the ends of the run.
func bent(p geom.Profile, by geom.Line, sign float64, run geom.Interval) geom.Profile {
	if len(p) < 2 && by.C1 == 0 {
		return p.Shift(sign * by.C0)
	}
	if len(p) < 2 {
		p = geom.Profile{{At: run.Lo, Value: p.At(run.Lo)}, {At: run.Hi, Value: p.At(run.Hi)}}
	}
	q := make(geom.Profile, len(p))
	for i, s := range p {
		q[i] = geom.Station{At: s.At, Value: s.Value + float64(sign*by.At(s.At))}
	}
	return q
}
