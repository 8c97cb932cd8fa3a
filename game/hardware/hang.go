package hardware

import (
	"fmt"
	"math"
	"strings"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/timber"
)

// What a lock is taken for where the job does not say (common practice, no published
// source).
const (
	caseThick = 16.0 // mm, of a mortice lock's case
	knobHalf  = 27.0 // mm, half a knob across
	rimThrow  = 16.0 // mm the bolt goes out
	mortThrow = 12.0
	plateBack = 6.0 // mm a gain stops before the stop face
	shaving   = 0.05
)

// Hang is what it takes to hang a leaf that was so and is now so: the hinges' gains, the
// packers under the foot, the marks on the jamb, the lock and its keep.
type Hang struct {
	Seats []Reseat
	Marks []float64        // of the hinges' middles on the jamb above the floor at its foot, from the top one down
	Under [2]float64       // mm under the foot, at its hanging and its closing end
	Kind  door.LockKind    // of the lock there is
	Lock  *timber.LockFit  // nil where there is none
	Keep  *timber.KeepMove // likewise
	Throw float64          // of the bolt, taken as usual
	Uncut *door.Hinge      // the top hinge, where leaf or jamb is not cut for it yet; else nil
}

// Reseat is what one hinge's gain in leaf or jamb takes.
type Reseat struct {
	Hinge      int // from 0, the top one
	OnJamb     bool
	Up, Down   float64 // mm the gain is cut longer above and below
	Deeper     float64 // mm
	Other, Off bool    // another hinge, or the same one moved: the old screw holes are off
	timber.Reseat
}

// HangOf gives it for a leaf before and after moves, or as it is where both are one.
func HangOf(before, after *game.Tried) (h Hang) {
	d, a := &after.Door, &after.Anatomy
	for i := range d.Hinges {
		h.Marks = append(h.Marks, d.Hinges[i].JambHeight)
		if i < len(before.Door.Hinges) {
			h.seat(i, &before.Door.Hinges[i], &d.Hinges[i], d.Leaf.Thickness)
		}
	}
	if top := &d.Hinges[0]; top.UncutJamb || top.UncutLeaf {
		h.Uncut = top
	}
	h.Under[0], h.Under[1] = timber.Under(d)
	if h.Kind = a.Lock.Kind; h.Kind == door.NoLock {
		return h
	}
	var f fit.Fit
	fit.Evaluate(&f, d)
	gap := f.Gaps[fit.LatchSide].Curve.At(timber.Keep(d, a.Lock.Height))
	lock := timber.LockFitOf(d, a, caseThick, knobHalf, gap)
	h.Lock, h.Throw = &lock, mortThrow
	if h.Kind == door.Rim {
		h.Throw = rimThrow
	}
	if before.Anatomy.Lock.Kind == h.Kind {
		keep := timber.KeepMoveOf(&before.Door, d, before.Anatomy.Lock.Height, a.Lock.Height, h.Throw, gap)
		h.Keep = &keep
	}
	return h
}

// seat adds what a hinge's gains take.
func (h *Hang) seat(i int, was, is *door.Hinge, thick float64) {
	across := max(0, thick-plateBack)
	one := func(onJamb bool, at, to, gain, depth float64) {
		old, now := timber.Seat{At: at, Height: was.Height, Across: across, Depth: gain}, timber.Seat{At: to, Height: is.Height, Across: across, Depth: depth}
		r := Reseat{Hinge: i, OnJamb: onJamb, Reseat: timber.ReseatOf(old, now)}
		r.Up = max(0, to+is.Height/2-at-was.Height/2)
		r.Down = max(0, at-was.Height/2-to+is.Height/2)
		r.Deeper = max(0, depth-gain)
		r.Other = was.Height != is.Height || was.Closed != is.Closed
		r.Off = r.Other || math.Abs(at-to) > shaving
		if r.Off || r.Deeper > shaving {
			h.Seats = append(h.Seats, r)
		}
	}
	if !was.UncutLeaf {
		one(false, was.LeafHeight, is.LeafHeight, was.LeafGain, is.LeafGain-max(0, is.LeafPacker-was.LeafPacker))
	}
	if !was.UncutJamb {
		one(true, was.JambHeight, is.JambHeight, was.JambGain, is.JambGain-max(0, is.JambPacker-was.JambPacker))
	}
}

