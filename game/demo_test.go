package game_test

import (
	"testing"

	"leafwright/game"
	"leafwright/game/internal/demos"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/survey"
)

// fault is a finding that a demo is there to show.
type fault struct {
	subject judge.Subject
	edge    fit.Edge
	verdict judge.Verdict
}

// Each demo shows just its own fault; whatever is not listed is good.
var shown = []struct {
	file   string
	faults []fault
	// looks tells what else the note sends a reader to look for.
	looks func(t *testing.T, j *game.Job, f *fit.Fit, found []judge.Finding)
}{
	{"1-schoolroom-square", nil, func(t *testing.T, j *game.Job, f *fit.Fit, _ []judge.Finding) {
		for e, g := range f.Gaps {
			if g.Most-g.Least > 1e-9 {
				t.Errorf("edge %d: a square door's gap runs from %v to %v", e, g.Least, g.Most)
			}
		}
	}},
	{"2-terrace-falling-head", []fault{
		{judge.ClosedGap, fit.HeadSide, judge.Binds}, {judge.ClosedGap, fit.HeadSide, judge.Slack},
	}, func(t *testing.T, j *game.Job, f *fit.Fit, found []judge.Finding) {
		g := &f.Gaps[fit.HeadSide]
		if end := g.Range().Hi; end-g.LeastAt > 1 || g.MostAt-g.Range().Lo > 1 {
			t.Errorf("binds worst at %v and gapes worst at %v of a head up to %v", g.LeastAt, g.MostAt, end)
		}
		for _, x := range found {
			if x.Verdict == judge.Good {
				continue
			}
			half := j.OpeningWidth / 2
			if x.Verdict == judge.Binds && x.Binding.Lo < half || x.Verdict == judge.Slack && x.Stretch.Hi > half {
				t.Errorf("%+v is not in its half of the head", x)
			}
		}
	}},
	{"3-farmhouse-leaf-in-wind", []fault{
		{judge.Latching, fit.LatchSide, judge.Binds}, {judge.StopGap, fit.LatchSide, judge.Slack}, {judge.StopGap, fit.HeadSide, judge.Slack},
	}, func(t *testing.T, j *game.Job, f *fit.Fit, _ []judge.Finding) {
		if at := f.Stops[fit.LatchSide].LeastAt; !f.StopBound || at > 100 {
			t.Errorf("stop-bound %v at %v up, not at the foot", f.StopBound, at)
		}
	}},
	{"4-chapel-frame-in-wind", []fault{
		{judge.Latching, fit.LatchSide, judge.Binds}, {judge.StopGap, fit.LatchSide, judge.Slack},
	}, func(t *testing.T, j *game.Job, f *fit.Fit, _ []judge.Finding) {
		if at := f.Stops[fit.LatchSide].LeastAt; !f.StopBound || at < j.OpeningHeight-100 {
			t.Errorf("stop-bound %v at %v up, not at the top", f.StopBound, at)
		}
		if j.Hand != game.Right {
			t.Error("this demo is the right-hung one")
		}
	}},
	{"5-mill-cottage-square-edge", []fault{{judge.SwingGap, fit.LatchSide, judge.Binds}},
		func(t *testing.T, j *game.Job, f *fit.Fit, _ []judge.Finding) {
			if s := f.Swing[fit.LatchSide]; s.Angle.Degrees() < 1 {
				t.Errorf("fouls at %v°, shut and not on the way", s.Angle.Degrees())
			}
			if least := f.Gaps[fit.LatchSide].Least; j.Wanted.Gaps[fit.LatchSide].Judge(least) != judge.Good {
				t.Errorf("shut, the latch gap is %v", least)
			}
			// the cure the note leads to: a bevel
			cured, err := game.Form{}.Set(*j, "leaf.bevel.closing", "3")
			if err != nil {
				t.Fatal(err)
			}
			fit.Evaluate(f, &cured.Door)
			if w := judge.Worst(judge.Findings(f, &cured.Door, &cured.Wanted)); w != judge.Good {
				t.Errorf("with a bevel of 3° the worst verdict is %v", w)
			}
		}},
	{"6-coach-house-rising-floor", []fault{{judge.SwingFloor, fit.FloorSide, judge.Binds}},
		func(t *testing.T, j *game.Job, f *fit.Fit, _ []judge.Finding) {
			if s := f.Swing[fit.FloorSide]; s.Angle.Degrees() < 45 {
				t.Errorf("drags worst at %v°", s.Angle.Degrees())
			}
			foot := f.Place(j.Door.Leaf.Corners(0).ClosingFoot, j.Door.Opens/2)
			if free := foot.Y - j.Door.Floor.At(foot.X, foot.Z); free < 0 {
				t.Errorf("half open, the closing foot is %v in the floor: it should bind part way", free)
			}
		}},
	{"7-station-house-hinge-bound", []fault{
		{judge.ClosedGap, fit.HingeSide, judge.Binds}, {judge.ClosedGap, fit.LatchSide, judge.Slack},
	}, func(t *testing.T, j *game.Job, f *fit.Fit, _ []judge.Finding) {
		// the cure: the same packer behind each hinge
		cured := *j
		for _, path := range []string{"hinges[0].leaf_packer", "hinges[1].leaf_packer"} {
			var err error
			if cured, err = (game.Form{}).Set(cured, path, "3.25"); err != nil {
				t.Fatal(err)
			}
		}
		fit.Evaluate(f, &cured.Door)
		if w := judge.Worst(judge.Findings(f, &cured.Door, &cured.Wanted)); w != judge.Good {
			t.Errorf("packed out, the worst verdict is %v", w)
		}
	}},
	{"8-weavers-cottage-readings", []fault{{judge.ClosedGap, fit.LatchSide, judge.Binds}},
		func(t *testing.T, j *game.Job, f *fit.Fit, found []judge.Finding) {
			const wrong = 1 // 776 for 767
			all := j.Misfits()
			if len(all) != 1 || len(all[0].Readings) != 1 || all[0].Readings[0] != wrong {
				t.Fatalf("does not fit: %+v", all)
			}
			slips := all[0].Judged[0].Slips
			if j.Readings[wrong].Value.Text != "776" || len(slips) == 0 || slips[0].Kind != survey.Transposed || slips[0].Value != 767 {
				t.Errorf("%+v may have been %+v", j.Readings[wrong], slips)
			}
			if at := f.Gaps[fit.LatchSide].LeastAt; at < 1900 {
				t.Errorf("binds worst %v up", at)
			}
			j.Sure(false).Weigh(found)
			if b := found[0]; b.Odds[judge.Binds] < 0.5 || b.Odds[judge.Binds] > 0.95 || b.Margin < 0.5 {
				t.Errorf("binds ± %v, %v", b.Margin, b.Odds)
			}
		}},
	{"9-ferry-house-feelers", []fault{{judge.ClosedGap, fit.HeadSide, judge.Binds}},
		func(t *testing.T, j *game.Job, f *fit.Fit, found []judge.Finding) {
			if j.Hand != game.Right || len(j.Misfits()) != 0 {
				t.Errorf("hung on the %s, does not fit: %+v", j.Hand, j.Misfits())
			}
			if at := f.Gaps[fit.HeadSide].LeastAt; at < j.OpeningWidth-50 {
				t.Errorf("binds worst %v across", at)
			}
			// nothing goes into a gap that binds
			if next := j.Sure(false); next.HasNext && next.Next.Reading.Kind == survey.GapRead && next.Next.Now.Value < 0.2 {
				t.Errorf("to measure next: %+v", next.Next)
			}
			// the feelers make the gaps surer than tape and level had them
			j.Sure(false).Weigh(found)
			before := *j
			before.Readings = nil
			for _, r := range j.Readings {
				if r.Kind != survey.GapRead && r.Kind != survey.Rub {
					before.Readings = append(before.Readings, r)
				}
			}
			before, err := game.Parse(game.Encode(before))
			if err != nil {
				t.Fatal(err)
			}
			was, is := before.Survey.Gaps(), j.Survey.Gaps()
			for _, e := range []fit.Edge{fit.HingeSide, fit.LatchSide} {
				if a, b := was.At(e, 1850), is.At(e, 1850); !(b.Margin() < 0.7*a.Margin()) {
					t.Errorf("edge %d: ± %v before, ± %v after", e, a.Margin(), b.Margin())
				}
			}
		}},
	{"10-harbour-house-repairs", nil, func(t *testing.T, j *game.Job, f *fit.Fit, _ []judge.Finding) {
		stands := j.Stands()
		plan := game.FittingOf(j, &stands, game.WhereOf(j))
		if plan.Season == nil || plan.Season.Tight != 0 || plan.Season.Slack != 6 || plan.Gaps[fit.LatchSide].Paint < 0.1 {
			t.Fatalf("%+v", plan)
		}
		gap := f.Gaps[fit.LatchSide].Least
		if w := plan.Wanted.Gaps[fit.LatchSide]; w.Judge(gap) != judge.Tight || w.Judge(gap+1.1) != judge.Good {
			t.Errorf("a gap of %v today, where %+v is wanted at fitting", gap, w)
		}
		if len(j.Voids) != 3 || len(j.Options) != 3 {
			t.Errorf("%d bad places, %d options", len(j.Voids), len(j.Options))
		}
	}},
}

