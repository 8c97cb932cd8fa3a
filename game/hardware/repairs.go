package hardware

import (
	"math"

	"leafwright/game"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

// PotLife is how long filler may be spread, minutes, where the tin is not at hand (two-part
// polyester, 3 to 10 minutes at 20 °C, from memory).
const PotLife = 6

// Repairs is what becomes of the places where a job's leaf has lost sound timber.
type Repairs struct {
	Places []Place
	timber.Filler
	Batches int
	Each    float64 // mm³ of a batch
}

// Place is one of them.
type Place struct {
	Void   game.Void // as the job says it
	Is     timber.Void
	Repair timber.Repair
	Cure   timber.Cure
	timber.Filler
	Hinges []Seat
	Cuts   []Cut
}

// Seat is a hinge whose screws stand in such a place.
type Seat struct {
	Hinge int // from 0, the top one
	Screw int // how many of one plate's do
}

// Cut is a step that comes upon such a place.
type Cut struct {
	Step  int // of the list, counted from 0
	Away  bool
	Glues bool // a strip is glued over it
}

// voidOf gives a void as package timber has it, in a leaf.
func voidOf(v *game.Void, l *door.Leaf) timber.Void {
	out := timber.Void{Part: v.Open / 100, Active: v.Live, Cure: v.Do, Depth: v.Wide, FromEdge: true}
	switch v.What {
	case game.Bored:
		out.Decay = timber.Borer
	case game.Rotten:
		out.Decay = timber.Rot
	case game.OldMortice:
		out.Decay = timber.Hole
	case game.OldFiller:
		out.Decay = timber.Putty
	default:
		out.Decay = timber.Bruise
	}
	along := geom.Interval{Lo: v.From, Hi: v.To}
	mid := along.Mid()
	switch v.At {
	case "hanging":
		u := l.Hanging.At(mid)
		out.Edge, out.Up, out.Across = door.HingeSide, along, geom.Interval{Lo: u, Hi: u + v.Depth}
	case "closing":
		u := l.Closing.At(mid)
		out.Edge, out.Up, out.Across = door.LatchSide, along, geom.Interval{Lo: u - v.Depth, Hi: u}
	case "top":
		y := l.Top.At(mid)
		out.Edge, out.Across, out.Up = door.HeadSide, along, geom.Interval{Lo: y - v.Depth, Hi: y}
	case "foot":
		y := l.Bottom.At(mid)
		out.Edge, out.Across, out.Up = door.FloorSide, along, geom.Interval{Lo: y, Hi: y + v.Depth}
	default:
		u := l.Hanging.At(mid) + v.Off
		out.FromEdge, out.Up, out.Across, out.Depth = false, along, geom.Interval{Lo: u, Hi: u + v.Wide}, v.Depth
	}
	return out
}

// Voids gives the job's places in its leaf as found.
func Voids(job *game.Job) (all []timber.Void) {
	for i := range job.Voids {
		all = append(all, voidOf(&job.Voids[i], &job.Door.Leaf))
	}
	return all
}

// RepairsOf gives what becomes of the places: repaired on the door as it was before the
// steps, which are then done; nil where there are none. The hinges are those after them.
func RepairsOf(job *game.Job, before, after *game.Tried, steps []trim.Step) *Repairs {
	if len(job.Voids) == 0 {
		return nil
	}
	r := &Repairs{}
	p := trim.Piece{Door: before.Door, Anatomy: before.Anatomy, Offcuts: before.Offcuts}
	hung := p
	hung.Door.Hinges, hung.Anatomy.Lock = after.Door.Hinges, after.Anatomy.Lock
	for i, v := range Voids(job) {
		at := Place{Void: job.Voids[i], Is: v, Repair: timber.RepairOf(&p, v)}
		later := timber.RepairOf(&hung, v) // a hinge or a lock may come to stand there
		at.Repair.CutOut = at.Repair.CutOut || later.CutOut
		at.Repair.Meets = union(at.Repair.Meets, later.Meets)
		at.Cure = timber.CureFor(v, at.Repair, p.Door.Leaf.Thickness)
		if at.Cure == timber.FillIt || at.Cure == timber.FoamIt {
			at.Filler = timber.FillerFor(v, p.Door.Leaf.Thickness, at.Cure == timber.FoamIt)
			r.Filler.Filler += at.Filler.Filler
			r.Foam += at.Foam
		}
		for h := range after.Door.Hinges {
			if n := screwsIn(&after.Door, h, &v); n > 0 {
				at.Hinges = append(at.Hinges, Seat{h, n})
			}
		}
		r.Places = append(r.Places, at)
	}
	r.Batches, r.Each = timber.Batches(r.Filler.Filler, PotLife, 0)
	for i := range steps {
		s := &steps[i]
		if s.Move.Off || s.Why != nil && s.Why.About.Forbids() {
			continue
		}
		q, _, why := trim.Do(p, s.Move)
		if why != nil && why.About.Forbids() {
			continue
		}
		for k := range r.Places {
			if c, is := meets(&p.Door.Leaf, &q.Door.Leaf, &r.Places[k].Is, s.Move); is {
				c.Step = i
				r.Places[k].Cuts = append(r.Places[k].Cuts, c)
			}
		}
		p = q
	}
	return r
}

func union(a, b []trim.Member) []trim.Member {
	for _, m := range b {
		known := false
		for _, x := range a {
			known = known || x == m
		}
		if !known {
			a = append(a, m)
		}
	}
	return a
}

// screwsIn gives how many of a plate's screws stand in a void, spread evenly over the
// plate's height as they are.
func screwsIn(d *door.Door, hinge int, v *timber.Void) (n int) {
	h := &d.Hinges[hinge]
	edge := d.Leaf.Hanging.At(h.LeafHeight)
	if v.Across.Lo >= edge+screwInto || v.Across.Hi <= edge || v.Depth <= 0 {
		return 0
	}
	for i := range screws {
		at := h.LeafHeight + h.Height*((float64(i)+0.5)/screws-0.5)
		if v.Up.Contains(at) {
			n++
		}
	}
	return n
}

// meets tells whether a step comes upon a void: its edge goes into it, or a strip is
// glued over its mouth.
func meets(was, is *door.Leaf, v *timber.Void, m trim.Move) (c Cut, comes bool) {
	const least = 0.05 // mm that an edge moves
	mid, across := v.Up.Mid(), v.Across.Mid()
	for e := door.HingeSide; e < door.Edges; e++ {
		var old, now float64 // how far the edge is out, from the leaf's middle
		var void geom.Interval
		switch e {
		case door.HingeSide:
			old, now, void = -was.Hanging.At(mid), -is.Hanging.At(mid), geom.Interval{Lo: -v.Across.Hi, Hi: -v.Across.Lo}
		case door.LatchSide:
			old, now, void = was.Closing.At(mid), is.Closing.At(mid), v.Across
		case door.HeadSide:
			old, now, void = was.Top.At(across), is.Top.At(across), v.Up
		default:
			old, now, void = -was.Bottom.At(across), -is.Bottom.At(across), geom.Interval{Lo: -v.Up.Hi, Hi: -v.Up.Lo}
		}
		switch {
		case now < old-least && void.Hi > now+least && void.Lo < old:
			return Cut{Away: void.Lo >= now}, true
		case now > old+least && void.Hi >= old-least && void.Lo < old && (m.Kind == trim.Splice || m.Kind == trim.Reuse):
			return Cut{Glues: true}, true
		}
	}
	return c, false
}

// poor gives how many screws of the top hinge's plate stand in filler or in nothing,
// once the places are seen to.
func (r *Repairs) poor() (n int) {
	if r == nil {
		return 0
	}
	for i := range r.Places {
		p := &r.Places[i]
		for _, s := range p.Hinges {
			if s.Hinge == 0 && p.Cure != timber.CutItOut {
				n = max(n, s.Screw)
			}
		}
	}
	return min(n, screws)
}

// lost gives the greatest part of a stile or rail that is gone and not pieced.
func (r *Repairs) lost() (part float64) {
	if r == nil {
		return 0
	}
	for i := range r.Places {
		if p := &r.Places[i]; p.Cure != timber.CutItOut {
			part = math.Max(part, p.Repair.Lost)
		}
	}
	return part
}
