package pdf

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"leafwright/game/internal/demos"
	"leafwright/game/measure"
	"leafwright/game/sheet"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

// tool gives a program of poppler's, or skips the test; where CI is set it must be there.
func tool(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		if os.Getenv("CI") != "" {
			t.Fatalf("%s is not on the path (poppler-utils)", name)
		}
		t.Skipf("%s is not on the path (poppler-utils): the printed page is not measured", name)
	}
	return path
}

// raster is a page as a printer lays it down, 300 dots to the inch.
type raster struct {
	wide, high int
	grey       []byte
}

const dpi = 300.0

// px gives how many dots a length in mm has.
func px(mm float64) float64 { return mm * dpi / 25.4 }

func rendered(t *testing.T, file []byte) (pages []raster) {
	t.Helper()
	ppm, folder := tool(t, "pdftoppm"), t.TempDir()
	name := filepath.Join(folder, "sheet.pdf")
	if err := os.WriteFile(name, file, 0o600); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command(ppm, "-r", "300", "-gray", name, filepath.Join(folder, "page")).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	names, _ := filepath.Glob(filepath.Join(folder, "page*.pgm"))
	for _, n := range names {
		data, err := os.ReadFile(n)
		if err != nil {
			t.Fatal(err)
		}
		var r raster
		var most int
		if _, err := fmt.Sscanf(string(data[:40]), "P5\n%d %d\n%d", &r.wide, &r.high, &most); err != nil || most != 255 {
			t.Fatalf("%v in %q", err, data[:20])
		}
		r.grey = data[len(data)-r.wide*r.high:]
		pages = append(pages, r)
	}
	return pages
}

// ink is how dark a dot is, 0 to 1.
func (r *raster) ink(x, y int) float64 {
	if x < 0 || y < 0 || x >= r.wide || y >= r.high {
		return 0
	}
	return 1 - float64(r.grey[y*r.wide+x])/255
}

// runs gives the middles of the dark runs of a row (or a column) between two dots,
// weighed by how dark they are.
func (r *raster) runs(upright bool, at, from, to int) (mids []float64) {
	sum, moment := 0.0, 0.0
	for i := from; i <= to+1; i++ {
		k := 0.0
		if i <= to {
			if upright {
				k = r.ink(at, i)
			} else {
				k = r.ink(i, at)
			}
		}
		if k < 0.25 {
			if sum > 0.5 {
				mids = append(mids, moment/sum)
			}
			sum, moment = 0, 0
			continue
		}
		sum += k
		moment += k * (float64(i) + 0.5)
	}
	return mids
}

// Measured on the rendered page, the check line is as long as it says to 0.2 mm, on every
// page of every kind, in mm on the one paper and in inches on the other.
func TestCheckLineOnPaper(t *testing.T) {
	j := demos.Job(t, "2-terrace-falling-head")
	for n, paper := range sheet.Papers {
		for _, kind := range sheet.Kinds {
			unit, long := measure.MM, 100.0
			if n > 0 {
				unit, long = measure.Inch, 4*25.4
			}
			pages := rendered(t, written(t, pagesFor(t, &j, 2, kind, paper, unit)))
			for i := range pages {
				r := &pages[i]
				if mm := float64(r.wide) / dpi * 25.4; math.Abs(mm-paper.Width) > 0.2 {
					t.Errorf("%s is %v mm wide", paper.Name, mm)
				}
				// the ticks stand 1 mm over the line; the line is the longest near the foot
				y := r.row(int(px(paper.Height-26)), int(px(paper.Height-12)))
				ticks := r.runs(false, y-int(px(1)), 0, int(px(14+long)))
				if len(ticks) != 2 {
					t.Fatalf("%s, %s, page %d: %d ticks", kind, paper.Name, i+1, len(ticks))
				}
				if got := (ticks[1] - ticks[0]) / dpi * 25.4; math.Abs(got-long) > 0.2 {
					t.Errorf("%s, %s, page %d: the check line is %.2f mm, not %v", kind, paper.Name, i+1, got, long)
				}
			}
		}
	}
}

// row gives the row with most ink in the page's left half.
func (r *raster) row(from, to int) int {
	best, most := from, 0.0
	for y := from; y <= to; y++ {
		sum := 0.0
		for x := range r.wide / 2 {
			sum += r.ink(x, y)
		}
		if sum > most {
			best, most = y, sum
		}
	}
	return best
}

