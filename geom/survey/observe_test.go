package survey

import (
	"fmt"
	"math"
	"testing"

	"leafwright/geom/survey/lsq"
)

// Every kind's slopes against central differences of what it reads.
func TestSlopesAgainstDifferences(t *testing.T) {
	for seed := range uint64(20) {
		s := simulate(seed)
		d := s.door()
		card := Card(d.Frame.LatchJamb.At(1000), d.Frame.Head.At(300), 2)
		for _, e := range fours {
			card = append(card, Reading{Kind: LeafBow, Side: e, From: 60, To: 560, At: 200})
		}
		card = append(card,
			Reading{Kind: HingeFromHead}, Reading{Kind: HingeFromTop, Hinge: 1},
			Reading{Kind: LeafPacker}, Reading{Kind: JambPacker, Hinge: 1}, Reading{Kind: HingePlate},
			Reading{Kind: FrameBow, Side: Head, From: 60, To: 560, At: 200},
			Reading{Kind: FrontBow, Side: Head, From: 60, To: 560, At: 200},
			Reading{Kind: FloorSlope, From: 100, To: 500, Angle: 1},
		)
		rs := s.read(&d, card)
		res := Adjust(rs)
		n := res.adj.net
		x := res.adj.x
		o := observer{d: &n.d, net: n}
		_, slopes := n.differ(x, len(rs), func(out []float64) {
			for i := range rs {
				out[i] = specs[rs[i].Kind].observe(&o, &rs[i])
			}
		})
		var rows lsq.Rows
		o.rows = &rows
		for i := range rs {
			rows.Reset()
			specs[rs[i].Kind].observe(&o, &rs[i])
			rows.End(0, 1)
			row := make([]float64, len(x))
			cols, coefs := rows.Row(0)
			for k, c := range cols {
				row[c] += coefs[k]
			}
			for k := range x {
				if math.Abs(row[k]-slopes[k][i]) > 2e-5 {
					t.Errorf("%s: unknown %d: slope %.8f, by differences %.8f", fmt.Sprint(rs[i].Kind, " ", rs[i].Side), k, row[k], slopes[k][i])
				}
			}
		}
	}
}
