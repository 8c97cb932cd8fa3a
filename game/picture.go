package game

import (
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/survey"
)

// Picture shows where a reading is taken, on a small drawing of one thing with the
// hinges on the left: for a right-hung leaf it is drawn the other way round.
type Picture struct {
	On     Thing
	Kind   survey.Kind // for what no line can show: the gain, the folded hinge
	Hinge  int         // 1 the top one, 0 for none
	Width  float64     // of the thing, mm; of the floor, how far it is drawn
	Height float64
	Marks  []Mark
}

// Thing is what a picture shows.
type Thing string

// The things: the opening and the leaf seen from the knuckle side, x across from
// the hinge side and y up; the floor from above, x across and y out towards the
// knuckle side; and enlarged, a hinge, a section through a jamb, the leaf's edge.
const (
	OnOpening Thing = "opening"
	OnLeaf    Thing = "leaf"
	OnHung    Thing = "hung" // the leaf in its opening
	OnFloor   Thing = "floor"
	OnHinge   Thing = "hinge"
	OnJamb    Thing = "jamb"
	OnEdge    Thing = "edge"
)

// Tool is what lies along a mark.
type Tool string

// The tools.
const (
	AlongTape  Tool = "tape"
	AlongLevel Tool = "level"
	AlongEdge  Tool = "straightedge"
	AlongStick Tool = "stick"
	AlongCord  Tool = "string"
	AlongBlade Tool = "square"
	AtFeeler   Tool = "feeler" // a place: from and to are one
	AtRule     Tool = "rule"
)

// Mark is a tool and where it lies, mm on the thing.
type Mark struct {
	Tool     Tool
	From, To geom.Vec // z is 0
}

func mark(t Tool, x0, y0, x1, y1 float64) Mark {
	return Mark{t, geom.Vec{X: x0, Y: y0}, geom.Vec{X: x1, Y: y1}}
}

