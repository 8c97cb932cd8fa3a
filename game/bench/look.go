package bench

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/measure"
	"leafwright/game/words"
	"leafwright/geom"
	"leafwright/geom/fit"
)

// Look is how a job is looked at. It is kept beside the job, not in it.
type Look struct {
	Show    Show
	Factor  float64 // 0 chooses by itself
	Section float64 // height of the cut, mm; 0 = the latch's
	Swing   float64 // degrees
	Reading Reading
	Inches  bool
	Words   words.Region
	// Asked is the path of the prompt the measuring card asks now.
	Asked     string
	AllAtOnce bool // the whole card is shown
	CardShut  bool
	Option    Shown
	Keeps     bool // tools work for keeps
}

// Reading is the place whose gap is read off; On tells that the loupe is there.
type Reading struct {
	On    bool
	Edge  fit.Edge
	Place float64 // mm up from the floor, or across from the hinges
}

// Show says which pictures are shown.
type Show string

// The pictures shown.
const (
	Both  Show = "both"
	Front Show = "front"
	Plan  Show = "plan"
)

// ajar is the swing a job opens with, degrees: enough that the plan shows a door
// and not two lines.
const ajar = 24

var firstLook = Look{Show: Both, Words: words.UK, Option: AsStands}

// Look gives how the job is looked at.
func (s *State) Look() Look { return s.look }

// lookAfresh drops what belonged to the job before: the cut, the swing, the loupe.
func (s *State) lookAfresh() {
	s.look.Factor, s.look.Section, s.look.Swing, s.look.Asked, s.look.Keeps = 0, 0, ajar, "", false
	s.SetSeason(0, "")
	s.look.CardShut = s.Measuring() && s.lacks == nil // done, as far as need be
	lo, hi := s.ReadingRange(fit.LatchSide)
	s.look.Reading = Reading{Edge: fit.LatchSide, Place: lo + (hi-lo)/2}
	s.hold, s.under = hold{}, draw.Target{}
	s.looks++
}

// alter changes one thing of the look.
func (s *State) alter(change func(*Look)) {
	l := s.look
	change(&l)
	s.setLook(l)
}

// setLook takes a look over, anything out of range held or left as it was.
func (s *State) setLook(l Look) {
	old := s.look
	switch l.Show {
	case Both, Front, Plan:
	default:
		l.Show = old.Show
	}
	if !slices.Contains(words.Regions, l.Words) {
		l.Words = old.Words
	}
	if l.Reading.Edge < 0 || l.Reading.Edge >= fit.Edges {
		l.Reading = old.Reading
	}
	for _, n := range []struct {
		value  *float64
		old    float64
		lo, hi float64
	}{
		{&l.Factor, old.Factor, 0, MostFactor},
		{&l.Section, old.Section, 0, measure.Most},
		{&l.Swing, old.Swing, 0, 180},
		{&l.Reading.Place, old.Reading.Place, -measure.Most, measure.Most},
	} {
		if math.IsNaN(*n.value) {
			*n.value = n.old
		}
		*n.value = geom.Interval{Lo: n.lo, Hi: n.hi}.Clamp(*n.value)
	}
	if l != old {
		s.look = l
		s.looks++
	}
}

// MostFactor is the greatest enlargement offered; the drawing uses less where
// that much would not fit.
const MostFactor = 40

// SetShow, SetFactor, SetSection and SetSwing change one thing of the look.
func (s *State) SetShow(to Show) {
	s.alter(func(l *Look) {
		l.Show = to
	})
}

// SetFactor sets the enlargement; 0 lets the drawing choose.
func (s *State) SetFactor(times float64) {
	s.alter(func(l *Look) {
		l.Factor = times
	})
}

// SetSection sets the height of the cut, in mm above the floor.
func (s *State) SetSection(mm float64) {
	s.alter(func(l *Look) {
		l.Section = mm
	})
}

// SetSwing sets the angle the leaf stands at in plan, in degrees, held between
// closed and fully open.
func (s *State) SetSwing(degrees float64) {
	lo, hi := s.SwingRange()
	s.alter(func(l *Look) {
		l.Swing = geom.Interval{Lo: lo, Hi: hi}.Clamp(degrees)
	})
}

// SetReading moves the loupe, or takes it away.
func (s *State) SetReading(r Reading) {
	s.alter(func(l *Look) {
		l.Reading = r
	})
}

