package draw

import (
	"math"
	"testing"
)

func area(pts []Pt) float64 {
	a := 0.0
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		a += p.X*q.Y - q.X*p.Y
	}
	return math.Abs(a) / 2
}

func strokesLength(l *List, from int) float64 {
	sum := 0.0
	for _, m := range l.Marks[from:] {
		for i := m.From + 1; i < m.To; i++ {
			sum += distance(l.Points[i-1], l.Points[i])
		}
	}
	return sum
}

// A hatch covers a polygon evenly: length of strokes × distance apart is its area.
func TestHatchCoversThePolygon(t *testing.T) {
	tests := []struct {
		name string
		poly []Pt
	}{
		{"rectangle", []Pt{{10, 10}, {310, 10}, {310, 210}, {10, 210}}},
		{"round three sides of an opening", []Pt{{0, 300}, {0, 0}, {200, 0}, {200, 300}, {160, 300}, {160, 40}, {40, 40}, {40, 300}}},
		{"long sliver", []Pt{{0, 0}, {400, 0}, {400, 14}}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			for _, mirror := range []bool{false, true} {
				var l List
				p := pen{l: &l, mirror: mirror, axis: 200}
				h := hatching{1.5, -math.Pi / 4, WallHatch, thin}
				p.hatch(tt.poly, h)
				got, want := strokesLength(&l, 0)*h.apart, area(tt.poly)
				if math.Abs(got-want) > 0.03*want {
					t.Errorf("strokes cover %.0f px², the polygon has %.0f", got, want)
				}
			}
		})
	}
}

func TestHatchOpensUpOnLargeSheets(t *testing.T) {
	var l List
	p := pen{l: &l}
	p.hatch([]Pt{{0, 0}, {5000, 0}, {5000, 4000}, {0, 4000}}, wallHatch)
	if n := len(l.Marks); n < mostStrokes/2-1 || n > mostStrokes+1 {
		t.Errorf("%d strokes", n)
	}
}

func TestDashesKeepTheirShare(t *testing.T) {
	var l List
	p := pen{l: &l}
	p.xy(0, 0)
	p.xy(300, 0)
	p.xy(300, 400)
	p.dash(0, Datum, thin, 6, 4)
	if got := strokesLength(&l, 0); math.Abs(got-420) > 6 {
		t.Errorf("dashes of 6 in 10 cover %.1f of 700 px", got)
	}
	for _, q := range l.Points {
		if q.Y != 0 && q.X != 300 {
			t.Errorf("%v lies off the line", q)
		}
	}
}

func TestTheLensKeepsMarksInside(t *testing.T) {
	var l List
	p := pen{l: &l, lens: lens{Pt{100, 100}, 50}}
	p.box(0, 0, 200, 110)
	p.face(0, Wall, Line, medium, wallHatch)
	p.rule(Pt{-10, 95}, Pt{500, 130}, Fine, thin)
	p.rule(Pt{0, 0}, Pt{10, 300}, Fine, thin) // passes it by
	from := p.start()
	p.box(300, 300, 400, 400)
	p.face(from, Wall, Line, medium, wallHatch) // lies outside it
	for _, m := range l.Marks {
		for _, q := range l.Points[m.From:m.To] {
			if d := distance(q, Pt{100, 100}); d > 50.2 {
				t.Errorf("%v lies %.2f from the middle, mark %+v", q, d, m)
			}
		}
	}
	fill := l.Marks[0]
	// the part of the circle above a chord 10 below its middle
	c := math.Acos(10.0 / 50)
	want := math.Pi*2500 - 2500*(c-math.Sin(c)*math.Cos(c))
	if got := area(l.Points[fill.From:fill.To]); fill.Kind != Fill || math.Abs(got-want) > 0.01*want {
		t.Errorf("first mark %+v covers %.0f, want %.0f", fill, got, want)
	}
}

func TestThePenLeavesOutWhatIsNoNumber(t *testing.T) {
	var l List
	p := pen{l: &l}
	for _, bad := range []float64{math.NaN(), math.Inf(1)} {
		from := p.start()
		p.xy(0, 0)
		p.xy(bad, 1)
		p.xy(5, 5)
		p.face(from, Wall, Line, medium, wallHatch)
		p.rule(Pt{0, bad}, Pt{1, 1}, Line, thin)
		from = p.start()
		p.xy(0, bad)
		p.xy(1, 1)
		p.dash(from, Line, thin, 3, 3)
		p.text(Pt{bad, 0}, Start, TextInk, 12, false, "lost")
	}
	if len(l.Marks) != 0 || len(l.Points) != 0 {
		t.Errorf("%d marks, %d points", len(l.Marks), len(l.Points))
	}
}
