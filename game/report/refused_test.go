package report

import (
	"encoding/json"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/internal/demos"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// What cannot be done is named wherever an option is told of, with its reason and with
// the moves that lean on it and are made all the same.
func TestRefusedMovesAreNamed(t *testing.T) {
	j := demos.Job(t, "2-terrace-falling-head")
	j.Options = []game.Option{{Name: "Badly thought", Moves: []trim.Move{
		{Kind: trim.Splice, Edge: door.HeadSide, Face: trim.Middle, First: 12, Last: 12, Stock: 38, Hollow: 2},
		{Kind: trim.Plane, Edge: door.HeadSide, First: 1, Last: 1},
		{Kind: trim.Plane, Edge: door.HeadSide, First: 0.5, Last: 0.5},
		{Kind: trim.Plane, Edge: door.LatchSide, First: 0.2, Last: 0.2},
		{Kind: trim.Cut, Edge: door.HeadSide, First: 250, Last: 250},
	}}}
	flat := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	beside := flat(Compare(j).Text(speaker))
	for _, want := range []string{
		"BADLY THOUGHT, MOVES THAT CANNOT BE DONE 1. Splice a 12 mm strip onto the top, from 38 mm stock, centred; the faces to be glued meet to 2 mm. " +
			"The faces to be glued do not meet, 2 mm apart where 0.3 mm is the most: plane them straight first. " +
			"The figures are without it, and with moves 2 and 3, which lean on it and are made all the same. 5. Cut the top",
	} {
		if !strings.Contains(beside, want) {
			t.Errorf("no %q in\n%s", want, beside)
		}
	}
	text := flat(OfOption(j, 0).Text(speaker))
	for _, want := range []string{
		"Tried: Badly thought. Its moves 1 and 5 cannot be done: what follows is the door without.",
		"Mind: Move 1, on which this leans, is not made: look at this one's numbers anew.",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	data, err := Compare(j).JSON(speaker)
	if err != nil {
		t.Fatal(err)
	}
	var out comparison
	if err := json.Unmarshal(data, &out); err != nil {
		t.Fatal(err)
	}
	col := out.Columns[len(out.Columns)-1]
	if col.Refused != 2 || len(col.Refusals) != 2 || col.Refusals[0].Number != 1 || col.Refusals[1].Number != 5 {
		t.Fatalf("%+v", col)
	}
	if w := col.Refusals[0].Without; len(w) != 2 || w[0] != 2 || w[1] != 3 {
		t.Errorf("leaning on the strip: %v", w)
	}
	if year := SeasonOf(j, 0, game.Where{Climate: "maritime", Room: "heated", Month: -1}); !strings.Contains(flat(year.Text(speaker)), "Its moves 1 and 5 cannot be done") {
		t.Error("the year does not say that moves are missing")
	}
}
