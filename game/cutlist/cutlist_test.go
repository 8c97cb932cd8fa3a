package cutlist

import (
	"bytes"
	"encoding/csv"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/internal/demos"
	"leafwright/game/measure"
	"leafwright/game/words"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// jobs are the demos, each with an option more that holds a move of every kind the
// door takes, and the first of it made for keeps.
func jobs(t *testing.T) (all []game.Job) {
	t.Helper()
	for _, j := range demos.All(t) {
		if _, _, err := j.Shapes(); err != nil {
			t.Fatal(err)
		}
		if !j.Anatomy.Rated {
			o := game.Option{Name: "=one of \"each\", +tax"}
			for k := range trim.Kinds {
				o.Moves = append(o.Moves, j.NewMove(trim.Kinds[k].Kind))
			}
			o.Moves = append(o.Moves, trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 3, Last: 1, From: 300, To: 1100},
				trim.Move{Kind: trim.Scribe, Edge: door.HeadSide, Line: geom.Through(0, 2, 200, 3.5, 500, 1)},
				trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 1, Last: 1, Off: true, Note: "@not yet"})
			j.Options = append(j.Options, o)
			j.Made = []trim.Move{{Kind: trim.Plane, Edge: door.FloorSide, First: 0.5, Last: 1}}
		}
		all = append(all, j)
	}
	if len(all) < 9 {
		t.Fatal("no demos")
	}
	return all
}

func speaker() *words.Speaker { return &words.Speaker{Lexicon: words.For(words.UK)} }

// read reads the table back and gives its cells under their heads.
func read(t *testing.T, data []byte) (lines []map[string]string) {
	t.Helper()
	r := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(data, []byte("\ufeff"))))
	all, err := r.ReadAll() // as many cells in every line, or an error
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range all[1:] {
		m := map[string]string{}
		for i, head := range all[0] {
			m[head] = l[i]
		}
		lines = append(lines, m)
	}
	return lines
}

// value reads a number's cell; ok where there is one.
func value(t *testing.T, l map[string]string, head string) (x float64, ok bool) {
	t.Helper()
	text, known := l[head]
	if !known {
		t.Fatalf("no column %q", head)
	}
	if text == "" {
		return 0, false
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatalf("%s: %v", head, err)
	}
	return x, true
}

// each runs a check over every option of every job, and the door as it stands.
func each(t *testing.T, do func(t *testing.T, j *game.Job, option int)) {
	for _, j := range jobs(t) {
		for option := game.AsItStands; option < len(j.Options); option++ {
			do(t, &j, option)
		}
	}
}

// hung is the door after an option, hung anew by package fit alone.
func hung(j *game.Job, option int) (trim.Piece, *fit.Fit) {
	p, _ := trim.All(trim.Piece{Door: j.Door, Anatomy: j.Anatomy}, j.Made)
	if option >= 0 {
		p, _ = trim.All(p, j.Options[option].Moves)
	}
	f := new(fit.Fit)
	fit.Evaluate(f, &p.Door)
	return p, f
}

const half = 0.005 + 1e-9 // of the last figure, mm

