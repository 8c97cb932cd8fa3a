package words

import (
	"reflect"
	"strings"
	"testing"

	"leafwright/geom"
	"leafwright/geom/advise"
	"leafwright/geom/door"
	"leafwright/geom/judge"
	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

var (
	sink   = trim.Move{Kind: trim.Sink, Hinge: 1, On: trim.OnLeaf, First: 1}
	pack   = trim.Move{Kind: trim.Pack, On: trim.OnLeaf, First: 3}
	plane  = trim.Move{Kind: trim.Plane, Edge: door.HeadSide, Last: 4}
	bevel  = trim.Move{Kind: trim.Bevel, Edge: door.LatchSide, Angle: 3 * geom.Degree}
	scribe = trim.Move{Kind: trim.Scribe, Edge: door.HeadSide, Line: geom.Through(0, 0, 762, 3)}
	splice = trim.Move{Kind: trim.Splice, Edge: door.HeadSide, First: 12, Last: 12, Stock: 38}
	restop = trim.Move{Kind: trim.Restop, Edge: door.LatchSide, First: 2, Last: 2}

	packJamb  = trim.Move{Kind: trim.PackJamb, Edge: door.LatchSide, First: 6, Last: 6}
	packHead  = trim.Move{Kind: trim.PackJamb, Edge: door.HeadSide, First: 6, Last: 6}
	planeHead = trim.Move{Kind: trim.PlaneJamb, Edge: door.HeadSide, Last: 3}
)

func TestPlanTitles(t *testing.T) {
	for _, row := range []struct {
		region Region
		family advise.Family
		moves  []trim.Move
		says   string
	}{
		{UK, advise.PlaneOnly, []trim.Move{plane}, "Plane only"},
		{UK, advise.PlaneOnly, []trim.Move{plane, bevel}, "Plane only"},
		{UK, advise.PlaneOnly, []trim.Move{bevel}, "Bevel only"},
		{UK, advise.HingesOnly, []trim.Move{pack, sink}, "Hinges and packers, no timber off the edges"},
		{US, advise.HingesOnly, []trim.Move{pack, sink}, "Hinges and shims, no timber off the edges"},
		{UK, advise.HingesOnly, []trim.Move{sink}, "Hinges only, no timber off the edges"},
		{UK, advise.HingesOnly, []trim.Move{pack}, "Packers only, no timber off"},
		{US, advise.HingesOnly, []trim.Move{pack}, "Shims only, no timber off"},
		{UK, advise.HingePlane, []trim.Move{sink, plane}, "Hinges and plane"},
		{UK, advise.HingePlane, []trim.Move{pack, plane}, "Packers and plane"},
		{US, advise.HingePlane, []trim.Move{pack, sink, plane}, "Hinges, shims and plane"},
		{UK, advise.ScribeOnly, []trim.Move{scribe}, "Plane to a scribed line"},
		{UK, advise.ScribeOnly, []trim.Move{sink, scribe}, "Plane to a scribed line and work the hinges"},
		{UK, advise.Splice, []trim.Move{splice}, "Splice a strip onto the top"},
		{US, advise.Splice, []trim.Move{splice, pack}, "Splice a strip onto the top and work the shims"},
		{UK, advise.StopsOnly, []trim.Move{restop}, "Move the stops, leave the leaf as it is"},
		{UK, advise.StopsToo, []trim.Move{restop, sink}, "Move the stops and work the hinges"},
		{UK, advise.StopsToo, []trim.Move{restop, plane}, "Move the stops and plane"},
		{UK, advise.StopsToo, []trim.Move{restop, plane, sink}, "Move the stops, plane and work the hinges"},
		{UK, advise.JambsToo, []trim.Move{packJamb}, "Pack out the latch jamb"},
		{UK, advise.JambsToo, []trim.Move{plane, packJamb}, "Pack out the latch jamb, plane the leaf"},
		{US, advise.JambsToo, []trim.Move{sink, plane, planeHead}, "Plane the head, plane and work the hinges"},
		{UK, advise.JambsToo, []trim.Move{pack, packJamb, packHead}, "Pack out the latch jamb and the head and work the packers"},
	} {
		p := &advise.Plan{Family: row.family, Strip: door.HeadSide, Moves: row.moves}
		if got := speaker(row.region).PlanTitle(p); got != row.says {
			t.Errorf("got  %s\nwant %s", got, row.says)
		}
	}
}

func TestPlanCosts(t *testing.T) {
	for _, row := range []struct {
		region Region
		gains  []int // the hinge of each step
		cost   advise.Cost
		says   string
	}{
		{UK, nil, advise.Cost{Minutes: 16, Uneven: 0.5}, "No timber goes; about 15 min. The gaps at jambs and head end within 0.5 mm of each other."},
		{UK, []int{0, 1, 1}, advise.Cost{Timber: 80, Most: 6, Minutes: 58, Uneven: 0.97}, "80 cm³ of the leaf goes, 6 mm off where it is most; two recesses cut anew; about 60 min. The gaps at jambs and head end within 1 mm of each other."},
		{AU, []int{2}, advise.Cost{Timber: 0.8, Frame: true, Minutes: 50}, "0.8 cm³ of the leaf goes; one check-out cut anew; the frame is touched; about 50 min. The gaps at jambs and head end alike."},
		{US, []int{2, 0, 1}, advise.Cost{Timber: 130, Most: 4, Strips: 1, Minutes: 150, Uneven: 1}, "130 cm³ of the leaf goes, 4 mm off where it is most; one strip glued on; three gains cut anew; about 2.5 h. The gaps at jambs and head end within 1 mm of each other."},
	} {
		p := &advise.Plan{Cost: row.cost}
		for _, h := range row.gains {
			p.Steps = append(p.Steps, trim.Step{Done: trim.Done{Gains: []int{h}}})
		}
		if got := speaker(row.region).PlanCost(p); got != row.says {
			t.Errorf("got  %s\nwant %s", got, row.says)
		}
	}
	inch := speaker(US)
	inch.Length, inch.Place = Inches, InchPlace
	want := `80 cm³ of the leaf goes, 1/4" off where it is most; about 15 min. The gaps at jambs and head end within 1/32" of each other.`
	if got := inch.PlanCost(&advise.Plan{Cost: advise.Cost{Timber: 80, Most: 6.35, Minutes: 15, Uneven: 0.8}}); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

func TestPlanSure(t *testing.T) {
	for _, row := range []struct {
		sure float64
		read bool
		says string
	}{
		{1, false, ""},
		{0.3, false, ""},
		{1, true, "Done so, the gaps come out within their limits as good as surely."},
		{0.52, true, "Readings and hand being what they are, the gaps come out within their limits with a chance of about 50\u00a0%, or else after one trim more."},
		{0.02, true, "Limits so narrow ask for more than readings and hand can be trusted with: expect to trim once or twice more."},
	} {
		if got := speaker(UK).PlanSure(&advise.Plan{Sure: row.sure}, row.read); got != row.says {
			t.Errorf("got  %s\nwant %s", got, row.says)
		}
	}
}

// What moves bring that is to be minded is said once, with the moves that bring it.
func TestPlanCares(t *testing.T) {
	out, keep := trim.Care{About: trim.PackerOut}, trim.Care{About: trim.KeepOff, Left: 2}
	p := &advise.Plan{Steps: []trim.Step{
		{Done: trim.Done{Cares: []trim.Care{out, out}}}, {}, {Done: trim.Done{Cares: []trim.Care{keep, out}}},
	}}
	s := speaker(UK)
	got := s.PlanCares(p)
	want := []string{"Take care at moves 1 and 3: " + s.Care(&out) + ".", "Take care at move 3: " + s.Care(&keep) + "."}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
	if len(s.PlanCares(&advise.Plan{})) > 0 {
		t.Error("a plan not tried brings something")
	}
}

// Every move says what it is for, and what there would be without it.
func TestPlanMoves(t *testing.T) {
	head := judge.Finding{Subject: judge.ClosedGap, Edge: door.HeadSide, Verdict: judge.Binds, Worst: -2}
	more := head
	more.Worst = -4
	slack := judge.Finding{Subject: judge.StopGap, Edge: door.HingeSide, Verdict: judge.Slack, Worst: 6.6, Limits: judge.Limits{Most: 4}}
	a := &advise.Advice{Findings: []judge.Finding{head}}
	p := &advise.Plan{Moves: []trim.Move{plane, plane, sink, sink}, Why: []advise.Cure{
		{Cures: 0, Needed: true, Without: more}, {Cures: 0, Needed: true, Without: head}, {Cures: -1, Needed: true, Without: slack}, {Cures: -1},
	}}
	for i, want := range []string{
		"Plane the top: 4 mm at the latch corner, tapering to nothing at the hinge corner. It cures this: the leaf binds by 2 mm at the head. Without it the leaf binds by 4 mm at the head.",
		"Plane the top: 4 mm at the latch corner, tapering to nothing at the hinge corner. It cures this: the leaf binds by 2 mm at the head. Without it that stays so.",
		"Sink the top hinge 1 mm deeper in the leaf. The rest calls for it: without it the leaf stands 6.6 mm off the stop at the hinge side.",
		"Sink the top hinge 1 mm deeper in the leaf. Nothing would be out of its limits without it: it makes the rest surer or more even.",
	} {
		if got := speaker(UK).PlanMove(p, i, a); got != want {
			t.Errorf("got  %s\nwant %s", got, want)
		}
	}
	bare := &advise.Plan{Moves: []trim.Move{sink}} // before it has its reasons
	if got := speaker(UK).PlanMove(bare, 0, a); got != "Sink the top hinge 1 mm deeper in the leaf." {
		t.Error(got)
	}
}

func TestFindingsInBrief(t *testing.T) {
	limits := judge.Limits{Least: 2, Target: 2.5, Most: 3}
	for _, row := range []struct {
		region  Region
		subject judge.Subject
		edge    door.Edge
		verdict judge.Verdict
		worst   float64
		says    string
	}{
		{UK, judge.ClosedGap, door.HingeSide, judge.Binds, -1.5, "the leaf is hinge-bound by 1.5 mm"},
		{US, judge.ClosedGap, door.LatchSide, judge.Binds, -1.5, "the leaf binds by 1.5 mm at the lock side"},
		{UK, judge.ClosedGap, door.HeadSide, judge.Tight, 0.4, "the gap at the head is 0.4 mm"},
		{UK, judge.ClosedGap, door.HeadSide, judge.Tight, 1.97, "the gap at the head is just under 2 mm"},
		{UK, judge.ClosedGap, door.FloorSide, judge.Slack, 17, "the gap at the floor gapes to 17 mm"},
		{UK, judge.ClosedGap, door.LatchSide, judge.Slack, 3.02, "the gap at the latch side gapes to just over 3 mm"},
		{UK, judge.StopGap, door.LatchSide, judge.Binds, -0.7, "the leaf bears on the stop at the latch side by 0.7 mm"},
		{UK, judge.StopGap, door.HeadSide, judge.Tight, 0.3, "the leaf is 0.3 mm from the stop at the head"},
		{UK, judge.StopGap, door.HeadSide, judge.Slack, 8, "the leaf stands 8 mm off the stop at the head"},
		{UK, judge.Latching, door.LatchSide, judge.Binds, 2, "the latch is 2 mm short of the keep"},
		{US, judge.Latching, door.LatchSide, judge.Binds, 2, "the latch is 2 mm short of the strike"},
		{UK, judge.Latching, door.LatchSide, judge.Tight, 0, "the latch comes home only when pressed"},
		{UK, judge.SwingGap, door.LatchSide, judge.Binds, -1, "the leaf fouls the latch side by 1 mm as it swings"},
		{UK, judge.SwingGap, door.HeadSide, judge.Tight, 0.2, "the leaf passes the head by only 0.2 mm as it swings"},
		{UK, judge.SwingFloor, door.FloorSide, judge.Binds, -3.9, "the leaf drags on the floor by 3.9 mm"},
		{UK, judge.SwingFloor, door.FloorSide, judge.Tight, 1, "the leaf clears the floor by only 1 mm as it swings"},
		{UK, judge.HingeLine, door.HingeSide, judge.Tight, 2, "the hinges are out of line by 2 mm"},
		{UK, judge.ClearWay, door.LatchSide, judge.Tight, 744, "the clear way is only 744 mm"},
	} {
		f := judge.Finding{Subject: row.subject, Edge: row.edge, Verdict: row.verdict, Worst: row.worst, Limits: limits}
		if got := speaker(row.region).brief(&f); got != row.says {
			t.Errorf("got  %s\nwant %s", got, row.says)
		}
	}
}

func TestPlanStages(t *testing.T) {
	first, rest := plane, plane
	first.Last, rest.Last = 2.5, 1.5
	p := &advise.Plan{Stages: []advise.Stage{
		{Moves: []trim.Move{sink, first}, Read: []survey.Reading{
			{Kind: survey.GapRead, Side: survey.Head, At: 703}, {Kind: survey.GapRead, Side: survey.Latch, At: 1931},
			{Kind: survey.GapRead, Side: survey.Head, At: 383}, {Kind: survey.GapRead, Side: survey.Head, At: 62},
			{Kind: survey.StopGap, Side: survey.Hinge, At: 30}, {Kind: survey.StopGap, Side: survey.Hinge, At: 1990},
		}},
		{Moves: []trim.Move{rest}},
	}}
	want := []string{
		"First, which is safe at once: Sink the top hinge 1 mm deeper in the leaf; Plane the top: 2.5 mm at the lock corner, tapering to nothing at the hinge corner.",
		"Offer the leaf up and read these gaps by feeler: at the head, 60 mm, 380 mm and 700 mm from the hinge jamb; at the lock side, 1930 mm up; and between the leaf and the stop at the hinge side, 30 mm and 1990 mm up. Add them to the readings and ask again: the rest may come out a little more or less.",
		"The rest, as far as is known now: Plane the top: 1.5 mm at the lock corner, tapering to nothing at the hinge corner.",
	}
	if got := speaker(US).PlanStages(p); strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	p.Stages = p.Stages[:1]
	if got := speaker(UK).PlanStages(p); got != nil {
		t.Errorf("one go: %q", got)
	}
}

func TestAdviceHeadlines(t *testing.T) {
	for _, row := range []struct {
		advice advise.Advice
		says   string
	}{
		{advise.Advice{Good: true}, "It fits as it is: nothing needs doing."},
		{advise.Advice{Refused: &trim.Care{About: trim.Rated}}, "A rated or labelled leaf takes no trimming, splicing or gains: its certificate and label decide. No advice is given: ask whoever holds the certificate."},
		{advise.Advice{Plans: make([]advise.Plan, 1)}, "One way was found to make it fit."},
		{advise.Advice{Good: true, JustGood: true}, "It fits as it is by what was read, but only just: nothing that can be worked makes surer of it."},
		{advise.Advice{JustGood: true, Plans: make([]advise.Plan, 1)}, "It fits as it is by what was read, but so narrowly that a gap is likely out of its limits. One way was found to make sure of it."},
		{advise.Advice{JustGood: true, Plans: make([]advise.Plan, 2)}, "It fits as it is by what was read, but so narrowly that a gap is likely out of its limits. Two ways were found to make sure of it."},
		{advise.Advice{Plans: make([]advise.Plan, 3)}, "Three ways were found to make it fit, the best of them by your wishes first."},
		{advise.Advice{Plans: []advise.Plan{{Family: advise.PlaneOnly}, {Family: advise.JambsToo}}}, "Two ways were found to make it fit, the best of them by your wishes first; those that work the frame stand last."},
		{advise.Advice{Plans: make([]advise.Plan, 1), Frame: true}, "One way was found to make it fit; none that leaves the frame alone."},
		{advise.Advice{Conflict: new(advise.Conflict)}, "No way was found to make it fit within these limits and wishes."},
		{advise.Advice{}, "There is no door here that can be hung, so there is nothing to advise."},
	} {
		if got := speaker(UK).AdviceHeadline(&row.advice); got != row.says {
			t.Errorf("got  %s\nwant %s", got, row.says)
		}
	}
}

func TestConflicts(t *testing.T) {
	gap := func(e door.Edge, upper bool, by float64, enough bool) advise.Relax {
		return advise.Relax{Limit: advise.Limit{Sort: advise.GapLimit, Edge: e, Upper: upper}, By: by, Enough: enough}
	}
	wish := func(s advise.Sort, enough bool) advise.Relax {
		return advise.Relax{Limit: advise.Limit{Sort: s}, Enough: enough}
	}
	for _, row := range []struct {
		region   Region
		conflict advise.Conflict
		says     []string
	}{
		{UK, advise.Conflict{}, []string{"Nothing that planing, packing and moving hinges and stops can do was found to bring the leaf into this opening without binding."}},
		{UK, advise.Conflict{Missed: []advise.Relax{gap(door.HeadSide, true, 0.12, false), gap(door.LatchSide, false, 0.3, false)}},
			[]string{"Amounts that can be worked come near and no nearer: of what was tried the best leaves the gap at the head 0.2 mm over the most wanted and the gap at the latch side 0.3 mm under the least wanted."}},
		{UK, advise.Conflict{Oversize: []advise.Oversize{{By: 138, May: 80}, {Upright: true, By: 118, May: 12, Care: &trim.Care{About: trim.TooLittle, Member: trim.Member{Part: trim.Stile}, Left: 40, Need: 45}}}}, []string{
			"The leaf is 138 mm too wide for the opening and the least gaps wanted: more than the 80 mm that might come off both stiles. A leaf so much too big is made anew.",
			"The leaf is 118 mm too high for the opening and the least gaps wanted: no more than 12 mm may come off top and foot. Too little stays of the hanging stile: 40 mm is left, 45 mm is wanted."}},
		{UK, advise.Conflict{Care: &trim.Care{About: trim.TooLittle, Member: trim.Member{Part: trim.Stile}, Left: 40, Need: 45}},
			[]string{"The gaps could be had, but not from the timber there is. Too little stays of the hanging stile: 40 mm is left, 45 mm is wanted."}},
		{UK, advise.Conflict{Limits: []advise.Relax{gap(door.FloorSide, true, 2.8547, true)}, Together: []advise.Relax{gap(door.FloorSide, true, 2.8547, false)}}, []string{
			"The most wanted for the gap at the floor cannot be had by planing, packing and moving hinges and stops, unless something binds.",
			"The least that would do: let the gap at the floor be 2.9 mm more than the most wanted."}},
		{US, advise.Conflict{
			Limits:   []advise.Relax{gap(door.LatchSide, false, 1.01, true), wish(advise.HingesStay, true), wish(advise.StilesAlike, false)},
			Together: []advise.Relax{gap(door.LatchSide, false, 0.5, false), gap(door.HingeSide, true, 0.31, false)}}, []string{
			"These cannot all be had: the least wanted for the gap at the lock side, nothing done to the hinges and as much off one stile as off the other.",
			"The least that would do: let the gap at the lock side be 1.1 mm less than the least wanted; or let the hinges be worked.",
			"Or all of these, a little each: let the gap at the lock side be 0.5 mm less than the least wanted; let the gap at the hinge side be 0.4 mm more than the most wanted."}},
		{UK, advise.Conflict{
			Limits: []advise.Relax{
				{Limit: advise.Limit{Sort: advise.StopLimit, Edge: door.HeadSide, Upper: true}, By: 2, Enough: true},
				{Limit: advise.Limit{Sort: advise.SwingLimit, Edge: door.FloorSide}, By: 1, Enough: true},
				{Limit: advise.Limit{Sort: advise.SwingLimit, Edge: door.LatchSide}, By: 0.5, Enough: true},
				{Limit: advise.Limit{Sort: advise.HingeLimit}, By: 1, Enough: true},
				{Limit: advise.Limit{Sort: advise.WayLimit}, By: 10, Enough: true},
				wish(advise.StilesAlike, true), wish(advise.TopRail, true), wish(advise.FrameStays, true), wish(advise.NoStrip, true)},
			Care: &trim.Care{About: trim.Rated}}, []string{
			"These cannot all be had: the most wanted between the leaf and the stop at the head, the least wanted over the floor as it swings, the least wanted past the latch side as it swings, " +
				"hinges as far apart on the leaf as on the jamb, the clear way wanted, as much off one stile as off the other, a top rail as high as its neighbour, nothing done to the frame and no strip glued on.",
			"The least that would do: let the gap to the stop at the head be 2 mm more than the most wanted; or let the leaf clear the floor by 1 mm less than the least wanted as it swings; " +
				"or let the leaf pass the latch side by 0.5 mm less than the least wanted as it swings; or let the hinges be 1 mm out of line; or let the clear way be 10 mm narrower; " +
				"or let one stile lose more than the other; or let the top rail differ from its neighbour; or let the frame be worked; or let a strip be glued on.",
			"What forbade more: A rated or labelled leaf takes no trimming, splicing or gains: its certificate and label decide."}},
		{UK, advise.Conflict{
			Limits:   []advise.Relax{gap(door.LatchSide, false, 0, false), gap(door.HingeSide, false, 0, false)},
			Together: []advise.Relax{gap(door.LatchSide, false, 1, false), gap(door.HingeSide, false, 0.5, false)}}, []string{
			"These cannot all be had: the least wanted for the gap at the latch side and the least wanted for the gap at the hinge side.",
			"The least that would do, all together: let the gap at the latch side be 1 mm less than the least wanted; let the gap at the hinge side be 0.5 mm less than the least wanted."}},
	} {
		if got := speaker(row.region).Conflict(&row.conflict); strings.Join(got, "\n") != strings.Join(row.says, "\n") {
			t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(row.says, "\n"))
		}
	}
}

// In inches a limit gives way by whole 64ths, never by too little.
func TestRelaxedInInches(t *testing.T) {
	inch := speaker(US)
	inch.Length = Inches
	r := &advise.Relax{Limit: advise.Limit{Sort: advise.GapLimit, Edge: door.FloorSide, Upper: true}, By: 2.8}
	if got := inch.relaxed(r); got != `let the gap at the floor be 1/8" more than the most wanted` { // 2.8 mm is 7.06/64
		t.Error(got)
	}
}

func TestPreferences(t *testing.T) {
	want := map[advise.Preference]string{
		"": "least timber", advise.LeastTimber: "least timber", advise.MostEven: "most even gaps", advise.Quickest: "quickest", advise.LeaveFrame: "leave the frame alone"}
	for p, says := range want {
		if got := PreferenceWord(p); got != says {
			t.Errorf("%q is called %q", p, got)
		}
	}
	for _, p := range advise.Preferences {
		if want[p] == "" {
			t.Errorf("%q has no word", p)
		}
	}
}

// A leaf that something holds open stands off its stops by no figure worth telling.
func TestHeldOpenTellsNoFigure(t *testing.T) {
	s := Speaker{Lexicon: For(UK)}
	f := judge.Finding{Subject: judge.StopGap, Edge: door.HeadSide, Verdict: judge.Slack, Worst: 45.9, Limits: judge.Limits{Least: 0.5, Target: 2, Most: 4}}
	if got := s.brief(&f); got != "the leaf is held open, off the stop at the head" {
		t.Error(got)
	}
	f.Worst = 14.2
	if got := s.brief(&f); got != "the leaf stands 14.2 mm off the stop at the head" {
		t.Error(got)
	}
}

// What is just beyond its limit never reads like the limit, read off or not.
func TestJustBeyondWithMargin(t *testing.T) {
	s := Speaker{Lexicon: For(UK)}
	f := judge.Finding{Subject: judge.ClosedGap, Edge: door.HingeSide, Verdict: judge.Tight, Worst: 1.97, Margin: 3.1, Limits: judge.Limits{Least: 2, Target: 2.5, Most: 3}}
	if got := s.Finding(f).Figure; got != "just under 2.0 ± 3.1 mm" {
		t.Error(got)
	}
	f.Verdict, f.Worst = judge.Slack, 3.02
	if got := s.Finding(f).Figure; got != "just over 3.0 ± 3.1 mm" {
		t.Error(got)
	}
}
