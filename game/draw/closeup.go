package draw

// CloseUp is what the round window of a sketch shows: mostly a level section
// through a jamb and the leaf's edge, the knuckle side at the foot.
type CloseUp uint8

// The close-ups.
const (
	NoCloseUp      CloseUp = iota
	GapNear                // the gap between leaf and frame, from the front
	RubNear                // the two touching
	StopNear               // the gap between leaf and stop
	RebateNear             // front edge to stop
	StopWidthNear          // how far the stop stands in
	StandNear              // leaf's face against the frame's front edge
	ThickNear              // the leaf's thickness
	BevelNear              // a square across the leaf's edge
	LeafGainNear           // depth of the gain in the leaf
	JambGainNear           // in the jamb
	LeafPackerNear         // what is packed behind the hinge in the leaf
	JambPackerNear         // in the jamb
	FoldedNear             // the hinge folded shut
	PinNear                // front edge to the pin
	PlateNear              // height of the plates
)

// Sizes in the close-ups, mm, enlarged where they would not be seen: the jamb's
// front edge and its face meet at (0, 0), the leaf lies at greater x.
const (
	nearGap   = 5.0
	nearThick = 40.0
	nearStop  = 15.0
	nearPlate = 4.0
	nearGain  = 9.0
	nearSlack = 4.0 // packer
	nearPlane = 28.0
)

// window draws the round window and the line from it to the place it shows.
func (d *sketcher) window() {
	p := &d.pen
	spot := d.t.to(d.Spot)
	p.rule(spot, d.at, Line, medium)
	p.tool(Place, spot, spot)
	p.disc(d.at, d.radius+1.5, Paper)
	p.disc(d.at, d.radius, Opening)
	p.lens = lens{Pt{d.mirrored(d.at.X), d.at.Y}, d.radius - 0.5}
	d.near()
	p.lens = lens{}
	p.ring(d.at, d.radius, Line, medium*1.5)
}

func (d *sketcher) mirrored(x float64) float64 {
	if d.pen.mirror {
		return 2*d.pen.axis - x
	}
	return x
}

// near draws what the window shows.
func (d *sketcher) near() {
	c := closeUp{pen: &d.pen, at: d.at, s: d.radius / 40, flip: 1}
	if d.Spot.X >= d.Width/2 && d.Spot.X > 0 {
		c.flip = -1
	}
	// about puts the point (x, y) into the window's middle and takes so many mm
	// across the window's half.
	about := func(x, y, half float64) { c.x, c.y, c.s = x, y, d.radius/half }
	hinge := d.Near >= LeafGainNear
	switch d.Near {
	case GapNear, RubNear:
		d.nearGap(&c)
		return
	case PlateNear:
		about(0, 0, 60)
		c.box(-26, -38, 26, 38, Metal)
		c.line(0, -38, 0, 38)
		for _, y := range [3]float64{-24, 0, 24} {
			for _, x := range [2]float64{-15, 15} {
				c.pen.ring(c.to(x, y), 2, Line, thin)
			}
		}
		c.span(-38, -38, -38, 38)
		return
	case FoldedNear:
		about(0, -8, 34)
		c.box(-7, -nearPlane, -0.5, 0, Metal)
		c.box(0.5, -nearPlane, 7, 0, Metal)
		c.pen.disc(c.to(0, 5), 7*c.s, Line)
		c.pen.disc(c.to(0, 5), 6*c.s, Metal)
		c.span(-7, -16, 7, -16)
		return
	case ThickNear, BevelNear:
		about(26, -nearThick/2, 36)
		d.nearEdge(&c)
		return
	case StopNear:
		about(8, -nearThick, 26)
	case RebateNear:
		about(-2, -24, 38)
	case StopWidthNear:
		about(4, -nearThick-12, 34)
	case StandNear:
		about(6, 0, 26)
	case PinNear:
		about(0, -2, 26)
	default:
		about(2, -13, 27)
	}
	withLeaf := d.Near != RebateNear && d.Near != StopWidthNear
	stand := 0.0
	if d.Near == StandNear {
		stand = 7
	}
	stop := -nearThick - 2.0
	if d.Near == StopNear {
		stop = -nearThick - 7
	}
	c.jamb(stop, hinge)
	if withLeaf {
		c.leaf(stand, hinge)
	}
	if hinge {
		c.butt(d.Near)
	}
	switch d.Near {
	case StopNear:
		c.span(9, stop, 9, -nearThick)
	case RebateNear:
		c.extend(0, 0, 24, 0)
		c.extend(0, stop, 24, stop)
		c.span(18, stop, 18, 0)
	case StopWidthNear:
		c.extend(nearStop, stop, nearStop, stop+24)
		c.extend(0, stop, 0, stop+24)
		c.span(0, stop+14, nearStop, stop+14)
	case StandNear:
		c.extend(-20, 0, 24, 0)
		c.span(-8, 0, -8, stand)
		c.extend(-14, stand, 10, stand)
	case LeafGainNear:
		c.span(nearGap, -16, nearGap+nearGain, -16)
	case JambGainNear:
		c.span(-nearGain, -16, 0, -16)
	case LeafPackerNear:
		c.span(nearGap+nearGain-nearSlack, -16, nearGap+nearGain, -16)
	case JambPackerNear:
		c.span(-nearGain, -16, -nearGain+nearSlack, -16)
	case PinNear:
		c.extend(-22, 0, 0, 0)
		c.extend(-22, 12, 2, 12)
		c.span(-15, 0, -15, 12)
	}
}