// Measured on the rendered page, a template's marks are where the model has them to 0.2 mm:
// the cut's line off the edge at places along it, and the dowels' holes.
func TestTemplateOnPaper(t *testing.T) {
	j := demos.Job(t, "2-terrace-falling-head")
	pages := rendered(t, written(t, pagesFor(t, &j, 2, sheet.Template, sheet.Papers[0], measure.MM)))
	// the cut is 9.5 mm at the hanging corner, 16.5 mm at the other, 762 mm on
	r := &pages[0]
	left, bottom := r.strip(t, 16)
	for _, along := range []float64{15, 39, 87, 135, 163} {
		// between ticks and hatches, which are 4 mm apart: only the heavy line and the fine one
		want := 9.5 + 7*along/762
		row := int(bottom - px(along))
		runs := r.runs(false, row, int(left)+4, int(left+px(25)))
		if len(runs) != 2 {
			t.Errorf("%v mm along: lines at %v", along, runs)
			continue
		}
		if got := (runs[1] - runs[0]) / dpi * 25.4; math.Abs(got-want) > 0.2 {
			t.Errorf("%v mm along, the line is %.2f mm off the edge, not %.2f", along, got, want)
		}
	}
	p := j.Stands()
	q, _, _ := trim.Do(trim.Piece{Door: p.Door, Anatomy: p.Anatomy}, j.Options[2].Moves[0])
	d, why := timber.DowelsFor(q, j.Options[2].Moves[1], 0)
	if why != nil {
		t.Fatal(why)
	}
	r = &pages[len(pages)-2]
	left, bottom = r.strip(t, 16)
	// the hole's cross: a row just over its level arm shows the face and the upright arm
	row := int(bottom - px(d.Places[0]-2))
	runs := r.runs(false, row, int(left)+4, int(left+px(32)))
	// the face, the round, the arm, the round
	if len(runs) < 4 || math.Abs((runs[2]-runs[0])/dpi*25.4-d.LeafGauge) > 0.2 {
		t.Errorf("face, hole and its middle stand at %v, gauge %v", runs, d.LeafGauge)
	} else {
		x := int(runs[2] + px(2))
		var ys []float64
		for _, y := range r.runs(true, x, int(bottom-px(d.Places[0]+3)), int(bottom)+8) {
			ys = append(ys, (bottom-y)/dpi*25.4)
		}
		found := false
		for _, y := range ys {
			found = found || math.Abs(y-d.Places[0]) < 0.2
		}
		if !found {
			t.Errorf("the first hole is none of %v mm from the end, but %v", ys, d.Places[0])
		}
	}
}

// strip finds the first strip's outline on a template: its left line and its lower one.
func (r *raster) strip(t *testing.T, inside float64) (left, bottom float64) {
	t.Helper()
	row := r.high / 2
	for dy := range 60 {
		if runs := r.runs(false, row+dy, 0, int(px(60))); len(runs) > 1 {
			left = runs[0]
			break
		}
	}
	// just inside the outline nothing else is drawn
	ys := r.runs(true, int(left)+8, r.high/2, int(float64(r.high)-px(30)))
	if len(ys) == 0 {
		t.Fatal("no strip's end was found")
	}
	return left, ys[len(ys)-1]
}

// A reader's own extraction gives the words of every kind of sheet, names in other scripts
// among them.
func TestTextExtracted(t *testing.T) {
	path := tool(t, "pdftotext")
	j := demos.Job(t, "2-terrace-falling-head")
	j.Name = scripts
	for _, kind := range sheet.Kinds {
		name := filepath.Join(t.TempDir(), "sheet.pdf")
		if err := os.WriteFile(name, written(t, pagesFor(t, &j, 2, kind, sheet.Papers[0], measure.MM)), 0o600); err != nil {
			t.Fatal(err)
		}
		out, err := exec.Command(path, "-enc", "UTF-8", name, "-").Output()
		if err != nil {
			t.Fatal(err)
		}
		for _, want := range []string{"Check the print: this line is 100 mm long.", "Page 1 of ", "Bücherei", "Łódź", "Κήπος", "Ёлка", "門扉"} {
			if !bytes.Contains(out, []byte(want)) {
				t.Errorf("%s: %q is not in what is extracted", kind, want)
			}
		}
		if kind == sheet.Work && !strings.Contains(string(out), "The work, in this order") {
			t.Errorf("no heading in %q", out)
		}
	}
}
