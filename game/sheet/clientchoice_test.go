package sheet

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/measure"
	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// The rule as it stands on the sheet: by how well the door fits, then by how much of
// the old wood stays, then by time.
func TestChosenByTheStatedRule(t *testing.T) {
	for name, c := range map[string]struct {
		all  []merit
		want int
	}{
		"a sound door is left alone":            {[]merit{{}, {timber: 0, minutes: 10}}, 0},
		"the one that fits":                     {[]merit{{binds: 1}, {slack: 1}, {timber: 500, minutes: 300}}, 2},
		"the less wood of two that fit":         {[]merit{{binds: 1}, {timber: 90, minutes: 20}, {timber: 10, minutes: 200}}, 2},
		"wood before time":                      {[]merit{{binds: 1}, {timber: 2.5, minutes: 1}, {timber: 0, minutes: 900}}, 2},
		"the less time where wood is alike":     {[]merit{{binds: 1}, {timber: 10.4, minutes: 60}, {timber: 10, minutes: 90}}, 1},
		"the first of those alike":              {[]merit{{binds: 1}, {timber: 10, minutes: 60}, {timber: 10, minutes: 62}}, 1},
		"nothing that cannot be done":           {[]merit{{binds: 2}, {undone: true}}, 0},
		"tight is worse than slack":             {[]merit{{binds: 1}, {tight: 1}, {slack: 3}}, 2},
		"binding is worse than all else":        {[]merit{{binds: 1}, {tight: 4, slack: 4}}, 1},
		"none that is no better":                {[]merit{{slack: 1}, {slack: 1, timber: 5}, {slack: 2}}, 0},
		"one that sticks in the damp is behind": {[]merit{{binds: 1}, {sticks: true}, {timber: 100, minutes: 100}}, 2},
		"though not behind one that is slack":   {[]merit{{binds: 1}, {sticks: true}, {slack: 1}}, 1},
	} {
		if got := choose(c.all); got != c.want {
			t.Errorf("%s: %d, want %d", name, got, c.want)
		}
	}
	// of many drawn: none that can be had fits better; of those as good none keeps more
	// than a shade more wood; of those alike in that none is quicker by more than a shade
	rnd := rand.New(rand.NewSource(7))
	for range 2000 {
		all := make([]merit, 1+rnd.Intn(4))
		for i := range all {
			all[i] = merit{undone: rnd.Intn(5) == 0, binds: rnd.Intn(2), tight: rnd.Intn(2), slack: rnd.Intn(3), timber: float64(rnd.Intn(6)), minutes: float64(10 * rnd.Intn(4))}
		}
		best := &all[choose(all)]
		key := func(m *merit) int { return 1000*truth(m.undone) + 100*m.binds + 10*m.tight + m.slack }
		least := best.timber
		for i := range all {
			m := &all[i]
			switch {
			case key(m) < key(best):
				t.Fatalf("%+v is chosen of %+v", *best, all)
			case key(m) == key(best):
				least = min(least, m.timber)
			}
		}
		if best.timber > least+alikeTimber {
			t.Fatalf("%+v is chosen of %+v", *best, all)
		}
		for i := range all {
			if m := &all[i]; key(m) == key(best) && m.timber <= least+alikeTimber && m.minutes < best.minutes-alikeMinutes {
				t.Fatalf("%+v is chosen of %+v", *best, all)
			}
		}
	}
}

// A job in which the closing edge is 2 mm too wide for its gap, and ways that come
// near, that fit, and that fit with less wood.
func TestRecommendedOnAJob(t *testing.T) {
	j := clientJob(t, "Schoolroom, cloakroom door") // square, its gaps as wanted
	j.Made = []trim.Move{{Kind: trim.Pack, On: trim.OnJamb, First: 2}}
	plane := func(by float64) trim.Move {
		return trim.Move{Kind: trim.Plane, Edge: door.HingeSide, First: by, Last: by}
	}
	unpack := trim.Move{Kind: trim.Pack, On: trim.OnJamb, First: -2}
	closing := trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 2, Last: 2}
	for name, c := range map[string]struct {
		ways       [][]trim.Move
		want, says string
	}{
		"cards out again":       {[][]trim.Move{{closing}, {unpack}}, "We recommend B", "fit well all round"},
		"none that is no use":   {[][]trim.Move{{plane(3)}}, "We recommend none of these", ""},
		"only what can be done": {[][]trim.Move{{{Kind: trim.Plane, Edge: door.LatchSide, First: 24, Last: 24, From: 5000, To: 5100}}, {unpack}}, "We recommend B", "none of the others does"},
		"the less wood":         {[][]trim.Move{{unpack, {Kind: trim.Ease, Edge: door.LatchSide, Face: trim.Stop, First: 3}}, {unpack}}, "We recommend B", "leaves all the old wood"},
	} {
		k := j.Clone()
		k.Options = nil
		a := Ask{Job: &k, Kind: Client, Paper: Papers[0], Words: words.UK}
		for i, moves := range c.ways {
			k.Options = append(k.Options, game.Option{Moves: moves})
			a.Options = append(a.Options, i)
		}
		text := written(pagesOf(t, &a))
		if !strings.Contains(text, c.want) || !strings.Contains(text, c.says) {
			t.Errorf("%s: %q", name, text)
		}
	}
	sound := clientJob(t, "Schoolroom, cloakroom door")
	text := written(pagesOf(t, &Ask{Job: &sound, Kind: Client, Paper: Papers[0], Options: []int{0}, Words: words.UK}))
	says(t, text, "We recommend leaving the door as it is")
	says(t, text, "nothing needs to be done")
	mend := clientJob(t, "Harbour house, back hall")
	mend.House, mend.Meter, mend.Paint = game.House{}, game.Meter{}, game.Paint{} // no season, no paint: it fits
	mend.Options = []game.Option{{Moves: []trim.Move{{Kind: trim.Ease, Edge: door.LatchSide, Face: trim.Stop, First: 1}}}}
	text = written(pagesOf(t, &Ask{Job: &mend, Kind: Client, Paper: Papers[0], Options: []int{0}, Words: words.UK}))
	says(t, text, "only its bad places need mending")
	says(t, text, "Two bad places are cut out and replaced with new wood and one bad place is filled.")
	says(t, text, "off its sharp edges")
}

