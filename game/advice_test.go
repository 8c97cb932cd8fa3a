package game

import (
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"leafwright/geom/advise"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

// A plan taken as an option, staged or not, leaves nothing out of what is wanted, and
// hangs as the plan says: with the same gaps, costs and evenness.
func TestPlansAsOptions(t *testing.T) {
	plans := 0
	for _, j := range demoJobs(t) {
		for _, prefer := range advise.Preferences {
			a := Advice(&j, AdviceWishes{Prefer: prefer})
			for i := range a.Plans {
				plans++
				p := &a.Plans[i]
				with, err := Form{}.AddOption(j, OptionText(OptionOf(p, "As advised")))
				if err != nil {
					t.Fatalf("%s, %s: %v", j.Name, prefer, err)
				}
				k := len(with.Options) - 1
				tried := with.Try(k)
				var after, whole fit.Fit
				fit.Evaluate(&after, &tried.Door)
				wanted := j.WantedToday(&tried)
				for _, f := range judge.Verdicts(&after, &tried.Door, &wanted) {
					if f.Verdict != judge.Good && (j.Survey == nil || f.Subject != judge.HingeLine) {
						t.Errorf("%s, %s, plan %d leaves %+v", j.Name, prefer, i, f)
					}
				}
				for _, s := range tried.Steps {
					if s.Why != nil && s.Why.About.Forbids() {
						t.Errorf("%s, %s, plan %d: a move is refused: %+v", j.Name, prefer, i, s.Why)
					}
				}
				is, steps := trim.All(j.Stands().piece(), p.Moves)
				fit.Evaluate(&whole, &is.Door)
				const close = 0.02 // mm: parted cuts leave the same line but for their run-outs and bevels
				for e := range door.Edges {
					if g, h := &after.Gaps[e], &whole.Gaps[e]; math.Abs(g.Least-h.Least) > close || math.Abs(g.Most-h.Most) > close {
						t.Errorf("%s, %s, plan %d: %.4f to %.4f as an option, %.4f to %.4f at once", j.Name, prefer, i, g.Least, g.Most, h.Least, h.Most)
					}
				}
				var timber, minutes float64
				for _, s := range steps {
					timber += s.Done.Volume / 1000
					minutes += s.Done.Minutes
				}
				if timber != p.Cost.Timber || minutes != p.Cost.Minutes || !reflect.DeepEqual(steps, p.Steps) {
					t.Errorf("%s, %s, plan %d: costs %+v, its moves come to %v cm³ and %v min", j.Name, prefer, i, p.Cost, timber, minutes)
				}
				if len(p.Stages) > 1 && !noted(with.Options[k].Moves) {
					t.Errorf("%s, %s, plan %d: nothing says when to offer it up", j.Name, prefer, i)
				}
			}
		}
	}
	if plans < 20 {
		t.Errorf("only %d plans to try", plans)
	}
}

func noted(moves []trim.Move) bool {
	for i := range moves {
		if moves[i].Note == OfferUp {
			return i > 0
		}
	}
	return false
}

// The same job has the same advice, all at once or in slices.
func TestAdviceIsTheSameAgain(t *testing.T) {
	for _, j := range demoJobs(t) {
		first := Advice(&j, AdviceWishes{})
		again := j.Clone()
		w := StartAdvice(&again, AdviceWishes{})
		slices := 1
		for ; !w.Step(); slices++ {
		}
		if !reflect.DeepEqual(first, w.Advice()) {
			t.Errorf("%s: advised otherwise the second time", j.Name)
		}
		if slices < 2 {
			t.Errorf("%s: done in one slice", j.Name)
		}
	}
}

// What a plan's moves do for keeps leaves nothing to advise.
func TestAdviceOfWhatStands(t *testing.T) {
	j := must(t, demoText(t, "2-terrace-falling-head.json"))
	a := Advice(&j, AdviceWishes{})
	if a.Good || len(a.Plans) == 0 {
		t.Fatalf("%+v", a)
	}
	j.Made = a.Plans[0].Moves
	if b := Advice(&j, AdviceWishes{}); !b.Good {
		t.Errorf("made as advised, and now %+v", b.Findings)
	}
}

func demoText(t testing.TB, name string) string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("..", "testdata", "jobs", name))
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func TestForbiddenMovesAreNotAdvised(t *testing.T) {
	frame := map[trim.Kind]bool{trim.Restop: true, trim.Follow: true, trim.PlaneJamb: true, trim.PackJamb: true, trim.Threshold: true}
	hinges := map[trim.Kind]bool{trim.Sink: true, trim.Pack: true, trim.Set: true, trim.Shift: true, trim.Raise: true, trim.Rehinge: true}
	strip := map[trim.Kind]bool{trim.Splice: true, trim.Reuse: true}
	for _, j := range demoJobs(t) {
		for _, row := range []struct {
			wishes AdviceWishes
			not    map[trim.Kind]bool
		}{
			{AdviceWishes{KeepFrame: true}, frame},
			{AdviceWishes{KeepHinges: true}, hinges}, {AdviceWishes{NoStrip: true, Prefer: advise.MostEven}, strip},
		} {
			a := Advice(&j, row.wishes)
			for i := range a.Plans {
				for _, m := range a.Plans[i].Moves {
					if row.not[m.Kind] {
						t.Errorf("%s, %+v: %s is advised", j.Name, row.wishes, MoveText(m))
					}
				}
			}
		}
	}
}

