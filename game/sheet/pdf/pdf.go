// Package pdf writes the pages of a sheet as a PDF. Only the command uses it.
package pdf

import (
	"fmt"
	"image/color"
	"io"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"github.com/go-fonts/dejavu/dejavusanscondensed"
	"github.com/go-fonts/dejavu/dejavusanscondensedbold"

	"leafwright/game/draw"
	"leafwright/game/sheet"
)

const (
	pt     = 72.0 / 96 // of a px
	family = "sheet"
)

// Write writes the pages as one PDF, true to size, with the letters of an open face
// in it. Equal pages give equal bytes.
func Write(w io.Writer, pages []sheet.Page, title string) error {
	p := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: fpdf.SizeType{Wd: 595, Ht: 842}})
	p.SetCatalogSort(true)
	epoch := time.Unix(0, 0).UTC() // no clock: the same sheet is the same file
	p.SetCreationDate(epoch)
	p.SetModificationDate(epoch)
	p.SetProducer("Leafwright", true)
	p.SetTitle(units(title), true)
	p.SetLang("en-GB")
	p.SetAutoPageBreak(false, 0)
	p.SetMargins(0, 0, 0)
	p.SetCellMargin(0)
	p.AddUTF8FontFromBytes(family, "", dejavusanscondensed.TTF)
	p.AddUTF8FontFromBytes(family, "B", dejavusanscondensedbold.TTF)
	for i := range pages {
		l := &pages[i].List
		// upright, as the size has it
		p.AddPageFormat("P", fpdf.SizeType{Wd: l.Width * pt, Ht: l.Height * pt})
		p.SetLineCapStyle("round")
		p.SetLineJoinStyle("round")
		for k := range l.Marks {
			mark(p, l, &l.Marks[k])
		}
	}
	if err := p.Output(w); err != nil {
		return fmt.Errorf("the PDF was not written: %w", err)
	}
	return nil
}

func mark(p *fpdf.Fpdf, l *draw.List, m *draw.Mark) {
	c := draw.Print[m.Ink]
	points := l.Points[m.From:m.To]
	if len(points) == 0 {
		return
	}
	opaque := c.A == 255
	if !opaque {
		p.SetAlpha(float64(c.A)/255, "Normal")
	}
	switch m.Kind {
	case draw.Text:
		letter(p, m, points[0], c)
	case draw.Fill:
		p.SetFillColor(rgb(c))
		path(p, points, true)
		p.DrawPath("f")
	default:
		p.SetDrawColor(rgb(c))
		p.SetLineWidth(m.Width * pt)
		path(p, points, m.Closed)
		p.DrawPath("D")
	}
	if !opaque {
		p.SetAlpha(1, "Normal")
	}
}

func rgb(c color.NRGBA) (r, g, b int) { return int(c.R), int(c.G), int(c.B) }

func path(p *fpdf.Fpdf, points []draw.Pt, closed bool) {
	for i, q := range points {
		if i == 0 {
			p.MoveTo(q.X*pt, q.Y*pt)
		} else {
			p.LineTo(q.X*pt, q.Y*pt)
		}
	}
	if closed {
		p.ClosePath()
	}
}

// letter writes one line of writing. The face is seldom wider than the estimate the
// page was laid out by; where it is, the line is set that much smaller.
func letter(p *fpdf.Fpdf, m *draw.Mark, at draw.Pt, c color.NRGBA) {
	style := ""
	if m.Bold {
		style = "B"
	}
	text := units(seen(m.Text))
	size := m.Size * pt
	p.SetFont(family, style, size)
	wide, room := p.GetStringWidth(text), draw.TextWidth(m.Text, m.Size, m.Bold)*pt
	if wide > room {
		p.SetFontSize(size * room / wide)
		wide = room
	}
	x := at.X * pt
	switch m.Anchor {
	case draw.Middle:
		x -= wide / 2
	case draw.End:
		x -= wide
	}
	p.SetTextColor(rgb(c))
	p.Text(x, at.Y*pt, text)
}
