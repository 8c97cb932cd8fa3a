package bench

import (
	"bytes"
	"math/rand/v2"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/internal/demos"
)

const demo = "2-terrace-falling-head"

func newDemo(t testing.TB) *State {
	t.Helper()
	return New(demos.Job(t, demo))
}

func encoded(s *State) string { return string(game.Encode(*s.Job())) }

// value gives what the form shows for a field.
func value(t *testing.T, s *State, path string) string {
	t.Helper()
	for _, sec := range s.Sections() {
		for _, g := range sec.Groups {
			for _, f := range g.Fields {
				if f.Path == path {
					return f.Value
				}
			}
		}
	}
	t.Fatalf("no field %s", path)
	return ""
}

func TestTypingIsOneStep(t *testing.T) {
	s := newDemo(t)
	before := encoded(s)
	for _, text := range []string{"7", "75", "750"} {
		s.Type("leaf.width", text)
	}
	s.Settle()
	if got := value(t, s, "leaf.width"); got != "750" {
		t.Fatalf("width %s", got)
	}
	s.Type("leaf.width", "751")
	s.Settle()
	s.Undo()
	if got := value(t, s, "leaf.width"); got != "750" {
		t.Errorf("one undo leads to %s, want the width before the second typing", got)
	}
	s.Undo()
	if encoded(s) != before {
		t.Error("two undos do not lead back to the start")
	}
	if s.CanUndo() || !s.CanRedo() {
		t.Errorf("undo %v, redo %v at the start", s.CanUndo(), s.CanRedo())
	}
	s.Undo()
	s.Redo()
	s.Redo()
	s.Redo()
	if got := value(t, s, "leaf.width"); got != "751" {
		t.Errorf("redone to the end the width is %s", got)
	}
}

// A number that turns bad while it is typed takes nothing with it: 900 on the way
// to 9000 is taken back.
func TestTypingThatTurnsBad(t *testing.T) {
	s := newDemo(t)
	before := encoded(s)
	for _, text := range []string{"9", "90", "900", "9000"} {
		s.Type("leaf.width", text)
	}
	if encoded(s) != before || s.CanUndo() {
		t.Errorf("9000 left a width of %s and undo %v", value(t, s, "leaf.width"), s.CanUndo())
	}
	s.Type("leaf.width", "900")
	if got := value(t, s, "leaf.width"); got != "900" {
		t.Errorf("mended to 900 the width is %s", got)
	}
	s.Undo()
	if encoded(s) != before {
		t.Error("undo does not lead back")
	}
}

// What goes along with a size is worked out from the job before the typing, not
// from every half-typed number on the way.
func TestHalfTypedNumbersLeaveNoTrace(t *testing.T) {
	typed, pasted := newDemo(t), newDemo(t)
	for _, text := range []string{"198", "1980", "19", "196", "1965"} {
		typed.Type("leaf.height", text)
	}
	pasted.Type("leaf.height", "1965")
	if encoded(typed) != encoded(pasted) {
		t.Errorf("typed:\n%s\npasted:\n%s", encoded(typed), encoded(pasted))
	}
}

func TestDrafts(t *testing.T) {
	s := newDemo(t)
	before := encoded(s)
	for _, c := range []struct{ name, text string }{
		{"a word", "wide"},
		{"nothing", ""},
		{"far too large", "99999"},
		{"not finite", "NaN"},
		{"half a number", "7 1/"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s.Type("leaf.width", c.text)
			d, ok := s.Draft("leaf.width")
			if !ok || d.Text != c.text || d.Why == "" {
				t.Errorf("draft %+v, %v", d, ok)
			}
			if strings.HasPrefix(d.Why, "leaf.width") {
				t.Errorf("the message %q names the field it stands by", d.Why)
			}
			if encoded(s) != before || s.Drafts() != 1 {
				t.Error("the job changed")
			}
		})
	}
	s.Type("leaf.width", "750")
	if _, ok := s.Draft("leaf.width"); ok {
		t.Error("the draft outlived a good number")
	}
	s.Type("leaf.height", "tall")
	s.Undo()
	if _, ok := s.Draft("leaf.height"); !ok {
		t.Error("undo in one field dropped what stands typed in another")
	}
	s.Open(game.Blank(762, 1981, 35))
	if s.Drafts() != 0 {
		t.Error("another job kept the drafts of the one before")
	}
}

// A fault in another field is named by what the form calls that field.
func TestFaultElsewhereIsNamed(t *testing.T) {
	s := newDemo(t)
	s.Type("leaf.height", "900") // below the upper hinge and the rails
	d, ok := s.Draft("leaf.height")
	if !ok {
		t.Fatal("a leaf of 900 under hinges at 1780 was taken")
	}
	if strings.Contains(d.Why, "hinges[") || strings.Contains(d.Why, "leaf.rails") {
		t.Errorf("the message speaks of paths: %q", d.Why)
	}
}

