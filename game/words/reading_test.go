package words

import (
	"flag"
	"math"
	"os"
	"strings"
	"testing"

	"leafwright/game/measure"
	"leafwright/geom"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/survey"
)

var update = flag.Bool("update", false, "write the golden words anew")

// every is a reading of every kind, on every side it can be of.
func every() (all []survey.Reading) {
	for _, spec := range survey.Kinds {
		r := survey.Reading{Kind: spec.Kind}
		if spec.Needs&survey.NeedAt != 0 {
			r.At = 400
		}
		if spec.Needs&survey.NeedSpan != 0 {
			r.From, r.To = 50, 700
		}
		switch {
		case spec.Needs&survey.NeedSide != 0:
			for _, s := range spec.Sides {
				r.Side = s
				all = append(all, r)
			}
		case spec.Needs&survey.NeedHinge != 0:
			for r.Hinge = range 3 {
				all = append(all, r)
			}
		case spec.Needs&survey.NeedRail != 0:
			for r.Rail = range 3 {
				all = append(all, r)
			}
		case spec.Needs&survey.NeedAngle != 0:
			for _, a := range []geom.Angle{0, 45, 90} {
				r.Angle = a * geom.Degree
				all = append(all, r)
			}
		default:
			all = append(all, r)
		}
	}
	return all
}

