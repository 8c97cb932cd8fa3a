package dxf

import (
	"strconv"
	"strings"

	"leafwright/game"
	"leafwright/game/hardware"
	"leafwright/game/words"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// The layers but for that of the hinges, which a region's words name.
const (
	LeafAsFound    = "LEAF_AS_FOUND"
	LeafAsItStands = "LEAF_AS_IT_STANDS"    // where something was made for keeps
	LeafAfter      = "LEAF_AFTER"           // the knuckle face
	LeafAfterStop  = "LEAF_AFTER_STOP_FACE" // where an edge is bevelled
	Opening        = "OPENING"
	OpeningAsFound = "OPENING_AS_FOUND" // where the option works the frame
	Cuts           = "CUTS"             // the line each move works an edge to
	Strips         = "STRIPS"           // dressed, from the joint to the outer edge
	Dowels         = "DOWELS"           // bores, their middles and a mark on the joint
	Notes          = "NOTES"
)

// Beside is how far the opening is drawn from the leaf's nominal edge, mm.
const Beside = 300.0

// HingeLayer is the name of the layer of the recesses for the hinges.
func HingeLayer(l words.Lexicon) string {
	name := strings.ToUpper(strings.NewReplacer(" ", "_", "-", "_").Replace(l.Gain))
	if strings.HasSuffix(name, "S") {
		return "HINGE_" + name + "ES"
	}
	return "HINGE_" + name + "S"
}

// Of draws a job's option, or the door as it stands for [game.AsItStands]. The job's
// shapes must give no fault.
func Of(j *game.Job, option int, lexicon words.Lexicon) []byte {
	found, stands := j.Found(), j.Stands()
	after := stands
	var moves []trim.Step
	if option >= 0 && option < len(j.Options) {
		after = j.Try(option)
		moves = after.Steps
	}
	d := drawing{job: j, found: &found.Door, stands: &stands.Door, after: &after.Door, s: &words.Speaker{Lexicon: lexicon, Hinges: len(j.Door.Hinges)}}
	for i, name := range [...]string{LeafAsFound, LeafAsItStands, LeafAfter, LeafAfterStop, Opening, OpeningAsFound, Cuts, Strips, HingeLayer(lexicon), Dowels, Notes} {
		colour := [...]int{8, 30, 7, 4, 7, 8, 1, 3, 5, 6, 2}[i]
		d.layers = append(d.layers, layer{name, colour, name == LeafAsFound || name == OpeningAsFound || name == LeafAfterStop})
	}
	return file(d.layers, func(w *writer) {
		d.writer = w
		d.outlines()
		d.opening()
		d.hinges()
		d.moves(&stands, moves)
		d.notes(option)
	})
}

type drawing struct {
	*writer
	job                  *game.Job
	found, stands, after *door.Door
	s                    *words.Speaker
	layers               []layer
}

func (d *drawing) on(name string) layer {
	for _, l := range d.layers {
		if l.name == name {
			return l
		}
	}
	return layer{name: "0"}
}

// leaf gives where a point of the leaf is drawn, frame where one of the opening.
func (d *drawing) leaf(u, v float64) pt {
	if d.job.Hand == game.Right {
		u = d.found.Leaf.Width - u
	}
	return pt{u, v}
}

func (d *drawing) frame(x, y float64) pt {
	if d.job.Hand == game.Right {
		x = d.job.OpeningWidth - x
	}
	return pt{d.found.Leaf.Width + Beside + x, y}
}

// edgeOf gives an edge of the leaf.
func edgeOf(l *door.Leaf, e door.Edge) geom.Profile {
	line, _ := l.Line(e)
	return *line
}

// ends gives where an edge of the leaf begins and ends, depth behind the knuckle face.
func ends(l *door.Leaf, e door.Edge, depth float64) (lo, hi float64) {
	at := l.Ends(e, depth)
	return at.Lo, at.Hi
}

// run gives a leaf's edge from lo to hi, or back where hi is the lesser, through its
// bends; back is how far an upright edge stands back there.
func (d *drawing) run(p geom.Profile, e door.Edge, lo, hi, back float64) (pts []pt) {
	each(p, lo, hi, func(at float64) {
		if e.Upright() {
			pts = append(pts, d.leaf(p.At(at)+back, at))
		} else {
			pts = append(pts, d.leaf(at, p.At(at)))
		}
	})
	return pts
}

// each visits lo, the bends between and hi, in that order.
func each(p geom.Profile, lo, hi float64, do func(at float64)) {
	do(lo)
	for i := range p {
		k := i
		if hi < lo {
			k = len(p) - 1 - i
		}
		if at := p[k].At; min(lo, hi) < at && at < max(lo, hi) {
			do(at)
		}
	}
	do(hi)
}

// outline gives a leaf's outline depth behind the knuckle face, from the foot of the
// hanging edge across.
func (d *drawing) outline(l *door.Leaf, depth float64) (pts []pt) {
	for i, e := range [...]door.Edge{door.FloorSide, door.LatchSide, door.HeadSide, door.HingeSide} {
		lo, hi := ends(l, e, depth)
		if i > 1 {
			lo, hi = hi, lo
		}
		back := 0.0
		switch e {
		case door.HingeSide:
			back = depth * l.HangingSetback()
		case door.LatchSide:
			back = -depth * l.ClosingSetback()
		}
		side := d.run(edgeOf(l, e), e, lo, hi, back)
		pts = append(pts, side[:len(side)-1]...) // its last corner is the next one's first
	}
	return pts
}

func (d *drawing) outlines() {
	d.polyline(d.on(LeafAsFound), true, d.outline(&d.found.Leaf, 0)...)
	if len(d.job.Made) > 0 {
		d.polyline(d.on(LeafAsItStands), true, d.outline(&d.stands.Leaf, 0)...)
	}
	l := &d.after.Leaf
	d.polyline(d.on(LeafAfter), true, d.outline(l, 0)...)
	if l.HangingBevel != 0 || l.ClosingBevel != 0 {
		d.polyline(d.on(LeafAfterStop), true, d.outline(l, l.Thickness)...)
	}
}

// around gives an opening's outline: up the hinge jamb, along the head, down the latch
// jamb, and back over the floor.
func (d *drawing) around(x *door.Door) (pts []pt) {
	f := &x.Frame
	hinge, latch := f.HeadCorners()
	hingeFoot, latchFoot := foot(x, f.HingeJamb), foot(x, f.LatchJamb)
	each(f.HingeJamb, hingeFoot, hinge.Y, func(y float64) { pts = append(pts, d.frame(f.HingeJamb.At(y), y)) })
	each(f.Head, hinge.X, latch.X, func(at float64) { pts = append(pts, d.frame(at, f.Head.At(at))) })
	each(f.LatchJamb, latch.Y, latchFoot, func(y float64) { pts = append(pts, d.frame(f.LatchJamb.At(y), y)) })
	from, to := f.LatchJamb.At(latchFoot), f.HingeJamb.At(hingeFoot)
	for i := len(x.Floor.Radii) - 1; i >= 0; i-- {
		if at := x.Floor.Radii[i]; to < at && at < from {
			pts = append(pts, d.frame(at, x.Floor.At(at, 0)))
		}
	}
	return distinct(pts)
}

// distinct takes out points that lie on the one before, as where two sides meet.
func distinct(pts []pt) (out []pt) {
	const near = 1e-6 // mm
	for _, p := range pts {
		if n := len(out); n == 0 || max(p.x-out[n-1].x, out[n-1].x-p.x, p.y-out[n-1].y, out[n-1].y-p.y) > near {
			out = append(out, p)
		}
	}
	return out
}

// foot gives the height at which a jamb meets the floor under the closed leaf.
func foot(x *door.Door, jamb geom.Profile) (y float64) {
	for range 4 { // jambs are all but plumb, floors all but level
		y = x.Floor.At(jamb.At(y), 0)
	}
	return y
}

func (d *drawing) opening() {
	now := d.around(d.after)
	d.polyline(d.on(Opening), true, now...)
	if was := d.around(d.found); !same(now, was) {
		d.polyline(d.on(OpeningAsFound), true, was...)
	}
}

func same(a, b []pt) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// hinges draws the recesses after, in the leaf's edge and in the jamb.
func (d *drawing) hinges() {
	on := d.on(HingeLayer(d.s.Lexicon))
	for _, h := range d.after.Hinges {
		if edge := d.after.Leaf.Hanging; h.LeafGain > 0 && h.Height > 0 {
			lo, hi := h.LeafHeight-h.Height/2, h.LeafHeight+h.Height/2
			d.polyline(on, true, d.leaf(edge.At(lo), lo), d.leaf(edge.At(lo)+h.LeafGain, lo), d.leaf(edge.At(hi)+h.LeafGain, hi), d.leaf(edge.At(hi), hi))
		}
		if jamb := d.after.Frame.HingeJamb; h.JambGain > 0 && h.Height > 0 {
			lo, hi := h.JambHeight-h.Height/2, h.JambHeight+h.Height/2
			d.polyline(on, true, d.frame(jamb.At(lo), lo), d.frame(jamb.At(lo)-h.JambGain, lo), d.frame(jamb.At(hi)-h.JambGain, hi), d.frame(jamb.At(hi), hi))
		}
	}
}

// moves draws what the option's moves do to the leaf's edges, one after another.
func (d *drawing) moves(before *game.Tried, steps []trim.Step) {
	work := hardware.WorkOf(before, steps)
	p := trim.Piece{Door: before.Door, Anatomy: before.Anatomy, Offcuts: before.Offcuts}
	for k := range steps {
		if steps[k].Move.Off || steps[k].Why != nil {
			continue
		}
		is, _, _ := trim.Do(p, steps[k].Move)
		for e := range door.Edges {
			if len(is.Anatomy.Strips) > len(p.Anatomy.Strips) && e == steps[k].Move.Edge {
				d.strip(&p.Door.Leaf, &is.Door.Leaf, e)
			} else {
				d.cut(&p.Door.Leaf, &is.Door.Leaf, e, k)
			}
		}
		if work != nil {
			for i := range work.Strips {
				if work.Strips[i].Step == k {
					d.dowels(&p.Door.Leaf, &work.Strips[i])
				}
			}
		}
		p = is
	}
}

// cut draws the line an edge is worked to, as far as it was another, and numbers it.
func (d *drawing) cut(was, is *door.Leaf, e door.Edge, k int) {
	old, now := edgeOf(was, e), edgeOf(is, e)
	lo, hi := ends(was, e, 0)
	const less = 1e-9 // mm: rounding
	places := []float64{}
	see := func(at float64) { places = append(places, at) }
	each(old.Plus(now), lo, hi, see)
	first, last := -1, -1
	for i, at := range places {
		if diff := now.At(at) - old.At(at); diff > less || diff < -less {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	if first < 0 {
		return
	}
	lo, hi = places[max(0, first-1)], places[min(len(places)-1, last+1)]
	pts := d.run(now, e, lo, hi, 0)
	d.polyline(d.on(Cuts), false, pts...)
	a, b := pts[0], pts[len(pts)-1]
	d.text(d.on(Notes), pt{(a.x + b.x) / 2, (a.y + b.y) / 2}, noteHigh/2, "move "+strconv.Itoa(k+1))
}

// strip draws a strip from its joint to its dressed edge.
func (d *drawing) strip(was, is *door.Leaf, e door.Edge) {
	lo, hi := ends(was, e, 0)
	pts := d.run(edgeOf(was, e), e, lo, hi, 0)
	lo, hi = ends(is, e, 0)
	d.polyline(d.on(Strips), true, append(pts, d.run(edgeOf(is, e), e, hi, lo, 0)...)...)
}

// dowels draws the bores of a strip glued to the leaf as it was.
func (d *drawing) dowels(was *door.Leaf, s *hardware.Strip) {
	e, joint := s.Dowels.Edge, edgeOf(was, s.Dowels.Edge)
	start, _ := ends(was, e, 0)
	in := 1.0
	if e == door.LatchSide || e == door.HeadSide {
		in = -1
	}
	on := d.on(Dowels)
	n := len(s.Dowels.Places)
	for i, along := range s.Dowels.Places {
		at, deep := start+along, s.Dowels.IntoLeaf
		if s.Dowels.Short > 0 && (i < s.Dowels.Shorts[0] || i >= n-s.Dowels.Shorts[1]) {
			deep = s.Dowels.Short
		}
		point := func(aside, into float64) pt {
			if e.Upright() {
				return d.leaf(joint.At(at)+in*into, at+aside)
			}
			return d.leaf(at+aside, joint.At(at)+in*into)
		}
		r, out := s.Dowels.Diameter/2, -s.Dowels.IntoStrip
		d.polyline(on, true, point(-r, out), point(r, out), point(r, deep), point(-r, deep))
		d.line(on, point(0, out), point(0, deep))
		d.mark(on, point(0, 0))
	}
}

// noteHigh is the height of the writing, mm.
const noteHigh = 20.0

// notes says below the drawing what it is.
func (d *drawing) notes(option int) {
	l := &d.after.Leaf
	side := "left"
	if d.job.Hand == game.Right {
		side = "right"
	}
	what := "as it stands"
	if option >= 0 && option < len(d.job.Options) {
		what = d.job.OptionName(option)
	}
	said := []string{
		d.job.Name,
		what,
		"Millimetres. Seen from the knuckle side, hinges on the " + side + ". The leaf lies as on a bench; the opening stands beside it.",
		"Leaf " + millimetres(l.Thickness) + " thick; outlines are of its knuckle face.",
	}
	if l.HangingBevel != 0 || l.ClosingBevel != 0 {
		said = append(said, "Bevels: "+d.s.HangingEdge+" "+degrees(l.HangingBevel)+", "+d.s.ClosingEdge+" "+degrees(l.ClosingBevel)+"; "+LeafAfterStop+" is the stop face.")
	}
	y := d.lo.y
	for _, text := range said {
		y -= 1.6 * noteHigh
		d.text(d.on(Notes), pt{0, y}, noteHigh, text)
	}
}

func millimetres(x float64) string { return strconv.FormatFloat(x, 'f', 1, 64) + " mm" }

func degrees(a geom.Angle) string { return strconv.FormatFloat(a.Degrees(), 'f', 1, 64) + " degrees" }
