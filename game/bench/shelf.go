package bench

import (
	"cmp"
	"errors"
	"strconv"
	"strings"

	"leafwright/game"
	"leafwright/geom"
)

// Store keeps texts under names. It may be full or forbidden; a text that cannot be
// put leaves the one before as it was.
type Store interface {
	Get(key string) (text string, found bool)
	Put(key, text string) error
	Delete(key string)
	Keys() []string // all there are, other programs' too, in any order
}

// The names things are kept under. A job's own record is there in two copies, written
// by turns, so that the one before is whole whatever becomes of the other.
const (
	rootKey  = "leafwright:"
	jobsKey  = rootKey + "jobs:" // then the job's id, a colon and the record's name
	asideKey = rootKey + "aside:"
	openKey  = rootKey + "open"
	lookKey  = rootKey + "look" // the last look of all
	ownLook  = "look"
	inBin    = "bin"
	// beginning marks a job whose chunks are written before its own record is for the
	// first time: without that they are no job.
	beginning = "new"
)

var copies = [2]string{NowKey + ".a", NowKey + ".b"}

func jobKey(id, name string) string { return jobsKey + id + ":" + name }

// Shelf keeps jobs in a store, one of them open. Several windows may have a shelf on
// the same store. Nothing on it is overwritten that this window has not seen, and one
// job that is damaged never takes another with it.
type Shelf struct {
	store   Store
	token   string
	open    berth
	counted int // the greatest number in an id yet
	reports []string
	former  *State // of the former form, where it could not be kept in this one
}

// Entry is a job in the list of them.
type Entry struct {
	ID, Name string
	Order    int  // the greater, the later it was worked on
	Binned   bool // deleted, and to be had back
	Open     bool
}

// NewShelf takes up the jobs of a store. The token is a few letters that no other
// window has. What went wrong is in [Shelf.Reports].
func NewShelf(store Store, token string) *Shelf {
	sh := &Shelf{store: store, token: token}
	for _, id := range sh.ids() {
		number, _, _ := strings.Cut(id, "-")
		if n, err := strconv.Atoi(number); err == nil {
			sh.counted = max(sh.counted, n)
		}
	}
	sh.moveIn()
	return sh
}

// Reports gives what a person should be told, once.
func (sh *Shelf) Reports() []string {
	out := sh.reports
	sh.reports = nil
	return out
}

func (sh *Shelf) report(text string) { sh.reports = append(sh.reports, text) }

// ID is the open job's, empty where none is.
func (sh *Shelf) ID() string { return sh.open.id }

// newID gives an id that no job has.
func (sh *Shelf) newID() string {
	sh.counted++
	return strconv.Itoa(sh.counted) + "-" + sh.token
}

// names gives the names of what is kept of each job, in order.
func (sh *Shelf) names() (out []Record) {
	var keys []string
	for _, key := range sh.store.Keys() {
		if strings.HasPrefix(key, jobsKey) {
			keys = append(keys, key)
		}
	}
	geom.Ascending(keys)
	for _, key := range keys {
		id, name, ok := strings.Cut(strings.TrimPrefix(key, jobsKey), ":")
		if ok && id != "" {
			out = append(out, Record{Key: id, Data: []byte(name)})
		}
	}
	return out
}

// ids gives the ids of all jobs.
func (sh *Shelf) ids() (out []string) {
	for _, r := range sh.names() {
		if len(out) == 0 || out[len(out)-1] != r.Key {
			out = append(out, r.Key)
		}
	}
	return out
}

// namesOf gives the names of what is kept of one job, in order.
func (sh *Shelf) namesOf(id string) (out []string) {
	for _, r := range sh.names() {
		if r.Key == id {
			out = append(out, string(r.Data))
		}
	}
	return out
}

// newest is the later sound copy of a job's own record.
type newest struct {
	keeping
	found   bool // a sound one
	form    bool // it is of a form this page reads
	copy    int
	data    []byte
	damaged []string // keys of copies that are not sound
}

