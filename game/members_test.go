package game

import (
	"strings"
	"testing"

	"leafwright/geom/door"
	"leafwright/geom/survey"
)

// sameRail fails unless a rail reaches from one height to another.
func sameRail(t *testing.T, what string, got door.Rail, from, to float64) {
	t.Helper()
	if got.From != from || got.To != to {
		t.Errorf("%s from %v to %v, want %v to %v", what, got.From, got.To, from, to)
	}
}

func framedRead(t *testing.T, readings string) Job {
	t.Helper()
	text := swap(t, leastRead, `"leafwright": 1,`, `"leafwright": 1, "leaf": {"make": "framed"},`)
	if readings != "" {
		text = swap(t, text, `"readings": [`, `"readings": [`+readings+",")
	}
	return must(t, text)
}

// The leaf is 762 × 1981; an ordinary one of that size has a bottom rail, a lock rail
// and a top rail.
func TestMembersAreWhatWasReadOfThem(t *testing.T) {
	plain := framedRead(t, "")
	if n := len(plain.Anatomy.Rails); n != 3 || len(plain.Anatomy.Muntins) == 0 {
		t.Fatalf("%+v", plain.Anatomy)
	}
	lock := plain.Anatomy.Rails[1]
	j := framedRead(t, `{"kind": "stile_width", "side": "hinge", "value": 102, "sigma": 1}, {"kind": "stile_width", "side": "hinge", "value": 104, "sigma": 1},
		{"kind": "stile_width", "side": "latch", "value": "3 7/8\""}, {"kind": "rail_width", "rail": 1, "value": 235},
		{"kind": "rail_height", "rail": 2, "value": 790}, {"kind": "rail_width", "rail": 3, "value": 111}`)
	a := j.Anatomy
	if a.HangingStile != 103 || a.ClosingStile != 98.4 {
		t.Errorf("stiles %v and %v, want 103 and 98.4", a.HangingStile, a.ClosingStile)
	}
	sameRail(t, "bottom rail", a.Rails[0], 0, 235)
	sameRail(t, "lock rail", a.Rails[1], 790, 790+lock.To-lock.From)
	sameRail(t, "top rail", a.Rails[2], 1981-111, 1981)
	for i, m := range a.Muntins {
		was := plain.Anatomy.Muntins[i]
		if want := was.At + (103-plain.Anatomy.HangingStile-98.4+plain.Anatomy.ClosingStile)/2; m.At != want {
			t.Errorf("muntin at %v, want %v", m.At, want)
		}
	}
	if m := a.Muntins[0]; m.From != 235 || m.To != 790 {
		t.Errorf("lower muntin from %v to %v", m.From, m.To)
	}
	if faults := j.Check(); faults != nil {
		t.Error(faults)
	}
	if back := must(t, string(Encode(j))); !alike(back, j) {
		t.Errorf("read back as\n%s", Encode(back))
	}
	if f := j.MemberFaults(); f != nil {
		t.Error(f)
	}
	if table, err := ParseReadings(EncodeReadings(j.Readings)); err != nil || len(table) != len(j.Readings) || table[4] != j.Readings[4] {
		t.Errorf("by way of a table: %v", err)
	}
	// the fit knows nothing of it
	if !alikeDoor(j.Door, plain.Door) {
		t.Error("the door differs")
	}
}

func alikeDoor(a, b door.Door) bool {
	return a.Leaf.Closing.At(1000) == b.Leaf.Closing.At(1000) && a.Leaf.Top.At(300) == b.Leaf.Top.At(300) && a.Frame.LatchJamb.At(1000) == b.Frame.LatchJamb.At(1000)
}

// Typed on the card a size shows at once; wiped out again the member is ordinary.
func TestMembersOnTheCard(t *testing.T) {
	j := framedRead(t, "")
	plain := j
	paths := map[string]bool{}
	for _, p := range (Form{}).Card(j, nil) {
		if p.Stage == Members {
			paths[p.Path] = true
			if len(p.Picture.Marks) != 1 || p.Picture.On != OnLeaf {
				t.Errorf("%s: picture %+v", p.Path, p.Picture)
			}
		}
	}
	for _, path := range []string{
		"card.stile_width.hinge.1", "card.stile_width.latch.1", "card.rail_width.1.1", "card.rail_height.2.1", "card.rail_width.2.1",
		"card.rail_height.3.1", "card.rail_width.3.1",
	} {
		if !paths[path] {
			t.Errorf("%s is not asked for", path)
		}
	}
	if len(paths) != 7 {
		t.Errorf("asked for: %v", paths)
	}
	set := func(path, text string) {
		t.Helper()
		next, err := Form{}.Set(j, path, text)
		if err != nil {
			t.Fatalf("%s: %v", path, err)
		}
		j = next
	}
	set("card.stile_width.latch.1", "118")
	set("card.rail_height.2.1", "700")
	if j.Anatomy.ClosingStile != 118 || j.Anatomy.Rails[1].From != 700 {
		t.Errorf("%+v", j.Anatomy)
	}
	for _, path := range []string{"leaf.stiles.closing", "leaf.rails[1].from"} {
		if _, err := (Form{}).Set(j, path, "120"); err == nil || !strings.Contains(err.Error(), isSurveyed) {
			t.Errorf("%s by hand beside its reading: %v", path, err)
		}
	}
	set("leaf.stiles.hanging", "90") // not read
	if j.Anatomy.HangingStile != 90 {
		t.Errorf("%+v", j.Anatomy)
	}
	set("leaf.stiles.hanging", door.Say(plain.Anatomy.HangingStile))
	set("readings[3].value", "1990") // a higher leaf
	if n := j.Anatomy.Rails; n[2].To != 1990 || n[1].From != 700 || j.Anatomy.ClosingStile != 118 {
		t.Errorf("in a higher leaf: %+v", j.Anatomy)
	}
	set("readings[3].value", "1981")
	set("card.stile_width.latch.1", "")
	set("card.rail_height.2.1", "")
	if !sameMembers(&j.Anatomy, &plain.Anatomy) || len(j.Readings) != len(plain.Readings) {
		t.Errorf("wiped out: %+v, was %+v", j.Anatomy, plain.Anatomy)
	}
}

