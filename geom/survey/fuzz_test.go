package survey

import (
	"encoding/binary"
	"math"
	"testing"

	"leafwright/geom"
)

// wild makes readings of bytes: anything at all, though often of a known kind at a
// likely place.
func wild(data []byte) []Reading {
	next := func() byte {
		if len(data) == 0 {
			return 0
		}
		b := data[0]
		data = data[1:]
		return b
	}
	number := func(usual float64) float64 {
		switch b := next(); b % 8 {
		case 0, 1, 2, 3:
			return usual * (0.9 + float64(next())/1280)
		case 4:
			return float64(int(next()) - 128)
		case 5:
			return 16 * float64(next())
		case 6:
			return [...]float64{math.NaN(), math.Inf(1), -1e300, 1e-300, 0}[next()%5]
		default:
			var raw [8]byte
			for i := range raw {
				raw[i] = next()
			}
			return math.Float64frombits(binary.LittleEndian.Uint64(raw[:]))
		}
	}
	var out []Reading
	for len(data) > 0 && len(out) < 60 {
		b := next()
		var r Reading
		if b < 200 {
			r.Kind = Kinds[int(b)%len(Kinds)].Kind
		}
		s := SpecOf(r.Kind)
		usual := 2.0
		if s != nil {
			if len(s.Sides) > 0 {
				r.Side = s.Sides[int(next())%len(s.Sides)]
			}
			switch s.Kind {
			case OpeningWidth, LeafWidth:
				usual = 765
			case OpeningHeight, LeafHeight:
				usual = 1985
			case OpeningDiagonal, LeafDiagonal:
				usual = 2128
			case HingeOnJamb, HingeOnLeaf:
				usual = 1800 - 1500*float64(next()%2)
			case LeafThickness, RebateDepth:
				usual = 42
			case Rub:
				usual = 0
			}
		}
		r.Hinge = int(next()%3) - int(next()/250)
		r.Rail = r.Hinge
		r.At = number(1000)
		r.From, r.To = number(100), number(1900)
		r.Angle = geom.Angle(number(1))
		r.Value = number(usual)
		if b := next(); b > 200 {
			r.Sigma = number(1)
		}
		out = append(out, r)
	}
	return out
}

// The least set of an ordinary door, so that a fuzzed job often hangs.
func plainLeast() []Reading {
	return []Reading{
		{Kind: OpeningWidth, At: 1000, Value: 768}, {Kind: OpeningHeight, At: 380, Value: 1990},
		{Kind: LeafWidth, At: 1000, Value: 762}, {Kind: LeafHeight, At: 380, Value: 1981},
		{Kind: LeafThickness, Value: 40},
		{Kind: HingeOnLeaf, Hinge: 0, Value: 1794}, {Kind: HingeOnLeaf, Hinge: 1, Value: 267},
	}
}

// Whatever the readings, there is a result, and what it says is numbers.
func FuzzAdjust(f *testing.F) {
	f.Add([]byte{1, 2, 3, 4, 5, 6, 7, 8, 9}, true)
	f.Add([]byte("a leaf in wind against a true frame, read in a hurry"), false)
	f.Fuzz(func(t *testing.T, data []byte, hangs bool) {
		rs := wild(data)
		if hangs {
			rs = append(plainLeast(), rs...)
		}
		res := Adjust(rs)
		if len(res.Readings) != len(rs) {
			t.Fatalf("%d readings judged of %d", len(res.Readings), len(rs))
		}
		for i, j := range res.Readings {
			if j.State == Faulty {
				if len(res.Faults) == 0 {
					t.Fatalf("reading %d is faulty without a fault", i)
				}
				continue
			}
			if math.IsNaN(j.Residual) || math.IsNaN(j.Redundancy) || math.IsNaN(j.Standardised) {
				t.Fatalf("reading %d: %+v", i, j)
			}
		}
		res.Assumptions()
		res.Unusual()
		res.Tells()
		g := res.Gaps()
		if (g != nil) != res.Hangs {
			t.Fatalf("hangs %v, gaps %v", res.Hangs, g != nil)
		}
		if g != nil {
			_, u, _ := g.Tightest()
			if math.IsNaN(u.Value) || math.IsNaN(u.Sigma) {
				t.Fatalf("tightest gap %+v", u)
			}
			if p := u.Binds(); !(p >= 0 && p <= 1) {
				t.Fatalf("chance %v", p)
			}
			g.NextForTightest()
		}
	})
}