func TestRatedLeafIsGivenNoAdvice(t *testing.T) {
	for _, mark := range []func(j *game.Job){
		func(j *game.Job) { j.Anatomy.Rated = true },
		func(j *game.Job) {
			for _, p := range game.Presets() {
				if p.Status == game.Inspection {
					j.WantedName, j.Wanted = p.Name, p.Wanted
				}
			}
		},
	} {
		j := clientJob(t, "Terrace house, back bedroom")
		mark(&j)
		text := written(pagesOf(t, &Ask{Job: &j, Kind: Client, Paper: Papers[0], Options: []int{0, 1}, Words: words.UK}))
		says(t, text, "This is a fire door or another labelled door")
		says(t, text, "none is recommended")
		for _, word := range []string{"We recommend", "A: ", "Your choice", "What is done", "Fits well", "Fits", "Swings freely", "too wide"} {
			if strings.Contains(text, word) {
				t.Errorf("%q is said of a rated leaf: %q", word, text)
			}
		}
	}
}

// Whatever moves a way holds, in whatever order, there are pages, and every point of
// them is on the paper.
func TestAnyMoves(t *testing.T) {
	rnd := rand.New(rand.NewSource(11))
	for _, j := range clientJobs(t) {
		for range 3 {
			o := game.Option{Name: "Any"}
			for range 1 + rnd.Intn(12) {
				m := j.NewMove(trim.Kinds[rnd.Intn(len(trim.Kinds))].Kind)
				m.First *= float64(rnd.Intn(4))
				m.Last *= float64(rnd.Intn(4))
				m.Off = rnd.Intn(5) == 0
				o.Moves = append(o.Moves, m)
			}
			k := j.Clone()
			k.Options = []game.Option{o, o}
			k.Made = o.Moves[:rnd.Intn(2)]
			for _, p := range pagesOf(t, &Ask{Job: &k, Kind: Client, Paper: Papers[1], Options: []int{0, 1}, Words: words.AU}) {
				for _, q := range p.Points {
					if !(q.X >= 0 && q.X <= p.Width && q.Y >= 0 && q.Y <= p.Height) {
						t.Fatalf("%s: a mark at %v is off the paper, with %v", j.Name, q, o.Moves)
					}
				}
			}
		}
	}
}

func TestMoreWaysThanFit(t *testing.T) {
	j := clientJob(t, "Terrace house, back bedroom")
	if _, err := Pages(&Ask{Job: &j, Kind: Client, Paper: Papers[0], Options: []int{0, 1, 2, 0}}); err == nil || !strings.Contains(err.Error(), "three") {
		t.Error(err)
	}
	if _, err := Pages(&Ask{Job: &j, Kind: Client, Paper: Papers[0], Options: []int{7}}); err == nil {
		t.Error("an option that there is not was laid out")
	}
}

// The chance said is that of the model's least sure finding.
func TestChances(t *testing.T) {
	for p, want := range map[float64]string{0.02: "1 in 10", 0.149: "1 in 10", 0.24: "2 in 10", 0.5: "5 in 10", 0.97: "9 in 10"} {
		if got := chance(p); got != want {
			t.Errorf("%v: %q, want %q", p, got, want)
		}
	}
	met := 0
	for _, a := range asks(t) {
		if a.Job.Survey == nil || len(a.Options) == 0 {
			continue
		}
		c := newClient(&a)
		b := &c.ways[c.best]
		if b.letter == "" {
			continue
		}
		all := a.Job.Column(b.col.Option).Findings
		a.Job.SureOf(a.Job.Change(b.col.Option)).Weigh(all)
		worst := 0.0
		for _, f := range all {
			if f.Odds.Told() && f.Verdict == judge.Good {
				worst = max(worst, f.Odds[judge.Binds])
			}
		}
		if math.Abs(b.doubt-worst) > 1e-12 {
			t.Errorf("%s: a doubt of %v, the model has %v", a.Job.Name, b.doubt, worst)
		}
		text := written(pagesOf(t, &a))
		if worst > judge.Doubtful && len(b.col.Out()) == 0 {
			met++
			says(t, text, "a chance of about "+chance(worst))
		} else if strings.Contains(text, "So there is a chance") {
			t.Errorf("a chance is said of %v", worst)
		}
	}
	if met == 0 {
		t.Error("no chance was said")
	}
}

