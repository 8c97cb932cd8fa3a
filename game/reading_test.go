package game

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"leafwright/game/measure"
	"leafwright/geom/fit"
	"leafwright/geom/survey"
)

// least is as few readings as make a door.
const leastRead = `{
  "leafwright": 1,
  "readings": [
    {"kind": "opening_width", "at": 1000, "value": 767},
    {"kind": "opening_height", "at": 400, "value": 1996},
    {"kind": "leaf_width", "at": 1000, "value": 762},
    {"kind": "leaf_height", "at": 400, "value": 1981},
    {"kind": "leaf_thickness", "value": 40},
    {"kind": "hinge_on_leaf", "hinge": 1, "value": 1793},
    {"kind": "hinge_on_leaf", "hinge": 2, "value": 265}
  ]
}
`

// alike tells whether two jobs are the same; what readings come to follows from them.
func alike(a, b Job) bool {
	if a.IsSurveyed() != b.IsSurveyed() {
		return false
	}
	a.Survey, b.Survey = nil, nil
	return reflect.DeepEqual(a, b)
}

func TestAJobOfReadingsAlone(t *testing.T) {
	j := must(t, leastRead)
	d, res, err := j.Shapes()
	if err != nil || res == nil {
		t.Fatalf("%v, %v", res, err)
	}
	if !reflect.DeepEqual(d, j.Door) || j.LeafHeight != 1981 || j.OpeningWidth != 767 || j.OpeningHeight != 1996 || j.Door.Leaf.Width != 762 {
		t.Errorf("the door: %+v", j)
	}
	if faults := d.Check(); faults != nil {
		t.Error(faults)
	}
	if got := string(Encode(j)); got != leastRead {
		t.Errorf("written as\n%s\nread from\n%s", got, leastRead)
	}
	if faults := j.Check(); faults != nil {
		t.Error(faults)
	}
}

// What is typed stays as it was typed, through the file and back.
func TestTypedTextStays(t *testing.T) {
	for _, row := range []struct {
		typed, written string
		mm             float64
	}{
		{`797`, `797`, 797},
		{`797.50`, `797.50`, 797.5},
		{`"797"`, `797`, 797},
		{`"2' 7 3/8\""`, `"2' 7 3/8\""`, 31.375 * 25.4},
		{`"31-3/8"`, `"31-3/8"`, 31.375 * 25.4},
		{`"79.7cm"`, `"79.7cm"`, 797},
		{`"797,5"`, `"797,5"`, 797.5},
		{`" 0.797 m "`, `"0.797 m"`, 797},
		{`7.97e2`, `797`, 797},
		{`"31⅜"`, `"31⅜"`, 31.375 * 25.4},
	} {
		t.Run(row.typed, func(t *testing.T) {
			text := swap(t, leastRead, `"value": 767}`, `"value": `+row.typed+`}`)
			j := must(t, text)
			if got := j.Readings[0].Value.MM; got != row.mm {
				t.Errorf("%v mm, want %v", got, row.mm)
			}
			out := string(Encode(j))
			if want := swap(t, leastRead, `"value": 767}`, `"value": `+row.written+`}`); out != want {
				t.Errorf("written as\n%s", out)
			}
			if back := must(t, out); !alike(back, j) {
				t.Errorf("read back as %+v", back.Readings[0])
			}
		})
	}
}

// rightly is a job with one reading of every kind.
func rightly(t testing.TB) string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("..", "testdata", "readings", "every-kind.json"))
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func TestEveryKindReadsBack(t *testing.T) {
	j := must(t, rightly(t))
	seen := map[survey.Kind]bool{}
	for _, r := range j.Readings {
		seen[r.Kind] = true
	}
	for _, s := range survey.Kinds {
		if !seen[s.Kind] {
			t.Errorf("no reading of %s", s.Kind)
		}
	}
	if back := must(t, string(Encode(j))); !alike(back, j) {
		t.Errorf("read back as\n%s", Encode(back))
	}
}

