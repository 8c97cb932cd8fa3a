package trim

import (
	"strconv"

	"leafwright/geom/door"
)

// Ranges of the numbers that are not amounts, in mm.
var (
	setIn    = door.Range{Hi: door.LeafThickness.Hi}
	hollow   = door.Range{Hi: 20} // told as found; what is too much is said by a care
	covering = door.Range{Hi: door.FloorHeight.Hi}
	through  = door.Range{Lo: 1, Hi: 1000} // the wall
)

const degreeNoise = 1e-9 // what degrees may lose on their way to radians and back

// Check gives everything that is wrong with the move's numbers by themselves, in the
// job file's field names; which hinges and edges the door has is not looked at.
func (m *Move) Check() []door.Fault {
	spec := SpecOf(m.Kind)
	if spec == nil {
		kinds := make([]string, len(Kinds))
		for i := range Kinds {
			kinds[i] = string(Kinds[i].Kind)
		}
		return []door.Fault{{Path: "do", Value: strconv.Quote(string(m.Kind)), Want: oneOf(kinds)}}
	}
	c := checking{spec: spec}
	if c.counts(NeedEdge, "edge", m.Edge != 0, edgeWord(m.Edge, spec.Trade)) && !among(m.Edge, spec.Edges) {
		c.fault("edge", edgeWord(m.Edge, spec.Trade), oneOf(wordsOf(spec)))
	}
	faces := []string{string(Knuckle), string(Stop), string(Middle)}
	if m.Kind == Ease {
		faces = faces[:2]
	}
	c.word(NeedFace, "face", string(m.Face), faces...)
	if c.counts(NeedHinge, "hinge", m.Hinge != 0, strconv.Itoa(m.Hinge)) && (m.Hinge < 0 || m.Hinge > door.HingesMost) {
		c.fault("hinge", strconv.Itoa(m.Hinge), "between 0, for all of them, and "+strconv.Itoa(door.HingesMost))
	}
	c.word(NeedOn, "on", string(m.On), string(OnLeaf), string(OnJamb), string(OnBoth))
	from := c.num(NeedSpan, "from", m.From, door.Place)
	if to := c.num(NeedSpan, "to", m.To, door.Place); from && to && m.spans() && m.To-m.From < door.ApartLeast {
		c.fault("to", door.Say(m.To), "beyond from, "+door.Say(m.From)+", by "+door.Say(door.ApartLeast)+" at least; both are 0 for the whole edge")
	}
	c.num(NeedFirst, "first", m.First, spec.Amount)
	c.num(NeedLast, "last", m.Last, spec.Amount)
	if n := strconv.Itoa(len(m.Line)) + " stations"; c.counts(NeedLine, "line", len(m.Line) > 0, n) {
		if len(m.Line) == 0 {
			c.fault("line", n, "one at least")
		}
		c.faults = append(c.faults, door.CheckProfile("line", m.Line, door.Place, spec.Amount)...)
	}
	c.num(NeedAngle, "angle", m.Angle.Degrees(), door.Bevel.Round(degreeNoise))
	c.num(NeedStock, "stock", m.Stock, door.LeafThickness)
	c.num(NeedStock, "set_in", m.SetIn, setIn)
	c.num(NeedHollow, "hollow", m.Hollow, hollow)
	c.num(NeedHinges, "closed", m.Closed, door.Closed)
	c.num(NeedHinges, "plates", m.Plates, door.HingePlate)
	c.num(NeedHinges, "pin", m.Pin, door.Pin)
	c.num(NeedHinges, "leaf_gain", m.LeafGain, door.Gain)
	c.num(NeedHinges, "jamb_gain", m.JambGain, door.Gain)
	cover := covering
	if m.Kind == Threshold {
		cover = door.FloorHeight
	}
	c.num(NeedCover, "cover", m.Cover, cover)
	c.num(NeedWide, "wide", m.Wide, through)
	return c.faults
}

// checking gathers what is wrong with a move of a kind.
type checking struct {
	spec   *Spec
	faults []door.Fault
}

func (c *checking) fault(path, value, want string) {
	c.faults = append(c.faults, door.Fault{Path: path, Value: value, Want: want})
}

// counts tells whether a field counts for the kind; one that does not is nought.
func (c *checking) counts(n Needs, path string, set bool, value string) bool {
	if c.spec.Needs&n != 0 {
		return true
	}
	if set {
		c.fault(path, value, "wanted for "+string(c.spec.Kind)+": leave it out")
	}
	return false
}

// num checks a number and tells whether it counts and is sound.
func (c *checking) num(n Needs, path string, x float64, allow door.Range) bool {
	needed := c.spec.Needs&n != 0
	if needed && allow.Holds(x) {
		return true
	}
	if !needed && x == 0 || !c.counts(n, path, true, door.Say(x)) {
		return false
	}
	f, _ := allow.Fault(path, x, true)
	c.faults = append(c.faults, f)
	return false
}

func (c *checking) word(n Needs, path, got string, allowed ...string) {
	if !c.counts(n, path, got != "", strconv.Quote(got)) {
		return
	}
	for _, w := range allowed {
		if got == w {
			return
		}
	}
	c.fault(path, strconv.Quote(got), oneOf(allowed))
}

func oneOf(words []string) string {
	s := "one of "
	for i, w := range words {
		if i > 0 {
			s += ", "
		}
		s += w
	}
	return s
}

// spans tells whether the move is done on a part of the edge.
func (m *Move) spans() bool { return m.From != 0 || m.To != 0 }

func among(e door.Edge, all []door.Edge) bool {
	for _, x := range all {
		if x == e {
			return true
		}
	}
	return false
}

// wordsOf gives the job file's words for the edges of a kind.
func wordsOf(spec *Spec) []string {
	words := make([]string, len(spec.Edges))
	for i, e := range spec.Edges {
		words[i] = edgeWord(e, spec.Trade)
	}
	return words
}

// edgeWord is the job file's word for an edge of the leaf or a side of the frame.
func edgeWord(e door.Edge, t Trade) string {
	if e < 0 || e >= door.Edges {
		return strconv.Itoa(int(e))
	}
	if t == TheFrame {
		return [...]string{"hinge_jamb", "latch_jamb", "head", "floor"}[e]
	}
	return [...]string{"hanging", "closing", "top", "foot"}[e]
}
