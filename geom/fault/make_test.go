package fault_test

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fault"
	"leafwright/geom/trim"
)

var kinds = func() (all []fault.Kind) {
	for i := range fault.All {
		all = append(all, fault.All[i].Kind)
	}
	return all
}()

// The same seed makes the same door, another seed another, and the sound one is left
// alone; a fault thrown alone is the fault thrown beside others.
func TestMakeIsItsSeeds(t *testing.T) {
	for n := range many(20) {
		seed := uint64(n)
		sound, before := fault.Sound(seed, 0.7), fault.Sound(seed, 0.7)
		a, made := fault.Make(sound, kinds, seed, 0.4)
		b, again := fault.Make(sound, kinds, seed, 0.4)
		if !reflect.DeepEqual(a, b) || !reflect.DeepEqual(made, again) {
			t.Errorf("seed %d gives two doors", n)
		}
		if !reflect.DeepEqual(sound, before) {
			t.Errorf("seed %d: the sound door was changed", n)
		}
		if _, other := fault.Make(sound, kinds, seed+1, 0.4); reflect.DeepEqual(made, other) {
			t.Errorf("seeds %d and %d make the same faults", n, n+1)
		}
		for i := range made {
			if _, alone := fault.Make(sound, []fault.Kind{made[i].Kind}, seed, 0.4); len(alone) != 1 || alone[0] != made[i] {
				t.Errorf("seed %d: alone %+v, beside others %+v", n, alone, made[i])
			}
		}
	}
}

// What is easy is seen at once, what is hard is not; and a harder fault is no greater.
func TestHardIsFaint(t *testing.T) {
	worst := func(k fault.Kind, seed uint64, hard float64) (d fault.Degree, amount float64) {
		p, made := fault.Make(fault.Sound(seed, 0.5), []fault.Kind{k}, seed, hard)
		if len(made) == 0 {
			return 0, 0
		}
		_, shows := look(t, &p)
		spec := fault.SpecOf(k)
		for _, s := range shows {
			for _, x := range spec.Shows {
				if s.Kind == x {
					d = max(d, s.Degree)
				}
			}
		}
		return d, made[0].Amount
	}
	for _, k := range kinds {
		plain, slight, n := 0, 0, many(20)
		var easy, hard float64
		for seed := range n {
			d, a := worst(k, uint64(seed), 0.2)
			if d >= fault.Plain {
				plain++
			}
			easy += a
			d, a = worst(k, uint64(seed), 1)
			if d == fault.Slight {
				slight++
			}
			hard += a
		}
		if plain < n*9/10 {
			t.Errorf("%q at 0.2 is plain in %d of %d", k, plain, n)
		}
		if slight < n/2 {
			t.Errorf("%q at 1 is slight in %d of %d", k, slight, n)
		}
		if hard >= easy {
			t.Errorf("%q: %.2f mm at 0.2, %.2f at 1", k, easy/float64(n), hard/float64(n))
		}
	}
}

// Kinds that are mixed all show, and the manuals' cures cure them together.
func TestMixedFaultsShowAndAreCured(t *testing.T) {
	for n := 1; n <= 3; n++ {
		for i := range many(*doors / 3) {
			seed, hard := uint64(1000+i), float64(i%4)/3
			sound := fault.Sound(seed, float64(i%5)/4)
			mix := fault.Mix(sound, nil, n, seed, hard)
			p, made := fault.Make(sound, mix, seed, hard)
			if len(mix) != n || len(made) != n {
				t.Errorf("seed %d: %d faults wanted, mixed %v, made %+v", seed, n, mix, made)
				continue
			}
			_, shows := look(t, &p)
			for _, m := range made {
				s := seen{shows: shows}
				if spec := fault.SpecOf(m.Kind); !s.anyOf(spec.Shows) {
					t.Errorf("seed %d: of %v, %v does not show: %+v", seed, mix, m, shows)
				}
			}
			cured, _ := trim.All(p, fault.Cure(p, made))
			if out, shows := wrong(t, &cured); len(out) > 0 || len(shows) > 0 {
				t.Errorf("seed %d: %+v cured has %+v and shows %+v", seed, made, out, shows)
			}
		}
	}
}

func TestMixTakesFromWhatIsGiven(t *testing.T) {
	sound := fault.Sound(3, 0.5)
	of := []fault.Kind{fault.LeafWide, fault.FloorRises, fault.LeafWide}
	for seed := range uint64(20) {
		got := fault.Mix(sound, of, 5, seed, 0)
		if len(got) != 2 || got[0] == got[1] {
			t.Errorf("seed %d: %v of %v", seed, got, of)
		}
	}
}