func (sh *Shelf) newest(id string) (n newest) {
	for i, name := range copies {
		text, found := sh.store.Get(jobKey(id, name))
		if !found {
			continue
		}
		data, whole := Unseal(text)
		if !whole {
			n.damaged = append(n.damaged, jobKey(id, name))
			continue
		}
		k, form := readKeeping(data)
		if !n.found || k.revision > n.revision {
			n.keeping, n.found, n.form, n.copy, n.data = k, true, form, i, data
		}
	}
	return n
}

// readKeeping reads what a shelf noted in a job's own record, and tells whether the
// record is of a form that is read here.
func readKeeping(data []byte) (k keeping, form bool) {
	text := string(data)
	for range 2 {
		l, rest, _ := strings.Cut(text, "\n")
		text = rest
		if word, t, ok := unline(l); ok && word == "kept" && len(t) == 4 {
			k.name, k.by = t[0], t[2]
			k.revision, _ = strconv.Atoi(t[1])
			k.order, _ = strconv.Atoi(t[3])
		}
	}
	return k, strings.HasPrefix(string(data), recordHeading+"\n")
}

// List gives every job, the one worked on last first.
func (sh *Shelf) List() (out []Entry) {
	for _, id := range sh.ids() {
		n := sh.newest(id)
		if !n.found {
			if !sh.mend(id) {
				continue
			}
			n = sh.newest(id)
		}
		_, binned := sh.store.Get(jobKey(id, inBin))
		out = append(out, Entry{ID: id, Name: n.name, Order: n.order, Binned: binned, Open: id == sh.open.id})
	}
	geom.Order(out, func(a, b Entry) int {
		if c := cmp.Compare(b.Order, a.Order); c != 0 {
			return c
		}
		return cmp.Compare(b.ID, a.ID)
	})
	return out
}

// Last gives the id of the job that was open last, or else the one worked on last;
// empty where there is none.
func (sh *Shelf) Last() string {
	if sh.former != nil {
		return formerID
	}
	id, _ := sh.store.Get(openKey)
	all := sh.List()
	for _, e := range all {
		if e.ID == id && !e.Binned {
			return id
		}
	}
	for _, e := range all {
		if !e.Binned {
			return e.ID
		}
	}
	return ""
}

// errGone says that there is no such job.
var errGone = errors.New("this job is no longer kept in this browser")

// Open puts a kept job on a bench and makes it the open one.
func (sh *Shelf) Open(id string) (*State, error) {
	if sh.former != nil && id == formerID {
		s := sh.former
		sh.former = nil
		sh.open = berth{}
		return s, nil
	}
	s, b, err := sh.load(id)
	if err != nil {
		return nil, err
	}
	sh.open = b
	sh.store.Put(openKey, id) // a help, no more
	return s, nil
}

// load reads a job, and how it is kept.
func (sh *Shelf) load(id string) (*State, berth, error) {
	n := sh.newest(id)
	if !n.found && sh.mend(id) {
		n = sh.newest(id)
	}
	if !n.found {
		return nil, berth{}, errGone
	}
	if !n.form {
		return nil, berth{}, errForm
	}
	look, _ := sh.sound(jobKey(id, ownLook))
	s, err := Restore(n.data, func(key string) ([]byte, bool) { return sh.sound(jobKey(id, key)) }, look)
	if err != nil {
		return nil, berth{}, err
	}
	sh.lookAsLast(s)
	for _, key := range n.damaged {
		sh.report("The latest change to “" + n.name + "” was kept damaged; the job is as it was before that.")
		sh.putAside(key, false)
	}
	if s.Lost() > 0 {
		sh.report(lostText(n.name, s.Lost()))
	}
	b := berth{id: id, revision: n.revision, by: n.by, copy: n.copy, has: map[string]bool{}}
	for _, name := range sh.namesOf(id) {
		b.has[name] = true
	}
	all := s.records(sh.token, b.holds, keeping{})
	b.body = body(all[len(all)-1].Data)
	b.before = s.chunkKeys()
	return s, b, nil
}

func lostText(name string, n int) string {
	return "Of “" + name + "” " + strconv.Itoa(n) + " or more steps could not be read back: the job is as it stands, but those cannot be undone."
}