// As much comes off one stile as off the other, at the foot and at the top.
func TestStilesAlike(t *testing.T) {
	j := must(t, demoText(t, "1-schoolroom-square.json"))
	for i := range j.Door.Leaf.Closing {
		j.Door.Leaf.Closing[i].Value += 5
	}
	j.Door.Leaf.Width += 5
	a := Advice(&j, AdviceWishes{StilesAlike: true})
	if len(a.Plans) == 0 {
		t.Fatalf("no plan: %+v", a.Conflict)
	}
	var off [door.Edges][2]float64
	for _, m := range a.Plans[0].Moves {
		if m.Kind == trim.Plane {
			off[m.Edge][0] += m.First
			off[m.Edge][1] += m.Last
		}
	}
	if off[door.HingeSide] != off[door.LatchSide] || off[door.LatchSide][0] == 0 {
		t.Errorf("off the hanging stile %v, off the closing stile %v", off[door.HingeSide], off[door.LatchSide])
	}
}

// The top rail ends as high as the one beside it, to half a step.
func TestTopRailLikeItsNeighbour(t *testing.T) {
	j := must(t, demoText(t, "2-terrace-falling-head.json"))
	want, has := j.NeighbourTopRail()
	if !has || want != 1968-1879 {
		t.Fatalf("%v, %v", want, has)
	}
	j.Neighbour[2].To -= 3 // at both its ends, under a head that slopes: wide gaps must do
	want -= 3
	j.Wanted.Gaps[door.HeadSide].Most = 12
	a := Advice(&j, AdviceWishes{TopRail: true})
	if len(a.Plans) == 0 {
		t.Fatalf("no plan: %+v", a.Conflict)
	}
	for i := range a.Plans {
		is := j.Stands().with(a.Plans[i].Moves)
		l, rails := &is.Door.Leaf, is.Anatomy.Rails
		if got := l.Top.At(l.Width/2) - rails[len(rails)-1].From; math.Abs(got-want) > 0.3 {
			t.Errorf("%s: the top rail ends %v high, wanted %v", a.Plans[i].Family, got, want)
		}
	}
	j.Neighbour = nil
	if _, has := j.NeighbourTopRail(); has {
		t.Error("a neighbour where there is none")
	}
}

