package game

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// plainest is as little as a job file can hold.
const plainest = `{
  "leafwright": 1,
  "leaf": {"width": 762, "height": 1981, "thickness": 35},
  "opening": {"width": 768, "height": 1996},
  "hinges": [{"jamb": 1803, "leaf": 1791}, {"jamb": 277, "leaf": 265}]
}
`

func must(t testing.TB, text string) Job {
	t.Helper()
	j, err := Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// swap changes one piece of a file that must be there once.
func swap(t testing.TB, text, old, new string) string {
	t.Helper()
	if strings.Count(text, old) != 1 {
		t.Fatalf("%q is not there once", old)
	}
	return strings.Replace(text, old, new, 1)
}

func TestWhatIsLeftOut(t *testing.T) {
	j := must(t, plainest)
	want := door.Door{Leaf: door.Rectangle(762, 1981, 35), Frame: door.Square(768, 1996, 37, 12)}
	if !reflect.DeepEqual(j.Door.Frame, want.Frame) {
		t.Errorf("frame %+v\nwant  %+v", j.Door.Frame, want.Frame)
	}
	want.Leaf.HangingFace, want.Leaf.ClosingFace = geom.Level(0), geom.Level(0)
	if !reflect.DeepEqual(j.Door.Leaf, want.Leaf) {
		t.Errorf("leaf %+v\nwant %+v", j.Door.Leaf, want.Leaf)
	}
	if h := j.Door.Hinges[1]; h != (door.Hinge{JambHeight: 277, LeafHeight: 265, LeafGain: 2, JambGain: 2, Closed: 6, Pin: 5, Height: 75}) {
		t.Errorf("hinge %+v", h)
	}
	if j.Hand != Left || j.WantedName != "finished" || j.Wanted != presets[0].Wanted || j.Door.Latch.Height != 1981.0/2 ||
		j.Door.Opens.Degrees() != 90 || j.Anatomy.Make != door.Flush || !j.Door.Floor.IsLevel() {
		t.Errorf("job %+v", j)
	}
	if got := string(Encode(j)); got != plainest {
		t.Errorf("written as\n%s\nread from\n%s", got, plainest)
	}
}

func TestBlankIsSoundAndPlain(t *testing.T) {
	for _, size := range [][3]float64{{762, 1981, 40}, {door.LeafWidth.Lo, door.LeafHeight.Lo, door.LeafThickness.Lo}, {door.LeafWidth.Hi, door.LeafHeight.Hi, door.LeafThickness.Hi}} {
		j := Blank(size[0], size[1], size[2])
		if faults := j.Check(); faults != nil {
			t.Errorf("%v: %v", size, faults)
		}
		if back := must(t, string(Encode(j))); !alike(back, j) {
			t.Errorf("%v: written and read back as %+v\nwas %+v", size, back, j)
		}
		var f fit.Fit
		fit.Evaluate(&f, &j.Door)
		for e := fit.HingeSide; e < fit.Edges; e++ {
			for _, gap := range []float64{f.Gaps[e].Least, f.Gaps[e].Most} {
				if v := j.Wanted.Gaps[e].Judge(gap); v != judge.Good {
					t.Errorf("%v: edge %d has a gap of %v: %v", size, e, gap, v)
				}
			}
		}
	}
}

// rich has every field of the file, none as it is when left out.
const rich = `{
  "leafwright": 1,
  "name": "Test house, loft",
  "note": "One line.\nTwo \"lines\".",
  "leaf": {
    "width": 762, "height": 1981, "thickness": 35.5,
    "hanging": [[0, 0.5], [1981, -0.25]],
    "closing": [[0, 762], [900, 760.75], [1981, 761]],
    "top": [[0, 1981], [762, 1976.125]],
    "bottom": [[0, 0], [762, 2]],
    "face": {"hanging": [[0, 0], [1000, 1.5], [1981, 0]], "closing": [[0, 0], [1981, 7]]},
    "bevel": {"hanging": 1.5, "closing": 3.576},
    "make": "framed",
    "stiles": {"hanging": 108, "closing": 104},
    "rails": [{"name": "bottom", "from": 2, "to": 210}, {"from": 760, "to": 950}, {"name": "top", "from": 1870, "to": 1980}],
    "muntins": [{"at": 380, "width": 95, "from": 210, "to": 760}],
    "joints": {"kind": "dowelled", "tenon": 44, "haunch": 21, "wedge": 7},
    "panels": "raised",
    "lock": {"kind": "rim", "height": 930, "backset": 60, "case": 110, "depth": 140},
    "timber": "pitch pine", "glazed": true, "rated": true,
    "voids": [
      {"at": "closing", "from": 880, "to": 990, "off": 10, "wide": 16, "depth": 76, "what": "mortice", "do": "cut out"},
      {"at": "knuckle", "from": 300, "to": 700, "off": 15, "wide": 25, "depth": 12, "open": 40, "what": "borer", "live": true, "do": "foam and fill"}
    ]
  },
  "opening": {
    "width": 770, "height": 1998,
    "hinge_jamb": [[0, 0], [1998, 1.5]],
    "latch_jamb": [[0, 770], [1000, 767], [1998, 769]],
    "head": [[0, 1998], [400, 1994], [770, 1991]],
    "front": {"hinge": [[0, 0], [1998, 2]], "latch": [[0, 1], [1998, -3]], "head": [[0, 2], [770, -3]]},
    "rebate": 41,
    "stops": {"hinge": [[0, -40], [1998, -39]], "latch": [[0, -41]], "head": [[0, -40], [300, -41], [770, -44]]},
    "stop_width": 13
  },
  "hinges": [
    {"jamb": 1800, "leaf": 1790, "closed": 7, "leaf_gain": 2.5, "jamb_gain": 1.5, "leaf_packer": 0.5, "jamb_packer": 0.25, "pin": 6, "proud": 0.5, "height": 100},
    {"jamb": 1000, "leaf": 990.5},
    {"jamb": 250, "leaf": 241}
  ],
  "latch": {"height": 931, "proud": -0.5},
  "floor": {"radii": [0, 400, 900], "angles": [0, 45, 100], "heights": [[0, 0, 0], [0, 1, 2.5], [0, 2, 4]]},
  "opens": 110,
  "wanted": {
    "preset": "own",
    "hinge": {"least": 1, "target": 2, "most": 3.5}, "latch": {"least": 1, "target": 2.25, "most": 0},
    "head": {"least": 1.5, "target": 2, "most": 4}, "floor": {"least": 3, "target": 5, "most": 9},
    "stop": {"least": 0.25, "target": 1, "most": 3}, "swing": {"least": 0.25, "target": 1},
    "swing_floor": {"least": 1, "target": 3}, "clear_width": 680
  },
  "neighbour": {"rails": [{"from": 10, "to": 220}, {"name": "lock", "from": 770, "to": 960}]},
  "house": {
    "region": "NZ", "built": 1911, "reclaimed": true, "outer": true, "escape": true, "toilet": true, "paid": true,
    "climate": "damp summer", "room": "unheated", "south": true
  },
  "paint": {
    "leaf": {"on": 6, "old": "alkyd", "film": 0.35, "strip": true, "primer": 1, "to_come": 2, "kind": "alkyd"},
    "frame": {"on": 4, "old": "enamel", "film": 0.2, "strip": true, "primer": 2, "to_come": 1, "kind": "unbuilt"}
  },
  "meter": {
    "january": 9, "february": 9.5, "march": 10, "april": 10.5, "may": 11, "june": 12, "july": 12.5, "august": 13,
    "september": 12, "october": 11.5, "november": 10.25, "december": 9.75
  },
  "prices": {
    "hour": 42, "strip": 9.5, "lining": 11, "threshold": 14, "dowel": 0.2, "plug": 0.35, "packer": 0.5, "screw": 0.1, "hinge": 6.75,
    "glue": 12, "primer": 21, "enamel": 32.5, "alkyd": 30, "unbuilt": 28, "filler": 16, "foam": 8, "currency": "£"
  },
  "readings": [],
  "made": [{"do": "sink", "hinge": 1, "on": "leaf", "first": 0.5, "note": "With the wide chisel."}],
  "options": [
    {
      "name": "Of the leaf",
      "moves": [
        {"do": "plane", "edge": "closing", "from": 300, "to": 900, "first": 2, "last": 1.5},
        {"do": "scribe", "off": true, "edge": "foot", "from": 10, "to": 700, "line": [[0, 1], [400, 3.5], [762, 2]]},
        {"do": "bevel", "edge": "closing", "angle": 3.5},
        {"do": "splice", "edge": "top", "face": "knuckle", "first": 9, "last": 10, "stock": 32, "set_in": 1.5, "hollow": 0.2}
      ]
    },
    {
      "name": "Of hinges and frame",
      "moves": [
        {"do": "rehinge", "hinge": 2, "closed": 7, "plates": 100, "pin": 6.5, "leaf_gain": 2.5, "jamb_gain": 3},
        {"do": "restop", "edge": "latch_jamb", "first": -1, "last": 2},
        {"do": "threshold", "cover": 12, "wide": 90}
      ]
    }
  ]
}`

func TestEverythingReadsBack(t *testing.T) {
	j := must(t, rich)
	out := Encode(j)
	back := must(t, string(out))
	if !alike(back, j) {
		t.Errorf("read back as %+v\nwas %+v", back, j)
	}
	if again := Encode(back); !bytes.Equal(again, out) {
		t.Errorf("written again as\n%s\nnot\n%s", again, out)
	}
	// All the fields the file had are there again, at the same values.
	was, _ := scan([]byte(rich))
	is, _ := scan(out)
	given, written := plainValue(&was).(map[string]any), plainValue(&is)
	delete(given, "readings")
	if !reflect.DeepEqual(given, written) {
		t.Errorf("written as\n%s", out)
	}
}

// What testdata/README.md shows as job files are job files.
func TestExamplesOfTheReadme(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "testdata", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	blocks := strings.Split(string(text), "```json\n")[1:]
	jobs := 0
	for _, block := range blocks {
		example, _, _ := strings.Cut(block, "```")
		if !strings.Contains(example, `"leafwright":`) { // a lesson
			continue
		}
		jobs++
		j := must(t, example)
		if back := must(t, string(Encode(j))); !alike(back, j) {
			t.Errorf("read back as %+v\nwas %+v", back, j)
		}
	}
	if jobs != 5 {
		t.Errorf("%d examples of jobs", jobs)
	}
}

// A right-hung job's opening has every x with the other sign; inside, and so in
// the fit, it is the left-hung job's mirror image.
func TestRightHungIsTheMirrorImage(t *testing.T) {
	left := must(t, rich)
	text := swap(t, rich, `"leafwright": 1,`, `"leafwright": 1, "hand": "right",`)
	text = swap(t, text, `[[0, 0], [1998, 1.5]]`, `[[0, 0], [1998, -1.5]]`)
	text = swap(t, text, `[[0, 770], [1000, 767], [1998, 769]]`, `[[0, -770], [1000, -767], [1998, -769]]`)
	text = swap(t, text, `[[0, 1998], [400, 1994], [770, 1991]]`, `[[-770, 1991], [-400, 1994], [0, 1998]]`)
	text = swap(t, text, `[[0, 2], [770, -3]]`, `[[-770, -3], [0, 2]]`)
	text = swap(t, text, `[[0, -40], [300, -41], [770, -44]]`, `[[-770, -44], [-300, -41], [0, -40]]`)
	right := must(t, text)
	if right.Hand != Right {
		t.Fatalf("hand %q", right.Hand)
	}
	if !reflect.DeepEqual(right.Door, left.Door) {
		t.Errorf("right-hung %+v\nleft-hung  %+v", right.Door, left.Door)
	}
	if back := must(t, string(Encode(right))); !alike(back, right) {
		t.Errorf("read back as %+v\nwas %+v", back, right)
	}
}

func TestFloorIsWrittenAsTheSimplestThatSaysIt(t *testing.T) {
	for _, row := range []struct{ situation, floor, written string }{
		{"left out", "0", ""},
		{"one number", "-3.5", `"floor": -3.5`},
		{"a level alone", `{"level": 2}`, `"floor": 2`},
		{"a threshold", `{"threshold": 12}`, `"floor": {"threshold": 12}`},
		{"a threshold on a level", `{"level": 1, "threshold": 12}`, `"floor": {"level": 1, "threshold": 12}`},
		{"heights", `{"radii": [0, 800], "angles": [0, 90], "heights": [[0, 0], [0, 6]]}`, `"floor": {"radii": [0, 800], "angles": [0, 90], "heights": [[0, 0], [0, 6]]}`},
	} {
		t.Run(row.situation, func(t *testing.T) {
			j := must(t, swap(t, plainest, `"leafwright": 1,`, `"leafwright": 1, "floor": `+row.floor+`,`))
			out := string(Encode(j))
			if row.written == "" && strings.Contains(out, "floor") || !strings.Contains(out, row.written) {
				t.Errorf("written as\n%s", out)
			}
			if back := must(t, out); !alike(back, j) {
				t.Errorf("read back as %+v, was %+v", back.Door.Floor, j.Door.Floor)
			}
		})
	}
}

// Gaps that are no longer their preset's are the person's own.
func TestPresetNames(t *testing.T) {
	for _, row := range []struct{ situation, wanted, name string }{
		{"a preset by name", `{"preset": "bare"}`, "bare"},
		{"its own number said again", `{"preset": "bare", "head": {"least": 4}}`, "bare"},
		{"another number", `{"preset": "bare", "head": {"least": 3}}`, Own},
		{"another floor is still the preset", `{"preset": "bare", "floor": {"most": 20}}`, "bare"},
		{"a clear width too", `{"preset": "bare", "clear_width": 700}`, "bare"},
		{"numbers without a name", `{"latch": {"target": 2.75}}`, Own},
	} {
		t.Run(row.situation, func(t *testing.T) {
			j := must(t, swap(t, plainest, `"leafwright": 1,`, `"leafwright": 1, "wanted": `+row.wanted+`,`))
			if j.WantedName != row.name {
				t.Errorf("called %q, want %q", j.WantedName, row.name)
			}
			if back := must(t, string(Encode(j))); !alike(back, j) {
				t.Errorf("read back as %+v, was %+v", back.Wanted, j.Wanted)
			}
		})
	}
}

// Angles survive the way through degrees to the last bit.
func TestDegreesComeBackTidy(t *testing.T) {
	for deg := -10.0; deg <= 180; deg += 0.1 {
		deg := float64(int(deg*10)) / 10
		a := geom.Angle(deg) * geom.Degree
		if got := inDegrees(a); got != deg+0 {
			t.Fatalf("%v° comes back as %v", deg, got)
		}
	}
}

func TestCloneSharesNothing(t *testing.T) {
	j := must(t, rich)
	was := string(Encode(j))
	c := j.Clone()
	c.Anatomy.Rails[0].To, c.Anatomy.Muntins[0].At, c.Voids[0].Depth = 1, 1, 1
	c.Door.Leaf.Top[0].Value, c.Door.Frame.Head[0].Value, c.Door.Hinges[0].Pin, c.Door.Floor.Heights[0][0] = 1, 1, 1, 1
	if string(Encode(j)) != was {
		t.Error("a change to the clone changed the job")
	}
}

// seeds are all the texts in a folder of testdata.
func seeds(t testing.TB, folder string) (names []string, texts [][]byte) {
	t.Helper()
	names, err := filepath.Glob(filepath.Join("..", "testdata", folder, "*.json"))
	if err != nil || len(names) == 0 {
		t.Fatalf("no files in testdata/%s: %v", folder, err)
	}
	slices.Sort(names)
	for _, name := range names {
		b, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		texts = append(texts, b)
	}
	return names, texts
}

// measured hangs a job that passed its check: that may not fail.
func measured(t testing.TB, j *Job) {
	t.Helper()
	var f fit.Fit
	fit.Evaluate(&f, &j.Door)
	for e := range f.Gaps {
		for _, x := range []float64{f.Gaps[e].Least, f.Gaps[e].Most, f.Swing[e].Least} {
			if math.IsNaN(x) {
				t.Fatalf("edge %d: no number for a gap of\n%s", e, Encode(*j))
			}
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, folder := range []string{"jobs", "bad"} {
		_, texts := seeds(f, folder)
		for _, b := range texts {
			f.Add(b)
		}
	}
	f.Add([]byte(rich))
	f.Add([]byte(leastRead))
	f.Add([]byte(rightly(f)))
	f.Fuzz(func(t *testing.T, data []byte) {
		j, err := Parse(data)
		if err != nil {
			if err.Error() == "" {
				t.Fatal("an error without words")
			}
			return
		}
		if faults := j.Check(); faults != nil {
			t.Fatalf("read without a fault, but %v", faults)
		}
		measured(t, &j)
		out := Encode(j)
		back, err := Parse(out)
		if err != nil {
			t.Fatalf("written as\n%s\nwhich does not read: %v", out, err)
		}
		if !alike(back, j) {
			t.Fatalf("written as\n%s\nand read back as %+v\nwas %+v", out, back, j)
		}
	})
}

func BenchmarkParse(b *testing.B) {
	data := []byte(rich)
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Parse(data); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkEncode(b *testing.B) {
	j := must(b, rich)
	b.ReportAllocs()
	for b.Loop() {
		Encode(j)
	}
}

func BenchmarkSections(b *testing.B) {
	j := must(b, rich)
	b.ReportAllocs()
	for b.Loop() {
		Form{}.Sections(j)
	}
}

func BenchmarkSet(b *testing.B) {
	j := must(b, rich)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := (Form{}).Set(j, "leaf.thickness", "36"); err != nil {
			b.Fatal(err)
		}
	}
}
