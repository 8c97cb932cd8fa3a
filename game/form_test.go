package game

import (
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"leafwright/game/measure"
	"leafwright/geom"
	"leafwright/geom/door"
)

// cells are all fields of a job's form that take something typed, tables' cells too.
func cells(fm Form, j Job) (all []Field) {
	for _, s := range sections(fm, j) {
		for _, g := range s.Groups {
			for _, f := range g.Fields {
				if f.Kind != Table && f.Kind != Words {
					all = append(all, f)
				}
				for _, r := range f.Rows {
					for _, c := range r.Cells {
						if c.Kind != Words {
							all = append(all, c)
						}
					}
				}
			}
		}
	}
	return all
}

// sections are a form's panels, its options and what was done.
func sections(fm Form, j Job) []Section {
	all := append(fm.Sections(j), fm.Made(&j))
	for i := range j.Options {
		all = append(all, fm.Option(&j, i))
	}
	return all
}

func field1(t testing.TB, fm Form, j Job, path string) Field {
	t.Helper()
	for _, f := range cells(fm, j) {
		if f.Path == path {
			return f
		}
	}
	t.Fatalf("the form has no %s", path)
	return Field{}
}

// forms are jobs of both hands and of every kind of part.
func forms(t testing.TB) map[string]Job {
	right := must(t, rich)
	right.Hand = Right
	return map[string]Job{"plain": must(t, plainest), "rich": must(t, rich), "right-hung": right, "blank": Blank(610, 1830, 35), "measured": must(t, leastRead), "every kind": must(t, rightly(t))}
}

// Setting any field to what it shows changes nothing; all paths are different and
// all values lie in their ranges.
func TestFormShowsWhatItTakes(t *testing.T) {
	for name, j := range forms(t) {
		for _, fm := range []Form{{measure.MM}, {measure.Inch}} {
			seen := map[string]bool{}
			for _, f := range cells(fm, j) {
				if f.Path == "" || f.Label == "" || seen[f.Path] {
					t.Errorf("%s: field %+v", name, f)
				}
				seen[f.Path] = true
				if f.Kind == Length && !(f.Min < f.Max) {
					t.Errorf("%s: %s runs from %v to %v", name, f.Path, f.Min, f.Max)
				}
				same, err := fm.Set(j, f.Path, f.Value)
				if err != nil {
					t.Errorf("%s: %s does not take the %q it shows: %v", name, f.Path, f.Value, err)
				} else if fm.Units == measure.MM && f.Kind != Pick && !alike(same, j) {
					t.Errorf("%s: %s set to the %q it shows changes the job to\n%s", name, f.Path, f.Value, Encode(same))
				}
			}
		}
	}
}

// Every field of the file that a form should show, it shows.
func TestFormShowsEveryField(t *testing.T) {
	j := must(t, rich)
	shown := map[string]bool{}
	for _, s := range sections(Form{}, j) {
		for _, g := range s.Groups {
			for _, f := range g.Fields {
				shown[f.Path] = true
			}
		}
	}
	file := j.filed()
	walk(table(), &file, "", 0, func(f *field, path string, i int) bool {
		counts := f.counts == nil || f.counts(&file, i)
		if f.list == nil && shown[path] != counts {
			t.Errorf("the form shows %s: %v", path, !counts)
		}
		return true
	})
}

