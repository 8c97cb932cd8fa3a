package advise_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"leafwright/game"
	"leafwright/geom"
	"leafwright/geom/advise"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// problems are the demo jobs as problems, those with readings twice: as if their
// shapes were exact, and with the readings' errors.
func problems(t testing.TB) (names []string, out []*advise.Problem) {
	files, err := filepath.Glob("../../testdata/jobs/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal("no demo jobs", err)
	}
	for _, f := range files {
		b, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		j, err := game.Parse(b)
		if err != nil {
			t.Fatal(err)
		}
		p := &advise.Problem{Piece: trim.Piece{Door: j.Door, Anatomy: j.Anatomy}, Wanted: j.Wanted}
		names, out = append(names, j.Name), append(out, p)
		if j.Survey != nil && j.Survey.Hangs {
			q := *p
			q.Sigma = advise.SigmasOf(j.Survey.Gaps(), 0)
			names, out = append(names, j.Name+" with errors"), append(out, &q)
		}
	}
	return names, out
}

// TestDemosAreAdvisedOn expects of every demo job that it is good, or has a plan that
// makes it good, or a conflict that is told.
func TestDemosAreAdvisedOn(t *testing.T) {
	names, all := problems(t)
	for i, p := range all {
		for _, prefer := range advise.Preferences {
			p.Wishes.Prefer = prefer
			a := advise.Plans(p)
			if !a.Good && a.Refused == nil && len(a.Plans) == 0 && (a.Conflict == nil || len(a.Conflict.Limits) == 0) {
				t.Errorf("%s, %s: no plan, and no reason", names[i], prefer)
			}
			for k := range a.Plans {
				plan := &a.Plans[k]
				is, _ := trim.All(p.Piece, plan.Moves)
				var f fit.Fit
				fit.Evaluate(&f, &is.Door)
				for _, g := range judge.Verdicts(&f, &is.Door, &p.Wanted) {
					if g.Verdict != judge.Good && (p.Sigma == nil || g.Subject != judge.HingeLine) {
						t.Errorf("%s, %s, plan %d leaves %+v", names[i], prefer, k, g)
					}
				}
			}
			for k := 1; k < len(a.Trade); k++ {
				if b, c := a.Trade[k-1], a.Trade[k]; c.Timber < b.Timber || c.Uneven > b.Uneven+1e-6 {
					t.Errorf("%s, %s: more timber and no more even gaps: %+v, %+v", names[i], prefer, b, c)
				}
			}
			if testing.Verbose() && prefer == advise.LeastTimber {
				for k := range a.Plans {
					t.Logf("%s: %s, %+v, price %.2f, bound %.2f, %d stages", names[i], a.Plans[k].Family, a.Plans[k].Cost, a.Plans[k].Price, a.Plans[k].Bound, len(a.Plans[k].Stages))
				}
			}
		}
	}
}

// BenchmarkPlans gives the time of all plans of each demo job.
func BenchmarkPlans(b *testing.B) {
	names, all := problems(b)
	for i, p := range all {
		b.Run(names[i], func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				advise.Plans(p)
			}
		})
	}
}

// BenchmarkStep gives the longest slice of all, as the page takes them: of each slice
// of each job the shortest time it ever took.
func BenchmarkStep(b *testing.B) {
	_, all := problems(b)
	var best [][]time.Duration
	for b.Loop() {
		for i, p := range all {
			if i == len(best) {
				best = append(best, nil)
			}
			w := advise.Start(p)
			for k := 0; ; k++ {
				begun := time.Now()
				last := w.Step()
				took := time.Since(begun)
				if k == len(best[i]) {
					best[i] = append(best[i], took)
				}
				best[i][k] = min(best[i][k], took)
				if last {
					break
				}
			}
		}
	}
	longest := time.Duration(0)
	for _, slices := range best {
		for _, d := range slices {
			longest = max(longest, d)
		}
	}
	b.ReportMetric(float64(longest.Nanoseconds()), "ns/longest")
}

// BenchmarkStations tells how the time grows with the stations of every line.
func BenchmarkStations(b *testing.B) {
	names, all := problems(b)
	falls := 0
	for !strings.HasPrefix(names[falls], "Terrace") {
		falls++
	}
	for _, n := range []int{2, 8, 32, 64} {
		p := *all[falls]
		p.Piece.Door = p.Piece.Door.Clone()
		d := &p.Piece.Door
		for _, line := range []*geom.Profile{
			&d.Leaf.Hanging, &d.Leaf.Closing, &d.Leaf.Top, &d.Leaf.Bottom, &d.Frame.HingeJamb, &d.Frame.LatchJamb, &d.Frame.Head,
		} {
			*line = parted(*line, n)
		}
		b.Run(door.Say(float64(n)), func(b *testing.B) {
			for b.Loop() {
				advise.Plans(&p)
			}
		})
	}
}

// parted gives the same line by n stations.
func parted(p geom.Profile, n int) geom.Profile {
	lo, hi := p[0].At, p[len(p)-1].At
	var out geom.Profile
	for i := range n {
		at := lo + (hi-lo)*float64(i)/float64(n-1)
		out = append(out, geom.Station{At: at, Value: p.At(at)})
	}
	return out
}
