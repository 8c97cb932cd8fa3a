package draw

import (
	"math"
	"math/rand/v2"
	"testing"
)

func polygonArea(pts []Pt) float64 {
	a := 0.0
	for i := range pts {
		a += cross(Pt{}, pts[i], pts[(i+1)%len(pts)]) / 2
	}
	return math.Abs(a)
}

// covered gives the sum of the triangles' areas and how many overlap the other way round.
func covered(pts []Pt, tri []int) (sum float64, mixed bool) {
	pos, neg := 0.0, 0.0
	for i := 0; i+2 < len(tri); i += 3 {
		a := cross(pts[tri[i]], pts[tri[i+1]], pts[tri[i+2]]) / 2
		if a > 0 {
			pos += a
		} else {
			neg -= a
		}
	}
	return pos + neg, pos > 1e-9 && neg > 1e-9
}

func TestTriangulateShapes(t *testing.T) {
	for _, c := range []struct {
		name string
		pts  []Pt
		area float64
	}{
		{"triangle", []Pt{{0, 0}, {4, 0}, {0, 3}}, 6},
		{"square", []Pt{{0, 0}, {1, 0}, {1, 1}, {0, 1}}, 1},
		{"square the other way round", []Pt{{0, 1}, {1, 1}, {1, 0}, {0, 0}}, 1},
		{"rebate", []Pt{{0, 0}, {10, 0}, {10, 4}, {6, 4}, {6, 8}, {0, 8}}, 64},
		{"wall round an opening, slit at the foot", []Pt{{0, 0}, {10, 0}, {10, 9}, {8, 9}, {8, 2}, {2, 2}, {2, 9}, {0, 9}}, 48},
		{"comb", []Pt{{0, 0}, {9, 0}, {9, 5}, {8, 5}, {8, 1}, {5, 1}, {5, 5}, {4, 5}, {4, 1}, {1, 1}, {1, 5}, {0, 5}}, 21},
		{"corner on a straight edge", []Pt{{0, 0}, {2, 0}, {4, 0}, {4, 4}, {0, 4}}, 16},
		{"doubled corner", []Pt{{0, 0}, {4, 0}, {4, 0}, {4, 4}, {0, 4}}, 16},
		{"spike without width", []Pt{{0, 0}, {4, 0}, {4, 4}, {2, 4}, {2, 7}, {2, 4}, {0, 4}}, 16},
		{"bow tie touching at a corner", []Pt{{0, 0}, {2, 2}, {4, 0}, {4, 4}, {2, 2}, {0, 4}}, 8},
		{"nothing", nil, 0},
		{"two points", []Pt{{0, 0}, {1, 1}}, 0},
		{"all on one line", []Pt{{0, 0}, {1, 1}, {2, 2}, {5, 5}}, 0},
		{"not a number", []Pt{{0, 0}, {1, 0}, {math.NaN(), 1}}, 0},
		{"infinite", []Pt{{0, 0}, {1, 0}, {math.Inf(1), 1}}, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			tri := Triangulate(nil, c.pts)
			got, mixed := covered(c.pts, tri)
			if math.Abs(got-c.area) > 1e-9 || mixed {
				t.Errorf("triangles %v cover %v (both windings: %v), want %v", tri, got, mixed, c.area)
			}
		})
	}
}

// A star round a middle point is simple, whatever its radii are: its triangles
// must cover it exactly once, and turning it or walking it backwards changes nothing.
func TestTriangulateStars(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 11))
	for range 2000 {
		n := 3 + rnd.IntN(40)
		pts := make([]Pt, n)
		for i := range pts {
			s, c := math.Sincos(2 * math.Pi * (float64(i) + 0.8*rnd.Float64()) / float64(n))
			r := 5 + 95*rnd.Float64()
			pts[i] = Pt{200 + r*c, 300 + r*s}
		}
		if n == 3 { // the middle may lie outside three points; the area below still holds
			continue
		}
		want := polygonArea(pts)
		if rnd.IntN(2) == 0 {
			for i := range n / 2 {
				pts[i], pts[n-1-i] = pts[n-1-i], pts[i]
			}
		}
		tri := Triangulate(nil, pts)
		got, mixed := covered(pts, tri)
		if len(tri) != 3*(n-2) || math.Abs(got-want) > 1e-6*want || mixed {
			t.Fatalf("%d triangles cover %v of %v (both windings: %v) of %v", len(tri)/3, got, want, mixed, pts)
		}
	}
}

func TestTriangulateKeepsWhatIsThere(t *testing.T) {
	dst := Triangulate([]int{9, 9, 9}, []Pt{{0, 0}, {1, 0}, {0, 1}})
	if len(dst) != 6 || dst[0] != 9 {
		t.Errorf("got %v", dst)
	}
}

func FuzzTriangulate(f *testing.F) {
	f.Add([]byte{0, 0, 4, 0, 4, 4, 0, 4})
	f.Add([]byte{0, 0, 4, 4, 4, 0, 0, 4, 2, 2, 1, 3})
	f.Fuzz(func(t *testing.T, b []byte) {
		var pts []Pt
		for ; len(b) > 1 && len(pts) < 60; b = b[2:] {
			pts = append(pts, Pt{float64(int8(b[0])), float64(int8(b[1]))})
		}
		tri := Triangulate(nil, pts)
		if len(tri)%3 != 0 || len(tri) > 3*max(0, len(pts)-2) {
			t.Fatalf("%d indices for %d points", len(tri), len(pts))
		}
		for _, i := range tri {
			if i < 0 || i >= len(pts) {
				t.Fatalf("index %d of %d points", i, len(pts))
			}
		}
	})
}
