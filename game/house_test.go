package game

import (
	"strings"
	"testing"

	"leafwright/game/measure"
	"leafwright/geom/door"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

// What a person types in the form's fields of house, paint, moisture, prices and bad places.
func TestHouseInTheForm(t *testing.T) {
	j := must(t, plainest)
	var err error
	if j, err = (Form{}).Add(j, "leaf.voids"); err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct{ path, typed, shown, why string }{
		{"house.region", "AU", "AU", ""},
		{"house.built", "1911", "1911", ""},
		{"house.built", "long ago", "", "a whole number is wanted"},
		{"house.built", "18960", "", "18960 is not between 0 and 2200"},
		{"house.escape", "true", "true", ""},
		{"house.climate", "dry summer", "dry summer", ""},
		{"paint.leaf.on", "6", "6", ""},
		{"paint.leaf.film", "0.35", "0.35", ""},
		{"paint.frame.kind", "alkyd", "alkyd", ""},
		{"paint.frame.kind", "distemper", "", `"distemper" is not one of old, primer, enamel, alkyd, unbuilt`},
		{"meter.march", "11.5", "11.5", ""},
		{"meter.march", "61", "", "61 is not between 0 and 60"},
		{"prices.hour", "42,50", "42.5", ""},
		{"prices.dowel", "-1", "", "-1 is not between 0 and 1000000"},
		{"prices.currency", "NZ$", "NZ$", ""},
		{"leaf.voids[0].at", "knuckle", "knuckle", ""},
		{"leaf.voids[0].from", "300", "300", ""},
		{"leaf.voids[0].open", "40", "40", ""},
		{"leaf.voids[0].to", "200", "", "leaf.voids[0].to: 200 is not above from, 300"},
		{"leaf.voids[0].what", "rot", "rot", ""},
		{"leaf.voids[0].live", "true", "true", ""},
		{"leaf.voids[0].do", "cut out", "cut out", ""},
		{"leaf.voids[1].from", "3", "", "there is no such field"},
	} {
		for _, u := range []measure.Unit{measure.MM, measure.Inch} {
			if u == measure.Inch && (row.path == "paint.leaf.film" || strings.HasSuffix(row.path, "from") || strings.HasSuffix(row.path, "to")) {
				continue // lengths, and in inches
			}
			next, err := Form{u}.Set(j, row.path, row.typed)
			switch {
			case row.why == "" && err != nil:
				t.Errorf("%s = %q: %v", row.path, row.typed, err)
			case row.why == "":
				if f := field1(t, Form{u}, next, row.path); f.Value != row.shown {
					t.Errorf("%s = %q shows %q", row.path, row.typed, f.Value)
				}
				if back := must(t, string(Encode(next))); !alike(back, next) {
					t.Errorf("%s = %q reads back otherwise", row.path, row.typed)
				}
			case err == nil || !strings.Contains(err.Error(), row.why):
				t.Errorf("%s = %q: %v, want %s", row.path, row.typed, err, row.why)
			}
			if row.why == "" && u == measure.MM {
				j = next
			}
		}
	}
	if f := field1(t, Form{measure.Inch}, j, "meter.march"); f.Kind != Number || f.Unit != "%" || f.Max != 60 {
		t.Errorf("%+v", f)
	}
	if j.House.Region != timber.AU || j.Paint.Leaf.Film != 0.35 || j.Meter[2] != 11.5 || j.Prices.Hour != 42.5 || j.Voids[0].Do != timber.CutItOut {
		t.Errorf("%+v %+v %+v %+v %+v", j.House, j.Paint, j.Meter, j.Prices, j.Voids)
	}
	if j, err = (Form{}).Remove(j, "leaf.voids[0]"); err != nil || j.Voids != nil {
		t.Errorf("%v, %v", j.Voids, err)
	}
	for range VoidsMost {
		if j, err = (Form{}).Add(j, "leaf.voids"); err != nil {
			t.Fatal(err)
		}
	}
	if _, err = (Form{}).Add(j, "leaf.voids"); err == nil {
		t.Error("one more than there can be")
	}
}

// Every ware has its price in the file, in the order of the constants.
func TestWares(t *testing.T) {
	words := picks(wares)
	if len(words) != int(Wares)+1 {
		t.Fatalf("%d names, %d wares", len(words), Wares)
	}
	for k, name := range map[Ware]string{StripWare: "strip", SillWare: "threshold", HingeWare: "hinge", GlueWare: "glue", OilWare: "unbuilt", FoamWare: "foam"} {
		if words[k+1].Value != name {
			t.Errorf("%s is called %s", name, words[k+1].Value)
		}
	}
}

// What is not said is taken to be the worse; what is said counts.
func TestCautionsOfTheHouse(t *testing.T) {
	j := Blank(838, 2040, 44)
	has := func(text string) bool {
		for _, c := range Cautions(&j) {
			if strings.Contains(c.Text, text) {
				return true
			}
		}
		return false
	}
	if !has("Old paint may hold lead") || !has("nothing is said of this one") || has("escape route: nothing") || !has("dust") || !has("magnet") {
		t.Errorf("nothing said: %+v", Cautions(&j))
	}
	j.House = House{Region: timber.UK, Built: 1850}
	if !has("so old is likely to hold lead") || has("nothing is said") {
		t.Errorf("%+v", Cautions(&j))
	}
	j.House = House{Region: timber.UK, Built: 2001, Escape: true, Toilet: true}
	if has("lead") || !has("On an escape route") || !has("small toilet room") {
		t.Errorf("%+v", Cautions(&j))
	}
	j.House.Reclaimed = true
	if !has("lead") {
		t.Error("a leaf from elsewhere may be old")
	}
	j.Voids = []Void{{At: "knuckle", From: 1, To: 2, What: Bored, Live: true}}
	if !has("Beetles at work") {
		t.Error("beetles at work")
	}
	for _, c := range StepCautions(&j, &trim.Move{Kind: trim.PackJamb, Edge: door.HeadSide, First: 3, Last: 3}) {
		if strings.Contains(c.Text, "clear way") {
			t.Errorf("packing the head out: %s", c.Text)
		}
	}
	narrows := map[trim.Kind]bool{trim.PackJamb: true, trim.Pack: true, trim.Rehinge: true}
	for _, spec := range trim.Kinds {
		found := false
		for _, c := range MoveCautions(&j, spec.Kind) {
			found = found || strings.Contains(c.Text, "escape route: nothing")
		}
		if found != (narrows[spec.Kind] || spec.Kind == trim.Threshold) {
			t.Errorf("%s on an escape route: %v", spec.Kind, found)
		}
	}
}
