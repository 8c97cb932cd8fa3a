package survey

import (
	"math"

	"leafwright/geom/fit"
)

// Hanging is how a leaf that was never hung is to hang, mm: where its hinges go is then
// a choice, and no size that nobody measured.
type Hanging struct {
	Side      float64 // gap at the hinge side
	Head      float64 // gap at the head, where it is tightest
	HeadLeast float64 // and the least it may be
	Floor     float64 // least gap over the floor, the leaf closed
	Swing     float64 // and while it swings
}

// Chosen is what of the hanging was chosen, since no reading tells of it and nothing
// tells that it was ever cut.
type Chosen struct {
	Jamb bool // the hinges' heights and gains on the jamb
	Leaf bool // and those on the leaf
	// Short is how much more height, mm, the gaps at head and floor ask for than there is:
	// the leaf is placed by its head then, and wants cutting.
	Short float64
}

// Any tells whether anything was chosen.
func (c Chosen) Any() bool { return c.Jamb || c.Leaf }

// How well what is chosen is kept to, mm, one sigma: a gap set by packers while the
// hinges' places are marked, and a gain cut to a gauged line (common practice, no
// published source).
const (
	marked = 0.3
	gauged = 0.2
)

// ofJamb and ofLeaf tell whether a kind of reading tells of hinges let into them.
func (k Kind) ofJamb() bool {
	switch k {
	case HingeOnJamb, HingeFromHead, JambGain, JambPacker:
		return true
	}
	return false
}

func (k Kind) ofLeaf() bool {
	switch k {
	case HingeOnLeaf, HingeFromTop, LeafGain, LeafPacker:
		return true
	}
	return false
}

// free tells what of the hanging is a choice: nothing where the leaf was ever hung.
func (a *adjustment) free() (c Chosen) {
	c = Chosen{Jamb: true, Leaf: true}
	for i := range a.readings {
		switch k := a.readings[i].Kind; {
		case !a.use[i]:
		case specs[k].hung, k == HingeProud, k == LatchProud:
			return Chosen{}
		case k.ofJamb():
			c.Jamb = false
		case k.ofLeaf():
			c.Leaf = false
		}
	}
	return c
}

// choose puts the hinges where the leaf hangs as wanted, and tells what was chosen.
func (a *adjustment) choose(want *Hanging) Chosen {
	if want == nil || len(a.net.size.missing) > 0 {
		return Chosen{}
	}
	c, n := a.free(), a.net
	if n.write(a.x); !c.Any() || !n.hangs() {
		return Chosen{}
	}
	was := append([]float64(nil), a.x...)
	begin := append([]wish(nil), n.wishes...)
	for i := range n.d.Hinges {
		n.d.Hinges[i].UncutJamb, n.d.Hinges[i].UncutLeaf = c.Jamb, c.Leaf
	}
	n.gauge(c)
	var f fit.Fit
	for range 4 {
		n.write(a.x)
		d := n.stand()
		if len(d.Check()) > 0 {
			break
		}
		fit.Evaluate(&f, &d)
		side := &f.Gaps[fit.HingeSide]
		wider := want.Side - (side.Least+side.Most)/2
		lower, short := want.lower(&f)
		c.Short = short
		if math.Abs(wider)+math.Abs(lower) < 0.005 {
			return c
		}
		n.place(f.Gaps[fit.HeadSide].LeastAt, f.Pose.Origin.X, lower)
		n.open(wider)
		if a.settle() != nil {
			break
		}
	}
	n.write(a.x)
	if d := n.stand(); len(d.Check()) == 0 && len(n.wishes) == len(begin) {
		return c
	}
	// No such door: as is usual, then.
	copy(n.wishes, begin)
	copy(a.x, was)
	if err := a.settle(); err != nil {
		copy(a.x, was)
	}
	n.write(a.x)
	for i := range n.d.Hinges {
		n.d.Hinges[i].UncutJamb, n.d.Hinges[i].UncutLeaf = false, false
	}
	return Chosen{}
}

// lower gives how much lower than in the fit the leaf is to hang, and how much height
// is wanting.
func (want *Hanging) lower(f *fit.Fit) (mm, short float64) {
	head := f.Gaps[fit.HeadSide].Least
	room := min(f.Gaps[fit.FloorSide].Least-want.Floor, f.Swing[fit.FloorSide].Least-want.Swing)
	switch all := head + room; { // what there is for the head, the leaf as low as the floor lets it
	case all >= want.Head:
		return want.Head - head, 0
	case all >= want.HeadLeast:
		return all - head, 0
	default: // the foot is cut in any case, so the head has what it wants
		return want.Head - head, want.HeadLeast - all
	}
}

// hingeWishes are the places, among the wishes, of those about one hinge.
type hingeWishes struct{ onLeaf, place, gain, other int }

// set gives a wish other terms, of which it is wished that they stay as they are.
func (n *net) set(i int, sigma float64, terms ...term) {
	w := &n.wishes[i]
	w.n, w.sigma, w.name = copy(w.terms[:], terms), sigma, -1
	w.mean = n.is(w)
}

// gauge makes the wishes about gains and places that are chosen ones of a workman who
// sets them out.
func (n *net) gauge(c Chosen) {
	for i, h := range n.hinge {
		of, first := n.hingeWishes[i], n.hinge[0]
		if c.Leaf {
			n.wishes[of.onLeaf].name = -1
			if c.Jamb {
				n.wishes[of.onLeaf].sigma = marked
				n.set(of.gain, gauged, term{h[fieldLeafGain], 1}, term{h[fieldJambGain], -1}) // half in each (Noyes; Fairham)
				n.wishes[of.gain].mean = 0
			} else { // what is known of gains is known of the jamb's
				w := &n.wishes[of.gain]
				w.terms[0].q = h[fieldJambGain]
				if i > 0 {
					w.terms[1].q = first[fieldJambGain]
				}
			}
		}
		if i > 0 {
			w := &n.wishes[of.place]
			w.sigma, w.name = marked, -1
		}
		n.set(of.other, gauged, term{h[fieldClosed], 1}, term{h[fieldLeafGain], -1}, term{h[fieldJambGain], -1},
			term{h[fieldLeafPacker], 1}, term{h[fieldJambPacker], 1})
	}
}

// place hangs the leaf so much lower, by the head's gap at that place of the frame; the
// leaf's axes stand at originX.
func (n *net) place(at, originX, lower float64) {
	h := n.hinge[0]
	terms := append(make([]term, 0, 6), term{h[fieldJambHeight], 1}, term{h[fieldLeafHeight], -1})
	n.line[top].weigh(at-originX, func(q int, w float64) { terms = append(terms, term{q, w}) })
	n.line[head].weigh(at, func(q int, w float64) { terms = append(terms, term{q, -w}) })
	n.set(n.hingeWishes[0].place, marked, terms...)
	n.wishes[n.hingeWishes[0].place].mean -= lower
}

// open makes the gap at every hinge the same, and so much wider than they are in the
// middle.
func (n *net) open(wider float64) {
	var mean float64
	for _, of := range n.hingeWishes {
		mean += n.is(&n.wishes[of.other]) / float64(len(n.hingeWishes))
	}
	for _, of := range n.hingeWishes {
		n.wishes[of.other].mean = mean + wider
	}
}