// picture gives the picture of a reading.
func picture(r *Reading, j *Job) Picture {
	ow, oh, lw, lh := j.OpeningWidth, j.OpeningHeight, j.Door.Leaf.Width, j.LeafHeight
	p := Picture{On: OnOpening, Kind: r.Kind, Hinge: r.Hinge, Width: ow, Height: oh}
	leaf := func() { p.On, p.Width, p.Height = OnLeaf, lw, lh }
	add := func(m ...Mark) { p.Marks = append(p.Marks, m...) }
	at, from, to := r.At.MM, r.From.MM, r.To.MM

	// along lays a straightedge, and the feeler under it, along a side of a thing.
	along := func(w, h float64, tool Tool) {
		switch r.Side {
		case survey.Head:
			add(mark(tool, from, h, to, h), mark(AtFeeler, at, h, at, h))
		case survey.Floor:
			add(mark(tool, from, 0, to, 0), mark(AtFeeler, at, 0, at, 0))
		case survey.Latch:
			add(mark(tool, w, from, w, to), mark(AtFeeler, w, at, w, at))
		default:
			add(mark(tool, 0, from, 0, to), mark(AtFeeler, 0, at, 0, at))
		}
	}
	diagonal := func(w, h float64, tool Tool, side survey.Side) {
		if side == survey.Falling {
			add(mark(tool, 0, h, w, 0))
			return
		}
		add(mark(tool, 0, 0, w, h))
	}
	place := func(w, h float64, tool Tool) {
		x, y := at, at
		switch r.Side {
		case survey.Head:
			y = h
		case survey.Floor:
			y = 0
		case survey.Latch:
			x = w
		default:
			x = 0
		}
		add(mark(tool, x, y, x, y))
	}
	upTo := func(y0, y1 float64) { add(mark(AlongTape, 0, y0, 0, y1)) }
	hinge := func() float64 {
		if i := r.Hinge - 1; i >= 0 && i < len(j.Door.Hinges) {
			if r.Kind == survey.HingeOnJamb || r.Kind == survey.HingeFromHead {
				return j.Door.Hinges[i].JambHeight
			}
			return j.Door.Hinges[i].LeafHeight
		}
		return lh / 2
	}

	switch r.Kind {
	case survey.OpeningWidth:
		add(mark(AlongTape, 0, at, ow, at))
	case survey.OpeningHeight:
		add(mark(AlongTape, at, 0, at, oh))
	case survey.OpeningDiagonal:
		diagonal(ow, oh, AlongTape, r.Side)
	case survey.JambPlumb, survey.JambPlumbAcross:
		x := 0.0
		if r.Side == survey.Latch {
			x = ow
		}
		add(mark(AlongLevel, x, from, x, to))
	case survey.FrameBow, survey.FrontBow:
		along(ow, oh, AlongEdge)
	case survey.HeadSlope:
		add(mark(AlongLevel, from, oh, to, oh))
	case survey.CrossStrings:
		diagonal(ow, oh, AlongCord, survey.Rising)
		diagonal(ow, oh, AlongCord, survey.Falling)
	case survey.FrameWind:
		add(mark(AlongStick, 0, from, ow, from), mark(AlongStick, 0, to, ow, to))
	case survey.FloorSlope, survey.FloorHeight:
		p.On, p.Height = OnFloor, ow
		turn := r.Angle.Turn()
		if r.Kind == survey.FloorHeight {
			from, to = 0, at
		}
		add(mark(AlongLevel, float64(from*turn.Cos), float64(from*turn.Sin), float64(to*turn.Cos), float64(to*turn.Sin)))
	case survey.RebateDepth, survey.StopWidth:
		p.On = OnJamb
		place(ow, oh, AtRule)

	case survey.LeafWidth:
		leaf()
		add(mark(AlongTape, 0, at, lw, at))
	case survey.LeafHeight:
		leaf()
		add(mark(AlongTape, at, 0, at, lh))
	case survey.LeafDiagonal:
		leaf()
		diagonal(lw, lh, AlongTape, r.Side)
	case survey.LeafSquare:
		leaf()
		const blade = 500 // EN 951
		x, y, sx, sy := 0.0, 0.0, 1.0, 1.0
		if r.Side == survey.LatchFoot || r.Side == survey.LatchHead {
			x, sx = lw, -1
		}
		if r.Side == survey.HingeHead || r.Side == survey.LatchHead {
			y, sy = lh, -1
		}
		add(mark(AlongBlade, x, y, x+sx*min(blade, lw), y), mark(AlongBlade, x, y, x, y+sy*min(blade, lh)))
	case survey.LeafBow, survey.StileBow:
		leaf()
		along(lw, lh, AlongEdge)
	case survey.LeafWind:
		leaf()
		add(mark(AlongStick, 0, from, lw, from), mark(AlongStick, 0, to, lw, to))
	case survey.LeafThickness, survey.LeafBevel:
		leaf()
		p.On = OnEdge
		place(lw, lh, AtRule)
	case survey.StileWidth:
		leaf()
		x0, x1 := 0.0, j.Anatomy.HangingStile
		if r.Side == survey.Latch {
			x0, x1 = lw-j.Anatomy.ClosingStile, lw
		}
		add(mark(AlongTape, x0, lh/2, x1, lh/2))
	case survey.RailHeight, survey.RailWidth:
		leaf()
		rail := door.Rail{From: lh / 2, To: lh/2 + 100}
		if i := r.Rail - 1; i >= 0 && i < len(j.Anatomy.Rails) {
			rail = j.Anatomy.Rails[i]
		}
		y0, y1 := rail.From, rail.To
		if r.Kind == survey.RailHeight {
			y0, y1 = 0, rail.From
		}
		add(mark(AlongTape, lw/3, y0, lw/3, y1))
	case survey.LatchHeight:
		leaf()
		y := j.Door.Latch.Height
		add(mark(AlongTape, lw, 0, lw, y))
	case survey.HingeOnLeaf:
		leaf()
		upTo(0, hinge())
	case survey.HingeFromTop:
		leaf()
		upTo(lh, hinge())
	case survey.HingeOnJamb:
		upTo(0, hinge())
	case survey.HingeFromHead:
		upTo(oh, hinge())
	case survey.LeafGain, survey.JambGain, survey.LeafPacker, survey.JambPacker, survey.HingeClosed,
		survey.HingePin, survey.HingeProud, survey.HingePlate:
		leaf()
		p.On = OnHinge
		y := hinge()
		add(mark(AtRule, 0, y, 0, y))
	case survey.LatchProud:
		leaf()
		p.On = OnHung
		y := j.Door.Latch.Height
		add(mark(AtRule, lw, y, lw, y))
	case survey.GapRead, survey.StopGap, survey.Rub:
		p.On = OnHung
		place(ow, oh, AtFeeler)
	}
	return p
}
