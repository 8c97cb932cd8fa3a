package stage

import (
	"image/color"
	"math"

	"leafwright/game/draw"
)

// corner is one vertex: a place on the canvas in device pixels, a place on the
// atlas, and a colour with its alpha multiplied in.
type corner struct {
	x, y, sx, sy float32
	c            tint
}

// tint is a colour with its alpha multiplied in, 0 to 1.
type tint struct{ r, g, b, a float32 }

func tintOf(c color.NRGBA) tint {
	a := float32(c.A) / 255
	return tint{float32(c.R) / 255 * a, float32(c.G) / 255 * a, float32(c.B) / 255 * a, a}
}

func (t tint) faded(k float32) tint { return tint{t.r * k, t.g * k, t.b * k, t.a * k} }

// batch gathers triangles until they are painted in one go. Edges are made soft
// by a ramp one device pixel wide, which costs no more than the pixels it covers.
type batch struct {
	corners []corner
	indices []uint16
	white   [2]float32 // the atlas's white pixel
	flush   func()     // paints and empties the batch
	scale   float64    // device pixels per CSS pixel

	path   []draw.Pt // scratch: the mark's points in device pixels
	across []draw.Pt // scratch: at each point, the way across, as long as one pixel asks
	cuts   []int     // scratch: triangles
}

// most is how many corners an index can reach.
const most = 1 << 16

// room paints what there is when n more corners would not fit.
func (b *batch) room(n int) (first int, fits bool) {
	if len(b.corners)+n > most {
		b.flush()
	}
	return len(b.corners), n <= most
}

func (b *batch) plain(p, across draw.Pt, k float64, c tint) {
	b.corners = append(b.corners, corner{
		float32(p.X + k*across.X), float32(p.Y + k*across.Y), b.white[0], b.white[1], c,
	})
}

func (b *batch) triangle(i, j, k int) {
	b.indices = append(b.indices, uint16(i), uint16(j), uint16(k))
}

// lay takes the mark's points into device pixels, leaving out doubled ones.
func (b *batch) lay(pts []draw.Pt, closed bool) {
	b.path = b.path[:0]
	for _, p := range pts {
		q := draw.Pt{X: p.X * b.scale, Y: p.Y * b.scale}
		if n := len(b.path); n == 0 || q != b.path[n-1] {
			b.path = append(b.path, q)
		}
	}
	if n := len(b.path); closed && n > 1 && b.path[0] == b.path[n-1] {
		b.path = b.path[:n-1]
	}
}

// sharpest limits how far a mitre runs out, in half widths.
const sharpest = 3

// mitres fills across: at each point the mitre between its two segments, so long
// that both edges run one pixel beside the line.
func (b *batch) mitres(closed bool) {
	n := len(b.path)
	b.across = b.across[:0]
	for i, p := range b.path {
		before, after := i-1, i+1
		if closed {
			before, after = (i+n-1)%n, (i+1)%n
		}
		var in, out draw.Pt
		if before >= 0 {
			in = square(b.path[before], p)
		}
		if after < n {
			out = square(p, b.path[after])
		}
		switch {
		case before < 0:
			in = out
		case after >= n:
			out = in
		}
		m := draw.Pt{X: in.X + out.X, Y: in.Y + out.Y}
		// |m|² = 2(1 + cos), and the mitre is m·2/|m|².
		k := m.X*m.X + m.Y*m.Y
		if k < 4/float64(sharpest*sharpest) {
			b.across = append(b.across, in)
			continue
		}
		b.across = append(b.across, draw.Pt{X: 2 * m.X / k, Y: 2 * m.Y / k})
	}
}

// square is the unit way across the segment from p to q.
func square(p, q draw.Pt) draw.Pt {
	dx, dy := q.X-p.X, q.Y-p.Y
	l := math.Sqrt(dx*dx + dy*dy)
	if l == 0 {
		return draw.Pt{}
	}
	return draw.Pt{X: -dy / l, Y: dx / l}
}

// stroke lays a polyline of the given width in CSS pixels.
func (b *batch) stroke(pts []draw.Pt, closed bool, width float64, c tint) {
	b.lay(pts, closed)
	n := len(b.path)
	if n < 2 {
		return
	}
	if n == 2 {
		closed = false
	}
	b.mitres(closed)
	half := width * b.scale / 2
	inner, outer := half-.5, half+.5
	if inner < 0 { // thinner than a pixel: the ramps alone, fainter
		c, inner = c.faded(float32(2*half/outer)), 0
	}
	first, fits := b.room(4 * n)
	if !fits {
		return
	}
	for i, p := range b.path {
		m := b.across[i]
		b.plain(p, m, -outer, tint{})
		b.plain(p, m, -inner, c)
		b.plain(p, m, inner, c)
		b.plain(p, m, outer, tint{})
	}
	for i := range n {
		j := i + 1
		if j == n {
			if !closed {
				break
			}
			j = 0
		}
		for k := range 3 {
			p, q := first+4*i+k, first+4*j+k
			b.triangle(p, q, p+1)
			b.triangle(q, q+1, p+1)
		}
	}
}

// fill lays a simple polygon.
func (b *batch) fill(pts []draw.Pt, c tint) {
	b.lay(pts, true)
	n := len(b.path)
	if n < 3 {
		return
	}
	b.cuts = draw.Triangulate(b.cuts[:0], b.path)
	b.mitres(true)
	twice := 0.0
	for i, p := range b.path {
		q := b.path[(i+1)%n]
		twice += p.X*q.Y - p.Y*q.X
	}
	outwards := .5
	if twice > 0 { // the way across points inwards on this winding
		outwards = -.5
	}
	first, fits := b.room(2 * n)
	if !fits {
		return
	}
	for i, p := range b.path {
		b.plain(p, b.across[i], -outwards, c)
		b.plain(p, b.across[i], outwards, tint{})
	}
	for i := 0; i+2 < len(b.cuts); i += 3 {
		b.triangle(first+2*b.cuts[i], first+2*b.cuts[i+1], first+2*b.cuts[i+2])
	}
	for i := range n {
		p, q := first+2*i, first+2*((i+1)%n)
		b.triangle(p, q, p+1)
		b.triangle(q, q+1, p+1)
	}
}

// glyph lays a rectangle of the atlas with its corner at whole device pixels.
func (b *batch) glyph(x, y float64, on spot, c tint) {
	first, _ := b.room(4)
	x0, y0 := float32(x)+float32(on.left), float32(y)+float32(on.top)
	x1, y1 := x0+float32(on.w), y0+float32(on.h)
	u0, v0 := float32(on.x), float32(on.y)
	u1, v1 := u0+float32(on.w), v0+float32(on.h)
	b.corners = append(b.corners,
		corner{x0, y0, u0, v0, c}, corner{x1, y0, u1, v0, c},
		corner{x0, y1, u0, v1, c}, corner{x1, y1, u1, v1, c})
	b.triangle(first, first+1, first+2)
	b.triangle(first+1, first+3, first+2)
}
