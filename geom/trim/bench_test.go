package trim_test

import (
	"strconv"
	"testing"

	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// BenchmarkAll makes lists of shavings, sunk gains and stops moved.
func BenchmarkAll(b *testing.B) {
	some := []trim.Move{
		{Kind: trim.Plane, Edge: door.LatchSide, First: 0.05, Last: 0.02},
		{Kind: trim.Sink, Hinge: 1, On: trim.OnLeaf, First: 0.02},
		{Kind: trim.Plane, Edge: door.HeadSide, From: 300, To: 600, First: 0.05, Last: 0.05},
		{Kind: trim.Restop, Edge: door.LatchSide, First: 0.02, Last: 0.01},
		{Kind: trim.Raise, On: trim.OnJamb, First: 0.02},
	}
	for _, n := range []int{1, 10, 100} {
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			p := caseOne()
			var moves []trim.Move
			for i := range n {
				moves = append(moves, some[i%len(some)])
			}
			_, steps := trim.All(p, moves)
			for i := range steps {
				if steps[i].Why != nil {
					b.Fatalf("move %d: %+v", i, *steps[i].Why)
				}
			}
			b.ReportAllocs()
			for b.Loop() {
				trim.All(p, moves)
			}
		})
	}
}

func BenchmarkFollow(b *testing.B) {
	p := randomPiece(5)
	m := trim.Move{Kind: trim.Follow, Edge: door.LatchSide, First: 1}
	b.ReportAllocs()
	for b.Loop() {
		trim.Do(p, m)
	}
}
