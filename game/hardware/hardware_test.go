package hardware_test

import (
	"flag"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/beside"
	"leafwright/game/hardware"
	"leafwright/game/internal/demos"
	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/judge"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

var update = flag.Bool("update", false, "write the golden words anew")

func speak(job *game.Job, r words.Region) *words.Speaker {
	return &words.Speaker{Lexicon: words.For(r), Hinges: len(job.Door.Hinges), Rails: beside.RailNames(&job.Anatomy)}
}

const terrace, coach, school = "2-terrace-falling-head", "6-coach-house-rising-floor", "1-schoolroom-square"

// The words of two demo jobs. After a change that is meant:
// go test ./game/hardware -update, and read them through.
func TestWords(t *testing.T) {
	for _, c := range []struct {
		golden, job string
		option      int
		region      words.Region
		at          hardware.Where
	}{
		{"terrace", terrace, 2, words.UK, hardware.Where{Climate: timber.Maritime, Room: timber.Heated, Month: -1}},
		{"coach", coach, 1, words.US, hardware.Where{Climate: timber.Continental, Room: timber.Outside, South: true, Month: 4, Meter: 14.5}},
	} {
		job := demos.Job(t, c.job)
		s := speak(&job, c.region)
		stands, tried := job.Stands(), job.Try(c.option)
		leaf := hardware.LeafOf(&tried, hardware.Region(s.Lexicon))
		text := leaf.Lines(s)
		w := hardware.WorkOf(&stands, tried.Steps)
		tasks, all := w.Order(s)
		text = append(append(append(text, tasks...), all), w.Takes(s)...)
		for i := range w.Strips {
			text = append(append(text, w.Strips[i].Lines(s)...), w.Strips[i].Rests())
		}
		year := hardware.SeasonOf(&job, &tried, c.at)
		text = append(append(append(text, year.Headline(s)), year.AirLines()...), year.Moves(s, tried.Anatomy.Make)...)
		for _, r := range year.Rows(s) {
			text = append(text, strings.Join(r, "; "))
		}
		text = append(text, year.Fitting(s)...)
		got := strings.Join(text, "\n") + "\n"
		golden := filepath.Join("testdata", c.golden+".txt")
		if *update {
			if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(golden)
		if err != nil {
			t.Fatal(err)
		}
		is, was := strings.Split(got, "\n"), strings.Split(string(want), "\n")
		for i := range max(len(is), len(was)) {
			if i >= len(is) || i >= len(was) || is[i] != was[i] {
				t.Errorf("%s, line %d:\ngot  %q\nwant %q", golden, i+1, is[min(i, len(is)-1)], was[min(i, len(was)-1)])
				break
			}
		}
	}
}

// By hand: a flush leaf 762 × 1981 × 44 of known timber on hinges 1500 apart.
func TestLeafByHand(t *testing.T) {
	job := game.Blank(762, 1981, 44)
	job.Door.Hinges[0].LeafHeight, job.Door.Hinges[1].LeafHeight = 1740, 240
	job.Door.Hinges[1].Height = 75
	job.Anatomy = door.Ordinary(door.Flush, 762, 1981)
	job.Anatomy.Timber = "Douglas fir"
	stands := job.Stands()
	w := hardware.LeafOf(&stands, timber.UK)
	solid := 762 * 1981 * 44e-9 * 538
	near(t, "mass", w.Mass.All, solid, 1e-9)
	near(t, "at the most a board in ten is heavier, and a lock", w.Most, solid+math.Hypot(0.1645*solid, 1), 1e-9)
	if w.Least > w.Mass.All/3 {
		t.Errorf("a hollow leaf may weigh a third: %v of %v", w.Least, w.Mass.All)
	}
	near(t, "pull", w.Pull, w.Most*9.80665*381/1500, 1e-9) // moments about the lower hinge
	near(t, "leaning", w.Leaning, 80*9.80665*762/1500, 1e-9)
	per := 108.25 * 0.48 * 0.48 * (0.060 + 0.013*8) * 25.4 * 30 // Wood Handbook ch. 8
	near(t, "four screws", w.Sound.Borne, 4*per*2850/15700, 1e-9)
	near(t, "worn", w.Worn.Borne, w.Sound.Borne/2, 1e-9)
	if w.Asked != 3 || w.There != 2 || w.Plates != 75 || w.Butt.Inches != 4.5 || w.Third == nil || !w.Sure {
		t.Errorf("%+v", w)
	}
}

// What is not known makes the leaf less sure and its screws weaker.
func TestDoubtIsSaid(t *testing.T) {
	job := game.Blank(762, 1981, 44)
	var spread, holds []float64
	for _, said := range []string{"radiata pine", "pine", "bog wood"} {
		job.Anatomy.Timber = said
		stands := job.Stands()
		w := hardware.LeafOf(&stands, timber.UK)
		spread = append(spread, (w.Most-w.Least)/w.Mass.All)
		holds = append(holds, w.Sound.Borne/math.Pow(w.Species.Gravity, 2))
		text := strings.Join(w.Lines(speak(&job, words.UK)), " ")
		if w.Sure == strings.Contains(text, "taken as") && said != "radiata pine" {
			t.Errorf("%s: %s", said, text)
		}
		if said == "bog wood" && !strings.Contains(text, "“bog wood”, is not in our tables") {
			t.Errorf("%s: %s", said, text)
		}
	}
	if !(spread[0] < spread[1] && spread[1] < spread[2] && holds[0] > holds[1] && holds[1] > holds[2]) {
		t.Errorf("spread %v, holds %v", spread, holds)
	}
}

// The verdict on the screws goes with what is asked of them.
func TestRemedyIsPlain(t *testing.T) {
	job := demos.Job(t, school)
	s := speak(&job, words.UK)
	say := func(pull, leaning, gravity float64, into float64) string {
		stands := job.Stands()
		w := hardware.LeafOf(&stands, timber.UK)
		w.Screws.Into = into
		worn := w.Screws
		worn.Ground = timber.Worn
		w.Sound, w.Worn = timber.HoldOf(pull, w.Screws, gravity, 0), timber.HoldOf(pull, worn, gravity, 0)
		w.SoundLeant, w.WornLeant = timber.HoldOf(pull+leaning, w.Screws, gravity, 0), timber.HoldOf(pull+leaning, worn, gravity, 0)
		lines := w.Lines(s)
		return lines[len(lines)-1]
	}
	for _, c := range []struct {
		pull, leaning, gravity, into float64
		says                         string
	}{
		{100, 390, 0.46, 30, "do nothing"},
		{100, 1200, 0.46, 30, "in sound wood somebody on the handle too"},
		{100, 3000, 0.46, 30, "but nobody on the handle: longer screws"},
		{100, 390, 0.46, 2.5, "In worn holes they do not hold it: bore the holes out"},
		{100, 390, 0.46, 1, "They do not hold it: longer screws."},
	} {
		if got := say(c.pull, c.leaning, c.gravity, c.into); !strings.Contains(got, c.says) {
			t.Errorf("%v: %s", c, got)
		}
	}
}

func TestWork(t *testing.T) {
	job := demos.Job(t, terrace)
	stands, tried := job.Stands(), job.Try(2)
	w := hardware.WorkOf(&stands, tried.Steps)
	if len(w.Strips) != 1 || w.Strips[0].Step != 1 {
		t.Fatalf("strips %+v", w.Strips)
	}
	// the strip is dowelled to the leaf as the cut before it leaves it
	cut, _ := trim.All(trim.Piece{Door: stands.Door, Anatomy: stands.Anatomy}, job.Options[2].Moves[:1])
	d, _ := timber.DowelsFor(cut, job.Options[2].Moves[1], 0)
	if len(d.Places) != len(w.Strips[0].Dowels.Places) || d.Places[0] != w.Strips[0].Dowels.Places[0] || d.LeafGauge != w.Strips[0].Dowels.LeafGauge {
		t.Errorf("dowels %+v, want %+v", w.Strips[0].Dowels, d)
	}
	// nothing done, no work
	off := tried.Steps
	for i := range off {
		off[i].Move.Off = true
	}
	if w := hardware.WorkOf(&stands, off); w != nil {
		t.Errorf("moves that are off make work: %+v", w)
	}
}

func TestSeason(t *testing.T) {
	job := demos.Job(t, school) // stiles of 108 in “redwood”, gaps of 2.5
	stands := job.Stands()
	at := hardware.Where{Climate: timber.Maritime, Room: timber.Heated, Month: -1}
	y := hardware.SeasonOf(&job, &stands, at)
	near(t, "what moves", y.Across, 216, 1e-9)
	winter, summer := timber.Equilibrium(19, 45), timber.Equilibrium(20, 60)
	c := (0.00137 + 0.00271) / 2
	near(t, "through the year", y.Sawn[0], 216*c*(summer-winter), 1e-9)
	near(t, "flat-sawn", y.Sawn[2], 216*0.00271*(summer-winter), 1e-9)
	near(t, "closing gap in July", y.Least[6], y.Closing[0]-216*c*(summer-y.Today), 1e-9)
	near(t, "to fit to", y.Fit[door.LatchSide].All, 2.5+216*c*(summer-y.Today), 1e-9)
	near(t, "the head's stays", y.Fit[door.HeadSide].All, 2.5, 0)
	near(t, "least to fit to", y.Low, 2+216*c*(summer-y.Today), 1e-9)
	near(t, "most to fit to", y.High, 3+216*c*(winter-y.Today), 1e-9)
	if y.Basis != hardware.ByYear || y.Worst() == judge.Good {
		t.Errorf("%+v", y)
	}
	at.Month = 6
	if y = hardware.SeasonOf(&job, &stands, at); y.Basis != hardware.ByMonth || y.Today != y.Moisture[6] {
		t.Errorf("by the month: %v, %v", y.Basis, y.Today)
	}
	south := at
	south.South = true
	if z := hardware.SeasonOf(&job, &stands, south); z.Tight != 0 || y.Tight != 6 {
		t.Errorf("widest in %d in the south, %d in the north", z.Tight, y.Tight)
	}
	at.Meter = 12
	y = hardware.SeasonOf(&job, &stands, at)
	if y.Basis != hardware.ByMeter || y.Today != 12 || y.Moisture[6] != 12 {
		t.Errorf("by the meter: %+v", y)
	}
	at.Month = -1
	if z := hardware.SeasonOf(&job, &stands, at); z.Today != 12 || z.Moisture[6] != summer {
		t.Errorf("a reading without a month moves the year: %+v", z)
	}

	flush := game.Blank(762, 1981, 40)
	found := flush.Found()
	z := hardware.SeasonOf(&flush, &found, at)
	if s := speak(&flush, words.UK); z.Sawn[0] != 0 || !strings.Contains(z.Headline(s), "stays as it is") {
		t.Errorf("a flush leaf moves: %s", z.Headline(s))
	}
}

// A leaf that only just touches is not said to bind by nothing.
func TestJustTouching(t *testing.T) {
	job := demos.Job(t, school)
	stands := job.Stands()
	y := hardware.SeasonOf(&job, &stands, hardware.Usual(game.WhereOf(&job)))
	s := speak(&job, words.UK)
	for least, says := range map[float64]string{-0.04: "just touches at the latch side in July", -0.06: "binds at the latch side in July, by 0.1 mm"} {
		y.Least[y.Tight] = least
		if got := y.Headline(s); !strings.Contains(got, says) {
			t.Errorf("%v: %s", least, got)
		}
	}
}

// No job and no climate makes it panic, and every word of the demos is a word.
func TestEveryDemo(t *testing.T) {
	for _, job := range demos.All(t) {
		s := speak(&job, words.AU)
		stands := job.Stands()
		leaf := hardware.LeafOf(&stands, timber.AU)
		text := leaf.Lines(s)
		text = append(text, hardware.Gaps(s, &job, &stands)...)
		for i := range job.Options {
			tried := job.Try(i)
			hang := hardware.HangOf(&stands, &tried)
			text = append(text, hang.Lines(s)...)
			if r := hardware.RepairsOf(&job, &stands, &tried, tried.Steps); r != nil {
				text = append(text, r.Lines(s)...)
			}
			for _, c := range hardware.Cautions(&job, &stands, &tried, tried.Steps, timber.AU) {
				text = append(text, c.Text, c.Ask, c.Source)
			}
			if w := hardware.WorkOf(&stands, tried.Steps); w != nil {
				tasks, all := w.Order(s)
				text = append(append(append(text, tasks...), all), w.Takes(s)...)
			}
		}
		for _, c := range hardware.Climates() {
			for _, r := range hardware.Rooms() {
				y := hardware.SeasonOf(&job, &stands, hardware.Where{Climate: c, Room: r, Month: -1})
				text = append(append(text, y.Headline(s)), y.Fitting(s)...)
				text = append(text, y.AirLines()...)
			}
		}
		for _, l := range text {
			for _, bad := range []string{"NaN", "Inf", "%!", "  ", "..", " ,"} {
				if strings.Contains(l, bad) || l == "" {
					t.Errorf("%s: %q", job.Name, l)
				}
			}
		}
	}
	none := game.Tried{}
	leaf := hardware.LeafOf(&none, timber.UK)
	if text := strings.Join(leaf.Lines(&words.Speaker{}), " "); strings.Contains(text, "NaN") || strings.Contains(text, "Inf") {
		t.Error(text)
	}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}