func TestGapsAreTheModels(t *testing.T) {
	each(t, func(t *testing.T, j *game.Job, option int) {
		_, f := hung(j, option)
		s := speaker()
		least := map[string]float64{}
		wanted := j.Column(option).Wanted
		for _, l := range read(t, CSV(Rows(j, option, s), measure.MM)) {
			after, has := value(t, l, "after (mm)")
			place, _ := value(t, l, "place (mm)")
			for e := range fit.Edges {
				switch {
				case l["row"] == ClosedGap && l["part"] == s.Edge(e) && has:
					g := &f.Gaps[e]
					// the place is rounded too, and the gap may slope there
					if want := g.At(place); !(math.Abs(after-want) <= half+0.5*half) {
						t.Errorf("%s, %d: gap at the %s, %v: %v, the model has %v", j.Name, option, s.Edge(e), place, after, want)
					}
					if x, ok := least[s.Edge(e)]; !ok || after < x {
						least[s.Edge(e)] = after
					}
					if l["after is"] == words.Word(judge.Good) != (wanted.Gaps[e].Judge(g.At(place)) == judge.Good) && clear(g.At(place), wanted.Gaps[e]) {
						t.Errorf("%s: %v mm at the %s is called %q", j.Name, after, s.Edge(e), l["after is"])
					}
				case l["row"] == SwingGap && l["part"] == s.Edge(e) && has:
					angle, _ := value(t, l, "open or bevel (degrees)")
					if !(math.Abs(after-f.Swing[e].Least) <= half) || !(math.Abs(angle-f.Swing[e].Angle.Degrees()) <= 0.0005+1e-9) {
						t.Errorf("%s, %d: swing at the %s: %v at %v, the model has %v at %v", j.Name, option, s.Edge(e), after, angle, f.Swing[e].Least, f.Swing[e].Angle.Degrees())
					}
				}
			}
			if l["row"] == ClearWay && !(math.Abs(after-f.ClearToStop) <= half) {
				t.Errorf("clear way %v, the model has %v", after, f.ClearToStop)
			}
			if l["row"] == LatchMiss && !(math.Abs(after-f.LatchMiss) <= half) {
				t.Errorf("latch %v, the model has %v", after, f.LatchMiss)
			}
		}
		for e := range fit.Edges {
			if x, ok := least[s.Edge(e)]; !ok || !(math.Abs(x-f.Gaps[e].Least) <= half) {
				t.Errorf("%s, %d: the least gap told at the %s is %v, the model has %v", j.Name, option, s.Edge(e), x, f.Gaps[e].Least)
			}
		}
	})
}

// clear tells whether a gap is farther from its limits than rounding reaches.
func clear(x float64, l judge.Limits) bool {
	return math.Abs(x-l.Least) > 0.01 && math.Abs(x-l.Most) > 0.01
}

// Carrying out the table's own amounts, in their order, on the leaf as found gives the
// leaf after.
func TestAmountsMakeTheLeaf(t *testing.T) {
	told := 0
	each(t, func(t *testing.T, j *game.Job, option int) {
		p, _ := hung(j, option)
		s := speaker()
		names := map[string]door.Edge{s.HangingEdge: door.HingeSide, s.ClosingEdge: door.LatchSide, "top": door.HeadSide, "foot": door.FloorSide}
		var edges, want [door.Edges]geom.Profile
		for e := range door.Edges {
			was, _ := j.Door.Leaf.Line(e)
			is, _ := p.Door.Leaf.Line(e)
			edges[e], want[e] = *was, *is
		}
		type key struct {
			move string
			e    door.Edge
		}
		var order []key
		lines := map[key]geom.Profile{}
		deep := map[string]float64{}
		for _, l := range read(t, CSV(Rows(j, option, s), measure.MM)) {
			change, _ := value(t, l, "change (mm)")
			place, _ := value(t, l, "place (mm)")
			e, isEdge := names[l["part"]]
			switch {
			case isEdge && (l["row"] == TimberOff || l["row"] == TimberOn):
				_, in := j.Door.Leaf.Line(e)
				if l["row"] == TimberOn {
					in = -in
				}
				k := key{l["move"], e}
				if lines[k] == nil {
					order = append(order, k)
				}
				lines[k] = append(lines[k], geom.Station{At: place, Value: in * change})
				told++
			case l["row"] == HingeRow:
				deep[l["part"]] += change
				told++
			}
		}
		for _, k := range order {
			edges[k.e] = edges[k.e].Plus(held(lines[k]))
		}
		for e := range door.Edges {
			ends := p.Door.Leaf.Ends(e, 0)
			for i := range 101 {
				at := ends.Lo + ends.Length()*float64(i)/100
				if got, w := edges[e].At(at), want[e].At(at); !(math.Abs(got-w) <= 0.01*float64(len(order)+1)) {
					t.Errorf("%s, option %d: edge %d at %.1f comes to %.3f, the model has %.3f", j.Name, option, e, at, got, w)
					break
				}
			}
		}
		for i, h := range p.Door.Hinges {
			was := j.Door.Hinges[i]
			name := "hinge " + strconv.Itoa(i+1) + ": depth of its " + s.Gain + " in the leaf"
			if got := was.LeafGain + deep[name]; !(math.Abs(got-h.LeafGain) <= 0.05) {
				t.Errorf("%s, option %d: %s comes to %.3f, the model has %.3f", j.Name, option, name, got, h.LeafGain)
			}
		}
	})
	if told < 200 {
		t.Errorf("only %d amounts in all", told)
	}
}

