package sheet

import "leafwright/game/draw"

// write lays one line of writing on a page, its baseline at y.
func write(l *draw.List, text string, st style, anchor draw.Anchor, x, y float64) {
	if text == "" {
		return
	}
	n := len(l.Points)
	l.Points = append(l.Points, draw.Pt{X: x, Y: y})
	l.Marks = append(l.Marks, draw.Mark{Kind: draw.Text, Ink: st.ink, Bold: st.bold, Anchor: anchor, Size: st.size, From: n, To: n + 1, Text: text})
}

// line lays a polyline, outline a closed one, and area a filled polygon.
func line(l *draw.List, ink draw.Ink, width float64, pts ...draw.Pt) {
	put(l, draw.Mark{Kind: draw.Stroke, Ink: ink, Width: width}, pts)
}

func outline(l *draw.List, ink draw.Ink, width float64, pts ...draw.Pt) {
	put(l, draw.Mark{Kind: draw.Stroke, Ink: ink, Width: width, Closed: true}, pts)
}

func area(l *draw.List, ink draw.Ink, pts ...draw.Pt) {
	put(l, draw.Mark{Kind: draw.Fill, Ink: ink}, pts)
}

func put(l *draw.List, m draw.Mark, pts []draw.Pt) {
	m.From = len(l.Points)
	l.Points = append(l.Points, pts...)
	m.To = len(l.Points)
	l.Marks = append(l.Marks, m)
}

// lay puts a drawing down on a page, its corner at x, y.
func lay(l, drawing *draw.List, x, y float64) {
	n := len(l.Points)
	for _, p := range drawing.Points {
		l.Points = append(l.Points, draw.Pt{X: p.X + x, Y: p.Y + y})
	}
	for _, m := range drawing.Marks {
		m.From, m.To = m.From+n, m.To+n
		l.Marks = append(l.Marks, m)
	}
}