// nearGap shows leaf and frame, or floor, from the front, with a blade between.
func (d *sketcher) nearGap(c *closeUp) {
	p, gap := c.pen, 9.0
	if d.Near == RubNear {
		gap = 0
	}
	c.s = d.radius / 34
	first, second := Lining, Timber // from the hinge side, or from above
	level := d.Spot.Y <= 0 || d.Spot.Y >= d.Height
	if level {
		c.flip = 1
		if d.Spot.Y <= 0 {
			first, second = Timber, Wall
		}
		c.box(-60, -60, 60, -gap/2, first)
		c.box(-60, gap/2, 60, 60, second)
	} else {
		c.box(-60, -60, -gap/2, 60, first)
		c.box(gap/2, -60, 60, 60, second)
	}
	switch {
	case gap == 0:
		p.tool(Place, c.to(0, 0), c.to(0, 0))
	case level:
		c.span(0, -gap/2, 0, gap/2)
	default:
		c.span(-gap/2, 0, gap/2, 0)
	}
}

// nearEdge shows the leaf's own edge in section: how thick it is, or how far its
// stop-face arris stands back from a square.
func (d *sketcher) nearEdge(c *closeUp) {
	p := c.pen
	bevel := 0.0
	if d.Near == BevelNear {
		bevel = 9
	}
	from := p.start()
	for _, q := range [4]Pt{{8, 0}, {90, 0}, {90, -nearThick}, {8 + bevel, -nearThick}} {
		p.to(c.to(q.X, q.Y))
	}
	p.face(from, Timber, Line, medium, endGrain)
	if d.Near == ThickNear {
		c.span(24, -nearThick, 24, 0)
		return
	}
	p.tool(Blade, c.to(8, 5), c.to(58, 5))
	p.tool(Blade, c.to(5, 6), c.to(5, -nearThick-14))
	c.span(8, -nearThick-4, 8+bevel, -nearThick-4)
}

// closeUp carries mm about its middle to the window.
type closeUp struct {
	pen     *pen
	at      Pt
	x, y, s float64
	flip    float64 // −1 with the jamb on the right
}

// to gives the place of (x, y) on the sheet, y towards the foot.
func (c *closeUp) to(x, y float64) Pt {
	return Pt{c.at.X + c.flip*(x-c.x)*c.s, c.at.Y + (y-c.y)*c.s}
}

func (c *closeUp) box(x0, y0, x1, y1 float64, ink Ink, h ...hatching) {
	a, b := c.to(x0, y0), c.to(x1, y1)
	from := c.pen.start()
	c.pen.box(min(a.X, b.X), min(a.Y, b.Y), max(a.X, b.X), max(a.Y, b.Y))
	c.pen.face(from, ink, Line, medium, h...)
}

func (c *closeUp) line(x0, y0, x1, y1 float64) { c.pen.rule(c.to(x0, y0), c.to(x1, y1), Line, thin) }

// extend rules the fine line on from an edge, for the arrows to stand against.
func (c *closeUp) extend(x0, y0, x1, y1 float64) {
	c.pen.rule(c.to(x0, y0), c.to(x1, y1), Fine, medium)
}

func (c *closeUp) span(x0, y0, x1, y1 float64) { c.pen.span(c.to(x0, y0), c.to(x1, y1)) }

// jamb shows the lining, let in for a hinge or not, with its stop.
func (c *closeUp) jamb(stop float64, gained bool) {
	p := c.pen
	from := p.start()
	outline := []Pt{{-70, 0}, {0, 0}, {0, -110}, {-70, -110}}
	if gained {
		outline = []Pt{{-70, 0}, {-nearGain, 0}, {-nearGain, -nearPlane}, {0, -nearPlane}, {0, -110}, {-70, -110}}
	}
	for _, q := range outline {
		p.to(c.to(q.X, q.Y))
	}
	p.face(from, Lining, Line, medium, endGrain2)
	c.box(0, stop-34, nearStop, stop, Lining, endGrain)
}

// leaf shows the leaf's edge in section, its face so far out of the front edge.
func (c *closeUp) leaf(stand float64, gained bool) {
	p := c.pen
	from := p.start()
	outline := []Pt{{nearGap, 0}, {100, 0}, {100, -nearThick}, {nearGap, -nearThick}}
	if gained {
		in := nearGap + nearGain
		outline = []Pt{{in, 0}, {100, 0}, {100, -nearThick}, {nearGap, -nearThick}, {nearGap, -nearPlane}, {in, -nearPlane}}
	}
	for _, q := range outline {
		p.to(c.to(q.X, q.Y+stand))
	}
	p.face(from, Timber, Line, medium, endGrain)
}

// butt shows the hinge between jamb and leaf, away from the gain that is read.
func (c *closeUp) butt(of CloseUp) {
	jamb, leaf := -nearGain, nearGap+nearGain // bottoms of the gains
	switch of {
	case LeafPackerNear:
		c.box(leaf-nearSlack, -nearPlane, leaf, 0, Brass)
		leaf -= nearSlack
	case JambPackerNear:
		c.box(jamb, -nearPlane, jamb+nearSlack, 0, Brass)
		jamb += nearSlack
	}
	if of != JambGainNear {
		c.box(jamb, -nearPlane, jamb+nearPlate, 0, Metal)
	}
	if of != LeafGainNear {
		c.box(leaf-nearPlate, -nearPlane, leaf, 0, Metal)
	}
	if of == JambGainNear || of == LeafGainNear {
		return
	}
	mid := nearGap / 2
	r := 6 * c.s
	c.pen.disc(c.to(mid, 12), r, Line)
	c.pen.disc(c.to(mid, 12), max(r-1, 0), Metal)
	c.pen.disc(c.to(mid, 12), r/3, Line)
}
