package bench

import (
	"errors"
	"maps"
	"slices"
	"strconv"
	"strings"
	"testing"

	"leafwright/game"
)

// fakeStore keeps texts in memory. It can be full, and it can stop working after so
// many writes, the last of them cut short or not, as when a page is killed.
type fakeStore struct {
	texts  map[string]string
	room   int // letters; 0 = enough
	left   int // writes until it stops; below 0 = never
	torn   bool
	writes int
}

func newStore() *fakeStore { return &fakeStore{texts: map[string]string{}, left: -1} }

func (f *fakeStore) copy() *fakeStore { return &fakeStore{texts: maps.Clone(f.texts), left: -1} }

func (f *fakeStore) Get(key string) (string, bool) {
	text, found := f.texts[key]
	return text, found
}

var errStopped, errFull = errors.New("stopped"), errors.New("the store is full")

func (f *fakeStore) Put(key, text string) error {
	f.writes++
	switch {
	case f.left == 0: // stopped
		return errStopped
	case f.left == 1:
		f.left = 0
		if f.torn {
			f.texts[key] = text[:len(text)*2/3]
			return errStopped
		}
	case f.left > 1:
		f.left--
	}
	if f.room > 0 {
		n := len(key) + len(text)
		for k, t := range f.texts {
			if k != key {
				n += len(k) + len(t)
			}
		}
		if n > f.room {
			return errFull
		}
	}
	f.texts[key] = text
	return nil
}

func (f *fakeStore) Delete(key string) {
	f.writes++
	switch {
	case f.left == 0:
		return
	case f.left > 0:
		f.left--
	}
	delete(f.texts, key)
}

func (f *fakeStore) Keys() []string { return slices.Collect(maps.Keys(f.texts)) }

// named gives the plainest job of a name.
func named(name string) game.Job {
	job := game.Blank(762, 1981, 35)
	job.Name = name
	return job
}

func save(t *testing.T, sh *Shelf, s *State) Saved {
	t.Helper()
	said, err := sh.Save(s)
	if err != nil {
		t.Fatal(err)
	}
	return said
}

