package fit_test

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/fit"
)

// slowSweep is the least clearance of an edge through the swing: its value, the
// leaf's point and the angle.
type slowSweep struct {
	least float64
	leaf  geom.Vec
	phi   float64
}

// swing looks at every point of all arrises of an edge through the whole swing.
func (s *slow) swing(e fit.Edge) slowSweep {
	best := slowSweep{least: math.Inf(1)}
	steps := s.swingSteps()
	m := s.turned(s.closed)
	for _, a := range s.arrises(e) {
		kinks := s.leafKinks(a)
		step := 25.0
		if e == fit.FloorSide {
			step = 10
			kinks = append(kinks, s.floorKinks(a, m)...)
		} else {
			for _, k := range s.frameKinks(e) {
				kinks = append(kinks, changes(func(p float64) float64 { return along(e, m.point(s.on(a, p))) - k }, places(a.lo, a.hi, 50))...)
			}
		}
		at, v := s.leastPath(e, a, steps, places(a.lo, a.hi, step, kinks...))
		if v < best.least {
			leaf := s.on(a, at)
			w := s.path(e, leaf, steps)
			best = slowSweep{v, leaf, w.phi}
		}
	}
	return best
}

// leastPath finds the point of an arris whose path comes nearest. The least along
// a path may jump from one point to the next where a stretch of path between stop
// and front edge appears or ends, so such places are closed in on from both sides.
func (s *slow) leastPath(e fit.Edge, a arris, steps []turnStep, where []float64) (at, value float64) {
	path := func(p float64) walked { return s.path(e, s.on(a, p), steps) }
	at, value = least(func(p float64) float64 { return path(p).least }, where)
	last := path(where[0])
	for i := 1; i < len(where); i++ {
		here := path(where[i])
		if here.shape != last.shape {
			lo, hi := where[i-1], where[i]
			for hi-lo > 1e-7 {
				m := lo + (hi-lo)/2
				if path(m).shape == last.shape {
					lo = m
				} else {
					hi = m
				}
			}
			for _, p := range []float64{lo, hi} {
				if w := path(p).least; w < value {
					at, value = p, w
				}
			}
		}
		last = here
	}
	return at, value
}

// turnStep is one angle of the swing.
type turnStep struct{ phi, cos, sin float64 }

func step(phi float64) turnStep {
	sin, cos := math.Sincos(phi)
	return turnStep{phi, cos, sin}
}

// swingSteps runs from closed to fully open: fine while a wide leaf's closing
// edge is between the jambs, coarser after.
func (s *slow) swingSteps() (steps []turnStep) {
	end := float64(s.d.Opens)
	for phi, by := s.closed, degree/4; phi < end; phi += by {
		if phi > s.closed+16*degree {
			by = degree
		}
		steps = append(steps, step(phi))
	}
	return append(steps, step(max(end, s.closed)))
}

// walked is what one point of an edge met on its way: the least clearance and its
// angle, and the path's shape: how often it went in and out of the frame's depth
// (over the floor: across the line behind the hinges where the floor's angle jumps).
type walked struct {
	least, phi float64
	shape      int
}

// node is one place of a path.
type node struct {
	turnStep
	clear float64
	in    bool // counts (over the floor: which side of the angle's jump)
	edge  float64
	front bool // in front of the middle of the frame's depth
}

// path follows one point of an edge from closed to fully open.
func (s *slow) path(e fit.Edge, leaf geom.Vec, steps []turnStep) walked {
	p := s.pose.point(leaf).Sub(s.pin)
	foot := s.pin.Add(s.down.Scale(p.Dot(s.down)))
	out := p.Sub(s.down.Scale(p.Dot(s.down)))
	on := s.down.Cross(out)
	floor := e == fit.FloorSide
	visit := func(t turnStep) node {
		q := foot.Add(out.Scale(t.cos)).Add(on.Scale(t.sin))
		n := node{turnStep: t, clear: s.clear(e, q)}
		if floor {
			n.in = q.X < 0 && q.Z < 0
			return n
		}
		front, stop := s.depthAt(e, q)
		n.edge = max(q.Z-front, stop-q.Z)
		n.in = n.edge <= 0
		n.front = q.Z > (front+stop)/2
		return n
	}
	// every step, and both sides of each place where it goes in or out
	nodes := make([]node, 0, 2*len(steps))
	crossing := func(a, b node) {
		for range 50 {
			m := visit(step(a.phi + (b.phi-a.phi)/2))
			if m.in == a.in {
				a = m
			} else {
				b = m
			}
		}
		nodes = append(nodes, a, b)
	}
	for _, t := range steps {
		n := visit(t)
		if k := len(nodes); k > 0 {
			prev := nodes[k-1]
			if n.in != prev.in {
				crossing(prev, n)
			} else if !floor && !n.in && prev.front != n.front { // went right through
				a, b := prev, n
				for !a.in && b.phi-a.phi > 1e-12 {
					if m := visit(step(a.phi + (b.phi-a.phi)/2)); m.in || m.front == prev.front {
						a = m
					} else {
						b = m
					}
				}
				if a.in {
					crossing(prev, a)
					crossing(a, n)
				}
			} else if !floor && !n.in && min(prev.edge, n.edge) < 0.3 { // may have dipped in between
				at, dip := narrow(func(phi float64) float64 { return visit(step(phi)).edge }, prev.phi, n.phi)
				if mid := visit(step(at)); dip <= 0 {
					crossing(prev, mid)
					crossing(mid, n)
				}
			}
		}
		nodes = append(nodes, n)
	}
	// the closed leaf counts whole
	w := walked{least: nodes[0].clear, phi: nodes[0].phi}
	try := func(n node) {
		if n.clear < w.least {
			w.least, w.phi = n.clear, n.phi
		}
	}
	for i, n := range nodes {
		if i > 0 && n.in != nodes[i-1].in {
			w.shape += 2
		}
		if n.in || floor {
			try(n)
		}
	}
	if nodes[0].in {
		w.shape++
	}
	// the hollows between steps
	for i, n := range nodes {
		lo, hi := nodes[max(i-1, 0)], nodes[min(i+1, len(nodes)-1)]
		if lo.in != n.in {
			lo = n
		}
		if hi.in != n.in {
			hi = n
		}
		if lo.phi == hi.phi || !n.in && !floor || n.clear > w.least+2 || lo.clear < n.clear || hi.clear < n.clear {
			continue
		}
		phi, _ := narrow(func(phi float64) float64 { return visit(step(phi)).clear }, lo.phi, hi.phi)
		try(visit(step(phi)))
	}
	return w
}

// depthAt gives the frame's front edge and stop beside a place of an edge.
func (s *slow) depthAt(e fit.Edge, q geom.Vec) (front, stop float64) {
	f := &s.d.Frame
	switch e {
	case fit.HingeSide:
		return poly(f.HingeFront, q.Y), poly(f.HingeStop, q.Y)
	case fit.LatchSide:
		return poly(f.LatchFront, q.Y), poly(f.LatchStop, q.Y)
	}
	return poly(f.HeadFront, q.X), poly(f.HeadStop, q.X)
}
