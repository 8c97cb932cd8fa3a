package bench

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"leafwright/game"
)

// berth is where a job is kept, and what this window last saw there.
type berth struct {
	id       string
	revision int // 0 before it is kept
	by       string
	copy     int
	order    int             // 0 until this window has changed it
	has      map[string]bool // names of the chunks that are kept
	before   []string        // those the copy before the next one speaks of
	body     string          // of the own record as last kept
	look     string          // the look as last kept
}

func (b *berth) holds(name string) bool { return b.has[name] }

// body gives a job's own record without what the shelf notes in it.
func body(data []byte) string {
	_, rest, _ := strings.Cut(string(data), "\n")
	_, rest, _ = strings.Cut(rest, "\n")
	return rest
}

// Saved tells what came of keeping a job.
type Saved struct {
	// Conflict says, where it is not empty, that the job was changed in another window
	// and that this window's goes on as another job.
	Conflict string
}

// fromElsewhere is added to the name of a job that was changed in two windows.
const fromElsewhere = ", from another window"

// Save keeps the open job, if it has changed. On an error what was kept before is
// whole, and the next call tries again.
func (sh *Shelf) Save(s *State) (Saved, error) {
	b := &sh.open
	var said Saved
	if b.id == "" {
		*b = berth{id: sh.newID(), has: map[string]bool{}}
		defer func() { sh.store.Put(openKey, b.id) }() // a help, no more
	} else if sh.Stale() {
		if all := s.records(sh.token, b.holds, keeping{}); body(all[len(all)-1].Data) == b.body {
			return said, nil // only the other window changed it
		}
		was := s.Job().Name
		s.rename(was, fromElsewhere)
		*b = berth{id: sh.newID(), has: map[string]bool{}}
		said.Conflict = "“" + was + "” was changed in another window too. Both are kept: this one goes on as “" + s.Job().Name + "”."
		defer func() { sh.store.Put(openKey, b.id) }()
	}
	was := b.revision
	err := sh.keep(s, b)
	if _, binned := sh.store.Get(jobKey(b.id, inBin)); binned && b.revision > was {
		sh.store.Delete(jobKey(b.id, inBin)) // who works on it wants it
	}
	return said, err
}

// Stale tells whether the open job was changed in another window since this one last
// saw it.
func (sh *Shelf) Stale() bool {
	if sh.open.id == "" {
		return false
	}
	n := sh.newest(sh.open.id)
	return n.found && (n.revision != sh.open.revision || n.by != sh.open.by)
}

// nameMost is the longest name a job file takes, in letters.
const nameMost = 120

// rename adds to the job's name, as a step that can be undone.
func (s *State) rename(name, more string) {
	letters := []rune(name)
	if most := nameMost - len([]rune(more)); len(letters) > most {
		letters = letters[:most]
	}
	s.Settle()
	s.Type("name", string(letters)+more)
	s.Settle()
}

// keep keeps a job in its berth, which no other window has touched.
func (sh *Shelf) keep(s *State, b *berth) error {
	n := sh.newest(b.id)
	if !n.found && b.revision > 0 { // taken away in another window, which is no reason to lose it
		*b = berth{id: b.id, has: map[string]bool{}}
	}
	all := s.records(sh.token, b.holds, keeping{})
	rest := body(all[len(all)-1].Data)
	if b.revision > 0 && rest == b.body {
		return nil
	}
	if b.order == 0 {
		b.order = sh.lastOrder() + 1
	}
	var own strings.Builder
	k := keeping{s.Job().Name, b.revision + 1, sh.token, b.order}
	own.WriteString(recordHeading + "\n")
	k.write(&own)
	own.WriteString(rest)
	to := 0
	if n.found {
		to = 1 - n.copy
	}
	spare := jobKey(b.id, copies[to])
	begins := !n.found && len(all) > 1
	if begins {
		if err := sh.put(jobKey(b.id, beginning), nil, ""); err != nil {
			return err
		}
	}
	for _, r := range all[:len(all)-1] {
		if err := sh.put(jobKey(b.id, r.Key), r.Data, spare); err != nil {
			return err
		}
		b.has[r.Key] = true
	}
	if err := sh.put(spare, []byte(own.String()), spare); err != nil {
		if !n.found || sh.store.Put(jobKey(b.id, copies[n.copy]), Seal([]byte(own.String()))) != nil { // room for one copy, perhaps
			return err
		}
		to = n.copy
	}
	if begins || b.has[beginning] {
		sh.store.Delete(jobKey(b.id, beginning))
		delete(b.has, beginning)
	}
	keys := s.chunkKeys()
	for name := range b.has {
		if strings.HasPrefix(name, "steps.") && !slices.Contains(keys, name) && !slices.Contains(b.before, name) {
			sh.store.Delete(jobKey(b.id, name))
			delete(b.has, name)
		}
	}
	b.revision, b.by, b.copy, b.before, b.body = k.revision, k.by, to, keys, rest
	return nil
}

