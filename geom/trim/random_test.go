package trim_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// pieces is how many random ones are tried, fewer when time is short.
func pieces(n int) int {
	if testing.Short() {
		return max(1, n/6)
	}
	return n
}

// trimSeed starts every stream of random pieces and moves; with an index it gives
// that piece again.
const trimSeed = 20261126

// dice is a source of lengths and of choices.
type dice struct{ *rand.Rand }

func throw(n int) dice { return dice{rand.New(rand.NewPCG(trimSeed, uint64(n)))} }

func (c dice) of(p float64) bool             { return c.Float64() < p }
func (c dice) within(lo, hi float64) float64 { return lo + (hi-lo)*c.Float64() }

// line gives a profile about base over the length, one to five stations.
func (c dice) line(length, base, out float64) geom.Profile {
	n := 1 + c.IntN(5)
	at := make([]float64, n)
	for i := range at {
		at[i] = c.within(0, length-60*float64(n))
	}
	slices.Sort(at)
	var p geom.Profile
	for i, a := range at {
		p = append(p, geom.Station{At: a + 60*float64(i), Value: base + c.within(-out, out)})
	}
	return p
}

// randomPiece gives a door that passes its check, out of true in every way an old
// house has, with a make-up.
func randomPiece(n int) trim.Piece {
	c := throw(n)
	for {
		p := c.piece()
		if len(p.Door.Check()) == 0 && len(p.Anatomy.Check(&p.Door.Leaf)) == 0 {
			return p
		}
	}
}

func (c dice) piece() trim.Piece {
	width, height, t := c.within(450, 1000), c.within(1500, 2300), c.within(25, 55)
	wide, high := width-c.within(5, 12), height-c.within(6, 16)
	out := c.within(0, 4)
	var d door.Door
	d.Leaf = door.Leaf{
		Width: wide, Thickness: t,
		Hanging: c.line(high, 0, out/2), Closing: c.line(high, wide, out),
		Top: c.line(wide, high, out), Bottom: c.line(wide, 0, out),
		HangingFace: c.line(high, 0, out/2), ClosingFace: c.line(high, 0, 2*out),
		HangingBevel: geom.Angle(c.IntN(3)) * geom.Degree, ClosingBevel: geom.Angle(c.IntN(5)) * geom.Degree,
	}
	f := &d.Frame
	f.HingeJamb, f.LatchJamb, f.Head = c.line(height, 0, out), c.line(height, width, out), c.line(width, height, out)
	f.HingeFront, f.LatchFront, f.HeadFront = c.line(height, 0, out), c.line(height, 0, out), c.line(width, 0, out)
	f.StopWidth = c.within(8, 20)
	f.PlantStops(t + c.within(-3, 12))
	if c.of(0.5) {
		f.LatchStop = c.line(height, -t-3, out)
	}
	n := 2 + c.IntN(2)
	for i := range n {
		y := height - 200 - float64(i)/float64(n-1)*(height-420) + c.within(-20, 20)
		d.Hinges = append(d.Hinges, door.Hinge{
			JambHeight: y, LeafHeight: y - c.within(4, 8),
			Closed: c.within(6, 10), LeafGain: c.within(1, 3), JambGain: c.within(1, 3),
			Pin: c.within(3, 12), Height: c.within(75, 125), LeafPacker: max(0, c.within(-1, 1)),
		})
	}
	d.Latch = door.Latch{Height: c.within(0.4, 0.6) * high}
	d.Opens = geom.Angle(c.within(80, 180)) * geom.Degree
	d.Floor = door.FlatFloor(c.within(-2, 2))
	if c.of(0.5) {
		d.Floor = door.Floor{
			Radii: []float64{0, width}, Angles: []geom.Angle{0, 20 * geom.Degree, 90 * geom.Degree},
			Heights: [][]float64{{0, c.within(-4, 4)}, {0, c.within(-4, 4)}, {0, c.within(-8, 8)}},
		}
	}
	a := door.Ordinary([]door.Make{door.Framed, door.Boarded, door.Flush}[c.IntN(3)], wide, high-2*out)
	if a.Make == door.Framed {
		a.Rails[0].From = out
		a.Joints = door.Joints{Kind: []door.JointKind{door.Through, door.Stub, door.Dowelled}[c.IntN(3)], Tenon: 50, Haunch: 40}
		if a.Joints.Kind == door.Through {
			a.Joints = door.Joints{Kind: door.Through, Haunch: 40, Wedge: 8}
		}
	}
	a.Rated = c.of(0.03)
	if c.of(0.6) {
		a.Lock = door.Lock{Kind: door.Mortice, Height: d.Latch.Height, Backset: 55, Case: 75, Depth: 80}
	}
	return trim.Piece{Door: d, Anatomy: a}
}

