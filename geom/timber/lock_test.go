package timber_test

import (
	"slices"
	"testing"

	"leafwright/geom/door"
	"leafwright/geom/timber"
)

func TestLockFit(t *testing.T) {
	p := piece()
	p.Anatomy.Lock = door.Lock{Kind: door.Mortice, Height: 1045, Backset: 57, Case: 120, Depth: 78}
	f := timber.LockFitOf(&p.Door, &p.Anatomy, 16, 25, 3)
	near(t, "behind the case", f.Behind, 110-78, 1e-9)
	near(t, "wall", f.Wall, 14, 1e-9)
	near(t, "hand", f.Hand, 57-(12-3)-25, 1e-9)
	if f.Rail != -1 || !slices.Equal(f.Cares, []timber.LockCare{timber.KnobAtStop}) { // 23 mm for the knuckles
		t.Errorf("%+v", f)
	}
	p.Anatomy.Lock.Height, p.Anatomy.Lock.Case = 875, 120 // in the middle of the lock rail, 785 to 965
	f = timber.LockFitOf(&p.Door, &p.Anatomy, 16, 20, 3)
	near(t, "of the joint", f.Joint, 120.0/180, 1e-9)
	if f.Rail != 1 || !slices.Equal(f.Cares, []timber.LockCare{timber.CutsTenon}) {
		t.Errorf("%+v", f)
	}
	// a stub tenon that the case does not reach
	p.Anatomy.Joints.Kind, p.Anatomy.Joints.Tenon = door.Stub, 30
	if f = timber.LockFitOf(&p.Door, &p.Anatomy, 16, 20, 3); f.Joint != 0 || f.Cares != nil {
		t.Errorf("%+v", f)
	}
	// a deep case above the lock rail leaves too little of the stile behind it
	p.Anatomy.Lock = door.Lock{Kind: door.Mortice, Height: 1100, Backset: 80, Case: 120, Depth: 101}
	if f = timber.LockFitOf(&p.Door, &p.Anatomy, 16, 20, 3); !slices.Equal(f.Cares, []timber.LockCare{timber.PastStile}) {
		t.Errorf("%+v", f)
	}
	p.Anatomy.Lock.Height = 875 // in front of the rail there is timber behind it
	if f = timber.LockFitOf(&p.Door, &p.Anatomy, 26, 20, 3); !slices.Equal(f.Cares, []timber.LockCare{timber.ThinWall, timber.CutsTenon}) {
		t.Errorf("%+v", f)
	}
	near(t, "knob 3 ft up", timber.KnobHeight, 914.4, 1e-9)
	// published: no mortice lock in a leaf under 1½ in, no rim lock under 1¼ in
	for _, c := range []struct {
		kind door.LockKind
		inch float64
		thin bool
	}{{door.Mortice, 1.5, false}, {door.Mortice, 1.375, true}, {door.Rim, 1.25, false}, {door.Rim, 1.125, true}} {
		p.Anatomy.Lock.Kind, p.Door.Leaf.Thickness = c.kind, c.inch*25.4
		f = timber.LockFitOf(&p.Door, &p.Anatomy, 14, 20, 3)
		if slices.Contains(f.Cares, timber.ThinLeaf) != c.thin {
			t.Errorf("%s lock, %v in: %+v", c.kind, c.inch, f)
		}
	}
}

func TestKeep(t *testing.T) {
	was := piece().Door
	near(t, "keep", timber.Keep(&was, 1000), 1010, 1e-9)
	is := was.Clone()
	is.Hinges[0].LeafGain++ // case 2 of the model: the closing edge rises by its width over the hinges' distance
	k := timber.KeepMoveOf(&was, &is, 1000, 1000, 12, 3)
	near(t, "up", k.Up, 762.0/1501, 1e-9)
	near(t, "in", k.In, 9, 1e-12)
	if k.Cares != nil {
		t.Errorf("%+v", k)
	}
	is.Hinges[0].JambHeight += 3
	is.Hinges[1].JambHeight += 3
	k = timber.KeepMoveOf(&was, &is, 1000, 1000, 12, 8)
	if !slices.Equal(k.Cares, []timber.LockCare{timber.KeepOff, timber.BoltShort}) {
		t.Errorf("%+v", k)
	}
}

func TestOldHoles(t *testing.T) {
	l := door.Rectangle(762, 1981, 44)
	old := door.Lock{Kind: door.Mortice, Height: 1000, Backset: 57, Case: 150, Depth: 80}
	if got := timber.OldHoles(&l, old, old, 16); got != nil {
		t.Errorf("the same lock leaves %+v", got)
	}
	now := old
	now.Height = 1030
	got := timber.OldHoles(&l, old, now, 16)
	if len(got) != 2 {
		t.Fatalf("%+v", got)
	}
	near(t, "open below", got[0].Up.Length(), 30, 1e-9)
	near(t, "its volume", timber.FillerFor(got[0], 44, false).Filler, 30*80*16, 1e-9)
	near(t, "the spindle's hole", timber.FillerFor(got[1], 44, false).Filler, 314.159*44, 0.5)
	if got = timber.OldHoles(&l, old, door.Lock{}, 16); len(got) != 2 || got[0].Up.Length() != 150 {
		t.Errorf("no new lock: %+v", got)
	}
	old.Kind = door.Rim
	if got = timber.OldHoles(&l, old, door.Lock{}, 16); len(got) != 1 {
		t.Errorf("an old rim lock: %+v", got)
	}
}