// What a card asks and what a reading is called, for every kind, by region.
func TestReadingsInWords(t *testing.T) {
	const golden = "testdata/readings.txt"
	var b strings.Builder
	for _, region := range Regions {
		s := Speaker{Lexicon: For(region), Hinges: 3}
		b.WriteString("== " + string(region) + "\n")
		seen := map[string]bool{}
		for _, r := range every() {
			ask, thing := s.Ask(r), s.Thing(r)
			if seen[ask] || seen[thing] {
				t.Errorf("said twice: %s, %s", ask, thing)
			}
			seen[ask], seen[thing] = true, true
			if ask == string(r.Kind) || thing == string(r.Kind) || !strings.HasSuffix(ask, ".") || !strings.HasPrefix(thing, "the ") {
				t.Errorf("%s: %s, %s", r.Kind, ask, thing)
			}
			b.WriteString(ask + "\n    " + thing + "\n")
		}
	}
	if *update {
		if err := os.WriteFile(golden, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if got := b.String(); got != string(want) {
		t.Errorf("not as in %s; after a change of wording write it anew with -update and read it through\n%s", golden, difference(got, string(want)))
	}
}

// difference gives the first lines that differ.
func difference(got, want string) string {
	a, b := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range a {
		if i >= len(b) || a[i] != b[i] {
			return "got  " + a[i] + "\nwant " + strings.Join(b[min(i, len(b)-1):min(i+1, len(b))], "")
		}
	}
	return "it ends early"
}

func TestSuspectsInWords(t *testing.T) {
	s := Speaker{Lexicon: For(UK), Hinges: 2}
	width := survey.Judged{Reading: survey.Reading{Kind: survey.OpeningWidth, At: 1000, Value: 813}, Residual: 9.8}
	slips := func(j survey.Judged, all ...survey.Slip) survey.Judged { j.Slips = all; return j }
	diagonal := survey.Judged{Reading: survey.Reading{Kind: survey.LeafDiagonal, Side: survey.Falling}, Residual: -12}
	rub := survey.Judged{Reading: survey.Reading{Kind: survey.Rub, Side: survey.Head, At: 700}, Residual: -3.2, Fitted: 3.2}
	for _, row := range []struct {
		situation, got, want string
	}{
		{"figures changed round", s.Suspect(slips(width, survey.Slip{Kind: survey.Transposed, Value: 803}), "813"),
			"The opening's width 1000 mm up, 813, does not fit the other readings by 9.8 mm: is it 803 (two figures changed round)? It was left out."},
		{"one of two slips", s.Suspect(slips(width, survey.Slip{Kind: survey.Transposed, Value: 803}, survey.Slip{Kind: survey.WrongZero, Value: 803.5}, survey.Slip{Kind: survey.WrongSign, Value: 1}), "813"),
			"The opening's width 1000 mm up, 813, does not fit the other readings by 9.8 mm: is it 803 (two figures changed round), or is it 803.5 (the tape not read from its zero)? It was left out."},
		{"typed in inches", s.Suspect(slips(width, survey.Slip{Kind: survey.WrongZero, Value: 31.375 * 25.4}), `2' 8"`),
			`The opening's width 1000 mm up, 2' 8", does not fit the other readings by 9.8 mm: is it 2' 7 3/8" (the tape not read from its zero)? It was left out.`},
		{"typed in centimetres", s.Suspect(slips(width, survey.Slip{Kind: survey.PointSlipped, Value: 8130}), "81.3 cm"),
			"The opening's width 1000 mm up, 81.3 cm, does not fit the other readings by 9.8 mm: is it 8130 (the point slipped)? It was left out."},
		{"the other diagonal", s.Suspect(slips(diagonal, survey.Slip{Kind: survey.OtherDiagonal}), "2120"),
			"The leaf's diagonal from the hinge side's top to the latch side's foot, 2120, does not fit the other readings by 12.0 mm: is it the other diagonal? It was left out."},
		{"nothing it may have been", s.Suspect(width, "813"),
			"The opening's width 1000 mm up, 813, does not fit the other readings by 9.8 mm. It was left out: read it again."},
		{"a rub that cannot be", s.Suspect(rub, ""),
			"The rubbing at the head, 700 mm from the hinge jamb does not fit the other readings: they say 3.2 mm. It was left out: read it again."},
		{"two at odds", s.Doubt([]survey.Judged{slips(width, survey.Slip{Kind: survey.Transposed, Value: 803}), diagonal}, []string{"813", "2120"}),
			"These cannot all be true, and nothing tells which is wrong, so none counts for much. The opening's width 1000 mm up, 813: is it 803 (two figures changed round)? The leaf's diagonal from the hinge side's top to the latch side's foot, 2120. Read them again."},
		{"what was not measured", strings.Join(s.NotMeasured([]survey.Assumption{
			{What: "bow of the hinge jamb", Taken: "straight"}, {What: "width of the stop", Taken: "as 12"}, {What: "bow of the head", Taken: "straight"},
			{What: "wind of the closing stile's face", Taken: "out of wind"}, {What: "bow of the top", Taken: "straight"}, {What: "height of the latch", Taken: "as 986"},
		}), "\n"),
			"Bow of the hinge jamb, head and top: taken straight.\nWidth of the stop (12.0 mm) and height of the latch (986.0 mm): taken as is usual.\nWind of the closing stile's face: taken out of wind."},
		{"one thing not measured", s.Assumed(survey.Assumption{What: "bow of the head", Taken: "straight"}), "bow of the head: taken straight"},
		{"a size not measured", s.Assumed(survey.Assumption{What: "width of the stop", Taken: "as 12"}), "width of the stop: taken as 12.0 mm"},
		{"nothing unusual", s.Unusual(nil), ""},
		{"unusual things", s.Unusual([]survey.Unusual{{What: "bow of the head"}, {What: "closed thickness of the top hinge"}}),
			"Far from ordinary: bow of the head and closed thickness of the top hinge. Where only one reading says so, take it again."},
		{"what to measure next", s.Next(survey.Advice{Reading: survey.Reading{Kind: survey.LeafWidth, At: 1900}, Edge: fit.LatchSide, At: 1950, Now: survey.Uncertain{Sigma: 1}, Then: 0.5}),
			"Tape across the leaf's knuckle face, 1900 mm up from its foot. It would make the gap at the latch side, 1950 mm up, sure to ± 0.8 instead of ± 1.6 mm."},
		{"what to measure again", s.Next(survey.Advice{Reading: survey.Reading{Kind: survey.LeafWidth, At: 1900}, Again: true, Edge: fit.LatchSide, At: 1950, Now: survey.Uncertain{Sigma: 1}, Then: 0.9}),
			"Measure the leaf's width 1900 mm up again, with the tool set afresh. It would make the gap at the latch side, 1950 mm up, sure to ± 1.5 instead of ± 1.6 mm."},
	} {
		if row.got != row.want {
			t.Errorf("%s:\n got %s\nwant %s", row.situation, row.got, row.want)
		}
	}
}

func TestOddsInWords(t *testing.T) {
	s := Speaker{Lexicon: For(UK)}
	gap := judge.Limits{Least: 2, Target: 2.5, Most: 3}
	whole := geom.Interval{Lo: 0, Hi: 1980}
	f := func(v judge.Verdict, worst, margin float64, odds judge.Odds) judge.Finding {
		return judge.Finding{Edge: fit.LatchSide, Verdict: v, Stretch: whole, Whole: whole, Binding: geom.Empty(), Worst: worst, Other: worst + 0.4, Margin: margin,
			OtherMargin: margin, Limits: gap, Odds: odds}
	}
	binding := f(judge.Binds, -1.4, 0.7, judge.Odds{0.97, 0.03, 0, 0})
	binding.Binding = whole
	latch := judge.Finding{Subject: judge.Latching, Verdict: judge.Good, Odds: judge.Odds{0.2, 0, 0, 0.8}}
	swing := judge.Finding{Subject: judge.SwingFloor, Edge: fit.FloorSide, Verdict: judge.Good, Worst: 4, Margin: 3, Opened: true, Angle: geom.Degree, Odds: judge.Odds{0.04, 0, 0, 0.96}}
	way := judge.Finding{Subject: judge.ClearWay, Verdict: judge.Good, Worst: 700, Margin: 0.2, Odds: judge.Odds{0, 0.3, 0, 0.7}}
	for _, row := range []struct {
		situation    string
		f            judge.Finding
		figure, text string
	}{
		{"without readings", f(judge.Good, 2.1, 0, judge.Odds{}), "2.1 to 2.5 mm", "latch side."},
		{"good, and sure", f(judge.Good, 2.3, 0.2, judge.Odds{0, 0.05, 0.05, 0.9}), "2.3 ± 0.2 to 2.7 ± 0.2 mm", "latch side."},
		{"good, but may be tight", f(judge.Good, 2.1, 0.6, judge.Odds{0, 1.0 / 6, 0, 5.0 / 6}), "2.1 ± 0.6 to 2.5 ± 0.6 mm", "latch side. Good as read, but 1 in 6 (17\u00a0%) that it is tight."},
		{"good, but a chance of everything", f(judge.Good, 2.1, 2, judge.Odds{0.02, 0.2, 0.3, 0.48}), "2.1 ± 2.0 to 2.5 ± 2.0 mm",
			"latch side. Good as read, but 1 in 50 (2\u00a0%) that it binds, 1 in 5 (20\u00a0%) that it is tight and 1 in 3 (30\u00a0%) that it is slack."},
		{"tight, and may bind", f(judge.Tight, 0.5, 0.7, judge.Odds{0.12, 0.88, 0, 0}), "0.5 ± 0.7 mm", "latch side, over the whole height. 2.0 to 3.0 mm wanted. 1 in 8 (12\u00a0%) that it binds."},
		{"binds, all but certainly", binding, "−1.4 ± 0.7 mm", "latch side, over the whole height. 2.0 to 3.0 mm wanted. Binds: all but certain (97\u00a0%)."},
		{"the latch may miss", latch, "", "no stop holds the latch short of its keep. Good as read, but 1 in 5 (20\u00a0%) that it does not latch."},
		{"it may drag", swing, "4.0 ± 3.0 mm", "least over the floor as it swings, 1.0° open. Good as read, but 1 in 25 (4\u00a0%) that it drags."},
		{"the way may be narrow", way, "700 ± 1 mm", "clear way at 90°, leaf to stop. Good as read, but 1 in 3 (30\u00a0%) that it is too narrow."},
	} {
		t.Run(row.situation, func(t *testing.T) {
			if l := s.Finding(row.f); l.Figure != row.figure || l.Text != row.text {
				t.Errorf("got  %s | %s\nwant %s | %s", l.Figure, l.Text, row.figure, row.text)
			}
		})
	}
	sure, unsure := f(judge.Good, 2.2, 0.2, judge.Odds{0, 0, 0, 1}), f(judge.Good, 2.1, 0.6, judge.Odds{0, 1.0 / 6, 0, 5.0 / 6})
	if got, want := s.Headline([]judge.Finding{unsure, sure}), "As far as the readings tell it hangs as wanted: 2.1 ± 0.6 to 2.6 ± 0.2 mm at jambs and head. Least sure is the gap at the latch side: 1 in 6 (17\u00a0%) that it is tight."; got != want {
		t.Errorf("headline\n got %s\nwant %s", got, want)
	}
	binding.Odds = judge.Odds{0.6, 0.4, 0, 0}
	if got, want := s.Headline([]judge.Finding{binding, sure}), "Binds by 1.4 ± 0.7 mm at the latch side, over the whole height: 3 in 5 (60\u00a0%) that it does. All else is good."; got != want {
		t.Errorf("headline\n got %s\nwant %s", got, want)
	}
}

// The plain words for a chance are near to it.
func TestChancesInWords(t *testing.T) {
	for p := 0.01; p < 0.97; p += 0.001 {
		said, _, _ := strings.Cut(chance(p), " (")
		var a, b float64
		for i, word := range strings.Split(said, " in ") {
			l, err := measure.Read(word, measure.MM)
			if err != nil {
				t.Fatalf("%v is said %q", p, said)
			}
			*[2]*float64{&a, &b}[i] = l.MM
		}
		if math.Abs(a/b-p) > 0.05+0.1*p {
			t.Errorf("%v is said %q", p, said)
		}
	}
	for _, row := range []struct {
		p    float64
		want string
	}{{0, "1 in 100 (1\u00a0%)"}, {0.5, "1 in 2 (50\u00a0%)"}, {0.999, "all but certain (99\u00a0%)"}} {
		if got := chance(row.p); got != row.want {
			t.Errorf("%v is said %q, want %q", row.p, got, row.want)
		}
	}
}

// Lengths that end alike in a fraction share no unit.
func TestRangesInInches(t *testing.T) {
	s := Speaker{Length: func(mm float64) string { return measure.Format(mm, measure.Inch) }}
	if got := s.span(25.4*1.0625, 25.4*2.0625); got != `1 1/16" to 2 1/16"` {
		t.Error(got)
	}
	if got := s.known(-1.4, 0.7); got != `-1/16" ± 1/32"` {
		t.Error(got)
	}
}
