package fault_test

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/fault"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// FuzzMake puts faults of any seed into doors that are sound or mangled: what comes of it
// is a door that can be measured, and nothing panics.
func FuzzMake(f *testing.F) {
	f.Add(uint64(1), 0.5, 0.5, uint32(1<<19-1), 0.0, uint8(0))
	f.Add(uint64(2), math.NaN(), math.Inf(1), uint32(5), 40.0, uint8(3))
	f.Add(uint64(3), -1.0, 2.0, uint32(0), math.NaN(), uint8(200))
	f.Fuzz(func(t *testing.T, seed uint64, old, hard float64, of uint32, mangle float64, what uint8) {
		p := fault.Sound(seed, old)
		d := &p.Door
		switch what % 8 {
		case 1:
			d.Frame.LatchJamb = d.Frame.LatchJamb.Shift(mangle)
		case 2:
			d.Leaf.Thickness += mangle
		case 3:
			d.Hinges[0].LeafGain += mangle
		case 4:
			d.Leaf.Top = geom.Level(mangle)
		case 5:
			d.Hinges = d.Hinges[:1]
		case 6:
			d.Floor.Heights = nil
		case 7:
			d.Opens = geom.Angle(mangle)
		}
		var some []fault.Kind
		for i, k := range kinds {
			if of&(1<<i) != 0 {
				some = append(some, k)
			}
		}
		fault.Mix(p, some, int(what%5), seed, hard)
		is, made := fault.Make(p, some, seed, hard)
		if len(p.Door.Check()) > 0 {
			if len(made) > 0 {
				t.Fatalf("made %+v of a door that cannot be measured", made)
			}
			return
		}
		if bad := is.Door.Check(); len(bad) > 0 {
			t.Fatalf("%+v: %v", made, bad)
		}
		for i := range made {
			if bad := made[i].Check(); len(bad) > 0 {
				t.Fatalf("%+v: %v", made[i], bad)
			}
		}
		var e fit.Fit
		fit.Evaluate(&e, &is.Door)
		w := fault.Wanted()
		fault.Symptoms(&e, &is.Door, &w)
		trim.All(is, fault.Cure(is, made))
	})
}

// FuzzPut puts in what a lesson file may say.
func FuzzPut(f *testing.F) {
	f.Add(uint64(1), uint8(3), 2.0, int8(1), "upper", "leaf", 900.0, 400.0)
	f.Add(uint64(2), uint8(40), math.NaN(), int8(-1), "down", "", math.Inf(1), -1.0)
	f.Fuzz(func(t *testing.T, seed uint64, kind uint8, amount float64, edge int8, way, on string, at, long float64) {
		p := fault.Sound(seed%50, 0.5)
		m := fault.Made{Amount: amount, Edge: fit.Edge(edge), Way: fault.Way(way), On: trim.Part(on), At: at, Long: long}
		if int(kind) < len(kinds) {
			m.Kind = kinds[kind]
		}
		bad := m.Check()
		is := fault.Put(p, []fault.Made{m, m})
		if len(is.Door.Check()) > 0 {
			if len(bad) == 0 && amount < 3 {
				t.Fatalf("%+v is told to be right: %v", m, is.Door.Check())
			}
			return
		}
		var e fit.Fit
		fit.Evaluate(&e, &is.Door)
		w := fault.Wanted()
		fault.Symptoms(&e, &is.Door, &w)
		trim.All(is, fault.Cure(is, []fault.Made{m}))
	})
}