// Nothing runs off the paper or into the next column, whatever names hold; and names
// survive.
func TestNothingOfTheClientsIsClipped(t *testing.T) {
	all := asks(t)
	for i, name := range []string{
		strings.Repeat("Donaudampfschifffahrtsgesellschaftskapitänskajütentür", 4), strings.Repeat("Very long name of a way ", 40),
		"山手線駅舎の古い引き戸ではなく開き戸の建て付けを直すための案その一からその三まで", "باب غرفة النوم الخلفية في البيت القديم", "Дверь в кладовую на втором этаже", "😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀😀", "<b>&\"'\t\u0000",
	} {
		j := clientJob(t, "Terrace house, back bedroom")
		j.Name = name
		for k := range j.Options {
			j.Options[k].Name = name
		}
		a := Ask{Job: &j, Kind: Client, Paper: Papers[i%2], Options: []int{0, 1, 2}, Words: words.UK}
		if i%2 == 1 {
			a.Unit = measure.Inch
		}
		all = append(all, a)
		letters := strings.Join(strings.Fields(written(pagesOf(t, &a))), "")
		if want := strings.Join(strings.Fields(name), ""); !strings.Contains(letters, want) {
			t.Errorf("%q did not survive", name)
		}
	}
	for i := range all {
		a := &all[i]
		for n, p := range pagesOf(t, a) {
			if p.Width != a.Paper.Width*MM || p.Height != a.Paper.Height*MM {
				t.Fatalf("page of %v by %v", p.Width, p.Height)
			}
			type line struct{ x0, y0, x1, y1 float64 }
			var lines []line
			for _, m := range p.Marks {
				for _, q := range p.Points[m.From:m.To] {
					if !(q.X >= 0 && q.X <= p.Width && q.Y >= 0 && q.Y <= p.Height) {
						t.Fatalf("%s, page %d: a mark at %v is off the paper", a.Job.Name, n+1, q)
					}
				}
				if m.Kind != draw.Text {
					continue
				}
				q, w := p.Points[m.From], draw.TextWidth(m.Text, m.Size, m.Bold)
				switch m.Anchor {
				case draw.Middle:
					q.X -= w / 2
				case draw.End:
					q.X -= w
				}
				if q.X < margin-1 || q.X+w > p.Width-margin+1 || q.Y > p.Height-margin+1 || q.Y-rise*m.Size < margin-1 {
					t.Errorf("%s, page %d: %q at %v reaches into the margin", a.Job.Name, n+1, m.Text, q)
				}
				if m.Size >= smallStyle.size-0.01 {
					lines = append(lines, line{q.X, q.Y - 0.7*m.Size, q.X + w, q.Y})
				}
			}
			for i := range lines {
				for k := range i {
					if a, b := lines[i], lines[k]; a.x0 < b.x1-1 && b.x0 < a.x1-1 && a.y0 < b.y1-1 && b.y0 < a.y1-1 {
						t.Errorf("page %d: two lines of writing lie on each other at %.0f, %.0f", n+1, a.x0, a.y0)
					}
				}
			}
		}
	}
}

// In inches every length is the pen's for inches.
func TestInches(t *testing.T) {
	for _, a := range asks(t) {
		if a.Unit != measure.Inch {
			continue
		}
		text := written(pagesOf(t, &a))
		if strings.Contains(text, " mm") || strings.Contains(text, "millimetre") {
			t.Errorf("millimetres in %q", text)
		}
		for _, o := range a.Options {
			c := a.Job.Column(o)
			g := c.Fit.Gaps[door.FloorSide]
			says(t, text, words.Inches(g.Least))
			says(t, text, words.Inches(g.Most))
		}
	}
}

func BenchmarkClient(b *testing.B) {
	for _, name := range []string{"Terrace house, back bedroom", "Weaver's cottage, stair door"} {
		j := clientJob(b, name)
		a := Ask{Job: &j, Kind: Client, Paper: Papers[0], Options: []int{0, 1, 2}, Words: words.UK}
		b.Run(name, func(b *testing.B) {
			for range b.N {
				if _, err := Pages(&a); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func TestUnitsStayWithTheirNumbers(t *testing.T) {
	for text, want := range map[string]string{
		"about 2 h 30 min of work": "about 2\u00a0h 30\u00a0min of work",
		"2.1 ± 0.8 mm at the top":  "2.1\u00a0±\u00a00.8\u00a0mm at the top",
		"60 cm³, 0.1 % of it":      "60\u00a0cm³, 0.1\u00a0% of it",
		"3 minutes, 4 hinges":      "3 minutes, 4 hinges",
		"":                         "",
	} {
		if got := tied(text); got != want {
			t.Errorf("%q became %q", text, got)
		}
	}
}
