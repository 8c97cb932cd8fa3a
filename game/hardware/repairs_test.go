package hardware_test

import (
	"math"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/hardware"
	"leafwright/game/internal/demos"
	"leafwright/game/words"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

const harbour = "10-harbour-house-repairs"

func tried(job *game.Job, moves ...trim.Move) (before, after game.Tried) {
	job.Options = []game.Option{{Moves: moves}}
	return job.Stands(), job.Try(0)
}

func said(lines []string) string { return strings.Join(lines, "\n") }

// What a place takes, by hand: its mouth times its depth; a foam core under 5 mm (common
// practice, no published source).
func TestRepairsByHand(t *testing.T) {
	job := demos.Job(t, harbour)
	stands := job.Stands()
	r := hardware.RepairsOf(&job, &stands, &stands, nil)
	borer := r.Places[1]
	const mouth = 220 * 30 * 0.6
	if borer.Cure != timber.FoamIt {
		t.Fatalf("%+v", borer)
	}
	near(t, "skin", borer.Filler.Filler, mouth*5, 1e-6)
	near(t, "core", borer.Foam, mouth*13, 1e-6)
	near(t, "all", r.Filler.Filler, mouth*5, 1e-6)
	if r.Places[0].Cure != timber.CutItOut || r.Places[2].Cure != timber.CutItOut {
		t.Errorf("in a joint, under a hinge: %s, %s", r.Places[0].Cure, r.Places[2].Cure)
	}

	// the mortice filled from its edge, as the person will have it: 85 × 16 of mouth, 70 deep
	job.Voids[0].Do = timber.FillIt
	r = hardware.RepairsOf(&job, &stands, &stands, nil)
	near(t, "solid", r.Places[0].Filler.Filler, 85*16*70, 1e-6)
	job.Voids[0].Do = timber.FoamIt
	r = hardware.RepairsOf(&job, &stands, &stands, nil)
	near(t, "skin at the edge", r.Places[0].Filler.Filler, 85*16*5, 1e-6)
	near(t, "core behind it", r.Places[0].Foam, 85*16*65, 1e-6)

	// six minutes at 20 cm³ a minute: 120 cm³ a batch
	job.Voids[0].Do = timber.FillIt
	job.Voids[1].Do = timber.FillIt
	r = hardware.RepairsOf(&job, &stands, &stands, nil)
	if all := 85.0*16*70 + mouth*18; r.Batches != int(math.Ceil(all/120e3)) || math.Abs(r.Each*float64(r.Batches)-all) > 1e-6 {
		t.Errorf("%v mm³ in %d batches of %v", all, r.Batches, r.Each)
	}
}

// Filler holds no screw: a hinge over it has so many fewer.
func TestHingeOverFiller(t *testing.T) {
	job := demos.Job(t, harbour)
	stands := job.Stands()
	whole := hardware.LeafIn(&job, &stands, timber.NZ)
	if whole.Poor != 0 {
		t.Errorf("pieced timber holds, but %d screws do not", whole.Poor)
	}
	job.Voids[2].Do = timber.FillIt // three of the four rows of a 75 mm plate at 1794 stand between 1770 and 1830
	poor := hardware.LeafIn(&job, &stands, timber.NZ)
	if poor.Poor != 3 {
		t.Errorf("%d screws in filler", poor.Poor)
	}
	near(t, "one screw of four", poor.Sound.Borne, whole.Sound.Borne/4, 1e-9)
	s := speak(&job, words.UK)
	r := hardware.RepairsOf(&job, &stands, &stands, nil)
	if text := said(r.Lines(s)); !strings.Contains(text, "three screws of the top hinge in 4 stand in it, and filler holds no screw") {
		t.Error(text)
	}
	job.Voids[2].From, job.Voids[2].To = 1700, 1900
	if all := hardware.LeafIn(&job, &stands, timber.NZ); all.Poor != 4 || all.Sound.Enough || !strings.Contains(said(all.Lines(s)), "So they do not hold") {
		t.Errorf("%d poor: %s", all.Poor, said(all.Lines(s)))
	}
	stands, moved := tried(&job, trim.Move{Kind: trim.Shift, Hinge: 1, On: trim.OnBoth, First: -150})
	if w := hardware.LeafIn(&job, &moved, timber.NZ); w.Poor != 0 {
		t.Errorf("moved to sound wood: %d", w.Poor)
	}
	if r := hardware.RepairsOf(&job, &stands, &moved, nil); len(r.Places[2].Hinges) != 0 {
		t.Errorf("%+v", r.Places[2].Hinges)
	}
}

// A move that cuts into a place, takes it away or glues a strip over it is named.
func TestMovesMeetBadPlaces(t *testing.T) {
	plane := trim.Move{Kind: trim.Plane, Edge: 1, First: 2, Last: 2}
	splice := trim.Move{Kind: trim.Splice, Edge: 1, Face: trim.Middle, First: 10, Last: 10, Stock: 50}
	for _, c := range []struct {
		name  string
		void  game.Void
		moves []trim.Move
		says  string
	}{
		{"into it", game.Void{At: "closing", From: 900, To: 980, Wide: 16, Depth: 30, Do: timber.FillIt}, []trim.Move{plane}, "move 1 cuts into it: filler breaks out"},
		{"whole away", game.Void{At: "closing", From: 900, To: 980, Wide: 16, Depth: 1.5, Do: timber.FillIt}, []trim.Move{plane}, "move 1 takes it away whole"},
		{"over it", game.Void{At: "closing", From: 900, To: 980, Wide: 16, Depth: 30, Do: timber.FillIt}, []trim.Move{splice}, "move 1 glues a strip over it, and glue holds on no filler"},
		{"pieced before", game.Void{At: "closing", From: 900, To: 980, Wide: 16, Depth: 30, Do: timber.CutItOut}, []trim.Move{splice}, "piece it first, and plane it flush"},
		{"clear of it", game.Void{At: "knuckle", From: 900, To: 980, Off: 700, Wide: 16, Depth: 10, Do: timber.FillIt}, []trim.Move{plane, splice}, ""},
		{"another edge", game.Void{At: "top", From: 300, To: 380, Off: 5, Wide: 16, Depth: 30, Do: timber.FillIt}, []trim.Move{plane}, ""},
		{"the top cut", game.Void{At: "top", From: 300, To: 380, Off: 5, Wide: 16, Depth: 30, Do: timber.FillIt}, []trim.Move{{Kind: trim.Plane, Edge: 2, First: 3, Last: 3}}, "move 1 cuts into it"},
		{"the foot cut", game.Void{At: "foot", From: 300, To: 380, Off: 5, Wide: 16, Depth: 30, Do: timber.FillIt}, []trim.Move{{Kind: trim.Plane, Edge: 3, First: 3, Last: 3}}, "move 1 cuts into it"},
		{"the hanging edge", game.Void{At: "hanging", From: 1000, To: 1080, Off: 5, Wide: 16, Depth: 30, Do: timber.FillIt}, []trim.Move{{Kind: trim.Plane, Edge: 0, First: 1, Last: 1}}, "move 1 cuts into it"},
	} {
		job := demos.Job(t, harbour)
		job.Voids = []game.Void{c.void}
		before, after := tried(&job, c.moves...)
		for _, s := range after.Steps {
			if s.Why != nil && s.Why.About.Forbids() {
				t.Fatalf("%s: refused: %+v", c.name, s.Why)
			}
		}
		text := said(hardware.RepairsOf(&job, &before, &after, after.Steps).Lines(speak(&job, words.UK)))
		if c.says == "" && strings.Contains(text, "move") || !strings.Contains(text, c.says) {
			t.Errorf("%s: %s", c.name, text)
		}
	}
}

// Costs are the person's prices times what is used; without a price there is no cost.
func TestCostByHand(t *testing.T) {
	job := demos.Job(t, harbour)
	stands := job.Stands()
	w := hardware.WorkIn(&job, &stands, nil)
	c := hardware.CostOf(w, &job.Prices)
	want := 0.0
	for i, x := range w.Bill.Items {
		switch x.Thing {
		case timber.Glue:
			want += 18 * x.Amount / 1000
		case timber.FillerMix:
			want += 26 * 19.8 / 1000 // 19.8 cm³ at 26 a litre
		case timber.FoamCore:
			want += 15 * 51.48 / 1000
		default:
			if c.Items[i].Each != 0 || c.Items[i].Say("$") != "" {
				t.Errorf("%s has no price, but costs %v", x.Thing, c.Items[i].Cost)
			}
		}
	}
	near(t, "materials", c.Materials, want, 1e-9)
	near(t, "work", c.Work, 60*math.Round(w.Bill.Hands/15)/4, 1e-9)
	s := speak(&job, words.UK)
	if text := said(c.Lines(s, w)); !strings.Contains(text, "at $60.00 an hour") || !strings.Contains(text, "no price was given: piece of the same timber to let in.") {
		t.Error(text)
	}
	if hardware.CostOf(w, &game.Prices{Currency: "£"}) != nil {
		t.Error("a cost without a price")
	}
	for currency, want := range map[string]string{"£": "£2.50", "EUR": "2.50 EUR", "": "2.50", "kr": "2.50 kr", "NZ$": "NZ$2.50"} {
		if got := hardware.Money(currency, 2.5); got != want {
			t.Errorf("%q: %q, want %q", currency, got, want)
		}
	}
}

// The work says which place is treated, filled and pieced, and paints as the job says.
func TestRepairsInTheOrderOfWork(t *testing.T) {
	job := demos.Job(t, harbour)
	job.Voids[1].Live = true
	before, after := tried(&job, trim.Move{Kind: trim.Plane, Edge: 1, First: 1, Last: 1})
	w := hardware.WorkIn(&job, &before, after.Steps)
	s := speak(&job, words.UK)
	tasks, _ := w.Order(s)
	text, last := said(tasks), 0
	for _, x := range []string{"Cut bad place 1 out and piece it", "Treat bad place 2", "Fill bad place 2", "Cut bad place 3 out", "Move 1: Plane the closing edge", "primer", "solvent-borne gloss"} {
		at := strings.Index(text, x)
		if at < last {
			t.Errorf("%q is not there, or not in its place:\n%s", x, text)
		}
		last = at
	}
	if !strings.Contains(said(hardware.RepairsOf(&job, &before, &after, after.Steps).Lines(s)), "the beetles are treated first") {
		t.Error("nothing of the beetles")
	}
	job.Voids = nil
	if hardware.WorkIn(&job, &before, nil) != nil || hardware.RepairsOf(&job, &before, &after, after.Steps) != nil {
		t.Error("work where there is none")
	}
}

// Places anywhere and of any size the file allows give sense, or at least no nonsense.
func TestPlacesAnywhere(t *testing.T) {
	job := demos.Job(t, harbour)
	for _, at := range []game.Surface{"hanging", "closing", "top", "foot", "knuckle", "stop"} {
		for _, what := range []game.Damage{game.Missing, game.Bored, game.Rotten, game.OldMortice, game.OldFiller} {
			for _, x := range []float64{0, 0.5, 40, 2000} {
				job.Voids = []game.Void{
					{At: at, What: what, From: -400, To: 3900, Off: x, Wide: x, Depth: x, Open: 100},
					{At: at, What: what, From: 500, To: 500.5, Off: 2000 - x, Wide: x, Depth: 2000, Do: timber.FoamIt},
				}
				before, after := tried(&job, trim.Move{Kind: trim.Plane, Edge: 1, First: 1, Last: 1})
				r := hardware.RepairsOf(&job, &before, &after, after.Steps)
				leaf, w, s := hardware.LeafIn(&job, &after, timber.UK), hardware.WorkIn(&job, &before, after.Steps), speak(&job, words.UK)
				tasks, all := w.Order(s)
				text := said(append(append(append(r.Lines(s), leaf.Lines(s)...), append(tasks, all)...), w.Takes(s)...))
				if strings.Contains(text, "NaN") || strings.Contains(text, "Inf") || !(r.Filler.Filler >= 0 && r.Foam >= 0) {
					t.Errorf("%+v: %s", job.Voids, text)
				}
			}
		}
	}
}
