package report

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/trim"
)

// The door as it stands, and after an option, is what is reported; the job's own is
// as found.
func TestReportOfMoves(t *testing.T) {
	uk := words.Speaker{Lexicon: words.For(words.UK)}
	job := game.Blank(762, 1981, 40)
	job.Options = []game.Option{{Name: "Sink both", Moves: []trim.Move{
		{Kind: trim.Sink, Hinge: 1, On: trim.OnLeaf, First: 0.5, Note: "Gently."},
		{Kind: trim.Sink, Hinge: 2, On: trim.OnLeaf, First: 0.5, Off: true},
		{Kind: trim.Sink, Hinge: 6, On: trim.OnLeaf, First: 0.5},
	}}, {}}
	found := Of(job)
	if text := found.Text(uk); strings.Contains(text, "DONE FOR KEEPS") || !strings.Contains(text, "OPTIONS TO TRY\n  1. Sink both\n  2. Option 2\n") {
		t.Errorf("as it stands:\n%s", text)
	}
	tried := OfOption(job, 0)
	if tried.Fit.Gaps[0].Least == found.Fit.Gaps[0].Least || !reflect.DeepEqual(tried.Tried.Door, job.Try(0).Door) {
		t.Error("the option's door is not the one reported")
	}
	for _, s := range []string{
		"Tried: Sink both.", "THE MOVES OF SINK BOTH", "1. Sink the top hinge 0.5 mm deeper in the leaf.\n     Gently.",
		"2. Left out: Sink the bottom hinge 0.5 mm deeper in the leaf.", "3. Cannot be done: Sink hinge 6 from the top 0.5 mm deeper in the leaf.\n     There is no such hinge on this leaf.",
	} {
		if !strings.Contains(tried.Text(uk), s) {
			t.Errorf("%q is not in\n%s", s, tried.Text(uk))
		}
	}
	kept, err := game.Form{}.Add(job, game.KeepPath(0))
	if err != nil {
		t.Fatal(err)
	}
	stands := Of(kept)
	if stands.Fit.Gaps[0].Least != tried.Fit.Gaps[0].Least || !strings.Contains(stands.Text(uk), "DONE FOR KEEPS\n  1. Sink the top hinge") {
		t.Errorf("for keeps:\n%s", stands.Text(uk))
	}
	data, err := stands.JSON(uk)
	var out struct {
		Made []struct {
			Move  struct{ Do string }
			State string
			Gains []int `json:"hinges_recut"`
		}
		Options []string
		Option  *struct{}
	}
	if err == nil {
		err = json.Unmarshal(data, &out)
	}
	if err != nil || len(out.Made) != 1 || out.Made[0].Move.Do != "sink" || out.Made[0].State != "done" || !reflect.DeepEqual(out.Made[0].Gains, []int{1}) || out.Option != nil || len(out.Options) != 2 {
		t.Errorf("%v, %+v", err, out)
	}
	if text := OfOption(job, 1).Text(uk); !strings.Contains(text, "This option has no moves yet.") {
		t.Errorf("an empty option:\n%s", text)
	}
}

func TestFolded(t *testing.T) {
	for _, row := range []struct {
		text string
		want []string
	}{
		{"", []string{""}},
		{"one two three", []string{"one two", "three"}},
		{"one twothreefour", []string{"one", "twothree", "four"}},
		{"−2.0 mm", []string{"−2.0 mm"}},
	} {
		if got := folded(row.text, 8); !reflect.DeepEqual(got, row.want) {
			t.Errorf("%q is folded %q, want %q", row.text, got, row.want)
		}
	}
}