// held makes amounts told at places a line that is held at nothing beyond one that
// ends there, and runs on else.
func held(p geom.Profile) geom.Profile {
	const on = 1.0
	if len(p) > 2 && p[0].Value == 0 {
		p = append(geom.Profile{{At: p[0].At - on}}, p...)
	}
	if n := len(p) - 1; n > 1 && p[n].Value == 0 {
		p = append(p, geom.Station{At: p[n].At + on})
	}
	return p
}

func TestEveryMoveIsThere(t *testing.T) {
	each(t, func(t *testing.T, j *game.Job, option int) {
		moves := 0
		for _, l := range read(t, CSV(Rows(j, option, speaker()), measure.MM)) {
			if l["row"] == MoveRow {
				moves++
			}
		}
		want := len(j.Made)
		if option >= 0 {
			want += len(j.Options[option].Moves)
		}
		if moves != want {
			t.Errorf("%s, option %d: %d moves, want %d", j.Name, option, moves, want)
		}
	})
}

func TestRowsByRFC4180(t *testing.T) {
	r := row("closed gap")
	r.Note, r.Part, r.Place = "a \"b\", c\r\nd", "=1+1", -1.004
	data := CSV([]Row{r}, measure.MM)
	if !bytes.HasSuffix(data, []byte("\r\n")) || bytes.Count(bytes.ReplaceAll(data, []byte("c\r\nd"), nil), []byte("\n")) != 2 {
		t.Errorf("lines: %q", data)
	}
	l := read(t, data)[0]
	if l["note"] != "a \"b\", c\nd" { // the reader makes \r\n one \n
		t.Errorf("note %q", l["note"])
	}
	if l["part"] != "'=1+1" || l["place (mm)"] != "-1.00" || l["after (mm)"] != "" {
		t.Errorf("%v", l)
	}
}

// The signs are those of OWASP's page on CSV injection, read from memory.
func TestNoTextIsAFormula(t *testing.T) {
	for _, text := range []string{"=1", "+1", "-1", "@x", "  =1", "\t=1", "\rx", "＝1", "\u00a0=1"} {
		if got := safe(text); got != "'"+text {
			t.Errorf("%q stays %q", text, got)
		}
	}
	for _, text := range []string{"", "1", "a=b", "−1 mm", "door", "'tis", " a"} {
		if got := safe(text); got != text {
			t.Errorf("%q became %q", text, got)
		}
	}
	each(t, func(t *testing.T, j *game.Job, option int) {
		for _, l := range read(t, CSV(Rows(j, option, speaker()), measure.MM)) {
			for head, text := range l {
				if text != "" && strings.ContainsRune("=+@", rune(text[0])) {
					t.Errorf("%s: %q", head, text)
				}
				if text != "" && text[0] == '-' {
					if _, err := strconv.ParseFloat(text, 64); err != nil {
						t.Errorf("%s: %q", head, text)
					}
				}
			}
		}
	})
}

func TestInInches(t *testing.T) {
	j := jobs(t)[1]
	mm, in := read(t, CSV(Rows(&j, 0, speaker()), measure.MM)), read(t, CSV(Rows(&j, 0, speaker()), measure.Inch))
	if len(mm) != len(in) || len(mm) < 30 {
		t.Fatalf("%d and %d rows", len(mm), len(in))
	}
	for i := range mm {
		for _, head := range []string{"place", "as found", "as it stands", "after", "change", "least wanted", "most wanted"} {
			a, hasA := value(t, mm[i], head+" (mm)")
			b, hasB := value(t, in[i], head+" (in)")
			if hasA != hasB || !(math.Abs(a-25.4*b) <= half+25.4*0.00005) {
				t.Errorf("row %d, %s: %v mm, %v in", i, head, a, b)
			}
		}
	}
}

func FuzzText(f *testing.F) {
	for _, s := range []string{"", "=1", "a,b", "\"", "\r\n", "\xff", "- 1", "\r\r\n"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r := row(text)
		r.Note = text
		all, err := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(CSV([]Row{r}, measure.MM), []byte("\ufeff")))).ReadAll()
		if err != nil || len(all) != 2 {
			t.Fatalf("%q: %v, %v", text, all, err)
		}
		ends := regexp.MustCompile(`\r+\n`) // the reader makes it one
		want := ends.ReplaceAllString(safe(text), "\n")
		if got := ends.ReplaceAllString(all[1][13], "\n"); got != want {
			t.Errorf("%q is read back as %q", want, got)
		}
	})
}
