// Package hand is a lesson's door as a picture, and the tools that work on it by pointer
// or finger. The picture is the door as it is seen: true to scale, with no figure and
// nothing marked. A tool run over it gives an ordinary move, which is not made: whoever
// shows the picture asks first, since what is made in a lesson is made for keeps.
package hand

import (
	"math"

	"leafwright/game"
	"leafwright/game/bench"
	"leafwright/game/draw"
	"leafwright/game/measure"
	"leafwright/game/words"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// Tool is a tool for the picture, and what it is called and how it is used.
type Tool struct {
	Kind string // as a page asks for it
	Name string
	Use  string
	Move trim.Kind // what it does first of all
	held draw.Held
}

// Tools are the tools, in the order they are offered.
var Tools = [...]Tool{
	{"plane", "Plane", "Stroke along an edge of the leaf: a shaving comes off where you stroke. Stroke there again for another.", trim.Plane, draw.HeldPlane},
	{"hinge", "Hinge", "Tap a hinge to let it in deeper, to pack it out or to draw it home. Drag it to move it up or down.", trim.Sink, draw.HeldHinge},
	{"saw", "Saw", "Drag an end of the line at the top or the foot into the leaf, or the line between them to move both.", trim.Cut, draw.HeldSaw},
}

// ToolOf gives the tool of a kind, nil for none.
func ToolOf(kind string) *Tool {
	for i := range Tools {
		if Tools[i].Kind == kind {
			return &Tools[i]
		}
	}
	return nil
}

// Picture is a door as it is seen. Points of it are in px from its upper left corner.
type Picture struct {
	job    game.Job
	stands game.Tried
	fit    fit.Fit
	scene  draw.Scene
	list   draw.List
	over   draw.List
	k      float64 // px of the picture to one of the scene's sheet
	at     draw.Pt // where the sheet's upper left corner comes
}

// Show draws a job's door as it stands, with a tool in hand or nil. Of the view its
// size, the pictures shown and the swing are taken; a tool works on the front alone.
func Show(job *game.Job, tool *Tool, view draw.View) *Picture {
	p := &Picture{job: *job, stands: job.Stands()}
	d := &p.stands.Door
	d.Floor = door.FlatFloor(0) // else its profile is drawn too
	fit.Evaluate(&p.fit, d)
	v := draw.View{
		Width: view.Width, Height: view.Height, Show: view.Show, Swing: max(view.Swing, p.fit.Closed),
		Factor: 1, Still: true, RightHung: job.Hand == game.Right,
	}
	if tool != nil {
		v.Show, v.Held = draw.Front, tool.held
	}
	p.scene.Draw(&p.list, &p.fit, d, &p.stands.Anatomy, &p.job.Wanted, v)
	p.list.Title, p.list.Desc = "The door", "The door in its frame, as it is seen: nothing is written on it."
	p.bare()
	draw.Hand(&p.scene, &p.over, nil)
	p.carry(&p.over, 0)
	return p
}

// List is the picture, and Over what lies over it: what the tool in hand can take hold
// of, and after [Picture.Work] what it would do.
func (p *Picture) List() *draw.List { return &p.list }
func (p *Picture) Over() *draw.List { return &p.over }

// bare takes figures and marks out of the picture, and lets the rest fill its sheet.
func (p *Picture) bare() {
	l := &p.list
	kept := l.Marks[:0]
	across, down := geom.Interval{Lo: l.Width, Hi: 0}, geom.Interval{Lo: l.Height, Hi: 0}
	for _, m := range l.Marks {
		if m.Kind == draw.Text || tells(m.Ink) {
			continue
		}
		kept = append(kept, m)
		if m.Ink == draw.Paper {
			continue
		}
		for _, q := range l.Points[m.From:m.To] {
			across = geom.Interval{Lo: min(across.Lo, q.X), Hi: max(across.Hi, q.X)}
			down = geom.Interval{Lo: min(down.Lo, q.Y), Hi: max(down.Hi, q.Y)}
		}
	}
	l.Marks = kept
	const margin = 12.0
	p.k = min((l.Width-2*margin)/max(1, across.Hi-across.Lo), (l.Height-2*margin)/max(1, down.Hi-down.Lo))
	p.at = draw.Pt{X: l.Width/2 - p.k*(across.Lo+across.Hi)/2, Y: l.Height/2 - p.k*(down.Lo+down.Hi)/2}
	p.carry(l, l.Marks[0].To) // the paper stays
}

// carry moves a list's points from the n-th on from the scene's sheet to the picture.
func (p *Picture) carry(l *draw.List, n int) {
	for i := n; i < len(l.Points); i++ {
		q := &l.Points[i]
		q.X, q.Y = p.at.X+p.k*q.X, p.at.Y+p.k*q.Y
	}
}

// sheet gives where a point of the picture is on the scene's sheet.
func (p *Picture) sheet(q draw.Pt) draw.Pt {
	return draw.Pt{X: (q.X - p.at.X) / p.k, Y: (q.Y - p.at.Y) / p.k}
}

// Spot gives where a place of the leaf's edge is on the picture, mm along the edge.
func (p *Picture) Spot(e door.Edge, place float64) draw.Pt {
	g := p.scene.Sight()
	return p.shown(g.On(e, place))
}

// Hinge gives where a hinge is, 1 the top one, and Grip an end of the line that top or
// foot is sawn to: −1 at the hanging corner, +1 at the closing one.
func (p *Picture) Hinge(i int) draw.Pt               { return p.shown(p.scene.HingeAt(i)) }
func (p *Picture) Grip(e door.Edge, end int) draw.Pt { return p.shown(p.scene.CutGrip(e, end)) }
func (p *Picture) shown(q draw.Pt) draw.Pt           { return draw.Pt{X: p.at.X + p.k*q.X, Y: p.at.Y + p.k*q.Y} }

// tells tells whether an ink says how a gap is, or stands for no thing that is seen.
func tells(i draw.Ink) bool {
	switch i {
	case draw.Paper, draw.Ghost, draw.SwingArc:
		return false
	}
	return i >= draw.BindFill || i == draw.Fine || i == draw.Datum
}

// Stroke is what a hand does with the tool that the picture was shown with.
type Stroke struct {
	From, To draw.Pt // of the picture: where it pressed and where it is
	Moved    bool    // it has gone so far that it is no tap
	Shaving  float64 // what a pass of the plane takes off, and how deep a tapped hinge goes, mm
	Packs    bool    // a tapped hinge is packed out, not let in deeper
	Home     bool    // or drawn home on the jamb: packing comes out from behind it
	Inches   bool    // amounts are round in inches
	// Before is the move composed last, not made yet, or nil: a stroke of the plane like it
	// adds to it.
	Before *trim.Move
}

// A gap is a fraction of a px on a picture true to scale. So hand and saw are geared
// down: so many px of the pointer are one grain of what is moved.
const gear = 4.0

// Work gives the move that a stroke comes to, and lays what it does over the picture.
// Not ok where the hand took hold of nothing, or did nothing yet.
func (p *Picture) Work(s Stroke) (m trim.Move, ok bool) {
	if bad(s.From) || bad(s.To) {
		return m, false
	}
	from, to := p.sheet(s.From), p.sheet(s.To)
	g := p.scene.Sight()
	t := p.scene.Hit(from)
	w := draw.Work{Edge: t.Edge, At: t.Place, Hinge: t.Hinge, End: t.End, Pressed: true}
	w.From, w.To = g.Ends(t.Edge)
	switch t.Kind {
	case draw.LeafEdge:
		m, ok = p.plane(&g, &s, &w, from, to)
	case draw.HingeBody:
		m, ok = p.hinge(&s, &w, s.From.Y-s.To.Y)
	case draw.CutEnd:
		m, ok = p.saw(&s, &w, g.Out(t.Edge, from, to)*g.Times())
	default:
		return m, false
	}
	draw.Hand(&p.scene, &p.over, &w)
	p.carry(&p.over, 0)
	return m, ok && len(m.Check()) == 0
}

func bad(q draw.Pt) bool { return q.X-q.X != 0 || q.Y-q.Y != 0 }

func (p *Picture) plane(g *draw.Sight, s *Stroke, w *draw.Work, from, to draw.Pt) (m trim.Move, ok bool) {
	if !s.Moved {
		w.Text = "Stroke along the edge"
		return m, false
	}
	start, toe, part, lifted := bench.Stroke(g, w.Edge, from, to)
	w.At = g.Place(w.Edge, to)
	if lifted {
		w.Text = "Plane lifted"
		return m, false
	}
	m = trim.Move{Kind: trim.Plane, Edge: w.Edge, First: s.Shaving, Last: s.Shaving}
	if part {
		m.From, m.To = min(start, toe), max(start, toe)
		w.From, w.To = max(m.From, w.From), min(m.To, w.To)
	}
	if s.Before != nil {
		if sum, like := bench.Joined(*s.Before, m); like {
			m = sum
		}
	}
	w.Text = s.length(m.First) + " off"
	return m, true
}

func (p *Picture) hinge(s *Stroke, w *draw.Work, up float64) (m trim.Move, ok bool) {
	if s.Moved {
		grain := 1.0
		if s.Inches {
			grain = measure.PerInch / 16
		}
		limit := trim.SpecOf(trim.Shift).Amount.Hi
		m = trim.Move{Kind: trim.Shift, Hinge: w.Hinge, On: trim.OnBoth}
		m.First = geom.Interval{Lo: -limit, Hi: limit}.Clamp(math.Round(up/gear) * grain)
		w.Text = s.length(math.Abs(m.First)) + " up"
		if m.First < 0 {
			w.Text = s.length(-m.First) + " down"
		}
		return m, m.First != 0
	}
	m = trim.Move{Kind: trim.Sink, Hinge: w.Hinge, On: trim.OnLeaf, First: s.Shaving}
	w.Text = s.length(s.Shaving) + " deeper"
	if s.Packs {
		m.Kind, w.Text = trim.Pack, s.length(s.Shaving)+" packing"
	}
	if s.Home {
		m.Kind, m.On, m.First, w.Text = trim.Pack, trim.OnJamb, -s.Shaving, s.length(s.Shaving)+" home"
	}
	return m, true
}

// saw follows the hand; out is how far it has gone out of the leaf, mm as drawn.
func (p *Picture) saw(s *Stroke, w *draw.Work, out float64) (m trim.Move, ok bool) {
	grain := 0.5
	if s.Inches {
		grain = measure.PerInch / 32
	}
	// as the line is drawn it goes with the hand, whatever amount that is
	g := p.scene.Sight()
	perPx := 1 / (p.scale(&g, w.Edge) * p.k) // mm of the leaf to a px of the picture
	off := geom.Interval{Hi: trim.SpecOf(trim.Cut).Amount.Hi}.Clamp(math.Round(-out/perPx/gear) * grain)
	m = trim.Move{Kind: trim.Cut, Edge: w.Edge}
	shown := off / grain * gear * perPx
	if w.End <= 0 {
		m.First, w.First = off, shown
	}
	if w.End >= 0 {
		m.Last, w.Last = off, shown
	}
	w.Text = "Drag it into the leaf"
	if off > 0 {
		w.Text = s.length(off) + " off"
	}
	return m, off > 0
}

// scale gives how many px of the sheet a mm of the leaf is, square to its top or foot.
func (p *Picture) scale(g *draw.Sight, e door.Edge) float64 {
	a := g.On(e, 0)
	return 1 / math.Abs(g.Out(e, a, draw.Pt{X: a.X, Y: a.Y + 1})*g.Times())
}

func (s *Stroke) length(mm float64) string {
	var say words.Speaker
	if s.Inches {
		say.Length = words.Inches
	}
	return say.Amount(mm)
}