// SetInches shows lengths in feet and inches, or in millimetres. What stands
// typed and not taken is read anew, since a plain number now means another thing.
func (s *State) SetInches(on bool) {
	s.alter(func(l *Look) {
		l.Inches = on
	})
	s.jobs++
}

// SetWords chooses whose trade words are used.
func (s *State) SetWords(r words.Region) {
	s.alter(func(l *Look) {
		l.Words = r
	})
	s.jobs++
}

func (l Look) unit() measure.Unit {
	if l.Inches {
		return measure.Inch
	}
	return measure.MM
}

// Unit is what lengths are shown and typed in.
func (s *State) Unit() measure.Unit { return s.look.unit() }

// SwingRange gives the least and the greatest swing, in degrees: closed and fully
// open. A leaf that closes a hair past its frame's plane starts at 0.
func (s *State) SwingRange() (lo, hi float64) {
	hi = s.tried.Door.Opens.Degrees()
	return min(max(0, s.fit.Closed.Degrees()), hi), hi
}

// SectionRange gives the heights between which the cut can lie, mm.
func (s *State) SectionRange() (lo, hi float64) { return 0, s.Job().LeafHeight }

// Factor, Section and Swing tell what the drawing uses, where the look leaves it
// to choose or asks for more than fits.
func (s *State) Factor() float64  { return s.current().Factor() }
func (s *State) Section() float64 { return s.current().Section() }

// Swing is in degrees.
func (s *State) Swing() float64 { return s.current().Swing().Degrees() }

// sheet is a drawing already made: of which state, and how large.
type sheet struct {
	jobs, looks int
	w, h        float64
}

// Drawing gives the drawing on a sheet of w by h px, made anew only where
// something has changed. It stays good until the next one.
func (s *State) Drawing(w, h float64) *draw.List {
	if now := (sheet{s.jobs, s.looks, w, h}); now != s.sheet {
		s.sheet = now
		s.draw(&s.scene, &s.list, w, h)
	}
	return &s.list
}

// current gives the scene of the drawing as it is now.
func (s *State) current() *draw.Scene {
	s.Drawing(s.sheet.w, s.sheet.h)
	return &s.scene
}

// Picture gives a drawing by the way, of another size than the one on show.
func (s *State) Picture(w, h float64) *draw.List {
	var scene draw.Scene
	var l draw.List
	s.draw(&scene, &l, w, h)
	return &l
}

func (s *State) draw(scene *draw.Scene, l *draw.List, w, h float64) {
	job := s.Job()
	v := draw.View{
		Width: w, Height: h,
		Factor:    s.look.Factor,
		Section:   s.look.Section,
		Swing:     geom.Angle(s.look.Swing) * geom.Degree,
		RightHung: job.Hand == game.Right,
		Grab:      s.under,
		TextSize:  13,
		Month:     s.season.when,
	}
	if s.hold.kind != draw.Nothing {
		v.Grab = draw.Target{Kind: s.hold.kind}
	}
	switch s.look.Show {
	case Front:
		v.Show = draw.Front
	case Plan:
		v.Show = draw.Plan
	}
	if r := s.look.Reading; r.On {
		v.Lens = draw.Lens{On: true, Edge: r.Edge, Place: r.Place, Near: s.finger}
	}
	if s.look.Inches {
		v.Format, v.Length = s.Figure, s.Place
	}
	wanted := &s.wanted
	if s.lacks != nil { // no gap is known yet
		wanted = &s.nothing
		v.Format = func(float64) string { return "?" }
	}
	v.Asked = s.asked()
	s.handView(&v)
	scene.Draw(l, &s.fit, &s.tried.Door, &s.tried.Anatomy, wanted, v)
}

// Figure writes a gap in the unit shown, without the unit; inches carry theirs.
func (s *State) Figure(mm float64) string {
	if s.look.Inches {
		return words.Inches(mm)
	}
	return strings.TrimSuffix(words.Millimetres(mm), " mm")
}

// Length writes a length in the unit shown, with the unit.
func (s *State) Length(mm float64) string {
	if s.look.Inches {
		return words.Inches(mm)
	}
	return words.Millimetres(mm)
}

// Place writes a distance along an edge in the unit shown, to the whole millimetre
// or the eighth of an inch.
func (s *State) Place(mm float64) string {
	if s.look.Inches {
		return words.InchPlace(mm)
	}
	return strconv.FormatFloat(math.Round(mm), 'f', 0, 64) + " mm"
}
