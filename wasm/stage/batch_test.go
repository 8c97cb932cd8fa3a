package stage

import (
	"image/color"
	"math"
	"testing"

	"leafwright/game/draw"
)

// ink is how much alpha the batch lays down, in device pixels: the area of each
// triangle times the mean of its corners'.
func ink(b *batch) (sum float64) {
	for i := 0; i+2 < len(b.indices); i += 3 {
		p, q, r := b.corners[b.indices[i]], b.corners[b.indices[i+1]], b.corners[b.indices[i+2]]
		area := math.Abs(float64((q.x-p.x)*(r.y-p.y)-(q.y-p.y)*(r.x-p.x))) / 2
		sum += area * float64(p.c.a+q.c.a+r.c.a) / 3
	}
	return sum
}

var black = tintOf(color.NRGBA{A: 255})

func TestStrokeInk(t *testing.T) {
	circle := make([]draw.Pt, 90)
	for i := range circle {
		s, c := math.Sincos(2 * math.Pi * float64(i) / 90)
		circle[i] = draw.Pt{X: 200 + 100*c, Y: 200 + 100*s}
	}
	for _, c := range []struct {
		name   string
		pts    []draw.Pt
		closed bool
		width  float64
		scale  float64
		want   float64
	}{
		{"level line", []draw.Pt{{X: 0, Y: 0}, {X: 100, Y: 0}}, false, 3, 1, 300},
		{"slanting line", []draw.Pt{{X: 0, Y: 0}, {X: 60, Y: 80}}, false, 3, 1, 300},
		{"the same on a sharp screen", []draw.Pt{{X: 0, Y: 0}, {X: 60, Y: 80}}, false, 3, 2, 1200},
		{"thinner than a pixel is fainter", []draw.Pt{{X: 0, Y: 0}, {X: 100, Y: 0}}, false, .4, 1, 40},
		{"corner without a notch", []draw.Pt{{X: 0, Y: 0}, {X: 100, Y: 0}, {X: 100, Y: 100}}, false, 4, 1, 800},
		{"ring", circle, true, 2, 1, 2 * 2 * math.Pi * 100},
		{"doubled point", []draw.Pt{{X: 0, Y: 0}, {X: 0, Y: 0}, {X: 100, Y: 0}}, false, 3, 1, 300},
		{"closed line of two points", []draw.Pt{{X: 0, Y: 0}, {X: 100, Y: 0}}, true, 3, 1, 300},
		{"one point", []draw.Pt{{X: 0, Y: 0}}, false, 3, 1, 0},
		{"nothing", nil, true, 3, 1, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := batch{scale: c.scale}
			b.stroke(c.pts, c.closed, c.width, black)
			if got := ink(&b); math.Abs(got-c.want) > .005*c.want {
				t.Errorf("%.2f px of ink, want %.2f", got, c.want)
			}
		})
	}
}

// A line that turns back on itself must not shoot out a spike.
func TestSharpCorner(t *testing.T) {
	b := batch{scale: 1}
	b.stroke([]draw.Pt{{X: 0, Y: 0}, {X: 100, Y: 0}, {X: 0, Y: 1}}, false, 4, black)
	for _, c := range b.corners {
		if c.x < -10 || c.x > 110 || c.y < -10 || c.y > 11 {
			t.Errorf("corner at %v, %v", c.x, c.y)
		}
	}
}

func TestFillInk(t *testing.T) {
	square := []draw.Pt{{X: 10, Y: 10}, {X: 110, Y: 10}, {X: 110, Y: 60}, {X: 10, Y: 60}}
	back := []draw.Pt{square[3], square[2], square[1], square[0]}
	rebate := []draw.Pt{{X: 0, Y: 0}, {X: 100, Y: 0}, {X: 100, Y: 40}, {X: 60, Y: 40}, {X: 60, Y: 80}, {X: 0, Y: 80}}
	for _, c := range []struct {
		name string
		pts  []draw.Pt
		want float64
	}{
		{"rectangle", square, 5000},
		{"rectangle the other way round", back, 5000},
		{"closed by its first point", append(append([]draw.Pt{}, square...), square[0]), 5000},
		{"rebate", rebate, 6400},
		{"line without area", []draw.Pt{{X: 0, Y: 0}, {X: 9, Y: 0}}, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := batch{scale: 1}
			b.fill(c.pts, black)
			if got := ink(&b); math.Abs(got-c.want) > 2 { // the ramp's corners
				t.Errorf("%.2f px of ink, want %.2f", got, c.want)
			}
		})
	}
}

func TestFillEdgeIsSoft(t *testing.T) {
	b := batch{scale: 1}
	b.fill([]draw.Pt{{X: 10, Y: 10}, {X: 50, Y: 10}, {X: 50, Y: 50}, {X: 10, Y: 50}}, black)
	for _, c := range b.corners {
		inside := 10.5 <= c.x && c.x <= 49.5 && 10.5 <= c.y && c.y <= 49.5
		if inside != (c.c.a == 1) {
			t.Errorf("corner at %v, %v has alpha %v", c.x, c.y, c.c.a)
		}
	}
}

func TestLongDrawingIsPaintedInParts(t *testing.T) {
	b := batch{scale: 1}
	parts := 0
	b.flush = func() {
		parts++
		for _, i := range b.indices {
			if int(i) >= len(b.corners) {
				t.Fatalf("index %d of %d corners", i, len(b.corners))
			}
		}
		b.corners, b.indices = b.corners[:0], b.indices[:0]
	}
	for i := range 20000 {
		b.stroke([]draw.Pt{{X: 0, Y: float64(i)}, {X: 9, Y: float64(i)}}, false, 1, black)
	}
	if parts != 2 || len(b.corners) != 20000*8-2*(most/8*8) {
		t.Errorf("%d parts painted, %d corners left", parts, len(b.corners))
	}
	parts = 0
	b.stroke(make([]draw.Pt, 20000), false, 1, black) // all in one place: nothing to see
	huge := make([]draw.Pt, 20000)
	for i := range huge {
		huge[i] = draw.Pt{X: float64(i), Y: float64(i % 7)}
	}
	b.stroke(huge, false, 1, black) // cannot be reached by the indices at all
	if len(b.indices) != 0 && parts > 1 {
		t.Errorf("%d indices, %d parts", len(b.indices), parts)
	}
}

func BenchmarkStroke500(b *testing.B) {
	var all batch
	all.scale = 2
	all.flush = func() { all.corners, all.indices = all.corners[:0], all.indices[:0] }
	line := []draw.Pt{{X: 0, Y: 0}, {X: 40, Y: 8}, {X: 90, Y: 3}, {X: 140, Y: 30}}
	for b.Loop() {
		for range 500 {
			all.stroke(line, false, 1.1, black)
		}
		all.flush()
	}
}
