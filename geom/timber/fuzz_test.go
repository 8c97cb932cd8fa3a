package timber_test

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"runtime"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

// everything calls every numeric entry point with the numbers, and gives what they give.
func everything(x [8]float64, k int) []any {
	s := &timber.Timbers[(k%len(timber.Timbers)+len(timber.Timbers))%len(timber.Timbers)]
	pick := k & 3
	d := piece().Door
	l := door.Rectangle(x[0], x[1], x[2])
	a := door.Ordinary(door.Framed, 762, 1981)
	a.HangingStile, a.ClosingStile, a.Joints.Haunch, a.Joints.Wedge = x[3], x[4], x[5], x[6]
	a.Joints.Kind = []door.JointKind{door.Through, door.Stub, door.Dowelled, ""}[pick]
	a.Make = []door.Make{door.Framed, door.Boarded, door.Flush, door.Framed}[(k>>2)&3]
	a.Strips = []door.Strip{{Edge: door.Edge(pick), Joint: geom.Level(x[0]), Stock: x[7]}}
	if len(a.Rails) > 0 {
		a.Rails[0].To = x[7]
	}
	v := timber.Void{Across: geom.Interval{Lo: x[0], Hi: x[1]}, Up: geom.Interval{Lo: x[2], Hi: x[3]}, Depth: x[4], Part: x[5]}
	p := trim.Piece{Door: d, Anatomy: a}
	p.Door.Leaf = l
	sound := piece()
	year := timber.Preset{Winter: timber.Air{Celsius: x[0], Humidity: x[1]}, Summer: timber.Air{Celsius: x[2], Humidity: x[3]}}
	y := year.Year(k&1 == 0)
	m := timber.Metered(y.Moisture(), []timber.Meter{{Month: k % 15, Moisture: x[4]}, {Month: pick, Moisture: x[5]}})
	season := timber.SeasonOf(x[6], s.Coefficient(timber.Sawn(pick)), x[7], m)
	n, each := timber.Batches(x[0], x[1], x[2])
	hanging, closing := timber.Under(&d)
	face := timber.Face{OffMM: x[0], On: []timber.Layers{{Paint: timber.Enamel, Coats: k, Film: x[1]}, {Paint: timber.Paint(fmt.Sprint(k)), Coats: pick}}}
	move := trim.Move{Kind: trim.Splice, Edge: door.Edge(pick), First: x[0], Last: x[1], Stock: x[2], SetIn: x[3], Face: trim.Middle}
	ordinary := trim.Move{Kind: trim.Splice, Edge: door.Edge(pick), First: 8 + math.Mod(math.Abs(x[0]), 60), Last: 20, Stock: 38, Face: trim.Stop}
	if !(ordinary.First < 100) {
		ordinary.First = 8
	}
	dowels, _ := timber.DowelsFor(sound, move, x[4])
	good, _ := timber.DowelsFor(sound, ordinary, x[4])
	spoilt, _ := timber.DowelsFor(p, ordinary, x[4])
	_, steps := trim.All(sound, []trim.Move{move, ordinary, {Kind: trim.Plane, Edge: door.LatchSide, First: x[6], Last: x[7]}})
	bill := timber.BillOf(sound, steps, timber.Means{Round: x[0], Screw: timber.Screws{Number: k, Diameter: x[1], Into: x[2]}, Voids: []timber.Void{v}, PotLife: x[3]})
	lock := door.Lock{Kind: []door.LockKind{door.Mortice, door.Rim, door.NoLock, door.Mortice}[pick], Height: x[0], Backset: x[1], Case: x[2], Depth: x[3]}
	locked := sound.Anatomy
	locked.Lock = lock
	season2 := timber.Fitting([door.Edges]float64{x[0], x[1], x[2], x[3]}, &season, [door.Edges]timber.Allowance{})
	facts := timber.Facts{Built: k, GlassFrom: x[0], Mass: x[1], ClearWas: x[2], ClearIs: x[3], Step: x[4], Lost: x[5], Disturbed: x[6], Cuts: true}
	return []any{
		timber.Equilibrium(x[0], x[1]), timber.Humidity(x[0], x[1]),
		timber.Coefficient(x[0], x[1]), timber.Change(x[0], x[1], x[2], x[3]), timber.ChangeGreen(x[0], x[1], x[2], x[3]),
		timber.MovingOf(&l, &a), season, season.AtFitting(x[0]), season.Through(x[1]),
		timber.Film(x[0], x[1]), timber.Wet(x[0]), timber.Rate(x[0], x[1]), timber.AllowanceOf(face, face), timber.AllowanceOf(face, face).Loses(),
		timber.MassOf(&l, &a, timber.Stuff{Density: x[0], Panel: x[1], Fitted: x[2]}), timber.Pull(x[0], x[1], x[2]), timber.WidthAllowance(x[0], x[1]),
		timber.Shank(k), timber.Withdrawal(x[0], x[1], x[2]),
		timber.HoldOf(x[0], timber.Screws{Number: k, Diameter: x[1], Into: x[2], Ground: timber.Worn}, x[3], x[4]),
		timber.Hinges(x[0], x[1], x[2]), timber.ButtFor(x[0], x[1]), timber.ButtWidth(x[0], x[1]), timber.Gains(x[0], x[1]),
		timber.Places(&l, &a, timber.AU, k, x[0], x[1]),
		timber.ReseatOf(timber.Seat{At: x[0], Height: x[1], Across: x[2], Depth: x[3]}, timber.Seat{At: x[4], Height: x[5], Across: x[6], Depth: x[7]}),
		hanging, closing, timber.DowelDiameter(x[0]), dowels, good, spoilt,
		timber.FillerFor(v, x[6], k&1 == 0), n, each, timber.RepairOf(&sound, v), timber.RepairOf(&p, v), bill,
		timber.LockFitOf(&sound.Door, &locked, x[4], x[5], x[6]), timber.KeepMoveOf(&sound.Door, &d, x[0], x[1], x[2], x[3]),
		timber.OldHoles(&l, lock, sound.Anatomy.Lock, x[4]), season2,
		timber.Disturbs(x[0], x[1]), len(timber.Cautions(&facts)),
	}
}

