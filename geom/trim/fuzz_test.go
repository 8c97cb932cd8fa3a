package trim_test

import (
	"encoding/binary"
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// holds checks what must hold of any move on any sound piece.
func holds(t *testing.T, p trim.Piece, m trim.Move) trim.Piece {
	t.Helper()
	kept := deep(p)
	q, done, why := trim.Do(p, m)
	if !same(p, kept) {
		t.Fatalf("%+v changed the piece it was given", m)
	}
	if why != nil {
		if !why.About.Forbids() || !same(p, q) {
			t.Fatalf("%+v: refused for %+v, and the piece changed", m, *why)
		}
		return q
	}
	if faults := q.Door.Check(); len(faults) > 0 {
		t.Fatalf("%+v: %v", m, faults)
	}
	for _, x := range []float64{done.Off, done.On, done.Volume, done.Most, done.Minutes} {
		if !(x >= 0 && !math.IsInf(x, 0)) {
			t.Fatalf("%+v: %+v", m, done)
		}
	}
	return q
}

func kindOf(b uint8) trim.Kind {
	if n := len(trim.Kinds); int(b) < n {
		return trim.Kinds[b].Kind
	}
	return "varnish"
}

var (
	parts = []trim.Part{trim.OnLeaf, trim.OnJamb, trim.OnBoth, "", "wall"}
	faces = []trim.Face{trim.Knuckle, trim.Stop, trim.Middle, "", "side"}
)

// counting leaves out the fields that do not count for the move's kind.
func counting(m trim.Move) trim.Move {
	s := trim.SpecOf(m.Kind)
	if s == nil {
		return m
	}
	has := func(n trim.Needs) bool { return s.Needs&n != 0 }
	is := trim.Move{Kind: m.Kind}
	if has(trim.NeedEdge) {
		is.Edge = m.Edge
	}
	if has(trim.NeedFace) {
		is.Face = m.Face
	}
	if has(trim.NeedHinge) {
		is.Hinge = m.Hinge
	}
	if has(trim.NeedOn) {
		is.On = m.On
	}
	if has(trim.NeedSpan) {
		is.From, is.To = m.From, m.To
	}
	if has(trim.NeedFirst) {
		is.First = m.First
	}
	if has(trim.NeedLast) {
		is.Last = m.Last
	}
	if has(trim.NeedLine) {
		is.Line = m.Line
	}
	if has(trim.NeedAngle) {
		is.Angle = m.Angle
	}
	if has(trim.NeedStock) {
		is.Stock, is.SetIn = m.Stock, m.SetIn
	}
	if has(trim.NeedHollow) {
		is.Hollow = m.Hollow
	}
	if has(trim.NeedHinges) {
		is.Closed, is.Plates, is.Pin, is.LeafGain, is.JambGain = m.Closed, m.Plates, m.Pin, m.LeafGain, m.JambGain
	}
	if has(trim.NeedCover) {
		is.Cover = m.Cover
	}
	if has(trim.NeedWide) {
		is.Wide = m.Wide
	}
	return is
}

// FuzzDo makes one move of any numbers.
func FuzzDo(f *testing.F) {
	for k := range uint8(20) {
		f.Add(uint16(k), k, int8(k%4), int8(k%3), k%5, 0.0, 0.0, 1.0, 2.0, 0.02, 45.0, 0.1, 8.0, 100.0, 6.0, 50.0)
	}
	f.Add(uint16(3), uint8(1), int8(-1), int8(-5), uint8(9), math.NaN(), math.Inf(1), -1e300, 1e-320, 9.0, -3.0, 4.0, 5.0, 0.0, 1.0, math.Inf(-1))
	f.Fuzz(func(t *testing.T, n uint16, kind uint8, edge, hinge int8, word uint8, from, to, first, last, angle, stock, hollow, closed, plates, pin, cover float64) {
		p := randomPiece(int(n % 64))
		m := trim.Move{
			Kind: kindOf(kind), Edge: door.Edge(edge), Hinge: int(hinge),
			On: parts[int(word)%len(parts)], Face: faces[int(word)%len(faces)],
			From: from, To: to, First: first, Last: last, Angle: geom.Angle(angle),
			Line:  geom.Profile{{At: from, Value: first}, {At: to, Value: last}},
			Stock: stock, SetIn: hollow, Hollow: hollow,
			Closed: closed, Plates: plates, Pin: pin, LeafGain: hollow, JambGain: hollow,
			Cover: cover, Wide: plates,
		}
		if n%8 != 0 { // fields that do not count are refused: most tries leave them out
			m = counting(m)
		}
		q := holds(t, p, m)
		holds(t, q, m)
	})
}

// FuzzAll makes several moves, of the kinds and amounts that the bytes say.
func FuzzAll(f *testing.F) {
	f.Add(uint16(1), []byte{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
	f.Add(uint16(9), []byte("abcdefghijklmnopqrstuvwxyz0123456789"))
	f.Fuzz(func(t *testing.T, n uint16, bytes []byte) {
		p := randomPiece(int(n % 64))
		var moves []trim.Move
		for len(bytes) >= 4 && len(moves) < 12 && len(trim.Kinds) > 0 {
			c := throw(int(binary.LittleEndian.Uint32(append(bytes[1:4:4], 0))))
			moves = append(moves, c.moveOf(&trim.Kinds[int(bytes[0])%len(trim.Kinds)], &p))
			bytes = bytes[4:]
		}
		kept := deep(p)
		q, steps := trim.All(p, moves)
		if !same(p, kept) || len(steps) != len(moves) {
			t.Fatalf("%d steps for %d moves, or the piece changed", len(steps), len(moves))
		}
		if faults := q.Door.Check(); len(faults) > 0 {
			t.Fatal(faults)
		}
	})
}
