package sheet_test

import (
	"math"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/internal/demos"
	"leafwright/game/measure"
	"leafwright/game/sheet"
	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// after gives the cell that stands behind a label, which may take up to three lines, from the
// n-th text on; the last one of them that is there.
func after(t *testing.T, texts []string, label string, from int) (cell string) {
	t.Helper()
	for i := from; i < len(texts); i++ {
		said := texts[i]
		for k := i + 1; k < min(i+4, len(texts)); k++ {
			if said == label {
				cell = texts[k]
				break
			}
			said += " " + texts[k]
		}
	}
	if cell == "" {
		t.Errorf("%q is not on the sheet", label)
	}
	return cell
}

// The gaps to read, the sizes to check and the heights on the rod are the model's, rounded as
// the sheet says.
func TestNumbersAreTheModels(t *testing.T) {
	for _, unit := range []measure.Unit{measure.MM, measure.Inch} {
		line, fine := 0.5, 0.1
		if unit == measure.Inch {
			line, fine = 25.4/32, 25.4/64
		}
		for _, j := range demos.All(t) {
			for o := range j.Options {
				if game.Rated(&j) {
					continue
				}
				pages, err := sheet.Pages(&sheet.Ask{Job: &j, Options: []int{o}, Kind: sheet.Work, Paper: sheet.Papers[0], Unit: unit, Words: words.UK})
				if err != nil {
					t.Fatal(err)
				}
				texts := textsOf(pages)
				offer, check := 0, 0
				for i, s := range texts {
					if strings.HasPrefix(s, "Offer it up") {
						offer = i
					}
					if strings.HasPrefix(s, "Before the first cut") {
						check = i
					}
				}
				near := func(what, text string, want, step float64) {
					t.Helper()
					if text == "" {
						return
					}
					if got := mustRead(text, unit); math.Abs(got-want) > step/2+1e-9 {
						t.Errorf("%s, %s: %s stands there as %s, the model has %.3f", j.Name, j.OptionName(o), what, text, want)
					}
				}
				now, then := j.Stands().Door, j.Try(o).Door
				gapsAsTheModel(t, texts, offer, &then, func(what, text string, want float64) { near(what, text, want, fine) })
				c := now.Leaf.Corners(0)
				first := func(what string) string { return after(t, texts[:offer], what, check) }
				near("hanging edge", first("Hanging edge"), c.HangingHead.Y-c.HangingFoot.Y, line)
				near("closing edge", first("Closing edge"), c.ClosingHead.Y-c.ClosingFoot.Y, line)
				near("diagonal", first("Diagonal, hanging foot"), math.Hypot(c.ClosingHead.X-c.HangingFoot.X, c.ClosingHead.Y-c.HangingFoot.Y), line)
				hinge, latch := now.Frame.HeadCorners()
				low := max(now.Floor.At(now.Frame.HingeJamb.At(0), 0), now.Floor.At(now.Frame.LatchJamb.At(0), 0))
				middle := (min(hinge.Y, latch.Y) + low) / 2
				near("the opening's width", first("Wide half way up"), now.Frame.LatchJamb.At(middle)-now.Frame.HingeJamb.At(middle), line)
				rod(t, &j, texts[:check], &then, near, line)
			}
		}
	}
}

func gapsAsTheModel(t *testing.T, texts []string, from int, d *door.Door, near func(what, text string, want float64)) {
	t.Helper()
	var f fit.Fit
	fit.Evaluate(&f, d)
	for e, name := range []string{"Hinge side", "Latch side", "Head", "Floor"} {
		r := f.Gaps[e].Range()
		for k, where := range []string{"foot", "middle", "top"} {
			if e >= 2 {
				where = []string{"hinge corner", "middle", "latch corner"}[k]
			}
			want := f.Gaps[e].At(r.Lo + float64(k)/2*(r.Hi-r.Lo))
			near(name+", "+where, after(t, texts, name+", "+where, from), want)
		}
	}
}

// rod checks the storey rod's figures: on the jamb from the floor there, on the leaf from its
// foot.
func rod(t *testing.T, j *game.Job, texts []string, d *door.Door, near func(what, text string, want, step float64), step float64) {
	t.Helper()
	for i, s := range texts { // it begins at its upper end
		if s == "head" || strings.HasPrefix(s, "head ") {
			texts = texts[i:]
			break
		}
	}
	text := strings.Join(texts, " ")
	floor := d.Floor.At(d.Frame.HingeJamb.At(0), 0)
	foot := d.Leaf.Corners(0).HangingFoot.Y
	names := []string{"top hinge", "middle hinge", "bottom hinge"}
	if len(d.Hinges) == 2 {
		names = []string{"top hinge", "bottom hinge"}
	}
	parts := strings.Split(text, "hinge ")
	if len(parts) < 2*len(d.Hinges)+1 {
		t.Fatalf("%s: the rod has not all hinges", j.Name)
	}
	for i, name := range names {
		h := &d.Hinges[i]
		var found []string // the two ends, on the jamb and on the leaf
		for rest := text; ; {
			_, past, ok := strings.Cut(rest, name+" ")
			if !ok {
				break
			}
			rest = past
			lower, past, _ := strings.Cut(past, " to ")
			words := strings.Fields(past)
			upper := ""
			for _, w := range words { // as long as it is a length
				if _, err := measure.Read(strings.TrimSpace(upper+" "+w), measure.Inch); err != nil && !strings.HasSuffix(upper+w, "'") {
					break
				}
				upper = strings.TrimSpace(upper + " " + w)
				if strings.HasSuffix(w, `"`) || !strings.ContainsAny(past[:min(12, len(past))], `'"`) {
					break
				}
			}
			found = append(found, lower, upper)
		}
		if len(found) != 4 {
			t.Errorf("%s: %s stands on the rod as %q", j.Name, name, found)
			continue
		}
		for k, want := range []float64{h.JambHeight - h.Height/2 - floor, h.JambHeight + h.Height/2 - floor, h.LeafHeight - h.Height/2 - foot, h.LeafHeight + h.Height/2 - foot} {
			near(name+" on the rod", found[k], want, step)
		}
	}
}