// Two readings of one stile that contradict each other are named.
func TestMembersThatContradict(t *testing.T) {
	j := framedRead(t, `{"kind": "stile_width", "side": "hinge", "value": 102}, {"kind": "stile_width", "side": "hinge", "value": 120}`)
	ms := j.Misfits()
	if len(ms) != 1 || len(ms[0].Readings) != 2 || ms[0].Readings[0] != 0 || ms[0].Readings[1] != 1 || ms[0].Judged[0].State != survey.Doubted {
		t.Errorf("%+v", ms)
	}
	if _, _, err := j.Shapes(); err != nil {
		t.Errorf("the door does not hang: %v", err)
	}
	for _, p := range (Form{}).Card(j, nil) {
		if p.Index == 0 && (p.Judged == nil || p.Judged.State != survey.Doubted) {
			t.Errorf("the card says nothing of it: %+v", p)
		}
	}
}

// What the leaf's make-up cannot show is said beside the reading, and stands in the
// way of nothing.
func TestMembersThatCannotBe(t *testing.T) {
	for _, row := range []struct{ situation, reading, path, want string }{
		{"a rail there is none of", `{"kind": "rail_width", "rail": 5, "value": 100}`, "readings[0].rail", "5 is not a rail of the leaf: it has 3 rails"},
		{"a lock rail below the bottom rail", `{"kind": "rail_height", "rail": 2, "value": 30}`, "readings[0].value", "30 is not a size that the leaf's other members leave room for"},
		{"a stile wider than half the leaf, and another", `{"kind": "stile_width", "side": "latch", "value": 399}, {"kind": "stile_width", "side": "hinge", "value": 399}`,
			"readings[1].value", "399 is not a size that the leaf's other members leave room for"},
	} {
		t.Run(row.situation, func(t *testing.T) {
			j := framedRead(t, row.reading)
			faults := j.MemberFaults()
			if len(faults) != 1 || faults[0].Error() != row.path+": "+row.want {
				t.Errorf("%v", faults)
			}
			if _, _, err := j.Shapes(); err != nil {
				t.Errorf("the door does not hang: %v", err)
			}
			said := ""
			for _, p := range (Form{}).Card(j, nil) {
				said += p.Fault
			}
			if said != row.want {
				t.Errorf("the card says %q", said)
			}
			if back := must(t, string(Encode(j))); !alike(back, j) {
				t.Error("does not read back")
			}
		})
	}
	// a door made over into one without rails keeps what was read
	j, err := Form{}.Set(framedRead(t, `{"kind": "rail_width", "rail": 1, "value": 201}`), "leaf.make", "flush")
	if err != nil || len(j.MemberFaults()) != 1 || j.Readings[0].Value.Text != "201" {
		t.Errorf("made flush: %v, %v", err, j.MemberFaults())
	}
	if j, err = (Form{}).Set(j, "leaf.make", "framed"); err != nil || j.Anatomy.Rails[0].To != 201 {
		t.Errorf("and framed again: %v, %+v", err, j.Anatomy.Rails)
	}
}

func TestRailReadingsNameTheirRail(t *testing.T) {
	for _, row := range []struct{ reading, want string }{
		{`{"kind": "rail_width", "value": 100}`, "readings[0].rail: missing; which rail, 1 the bottom one, is wanted for rail_width"},
		{`{"kind": "rail_width", "rail": 0, "value": 100}`, "readings[0].rail"},
		{`{"kind": "rail_height", "rail": 13, "value": 100}`, "readings[0].rail: 13 is not between 1, the bottom one, and 12"},
		{`{"kind": "stile_width", "side": "hinge", "rail": 1, "value": 100}`, "readings[0].rail: 1 is not wanted: stile_width has no rail"},
		{`{"kind": "stile_width", "value": 100}`, "readings[0].side"},
	} {
		_, err := Parse([]byte(swap(t, leastRead, `"readings": [`, `"readings": [`+row.reading+",")))
		if err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: %v, want %s", row.reading, err, row.want)
		}
	}
}
