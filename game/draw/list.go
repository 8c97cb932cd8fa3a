// Package draw turns a fit into a display list: fills, strokes and texts in the
// order they are laid down. The page paints the list with Ebitengine, the command
// writes it as SVG and the sheets print it, so all of them show the same drawing,
// and a drawing can be tested as text without a screen.
package draw

// Pt is a point of the sheet in CSS pixels, x to the right, y down.
type Pt struct{ X, Y float64 }

// Ink says what a mark stands for; a [Palette] says how that looks.
type Ink uint8

// Kind is how a mark is laid down.
type Kind uint8

// The kinds of mark. Dashes and hatches are cut into plain strokes before they
// get here, so that every surface draws the same lines.
const (
	Fill   Kind = iota // a simple closed polygon, convex or not
	Stroke             // an open or closed polyline
	Text               // one line of writing
)

// Anchor is the part of a text that stands at its point.
type Anchor uint8

// Horizontal anchors; the baseline is always at the point.
const (
	Start Anchor = iota
	Middle
	End
)

// Mark is one thing laid down. Its points are List.Points[From:To].
type Mark struct {
	Kind     Kind
	Ink      Ink
	Closed   bool    // stroke: join the last point to the first
	Bold     bool    // text
	Anchor   Anchor  // text
	Width    float64 // stroke, px
	Size     float64 // text, px
	From, To int
	Text     string
}

// List is a drawing. Reset keeps its memory, so that a frame allocates next to
// nothing.
type List struct {
	Width, Height float64 // px
	Title, Desc   string  // what it shows, for those who cannot see it
	Marks         []Mark
	Points        []Pt
}

// Reset empties the list for a sheet of the given size.
func (l *List) Reset(width, height float64) {
	l.Width, l.Height = width, height
	l.Title, l.Desc = "", ""
	l.Marks, l.Points = l.Marks[:0], l.Points[:0]
}