func TestAddAndRemove(t *testing.T) {
	s := newDemo(t)
	before := encoded(s)
	if err := s.Add("hinges"); err != nil {
		t.Fatal(err)
	}
	if n := len(s.Job().Door.Hinges); n != 3 {
		t.Fatalf("%d hinges", n)
	}
	s.Type("hinges[2].jamb", "nonsense")
	if err := s.Remove("hinges[1]"); err != nil {
		t.Fatal(err)
	}
	if s.Drafts() != 0 {
		t.Error("what stood typed in the third hinge now stands by the second")
	}
	if n := len(s.Job().Door.Hinges); n != 2 {
		t.Errorf("%d hinges", n)
	}
	if err := s.Remove("hinges[1]"); err == nil {
		t.Error("a door was left with one hinge")
	}
	if err := s.Add("no such list"); err == nil {
		t.Error("something was added nowhere")
	}
	s.Undo()
	s.Undo()
	if encoded(s) != before {
		t.Error("two undos do not lead back")
	}
	if !s.CanAdd("hinges") || s.CanAdd("leaf.width") {
		t.Error("room for another is wrongly told")
	}
}

// Whatever is done, undone to the start the first job stands there, and redone to
// the end the last one.
func TestUndoAndRedoOfAnything(t *testing.T) {
	for seed := range uint64(30) {
		rnd := rand.New(rand.NewPCG(seed, 1))
		s := newDemo(t)
		first := encoded(s)
		for range 60 {
			play(s, rnd)
		}
		last := encoded(s)
		for s.CanRedo() {
			s.Redo()
			last = encoded(s)
		}
		steps := 0
		for s.CanUndo() {
			s.Undo()
			steps++
		}
		if encoded(s) != first {
			t.Fatalf("seed %d: %d undos do not lead back to the first job", seed, steps)
		}
		for s.CanRedo() {
			s.Redo()
		}
		if encoded(s) != last {
			t.Fatalf("seed %d: redo does not lead to the last job", seed)
		}
	}
}

// play does one thing a person might do.
func play(s *State, rnd *rand.Rand) {
	texts := []string{"762", "35", "2.5", "", "x", "1/8\"", "-3", "1981", "flush", "true", "0"}
	switch rnd.IntN(10) {
	case 0:
		s.Undo()
	case 1:
		s.Redo()
	case 2:
		s.Settle()
	case 3:
		s.Add([]string{"hinges", "leaf.rails", "leaf.closing", "floor.radii"}[rnd.IntN(4)])
	case 4:
		s.Remove([]string{"hinges[1]", "leaf.rails[0]", "leaf.closing[0]"}[rnd.IntN(3)])
	case 5:
		s.SetInches(rnd.IntN(2) == 0)
	case 6:
		s.Press(draw.Pt{X: 800 * rnd.Float64(), Y: 600 * rnd.Float64()})
		s.Move(draw.Pt{X: 800 * rnd.Float64(), Y: 600 * rnd.Float64()})
		s.Release()
	default:
		all := s.Sections()
		sec := all[rnd.IntN(len(all))]
		if len(sec.Groups) == 0 {
			return
		}
		g := sec.Groups[rnd.IntN(len(sec.Groups))]
		if len(g.Fields) == 0 {
			return
		}
		s.Type(g.Fields[rnd.IntN(len(g.Fields))].Path, texts[rnd.IntN(len(texts))])
	}
}

func TestChangesAreCounted(t *testing.T) {
	s := newDemo(t)
	j0, l0 := s.Changes()
	s.Type("leaf.width", "nonsense")
	j1, l1 := s.Changes()
	if j1 == j0 || l1 != l0 {
		t.Errorf("a draft: job %d to %d, look %d to %d", j0, j1, l0, l1)
	}
	s.SetSwing(40)
	j2, l2 := s.Changes()
	if j2 != j1 || l2 == l1 {
		t.Errorf("a swing: job %d to %d, look %d to %d", j1, j2, l1, l2)
	}
	s.SetSwing(40)
	s.Move(draw.Pt{X: -5, Y: -5})
	if j, l := s.Changes(); j != j2 || l != l2 {
		t.Error("nothing changed, and a change was counted")
	}
}

func TestRecords(t *testing.T) {
	s := newDemo(t)
	s.Type("leaf.width", "751")
	s.Settle()
	s.SetInches(true)
	s.Type("leaf.height", "6' 5\"")
	s.Settle()
	if err := s.Add("hinges"); err != nil {
		t.Fatal(err)
	}
	s.Open(game.Blank(800, 2000, 40))
	s.Type("name", "Attic")
	s.Undo()
	s.Type("leaf.thickness", "thin")
	s.SetSwing(33)
	s.SetShow(Plan)

	r, err := again(s)
	if err != nil {
		t.Fatal(err)
	}
	if r.Look() != s.Look() {
		t.Errorf("look %+v, want %+v", r.Look(), s.Look())
	}
	if d, _ := r.Draft("leaf.thickness"); d.Text != "thin" || d.Why == "" {
		t.Errorf("draft %+v", d)
	}
	for i := 0; ; i++ {
		if encoded(r) != encoded(s) {
			t.Fatalf("%d steps back the jobs differ", i)
		}
		if r.CanUndo() != s.CanUndo() || r.CanRedo() != s.CanRedo() {
			t.Fatalf("%d steps back undo or redo differ", i)
		}
		if !s.CanUndo() {
			if i != 4 {
				t.Errorf("%d steps, want 4", i)
			}
			break
		}
		s.Undo()
		r.Undo()
	}
	for s.CanRedo() {
		s.Redo()
		r.Redo()
	}
	if r.Job().Name != "Attic" {
		t.Errorf("redone to %q", r.Job().Name)
	}
}