// Amounts in inches are whole 64ths at the least, and packers such as can be had.
func TestAdviceInInches(t *testing.T) {
	for _, j := range demoJobs(t)[:7] { // exact shapes: nothing finer is taken
		a := Advice(&j, AdviceWishes{Inches: true})
		for i := range a.Plans {
			for _, m := range a.Plans[i].Moves {
				if m.Kind == trim.Bevel {
					continue // its step is that of the arris
				}
				for _, mm := range []float64{m.First, m.Last} {
					if n := mm / 25.4 * 64; math.Abs(n-math.Round(n)) > 1e-6 {
						t.Errorf("%s: %v mm is no 64th of an inch in %s", j.Name, mm, MoveText(m))
					}
				}
			}
		}
	}
}

// A rated leaf is given no advice, nor is one held to a rated leaf's limits.
func TestRatedLeafIsRefused(t *testing.T) {
	j := must(t, demoText(t, "2-terrace-falling-head.json"))
	held := j.Clone()
	j.Anatomy.Rated = true
	for _, p := range Presets() {
		if p.Status == Inspection {
			held.WantedName = p.Name
		}
	}
	for _, j := range []Job{j, held} {
		if a := Advice(&j, AdviceWishes{}); a.Refused == nil || a.Refused.About != trim.Rated || len(a.Plans) > 0 {
			t.Errorf("%s, %s: %+v", j.Name, j.WantedName, a)
		}
	}
}

// Readings that make no door that can be hung have no advice.
func TestNoDoorNoAdvice(t *testing.T) {
	j := Measure(Blank(762, 1981, 40))
	if a := Advice(&j, AdviceWishes{}); !reflect.DeepEqual(a, advise.Advice{}) {
		t.Errorf("%+v", a)
	}
}

// A leaf is offered up when its gaps were read at jambs and head, as it stands.
func TestOffered(t *testing.T) {
	read := func(side survey.Side, after int) Reading {
		return Reading{Kind: survey.GapRead, Side: side, After: after}
	}
	all := []Reading{read(survey.Hinge, 1), read(survey.Latch, 1), read(survey.Head, 1)}
	off := append([]Reading(nil), all...)
	off[2].Off = true
	made := []trim.Move{{Kind: trim.Sink}}
	for _, row := range []struct {
		what     string
		readings []Reading
		made     []trim.Move
		offered  bool
	}{
		{"after the move made", all, made, true},
		{"before it was made", all, nil, false},
		{"none at the head", all[:2], made, false},
		{"the head's put off", off, made, false},
		{"nothing read", nil, nil, false},
	} {
		if j := (&Job{Readings: row.readings, Made: row.made}); j.offered() != row.offered {
			t.Errorf("%s: offered %v", row.what, !row.offered)
		}
	}
}

// A plan's name that another option has is numbered, and a full list takes no more.
func TestAdvisedOptionsAreNamedApart(t *testing.T) {
	j := must(t, demoText(t, "2-terrace-falling-head.json"))
	o := Option{Name: "Plane only", Moves: []trim.Move{{Kind: trim.Plane, Edge: door.HeadSide, Last: 6}}}
	var err error
	for range 2 {
		if j, err = (Form{}).AddOption(j, OptionText(o)); err != nil {
			t.Fatal(err)
		}
	}
	if n := len(j.Options); j.Options[n-2].Name != "Plane only" || j.Options[n-1].Name != "Plane only 2" {
		t.Errorf("%q, %q", j.Options[n-2].Name, j.Options[n-1].Name)
	}
	for len(j.Options) < OptionsMost {
		if j, err = (Form{}).AddOption(j, OptionText(o)); err != nil {
			t.Fatal(err)
		}
	}
	if _, err = (Form{}).AddOption(j, OptionText(o)); err == nil || !strings.Contains(err.Error(), "as many as there can be") {
		t.Errorf("one too many: %v", err)
	}
}

// BenchmarkAdvice gives the time of all plans of each demo job from when they are asked
// for, how well its gaps are known included.
func BenchmarkAdvice(b *testing.B) {
	for _, j := range demoJobs(b) {
		b.Run(j.Name, func(b *testing.B) {
			for b.Loop() {
				Advice(&j, AdviceWishes{})
			}
		})
	}
}