// Put does what is written down, however little of it is.
func TestPut(t *testing.T) {
	sound := fault.Sound(0, 0)
	for seed := uint64(1); len(sound.Door.Hinges) != 2; seed++ {
		sound = fault.Sound(seed, 0)
	}
	d := &sound.Door
	for _, row := range []struct {
		made fault.Made
		want func(is *door.Door) (got, want float64)
	}{
		{fault.Made{Kind: fault.LeafWide, Amount: 2.5}, func(is *door.Door) (float64, float64) {
			return is.Leaf.Closing.At(700), d.Leaf.Closing.At(700) + 2.5
		}},
		{fault.Made{Kind: fault.HingeSags, Amount: 3}, func(is *door.Door) (float64, float64) { return is.Hinges[0].Gap(), d.Hinges[0].Gap() + 3 }},
		{fault.Made{Kind: fault.HingeSags, Amount: 3}, func(is *door.Door) (float64, float64) { return is.Hinges[1].Gap(), d.Hinges[1].Gap() }},
		{fault.Made{Kind: fault.PinsLean, Amount: 4, Way: fault.Lower}, func(is *door.Door) (float64, float64) {
			return is.Hinges[1].Pin - is.Hinges[0].Pin, d.Hinges[1].Pin - d.Hinges[0].Pin + 4
		}},
		{fault.Made{Kind: fault.GainsDeep, Amount: 3, On: trim.OnBoth}, func(is *door.Door) (float64, float64) {
			return is.Hinges[1].JambGain, d.Hinges[1].JambGain + 1.5
		}},
		{fault.Made{Kind: fault.HeadFalls, Amount: 6, Way: fault.Lower}, func(is *door.Door) (float64, float64) {
			return is.Frame.Head.At(0), d.Frame.Head.At(0) - 6
		}},
		{fault.Made{Kind: fault.KeepOut, Amount: 2, Way: fault.In}, func(is *door.Door) (float64, float64) { return is.Latch.Proud, d.Latch.Proud - 2 }},
		{fault.Made{Kind: fault.FloorRises, Amount: 7}, func(is *door.Door) (float64, float64) {
			r := d.Leaf.Closing.At(0)
			return is.Floor.Polar(r, is.Opens), d.Floor.Polar(r, d.Opens) + 7
		}},
		{fault.Made{Kind: fault.FloorRises, Amount: 7}, func(is *door.Door) (float64, float64) { return is.Floor.At(700, 0), d.Floor.At(700, 0) }},
		{fault.Made{Kind: fault.LeafSwollen, Amount: 3}, func(is *door.Door) (float64, float64) {
			return is.Leaf.Closing.At(0) - d.Leaf.Closing.At(0), 3
		}},
		{fault.Made{Kind: "no such", Amount: 3}, func(is *door.Door) (float64, float64) { return is.Leaf.Width, d.Leaf.Width }},
	} {
		is := fault.Put(sound, []fault.Made{row.made})
		if got, want := row.want(&is.Door); math.Abs(got-want) > 1e-9 {
			t.Errorf("%+v: %v, want %v", row.made, got, want)
		}
	}
}

func TestCheckNamesEveryField(t *testing.T) {
	good := []fault.Made{
		{Kind: fault.LeafWide, Amount: 3},
		{Kind: fault.GainsDeep, Amount: 2, On: trim.OnJamb},
		{Kind: fault.JambSprung, Amount: 4, Edge: door.LatchSide},
		{Kind: fault.EdgeUneven, Amount: 2, At: 900, Long: 1500},
		{Kind: fault.KeepOut, Amount: 2, Way: fault.Out},
	}
	for _, m := range good {
		if bad := m.Check(); len(bad) > 0 {
			t.Errorf("%+v: %v", m, bad)
		}
	}
	for _, row := range []struct {
		made fault.Made
		want []string
	}{
		{fault.Made{Kind: "leaf green"}, []string{"fault"}},
		{fault.Made{Kind: fault.LeafWide}, []string{"amount"}},
		{fault.Made{Kind: fault.LeafWide, Amount: math.NaN(), Way: "up", Edge: door.FloorSide, On: "leaf"}, []string{"amount", "way", "edge", "on"}},
		{fault.Made{Kind: fault.GainsDeep, Amount: 2, On: "floor"}, []string{"on"}},
		{fault.Made{Kind: fault.KeepOut, Amount: 2, Way: fault.Upper, Edge: 9}, []string{"way", "edge"}},
		{fault.Made{Kind: fault.EdgeUneven, Amount: 2, At: 9000, Long: 3}, []string{"at", "long"}},
	} {
		var got []string
		for _, f := range row.made.Check() {
			got = append(got, f.Path)
			if f.Want == "" || strings.Contains(f.Error(), "%") {
				t.Errorf("%+v: %v says nothing", row.made, f)
			}
		}
		if !reflect.DeepEqual(got, row.want) {
			t.Errorf("%+v: faults of %v, want %v", row.made, got, row.want)
		}
	}
}

// A door that cannot be measured is given back, and no fault with it.
func TestNothingIsMadeOfNothing(t *testing.T) {
	for _, p := range []trim.Piece{{}, {Door: door.Door{Leaf: door.Rectangle(700, 2000, 40), Opens: geom.Degree}}} {
		got, made := fault.Make(p, kinds, 1, 0)
		if len(made) > 0 || !reflect.DeepEqual(got, p) || !reflect.DeepEqual(fault.Put(p, []fault.Made{{Kind: fault.LeafWide, Amount: 3}}), p) || fault.Cure(p, nil) != nil {
			t.Errorf("made %+v", made)
		}
	}
}
