package geom

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestHalfTanIsTheTurn(t *testing.T) {
	for _, deg := range []float64{-179.9, -90, -45, -1e-6, 0, 1e-6, 12.5, 90, 135, 179.9} {
		a := Angle(deg) * Degree
		turn := a.Turn()
		if got := HalfTan(turn.HalfTan()).Angle(); math.Abs(float64(got-a)) > 1e-12 {
			t.Errorf("%v° comes back as %v°", deg, got.Degrees())
		}
		if got, want := turn.HalfTan(), math.Tan(float64(a)/2); math.Abs(got-want) > 1e-9*(1+math.Abs(want)) {
			t.Errorf("half-tangent of %v° is %v, want %v", deg, got, want)
		}
	}
	if a := (Turn{Cos: -1}).HalfTan(); !math.IsInf(a, 1) {
		t.Errorf("half-tangent of 180° is %v", a)
	}
	if a := HalfTan(math.Inf(1)).Angle(); math.Abs(a.Degrees()-180) > 1e-9 {
		t.Errorf("an endless half-tangent is %v°", a.Degrees())
	}
}

// A positive turn about an axis pointing down carries what is at +x towards +z:
// it opens the leaf.
func TestAPositiveTurnOpens(t *testing.T) {
	a := Axis{Down: Vec{Y: -1}}
	p := a.Turn(Vec{X: 800, Y: 5}, (90 * Degree).Turn())
	if math.Abs(p.X) > 1e-9 || p.Y != 5 || math.Abs(p.Z-800) > 1e-9 {
		t.Errorf("the closing edge came to %v, want (0, 5, 800)", p)
	}
}

func TestNinetySmallTurnsAreOneLarge(t *testing.T) {
	a := Axis{At: Vec{3, 0, 6}, Down: Vec{0.01, -1, 0.004}.Unit()}
	p := Vec{790, 1200, -40}
	want := a.Turn(p, (90 * Degree).Turn())
	for range 90 {
		p = a.Turn(p, Degree.Turn())
	}
	if p.Sub(want).Len() > 1e-9 {
		t.Errorf("90 turns of 1° come to %v, one of 90° to %v", p, want)
	}
}

func TestTurningAMotionTurnsItsPoints(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 1))
	some := func() Vec { return Vec{rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()} }
	for range 100 {
		a := Axis{At: some(), Down: some().Unit()}
		u := some().Unit()
		w := u.Cross(some()).Unit()
		m := Motion{some(), u, w.Cross(u), w}
		by := Angle(rng.Float64() * 3).Turn()
		p := some().Scale(100)
		if d := a.Motion(m, by).Point(p).Sub(a.Turn(m.Point(p), by)); d.Len() > 1e-11 {
			t.Fatalf("differs by %v", d)
		}
		if math.Abs(a.Off(a.Turn(p, by))-a.Off(p)) > 1e-10 {
			t.Fatal("a turn changed the distance from its axis")
		}
	}
}

func TestInterval(t *testing.T) {
	if !Empty().IsEmpty() || Empty().Length() != 0 || Empty().With(4) != (Interval{4, 4}) {
		t.Error("the empty interval holds something")
	}
	if (Interval{}).IsEmpty() || !(Interval{}).Contains(0) {
		t.Error("the zero interval holds 0")
	}
	if i := (Interval{0, 5}).Intersect(Interval{7, 9}); !i.IsEmpty() {
		t.Errorf("what lies apart meets in %v", i)
	}
	if (Interval{2, 6}).Clamp(9) != 6 || (Interval{2, 6}).Clamp(0) != 2 || (Interval{2, 6}).Mid() != 4 {
		t.Error("clamp or middle is off")
	}
}

func TestZeroVecHasNoDirection(t *testing.T) {
	if (Vec{}).Unit() != (Vec{}) {
		t.Error("the unit of nothing is something")
	}
}
