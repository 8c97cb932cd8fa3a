package sheet_test

import (
	"bytes"
	"encoding/xml"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/internal/demos"
	"leafwright/game/measure"
	"leafwright/game/sheet"
	"leafwright/game/words"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// everySheet calls do with every kind of sheet of every option of the jobs given, on both
// papers, in both units.
func everySheet(t *testing.T, all []game.Job, do func(what string, a *sheet.Ask, pages []sheet.Page)) {
	t.Helper()
	for n := range all {
		j := &all[n]
		if game.Rated(j) {
			continue
		}
		for i := range j.Options {
			for _, kind := range sheet.Kinds {
				for k, paper := range sheet.Papers {
					for _, unit := range []measure.Unit{measure.MM, measure.Inch} {
						if len(j.Name) > 100 && (int(unit)+k+i)%2 > 0 {
							continue // half of the busy ones
						}
						a := &sheet.Ask{Job: j, Options: []int{i}, Kind: kind, Paper: paper, Unit: unit, Words: words.Regions[n%3]}
						pages, err := sheet.Pages(a)
						if err != nil {
							t.Fatalf("%s: %v", j.Name, err)
						}
						do(j.Name+", "+j.OptionName(i)+", "+string(kind)+" on "+paper.Name+" in "+unit.String(), a, pages)
					}
				}
			}
		}
	}
}

// busy are jobs with more on a sheet than any of the demos: long names, every kind of move.
func busy(t *testing.T) []game.Job {
	all := demos.All(t)[1:4] // hung on either side, framed and boarded
	for n := range all {
		j := &all[n]
		j.Options = nil
		j.Name = "Busy " + j.Name + strings.Repeat("Langername ", 12) + strings.Repeat("o", 120) + " Дверь Θύρα דלת " + strings.Repeat("門扉", 90)
		for k := 0; k < len(trim.Kinds); k += 4 {
			o := game.Option{Name: strings.Repeat("Way", 60)}
			for m := k; m < min(k+4, len(trim.Kinds)); m++ {
				move := j.NewMove(trim.Kinds[m].Kind)
				if move.Kind == trim.Scribe {
					move.Line = geom.Through(0, 1.3, 333, 2.2, 900, 0.4, 1700, 1.9)
				}
				o.Moves = append(o.Moves, move, trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 0.5 + float64(m)/7, Last: 2})
			}
			j.Options = append(j.Options, o)
		}
	}
	return all
}

func brief(what string) string {
	if len(what) > 120 {
		return what[:40] + " … " + what[len(what)-60:]
	}
	return what
}

// extent gives the corners of what a mark covers on the page, px; a text by the widest
// face it may be set in, signs of the East as wide as they are high.
func extent(p *sheet.Page, m *draw.Mark) (x0, y0, x1, y1 float64) {
	x0, y0, x1, y1 = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, q := range p.Points[m.From:m.To] {
		x0, y0, x1, y1 = min(x0, q.X), min(y0, q.Y), max(x1, q.X), max(y1, q.Y)
	}
	if m.Kind == draw.Text {
		w := draw.TextWidth(m.Text, m.Size, m.Bold)
		if square := m.Size * float64(strings.Count(m.Text, "門")+strings.Count(m.Text, "扉")); w < square {
			w = square
		}
		switch m.Anchor {
		case draw.Start:
			x1 += w
		case draw.Middle:
			x0, x1 = x0-w/2, x1+w/2
		default:
			x0 -= w
		}
		y0, y1 = y0-0.75*m.Size, y1+0.23*m.Size
	}
	return x0, y0, x1, y1
}

// Nothing stands outside the page's margins, in whatever face it is set, and no sheet is
// endless.
func TestNothingIsClipped(t *testing.T) {
	const rim = 10.5 * sheet.MM // the margins are 12 mm; lines have a width, tints a hem
	everySheet(t, append(demos.All(t), busy(t)...), func(what string, a *sheet.Ask, pages []sheet.Page) {
		what = brief(what)
		if len(pages) == 0 || len(pages) > 40 {
			t.Errorf("%s: %d pages", what, len(pages))
		}
		for i := range pages {
			p := &pages[i]
			if p.Width != a.Paper.Width*sheet.MM || p.Height != a.Paper.Height*sheet.MM {
				t.Errorf("%s, page %d: %v × %v px", what, i+1, p.Width, p.Height)
			}
			for k := range p.Marks {
				x0, y0, x1, y1 := extent(p, &p.Marks[k])
				if !(x0 >= rim && y0 >= rim && x1 <= p.Width-rim && y1 <= p.Height-rim) {
					t.Errorf("%s, page %d: %q reaches from %.0f, %.0f to %.0f, %.0f", what, i+1, p.Marks[k].Text, x0, y0, x1, y1)
				}
			}
		}
	})
}