// finite tells whether every number in v is one.
func finite(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Float64:
		return !math.IsNaN(v.Float()) && !math.IsInf(v.Float(), 0)
	case reflect.Pointer, reflect.Interface:
		return v.IsNil() || finite(v.Elem())
	case reflect.Struct:
		for i := range v.NumField() {
			if !finite(v.Field(i)) {
				return false
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if !finite(v.Index(i)) {
				return false
			}
		}
	}
	return true
}

// Whatever the numbers, nothing panics and every answer is a number.
func FuzzNumbers(f *testing.F) {
	f.Add(762.0, 1981.0, 44.0, 110.0, 110.0, 38.0, 10.0, 200.0, 3)
	f.Add(math.NaN(), math.Inf(1), math.Inf(-1), -1.0, 0.0, 1e308, -1e308, 5e-324, -7)
	f.Add(math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1), math.MaxInt)
	f.Add(math.NaN(), math.NaN(), math.NaN(), math.NaN(), math.NaN(), math.NaN(), math.NaN(), math.NaN(), math.MinInt)
	c := rand.New(rand.NewPCG(20261126, 6))
	for range 200 {
		var x [8]float64
		for i := range x {
			x[i] = [...]float64{c.Float64() * 100, c.Float64() * 3000, c.NormFloat64() * 1e9, 0, math.NaN(), math.Inf(1), -c.Float64() * 50}[c.IntN(7)]
		}
		f.Add(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], c.IntN(100)-20)
	}
	f.Fuzz(func(t *testing.T, a, b, c, d, e, f, g, h float64, k int) {
		for i, got := range everything([8]float64{a, b, c, d, e, f, g, h}, k) {
			if !finite(reflect.ValueOf(got)) {
				t.Errorf("answer %d to %v, %d is %+v", i, [8]float64{a, b, c, d, e, f, g, h}, k, got)
			}
		}
	})
}

// pinnedBits is the digest of the answers to 100 lots of sensible numbers. It was made
// natively on amd64 and must come out in WebAssembly too.
const pinnedBits = "f202af8a74f97b9ff28f1b6d16d22561"

func TestSameBitsEverywhere(t *testing.T) {
	switch runtime.GOARCH {
	case "amd64", "wasm", "386":
	default:
		t.Skipf("%s fuses multiply and add", runtime.GOARCH)
	}
	sum := sha256.New()
	c := rand.New(rand.NewPCG(20261126, 7))
	for n := range 100 {
		var x [8]float64
		for i := range x {
			x[i] = c.Float64() * [...]float64{30, 100, 2000, 1}[c.IntN(4)]
		}
		for _, got := range everything(x, n) {
			if _, ok := got.(timber.Bill); ok {
				continue // its minutes are the moves', and change with them
			}
			if v := reflect.ValueOf(got); v.Kind() == reflect.Pointer && !v.IsNil() {
				got = v.Elem().Interface()
			}
			fmt.Fprintf(sum, "%+v\n", got)
		}
	}
	if got := hex.EncodeToString(sum.Sum(nil)[:16]); got != pinnedBits {
		t.Errorf("digest on %s is %s, pinned is %s", runtime.GOARCH, got, pinnedBits)
	}
}