func TestDemos(t *testing.T) {
	if n := len(demos.Names(t)); n != len(shown) {
		t.Errorf("%d demo jobs, %d known here", n, len(shown))
	}
	for _, d := range shown {
		t.Run(d.file, func(t *testing.T) {
			j := demos.Job(t, d.file)
			if j.Name == "" || len(j.Note) < 60 {
				t.Errorf("name %q, note %q", j.Name, j.Note)
			}
			if a := &j.Anatomy; len(a.Rails) < 3 || a.Timber == "" || a.Lock.Kind == "" {
				t.Errorf("a demo's leaf is drawn in full: %+v", a)
			}
			if _, _, err := j.Shapes(); err != nil {
				t.Fatal(err)
			}
			var f fit.Fit
			fit.Evaluate(&f, &j.Door)
			found := judge.Findings(&f, &j.Door, &j.Wanted)
			wanted := map[fault]bool{}
			for _, x := range d.faults {
				wanted[x] = true
			}
			for _, x := range found {
				is := fault{x.Subject, x.Edge, x.Verdict}
				if x.Verdict != judge.Good && !wanted[is] {
					t.Errorf("shows what it should not: %+v, worst %v at %v", is, x.Worst, x.At)
				}
				delete(wanted, is)
			}
			for x := range wanted {
				t.Errorf("does not show %+v", x)
			}
			d.looks(t, &j, &f, found)
		})
	}
}