// No two lines of writing stand on one another.
func TestWordsStandClear(t *testing.T) {
	everySheet(t, append(demos.All(t), busy(t)...), func(what string, a *sheet.Ask, pages []sheet.Page) {
		what = brief(what)
		if a.Kind == sheet.Client {
			return // whose pictures are package draw's
		}
		type box struct {
			x0, y0, x1, y1 float64
			text           string
		}
		for i := range pages {
			p := &pages[i]
			var all []box
			for k := range p.Marks {
				if m := &p.Marks[k]; m.Kind == draw.Text {
					x0, y0, x1, y1 := extent(p, m)
					tall := y1 - y0
					all = append(all, box{x0, y0 + 0.15*tall, x1, y1 - 0.15*tall, m.Text})
				}
			}
			for k := range all {
				for n := range k {
					a, b := &all[k], &all[n]
					if min(a.x1, b.x1)-max(a.x0, b.x0) > 0.5 && min(a.y1, b.y1)-max(a.y0, b.y0) > 0.5 {
						t.Errorf("%s, page %d: %q and %q", what, i+1, a.text, b.text)
					}
				}
			}
		}
	})
}

// A long name is on the sheet to its last letter, broken where it must be.
func TestLongNamesAreWhole(t *testing.T) {
	all := busy(t)
	j := &all[0]
	pages, err := sheet.Pages(&sheet.Ask{Job: j, Options: []int{len(j.Options) - 1}, Kind: sheet.Work, Paper: sheet.Papers[0]})
	if err != nil {
		t.Fatal(err)
	}
	squeeze := func(s string) string { return strings.ReplaceAll(s, " ", "") }
	text := squeeze(strings.Join(textsOf(pages), ""))
	for _, name := range []string{j.Name, j.Options[len(j.Options)-1].Name} {
		if !strings.Contains(text, squeeze(name)) {
			t.Errorf("%q is not whole on the sheet", name)
		}
	}
}

// A rated leaf gets no sheet for the bench and no template, and the reason.
func TestRatedLeafIsNotLaidOut(t *testing.T) {
	for _, how := range []func(j *game.Job){
		func(j *game.Job) { j.Anatomy.Rated = true },
		func(j *game.Job) {
			for _, p := range game.Presets() {
				if p.Status == game.Inspection {
					j.WantedName = p.Name
				}
			}
		},
	} {
		j := demos.Job(t, "2-terrace-falling-head")
		how(&j)
		for _, kind := range []sheet.Kind{sheet.Work, sheet.Template} {
			if pages, err := sheet.Pages(&sheet.Ask{Job: &j, Options: []int{0}, Kind: kind, Paper: sheet.Papers[0]}); err != sheet.ErrRated || pages != nil {
				t.Errorf("%s: %d pages, %v", kind, len(pages), err)
			}
		}
	}
}

// An SVG of a page is as large as the paper, and its check line measures what it says:
// read by the library's XML reader.
func TestSVGToScale(t *testing.T) {
	j := demos.Job(t, "2-terrace-falling-head")
	for _, paper := range sheet.Papers {
		pages, err := sheet.Pages(&sheet.Ask{Job: &j, Options: []int{2}, Kind: sheet.Template, Paper: paper})
		if err != nil {
			t.Fatal(err)
		}
		for i := range pages {
			long := 0.0
			d := xml.NewDecoder(bytes.NewReader(sheet.SVG(&pages[i])))
			scale := 0.0 // mm a unit
			for {
				token, err := d.Token()
				if err == io.EOF {
					break
				}
				if err != nil {
					t.Fatal(err)
				}
				e, ok := token.(xml.StartElement)
				if !ok {
					continue
				}
				attr := map[string]string{}
				for _, a := range e.Attr {
					attr[a.Name.Local] = a.Value
				}
				if e.Name.Local == "svg" {
					if attr["width"] != strconv.FormatFloat(paper.Width, 'f', -1, 64)+"mm" || attr["height"] != strconv.FormatFloat(paper.Height, 'f', -1, 64)+"mm" {
						t.Errorf("%s: %s × %s", paper.Name, attr["width"], attr["height"])
					}
					box := strings.Fields(attr["viewBox"])
					units, _ := strconv.ParseFloat(box[2], 64)
					scale = paper.Width / units
				}
				for _, path := range strings.Split(attr["d"], "M")[min(1, strings.Count(attr["d"], "M")):] {
					ends := strings.Split(path, "L")
					if len(ends) != 2 {
						continue
					}
					a, b := strings.Fields(ends[0]), strings.Fields(ends[1])
					if len(a) == 2 && len(b) == 2 && a[1] == b[1] {
						x0, _ := strconv.ParseFloat(a[0], 64)
						x1, _ := strconv.ParseFloat(b[0], 64)
						if mm := math.Abs(x1-x0) * scale; math.Abs(mm-100) < math.Abs(long-100) {
							long = mm
						}
					}
				}
			}
			if math.Abs(long-100) > 0.05 {
				t.Errorf("%s, page %d: the check line is %v mm", paper.Name, i+1, long)
			}
		}
	}
}
