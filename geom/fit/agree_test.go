package fit_test

import (
	"flag"
	"fmt"
	"math"
	"runtime"
	"slices"
	"sync"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

var (
	doors = flag.Int("doors", 200, "how many random doors to compare with the slow model")
	first = flag.Int("first", 0, "index of the first random door")
)

// agreeWithin is how near the fit and the slow model must come, in mm; for
// angles, over the leaf's width.
const agreeWithin = 0.01

// difference is one quantity of one door as both models have it.
type difference struct {
	door      int
	what      string // which of the quantities of its kind
	got, want float64
	off       float64 // mm
}

// comparison gathers the differences of a door by kind of quantity.
type comparison struct {
	door  int
	kinds map[string][]difference
}

// see notes a pair of values, in mm; scale turns another unit into mm.
func (c *comparison) see(kind, what string, got, want, scale float64) {
	off := math.Abs(got-want) * scale
	if math.IsNaN(off) {
		off = math.Inf(1)
		if math.IsNaN(got) && math.IsNaN(want) {
			off = 0
		}
	}
	c.kinds[kind] = append(c.kinds[kind], difference{c.door, what, got, want, off})
}

var edgeNames = [fit.Edges]string{"hinge side", "latch side", "head", "floor"}

// TestAgree holds the fit against the slow model on random doors, each kind of quantity
// a subtest. A longer run: go test ./geom/fit -run TestAgree -v -doors 3000
func TestAgree(t *testing.T) {
	if *doors < 1 {
		t.Fatalf("-doors %d: nothing to compare", *doors)
	}
	kinds := map[string][]difference{}
	var mu sync.Mutex
	var wg sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		wg.Go(func() {
			var f fit.Fit
			for n := range next {
				source := randomSource(n)
				d := randomDoor(source)
				if n%20 == 19 {
					chance{source}.throughTheJamb(&d)
				}
				if n%3 == 1 {
					chance{source}.sections(&d)
				}
				c := comparison{n, map[string][]difference{}}
				fit.Evaluate(&f, &d)
				c.compare(&f, &d)
				mu.Lock()
				for k, v := range c.kinds {
					kinds[k] = append(kinds[k], v...)
				}
				mu.Unlock()
			}
		})
	}
	for n := range *doors {
		next <- *first + n
	}
	close(next)
	wg.Wait()
	names := make([]string, 0, len(kinds))
	for k := range kinds {
		names = append(names, k)
	}
	slices.Sort(names)
	for _, k := range names {
		t.Run(k, func(t *testing.T) { judge(t, kinds[k]) })
	}
}

// judge fails on the worst differences and logs how they are spread.
func judge(t *testing.T, all []difference) {
	slices.SortStableFunc(all, func(a, b difference) int {
		switch {
		case a.off > b.off:
			return -1
		case a.off < b.off:
			return 1
		}
		return a.door - b.door
	})
	n := len(all)
	t.Logf("%d pairs: half within %.2g mm, 99 of 100 within %.2g, all within %.2g", n, all[n/2].off, all[n/100].off, all[0].off)
	bad := 0
	seen := map[int]bool{}
	for _, d := range all {
		if d.off <= agreeWithin {
			break
		}
		bad++
		if len(seen) < 8 && !seen[d.door] {
			seen[d.door] = true
			t.Errorf("%s: fit %.6f, slow model %.6f, %.4f mm apart; door %d of seed %d: -doors 1 -first %[5]d",
				d.what, d.got, d.want, d.off, d.door, randomSeed)
		}
	}
	if bad > 0 {
		t.Errorf("%d of %d pairs are more than %v mm apart", bad, n, agreeWithin)
	}
}

// compare notes every quantity of one door.
func (c *comparison) compare(f *fit.Fit, d *door.Door) {
	for _, f := range d.Check() {
		c.see("random door", f.Error(), 1, 0, 1) // the fit promises nothing for it
	}
	s := hang(d)
	w := d.Leaf.Width
	for _, corner := range []geom.Vec{{}, {X: w}, {Y: 2000}, {X: w, Y: 2000, Z: 40}} {
		got, want := f.Pose.Point(corner), s.pose.point(corner)
		c.see("pose", fmt.Sprintf("distance of the point %v", corner), got.Sub(want).Len(), 0, 1)
		turned := s.turned(1).point(corner)
		c.see("pose", fmt.Sprintf("distance of the point %v, turned", corner), f.Place(corner, 1).Sub(turned).Len(), 0, 1)
	}
	c.see("strain", "strain", f.Strain, s.strain, 1)
	c.see("closing", "latch angle", float64(f.LatchAngle), s.latch, w)
	c.see("closing", "stop angle", float64(f.StopAngle), s.stop, w)
	c.see("closing", "closed angle", float64(f.Closed), s.closed, w)
	c.see("closing", "latch miss", f.LatchMiss, s.miss, 1)
	if math.Abs(s.latch-s.stop)*w > agreeWithin {
		c.see("closing", "stop-bound (1 = yes)", truth(f.StopBound), truth(s.bound), 1)
	}
	for e := range fit.Edges {
		if e == fit.FloorSide && s.onJump() {
			continue
		}
		c.gap("closed gap", edgeNames[e], f.Gaps[e], s.closedGap(e))
		c.gap("shown gap", edgeNames[e], f.Shown[e], s.shownGap(e))
		if e == fit.FloorSide && s.overPole() {
			continue
		}
		c.sweep(edgeNames[e], e, f.Swing[e], s)
	}
	for e := range f.Stops {
		c.gap("stop gap", edgeNames[e], f.Stops[e], s.stopsGap(fit.Edge(e)))
	}
	open := s.clearOpening()
	c.see("clear opening", "to the jamb", f.ClearWidth, open, 1)
	c.see("clear opening", "to the stop", f.ClearToStop, open-d.Frame.StopWidth, 1)
}

