package bench

import (
	"math"
	"testing"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/internal/demos"
	"leafwright/geom/fit"
)

// A stroke however long makes no garbage that grows with it.
func TestAStrokeKeepsNoMemory(t *testing.T) {
	s := tooled(t, leftHung, PlaneTool)
	g := s.current().Sight()
	s.Press(g.On(fit.LatchSide, 300))
	i := 0.0
	event := func() {
		i++
		s.Move(g.On(fit.LatchSide, 500+math.Mod(37*i, 1200)))
		s.Drawing(900, 700)
	}
	few := testing.AllocsPerRun(50, event)
	many := testing.AllocsPerRun(500, event)
	if many > few+8 || many > 400 {
		t.Errorf("an event makes %v allocations, at first %v", many, few)
	}
}

// BenchmarkStroke is one pointer event of a stroke to the drawing's list, on the
// largest of the demo jobs.
func BenchmarkStroke(b *testing.B) {
	for _, job := range []string{"6-coach-house-rising-floor", "9-ferry-house-feelers"} {
		b.Run(job, func(b *testing.B) {
			s := tooled(b, job, PlaneTool)
			g := s.current().Sight()
			s.Press(g.On(fit.LatchSide, 300))
			b.ReportAllocs()
			for i := range b.N {
				s.Move(g.On(fit.LatchSide, 500+float64(37*i%1200)))
				s.Drawing(900, 700)
			}
			if _, on := s.Previewed(); !on {
				b.Fatal("nothing was stroked: " + s.HandSays())
			}
		})
	}
}

// Whatever pointer and keys do, nothing breaks and the job stays sound.
func FuzzHands(f *testing.F) {
	f.Add([]byte("2]ppmmr3pmr4pmmr5pm\r,.[]"), uint8(0))
	f.Add([]byte{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 250, 251, 252}, uint8(3))
	jobs := []game.Job{demos.Job(f, leftHung), demos.Job(f, rightHung)}
	keys := []string{"1", "2", "3", "4", "5", "[", "]", ",", ".", "Enter", "Escape", "Home", "End", "ArrowUp", "ArrowDown", "ArrowLeft", "ArrowRight", "+"}
	f.Fuzz(func(t *testing.T, does []byte, which uint8) {
		s := New(jobs[int(which)%2])
		s.SetTool(s.Tools()[which%5].Tool)
		s.SetInches(which&64 != 0)
		s.SetKeeps(which&128 != 0)
		s.Drawing(360, 640)
		for i, b := range does[:min(len(does), 60)] {
			at := draw.Pt{X: 360 * float64(b%32) / 31, Y: 640 * float64(b/8) / 31}
			if i%3 == 0 {
				at = s.FrontPoint(fit.Edge(b%4), float64(b)*8)
			}
			switch b % 9 {
			case 0, 1:
				s.Press(at)
			case 2, 3:
				s.Move(at)
			case 4:
				s.Release()
			case 5:
				s.Leave()
			case 6:
				s.Undo()
			default:
				s.Key(keys[int(b)%len(keys)], b&64 != 0)
			}
			s.Drawing(360, 640)
		}
		s.Cancel()
		if _, err := game.Parse(game.Encode(*s.Job())); err != nil {
			t.Fatal(err)
		}
	})
}