// move gives a move of a random kind, its fields filled as its kind needs them;
// some of it out of range.
func (c dice) move(p *trim.Piece) trim.Move {
	if n := len(p.Offcuts); n > 0 && p.Offcuts[n-1].Height > 3 && c.of(0.4) {
		m := trim.Move{Kind: trim.Reuse, Edge: door.HeadSide, Hollow: c.within(0, 0.3)}
		if p.Offcuts[n-1].Edge == door.HeadSide {
			m.Edge = door.FloorSide
		}
		return m
	}
	return c.moveOf(&trim.Kinds[c.IntN(len(trim.Kinds))], p)
}

func (c dice) moveOf(s *trim.Spec, p *trim.Piece) trim.Move {
	has := func(n trim.Needs) bool { return s.Needs&n != 0 }
	m := trim.Move{Kind: s.Kind, Off: c.of(0.15)}
	amount := func() float64 {
		if c.of(0.05) {
			return s.Amount.Lo + (s.Amount.Hi-s.Amount.Lo)*c.within(-0.2, 1.2)
		}
		if s.Amount.Lo < 0 {
			return c.within(max(s.Amount.Lo, -4), min(s.Amount.Hi, 4))
		}
		return c.within(s.Amount.Lo, min(s.Amount.Hi, s.Amount.Lo+4))
	}
	if has(trim.NeedEdge) && len(s.Edges) > 0 {
		m.Edge = s.Edges[c.IntN(len(s.Edges))]
	}
	if has(trim.NeedFace) {
		m.Face = []trim.Face{trim.Knuckle, trim.Stop, trim.Middle}[c.IntN(3)]
		if s.Kind == trim.Ease && m.Face == trim.Middle {
			m.Face = trim.Stop
		}
	}
	if has(trim.NeedHinge) {
		m.Hinge = c.IntN(len(p.Door.Hinges) + 1)
	}
	if has(trim.NeedOn) {
		m.On = []trim.Part{trim.OnLeaf, trim.OnJamb, trim.OnBoth}[c.IntN(3)]
	}
	if has(trim.NeedSpan) && c.of(0.4) {
		long := p.Door.Leaf.Width
		if m.Edge.Upright() {
			long = p.Door.Leaf.Top.At(0)
		}
		m.From, m.To = c.within(0, 0.4)*long, c.within(0.6, 1)*long
	}
	if has(trim.NeedFirst) {
		m.First = amount()
	}
	if has(trim.NeedLast) {
		m.Last = amount()
	}
	if s.Kind == trim.Cut && c.of(0.5) { // enough to be used again
		m.First, m.Last = c.within(10, 40), c.within(10, 40)
	}
	if has(trim.NeedLine) {
		m.Line = geom.Through(100, c.within(0, 3), 250, c.within(0, 3), 400, c.within(0, 3))
	}
	if has(trim.NeedAngle) {
		m.Angle = geom.Angle(c.within(-3, 6)) * geom.Degree
	}
	if has(trim.NeedStock) {
		m.Stock = p.Door.Leaf.Thickness + c.within(-10, 3)
		m.First, m.Last = c.within(5, 20), c.within(5, 20)
	}
	if has(trim.NeedHollow) {
		m.Hollow = c.within(0, 0.32)
	}
	if has(trim.NeedHinges) {
		m.Closed, m.Plates, m.Pin, m.LeafGain, m.JambGain = c.within(6, 10), c.within(75, 125), c.within(3, 12), c.within(1, 3), c.within(1, 3)
	}
	if has(trim.NeedCover) {
		m.Cover = c.within(0, 12)
	}
	if has(trim.NeedWide) {
		m.Wide = c.within(30, 120)
	}
	return m
}

// moves gives a list of random moves.
func (c dice) moves(n int, p *trim.Piece) []trim.Move {
	ms := make([]trim.Move, n)
	for i := range ms {
		ms[i] = c.move(p)
	}
	return ms
}
