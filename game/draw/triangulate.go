package draw

// Triangulate cuts a simple polygon, of either winding, into triangles and
// appends them to dst as triples of indices into pts. Corners that lie on a
// straight line or on one another give triangles without area or none. A polygon
// that crosses itself gives some triangles that cover it roughly; fewer than three
// points, or a point that is not finite, give none.
func Triangulate(dst []int, pts []Pt) []int {
	n := len(pts)
	twice := 0.0
	for i := range pts {
		twice += cross(Pt{}, pts[i], pts[(i+1)%n])
	}
	if n < 3 || twice-twice != 0 {
		return dst
	}
	if convex(pts, twice) {
		for i := 1; i < n-1; i++ {
			dst = append(dst, 0, i, i+1)
		}
		return dst
	}
	left := make([]int, n) // corners not yet cut off
	for i := range left {
		left[i] = i
		if twice < 0 {
			left[i] = n - 1 - i
		}
	}
	left = straighten(pts, left)
	// Every simple polygon has an ear; the patience only ends the walk on one that
	// crosses itself, where the next corner is then cut off as it stands.
	for i, patience := 0, len(left); len(left) > 3; {
		m := len(left)
		a, b, c := left[(i+m-1)%m], left[i%m], left[(i+1)%m]
		if patience > 0 && !isEar(pts, left, a, b, c) {
			i, patience = (i+1)%m, patience-1
			continue
		}
		dst = append(dst, a, b, c)
		left = append(left[:i%m], left[i%m+1:]...)
		i, patience = (i+m-1)%m%len(left), len(left)
	}
	return append(dst, left...)
}

// straighten takes out the corners that add no area, spikes and doubled points
// among them, down to three.
func straighten(pts []Pt, left []int) []int {
	for i, since := 0, 0; len(left) > 3 && since < len(left); {
		m := len(left)
		i %= m
		if cross(pts[left[(i+m-1)%m]], pts[left[i]], pts[left[(i+1)%m]]) != 0 {
			i, since = i+1, since+1
			continue
		}
		left = append(left[:i], left[i+1:]...)
		i, since = max(0, i-1), 0
	}
	return left
}

// isEar tells whether the corner b can be cut off: it turns the polygon's way and
// no other corner lies in the triangle, or the triangle has no area.
func isEar(pts []Pt, left []int, a, b, c int) bool {
	if turn := cross(pts[a], pts[b], pts[c]); turn <= 0 {
		return turn == 0
	}
	for _, k := range left {
		p := pts[k]
		if p == pts[a] || p == pts[b] || p == pts[c] {
			continue
		}
		if cross(pts[a], pts[b], p) >= 0 && cross(pts[b], pts[c], p) >= 0 && cross(pts[c], pts[a], p) >= 0 {
			return false
		}
	}
	return true
}

// convex tells whether every corner turns the way of the area and the polygon
// goes round once.
func convex(pts []Pt, twice float64) bool {
	n := len(pts)
	bends, last := 0, 0.0
	for i := range pts {
		a, b, c := pts[i], pts[(i+1)%n], pts[(i+2)%n]
		if cross(a, b, c)*twice <= 0 {
			return false
		}
		// x turns back twice on one round, more often on more.
		if d := b.X - a.X; d != 0 {
			if last != 0 && (d > 0) != (last > 0) {
				bends++
			}
			last = d
		}
	}
	return bends <= 2
}

// cross is twice the area of the triangle a b c, above 0 when it turns from x
// towards y.
func cross(a, b, c Pt) float64 {
	return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X)
}