// Readings are counted from the hinge side: the same ones make a right-hung leaf's
// door the left-hung one's mirror image, and so the same door inside.
func TestReadingsDoNotTurnWithTheHand(t *testing.T) {
	text := rightly(t)
	left := must(t, text)
	right := must(t, swap(t, text, `"leafwright": 1,`, `"leafwright": 1, "hand": "right",`))
	if !reflect.DeepEqual(left.Readings, right.Readings) || !reflect.DeepEqual(left.Door, right.Door) {
		t.Error("readings or door differ with the hand")
	}
	if back := must(t, string(Encode(right))); !alike(back, right) {
		t.Error("a right-hung job does not read back")
	}
	turned, err := Form{}.Set(left, "hand", "right")
	if err != nil || !alike(turned, right) {
		t.Errorf("turned over in the form: %v", err)
	}
	var a, b fit.Fit
	fit.EvaluateClosed(&a, &left.Door)
	fit.EvaluateClosed(&b, &turned.Door)
	if a.Gaps[fit.LatchSide].Least != b.Gaps[fit.LatchSide].Least {
		t.Error("gaps differ with the hand")
	}
}

func TestWhereShapesComeFrom(t *testing.T) {
	off := strings.ReplaceAll(leastRead, `"value"`, `"off": true, "value"`)
	sizes := func(text string) string {
		return swap(t, text, `"leafwright": 1,`, `"leafwright": 1, "leaf": {"width": 762, "height": 1981, "thickness": 35},
  "opening": {"width": 768, "height": 1996}, "hinges": [{"jamb": 1803, "leaf": 1791}, {"jamb": 277, "leaf": 265}],`)
	}
	for _, row := range []struct {
		situation, text string
		surveyed        bool
		fault           string
	}{
		{"shapes by hand", plainest, false, ""},
		{"readings with a say", leastRead, true, ""},
		{"readings with a say, none of the shapes' and what the leaf is made of", swap(t, leastRead, `"leafwright": 1,`, `"leafwright": 1, "leaf": {"make": "framed", "timber": "pine"}, "opens": 100,`), true, ""},
		{"readings all off, and no shapes", off, true, ""},
		{"no readings and no shapes", `{"leafwright": 1, "name": "Barn", "readings": []}`, true, ""},
		{"shapes by hand beside readings that are off", sizes(off), false, ""},
		{"shapes by hand beside an empty list", swap(t, plainest, `"leafwright": 1,`, `"leafwright": 1, "readings": [],`), false, ""},
		{"shapes by hand beside readings with a say", sizes(leastRead), true, "leaf.width: this job's shapes come from its readings"},
		{"a bevel by hand beside readings with a say", swap(t, leastRead, `"leafwright": 1,`, `"leafwright": 1, "leaf": {"bevel": {"closing": 3}},`), true, "leaf.bevel: this job's shapes come from its readings"},
		{"nothing", `{"leafwright": 1}`, false, "leaf: missing"},
	} {
		t.Run(row.situation, func(t *testing.T) {
			j, err := Parse([]byte(row.text))
			if row.fault != "" {
				if err == nil || !strings.Contains(err.Error(), row.fault) {
					t.Fatalf("got %v, want %q", err, row.fault)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			if j.IsSurveyed() != row.surveyed {
				t.Errorf("surveyed %v", j.IsSurveyed())
			}
			if faults := j.Check(); faults != nil {
				t.Error(faults)
			}
			measured(t, &j)
			if back := must(t, string(Encode(j))); !alike(back, j) {
				t.Errorf("read back from\n%s", Encode(j))
			}
		})
	}
}

// Fewer readings than it takes are kept, drawn as far as they go, and what is
// missing is named.
func TestFewerThanTheLeastSet(t *testing.T) {
	j := must(t, leastRead)
	for n := range j.Readings {
		few := j.Clone()
		few.Readings = append(few.Readings[:n:n], few.Readings[n+1:]...)
		text := string(Encode(few))
		again := must(t, text)
		_, _, err := again.Shapes()
		if err == nil || strings.Count(err.Error(), "\n") != 0 || !strings.Contains(err.Error(), "needed") {
			t.Errorf("without %s: %v", j.Readings[n].Kind, err)
		}
		if faults := again.Door.Check(); faults != nil {
			t.Errorf("without %s it cannot be drawn: %v", j.Readings[n].Kind, faults)
		}
		if string(Encode(again)) != text {
			t.Errorf("without %s: written as\n%s", j.Readings[n].Kind, Encode(again))
		}
	}
	none := Measure(j)
	none.Readings = nil
	empty := must(t, string(Encode(none)))
	_, _, err := empty.Shapes()
	if err == nil || strings.Count(err.Error(), "\n") != 6 {
		t.Errorf("nothing read: %v", err)
	}
	measured(t, &empty)
}

// The paths in the survey's faults are those of the job's own readings, those left
// out counted.
func TestFaultsNameTheJobsOwnReadings(t *testing.T) {
	for _, row := range []struct{ text, want string }{
		{"readings[1].value", "readings[4].value"},
		{"in keeping with readings[0], readings[2], and", "in keeping with readings[3], readings[7], and"},
		{"readings: no width", "readings: no width"},
		{"readings[9] and readings[x", "readings[9] and readings[x"},
	} {
		if got := renumber(row.text, []int{3, 4, 7}); got != row.want {
			t.Errorf("%q becomes %q, want %q", row.text, got, row.want)
		}
	}
}

func TestMeasureAnew(t *testing.T) {
	j := must(t, rich)
	j.Hand = Right
	m := Measure(j)
	if !m.IsSurveyed() || m.Name != j.Name || m.Hand != j.Hand || m.Anatomy.Make != j.Anatomy.Make || m.Wanted != j.Wanted || m.Door.Opens != j.Door.Opens {
		t.Errorf("measured anew: %+v", m)
	}
	if faults := m.Check(); faults != nil {
		t.Error(faults)
	}
	if back := must(t, string(Encode(m))); !alike(back, m) {
		t.Errorf("read back from\n%s", Encode(m))
	}
	if again := Measure(m); !alike(again, m) {
		t.Error("measuring a measured job changed it")
	}
}

// The form's table of readings changes what it says it does.
func TestReadingsInTheForm(t *testing.T) {
	type step struct {
		path, text string
		then       func(r []Reading) bool
	}
	for _, row := range []struct {
		situation string
		units     measure.Unit
		steps     []step
	}{
		{"a value as typed", measure.MM, []step{{"readings[0].value", `2' 6 1/4"`, func(r []Reading) bool { return r[0].Value.Text == `2' 6 1/4"` && r[0].Value.MM == 768.35 }}}},
		{"a plain number in an inch form gets its mark", measure.Inch, []step{{"readings[0].value", `30.25`, func(r []Reading) bool { return r[0].Value.Text == `30.25"` && r[0].Value.MM == 768.35 }}}},
		{"wiped out, it is put off; typed anew, it has its say", measure.MM, []step{
			{"readings[0].value", "", func(r []Reading) bool { return r[0].Off && r[0].Value == measure.Length{} }},
			{"readings[0].value", "768", func(r []Reading) bool { return !r[0].Off && r[0].Value.MM == 768 }}}},
		{"left out and taken in", measure.MM, []step{
			{"readings[1].off", "true", func(r []Reading) bool { return r[1].Off && r[1].Value.MM == 1996 }},
			{"readings[1].off", "false", func(r []Reading) bool { return !r[1].Off }}}},
		{"another kind drops the places it has no use for", measure.MM, []step{
			{"readings[0].kind", "opening_diagonal", func(r []Reading) bool {
				return r[0].At == measure.Length{} && r[0].Side == survey.Rising
			}}}},
		{"another kind that what was read cannot be of", measure.MM, []step{
			{"readings[0].kind", "leaf_gain", func(r []Reading) bool { return r[0].Off && r[0].Hinge == 1 && r[0].Value == measure.Length{} }}}},
		{"another kind of straightedge", measure.MM, []step{
			{"readings[4].kind", "frame_bow", func(r []Reading) bool {
				return r[4].Side == survey.Hinge && given(r[4].From) && given(r[4].At) && r[4].Off == false && r[4].Value.MM == 40
			}},
			{"readings[4].side", "head", func(r []Reading) bool { return r[4].Side == survey.Head }}}},
		{"an instrument", measure.MM, []step{
			{"readings[0].instrument", "rule", func(r []Reading) bool { return r[0].Instrument == survey.Rule }},
			{"readings[0].instrument", "usual", func(r []Reading) bool { return r[0].Instrument == "" }}}},
		{"its error and a note", measure.MM, []step{
			{"readings[0].sigma", "1.5", func(r []Reading) bool { return r[0].Sigma.MM == 1.5 }},
			{"readings[0].note", "over the lining", func(r []Reading) bool { return r[0].Note == "over the lining" }}}},
	} {
		t.Run(row.situation, func(t *testing.T) {
			j := must(t, leastRead)
			fm := Form{row.units}
			for _, s := range row.steps {
				var err error
				if j, err = fm.Set(j, s.path, s.text); err != nil {
					t.Fatalf("%s = %q: %v", s.path, s.text, err)
				}
				if !s.then(j.Readings) {
					t.Errorf("%s = %q: %+v", s.path, s.text, j.Readings)
				}
				if back := must(t, string(Encode(j))); !alike(back, j) {
					t.Errorf("read back from\n%s", Encode(j))
				}
			}
		})
	}
}

func TestReadingsTheFormRefuses(t *testing.T) {
	for _, row := range []struct{ path, text, want string }{
		{"readings[0].value", "8130", "readings[0].value: 8130 is not between 200 and 1700; is it 813?"},
		{"readings[0].value", "a bit", `readings[0].value: a length is wanted, like 797, 797.5, 79.7 cm, 31 3/8 or 2' 7 3/8"`},
		{"readings[5].hinge", "9", "readings[5].hinge: 9 is not between 1, the top one, and 6"},
		{"readings[0].at", "", "readings[0].at: missing; the place is wanted for opening_width"},
		{"leaf.width", "762", "leaf.width: this comes from the readings"},
		{"readings[0].off", "maybe", "readings[0].off: true or false is wanted"},
		{"readings[99].value", "1", "readings[99].value: there is no such field"},
	} {
		j := must(t, leastRead)
		got, err := Form{}.Set(j, row.path, row.text)
		if err == nil || err.Error() != row.want {
			t.Errorf("%s = %q: %v, want %s", row.path, row.text, err, row.want)
		}
		if !alike(got, j) {
			t.Errorf("%s = %q changed the job", row.path, row.text)
		}
	}
}

func TestAddAndRemoveReadings(t *testing.T) {
	j := Blank(762, 1981, 40)
	fm := Form{}
	j, err := fm.Add(j, "readings")
	if err != nil || !j.IsSurveyed() || len(j.Readings) != 0 {
		t.Fatalf("measured anew: %v, %+v", err, j.Readings)
	}
	for n := 1; n <= 80; n++ {
		if j, err = fm.Add(j, "readings"); err != nil || len(j.Readings) != n || !j.Readings[n-1].Off {
			t.Fatalf("reading %d: %v", n, err)
		}
	}
	for len(j.Readings) > 0 {
		if j, err = fm.Remove(j, "readings[0]"); err != nil {
			t.Fatal(err)
		}
	}
	if _, err = fm.Remove(j, "readings[0]"); err == nil {
		t.Error("took away a reading that is not there")
	}
	for _, s := range survey.Kinds {
		var at int
		if j, at, err = fm.AddReading(j, s.Kind); err != nil || j.Readings[at].Kind != s.Kind {
			t.Errorf("%s: %v", s.Kind, err)
		}
	}
	if _, _, err = fm.AddReading(Blank(762, 1981, 40), survey.LeafWidth); err == nil {
		t.Error("a reading added to a job whose shapes were given by hand")
	}
}

// The members of a leaf go with the sizes that are read, and never stand in the way
// of a reading.
func TestMembersGoWithTheReadings(t *testing.T) {
	framed := must(t, swap(t, leastRead, `"leafwright": 1,`, `"leafwright": 1, "leaf": {"make": "framed", "lock": {"kind": "rim", "height": 1700}},`))
	if n := len(framed.Anatomy.Rails); framed.Anatomy.Rails[n-1].To != 1981 {
		t.Fatalf("rails %+v", framed.Anatomy.Rails)
	}
	rnd := rand.New(rand.NewPCG(3, 1))
	for range 60 {
		height := []string{"400", "1200", "1981", "1990", "2900"}[rnd.IntN(5)]
		next, err := Form{}.Set(framed, "readings[3].value", height)
		if err != nil {
			t.Fatalf("leaf height %s: %v", height, err)
		}
		framed = next
		if faults := framed.Check(); faults != nil {
			t.Fatal(faults)
		}
		if rnd.IntN(3) == 0 {
			if next, err := (Form{}).Set(framed, "leaf.stiles.hanging", "97"); err == nil {
				framed = next
			}
		}
	}
}

// Readings that can belong to no door are kept, told of, and drawn as far as may be.
func TestReadingsOfNoDoor(t *testing.T) {
	for _, row := range []struct{ situation, old, new, want string }{
		{"a leaf far wider than its opening", `"leaf_width", "at": 1000, "value": 762`, `"leaf_width", "at": 1000, "value": 1400`,
			"readings: they make a door whose leaf.width, 1400 is not between 517 and 1017, near the opening's 767"},
		{"a leaf far higher than its opening", `"leaf_height", "at": 400, "value": 1981`, `"leaf_height", "at": 400, "value": 3400`, "leaf"},
		{"hinges at one height", `"hinge": 2, "value": 265`, `"hinge": 2, "value": 1790`, "hinge"},
		{"a hinge off the leaf", `"hinge": 1, "value": 1793`, `"hinge": 1, "value": 2400`, "hinge"},
	} {
		t.Run(row.situation, func(t *testing.T) {
			text := swap(t, leastRead, row.old, row.new)
			j := must(t, text)
			_, res, err := j.Shapes()
			if err == nil || res == nil || !strings.Contains(err.Error(), row.want) {
				t.Fatalf("%v", err)
			}
			if faults := j.Door.Check(); faults != nil {
				t.Errorf("cannot be drawn: %v", faults)
			}
			measured(t, &j)
			if j.Sure(true) != nil {
				t.Error("sure of no door")
			}
			if got := string(Encode(j)); got != text {
				t.Errorf("written as\n%s", got)
			}
		})
	}
}

// Whatever is typed on the card and in the form in a row, nothing breaks, and all of
// it is there again when the job is read back.
func TestMeasuringAtRandom(t *testing.T) {
	const seed = 7
	rnd := rand.New(rand.NewPCG(seed, 2))
	typed := []string{"", "0", "1", "-2", "5", "40", "2' 6\"", "762", "767", "1981", "1996", "76.2 cm", "2000", "1200", "8130", "x", "265", "1790", "2120"}
	parts := [][2]string{
		{"leaf.make", "framed"}, {"leaf.make", "boarded"}, {"leaf.lock.kind", "rim"}, {"leaf.lock.kind", "none"}, {"leaf.lock.height", "900"},
		{"hand", "right"}, {"hand", "left"}, {"opens", "110"}, {"wanted.preset", "bare"}, {"readings[0].off", "true"}, {"readings[1].kind", "leaf_bow"},
		{"readings[2].at", "333"}, {"readings[0].sigma", "3"}, {"readings[1].side", "latch"}, {"readings[3].note", "again"},
	}
	sound := Blank(762, 1981, 40)
	j := Measure(sound)
	taken, hung := 0, 0
	for n := range 400 {
		fm := Form{measure.Unit(rnd.IntN(2))}
		var next Job
		var err error
		switch k := rnd.IntN(10); {
		case k == 0:
			p := parts[rnd.IntN(len(parts))]
			next, err = fm.Set(j, p[0], p[1])
		case k == 1 && len(j.Readings) > 0:
			next, err = fm.RemoveReading(j, rnd.IntN(len(j.Readings)))
		default:
			card := fm.Card(j, nil)
			p := card[rnd.IntN(len(card))]
			text := typed[rnd.IntN(len(typed))]
			if rnd.IntN(3) > 0 {
				p = card[rnd.IntN(8)] // the least set, and as it should be
				text = asTyped(survey.Expect(&sound.Door, p.Reading.Survey()), fm.Units).Text
			}
			next, err = fm.SetReading(j, p, text)
		}
		if err != nil {
			if !alike(next, j) {
				t.Fatalf("seed %d, step %d: refused (%v), but changed", seed, n, err)
			}
			continue
		}
		taken++
		j = next
		if faults := j.Check(); faults != nil {
			t.Fatalf("seed %d, step %d: %v", seed, n, faults)
		}
		if back := must(t, string(Encode(j))); !alike(back, j) {
			t.Fatalf("seed %d, step %d: reads back otherwise from\n%s", seed, n, Encode(j))
		}
		measured(t, &j)
		if _, _, err := j.Shapes(); err == nil {
			hung++
			if rnd.IntN(10) == 0 && j.Sure(false) == nil {
				t.Fatalf("seed %d, step %d: nothing is known of a door that hangs", seed, n)
			}
		}
	}
	if taken < 150 || hung < 5 {
		t.Errorf("%d changes taken, %d doors hung: the test hardly looks", taken, hung)
	}
}