// put keeps a record. Where there is no room it gives up the spare, the older copy of
// the job's own record.
func (sh *Shelf) put(key string, data []byte, spare string) error {
	text := Seal(data)
	err := sh.store.Put(key, text)
	if _, there := sh.store.Get(spare); err != nil && there && spare != "" {
		sh.store.Delete(spare)
		err = sh.store.Put(key, text)
	}
	if err != nil {
		return errors.New("The browser did not keep the last change (" + err.Error() + "). What was kept before is whole. Save the job as a file, or delete jobs and empty the bin to make room.")
	}
	return nil
}

// lastOrder gives the greatest order of any job.
func (sh *Shelf) lastOrder() (last int) {
	for _, id := range sh.ids() {
		last = max(last, sh.newest(id).order)
	}
	return last
}

// SaveLook keeps how the open job is looked at.
func (sh *Shelf) SaveLook(s *State) error {
	text := Seal(s.LookRecord())
	if text == sh.open.look {
		return nil
	}
	err := sh.store.Put(lookKey, text)
	if sh.open.revision > 0 && err == nil {
		if err = sh.store.Put(jobKey(sh.open.id, ownLook), text); err == nil {
			sh.open.look = text
		}
	}
	return err
}

// Duplicate keeps a job once more, under another id, without the steps that led to it.
func (sh *Shelf) Duplicate(id string) (newID string, err error) {
	s, _, err := sh.load(id)
	if err != nil {
		return "", err
	}
	again := New(*s.Job())
	again.rename(again.Job().Name, " (copy)")
	again = New(*again.Job())
	again.look = s.look
	b := berth{id: sh.newID(), has: map[string]bool{}}
	return b.id, sh.keep(again, &b)
}

// Rename gives a job that is not open another name.
func (sh *Shelf) Rename(id, name string) error {
	if id == sh.open.id {
		return errors.New("the open job is renamed by its field for the name")
	}
	s, b, err := sh.load(id)
	if err != nil {
		return err
	}
	s.Settle()
	s.Type("name", name)
	if d, bad := s.Draft("name"); bad {
		return errors.New(d.Why)
	}
	return sh.keep(s, &b)
}

// Delete puts a job into the bin, and Undelete takes it out again.
func (sh *Shelf) Delete(id string) error {
	if n := sh.newest(id); !n.found {
		return errGone
	} else if err := sh.put(jobKey(id, inBin), nil, jobKey(id, copies[1-n.copy])); err != nil {
		return err
	}
	return nil
}

func (sh *Shelf) Undelete(id string) { sh.store.Delete(jobKey(id, inBin)) }

// EmptyBin takes away for good what is in the bin.
func (sh *Shelf) EmptyBin() {
	for _, id := range sh.ids() {
		if _, binned := sh.store.Get(jobKey(id, inBin)); !binned {
			continue
		}
		for _, name := range sh.namesOf(id) {
			if name != inBin { // last, so that one half taken away is still in the bin
				sh.store.Delete(jobKey(id, name))
			}
		}
		sh.store.Delete(jobKey(id, inBin))
	}
}

// Where a job was kept when there was one only, and its id where that cannot be kept
// in the present form.
const (
	formerKey    = rootKey + "job"
	formerBefore = formerKey + ":old" // the one before that
	formerID     = "0-former"
)

// moveIn takes over the job of the time when there was one only.
func (sh *Shelf) moveIn() {
	var s *State
	look, _ := sh.sound(lookKey)
	for _, key := range []string{formerKey, formerBefore} {
		data, whole := sh.sound(key)
		if !whole || s != nil {
			continue
		}
		if was, err := Restore(data, func(string) ([]byte, bool) { return nil, false }, look); err == nil {
			s = was
		}
	}
	if s == nil {
		for _, key := range []string{formerKey, formerBefore} {
			if _, there := sh.store.Get(key); there && sh.putAside(key, true) {
				sh.report("The job kept in this browser was damaged and cannot be read. It is put aside and can be saved as a file.")
			}
		}
		return
	}
	if _, whole := sh.sound(formerKey); !whole {
		if _, there := sh.store.Get(formerKey); there {
			sh.report("The latest change to “" + s.Job().Name + "” was kept damaged; the job is as it was before that.")
			if !sh.putAside(formerKey, true) {
				return
			}
		}
	}
	if s.Lost() > 0 {
		sh.report(lostText(s.Job().Name, s.Lost()))
	}
	if !sh.isKept(s) {
		b := berth{id: sh.newID(), has: map[string]bool{}}
		err := sh.keep(s, &b)
		if err != nil && len(b.has) == 0 {
			if _, whole := sh.sound(formerKey); whole { // room for one copy, perhaps
				sh.store.Delete(formerBefore)
				err = sh.keep(s, &b)
			}
		}
		if err != nil {
			sh.report(err.Error())
			sh.former = s
			return
		}
		if len(look) > 0 {
			sh.store.Put(jobKey(b.id, ownLook), Seal(look))
		}
		sh.store.Put(openKey, b.id)
	}
	sh.store.Delete(formerBefore)
	sh.store.Delete(formerKey)
}

// isKept tells whether a job is on the shelf as it is: moving in was cut short then.
func (sh *Shelf) isKept(s *State) bool {
	file := strconv.Quote(string(game.Encode(*s.Job())))
	for _, id := range sh.ids() {
		if n := sh.newest(id); n.found && strings.Contains(string(n.data), "\nnow "+file+"\n") {
			return true
		}
	}
	return false
}
