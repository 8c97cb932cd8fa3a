package bench

import (
	"errors"
	"math/rand/v2"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/internal/demos"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

func none(string) bool              { return false }
func nothing(string) ([]byte, bool) { return nil, false }

// keepAll gives every record of a bench by its name.
func keepAll(s *State) map[string][]byte {
	all := map[string][]byte{}
	for _, r := range s.Records("w", none) {
		all[r.Key] = r.Data
	}
	return all
}

func takeUp(all map[string][]byte, look []byte) (*State, error) {
	return Restore(all[NowKey], func(key string) ([]byte, bool) {
		data, is := all[key]
		return data, is
	}, look)
}

// again keeps a bench and takes it up.
func again(s *State) (*State, error) { return takeUp(keepAll(s), s.LookRecord()) }

// sound tells what is wrong with a history's own bookkeeping.
func (h *history) sound() error {
	switch {
	case len(h.steps) == 0 || h.at < 0 || h.at >= len(h.steps):
		return errors.New("at " + strconv.Itoa(h.at) + " of " + strconv.Itoa(len(h.steps)))
	case h.steps[h.at].job == nil:
		return errors.New("the job on the bench is not at hand")
	case len(h.chunks) == 0 || h.chunks[0].from != 0:
		return errors.New("the first chunk does not begin with the first step")
	}
	for i, c := range h.chunks {
		if c.from >= len(h.steps) || h.steps[c.from].file == nil {
			return errors.New("chunk " + strconv.Itoa(i) + " does not begin with a whole job")
		}
		if i > 0 && c.from <= h.chunks[i-1].from {
			return errors.New("chunks out of order")
		}
	}
	hand := 0
	for i := range h.steps {
		if h.steps[i].job != nil {
			hand++
		}
	}
	if hand > 4*near {
		return errors.New(strconv.Itoa(hand) + " jobs are at hand")
	}
	return nil
}

// Whatever is done, kept, read back and undone: the same jobs come in the same order,
// over several chunks.
func TestLongHistoryReadsBack(t *testing.T) {
	rnd := rand.New(rand.NewPCG(4, 1))
	s := newDemo(t)
	var jobs []string
	for i := range 5*chunkSteps + 30 {
		s.Type("leaf.width", strconv.Itoa(700+rnd.IntN(200)))
		s.Settle()
		jobs = append(jobs, encoded(s))
		if i%37 == 0 { // undone and done otherwise, over the chunk's beginning too
			for range rnd.IntN(120) {
				if s.CanUndo() {
					s.Undo()
					jobs = jobs[:len(jobs)-1]
				}
			}
			if len(jobs) > 0 && encoded(s) != jobs[len(jobs)-1] {
				t.Fatalf("step %d: undo leads to another job", i)
			}
		}
		if err := s.past.sound(); err != nil {
			t.Fatalf("step %d: %v", i, err)
		}
	}
	r, err := again(s)
	if err != nil {
		t.Fatal(err)
	}
	for k := len(jobs) - 1; k >= 0; k-- {
		if encoded(r) != jobs[k] {
			t.Fatalf("%d steps back another job", len(jobs)-1-k)
		}
		r.Undo()
		if err := r.past.sound(); err != nil {
			t.Fatal(err)
		}
	}
	if r.CanUndo() || r.Lost() != 0 {
		t.Errorf("undo %v at the start, %d lost", r.CanUndo(), r.Lost())
	}
	for k := range jobs {
		r.Redo()
		if encoded(r) != jobs[k] {
			t.Fatalf("%d steps on another job", k+1)
		}
	}
}

// typed makes so many steps, and gives the job after each.
func typed(s *State, n int) (jobs []string) {
	for i := range n {
		s.Type("leaf.width", strconv.Itoa(700+i%200))
		s.Settle()
		jobs = append(jobs, encoded(s))
	}
	return jobs
}

// grow makes so many steps, and measures the door after the last of them only.
func grow(t testing.TB, s *State, n int) {
	t.Helper()
	for i := range n {
		c := change{act: set, path: "leaf.width", text: strconv.Itoa(700 + i%200)}
		job, err := c.apply(s.Job())
		if err != nil {
			t.Fatal(err)
		}
		s.past.do(c, job)
		s.past.typing = false
	}
	s.measure()
}

// A chunk that is damaged or gone takes its own steps with it and no others, and the
// job as it stands is there in any case.
func TestDamagedChunk(t *testing.T) {
	for _, at := range []int{350, 250, 120, 10} { // where the job stands: behind, in, before the chunk
		s := newDemo(t)
		jobs := typed(s, 350)
		for s.past.at > at {
			s.Undo()
		}
		for lose := range 3 {
			all := keepAll(s)
			key := s.past.chunks[lose].key
			all[key] = all[key][:len(all[key])/2]
			r, err := takeUp(all, nil)
			if err != nil {
				t.Fatal(err)
			}
			if encoded(r) != encoded(s) {
				t.Fatalf("at %d, chunk %d lost: the job is another one", at, lose)
			}
			if r.Lost() < chunkSteps-1 || r.Lost() > chunkSteps {
				t.Errorf("at %d, chunk %d: %d steps lost", at, lose, r.Lost())
			}
			if err := r.past.sound(); err != nil {
				t.Fatal(err)
			}
			kept := map[string]bool{encoded(newDemo(t)): true}
			for _, j := range jobs {
				kept[j] = true
			}
			n := 0
			h := &r.past
			for h.canRedo() {
				h.redo()
			}
			for ; ; n++ {
				if !kept[string(game.Encode(*h.now()))] {
					t.Fatalf("at %d, chunk %d: a job that never was", at, lose)
				}
				if !h.canUndo() {
					break
				}
				h.undo()
			}
			r.measure()
			if n < 350-chunkSteps {
				t.Errorf("at %d, chunk %d: %d steps are left", at, lose, n)
			}
			if twice, err := again(r); err != nil || encoded(twice) != encoded(r) {
				t.Errorf("what is left is not kept: %v", err)
			}
		}
	}
}

// What was cut for keeps is not undone over a gap either.
func TestNoUndoOverALostCut(t *testing.T) {
	h := startingWith(game.Blank(762, 1981, 35))
	made := game.Blank(762, 1981, 35)
	made.Made = []trim.Move{{Kind: trim.Plane, Edge: fit.LatchSide, First: 1, Last: 1}}
	h.do(change{act: gap}, made)
	if h.canUndo() {
		t.Error("a gap is undone to before the cut")
	}
}

// A step in an earlier chunk that is no longer understood takes those behind it in its
// chunk along, when undo comes there.
func TestStepNoLongerUnderstoodFarBack(t *testing.T) {
	s := newDemo(t)
	jobs := typed(s, 250)
	all := keepAll(s)
	key := s.past.chunks[0].key
	lines := strings.SplitAfter(string(all[key]), "\n")
	lines[51] = strings.Replace(lines[51], "leaf.width", "leaf.breadth", 1)
	all[key] = []byte(strings.Join(lines, ""))
	r, err := takeUp(all, nil)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for r.CanUndo() {
		r.Undo()
		n++
		if err := r.past.sound(); err != nil {
			t.Fatalf("%d steps back: %v", n, err)
		}
	}
	if n != 250-50 || r.Lost() != 50 || encoded(r) != encoded(newDemo(t)) {
		t.Errorf("%d steps back, %d lost", n, r.Lost())
	}
	for r.CanRedo() {
		r.Redo()
	}
	if encoded(r) != jobs[249] {
		t.Error("redo does not lead to the last job")
	}
}

// Whatever lines of whatever records are damaged, the job as it stands is there, and
// going back and forth through what is left meets only jobs that there were, or that
// come of the steps left.
func TestDamagedAnywhere(t *testing.T) {
	s := newDemo(t)
	grow(t, s, 130)
	if err := s.Add("hinges"); err != nil {
		t.Fatal(err)
	}
	grow(t, s, 40)
	s.Open(game.Blank(700, 1900, 35))
	grow(t, s, 110)
	for seed := range uint64(25) {
		rnd := rand.New(rand.NewPCG(seed, 3))
		for n := rnd.IntN(40); n > 0 && s.CanUndo(); n-- {
			s.past.undo()
		}
		s.measure()
		all := keepAll(s)
		for key, data := range all {
			lines := strings.SplitAfter(string(data), "\n")
			for range rnd.IntN(3) {
				k := 1 + rnd.IntN(len(lines)-1)
				if !strings.HasPrefix(lines[k], "step ") {
					continue
				}
				switch rnd.IntN(4) {
				case 0:
					lines[k] = strings.Replace(lines[k], "leaf.width", "leaf.breadth", 1)
				case 1:
					lines[k] = ""
				case 2:
					lines[k] = strings.Replace(lines[k], "{", "[", 1)
				case 3:
					lines[k] = strings.Replace(lines[k], "7", "8", 1)
				}
			}
			all[key] = []byte(strings.Join(lines, ""))
		}
		r, err := takeUp(all, nil)
		if err != nil {
			t.Fatal(err)
		}
		if encoded(r) != encoded(s) {
			t.Fatalf("seed %d: another job stands", seed)
		}
		h := &r.past
		for _, way := range []string{"back", "forth", "back"} {
			for way == "back" && h.canUndo() || way == "forth" && h.canRedo() {
				if way == "back" {
					h.undo()
				} else {
					h.redo()
				}
				if err := h.sound(); err != nil {
					t.Fatalf("seed %d, %s: %v", seed, way, err)
				}
			}
		}
		r.measure()
		if _, err := again(r); err != nil {
			t.Fatal(err)
		}
	}
}

// The record of the time when there was one for everything is read, however long.
func TestFormerRecord(t *testing.T) {
	s := newDemo(t)
	jobs := typed(s, 330)
	s.Type("leaf.height", "tall")
	r, err := Restore(former(s), nothing, s.LookRecord())
	if err != nil {
		t.Fatal(err)
	}
	if err := r.past.sound(); err != nil {
		t.Fatal(err)
	}
	if d, _ := r.Draft("leaf.height"); d.Text != "tall" {
		t.Errorf("draft %+v", d)
	}
	for k := len(jobs) - 1; k >= 0; k-- {
		if encoded(r) != jobs[k] {
			t.Fatalf("%d steps back another job", len(jobs)-1-k)
		}
		r.Undo()
	}
	if r.CanUndo() || r.Lost() != 0 {
		t.Error("not the same steps")
	}
}

// former writes a bench as the page did when it had one record for everything.
func former(s *State) []byte {
	var b strings.Builder
	b.WriteString(firstHeading + "\n")
	line(&b, "now", encoded(s))
	line(&b, "at", strconv.Itoa(s.past.at))
	for i, st := range s.past.steps {
		if i > 0 && st.act != put {
			st.file = nil
		}
		st.write(&b)
	}
	for path, d := range s.drafts {
		line(&b, "draft", path, d.Text, d.Why)
	}
	return []byte(b.String())
}

// Only the job's own record changes with a change, and it stays small.
func TestWhatAChangeWrites(t *testing.T) {
	s := newDemo(t)
	grow(t, s, 1050)
	has := map[string]bool{}
	for _, r := range s.Records("w", none) {
		has[r.Key] = true
	}
	most := 0
	for range 3 * chunkSteps {
		s.Type("leaf.width", strconv.Itoa(700+len(s.past.steps)%200))
		s.Settle()
		all := s.Records("w", func(key string) bool { return has[key] })
		if len(all) > 2 {
			t.Fatalf("%d records are written", len(all))
		}
		for _, r := range all {
			has[r.Key] = true
			most = max(most, len(r.Data))
		}
	}
	if most > 64<<10 {
		t.Errorf("a change writes %d bytes", most)
	}
	t.Logf("at most %d bytes a record, %d records", most, len(has))
}

func FuzzRestore(f *testing.F) {
	s := newDemo(f)
	typed(s, chunkSteps+3)
	s.Type("leaf.height", "?")
	all := s.Records("w", none)
	f.Add(all[1].Data, all[0].Data, s.LookRecord())
	f.Add([]byte(recordHeading+"\nnow \"{}\""), []byte(chunkHeading), []byte("swing \"5\""))
	f.Fuzz(func(t *testing.T, job, chunk, look []byte) {
		r, err := Restore(job, func(string) ([]byte, bool) { return chunk, true }, look)
		if err == nil {
			if err := r.past.sound(); err != nil {
				t.Fatal(err)
			}
			r.Drawing(360, 340)
			r.Undo()
			r.Undo()
			r.Findings()
			again(r)
		}
		if r, ok := salvage([][]byte{chunk, job, chunk}, look); ok {
			r.Undo()
			again(r)
		}
	})
}

// The memory that ten thousand moves and as many undos leave taken, in bytes.
func BenchmarkTenThousandMoves(b *testing.B) {
	for b.Loop() {
		was := heap()
		s := New(demos.Job(b, largest))
		if err := s.Add("options"); err != nil {
			b.Fatal(err)
		}
		tenThousand(b, s)
		b.ReportMetric(float64(int64(heap()-was)), "B-retained")
		runtime.KeepAlive(s)
	}
}

// What a page does once a change is made: the records that changed are written out.
func BenchmarkRecords(b *testing.B) {
	s := New(demos.Job(b, largest))
	typed(s, 2*chunkSteps-5)
	has := map[string]bool{}
	for b.Loop() {
		for _, r := range s.Records("w", func(key string) bool { return has[key] }) {
			has[r.Key] = true
			Seal(r.Data)
		}
	}
}

// A job of three thousand steps is taken up again.
func BenchmarkRestore(b *testing.B) {
	s := newDemo(b)
	typed(s, 3000)
	all := keepAll(s)
	n := 0
	for _, data := range all {
		n += len(data)
	}
	for b.Loop() {
		if _, err := takeUp(all, nil); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(n), "B-kept")
}

const largest = "9-ferry-house-feelers"

func tenThousand(t testing.TB, s *State) {
	for i := range 10_000 {
		m := trim.Move{Kind: trim.Plane, Edge: fit.LatchSide, First: 0.5, Last: 0.5, Note: "stroke " + strconv.Itoa(i)}
		k := len(s.MovesPut())
		if k == 3 {
			if err := s.Remove(game.MovePath(int(s.Shown()), i%3)); err != nil {
				t.Fatal(err)
			}
			continue
		}
		if err := s.PutMove(m); err != nil {
			t.Fatal(err)
		}
	}
	for range 10_000 {
		s.Undo()
	}
}

func heap() uint64 {
	runtime.GC()
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

// Ten thousand moves and undos are all there to be done again, and take little room.
func TestTenThousandMoves(t *testing.T) {
	if testing.Short() {
		t.Skip("takes a while")
	}
	was := heap()
	s := New(demos.Job(t, largest))
	if err := s.Add("options"); err != nil {
		t.Fatal(err)
	}
	tenThousand(t, s)
	if n := int64(heap() - was); n > 32<<20 {
		t.Errorf("%d bytes are taken", n)
	}
	if len(s.past.steps) != 10_002 || s.past.at != 1 {
		t.Errorf("%d steps, at %d", len(s.past.steps), s.past.at)
	}
	if err := s.past.sound(); err != nil {
		t.Error(err)
	}
	runtime.KeepAlive(s)
}
