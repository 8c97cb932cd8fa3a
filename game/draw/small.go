package draw

import (
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// columnFactor is how many times true size small pictures show gaps, as far as the
// door allows: the same for all, since they stand side by side.
const columnFactor = 8

// Column is the view of a small front picture for a table's column, legible from
// about 200 px of width on.
func Column(width, height float64) View {
	return View{Width: width, Height: height, Show: Front, Still: true, Small: true, Factor: columnFactor, TextSize: smallest}
}

// Small lays a small front picture of a door down on an emptied list: was is the door
// as found, format writes a gap or is nil. The scene is only worked with.
func Small(l *List, s *Scene, f *fit.Fit, d *door.Door, a *door.Anatomy, w *judge.Wanted, was *door.Door, rightHung bool, width, height float64, format func(mm float64) string) {
	v := Column(width, height)
	v.Was, v.RightHung, v.Format = was, rightHung, format
	s.Draw(l, f, d, a, w, v)
}
