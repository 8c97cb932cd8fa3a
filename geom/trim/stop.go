package trim

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// restop moves a stop away from the leaf, towards −z, by First at its foot or its
// hinge end and Last at the other.
func (w *work) restop(m *Move) *Care {
	stop := w.p.Door.Frame.Stop(m.Edge)
	if stop == nil {
		return &Care{About: NotThere, Member: Member{Part: StopMember, Edge: m.Edge}}
	}
	*stop = bent(*stop, w.taper(m), -1, w.p.Door.Frame.Run(m.Edge))
	w.done.Frame = true
	w.solid(m.Edge)
	return nil
}

// solid minds that a stop worked out of the solid cannot be taken off.
func (w *work) solid(e door.Edge) {
	if w.p.Anatomy.SolidStops {
		w.mind(Care{About: SolidStop, Member: Member{Part: StopMember, Edge: e}})
	}
}

// Numbers of a stop that follows the leaf.
const (
	// outOfTheWay is where, in z, stops hold no leaf.
	outOfTheWay = -10000.0
	// even is how closely, in mm, the planted stop follows the leaf between its
	// stations, and battens the most stations it is given.
	even    = 0.005
	battens = 24
)

// follow plants a stop so that the gap along it is First everywhere with the latch
// home, as a joiner scribes it to the closed leaf. The other stops have no part in it.
func (w *work) follow(m *Move) *Care {
	stop := w.p.Door.Frame.Stop(m.Edge)
	if stop == nil {
		return &Care{About: NotThere, Member: Member{Part: StopMember, Edge: m.Edge}}
	}
	if faults := w.p.Door.Check(); len(faults) > 0 {
		return &Care{About: DoorSpoilt, Faults: faults} // it cannot be hung to be followed
	}
	d := w.p.Door // its parts are read only
	d.Frame.HingeStop, d.Frame.LatchStop, d.Frame.HeadStop = geom.Level(outOfTheWay), geom.Level(outOfTheWay), geom.Level(outOfTheWay)
	var hung fit.Fit
	fit.EvaluateClosed(&hung, &d)
	course := hung.Stops[m.Edge].Pieces
	if len(course) == 0 {
		return &Care{About: NotThere, Member: Member{Part: StopMember, Edge: m.Edge}}
	}
	// a stop runs the whole of its side, the leaf's face carried on
	run := w.p.Door.Frame.Run(m.Edge)
	first, last := &course[0], &course[len(course)-1]
	last.Hi = max(last.Hi, run.Hi)
	if d := run.Lo - first.Lo; d < 0 {
		first.C0, first.C1 = first.At(run.Lo), first.C1+float64(2*first.C2*d)
		first.Lo = run.Lo
	}
	planted := chords(fit.Curve{Pieces: course})
	*stop = planted.Shift(outOfTheWay - m.First)
	w.done.Frame = true
	w.solid(m.Edge)
	return nil
}

// chords gives the profile that follows the curve to [even]: its two ends and then
// always the place where it is farthest out, with [door.ApartLeast] between them.
func chords(c fit.Curve) geom.Profile {
	r := c.Range()
	p := geom.Profile{{At: r.Lo, Value: c.At(r.Lo)}, {At: r.Hi, Value: c.At(r.Hi)}}
	for len(p) < battens {
		worst, at, after := even, 0.0, -1
		for i := 1; i < len(p); i++ {
			inner := geom.Interval{Lo: p[i-1].At + door.ApartLeast, Hi: p[i].At - door.ApartLeast}
			line := p.Piece(i - 1)
			see := func(q *fit.Piece, s float64) {
				if off := math.Abs(q.At(s) - line.At(s)); inner.Contains(s) && q.Lo <= s && s <= q.Hi && off > worst {
					worst, at, after = off, s, i
				}
			}
			for k := range c.Pieces {
				q := &c.Pieces[k]
				see(q, q.Lo)
				see(q, q.Hi)
				if q.C2 != 0 {
					see(q, q.Lo+(line.C1-q.C1)/(2*q.C2))
				}
			}
		}
		if after < 0 {
			break
		}
		p = append(p, geom.Station{})
		copy(p[after+1:], p[after:])
		p[after] = geom.Station{At: at, Value: c.At(at)}
	}
	return p
}
