package sheet

import (
	"bytes"
	"errors"
	"math"
	"slices"
	"strconv"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/measure"
	"leafwright/game/words"
	"leafwright/geom/advise"
)

// Kind is what a sheet is for.
type Kind string

// The kinds.
const (
	Work     Kind = "work"     // for the bench: what is cut, where, in which order
	Client   Kind = "client"   // for whom the door is made to fit
	Template Kind = "template" // full-size lines to prick through
)

// Kinds lists them in the order they are offered.
var Kinds = []Kind{Work, Client, Template}

// Ask is what is to be printed. The job's shapes must give no fault.
type Ask struct {
	Job     *game.Job
	Options []int // places in Job.Options; Work and Template are of one, Client of none to three
	Kind    Kind
	Paper   Paper
	Unit    measure.Unit
	Words   words.Region
	Plans   []advise.Plan // for Client: what the advice knows of the door as it stands, best first; none where it was not asked
}

// ErrRated is why there is no marking-out sheet or template for a rated leaf.
var ErrRated = errors.New("this leaf is rated or labelled, or held to a rated leaf's limits: no cuts are laid out for it. The maker's certificate and the label decide what may be done to it; ask whoever holds them")

// Pages lays the sheet out.
func Pages(a *Ask) ([]Page, error) {
	for _, i := range a.Options {
		if i < 0 || i >= len(a.Job.Options) {
			return nil, errors.New("there is no option " + strconv.Itoa(i+1))
		}
	}
	if a.Kind == Client {
		return clientPages(a)
	}
	if len(a.Options) != 1 {
		return nil, errors.New("a sheet for the bench is of one option")
	}
	if game.Rated(a.Job) {
		return nil, ErrRated
	}
	if a.Kind == Template {
		return templatePages(a)
	}
	return workPages(a)
}

// speaker speaks the ask's words and units of a door after moves.
func (a *Ask) speaker(t *game.Tried) *words.Speaker {
	s := &words.Speaker{Lexicon: words.For(a.Words), Hinges: len(t.Door.Hinges)}
	for i := range t.Anatomy.Rails {
		s.Rails = append(s.Rails, t.Anatomy.Rails[i].Name)
	}
	if a.Unit == measure.Inch {
		s.Length, s.Place = words.Inches, words.InchPlace
	}
	return s
}

// SVG writes a page as a picture as large as the paper, in mm.
func SVG(p *Page) []byte {
	svg := p.List.SVG(&draw.Print)
	from := bytes.Index(svg, []byte(` width="`))
	to := bytes.Index(svg, []byte(` viewBox="`))
	if from < 0 || to < from {
		return svg
	}
	mm := func(px float64) string { return strconv.FormatFloat(math.Round(px/MM*1000)/1000, 'f', -1, 64) }
	size := ` width="` + mm(p.Width) + `mm" height="` + mm(p.Height) + `mm"`
	return slices.Concat(svg[:from], []byte(size), svg[to:])
}
