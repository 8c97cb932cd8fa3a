package game

import (
	"math"
	"slices"
	"strings"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// Column is one way to leave the door, hung and judged: as found, as it stands, or
// after an option's moves. Lengths in mm.
type Column struct {
	Name   string
	Option int // the option's place, or AsFound or AsItStands
	Tried  Tried

	Fit      *fit.Fit
	Wanted   judge.Wanted    // what it is held against, as fitted today
	Findings []judge.Finding // worst first, without their causes
	Edges    [fit.Edges]EdgeGap
	// Evenness is the spread of the closed gap at hinge side, latch side and head:
	// the most anywhere less the least.
	Evenness float64

	// What the moves do to the leaf: Off is the most that comes off an edge at any
	// place, all moves together, Volume the timber in cm³, Narrows the rails and
	// stiles with less left of them than before.
	Off     float64
	Volume  float64
	Narrows []trim.Left
	Strips  int
	Cuts    int
	Recut   []int // hinges, from 0, whose gains are cut anew, in order
	Frame   bool  // whether the frame is touched
	Minutes float64
	Refused int // moves that cannot be done

	Sightlines []Sightline
}

// AsFound and AsItStands are the columns that are no option's.
const (
	AsFound    = -2
	AsItStands = -1
)

// EdgeGap is the closed gap along an edge, and how its finding judges it.
type EdgeGap struct {
	Least, Most float64
	Verdict     judge.Verdict // the worst
	Slack       bool          // somewhere
}

// Sightline is how a rail of the hung leaf runs on with one of the door beside it:
// Above is how far its upper edge, in the middle of the leaf, stands above the
// other's.
type Sightline struct {
	Rail  int // of the leaf, from the foot up
	Above float64
}

// Compare gives the columns of a job: as found, as it stands where anything was done
// for keeps, and each option. Its [Job.Shapes] must give no fault.
func (j *Job) Compare() []Column {
	found := j.Found()
	out := []Column{j.column(AsFound, "As found", found, nil)}
	stands := found
	if len(j.Made) > 0 {
		c := j.column(AsItStands, "As it stands", found, j.Made)
		stands = c.Tried
		out = append(out, c)
	}
	stands.Anatomy.Rated = j.rated()
	for i := range j.Options {
		out = append(out, j.column(i, j.OptionName(i), stands, j.Options[i].Moves))
	}
	return out
}

// Column gives one of the columns [Job.Compare] gives.
func (j *Job) Column(option int) Column {
	switch {
	case option == AsFound:
		return j.column(AsFound, "As found", j.Found(), nil)
	case option < 0 || option >= len(j.Options):
		return j.column(AsItStands, "As it stands", j.Found(), j.Made)
	}
	return j.column(option, j.OptionName(option), j.Stands(), j.Options[option].Moves)
}

func (j *Job) column(option int, name string, from Tried, moves []trim.Move) Column {
	c := Column{Name: name, Option: option, Tried: from}
	c.Tried.Steps = make([]trim.Step, 0, len(moves))
	var off depths
	for k := range moves {
		was := c.Tried
		step := was.with(moves[k : k+1])
		step.Steps = append(was.Steps, step.Steps[0])
		c.Tried = step
		if s := &step.Steps[k]; s.Why != nil && s.Why.About.Forbids() {
			c.Refused++
		} else if !s.Move.Off {
			c.count(&s.Done)
			off.add(&was.Door.Leaf, &step.Door.Leaf)
		}
	}
	trim.Lean(c.Tried.Steps)
	c.Off = off.most()
	c.Narrows = slices.DeleteFunc(c.Narrows, func(l trim.Left) bool { return l.Now >= l.Before })
	d := c.Tried.Door
	c.Fit = new(fit.Fit)
	fit.Evaluate(c.Fit, &d)
	c.Wanted = j.WantedToday(&c.Tried)
	c.Findings = judge.Verdicts(c.Fit, &d, &c.Wanted)
	least, most := math.Inf(1), math.Inf(-1)
	for e := range fit.Edges {
		g := &c.Fit.Gaps[e]
		c.Edges[e] = EdgeGap{Least: g.Least, Most: g.Most, Verdict: judge.Good}
		if e != fit.FloorSide {
			least, most = min(least, g.Least), max(most, g.Most)
		}
	}
	c.Evenness = most - least
	for _, f := range c.Findings {
		if f.Subject == judge.ClosedGap {
			g := &c.Edges[f.Edge]
			g.Verdict, g.Slack = min(g.Verdict, f.Verdict), g.Slack || f.Verdict == judge.Slack // the worst is the least
		}
	}
	c.Sightlines = j.sightlines(c.Fit, &c.Tried)
	return c
}

// count adds what a move did.
func (c *Column) count(d *trim.Done) {
	c.Volume += d.Volume / 1000
	c.Strips += d.Strips
	c.Cuts += d.Cuts
	c.Minutes += d.Minutes
	c.Frame = c.Frame || d.Frame
	for _, h := range d.Gains {
		at := 0
		for at < len(c.Recut) && c.Recut[at] < h {
			at++
		}
		if at == len(c.Recut) || c.Recut[at] != h {
			c.Recut = geom.Insert(c.Recut, at, h)
		}
	}
	for _, l := range d.Left {
		if l.Member.Part != trim.Rail && l.Member.Part != trim.Stile {
			continue
		}
		k := slices.IndexFunc(c.Narrows, func(x trim.Left) bool { return x.Member == l.Member })
		if k < 0 {
			c.Narrows = append(c.Narrows, l)
		} else {
			c.Narrows[k].Now, c.Narrows[k].FaceNow = l.Now, l.FaceNow
		}
	}
}

// Out gives the findings that are not good.
func (c *Column) Out() (out []judge.Finding) {
	for _, f := range c.Findings {
		if f.Verdict != judge.Good {
			out = append(out, f)
		}
	}
	return out
}

// depths is how each edge of a leaf was worked down, move by move.
type depths [door.Edges][][2]geom.Profile

// add notes the edges a move changed.
func (d *depths) add(was, is *door.Leaf) {
	for e := range d {
		before, _ := was.Line(door.Edge(e))
		after, _ := is.Line(door.Edge(e))
		if !slices.Equal(*before, *after) {
			d[e] = append(d[e], [2]geom.Profile{*before, *after})
		}
	}
}

// most gives the greatest sum of what came off at any place of an edge. Between the
// stations each move's share is straight or has a hollow kink where it ends, so the
// greatest is at a station.
func (d *depths) most() (most float64) {
	for e := range d {
		for _, pair := range d[e] {
			for _, p := range pair {
				for _, s := range p {
					most = max(most, d.at(door.Edge(e), s.At))
				}
			}
		}
	}
	return most
}

func (d *depths) at(e door.Edge, place float64) (sum float64) {
	for _, pair := range d[e] {
		off := pair[0].At(place) - pair[1].At(place)
		if e == door.HingeSide || e == door.FloorSide { // the leaf lies above these lines
			off = -off
		}
		sum += max(0, off)
	}
	return sum
}

// sightlines compares the leaf's rails with those of the door beside it: by name, or
// from the foot up where either has none.
func (j *Job) sightlines(f *fit.Fit, t *Tried) (out []Sightline) {
	rails, leaf := t.Anatomy.Rails, &t.Door.Leaf
	middle := leaf.Width / 2
	for i := range rails {
		k := j.beside(rails, i)
		if k < 0 {
			continue
		}
		v := leaf.Top.At(middle)
		if i < len(rails)-1 || !t.stripOn(door.HeadSide) { // a strip on the top carries on the top rail, to the eye
			v = min(v, rails[i].To)
		}
		at := f.Place(geom.Vec{X: middle, Y: v, Z: leaf.Face(middle, v)}, f.Closed)
		out = append(out, Sightline{i, at.Y - j.Neighbour[k].To})
	}
	return out
}

// stripOn tells whether a strip is glued to an edge.
func (t *Tried) stripOn(e door.Edge) bool {
	return slices.ContainsFunc(t.Anatomy.Strips, func(s door.Strip) bool { return s.Edge == e })
}

// beside gives the neighbour's rail that the i-th of the leaf ought to run on with,
// below zero where there is none.
func (j *Job) beside(rails []door.Rail, i int) int {
	name := rails[i].Name
	for k := range j.Neighbour {
		if name != "" && strings.EqualFold(j.Neighbour[k].Name, name) {
			return k
		}
	}
	if i < len(j.Neighbour) && (name == "" || j.Neighbour[i].Name == "") {
		return i
	}
	return -1
}

// OptionNamed gives the option of a name, whatever the letters' case, or of a number
// from 1.
func (j *Job) OptionNamed(name string) (i int, ok bool) {
	name = strings.TrimSpace(name)
	for i := range j.Options {
		if strings.EqualFold(strings.TrimSpace(j.OptionName(i)), name) {
			return i, true
		}
	}
	for i := range j.Options {
		if name == ordinal(i) {
			return i, true
		}
	}
	return 0, false
}
