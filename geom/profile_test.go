package geom

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestProfileAt(t *testing.T) {
	bent := Through(0, 1, 10, 3, 30, -1)
	for _, c := range []struct {
		name string
		p    Profile
		s, v float64
	}{
		{"no stations", nil, 5, 0},
		{"one station is a constant", Level(7), -300, 7},
		{"at the first station", bent, 0, 1},
		{"at a bend", bent, 10, 3},
		{"at the last station", bent, 30, -1},
		{"between", bent, 5, 2},
		{"before the first it runs on straight", bent, -5, 0},
		{"beyond the last it runs on straight", bent, 40, -3},
	} {
		t.Run(c.name, func(t *testing.T) {
			if v := c.p.At(c.s); math.Abs(v-c.v) > 1e-12 {
				t.Errorf("value %v, want %v", v, c.v)
			}
		})
	}
}

func TestPieceFollowsAt(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	for range 300 {
		p := anyProfile(rng)
		for range 20 {
			s := -100 + 2300*rng.Float64()
			if got, want := p.Piece(p.Find(s)).At(s), p.At(s); math.Abs(got-want) > 1e-9 {
				t.Fatalf("%v at %v: piece gives %v, profile %v", p, s, got, want)
			}
		}
	}
}

func anyProfile(rng *rand.Rand) Profile {
	var p Profile
	at := -50 * rng.Float64()
	for range rng.IntN(6) {
		at += 20 + 500*rng.Float64()
		p = append(p, Station{at, 20*rng.Float64() - 10})
	}
	return p
}

func TestPlusIsTheSumEverywhere(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 1))
	for range 300 {
		p, q := anyProfile(rng), anyProfile(rng)
		sum := p.Plus(q)
		for range 20 {
			s := -100 + 2300*rng.Float64()
			if got, want := sum.At(s), p.At(s)+q.At(s); math.Abs(got-want) > 1e-8 {
				t.Fatalf("%v + %v at %v: %v, want %v", p, q, s, got, want)
			}
		}
	}
}

func TestBow(t *testing.T) {
	over := Interval{0, 2000}
	for _, c := range []struct {
		name    string
		p       Profile
		bow, at float64
	}{
		{"straight", Through(0, 3, 2000, 9), 0, 1000},
		{"round", Through(0, 0, 900, 4, 2000, 0), 4, 900},
		{"hollow and leaning", Through(0, 0, 1000, 2, 2000, 10), -3, 1000},
		{"a bend outside the straightedge", Through(-500, 50, 0, 0, 2000, 0), 0, 1000},
	} {
		t.Run(c.name, func(t *testing.T) {
			bow, at := c.p.Bow(over)
			if math.Abs(bow-c.bow) > 1e-12 || at != c.at {
				t.Errorf("bow %v at %v, want %v at %v", bow, at, c.bow, c.at)
			}
		})
	}
}

func TestThroughWantsPairs(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("an odd count went through")
		}
	}()
	//lint:ignore SA5012 the slip is what is tested
	Through(1, 2, 3)
}
