package bench

import (
	"errors"
	"slices"
	"strings"
	"testing"
)

// Every record of a job is damaged, one at a time and several together: other jobs
// stay as they are, what is damaged is put aside and told, what can be had is.
func TestDamagedRecords(t *testing.T) {
	start := newStore()
	sh := NewShelf(start, "a")
	other := sh.New(named("Cellar"))
	save(t, sh, other)
	otherID := sh.ID()
	s := sh.New(named("Pantry"))
	grow(t, s, 2*chunkSteps+50)
	save(t, sh, s)
	before := encoded(s)
	grow(t, s, 1)
	save(t, sh, s)
	id := sh.ID()
	var records []string
	for key := range start.texts {
		if strings.HasPrefix(key, jobsKey+id) {
			records = append(records, key)
		}
	}
	slices.Sort(records) // now.a, now.b, two chunks
	if len(records) != 4 {
		t.Fatalf("%q", records)
	}
	for which := 1; which < 1<<len(records); which++ {
		store := start.copy()
		for i, key := range records {
			if which>>i&1 == 1 {
				store.texts[key] = store.texts[key][:len(store.texts[key])-9] + "nonsense!"
			}
		}
		c := NewShelf(store, "c")
		list := c.List()
		if o := open(t, c, otherID); encoded(o) != encoded(other) {
			t.Fatalf("%04b: the other job is not as it was", which)
		}
		switch which {
		case 15:
			if len(list) != 1 || len(c.Aside()) != 4 {
				t.Errorf("all damaged: %d on the list, %q aside", len(list), c.Aside())
			}
			if !strings.Contains(c.AsideText(c.Aside()[0]), "nonsense!") {
				t.Error("it is not as it was found")
			}
			for _, key := range c.Aside() {
				c.DropAside(key)
			}
			if len(c.Aside()) > 0 {
				t.Error("it is still there")
			}
		default:
			r := open(t, c, id)
			switch {
			case which&3 == 0 || which&2 == 0 && encoded(r) == encoded(s): // the newest own record is sound
				if encoded(r) != encoded(s) {
					t.Errorf("%04b: not the job as it stood", which)
				}
			case which&3 != 3:
				if got := encoded(r); got != before && got != encoded(s) {
					t.Errorf("%04b: not the job as it stood one change before", which)
				}
			}
			if (which&12 != 0 || which&3 == 3) != (r.Lost() > 0) && which&3 != 3 {
				t.Errorf("%04b: %d steps lost", which, r.Lost())
			}
			for r.CanUndo() {
				r.Undo()
			}
		}
		if which != 1 && which != 2 && len(c.Reports()) == 0 {
			t.Errorf("%04b: nothing is told", which)
		}
	}
}

// A job in a form of a later time is neither touched nor taken for damaged.
func TestLaterForm(t *testing.T) {
	store := newStore()
	text := Seal([]byte("leafwright bench 9\nkept \"Pantry\" \"3\" \"q\" \"1\"\nnow \"?\"\n"))
	store.texts[jobsKey+"1-q:now.a"] = text
	sh := NewShelf(store, "a")
	wantNames(t, sh, "Pantry")
	if _, err := sh.Open("1-q"); !errors.Is(err, errForm) {
		t.Errorf("error %v", err)
	}
	if store.texts[jobsKey+"1-q:now.a"] != text || len(sh.Aside()) > 0 {
		t.Error("it was touched")
	}
}

// The job of the time when there was only one is taken over, wherever that is cut
// short, and nothing of it is lost.
func TestMovingIn(t *testing.T) {
	s := newDemo(t)
	grow(t, s, 120)
	s.SetInches(true)
	record, look := Seal(former(s)), Seal(s.LookRecord())
	s.Undo()
	before := Seal(former(s))
	s.Redo()
	for _, c := range []struct {
		name     string
		job, old string
		steps    int
		aside    int
	}{
		{"both sound", record, before, 120, 0},
		{"the last only", record, "", 120, 0},
		{"the last damaged", record[:len(record)/2], before, 119, 1},
		{"the one before damaged", record, before[:len(before)/2], 120, 0},
		{"the last gone", "", before, 119, 0},
		{"both damaged", record[:len(record)/2], before[:len(before)/2], -1, 2},
		{"none", "", "", -1, 0},
	} {
		for left := range 9 {
			for _, torn := range []bool{false, true} {
				store := newStore()
				for key, text := range map[string]string{formerKey: c.job, formerBefore: c.old, lookKey: look} {
					if text != "" {
						store.texts[key] = text
					}
				}
				store.left, store.torn = left, torn
				NewShelf(store, "a")
				store.left = -1
				b := NewShelf(store, "b")
				id := b.Last()
				if (id != "") != (c.steps >= 0) {
					t.Fatalf("%s, killed at %d: the last job is %q; %q", c.name, left, id, b.Reports())
				}
				if len(b.Aside()) < c.aside {
					t.Errorf("%s, killed at %d: aside are %q", c.name, left, b.Aside())
				}
				if id == "" {
					continue
				}
				if n := len(b.List()); n != 1 {
					t.Fatalf("%s, killed at %d, torn %v: %d jobs", c.name, left, torn, n)
				}
				r := open(t, b, id)
				if !r.Look().Inches {
					t.Errorf("%s: the look was lost", c.name)
				}
				if n := r.past.at; n != c.steps {
					t.Errorf("%s, killed at %d: %d steps, want %d", c.name, left, n, c.steps)
				}
				for _, key := range []string{formerKey, formerBefore} {
					if _, there := store.texts[key]; there {
						t.Errorf("%s, killed at %d: %s is still there", c.name, left, key)
					}
				}
			}
		}
	}

	// No room to take it over: it is opened where it lies.
	store := newStore()
	store.texts[formerKey] = record
	store.room = 1
	sh := NewShelf(store, "a")
	if len(sh.Reports()) == 0 {
		t.Error("nothing is told")
	}
	if r := open(t, sh, sh.Last()); encoded(r) != encoded(s) {
		t.Error("not the job that was kept")
	}
	if store.texts[formerKey] != record {
		t.Error("it was touched")
	}
}

// Whatever is in the store, a shelf is made of it, and opens what it lists or says why
// not.
func FuzzShelf(f *testing.F) {
	store := newStore()
	sh := NewShelf(store, "a")
	s := sh.New(named("Pantry"))
	grow(f, s, chunkSteps+5)
	sh.Save(s)
	for _, text := range store.texts {
		f.Add(text, "leafwright bench 2\nkept \"a\" \"1\" \"b\" \"2\"\n", true)
	}
	f.Fuzz(func(t *testing.T, one, two string, seal bool) {
		store := newStore()
		if seal {
			one, two = Seal([]byte(one)), Seal([]byte(two))
		}
		for i, key := range []string{jobsKey + "1-a:now.a", jobsKey + "1-a:steps.a.1", jobsKey + "2-a:now.b", formerKey, lookKey, jobsKey + "2-a:look"} {
			store.texts[key] = [2]string{one, two}[i%2]
		}
		sh := NewShelf(store, "b")
		for _, e := range sh.List() {
			s, err := sh.Open(e.ID)
			if err != nil {
				continue
			}
			s.Undo()
			s.Type("leaf.width", "751")
			if _, err := sh.Save(s); err != nil {
				t.Fatal(err)
			}
			if again, err := sh.Open(sh.ID()); err != nil || encoded(again) != encoded(s) {
				t.Fatalf("not kept as it was: %v", err)
			}
		}
	})
}
