package trim

import "leafwright/geom/door"

// What a strip must be, in mm (common practice, no published source).
const (
	hollowMost = 0.3 // between the two faces to be glued: glue fills no more
	stripLeast = 3.0 // height of a strip where it is highest
	stripWork  = 8.0 // lower than this it is hard to cramp and to pin
)

// splice glues a strip onto an edge: it follows the edge and is dressed to First..Last
// high. Stock as thick as the leaf is dressed flush with both faces; thinner stock
// stands back from one or both: by SetIn from the face it is set from, or evenly from
// both where it is centred.
func (w *work) splice(m *Move) *Care {
	thick := w.p.Door.Leaf.Thickness
	var s door.Section
	switch lack := max(0, thick-m.Stock); m.Face {
	case Knuckle:
		s.KnuckleBack = m.SetIn
		s.StopBack = max(0, lack-m.SetIn)
	case Stop:
		s.StopBack = m.SetIn
		s.KnuckleBack = max(0, lack-m.SetIn)
	default:
		s.KnuckleBack, s.StopBack = lack/2, lack/2
	}
	return w.glue(m, s, m.First, m.Last)
}

// reuse glues the newest offcut of the other end on, dressed to First high, or as high
// as it is.
func (w *work) reuse(m *Move) *Care {
	other := door.HeadSide
	if m.Edge == door.HeadSide {
		other = door.FloorSide
	}
	k := len(w.p.Offcuts) - 1
	for ; k >= 0 && w.p.Offcuts[k].Edge != other; k-- {
	}
	strip := Member{Part: Strip, Edge: m.Edge}
	if k < 0 {
		return &Care{About: NoOffcut, Member: strip}
	}
	c := w.p.Offcuts[k]
	const short = 1.0 // mm that the ends may lack: they are rounded off
	long := w.p.Door.Leaf.Ends(m.Edge, 0).Length()
	switch {
	case !c.Across:
		return &Care{About: WrongGrain, Member: strip}
	case c.Height < m.First:
		return &Care{About: TooThin, Member: strip, Left: c.Height, Need: m.First}
	case c.Length < long-short:
		return &Care{About: TooThin, Member: strip, Left: c.Length, Need: long}
	}
	height := m.First
	if height == 0 {
		height = c.Height
	}
	rest := append([]Offcut(nil), w.p.Offcuts[:k]...)
	w.p.Offcuts = append(rest, w.p.Offcuts[k+1:]...)
	return w.glue(m, door.Section{StopBack: max(0, w.p.Door.Leaf.Thickness-c.Thick)}, height, height)
}

// glue puts a strip of that section on the edge.
func (w *work) glue(m *Move, s door.Section, first, last float64) *Care {
	l, a := &w.p.Door.Leaf, &w.p.Anatomy
	strip := Member{Part: Strip, Edge: m.Edge}
	if m.Hollow > hollowMost {
		return &Care{About: Crooked, Member: strip, Left: m.Hollow, Need: hollowMost}
	}
	if high := max(first, last); high < stripLeast {
		return &Care{About: TooThin, Member: strip, Left: high, Need: stripLeast}
	}
	if stock := l.Thickness - s.KnuckleBack - s.StopBack; stock < door.EdgeLeft {
		return &Care{About: TooThin, Member: strip, Left: max(0, stock), Need: door.EdgeLeft}
	}
	line, in := l.Line(m.Edge)
	ends := l.Ends(m.Edge, 0)
	joint := *line
	*line = bent(joint, straight(first, last, ends), -in, ends)
	a.Strips = append(append([]door.Strip(nil), a.Strips...), door.Strip{
		Edge: m.Edge, Joint: joint, Stock: l.Thickness - s.KnuckleBack - s.StopBack, Back: s.KnuckleBack,
	})
	l.Sections[m.Edge] = s
	w.done.Strips = 1
	w.done.Off, w.done.On = Took(&w.was.Door.Leaf, l)
	off := taken{joint, *line, in}
	if low := min(first, last); low < stripWork {
		w.mind(Care{About: StripThin, Member: strip, Left: low, Need: stripWork})
	} else if s != (door.Section{}) {
		w.mind(Care{About: StripThin, Member: strip})
	}
	switch m.Edge {
	case door.HingeSide:
		w.recut()
	case door.LatchSide:
		w.nearerLock(&off)
	default:
		if a.Make != door.Flush {
			w.mind(Care{About: EndGrainGlued, Member: strip})
		}
	}
	return w.limits(m.Edge)
}

// recut cuts the gains anew in a strip on the hanging edge, as deep as they were.
func (w *work) recut() {
	d := &w.p.Door
	for i := range d.Hinges {
		h := &d.Hinges[i]
		w.mind(Care{About: HingeOnStrip, Member: Member{Part: HingeSeat, Edge: door.HingeSide, Index: i}})
		if h.LeafGain > 0 {
			w.done.Gains = append(w.done.Gains, i)
			w.done.Volume += float64(float64(h.Height*h.LeafGain) * max(0, d.Leaf.Thickness-short))
		}
	}
}
