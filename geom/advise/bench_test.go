package advise

import (
	"testing"
)

// BenchmarkChoices tells how the time grows with the yes-or-no choices that the wishes
// leave open: each combination is a program of its own. The door wants them all: its head
// falls, its opening is too wide and its stops are off.
func BenchmarkChoices(b *testing.B) {
	piece := hung()
	f := &piece.Door.Frame
	f.Head[1].Value -= 4
	f.LatchJamb = f.LatchJamb.Shift(3)
	f.LatchStop = f.LatchStop.Shift(3)
	for _, row := range []struct {
		name   string
		wishes Wishes
	}{
		{"planing", Wishes{HingesStay: true, NoStrip: true, LeaveFrame: true}},
		{"and hinges", Wishes{NoStrip: true, LeaveFrame: true}},
		{"and strips", Wishes{LeaveFrame: true}},
		{"and the frame", Wishes{}},
	} {
		for _, known := range []string{"exact", "with errors"} {
			p := &Problem{Piece: piece, Wanted: asked(), Wishes: row.wishes}
			if known != "exact" {
				p.Sigma = levelSigmas(0.5)
			}
			b.Run(row.name+", "+known, func(b *testing.B) {
				families := 0
				for b.Loop() {
					w := Start(p)
					for !w.Step() {
					}
					families = len(w.families)
				}
				b.ReportMetric(float64(families), "families")
			})
		}
	}
}