func TestSet(t *testing.T) {
	get := func(t *testing.T, j Job, path string) string { return field1(t, Form{}, j, path).Value }
	for _, row := range []struct {
		situation, from string
		units           measure.Unit
		path, text      string
		then, shows     string // another field, and what it shows then
		refused         string
	}{
		{situation: "a length", path: "leaf.thickness", text: "36.5", then: "leaf.thickness", shows: "36.5"},
		{situation: "a length in feet and inches", path: "leaf.width", text: `2' 6 1/8"`, then: "leaf.width", shows: "765.175"},
		{situation: "a plain number in an inch form", units: measure.Inch, path: "leaf.width", text: "30 1/8", then: "leaf.width", shows: "765.175"},
		{situation: "the closing edge goes with the width", path: "leaf.width", text: "760", then: "leaf.closing[1][1]", shows: "760"},
		{situation: "the top goes with the height", path: "leaf.height", text: "1970", then: "leaf.top[1][1]", shows: "1970"},
		{situation: "the head goes with the height", path: "opening.height", text: "2000", then: "opening.head[0][1]", shows: "2000"},
		{situation: "a bowed edge keeps its bow", from: "rich", path: "leaf.width", text: "765", then: "leaf.closing[1][1]", shows: "763.75"},
		{situation: "the top rail follows the top", from: "framed", path: "leaf.height", text: "1990", then: "leaf.rails[2].to", shows: "1990"},
		{situation: "a muntin stays in the middle", from: "framed", path: "leaf.width", text: "770", then: "leaf.muntins[0].at", shows: "385"},
		{situation: "stops go with the rebate", path: "opening.rebate", text: "45", then: "opening.stops.latch[0][1]", shows: "-45"},
		{situation: "stops go with the front edge", path: "opening.front.latch.leans", text: "6", then: "opening.stops.latch[1][1]", shows: "-31"},
		{situation: "a measured stop stays", from: "rich", path: "opening.front.latch.leans", text: "6", then: "opening.stops.latch[0][1]", shows: "-41"},
		{situation: "a falling head", path: "opening.head.falls", text: "7", then: "opening.head[1][1]", shows: "1989"},
		{situation: "a latch jamb that leans in", path: "opening.latch_jamb.leans", text: "3", then: "opening.latch_jamb[1][1]", shows: "765"},
		{situation: "wind", path: "leaf.face.closing.wind", text: "-8", then: "leaf.face.closing[1][1]", shows: "-8"},
		{situation: "a wind that is no one number", from: "rich", path: "leaf.face.closing.wind", text: "8", refused: "leaf.face.closing.wind: this edge is more than one number now: change its stations"},
		{situation: "a station", from: "rich", path: "opening.head[1][1]", text: "1995", then: "opening.head[1][1]", shows: "1995"},
		{situation: "a station past the next", from: "rich", path: "opening.head[1][0]", text: "800", refused: "opening.head[2]: place 770 is not beyond the one before, 800, by 1 at least"},
		{situation: "floor that rises", path: "floor.rise", text: "12", then: "floor.heights[1][1]", shows: "12"},
		{situation: "floor with a threshold", path: "floor.threshold", text: "15", then: "floor.heights[0][0]", shows: "15"},
		{situation: "a preset copies its numbers", path: "wanted.preset", text: "bare", then: "wanted.head.target", shows: "4.5"},
		{situation: "a floor preset copies its numbers", path: "wanted.floor.preset", text: "boards", then: "wanted.floor.most", shows: "10"},
		{situation: "another number is one's own", path: "wanted.head.most", text: "3.5", then: "wanted.preset", shows: "own"},
		{situation: "a lock brings its sizes", path: "leaf.lock.kind", text: "rim", then: "leaf.lock.backset", shows: "57"},
		{situation: "a framed leaf brings its members", path: "leaf.make", text: "framed", then: "leaf.rails[1].name", shows: "lock"},
		{situation: "an angle with a comma and a sign", path: "leaf.bevel.closing", text: "3,5°", then: "leaf.bevel.closing", shows: "3.5"},
		{situation: "a hinge of three", from: "rich", path: "hinges[1].leaf_packer", text: "1/8", then: "hinges[1].leaf_packer", shows: "3.175"},
		{situation: "a note of two lines", path: "note", text: " a\r\nb ", then: "note", shows: "a\nb"},

		{situation: "no length", path: "leaf.width", text: "wide", refused: "leaf.width: a length is wanted, like 797, 797.5, 79.7 cm, 31 3/8 or 2' 7 3/8\""},
		{situation: "out of range", path: "leaf.width", text: "8130", refused: "leaf.width: 8130 is not between 200 and 1500; is it 813?"},
		{situation: "out of range in inches", units: measure.Inch, path: "leaf.width", text: "3", refused: `leaf.width: 3" is not between 7 7/8" and 4' 11 1/16"`},
		{situation: "no angle", path: "leaf.bevel.closing", text: "NaN", refused: "leaf.bevel.closing: a number of degrees is wanted, like 3 or 2.5"},
		{situation: "too steep an angle", path: "leaf.bevel.closing", text: "20", refused: "leaf.bevel.closing: 20 is not between -10 and 15"},
		{situation: "a hinge off the leaf", path: "hinges[1].leaf", text: "20", refused: "hinges[1].leaf: 20 is not between 37.5 and 1943.5, where the hinge's plate is on the leaf"},
		{situation: "a word that is none", path: "hand", text: "up", refused: `hand: "up" is not one of left, right`},
		{situation: "no such field", path: "leaf.colour", text: "blue", refused: "leaf.colour: there is no such field"},
		{situation: "no such hinge", path: "hinges[2].pin", text: "5", refused: "hinges[2].pin: there is no such field"},
		{situation: "no such station", path: "opening.head[2][1]", text: "5", refused: "opening.head[2][1]: there is no such field"},
		{situation: "a whole list", path: "hinges", text: "3", refused: "hinges: there is no such field"},
	} {
		t.Run(row.situation, func(t *testing.T) {
			j := must(t, plainest)
			switch row.from {
			case "rich":
				j = must(t, rich)
			case "framed":
				j = must(t, swap(t, plainest, `"thickness": 35`, `"thickness": 35, "make": "framed"`))
			}
			was := string(Encode(j))
			got, err := Form{row.units}.Set(j, row.path, row.text)
			if string(Encode(j)) != was {
				t.Error("the job given was changed")
			}
			if row.refused != "" {
				if err == nil || err.Error() != row.refused {
					t.Errorf("got  %v\nwant %s", err, row.refused)
				}
				if string(Encode(got)) != was {
					t.Error("refused, but changed")
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			if v := get(t, got, row.then); v != row.shows {
				t.Errorf("%s shows %q, want %q", row.then, v, row.shows)
			}
		})
	}
}

// The other hand is the mirror image: the fit stays, the signs in the form change.
func TestSetHandMirrors(t *testing.T) {
	j := must(t, rich)
	got, err := Form{}.Set(j, "hand", "right")
	if err != nil {
		t.Fatal(err)
	}
	if got.Hand != Right || !reflect.DeepEqual(got.Door, j.Door) {
		t.Errorf("hand %q, door %+v", got.Hand, got.Door)
	}
	for path, want := range map[string]string{
		"opening.latch_jamb[1][1]": "-767", "opening.head[0][0]": "-770", "opening.head[0][1]": "1991",
		"opening.hinge_jamb.leans": "1.5", "leaf.closing[1][1]": "760.75",
	} {
		if f := field1(t, Form{}, got, path); f.Value != want {
			t.Errorf("%s shows %s, want %s", path, f.Value, want)
		}
	}
	// A number said of the hand at hand lands where it should.
	got, err = Form{}.Set(got, "opening.hinge_jamb.leans", "4")
	if err != nil {
		t.Fatal(err)
	}
	if v := got.Door.Frame.HingeJamb.At(1998); v != 4 {
		t.Errorf("hinge jamb at the head stands at %v, want 4 into the opening", v)
	}
}

// The one number of every straight edge is taken, shown again, and taken back
// leaves the edge as it was.
func TestSlantsGoThereAndBack(t *testing.T) {
	for name, j := range map[string]Job{"left": must(t, plainest), "right": must(t, swap(t, plainest, `"leafwright": 1,`, `"leafwright": 1, "hand": "right",`))} {
		tried := 0
		file := j.filed()
		walk(table(), &file, "", 0, func(f *field, path string, i int) bool {
			if f.shape == nil {
				return true
			}
			for _, s := range f.shape.slants {
				tried++
				out, err := Form{}.Set(j, path+"."+s.name, "5")
				if err != nil {
					t.Fatal(err)
				}
				if v := field1(t, Form{}, out, path+"."+s.name).Value; v != "5" {
					t.Errorf("%s: %s.%s set to 5 shows %s", name, path, s.name, v)
				}
				back, err := Form{}.Set(out, path+"."+s.name, "0")
				if err != nil || !alike(back, j) {
					t.Errorf("%s: %s.%s there and back: %v\n%s", name, path, s.name, err, Encode(back))
				}
			}
			return true
		})
		if tried != 9 {
			t.Errorf("%s: %d slants tried", name, tried)
		}
	}
}

// Adding a station, a hinge, a radius or an angle changes no shape; removing it
// again leaves the job as it was.
func TestAddAndRemove(t *testing.T) {
	for name, j := range forms(t) {
		if j.IsSurveyed() {
			continue // its shapes are not there to be changed by hand
		}
		paths := map[string]func(Job) int{
			"hinges":       func(j Job) int { return len(j.Door.Hinges) },
			"floor.radii":  func(j Job) int { return len(j.Door.Floor.Radii) },
			"floor.angles": func(j Job) int { return len(j.Door.Floor.Angles) },
		}
		file := j.filed()
		walk(table(), &file, "", 0, func(f *field, path string, i int) bool {
			if f.shape != nil && (f.counts == nil || f.counts(&file, i)) && !within(path, madePath) {
				paths[path] = func(j Job) int { return len(*f.at(&j, i).(stations).p) }
			}
			return true
		})
		for path, count := range paths {
			more, err := Form{}.Add(j, path)
			if err != nil {
				t.Errorf("%s: add to %s: %v", name, path, err)
				continue
			}
			if count(more) <= count(j) {
				t.Errorf("%s: %s: had %d, has %d", name, path, count(j), count(more))
			}
			for _, at := range []float64{-20, 0, 333, 1000, 1990, 2500} {
				for k, p := range shapesOf(j) {
					if was, is := p.At(at), shapesOf(more)[k].At(at); math.Abs(was-is) > 1e-9 {
						t.Errorf("%s: adding to %s changes a shape at %v from %v to %v", name, path, at, was, is)
					}
				}
				for angle := geom.Angle(-0.3); angle < 2; angle += 0.1 {
					was, is := j.Door.Floor, more.Door.Floor
					if a, b := was.Polar(at, angle), is.Polar(at, angle); math.Abs(a-b) > 1e-9 {
						t.Errorf("%s: adding to %s changes the floor at %v, %v from %v to %v", name, path, at, angle, a, b)
					}
				}
			}
			for k := count(more) - 1; k >= 0; k-- { // one of them is the new one
				fewer, err := Form{}.Remove(more, path+"["+strconv.Itoa(k)+"]")
				if err == nil && reflect.DeepEqual(fewer.filed(), j.filed()) {
					break
				}
				if k == 0 && count(more) == count(j)+1 {
					t.Errorf("%s: taking the new one from %s does not give the job back", name, path)
				}
			}
		}
	}
}

func shapesOf(j Job) []geom.Profile {
	l, f := &j.Door.Leaf, &j.Door.Frame
	return []geom.Profile{l.Hanging, l.Closing, l.Top, l.Bottom, l.HangingFace, l.ClosingFace,
		f.HingeJamb, f.LatchJamb, f.Head, f.HingeFront, f.LatchFront, f.HeadFront, f.HingeStop, f.LatchStop, f.HeadStop}
}

func TestRailsAndMuntinsComeAndGo(t *testing.T) {
	j, err := Form{}.Set(must(t, plainest), "leaf.make", "framed")
	if err != nil {
		t.Fatal(err)
	}
	rails, muntins := len(j.Anatomy.Rails), len(j.Anatomy.Muntins)
	for range 3 {
		if j, err = (Form{}).Add(j, "leaf.rails"); err != nil {
			t.Fatal(err)
		}
		if j, err = (Form{}).Add(j, "leaf.muntins"); err != nil {
			t.Fatal(err)
		}
	}
	if len(j.Anatomy.Rails) != rails+3 || len(j.Anatomy.Muntins) != muntins+3 {
		t.Errorf("%d rails, %d muntins", len(j.Anatomy.Rails), len(j.Anatomy.Muntins))
	}
	for len(j.Anatomy.Rails) > 2 {
		if j, err = (Form{}).Remove(j, "leaf.rails[1]"); err != nil {
			t.Fatal(err)
		}
	}
	if _, err = (Form{}).Remove(j, "leaf.rails[0]"); err == nil || !strings.Contains(err.Error(), "leaf.rails: 1 rail is not between 2 and 12") {
		t.Errorf("a framed leaf with one rail: %v", err)
	}
}

func TestAddAndRemoveRefuse(t *testing.T) {
	j := must(t, plainest)
	six := j
	for range 4 {
		six, _ = Form{}.Add(six, "hinges")
	}
	for _, row := range []struct {
		situation string
		do        func() (Job, error)
		want      string
	}{
		{"a seventh hinge", func() (Job, error) { return Form{}.Add(six, "hinges") }, "hinges: there are 6, as many as there can be"},
		{"one hinge left", func() (Job, error) { return Form{}.Remove(j, "hinges[0]") }, "hinges[0]: there must be 2 at least"},
		{"no such hinge", func() (Job, error) { return Form{}.Remove(six, "hinges[6]") }, "hinges[6]: there is no such field"},
		{"the last station", func() (Job, error) { return Form{}.Remove(j, "opening.front.latch[0]") }, "opening.front.latch[0]: an edge keeps one station at least"},
		{"the last angle of a floor", func() (Job, error) { return Form{}.Remove(j, "floor.angles[0]") }, "floor.angles[0]: a floor keeps one angle at least"},
		{"a thing with no list", func() (Job, error) { return Form{}.Add(j, "leaf.width") }, "leaf.width: there is no such field"},
		{"nothing", func() (Job, error) { return Form{}.Remove(j, "") }, ": there is no such field"},
	} {
		t.Run(row.situation, func(t *testing.T) {
			if _, err := row.do(); err == nil || strings.TrimPrefix(err.Error(), ": ") != strings.TrimPrefix(row.want, ": ") {
				t.Errorf("got %v, want %s", err, row.want)
			}
		})
	}
}

func FuzzSet(f *testing.F) {
	jobs := []Job{must(f, plainest), must(f, rich), must(f, swap(f, plainest, `"leafwright": 1,`, `"leafwright": 1, "hand": "right",`)), must(f, leastRead)}
	for i, j := range jobs {
		for k, c := range cells(Form{}, j) {
			if k%5 == 0 {
				f.Add(i, uint8(k%2), c.Path, c.Value)
			}
		}
	}
	f.Add(0, uint8(2), "hinges", "")
	f.Add(1, uint8(3), "opening.head[1]", "")
	f.Add(1, uint8(0), "leaf.lock.kind", "none")
	f.Add(0, uint8(1), "floor.rise", "3/8")
	f.Add(3, uint8(0), "card.opening_width.1", "31-3/8")
	f.Add(3, uint8(1), "readings[2].kind", "frame_bow")
	f.Add(3, uint8(2), "readings", "")
	f.Add(1, uint8(2), "options", "")
	f.Add(1, uint8(2), "options[0].copy", "")
	f.Add(1, uint8(2), "options[1].keep", "")
	f.Add(1, uint8(3), "options[0].moves.splice", "")
	f.Add(1, uint8(2), "options[0].moves[1].line", "")
	f.Add(1, uint8(4), "options[0].moves[1].line[1]", "")
	f.Add(1, uint8(4), "options[1].moves[0]", "")
	f.Add(1, uint8(0), "options[0].moves[1].do", "cut")
	f.Add(1, uint8(0), "options[0].moves[0].edge", "foot")
	f.Add(1, uint8(0), "options[0].moves[3].place", "1")
	f.Add(1, uint8(0), "options[0].moves[4]", `{"do": "shift", "hinge": 2, "on": "both", "first": -3}`)
	f.Add(1, uint8(4), "made[0]", "")
	f.Add(0, uint8(2), "leaf.voids", "")
	f.Add(1, uint8(4), "leaf.voids[1]", "")
	f.Add(1, uint8(1), "prices.hour", "1e3")
	f.Add(0, uint8(1), "meter.may", "1/2")
	f.Fuzz(func(t *testing.T, which int, what uint8, path, text string) {
		j := jobs[uint(which)%uint(len(jobs))]
		fm := Form{measure.Unit(what & 1)}
		var out Job
		var err error
		switch what & 6 {
		case 2:
			out, err = fm.Add(j, path)
		case 4:
			out, err = fm.Remove(j, path)
		default:
			out, err = fm.Set(j, path, text)
		}
		if err != nil {
			if !alike(out, j) || err.Error() == "" {
				t.Fatalf("refused (%v), but changed", err)
			}
			return
		}
		back, err := Parse(Encode(out))
		if err != nil {
			t.Fatalf("%q = %q makes a job that does not read:\n%s\n%v", path, text, Encode(out), err)
		}
		if !alike(back, out) {
			t.Fatalf("%q = %q makes a job that reads back otherwise:\n%s", path, text, Encode(out))
		}
		if !reflect.DeepEqual(out.Check(), Faults(nil)) {
			t.Fatalf("%q = %q makes an unsound job: %v", path, text, out.Check())
		}
		measured(t, &out)
		fm.Sections(out)
	})
}

// A long chain of edits, each from the job before, never breaks the job.
func TestEditsInARow(t *testing.T) {
	j := Blank(762, 1981, 40)
	for i, step := range [][2]string{
		{"leaf.make", "framed"}, {"leaf.lock.kind", "mortice"}, {"hand", "right"}, {"leaf.height", "1960"}, {"opening.head.falls", "7"},
		{"opening.latch_jamb.leans", "2"}, {"opening.width", "770"}, {"leaf.face.closing.wind", "4"}, {"floor.rise", "8"}, {"floor.threshold", "5"},
		{"leaf.lock.height", "940"}, {"wanted.preset", "bare"}, {"hand", "left"}, {"opening.rebate", "44"}, {"leaf.make", "boarded"},
	} {
		next, err := Form{}.Set(j, step[0], step[1])
		if err != nil {
			t.Fatalf("step %d, %v: %v", i, step, err)
		}
		back := must(t, string(Encode(next)))
		if !alike(back, next) {
			t.Fatalf("step %d, %v: reads back otherwise", i, step)
		}
		j = next
	}
	if j.Door.Latch.Height != 940 || j.Door.Floor.At(770, 0) != 5 || j.Door.Frame.Head.At(770) != j.OpeningHeight-7 {
		t.Errorf("at the end:\n%s", Encode(j))
	}
	if j.Anatomy.Make != door.Boarded {
		t.Errorf("make %q", j.Anatomy.Make)
	}
}
