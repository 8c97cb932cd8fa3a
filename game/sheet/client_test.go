package sheet

import (
	"fmt"
	"math"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/hardware"
	"leafwright/game/internal/demos"
	"leafwright/game/measure"
	"leafwright/game/words"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

// clientJobs are the demos, with ways to make them fit where they have none: planed,
// hung otherwise, a strip glued on.
func clientJobs(t testing.TB) (all []game.Job) {
	t.Helper()
	for _, j := range demos.All(t) {
		if len(j.Options) == 0 {
			j.Options = []game.Option{
				{Name: "Shave it", Moves: []trim.Move{
					{Kind: trim.Plane, Edge: door.LatchSide, First: 2, Last: 3.5},
					{Kind: trim.Scribe, Edge: door.HeadSide, Line: geom.Through(0, 1, 300, 2.5)},
				}},
				{Name: "Hang it otherwise", Moves: []trim.Move{
					{Kind: trim.Pack, Hinge: 2, On: trim.OnJamb, First: 1.5},
					{Kind: trim.Raise, On: trim.OnLeaf, First: 1.5},
					{Kind: trim.Restop, Edge: door.LatchSide, First: 2, Last: -2},
				}},
				{Name: "Saw it and glue a piece on", Moves: []trim.Move{
					{Kind: trim.Cut, Edge: door.HeadSide, First: 14, Last: 9},
					{Kind: trim.Splice, Edge: door.HeadSide, Face: trim.Middle, First: 12, Last: 12, Stock: j.Door.Leaf.Thickness},
					{Kind: trim.Bevel, Edge: door.LatchSide, Angle: 3 * geom.Degree},
				}},
			}
		}
		if j.Survey != nil { // what is advised, which fits as far as the readings tell
			a := game.Advice(&j, game.AdviceWishes{})
			for k := range a.Plans {
				j.Options[k%3] = game.OptionOf(&a.Plans[k], "As advised, "+strconv.Itoa(k+1))
			}
		}
		all = append(all, j)
	}
	if len(all) < 9 {
		t.Fatal("no demos")
	}
	return all
}

// clientJob is the demo of that name.
func clientJob(t testing.TB, name string) game.Job {
	t.Helper()
	for _, j := range clientJobs(t) {
		if j.Name == name {
			return j
		}
	}
	t.Fatalf("no demo %q", name)
	return game.Job{}
}

var asked []Ask

// asks are sheets for the client of every demo: none, one and all of its ways, in
// either unit and all regions' words, with prices and without.
func asks(t testing.TB) (all []Ask) {
	if asked != nil {
		return slices.Clone(asked)
	}
	for i, j := range clientJobs(t) {
		if i%3 == 1 {
			j.Prices.Hour, j.Prices.Currency = 42, []string{"£", "kr", "$"}[i/3%3]
		}
		if i%4 == 1 {
			j.Prices.Of[game.StripWare], j.Prices.Of[game.DowelWare], j.Prices.Of[game.GlueWare], j.Prices.Of[game.EnamelWare] = 13, 0.4, 22, 31
		}
		for n := range min(3, len(j.Options)) + 1 {
			if n == 2 {
				continue
			}
			a := Ask{Job: &j, Kind: Client, Paper: Papers[i%2], Words: words.Regions[(i+n)%3]}
			if (i+n)%4 == 3 {
				a.Unit = measure.Inch
			}
			for o := range n {
				a.Options = append(a.Options, o)
			}
			all = append(all, a)
		}
	}
	// for keeps, with two ways more and with three
	for _, n := range []int{2, 3} {
		j := clientJob(t, "Terrace house, back bedroom")
		j.Made = []trim.Move{{Kind: trim.Plane, Edge: door.HeadSide, First: 0, Last: 4.5}, {Kind: trim.Plane, Edge: door.LatchSide, First: 1, Last: 1, From: 300, To: 900}}
		all = append(all, Ask{Job: &j, Kind: Client, Paper: Papers[0], Options: []int{0, 1, 2}[:n], Words: words.UK})
	}
	asked = all
	return slices.Clone(all)
}

var laidOut = map[*game.Job]map[string][]Page{}

// pagesOf lays a sheet out, once for one of those asked.
func pagesOf(t testing.TB, a *Ask) []Page {
	t.Helper()
	key := fmt.Sprint(a.Options, a.Words, a.Unit, a.Paper)
	if known := laidOut[a.Job][key]; known != nil {
		return known
	}
	if laidOut[a.Job] == nil {
		laidOut[a.Job] = map[string][]Page{}
	}
	pages, err := Pages(a)
	if err != nil || len(pages) == 0 {
		t.Fatalf("%d pages, %v", len(pages), err)
	}
	laidOut[a.Job][key] = pages
	return pages
}

// written is all that stands on the pages, line after line, hard spaces as others.
func written(pages []Page) string {
	var b strings.Builder
	for i := range pages {
		for _, m := range pages[i].Marks {
			if m.Kind == draw.Text {
				b.WriteString(strings.ReplaceAll(m.Text, "\u00a0", " ") + " ")
			}
		}
	}
	return b.String()
}

func says(t *testing.T, text, want string) {
	t.Helper()
	if !strings.Contains(text, want) {
		t.Errorf("%q is not in %q", want, text)
	}
}

// trade are words that nobody need know who never hung a door; those of the lexicon
// come to them.
const trade = `arris backset bevel bevelled dowel gain gauge haunch head hinge-bound jamb keep kerf knuckle leaf lining
mortice muntin offcut packer packing pack plane planing plumb proud rail rebate rabbet recess scribe scribed scribing shim splice stile stop
stop-bound strike striker taper tapered tenon threshold undercut wedge winding sink rip stock chamfer astragal forend
sightline architrave feeler gable sash transom mullion reveal nosing cramp`

// everyday are words of the lexicon that everybody knows.
var everyday = map[string]bool{"corner": true}

func TestNoTradeWordUnexplained(t *testing.T) {
	list := strings.Fields(trade)
	for _, r := range words.Regions {
		v := reflect.ValueOf(words.For(r))
		for i := range v.NumField() {
			if w := v.Field(i).String(); !everyday[w] {
				list = append(list, w)
			}
		}
	}
	slices.Sort(list)
	list = slices.Compact(list)
	all := asks(t)
	// ways named in the trade's own words, and one of every kind of move
	j := clientJob(t, "Schoolroom, cloakroom door")
	j.Options = []game.Option{{Name: "Ease the " + strings.Join(list[:len(list)/2], ", ")}, {Name: strings.Join(list[len(list)/2:], ", ")}, {Name: "Each"}}
	for k := range trim.Kinds {
		j.Options[2].Moves = append(j.Options[2].Moves, j.NewMove(trim.Kinds[k].Kind))
	}
	all = append(all, Ask{Job: &j, Kind: Client, Paper: Papers[0], Options: []int{2}, Words: words.UK}, Ask{Job: &j, Kind: Client, Paper: Papers[0], Options: []int{2}, Words: words.US})
	for _, r := range words.Regions { // what the advice calls its ways
		j := clientJob(t, "Terrace house, back bedroom")
		all = append(all, Ask{Job: &j, Kind: Client, Paper: Papers[0], Options: []int{2}, Words: r, Plans: game.Advice(&j, game.AdviceWishes{}).Plans[1:]})
	}
	named := len(all)
	all = append(all, Ask{Job: &j, Kind: Client, Paper: Papers[0], Options: []int{0, 1, 2}, Words: words.UK})
	met := 0
	for i := range all {
		text := strings.ToLower(written(pagesOf(t, &all[i])))
		for _, w := range list {
			if !regexp.MustCompile(`(^|[^\pL-])` + regexp.QuoteMeta(w) + `($|[^\pL-])`).MatchString(text) {
				continue
			}
			met++
			if i == named && strings.Contains("rip stock chamfer astragal forend sightline architrave feeler gable sash transom mullion reveal nosing cramp", w) {
				continue // only in names that were made for this test
			}
			_, box, _ := strings.Cut(text, "words used here")
			if !regexp.MustCompile(` `+regexp.QuoteMeta(w)+`[,:] `).MatchString(box) && !onlyInside(text, w) {
				t.Errorf("%s: %q is not explained", all[i].Job.Name, w)
			}
		}
	}
	if met < 40 {
		t.Errorf("only %d words met", met)
	}
}

// onlyInside tells whether a word stands nowhere but in longer ones that are explained.
func onlyInside(text, w string) bool {
	for _, term := range terms {
		for _, form := range strings.Split(term.forms, ",") {
			if strings.Contains(form, w) && form != w {
				text = strings.ReplaceAll(text, form, "")
			}
		}
	}
	return !regexp.MustCompile(`(^|[^\pL-])` + regexp.QuoteMeta(w) + `($|[^\pL-])`).MatchString(text)
}

// No meaning needs explaining itself, and no form stands twice.
func TestMeaningsArePlain(t *testing.T) {
	seen := map[string]bool{}
	for _, term := range terms {
		if again := explained([]string{term.meaning}); len(again) > 0 {
			t.Errorf("%s: %q says %v", term.forms, term.meaning, again)
		}
		for _, form := range strings.Split(term.forms, ",") {
			if seen[form] {
				t.Errorf("%q stands twice", form)
			}
			seen[form] = true
		}
	}
	got := explained([]string{"The Latch-Jamb, and the latch jamb; Packers.", "check-out"})
	want := [][2]string{{"check-out", ""}, {"latch jamb", ""}, {"packers", ""}}
	for i := range got {
		got[i][1] = ""
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%v", got)
	}
}

// model is every number the model has for a way of a sheet, worked out anew.
type model struct {
	numbers []float64
	gaps    [fit.Edges]*fit.Gap
}

func (m *model) add(all ...float64) {
	for _, x := range all {
		m.numbers = append(m.numbers, math.Abs(x))
	}
}

func modelOf(j *game.Job, made, option []trim.Move) (m model, f *fit.Fit) {
	found := trim.Piece{Door: j.Door, Anatomy: j.Anatomy}
	stands, _ := trim.All(found, made)
	p, steps := trim.All(stands, option)
	f = new(fit.Fit)
	d := p.Door
	fit.Evaluate(f, &d)
	for e := range fit.Edges {
		m.gaps[e] = &f.Gaps[e]
		m.add(f.Gaps[e].Least, f.Gaps[e].Most, f.Swing[e].Least)
	}
	for _, g := range f.Stops {
		m.add(g.Least, g.Most)
	}
	m.add(f.LatchMiss, f.ClearToStop, f.Strain, j.Wanted.ClearWidth)
	for i := range d.Hinges {
		m.add(f.OutOfLine(i), f.Unseated(i))
	}
	volume, minutes := 0.0, 0.0
	for _, s := range steps {
		v := s.Move
		m.add(v.First, v.Last, v.Cover, v.From, v.To, v.Angle.Degrees())
		for _, st := range v.Line {
			m.add(st.Value)
		}
		if s.Why == nil {
			volume += s.Done.Volume / 1000
			minutes += s.Done.Minutes
			for _, l := range s.Done.Left {
				m.add(l.Before, l.Now)
			}
		}
	}
	m.add(volume)
	return m, f
}

// number finds numbers and what is written behind them.
var numbered = regexp.MustCompile(`\d+(?:\.\d+)?`)

// Every number on a sheet is one of the model's, to the figures written; those in the
// pictures are of the gap's own curve.
func TestNumbersAreTheModels(t *testing.T) {
	for _, a := range asks(t) {
		if a.Unit == measure.Inch {
			continue // the same numbers by another pen: TestInches
		}
		j := a.Job
		var all []model
		m, _ := modelOf(j, nil, nil)
		all = append(all, m)
		m, _ = modelOf(j, j.Made, nil)
		all = append(all, m)
		columns := []game.Column{j.Column(game.AsFound), j.Column(game.AsItStands)}
		for _, o := range a.Options {
			m, _ = modelOf(j, j.Made, j.Options[o].Moves)
			all = append(all, m)
			columns = append(columns, j.Column(o))
		}
		stands := j.Stands()
		for i := range columns {
			c := &columns[i]
			m := &all[i]
			for _, l := range c.Narrows {
				m.add(l.Before, l.Now)
			}
			for _, s := range c.Sightlines {
				m.add(s.Above)
			}
			m.add(c.Off, 100*c.Volume*1000/(j.Door.Leaf.Width*j.LeafHeight*j.Door.Leaf.Thickness), 0.1)
			year := hardware.SeasonOf(j, &c.Tried, hardware.Usual(game.WhereOf(j)))
			m.add(year.Least[year.Tight], year.Most[year.Slack])
			if i >= 2 {
				if w := hardware.WorkIn(j, &stands, c.Tried.Steps); w != nil {
					for _, n := range numbered.FindAllString(hardware.Time(w.Bill.Hands)+" "+hardware.Time(w.Bill.Waits), -1) {
						x, _ := strconv.ParseFloat(n, 64)
						m.add(x)
					}
					if cost := hardware.CostOf(w, &j.Prices); cost != nil {
						m.add(cost.All, cost.Work, cost.Materials)
					}
				}
			}
			if j.Survey != nil {
				change := j.Survey.ChangeAfter(0)
				if i > 0 {
					change = j.Change(c.Option)
				}
				j.SureOf(change).Weigh(c.Findings)
				for _, f := range c.Findings {
					m.add(f.Margin, f.OtherMargin)
				}
			}
			for _, f := range c.Findings {
				m.add(f.Worst)
			}
		}
		pages := pagesOf(t, &a)
		for i := range pages {
			for _, mark := range pages[i].Marks {
				if mark.Kind != draw.Text || strings.HasPrefix(mark.Text, "Page ") || strings.HasPrefix(mark.Text, "Check the print") || strings.Contains(mark.Text, "times true size") || strings.Contains(mark.Text, j.Name) {
					continue
				}
				text := mark.Text
				if before, _, chance := strings.Cut(text, " in 10"); chance { // TestChances holds it
					text = strings.TrimRight(before, "0123456789")
				}
				for _, n := range numbered.FindAllString(text, -1) {
					if !isTheModels(n, all) {
						t.Errorf("%s: %s of %q is not the model's", j.Name, n, mark.Text)
					}
				}
			}
		}
	}
}

// isTheModels tells whether a number, as written, is one of the model's or one a gap has.
func isTheModels(n string, all []model) bool {
	x, _ := strconv.ParseFloat(n, 64)
	half := 0.5 + 1e-9
	if i := strings.IndexByte(n, '.'); i >= 0 {
		half = math.Pow(10, -float64(len(n)-i-1))/2 + 1e-9
	}
	for i := range all {
		for _, y := range all[i].numbers {
			if math.Abs(x-y) <= half {
				return true
			}
		}
		for _, g := range all[i].gaps {
			if strings.Contains(n, ".") && (g.Least-half <= x && x <= g.Most+half || g.Least-half <= -x && -x <= g.Most+half) && len(g.Pieces) > 0 {
				return true
			}
		}
	}
	return false
}

// What is said of a way is the model's, in the words for it.
func TestWhatIsSaidOfAWay(t *testing.T) {
	for _, a := range asks(t) {
		text := written(pagesOf(t, &a))
		s := words.Speaker{}
		if a.Unit == measure.Inch {
			s.Length = words.Inches
		}
		for _, o := range a.Options {
			m, f := modelOf(a.Job, a.Job.Made, a.Job.Options[o].Moves)
			c := a.Job.Column(o)
			says(t, text, s.Span(f.Gaps[fit.FloorSide].Least, f.Gaps[fit.FloorSide].Most))
			if c.Volume > 0 {
				says(t, text, words.CubicCentimetres(m.numbers[len(m.numbers)-1]*1000)+", ")
			}
			good := judge.Worst(judge.Verdicts(f, &c.Tried.Door, &a.Job.Wanted)) == judge.Good
			if good && c.Refused == 0 {
				headline := "Fits well all round"
				if a.Job.Survey != nil {
					a.Job.SureOf(a.Job.Change(o)).Weigh(c.Findings)
				}
				for i := range c.Findings {
					if c.Findings[i].InDoubt() {
						headline = "Fits as measured, but that is in doubt"
					}
				}
				says(t, text, headline)
				says(t, text, "Swings freely")
			}
		}
		if a.Job.Survey != nil {
			greatest := 0.0
			margins := func(option int, change survey.Change) {
				all := a.Job.Column(option).Findings
				a.Job.SureOf(change).Weigh(all)
				for _, f := range all {
					if f.Subject != judge.ClosedGap {
						continue
					}
					greatest = max(greatest, f.Margin, f.OtherMargin)
					if f.Verdict != judge.Good {
						says(t, text, " ± "+s.Span(max(f.Margin, 0.1), max(f.Margin, 0.1)))
					}
				}
			}
			margins(game.AsFound, a.Job.Survey.ChangeAfter(0))
			for _, o := range a.Options {
				margins(o, a.Job.Change(o))
			}
			says(t, text, "Nine times out of ten the true gap is within "+s.Amount(greatest))
		} else if strings.Contains(text, "±") {
			t.Errorf("%s: ± without readings", a.Job.Name)
		}
		if priced := (a.Job.Prices.Hour > 0 || a.Job.Prices.Of != [game.Wares]float64{}) && len(a.Options) > 0; strings.Contains(text, "What it costs") != priced || !priced && strings.ContainsAny(text, "£$") {
			t.Errorf("%s: of prices %v is said %q", a.Job.Name, a.Job.Prices, text)
		}
		says(t, text, "Signature")
		says(t, text, "Date")
		if len(a.Job.Made) > 0 {
			says(t, text, "As it is now")
			if found := strings.Contains(text, "As it was found"); found != (len(a.Options) < 3) {
				t.Errorf("as found beside %d ways: %v", len(a.Options), found)
			}
		}
	}
}
