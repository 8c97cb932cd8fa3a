package report

import (
	"encoding/json"
	"strconv"
	"strings"
	"unicode/utf8"

	"leafwright/game"
	"leafwright/game/beside"
	"leafwright/game/words"
	"leafwright/geom/fit"
)

// Comparison is a job's door as found, as it stands and after each option, side by
// side.
type Comparison struct {
	Job     game.Job
	Columns []game.Column
}

// Compare makes the comparison of a job, whose [game.Job.Shapes] must give no fault.
func Compare(j game.Job) Comparison { return Comparison{j, j.Compare()} }

// cellWidth is how wide a column is set, in characters.
const cellWidth = 22

// Text writes the comparison as a table for a person.
func (c Comparison) Text(s words.Speaker) string {
	var b strings.Builder
	name := c.Job.Name
	if name == "" {
		name = "A door without a name"
	}
	b.WriteString(name + "\n\n")
	if game.Rated(&c.Job) {
		wrap(&b, "A rated or labelled leaf: nothing here is a reason to cut it. Its certificate and label decide.", 0, 0)
		b.WriteString("\n")
	}
	s.Hinges = len(c.Job.Door.Hinges)
	lead := make([]string, 0, len(c.Columns)+1)
	lead = append(lead, "")
	for i := range c.Columns {
		lead = append(lead, c.Columns[i].Name)
	}
	line(&b, lead)
	line(&b, []string{strings.Repeat("-", cellWidth-2+(cellWidth)*len(c.Columns))})
	for _, r := range beside.Table(c.Columns, s) {
		cells := []string{r.Label}
		for _, x := range r.Cells {
			cells = append(cells, x.Text)
		}
		line(&b, cells)
	}
	for i := range c.Columns {
		col := &c.Columns[i]
		if all := refusals(&s, &col.Tried); len(all) > 0 {
			b.WriteString("\n" + strings.ToUpper(col.Name) + ", MOVES THAT CANNOT BE DONE\n")
			for _, r := range all {
				wrap(&b, strconv.Itoa(r.Number)+". "+r.Text+". "+r.Why+". "+r.told(), 2, 5)
			}
		}
		out := col.Out()
		b.WriteString("\n" + strings.ToUpper(col.Name) + ", NOT AS WANTED\n")
		if len(out) == 0 {
			b.WriteString("  Nothing.\n")
		}
		for _, l := range s.Findings(out) {
			wrap(&b, l.Word+", "+l.Figure+"  "+l.Text, 2, 4)
		}
	}
	return b.String()
}

// line writes cells beside each other, each wrapped to its column; one cell alone is
// written as it is.
func line(b *strings.Builder, cells []string) {
	if len(cells) == 1 {
		b.WriteString(cells[0] + "\n")
		return
	}
	wrapped, most := make([][]string, len(cells)), 0
	for i, c := range cells {
		wrapped[i] = folded(c, cellWidth-2)
		most = max(most, len(wrapped[i]))
	}
	for k := range most {
		row := ""
		for i := range wrapped {
			text := ""
			if k < len(wrapped[i]) {
				text = wrapped[i][k]
			}
			row += text + strings.Repeat(" ", max(1, cellWidth-utf8.RuneCountInString(text)))
		}
		b.WriteString(strings.TrimRight(row, " ") + "\n")
	}
}

// folded breaks a text into lines of at most so many letters, a longer word too.
func folded(text string, most int) (lines []string) {
	at := ""
	for _, word := range strings.Fields(text) {
		for utf8.RuneCountInString(word) > most {
			r := []rune(word)
			if at != "" {
				lines, at = append(lines, at), ""
			}
			lines, word = append(lines, string(r[:most])), string(r[most:])
		}
		switch {
		case at == "":
			at = word
		case utf8.RuneCountInString(at)+1+utf8.RuneCountInString(word) > most:
			lines, at = append(lines, at), word
		default:
			at += " " + word
		}
	}
	if at != "" || len(lines) == 0 {
		lines = append(lines, at)
	}
	return lines
}

type comparison struct {
	Version int      `json:"leafwright_comparison"`
	Name    string   `json:"name"`
	Columns []column `json:"columns"`
}

type column struct {
	Name       string             `json:"name"`
	Option     int                `json:"option,omitempty"` // from 1
	Gaps       map[string]edgeGap `json:"gaps"`
	Spread     *float64           `json:"spread"`
	Off        float64            `json:"off_mm"`
	Volume     float64            `json:"timber_off_cm3"`
	Narrows    []left             `json:"narrows,omitempty"`
	Strips     int                `json:"strips"`
	Cuts       int                `json:"cuts"`
	Recut      []int              `json:"hinges_recut"`
	Frame      bool               `json:"frame_touched"`
	Minutes    float64            `json:"minutes"`
	Refused    int                `json:"moves_refused"`
	Refusals   []refusal          `json:"refused,omitempty"`
	Out        []string           `json:"not_as_wanted"`
	Sightlines []sightline        `json:"sightlines,omitempty"`
}

type edgeGap struct {
	Least   *float64 `json:"least"`
	Most    *float64 `json:"most"`
	Verdict string   `json:"verdict"`
}

type sightline struct {
	Rail  string  `json:"rail"`
	Above float64 `json:"above"`
}

// JSON writes the comparison for a program, in mm and cm³, unrounded.
func (c Comparison) JSON(s words.Speaker) ([]byte, error) {
	out := comparison{Version: Version, Name: c.Job.Name}
	s.Hinges = len(c.Job.Door.Hinges)
	for i := range c.Columns {
		x := &c.Columns[i]
		s.Rails = beside.RailNames(&x.Tried.Anatomy)
		col := column{
			Name: x.Name, Option: max(0, x.Option+1), Gaps: map[string]edgeGap{}, Spread: number64(x.Evenness), Off: x.Off, Volume: x.Volume, Strips: x.Strips,
			Cuts: x.Cuts, Recut: []int{}, Frame: x.Frame, Minutes: x.Minutes, Refused: x.Refused, Out: []string{},
		}
		for e := range fit.Edges {
			g := x.Edges[e]
			col.Gaps[edge(e)] = edgeGap{number64(g.Least), number64(g.Most), words.Word(g.Verdict)}
		}
		for _, l := range x.Narrows {
			col.Narrows = append(col.Narrows, leftOf(&s, l))
		}
		col.Refusals = refusals(&s, &x.Tried)
		for _, h := range x.Recut {
			col.Recut = append(col.Recut, h+1)
		}
		for _, l := range s.Findings(x.Out()) {
			col.Out = append(col.Out, strings.TrimSpace(l.Word+", "+l.Figure+"  "+l.Text))
		}
		for _, l := range x.Sightlines {
			col.Sightlines = append(col.Sightlines, sightline{s.Sightline(l.Rail, l.Above), l.Above})
		}
		out.Columns = append(out.Columns, col)
	}
	b, err := json.MarshalIndent(out, "", "  ")
	return append(b, '\n'), err
}