// Reseats says what the gains take, a paragraph each, and Stands how the leaf stands while its
// hinges are screwed.
func (h *Hang) Reseats(s *words.Speaker) []string {
	if h.Uncut != nil {
		return append([]string{h.uncut(s)}, h.seats(s)...)
	}
	return h.seats(s)
}
func (h *Hang) Stands(s *words.Speaker) string { return h.under(s) }

// Lines says it, a paragraph each.
func (h *Hang) Lines(s *words.Speaker) (lines []string) {
	lines = append(lines, h.seats(s)...)
	if h.Uncut != nil {
		lines = append(lines, h.uncut(s))
	}
	if len(h.Marks) > 0 {
		at := make([]string, len(h.Marks))
		for i, x := range h.Marks {
			at[i] = mark(s, x)
		}
		lines = append(lines, "On the jamb, mark the hinges' middles at "+words.Listed(at)+" above the floor at its foot. "+h.under(s))
	}
	if h.Lock != nil {
		lines = append(lines, h.lock(s)...)
	}
	return lines
}

// uncut says how hinges are placed of which nothing tells that they are cut for.
func (h *Hang) uncut(s *words.Speaker) string {
	top := h.Uncut
	on, left := "jamb", "what is let into the leaf ("+tenth(s, top.LeafGain)+" here)"
	depth := top.JambGain
	switch {
	case top.UncutJamb && top.UncutLeaf:
		return "Nothing tells that leaf or jamb is cut for the hinges: they are placed for the gaps wanted. Let each in by " + tenth(s, top.LeafGain) + " in the leaf and " + tenth(s, top.JambGain) +
			" in the jamb, which leaves " + tenth(s, top.Gap()) + " of a hinge " + tenth(s, top.Closed) + " thick folded shut: measure yours, and keep the gap."
	case top.UncutLeaf:
		on, left, depth = "leaf", "what is let into the jamb ("+tenth(s, top.JambGain)+" here)", top.LeafGain
	}
	return "Nothing tells that the " + on + " is cut for the hinges: they are placed there for the gaps wanted. Let the top one in by " + tenth(s, depth) + " in the " + on +
		": its thickness folded shut (" + tenth(s, top.Closed) + " here) less " + left + " and the gap of " + tenth(s, top.Gap()) + ". Measure both before it is cut."
}

// seats says what the gains take, those that take the same in one.
func (h *Hang) seats(s *words.Speaker) (lines []string) {
	var texts, where []string
	var who [][]string
	one := func(name, in, text string) {
		for i := range texts {
			if texts[i] == text && where[i] == in {
				who[i] = append(who[i], name)
				return
			}
		}
		texts, where, who = append(texts, text), append(where, in), append(who, []string{name})
	}
	for i := 0; i < len(h.Seats); i++ {
		r := &h.Seats[i]
		text, in := r.does(s), "the leaf"
		if r.OnJamb {
			in = "the jamb"
		}
		if i+1 < len(h.Seats) && h.Seats[i+1].Hinge == r.Hinge && h.Seats[i+1].does(s) == text {
			in = "leaf and jamb"
			i++
		}
		one(hingeName(s, r.Hinge), in, text)
	}
	for i := range texts {
		lines = append(lines, words.Capital(words.Listed(who[i]))+", in "+where[i]+": "+texts[i]+".")
	}
	return lines
}