// onJump tells that a bottom arris of the closed leaf lies, to rounding, on the line
// x < 0, z = 0 behind the hinge jamb, where the floor's angle jumps from 180° to −180°:
// on either side of it the floor may stand otherwise, and neither is right.
func (s *slow) onJump() bool {
	m := s.turned(s.closed)
	for _, a := range s.arrises(fit.FloorSide) {
		for _, u := range places(a.lo, min(a.hi, 50), 0.5) {
			if q := m.point(s.on(a, u)); q.X < 0 && math.Abs(q.Z) < 1e-6 {
				return true
			}
		}
	}
	return false
}

// overPole tells that a bottom arris swings over the world's origin, to a millimetre, where
// the floor has another height at every angle: a place of which the job is warned.
func (s *slow) overPole() bool {
	jumps := false
	for _, row := range s.d.Floor.Heights {
		jumps = jumps || row[0] != s.d.Floor.Heights[0][0]
	}
	if !jumps {
		return false
	}
	for phi := s.closed; phi <= float64(s.d.Opens); phi += degree {
		m := s.turned(phi)
		for _, a := range s.arrises(fit.FloorSide) {
			for _, u := range places(a.lo, min(a.hi, a.lo+30), 0.5) {
				if q := m.point(s.on(a, u)); q.X*q.X+q.Z*q.Z < 1 {
					return true
				}
			}
		}
	}
	return false
}

func truth(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// gap notes a gap's range, its extremes, its value at the places it says they
// are, and its course.
func (c *comparison) gap(kind, edge string, got fit.Gap, want slowGap) {
	kind += ", " + edge
	c.see(kind, "lower end", got.Range().Lo, want.lo, 1)
	c.see(kind, "upper end", got.Range().Hi, want.hi, 1)
	c.see(kind, "least", got.Least, want.least, 1)
	c.see(kind, "most", got.Most, want.most, 1)
	c.see(kind, "at the place of the least", got.Least, want.at(got.LeastAt), 1)
	c.see(kind, "at the place of the most", got.Most, want.at(got.MostAt), 1)
	const parts = 16
	for i := range parts + 1 {
		place := want.lo + (want.hi-want.lo)*float64(i)/parts
		c.see(kind, fmt.Sprintf("at %.3f", place), got.At(place), want.at(place), 1)
	}
}

// sweep notes the least clearance through the swing, that the place it names is
// that point of the leaf, that the point is on an arris, and that it is as near as
// said.
func (c *comparison) sweep(edge string, e fit.Edge, got fit.Sweep, s *slow) {
	kind := "swing, " + edge
	c.see(kind, "least", got.Least, s.swing(e).least, 1)
	q := s.turned(float64(got.Angle)).point(got.Leaf)
	c.see(kind, "distance of the place from its point of the leaf", got.At.Sub(q).Len(), 0, 1)
	there := s.clear(e, q)
	if e == fit.FloorSide && q.X < 0 && math.Abs(q.Z) < 1e-6 { // on the line where the floor's angle jumps: either side
		for _, z := range []float64{-1e-6, 1e-6} {
			there = min(there, s.clear(e, geom.Vec{X: q.X, Y: q.Y, Z: z}))
		}
	}
	c.see(kind, "clearance at the place named", got.Least, there, 1)
	c.see(kind, "distance of the point from the nearer arris", s.offArris(e, got.Leaf), 0, 1)
	outside := max(s.closed-float64(got.Angle), float64(got.Angle)-max(s.closed, float64(s.d.Opens)), 0)
	c.see(kind, "angle outside the swing", outside, 0, s.d.Leaf.Width)
	if e != fit.FloorSide && float64(got.Angle)-s.closed > 1e-6 {
		front, stop := s.depthAt(e, q)
		c.see(kind, "z outside the frame's depth", max(q.Z-front, stop-q.Z, 0), 0, 1)
	}
}

// offArris is how far a point of the leaf lies from the nearer arris of an edge.
func (s *slow) offArris(e fit.Edge, p geom.Vec) float64 {
	off := math.Inf(1)
	for _, a := range s.arrises(e) {
		at := p.X
		if e.Upright() {
			at = p.Y
		}
		off = min(off, p.Sub(s.on(a, min(max(at, a.lo), a.hi))).Len())
	}
	return off
}