func TestRecordsThatAreNotSound(t *testing.T) {
	s := newDemo(t)
	s.Type("leaf.width", "751")
	good, look := s.Records("w", none)[0].Data, s.LookRecord()
	for _, c := range []struct {
		name, old, new string
		taken, past    bool
		lost           int
	}{
		{"as it was", "x", "x", true, true, 0},
		{"a step no longer understood", `"set" "leaf.width"`, `"set" "leaf.breadth"`, true, true, 1},
		{"a step of an unknown kind", `"set" "leaf.width"`, `"saw" "leaf.width"`, true, true, 1},
		{"a step that gives another job", `"leaf.width" "751"`, `"leaf.width" "752"`, true, true, 1},
		{"a place beyond the steps", `at "1"`, `at "7"`, true, false, 1},
		{"a place before them", `at "1"`, `at "-1"`, true, false, 1},
		{"no whole job first", `step "put" "" "" "mm" "{`, `step "put" "" "" "mm" "" "{`, true, false, 1},
		{"another job first", `"put" "" "" "mm" "{`, `"put" "" "" "mm" "[`, true, false, 2},
		{"a chunk that is not there", `at "1"`, "at \"4\"\nchunk \"steps.w.1\" \"3\"", true, true, 3},
		{"the place in a chunk that is not there", `at "1"`, "at \"1\"\nchunk \"steps.w.1\" \"3\"", true, false, 2},
		{"a chunk of no steps", `at "1"`, "at \"1\"\nchunk \"steps.w.1\" \"0\"", false, false, 0},
		{"another version", `bench 2`, `bench 3`, false, false, 0},
		{"no job now", `now "`, `then "`, false, false, 0},
		{"a quote lost", `now "`, `now `, false, false, 0},
		{"no record", `leafwright`, ``, false, false, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			changed := bytes.Replace(good, []byte(c.old), []byte(c.new), 1)
			if c.old != c.new && bytes.Equal(changed, good) {
				t.Fatal("nothing was changed")
			}
			r, err := Restore(changed, nothing, look)
			if (err == nil) != c.taken {
				t.Fatalf("error %v, want taken %v", err, c.taken)
			}
			if err != nil {
				return
			}
			if encoded(r) != encoded(s) || r.CanUndo() != c.past || r.Lost() != c.lost {
				t.Errorf("undo %v, want %v; lost %d, want %d; same job %v", r.CanUndo(), c.past, r.Lost(), c.lost, encoded(r) == encoded(s))
			}
			for r.CanUndo() {
				r.Undo()
			}
			for r.CanRedo() {
				r.Redo()
			}
			if err := r.past.sound(); err != nil {
				t.Error(err)
			}
		})
	}
	for _, bad := range []string{"", "null", "show \"attic\"\nswing \"-7\"\nfactor \"1e300\"\nwords \"XX\"\nedge \"9\"\noption \"5\"", "section \"high\"\nfactor \"NaN\"\noption \"-9\""} {
		r, err := Restore(good, nothing, []byte(bad))
		if err != nil {
			t.Fatalf("look %q: %v", bad, err)
		}
		l := r.Look()
		if l.Show != Both || l.Factor > MostFactor || l.Swing < 0 || l.Words != "UK" || l.Reading.Edge > 3 || l.Option != AsStands {
			t.Errorf("look %q became %+v", bad, l)
		}
	}
}

func TestSeal(t *testing.T) {
	for _, data := range []string{"", "{}", `{"name":"naïve ünïcode"}`} {
		if got, ok := Unseal(Seal([]byte(data))); !ok || string(got) != data {
			t.Errorf("%q came back as %q, %v", data, got, ok)
		}
	}
	whole := Seal([]byte("some record"))
	for i := range whole {
		if _, ok := Unseal(whole[:i]); ok {
			t.Errorf("cut to %d bytes it passes for whole", i)
		}
		other := []byte(whole)
		other[i] ^= 1
		if _, ok := Unseal(string(other)); ok {
			t.Errorf("with byte %d changed it passes for whole", i)
		}
	}
}

func BenchmarkType(b *testing.B) {
	s := newDemo(b)
	widths := [2]string{"761", "762"}
	for i := 0; b.Loop(); i++ {
		s.Type("leaf.width", widths[i%2])
	}
}

func BenchmarkDragSwing(b *testing.B) {
	s := newDemo(b)
	for i := 0; b.Loop(); i++ {
		s.SetSwing(float64(i % 90))
		s.Drawing(1040, 780)
	}
}