// does says what one gain takes.
func (r *Reseat) does(s *words.Speaker) string {
	var do []string
	add := func(mm float64, how string) {
		if mm > shaving {
			do = append(do, fmt.Sprintf(how, fine(s, mm)))
		}
	}
	if math.Abs(r.Up-r.Down) < shaving {
		add(r.Up, "cut the "+s.Gain+" %s longer above and below")
	} else {
		add(r.Up, "cut the "+s.Gain+" %s longer above")
		add(r.Down, "cut the "+s.Gain+" %s longer below")
	}
	add(r.Deeper, "cut it %s deeper")
	if math.Abs(r.Above-r.Below) < shaving {
		add(r.Above, "piece in the %s of the old "+s.Gain+" left open above and below")
	} else {
		add(r.Above, "piece in the %s of the old "+s.Gain+" left open above")
		add(r.Below, "piece in the %s of the old "+s.Gain+" left open below")
	}
	add(r.Pack, "fill the old "+s.Gain+" up by %s under the new plate")
	if r.Off {
		do = append(do, "plug the old screw holes with the same timber, glued, before the new ones are bored")
	}
	return strings.Join(do, "; ")
}

// under says how the leaf stands while its hinges are screwed.
func (h *Hang) under(s *words.Speaker) string {
	a, b := h.Under[0], h.Under[1]
	switch {
	case a <= 0 || b <= 0:
		return "The foot does not clear the floor there: trim it before the leaf is hung."
	case mark(s, a) == mark(s, b):
		return "Hang the leaf on packers of " + mark(s, a) + " under its foot."
	}
	return "Hang the leaf on packers of " + mark(s, a) + " under the hanging end of its foot and " + mark(s, b) + " under the closing end."
}

// lock says what the lock leaves, and where its keep goes.
func (h *Hang) lock(s *words.Speaker) (lines []string) {
	f := h.Lock
	said := words.Capital(string(h.Kind)) + " lock: "
	var parts []string
	if h.Kind == door.Mortice {
		parts = append(parts, long(s, max(0, math.Round(f.Wall)))+" of the leaf stays on either side of a case "+long(s, caseThick)+" thick")
		if f.Behind > -500 {
			parts = append(parts, long(s, math.Round(f.Behind))+" of the stile behind it")
		}
		if f.Rail >= 0 {
			parts = append(parts, "it takes "+whole(f.Joint*100)+" % of the joint of the "+railName(s, f.Rail))
		}
	}
	parts = append(parts, "between a knob's rim and the stop there are "+long(s, math.Round(f.Hand))+" (a knob "+long(s, 2*knobHalf)+" across, taken as usual)")
	lines = append(lines, said+strings.Join(parts, "; ")+".")
	for _, c := range f.Cares {
		lines = append(lines, "Mind: "+lockCare(s, c))
	}
	if k := h.Keep; k != nil {
		at := "The " + s.Keep + " belongs " + long(s, math.Round(k.Height)) + " up the latch jamb"
		switch {
		case k.Up > 0.05:
			at += ", " + tenth(s, k.Up) + " higher than it was"
		case k.Up < -0.05:
			at += ", " + tenth(s, -k.Up) + " lower than it was"
		}
		lines = append(lines, fmt.Sprintf("%s; a bolt that goes out %s (taken as usual) reaches %s into it.", at, long(s, h.Throw), tenth(s, max(0, k.In))))
		for _, c := range k.Cares {
			lines = append(lines, "Mind: "+lockCare(s, c))
		}
	}
	return lines
}

func lockCare(s *words.Speaker, c timber.LockCare) string {
	switch c {
	case timber.ThinLeaf:
		return "the leaf is thinner than is usual for such a lock (Construction Superintendence s. 163)."
	case timber.ThinWall:
		return "too little of the leaf is left beside the case: a thinner case, or a rim lock."
	case timber.PastStile:
		return "the case comes out of the stile or nearly: a shorter case, or a place beside a rail."
	case timber.CutsTenon:
		return "it takes half the joint of the rail or more: set it lower or higher, or take a rim lock."
	case timber.KnobAtStop:
		return "there is little room for knuckles between knob and stop, where 25 mm is wanted (common practice): a greater backset, or a lever."
	case timber.KeepOff:
		return "the bolt misses the " + s.Keep + " as it stands: move it, piece in what its old place leaves open and plug the old screw holes."
	case timber.BoltShort:
		return "the gap is so wide that less than half the bolt goes home: pack the " + s.Keep + " out, or close the gap."
	}
	return string(c) + "."
}