// sound reads a sealed record.
func (sh *Shelf) sound(key string) (data []byte, is bool) {
	text, found := sh.store.Get(key)
	if !found {
		return nil, false
	}
	return Unseal(text)
}

// lookAsLast gives a bench the last look's units, words and pictures, whatever job it
// was on.
func (sh *Shelf) lookAsLast(s *State) {
	data, is := sh.sound(lookKey)
	if !is {
		return
	}
	last := readLook(string(data))
	l := s.look
	l.Show, l.Inches, l.Words = last.Show, last.Inches, last.Words
	s.setLook(l)
}

// New puts a job of its own on a bench and makes it the open one. The first
// [Shelf.Save] keeps it.
func (sh *Shelf) New(job game.Job) *State {
	s := New(job)
	sh.lookAsLast(s)
	sh.open = berth{}
	return s
}

// mend keeps anew what the chunks of steps still hold of a job whose own record is
// lost. What is damaged is put aside; false where nothing is left.
func (sh *Shelf) mend(id string) bool {
	var chunks [][]byte
	names := sh.namesOf(id)
	geom.Order(names, func(a, b string) int { // chunks are numbered, by the window
		return cmp.Compare(serialOf(a), serialOf(b))
	})
	damaged, begun := false, false
	for _, name := range names {
		if name == beginning {
			begun = true
		} else if name == copies[0] || name == copies[1] {
			damaged = true
		} else if strings.HasPrefix(name, "steps.") {
			data, _ := sh.sound(jobKey(id, name))
			chunks = append(chunks, data)
		}
	}
	if begun {
		chunks = nil
	}
	if !damaged && len(chunks) == 0 { // left by a job that is gone, or never was
		for _, name := range names {
			sh.store.Delete(jobKey(id, name))
		}
		return false
	}
	look, _ := sh.sound(jobKey(id, ownLook))
	s, found := salvage(chunks, look)
	all := true
	for _, name := range names {
		if name == copies[0] || name == copies[1] || !found {
			all = sh.putAside(jobKey(id, name), true) && all
		}
	}
	switch {
	case !found && all:
		sh.report("A kept job was damaged and cannot be read. What is left of it is put aside and can be saved as a file.")
		return false
	case !found:
		sh.report("A kept job is damaged and cannot be read. It is left as it is.")
		return false
	}
	sh.report(lostText(s.Job().Name, s.Lost()))
	b := berth{id: id, has: map[string]bool{}}
	if err := sh.keep(s, &b); err != nil {
		sh.report(err.Error())
		return false
	}
	return true
}

// serialOf gives the number of a chunk's record, from its name.
func serialOf(name string) int {
	n, _ := strconv.Atoi(name[strings.LastIndexByte(name, '.')+1:])
	return n
}

// putAside copies a record to where nothing reads it, and takes it away from where it
// was if asked. False where there is no room for the copy: then nothing is done.
func (sh *Shelf) putAside(key string, move bool) bool {
	text, found := sh.store.Get(key)
	if !found {
		return true
	}
	to := asideKey + strings.TrimPrefix(key, rootKey)
	for {
		there, taken := sh.store.Get(to)
		if taken && there == text {
			break
		}
		if !taken {
			if sh.store.Put(to, text) != nil {
				return false
			}
			break
		}
		to += "+"
	}
	if move {
		sh.store.Delete(key)
	}
	return true
}

// Aside gives the names of damaged records that were put aside.
func (sh *Shelf) Aside() (keys []string) {
	for _, key := range sh.store.Keys() {
		if strings.HasPrefix(key, asideKey) {
			keys = append(keys, key)
		}
	}
	geom.Ascending(keys)
	return keys
}

// AsideText gives one of them as it was found.
func (sh *Shelf) AsideText(key string) string {
	text, _ := sh.store.Get(key)
	return text
}

// DropAside takes it away for good.
func (sh *Shelf) DropAside(key string) {
	if strings.HasPrefix(key, asideKey) {
		sh.store.Delete(key)
	}
}