func open(t *testing.T, sh *Shelf, id string) *State {
	t.Helper()
	s, err := sh.Open(id)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// jobNames gives the names on the list, those in the bin in brackets.
func jobNames(sh *Shelf) (out []string) {
	for _, e := range sh.List() {
		if e.Binned {
			e.Name = "(" + e.Name + ")"
		}
		out = append(out, e.Name)
	}
	return out
}

func wantNames(t *testing.T, sh *Shelf, want ...string) {
	t.Helper()
	if got := jobNames(sh); !slices.Equal(got, want) {
		t.Errorf("on the shelf are %q, want %q", got, want)
	}
}

func wantNoReports(t *testing.T, sh *Shelf) {
	t.Helper()
	if r := sh.Reports(); len(r) > 0 {
		t.Errorf("reported: %q", r)
	}
}

func TestShelf(t *testing.T) {
	store := newStore()
	store.Put("somebody else's", "text")
	a := NewShelf(store, "a")
	if a.Last() != "" || len(a.List()) != 0 {
		t.Error("a new shelf is not empty")
	}
	s := a.New(named("Pantry"))
	s.SetInches(true)
	save(t, a, s)
	pantry := a.ID()
	s.Type("leaf.width", "30 1/4\"")
	s.Settle()
	s.Type("leaf.height", "tall")
	s.ShowOption(AsFound)
	save(t, a, s)
	if err := a.SaveLook(s); err != nil {
		t.Fatal(err)
	}
	cellar := a.New(named("Cellar"))
	if !cellar.Look().Inches {
		t.Error("a new job does not go on in inches")
	}
	save(t, a, cellar)
	wantNames(t, a, "Cellar", "Pantry")
	if a.Last() != a.ID() {
		t.Errorf("%q was open last, want %q", a.Last(), a.ID())
	}

	b := NewShelf(store, "b")
	again := open(t, b, pantry)
	if encoded(again) != encoded(s) || again.Look() != s.Look() {
		t.Errorf("taken up as another job, or looked at otherwise: %+v, %+v", again.Look(), s.Look())
	}
	if d, _ := again.Draft("leaf.height"); d.Text != "tall" {
		t.Errorf("draft %+v", d)
	}
	again.Undo()
	if !again.CanRedo() {
		t.Error("no redo")
	}
	save(t, b, again)
	wantNames(t, b, "Pantry", "Cellar")

	id, err := b.Duplicate(b.ID())
	if err != nil {
		t.Fatal(err)
	}
	wantNames(t, b, "Pantry (copy)", "Pantry", "Cellar")
	if err := b.Rename(id, "Larder"); err != nil {
		t.Fatal(err)
	}
	if err := b.Rename(id, strings.Repeat("x", 500)); err == nil {
		t.Error("a name of 500 letters was taken")
	}
	if err := b.Rename(b.ID(), "Larder"); err == nil {
		t.Error("the open job was renamed behind its bench")
	}
	if err := b.Delete(id); err != nil {
		t.Fatal(err)
	}
	wantNames(t, b, "(Larder)", "Pantry", "Cellar")
	b.Undelete(id)
	wantNames(t, b, "Larder", "Pantry", "Cellar")
	if err := b.Delete(id); err != nil {
		t.Fatal(err)
	}
	b.EmptyBin()
	wantNames(t, b, "Pantry", "Cellar")
	if _, err := b.Open(id); err == nil {
		t.Error("a job that was taken away is opened")
	}
	if err := b.Delete("nonsense"); err == nil {
		t.Error("nothing was deleted")
	}
	wantNoReports(t, a)
	wantNoReports(t, b)
	if store.texts["somebody else's"] != "text" {
		t.Error("something of another program was touched")
	}
	for key := range store.texts {
		if strings.Contains(key, id) {
			t.Errorf("%s is left", key)
		}
	}
}

// What has not changed is not written.
func TestSaveWritesWhatChanged(t *testing.T) {
	store := newStore()
	sh := NewShelf(store, "a")
	s := sh.New(named("Pantry"))
	grow(t, s, 2*chunkSteps)
	save(t, sh, s)
	id := sh.ID()
	sh = NewShelf(store, "b")
	s = open(t, sh, id)
	n := store.writes
	save(t, sh, s)
	s.SetSwing(50)
	s.ShowOption(AsFound)
	save(t, sh, s)
	if store.writes != n {
		t.Errorf("%d writes, and nothing had changed", store.writes-n)
	}
	s.Type("leaf.width", "755")
	save(t, sh, s)
	if store.writes > n+2 { // its own record, and the mark of the bin that is not there
		t.Errorf("%d writes for one change", store.writes-n)
	}
}

// Two windows on one job: nothing is overwritten, and both are told apart.
func TestTwoWindows(t *testing.T) {
	store := newStore()
	a := NewShelf(store, "a")
	s := a.New(named("Pantry"))
	grow(t, s, chunkSteps+20)
	save(t, a, s)
	id := a.ID()
	b := NewShelf(store, "b")
	r := open(t, b, id)

	s.Type("leaf.width", "751")
	s.Settle()
	save(t, a, s)
	if !b.Stale() || a.Stale() {
		t.Error("it is not told which window is behind")
	}
	if said := save(t, b, r); said.Conflict != "" {
		t.Error("a window that changed nothing is told of a conflict")
	}
	r.Type("leaf.width", "752")
	r.Settle()
	said := save(t, b, r)
	if said.Conflict == "" || b.ID() == id || r.Job().Name != "Pantry, from another window" {
		t.Errorf("%+v, %s, %q", said, b.ID(), r.Job().Name)
	}
	if said := save(t, b, r); said.Conflict != "" {
		t.Error("the conflict is told twice")
	}
	for i := range 3 { // both go on
		s.Type("leaf.height", strconv.Itoa(1970+i))
		r.Type("leaf.height", strconv.Itoa(1960+i))
		s.Settle()
		r.Settle()
		if save(t, a, s).Conflict+save(t, b, r).Conflict != "" {
			t.Error("a conflict between two jobs")
		}
	}
	c := NewShelf(store, "c")
	wantNames(t, c, "Pantry, from another window", "Pantry")
	for id, want := range map[string]*State{a.ID(): s, b.ID(): r} {
		got := open(t, c, id)
		for {
			if encoded(got) != encoded(want) {
				t.Fatalf("%s is not as its window had it", id)
			}
			if !got.CanUndo() {
				break
			}
			got.Undo()
			want.Undo()
		}
		if want.CanUndo() {
			t.Errorf("%s has fewer steps to undo", id)
		}
	}
	wantNoReports(t, c)

	// Taken away in one window while another works on it, it is kept anew.
	if err := c.Delete(a.ID()); err != nil {
		t.Fatal(err)
	}
	c.EmptyBin()
	s.Type("leaf.width", "760")
	if said := save(t, a, s); said.Conflict != "" {
		t.Error(said.Conflict)
	}
	if got := open(t, NewShelf(store, "d"), a.ID()); encoded(got) != encoded(s) || !got.CanUndo() {
		t.Error("it is not there again")
	}
}

// Whoever works on a job that another window put into the bin wants it.
func TestOneJobInTheBinIsWorkedOn(t *testing.T) {
	store := newStore()
	a := NewShelf(store, "a")
	s := a.New(named("Pantry"))
	save(t, a, s)
	if err := NewShelf(store, "b").Delete(a.ID()); err != nil {
		t.Fatal(err)
	}
	wantNames(t, a, "(Pantry)")
	s.Type("leaf.width", "751")
	save(t, a, s)
	wantNames(t, a, "Pantry")
}

// The page may be killed at any write, in the middle of it too: every job is then as
// it was before or after the change.
func TestKilledAtEveryWrite(t *testing.T) {
	start := newStore()
	sh := NewShelf(start, "a")
	other := sh.New(named("Cellar"))
	save(t, sh, other)
	s := sh.New(named("Pantry"))
	grow(t, s, chunkSteps-3)
	save(t, sh, s)
	pantry := sh.ID()

	changes := []func(*Shelf, *State) *State{
		func(_ *Shelf, s *State) *State { grow(t, s, 1); return s },
		func(_ *Shelf, s *State) *State { grow(t, s, 2*chunkSteps); return s }, // two chunks at once
		func(_ *Shelf, s *State) *State {
			for range 150 {
				s.Undo()
			}
			return s
		},
		func(_ *Shelf, s *State) *State { grow(t, s, 2); return s },
		func(sh *Shelf, s *State) *State { sh.Duplicate(sh.ID()); return s },
		func(sh *Shelf, s *State) *State { sh.Delete(sh.ID()); return s },
		func(sh *Shelf, s *State) *State { sh.EmptyBin(); return s },
	}
	for n := range changes {
		for _, torn := range []bool{false, true} {
			for left := 1; ; left++ {
				store := start.copy()
				b := NewShelf(store, "b")
				s := open(t, b, pantry)
				for _, change := range changes[:n] {
					s = change(b, s)
					if n < 6 {
						save(t, b, s)
					}
				}
				before := kept(t, store)
				store.left, store.torn = left, torn
				s = changes[n](b, s)
				if n < 4 {
					b.Save(s)
				}
				ended := store.left > 0 // it was not killed
				store.left = -1
				after := encoded(s)
				c := NewShelf(store, "c")
				found := map[string]string{}
				for _, e := range c.List() {
					r := open(t, c, e.ID)
					found[e.ID] = encoded(r)
					if was, is := before[e.ID]; is && encoded(r) != was && encoded(r) != after {
						t.Fatalf("change %d killed at %d, torn %v: %q is neither as before nor as after", n, left, torn, e.Name)
					}
					for r.CanUndo() {
						r.Undo()
					}
					if err := r.past.sound(); err != nil {
						t.Fatal(err)
					}
					if r.Lost() > 0 && n < 5 {
						t.Errorf("change %d killed at %d, torn %v: %d steps of %q are lost", n, left, torn, r.Lost(), e.Name)
					}
				}
				for id := range before {
					if _, is := found[id]; !is && n != 6 {
						t.Fatalf("change %d killed at %d, torn %v: a job is gone; %q", n, left, torn, c.Reports())
					}
				}
				if ended {
					break
				}
			}
		}
	}
}

// kept gives every job on a shelf by its id.
func kept(t *testing.T, store *fakeStore) map[string]string {
	t.Helper()
	out := map[string]string{}
	sh := NewShelf(store.copy(), "z")
	for _, e := range sh.List() {
		out[e.ID] = encoded(open(t, sh, e.ID))
	}
	return out
}

// A store that has no room left says so and what was kept before is whole; once there
// is room again the next change is kept.
func TestFullStore(t *testing.T) {
	store := newStore()
	sh := NewShelf(store, "a")
	s := sh.New(named("Pantry"))
	grow(t, s, 20)
	save(t, sh, s)
	before := encoded(s)
	store.room = 1
	grow(t, s, 3*chunkSteps)
	if _, err := sh.Save(s); err == nil || !strings.Contains(err.Error(), errFull.Error()) {
		t.Fatalf("error %v", err)
	}
	if got := open(t, NewShelf(store.copy(), "b"), sh.ID()); encoded(got) != before {
		t.Error("what was kept before is not whole")
	}
	store.room = 0
	save(t, sh, s)
	got := open(t, NewShelf(store, "b"), sh.ID())
	if encoded(got) != encoded(s) || got.Lost() != 0 {
		t.Error("once there was room the job was not kept")
	}

	// Room for one copy of the own record and not for two: it does without the second.
	size := 0
	for key, text := range store.texts {
		size += len(key) + len(text)
	}
	store.room = size + 500
	for range chunkSteps / 4 {
		grow(t, s, 1)
		save(t, sh, s)
	}
	if got := open(t, NewShelf(store, "b"), sh.ID()); encoded(got) != encoded(s) {
		t.Error("the last change is not kept")
	}
}

// A forbidden store: everything works but keeping.
func TestForbiddenStore(t *testing.T) {
	sh := NewShelf(forbidden{}, "a")
	s := sh.New(named("Pantry"))
	for range 2 {
		if _, err := sh.Save(s); err == nil {
			t.Error("it was kept")
		}
	}
	if sh.SaveLook(s) == nil || sh.Last() != "" || len(sh.List()) > 0 || sh.Stale() {
		t.Error("there is something in it")
	}
	if _, err := sh.Open("1-a"); err == nil {
		t.Error("something was opened")
	}
}

type forbidden struct{}

func (forbidden) Get(string) (string, bool) { return "", false }
func (forbidden) Put(string, string) error  { return errors.New("forbidden") }
func (forbidden) Delete(string)             {}
func (forbidden) Keys() []string            { return nil }
