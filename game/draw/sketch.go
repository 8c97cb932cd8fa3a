package draw

import "math"

// Sketch is a small picture of where something is read off a door: the thing in
// quiet line, the tool laid on it in strong line. All its places are in mm, x across
// from the hinge side and y up, on the floor y out towards the knuckle side.
type Sketch struct {
	Of            Thing
	Width, Height float64   // of the thing
	Hinges        []float64 // heights of their middles on the thing
	Panels        [][2]Pt   // of a leaf by itself, between its stiles and rails: two corners of each; none shows an ordinary leaf's two
	Laid          []Laid
	Near          CloseUp // what the round window shows, enlarged; none without one
	Spot          Pt      // where it looks
	RightHung     bool    // show the mirror image
}

// Thing is what a sketch shows.
type Thing uint8

// The things: the empty opening and the leaf by itself, the leaf hung in its
// opening, all from the knuckle side; and the floor from above.
const (
	TheOpening Thing = iota
	TheLeaf
	TheHung
	TheFloor
)

// Tool is what lies along a line.
type Tool uint8

// The tools. A place is a mark without length.
const (
	Tape Tool = iota
	Level
	Straightedge
	Stick
	Cord
	Blade
	Place
)

// Laid is a tool and where it lies.
type Laid struct {
	Tool     Tool
	From, To Pt
	Lie      Lie
}

// Lie tells on which side of an edge it is laid against a tool lies.
type Lie uint8

// Along the line itself, or beside it: towards the middle of the thing or outwards.
const (
	Along Lie = iota
	Inside
	Outside
)

// Sizes of a sketch, px.
const (
	sketchWall   = 9.0 // of wall and lining round the opening
	sketchLining = 3.5
	sketchHem    = 3.0
	beside       = 5.0 // from an edge to the middle of the tool laid against it
	windowLeast  = 26.0
)

// Draw lays the sketch down on an emptied list of the given size in px.
func (k *Sketch) Draw(l *List, width, height float64) {
	l.Reset(width, height)
	if !(k.Width > 0 && k.Height > 0 && width > 0 && height > 0) {
		return
	}
	d := sketcher{Sketch: k, pen: pen{l: l, mirror: k.RightHung, axis: width / 2}}
	d.set(width, height)
	switch k.Of {
	case TheFloor:
		d.floor()
	case TheLeaf:
		d.leaf(d.t.to(Pt{0, k.Height}), d.t.to(Pt{k.Width, 0}))
		d.hinges(true)
	default:
		d.opening()
		if k.Of == TheHung {
			a, b := d.t.to(Pt{0, k.Height}), d.t.to(Pt{k.Width, 0})
			d.leaf(Pt{a.X + 1.5, a.Y + 1.5}, Pt{b.X - 1.5, b.Y - 2})
		}
		d.hinges(k.Of == TheHung)
	}
	for _, t := range k.Laid {
		d.pen.tool(t.Tool, d.laid(t, t.From), d.laid(t, t.To))
	}
	if k.Near != NoCloseUp {
		d.window()
	}
}

// sketcher draws one sketch.
type sketcher struct {
	*Sketch
	pen    pen
	t      sheet
	at     Pt // middle of the round window
	radius float64
}

// set finds the scale, and the window's place beside the thing.
func (d *sketcher) set(width, height float64) {
	b := box{0, 0, width, height}.inset(sketchHem)
	low, high := Pt{0, 0}, Pt{d.Width, d.Height}
	rim := box{beside + 4, beside + 3, beside + 4, beside + 3}
	switch d.Of {
	case TheFloor:
		d.t.down = true
		low = Pt{-floorWall, -liningDeep}
		high = Pt{d.Width + floorWall, d.Height}
		rim = box{}
	case TheOpening, TheHung:
		rim = box{sketchWall, sketchWall, sketchWall, sketchWall / 2}
	}
	if d.Near != NoCloseUp {
		d.radius = max(min(0.3*width, 0.26*height), windowLeast)
		if d.Spot.X < d.Width/2 {
			b.x0 += 2*d.radius + sketchHem
		} else {
			b.x1 -= 2*d.radius + sketchHem
		}
	}
	in := box{b.x0 + rim.x0, b.y0 + rim.y0, b.x1 - rim.x1, b.y1 - rim.y1}
	d.t.s = max(min(in.width()/(high.X-low.X), in.height()/(high.Y-low.Y)), 1e-4)
	d.t.at.X = in.middle() - d.t.s*(low.X+high.X)/2
	mid := (in.y0 + in.y1) / 2
	if d.t.down {
		d.t.at.Y = mid - d.t.s*(low.Y+high.Y)/2
	} else {
		d.t.at.Y = mid + d.t.s*(low.Y+high.Y)/2
	}
	if d.Near == NoCloseUp {
		return
	}
	spot := d.t.to(d.Spot)
	d.at = Pt{sketchHem + d.radius, min(max(spot.Y, sketchHem+d.radius), height-sketchHem-d.radius)}
	if d.Spot.X >= d.Width/2 {
		d.at.X = width - sketchHem - d.radius
	}
}

