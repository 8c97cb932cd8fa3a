package lesson

import (
	"math/rand/v2"
	"strings"
	"sync"
	"testing"

	"leafwright/geom/fault"
	"leafwright/geom/trim"
)

// follow plays a lesson as one who does what the hints say and nothing else.
func follow(t testing.TB, l *Lesson) *Play {
	t.Helper()
	p := Begin(l)
	for range 200 {
		if p.Over() != "" {
			return p
		}
		seen, err := p.Do(Act{Deed: Ask})
		if err != nil {
			t.Fatal(err)
		}
		if a, ok := seen.Hint.Follow(); ok {
			if _, err := p.Do(a); err != nil {
				t.Fatalf("%s: %v: %v", l.Name, a, err)
			}
		}
	}
	t.Fatalf("%s: the hints never end", l.Name)
	return nil
}

// plane plays a lesson as one who planes a shaving off wherever the leaf rubs, tries
// again, and asks after nothing: common practice, no published source.
func plane(t testing.TB, l *Lesson) *Play {
	t.Helper()
	const shaving = 1.0
	p := Begin(l)
	for range 40 {
		seen, err := p.Do(Act{Deed: Try})
		if err != nil {
			t.Fatal(err)
		}
		at := -1
		for i, s := range seen.Symptoms {
			switch s.Kind {
			case fault.Rubs, fault.RubsSwinging, fault.RubsFloor, fault.Hairline, fault.SpringsBack:
				if at < 0 {
					at = i
				}
			}
		}
		if at < 0 {
			break
		}
		s := seen.Symptoms[at]
		m := trim.Move{Kind: trim.Plane, Edge: s.Edge, First: shaving, Last: shaving}
		if s.Stretch.Hi-s.Stretch.Lo > 200 {
			m.From, m.To = max(0, s.Stretch.Lo), s.Stretch.Hi
			if s.Edge.Upright() {
				lift := p.piece.Door.Hinges[0].JambHeight - p.piece.Door.Hinges[0].LeafHeight
				m.From, m.To = max(0, m.From-lift), m.To-lift
			}
		}
		done, err := p.Do(Act{Deed: Work, Move: m})
		if err != nil {
			t.Fatal(err)
		}
		if done.Step.Why != nil { // as far as the timber bears it
			break
		}
	}
	if _, err := p.Do(Act{Deed: Finish}); err != nil {
		t.Fatal(err)
	}
	return p
}

// played gives the attempts that are played: so many of each level, drawn once.
var played = sync.OnceValue(func() (all []*Lesson) {
	many := uint64(35)
	if testing.Short() {
		many = 5
	}
	for level := 1; level <= len(Levels); level++ {
		for seed := range many {
			l, _ := Attempt(level, seed)
			all = append(all, l)
		}
	}
	return all
})

func TestOneWhoFollowsTheHintsEndsWithinLimits(t *testing.T) {
	var kinds = map[fault.Kind]int{}
	for i, l := range played() {
		if l == nil {
			t.Errorf("%d: no door was found", i)
			continue
		}
		level, _, ok := AttemptNamed(l.Name)
		if !ok || len(l.Kinds()) != Levels[level-1].Faults {
			t.Errorf("%s: %d faults, and %d are wanted", l.Name, len(l.Kinds()), Levels[level-1].Faults)
		}
		for _, k := range l.Kinds() {
			kinds[k]++
		}
		within(t, l, follow(t, l))
	}
	for i := range fault.All {
		if kinds[fault.All[i].Kind] == 0 && !testing.Short() {
			t.Errorf("%s: in none of the attempts", fault.All[i].Kind)
		}
	}
}

// within tells of a play that did not end as a lesson ought to.
func within(t *testing.T, l *Lesson, p *Play) {
	t.Helper()
	j := p.Judge()
	if !j.Good || j.Over != Finish {
		t.Errorf("%s: ended %q, good %v: %v %v", l.Name, j.Over, j.Good, j.Out, j.Left)
	}
	if len(j.Missed)+len(j.Wrong) > 0 || j.Late {
		t.Errorf("%s: missed %v, wrong %v, late %v", l.Name, j.Missed, j.Wrong, j.Late)
	}
	for _, x := range j.Limits {
		if !x.Kept() {
			t.Errorf("%s: %s %v, and %v are allowed", l.Name, x.Limit, x.Used, x.Allowed)
		}
	}
	if j.Wasted() > 1 {
		t.Errorf("%s: %v cm³ wasted", l.Name, j.Wasted())
	}
	for i := range j.Moves {
		if j.Moves[i].Needless {
			t.Errorf("%s: the cure's move %d is needless: %+v", l.Name, i+1, j.Moves[i].Step.Move)
		}
	}
}

// Common practice, no published source: who planes wherever it rubs, without asking
// why, spoils doors.
func TestOneWhoPlanesWhereverItRubsDoesWorse(t *testing.T) {
	var good, all int
	var took, least, over float64
	for _, l := range played() {
		j := plane(t, l).Judge()
		all++
		if j.Good {
			good++
		}
		took, least, over = took+j.Timber, least+j.Least.Timber, over+j.Wasted()
		if len(j.Right) > 0 {
			t.Errorf("%s: nothing was named, and %v is right", l.Name, j.Right)
		}
	}
	n := float64(all)
	t.Logf("%d of %d doors put right; timber %.0f cm³ a door, least %.0f, wasted %.0f", good, all, took/n, least/n, over/n)
	if good*10 > all {
		t.Errorf("%d of %d doors put right by planing wherever they rub", good, all)
	}
	if took < 1.5*least {
		t.Errorf("%.0f cm³ a door planed off, and %.0f is the least: that is no worse", took/n, least/n)
	}
}

// Whatever a learner does first, hints lead on from there to an end, and all of it is
// judged and told.
func TestWhateverWasDoneHintsLeadToAnEnd(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 2026))
	spoilt, good := 0, 0
	for i, l := range played() {
		if i%5 != 0 {
			continue
		}
		p := Begin(l)
		for range 1 + r.IntN(5) {
			job := p.Stands()
			m := job.NewMove(trim.Kinds[r.IntN(len(trim.Kinds))].Kind)
			m = scaled(m, 3*r.Float64())
			p.Do(Act{Deed: Work, Move: m}) // one that cannot be is refused
		}
		for range 200 {
			seen, err := p.Do(Act{Deed: Ask})
			if err != nil {
				t.Fatal(err)
			}
			if a, ok := seen.Hint.Follow(); ok {
				if _, err := p.Do(a); err != nil {
					t.Fatalf("%s: %+v: %v", l.Name, a, err)
				}
			}
			if p.Over() != "" {
				break
			}
		}
		j := p.Judge()
		switch {
		case p.Over() == "":
			t.Errorf("%s: the hints never end", l.Name)
		case p.Over() == Finish && !j.Good:
			t.Errorf("%s: called done and is not", l.Name)
		case j.Good:
			good++
		default:
			spoilt++
		}
		if said := text(l, j); strings.Contains(said, "NaN") || strings.Contains(said, "..") {
			t.Errorf("%s:\n%s", l.Name, said)
		}
		back, err := ParseSession([]byte((&Session{Lesson: l.Name, Acts: p.Acts}).Text()))
		if err != nil || len(back.Acts) != len(p.Acts) {
			t.Errorf("%s: %v", l.Name, err)
		}
	}
	t.Logf("%d put right, %d past help", good, spoilt)
}
