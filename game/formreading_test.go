package game

import (
	"os"
	"slices"
	"testing"

	"leafwright/game/measure"
)

// Every reading is a group folded away under what it read, with the fields its kind has.
func TestReadingsAreFolded(t *testing.T) {
	data, err := os.ReadFile("../testdata/jobs/8-weavers-cottage-readings.json")
	if err != nil {
		t.Fatal(err)
	}
	j := must(t, string(data))
	for _, row := range []struct {
		situation  string
		units      measure.Unit
		path, text string
		now        string
		names      []string
	}{
		{"as typed", measure.MM, "readings[0].note", "", "767 mm", []string{"kind", "at", "value", "sigma", "instrument", "note", "off"}},
		{"typed in feet and inches", measure.MM, "readings[0].value", `2' 6 1/4"`, `2' 6 1/4"`, nil},
		{"shown in inches", measure.Inch, "readings[0].note", "", "767 mm", nil},
		{"left out", measure.MM, "readings[0].off", "true", "767 mm, left out", nil},
		{"not read", measure.MM, "readings[0].value", "", "not read yet", nil},
		{"of another kind", measure.MM, "readings[0].kind", "jamb_plumb", "not read yet", []string{"kind", "side", "from", "to", "value", "sigma", "instrument", "note", "off"}},
	} {
		t.Run(row.situation, func(t *testing.T) {
			fm := Form{Units: row.units}
			got, err := fm.Set(j, row.path, row.text)
			if err != nil {
				t.Fatal(err)
			}
			var groups []Group
			for _, s := range fm.Sections(got) {
				if s.Name == "readings" {
					groups = s.Groups
				}
			}
			if len(groups) != len(got.Readings) {
				t.Fatalf("%d groups for %d readings", len(groups), len(got.Readings))
			}
			g := groups[0]
			if !g.Fold || g.Now != row.now || g.Remove != "readings[0]" {
				t.Errorf("folded %v, holds %q, removed by %q", g.Fold, g.Now, g.Remove)
			}
			var names []string
			for _, f := range g.Fields {
				names = append(names, f.Path[len("readings[0]."):])
			}
			if row.names != nil && !slices.Equal(names, row.names) {
				t.Errorf("its fields are %v, not %v", names, row.names)
			}
		})
	}
}