// laid gives where an end of a tool comes on the sheet.
func (d *sketcher) laid(t Laid, end Pt) Pt {
	q := d.t.to(end)
	by := float64(beside)
	switch t.Lie {
	case Along:
		return q
	case Outside:
		by = -by
	}
	across := t.From.X != t.To.X
	if t.From == t.To { // a place belongs to the edge it is on
		across = end.X != 0 && end.X != d.Width
	}
	switch {
	case across && end.Y > d.Height/2:
		q.Y += by
	case across:
		q.Y -= by
	case end.X > d.Width/2:
		q.X -= by
	default:
		q.X += by
	}
	return q
}

// opening shows wall, lining and floor round the empty opening.
func (d *sketcher) opening() {
	p := &d.pen
	a, b := d.t.to(Pt{0, d.Height}), d.t.to(Pt{d.Width, 0})
	round := func(out float64) {
		p.xy(a.X-out, b.Y)
		p.xy(a.X-out, a.Y-out)
		p.xy(b.X+out, a.Y-out)
		p.xy(b.X+out, b.Y)
	}
	back := func(out float64) {
		n := p.start()
		round(out)
		reverse(p.l.Points[n:])
	}
	from := p.start()
	round(sketchWall)
	back(sketchLining)
	p.face(from, Wall, Wall, 0, wallHatch)
	from = p.start()
	round(sketchLining)
	back(0)
	p.face(from, Lining, Line, thin)
	from = p.start()
	p.box(a.X, a.Y, b.X, b.Y)
	p.fill(from, Opening)
	from = p.start()
	round(0)
	p.stroke(from, Line, medium)
	p.rule(Pt{a.X - sketchWall, b.Y}, Pt{b.X + sketchWall, b.Y}, Line, medium)
}

// leaf shows a leaf between two corners, top hinge side and foot latch side.
func (d *sketcher) leaf(a, b Pt) {
	p := &d.pen
	from := p.start()
	p.box(a.X, a.Y, b.X, b.Y)
	p.face(from, Timber, Line, medium)
	w, h := b.X-a.X, b.Y-a.Y
	in := 0.15 * w
	panel := func(x0, y0, x1, y1 float64) {
		from = p.start()
		p.box(x0, y0, x1, y1)
		p.face(from, Raised, Grain, thin)
	}
	if len(d.Panels) > 0 {
		for _, c := range d.Panels {
			q, r := d.t.to(c[0]), d.t.to(c[1])
			panel(q.X, r.Y, r.X, q.Y)
		}
	} else {
		for _, part := range [2][2]float64{{0.055, 0.48}, {0.58, 0.89}} {
			panel(a.X+in, a.Y+part[0]*h, b.X-in, a.Y+part[1]*h)
		}
	}
	p.disc(Pt{b.X - in/2, a.Y + 0.53*h}, max(1.4, 0.03*w), Iron)
}

// hinges shows where the hinges are: the butts on a leaf, their gains on a bare jamb.
func (d *sketcher) hinges(butts bool) {
	const half, deep = 5.0, 2.2
	p := &d.pen
	for _, y := range d.Hinges {
		q := d.t.to(Pt{0, y})
		from := p.start()
		if butts {
			p.box(q.X-deep, q.Y-half, q.X+deep/2, q.Y+half)
			p.face(from, Metal, Line, thin)
		} else {
			p.box(q.X-deep, q.Y-half, q.X, q.Y+half)
			p.face(from, Paper, Line, thin)
		}
	}
}

// floorWall is how much wall a floor's sketch shows beside the opening, mm.
const floorWall = 110.0

// floor shows the floor from above: the walls cut, the leaf swung out, its arc.
func (d *sketcher) floor() {
	p := &d.pen
	for _, x := range [2][2]float64{{-floorWall, 0}, {d.Width, d.Width + floorWall}} {
		a, b := d.t.to(Pt{x[0], -liningDeep}), d.t.to(Pt{x[1], 0})
		from := p.start()
		p.box(a.X, a.Y, b.X, b.Y)
		p.face(from, Wall, Line, thin, wallHatch)
	}
	hinge, latch, out := d.t.to(Pt{}), d.t.to(Pt{d.Width, 0}), d.t.to(Pt{0, d.Width})
	from := p.start()
	p.xy(hinge.X, hinge.Y)
	p.arc(hinge, latch.X-hinge.X, 0, math.Pi/2)
	p.fill(from, Opening)
	from = p.start()
	p.arc(hinge, latch.X-hinge.X, 0, math.Pi/2)
	p.dash(from, SwingArc, thin, 4, 3)
	p.rule(hinge, latch, Fine, thin)
	from = p.start()
	thick := max(40*d.t.s, 3)
	p.box(out.X-thick/2, hinge.Y, out.X+thick/2, out.Y)
	p.face(from, Timber, Ghost, thin)
	p.disc(hinge, 2.6, Line)
}
