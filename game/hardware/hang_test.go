package hardware_test

import (
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/hardware"
	"leafwright/game/internal/demos"
	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

// What other hinges and moved ones ask of their gains, by hand.
func TestGainsByHand(t *testing.T) {
	job := demos.Job(t, harbour)
	job.Voids = nil
	s := speak(&job, words.UK)
	rehinge := func(plates float64) trim.Move {
		return trim.Move{Kind: trim.Rehinge, Closed: 7, Plates: plates, Pin: 6, LeafGain: 2.5, JambGain: 2}
	}
	before, after := tried(&job, rehinge(100))
	h := hardware.HangOf(&before, &after)
	if len(h.Seats) != 4 {
		t.Fatalf("%+v", h.Seats)
	}
	near(t, "a taller plate above", h.Seats[0].Up, 12.5, 1e-9)
	near(t, "and below", h.Seats[0].Down, 12.5, 1e-9)
	near(t, "deeper in the leaf", h.Seats[0].Deeper, 0.5, 1e-9)
	near(t, "not in the jamb", h.Seats[1].Deeper, 0, 1e-9)
	text := said(h.Lines(s))
	if !strings.Contains(text, "The top hinge and the bottom hinge, in the leaf: cut the "+s.Gain+" 12.5 mm longer above and below; cut it 0.5 mm deeper; plug the old screw holes") {
		t.Error(text)
	}

	before, after = tried(&job, rehinge(50)) // smaller ones: what is left over is filled, and said
	h = hardware.HangOf(&before, &after)
	near(t, "left open above", h.Seats[0].Above, 12.5, 1e-9)
	if text := said(h.Lines(s)); !strings.Contains(text, "piece in the 12.5 mm of the old "+s.Gain+" left open above and below") {
		t.Error(text)
	}

	before, after = tried(&job, trim.Move{Kind: trim.Rehinge, Closed: 5, Plates: 75, Pin: 5, LeafGain: 1.5, JambGain: 1.5})
	h = hardware.HangOf(&before, &after)
	near(t, "a thinner one on a bed", h.Seats[0].Pack, 0.5, 1e-9)
	if text := said(h.Lines(s)); !strings.Contains(text, "up by 0.5 mm under the new plate") {
		t.Error(text)
	}

	before, after = tried(&job, trim.Move{Kind: trim.Shift, Hinge: 1, On: trim.OnBoth, First: -20})
	h = hardware.HangOf(&before, &after)
	near(t, "down", h.Seats[0].Down, 20, 1e-9)
	near(t, "open above", h.Seats[0].Above, 20, 1e-9)
	near(t, "marked lower", h.Marks[0], before.Door.Hinges[0].JambHeight-20, 1e-9)
}

// A square leaf whose hinges hold its foot 6 mm over the floor stands on packers of 6 mm
// (model.md §8, case 1); where a packer tips it, on two.
func TestPackersUnderTheFoot(t *testing.T) {
	job := game.Blank(792, 1990, 40)
	for i := range job.Door.Hinges {
		x := &job.Door.Hinges[i]
		x.Closed, x.LeafGain, x.JambGain = 8, 2, 2
		x.JambHeight = x.LeafHeight + 6
	}
	before, after := tried(&job, trim.Move{Kind: trim.Pack, Hinge: 2, On: trim.OnLeaf, First: 1})
	h := hardware.HangOf(&before, &before)
	near(t, "hanging end", h.Under[0], 6, 1e-9)
	near(t, "closing end", h.Under[1], 6, 1e-9)
	h = hardware.HangOf(&before, &after)
	between := job.Door.Hinges[0].LeafHeight - job.Door.Hinges[1].LeafHeight
	near(t, "tipped", h.Under[1]-h.Under[0], 792/between, 0.01) // as in case 2 the closing edge rises
	if text := said(h.Lines(speak(&job, words.UK))); !strings.Contains(text, "under the closing end") {
		t.Error(text)
	}
}

// The keep follows the leaf: raised 5 mm, it goes up 5 mm, and its old holes are filled.
func TestKeepMoves(t *testing.T) {
	job := demos.Job(t, school)
	s := speak(&job, words.UK)
	before, after := tried(&job, trim.Move{Kind: trim.Raise, On: trim.OnJamb, First: 3})
	h := hardware.HangOf(&before, &after)
	near(t, "up", h.Keep.Up, 3, 1e-9)
	near(t, "bolt", h.Keep.In, 12-2.5, 0.01)
	text := said(h.Lines(s))
	for _, x := range []string{"3.0 mm higher than it was", "move it, piece in what its old place leaves open and plug the old screw holes", "Mortice lock: 14 mm of the leaf stays on either side"} {
		if !strings.Contains(text, x) {
			t.Errorf("%q is not in\n%s", x, text)
		}
	}
	job.Anatomy.Lock = door.Lock{}
	stands := job.Stands()
	if h := hardware.HangOf(&stands, &stands); h.Lock != nil || h.Keep != nil {
		t.Error("a keep without a lock")
	}
}

// The cautions are those of package timber, by what is known of the job.
func TestCautionsAreSharp(t *testing.T) {
	has := func(all []game.Caution, text string) bool {
		for _, c := range all {
			if strings.Contains(c.Text, text) {
				return true
			}
		}
		return false
	}
	of := func(job *game.Job, moves ...trim.Move) []game.Caution {
		before, after := tried(job, moves...)
		return hardware.Cautions(job, &before, &after, after.Steps, timber.AU)
	}
	job := demos.Job(t, school)
	// packing the hinges out 2 mm takes 2 mm of the clear way, mm for mm (designingbuildings recipe)
	job.House = game.House{Region: timber.AU, Built: 1996}
	stands := job.Stands()
	was := game.ClearWay(&stands.Door)
	all := of(&job, trim.Move{Kind: trim.Pack, On: trim.OnJamb, First: 2})
	tried := job.Try(0)
	near(t, "clear way", game.ClearWay(&tried.Door), was-2, 0.05)
	if !has(all, "where it was") || !has(all, "820 mm or more") {
		t.Errorf("%+v", all)
	}
	if !has(all, "Paint of those years may still hold lead") {
		t.Errorf("Australia, 1996: %+v", all)
	}
	job.House.Built = 1997
	if all := of(&job); has(all, "lead") {
		t.Errorf("Australia, 1997: %+v", all)
	}
	job.House = game.House{}
	if all := of(&job); !has(all, "Old paint may hold lead") || !has(all, "nothing is said of this one") {
		t.Errorf("nothing said: %+v", all)
	}
	job.Anatomy.Timber = "western red cedar"
	if all := of(&job); !has(all, "cedar") || has(all, "two people") {
		t.Errorf("a light leaf: %+v", all)
	}
	job.House = game.House{Region: timber.US, Built: 1950, Paid: true}
	job.Paint.Leaf = game.Coating{On: 5, Strip: true}
	if all := of(&job); !has(all, "rule on renovation") || !has(all, "Barred on paint") || !has(all, "Strippers") {
		t.Errorf("stripped for pay: %+v", all)
	}
	job = demos.Job(t, harbour)
	job.Voids[0].Do, job.Voids[1].Live = timber.FillIt, true
	if all := of(&job); !has(all, "Beetles at work") || !has(all, "two people") {
		t.Errorf("%+v", all)
	}
}

// The parts of a gap come to their sum as written.
func TestPartsAddUp(t *testing.T) {
	job := demos.Job(t, harbour)
	stands := job.Stands()
	f := game.FittingOf(&job, &stands, game.WhereOf(&job))
	s := speak(&job, words.UK)
	if got, want := hardware.Parts(s, &f, door.LatchSide), "2.5 mm wanted in January + 0.2 mm for paint to come on leaf and frame + 0.9 mm the leaf is still to grow = 3.6 mm at fitting today"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	f.Gaps[door.HeadSide] = timber.Gap{Wanted: 2.55, Paint: 0.14, All: 2.69} // 2.6 and 0.1 would come to 2.7
	f.Gaps[door.FloorSide] = timber.Gap{Wanted: 2.45, Paint: 0.14, All: 2.59}
	if got := hardware.Parts(s, &f, door.FloorSide); !strings.HasPrefix(got, "2.5 mm wanted + 0.1 mm") || !strings.HasSuffix(got, "= 2.6 mm at fitting today") {
		t.Error(got)
	}
	job.Paint = game.Paint{}
	f = game.FittingOf(&job, &stands, game.WhereOf(&job))
	if got := hardware.Parts(s, &f, door.HeadSide); got != "2.5 mm, as wanted" {
		t.Error(got)
	}
}
