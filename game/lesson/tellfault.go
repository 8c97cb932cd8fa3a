package lesson

import (
	"strings"

	"leafwright/game/words"
	"leafwright/geom/fault"
	"leafwright/geom/trim"
)

// lore is what is said of a kind of fault: a question that leads to it, where to look,
// and how it shows. Common practice, no published source.
type lore struct{ ask, look, why string }

var lores = map[fault.Kind]lore{
	fault.JambLeans: {
		"Is the gap at the {latch side} the same at the top as at the foot? What if it is not the leaf that is out?",
		"Hold a level to the {latch jamb}, over most of its height.",
		"The {latch jamb} leans into the opening at one end, so the leaf rubs at that end only, and a straight leaf shows a gap that tapers.",
	},
	fault.JambSprung: {
		"Does it rub at one end of the side, or in between?",
		"Lay a straightedge on the jamb beside the rub, and see whether it rocks.",
		"A jamb bowed into the opening rubs where the bow is and is clear at both ends.",
	},
	fault.HeadFalls: {
		"Is the gap over the top the same at both corners?",
		"Hold a level under the head.",
		"The head is lower at one end, so the top rubs at that corner. The sides are none the worse for it.",
	},
	fault.FrameWinds: {
		"Does the leaf meet its stop everywhere at once? If not, is it the leaf that is twisted, or what it shuts against?",
		"Lay winding sticks across the frame, at head and foot; then across the leaf.",
		"The two jambs are not in one plane, so a flat leaf touches its stop at one end and stands off at the other.",
	},
	fault.FloorRises: {
		"It is clear when shut. Where does it begin to drag, and what changed between there and closed?",
		"Hold a level from the foot of the hinge jamb out to where the closing corner drags.",
		"The floor rises under the swing, so the foot drags although it clears the floor when shut.",
	},
	fault.EdgeSquare: {
		"It is clear once it is shut. Which corner of the edge comes nearest to the jamb on the way in?",
		"See how far the {closing edge}'s inner corner stands back from the outer one.",
		"On a thick leaf a square {closing edge} swings through a wider circle at its inner corner than at its outer one, and fouls the jamb on the way in.",
	},
	fault.LeafWinds: {
		"Does the leaf meet its stop everywhere at once? If not, is it the leaf that is twisted, or what it shuts against?",
		"Lay winding sticks across the leaf, near top and foot.",
		"The leaf is twisted: one corner meets the stop before the latch is home, and the other stands off.",
	},
	fault.LeafWide: {
		"It rubs on the {latch side} over its height. What might make a leaf too wide, and is it thicker too?",
		"Measure the leaf's width, and the opening's at the same height.",
		"The leaf was made too wide for its opening: the {latch side} is tight all the way up, as much at the top as at the foot.",
	},
	fault.LeafTall: {
		"Is it tight at one of its ends, all across?",
		"Put a feeler in at that end, in the middle.",
		"The leaf is too tall: it is tight right across one end, and even.",
	},
	fault.LeafShort: {
		"Where is there light to be seen?",
		"Measure the gap over the top.",
		"The leaf is too short: the gap over the top is wide right across. No planing helps; timber has to be put on, or the leaf raised if the floor side allows.",
	},
	fault.LeafSwollen: {
		"It rubs on the {latch side} over its height. Was it always so, and is it only the width that has grown?",
		"Measure the leaf's thickness too.",
		"Timber that takes up damp grows across its grain: the leaf is wider and thicker than it was made, but no taller.",
	},
	fault.EdgeUneven: {
		"Follow the {latch side} with your eye. Is the gap's edge a straight line?",
		"Put a feeler in at the {latch side}, in the middle and then at both ends.",
		"The {closing edge} was planed hollow: the gap is wide in one place and as it should be on both sides of it.",
	},
	fault.PaintThick: {
		"Which sides are tight? Is any of them as it should be?",
		"Put a feeler in at the hinge side, between the hinges.",
		"Coat upon coat has closed the gaps on every side at once, the hinge side too.",
	},
	fault.GainsDeep: {
		"What does the leaf do in your hand just before it is shut? Which side pushes back?",
		"Put a feeler in at the hinge side, beside the top hinge; then look at the {latch side}.",
		"The hinges are {let in} too deep: the {hanging edge} presses on the jamb before the leaf is shut, and it springs open. The room is all on the {latch side}.",
	},
	fault.ScrewsProud: {
		"What does the leaf do in your hand just before it is shut? Do the hinges fold right up?",
		"Look into the hinges as the leaf shuts, and put a feeler in at the hinge side beside the one whose plates stay open.",
		"Screw heads that stand proud meet before the plates do: the hinge cannot fold up, holds the leaf off there, and springs it back.",
	},
	fault.HingeSags: {
		"Compare the gap at the top of the hinge side with the one at the foot, and the {latch side} likewise. Which way has the leaf tipped?",
		"Put a feeler in at the hinge side beside the top hinge, and compare it with the bottom one.",
		"The top hinge has drawn off its seat: the leaf tips, its closing corner goes down and out, and rubs high up on the {latch side} or on the floor. It is not the leaf that is too big.",
	},
	fault.PinsLean: {
		"Leave it ajar and let go. What does it do by itself, and what must be out of plumb for that?",
		"Measure how far the pins stand out of the frame, at the top hinge and at the bottom one.",
		"One pin stands farther out than the other, so the leaf swings downhill by itself.",
	},
	fault.StopNear: {
		"What holds the leaf before its latch is home?",
		"Put a feeler between leaf and stop, on the {latch side}.",
		"The stop stands too far forward: the leaf meets it before the latch is home. Neither leaf nor frame need be out of true for that.",
	},
	fault.KeepOut: {
		"With the latch home, is the leaf held where it belongs?",
		"Latch it, and put a feeler between leaf and stop beside the latch.",
		"The {keep} holds the latch too far in or too far out: the leaf rattles, or has to be pressed before it catches. The gaps have nothing to do with it.",
	},
}

// names are what faults are called where the trade's words in them differ by region; the
// others are called as their kinds are.
var names = map[fault.Kind]string{
	fault.JambLeans:  "{latch jamb} out of plumb",
	fault.EdgeSquare: "square {closing edge} on a thick leaf",
	fault.EdgeUneven: "{closing edge} planed unevenly",
	fault.GainsDeep:  "hinge-bound: hinges {let in} too deep",
	fault.KeepOut:    "{keep} out of line",
}

// in puts the region's words into a text.
func (t *Teller) in(text string) string {
	return strings.NewReplacer("{latch side}", t.LatchSide, "{latch jamb}", t.LatchJamb, "{closing edge}", t.ClosingEdge,
		"{hanging edge}", t.HangingEdge, "{let in}", t.LetIn, "{keep}", t.Keep).Replace(text)
}

// Why says how a fault comes about and shows.
func (t *Teller) Why(k fault.Kind) string { return t.in(lores[k].why) }

// Hint says a hint.
func (t *Teller) Hint(h *Hint) string {
	switch h.Matter {
	case Written:
		return t.Text(h.Text)
	case TryFirst:
		return "Begin by trying it: swing it, shut it, let go of it half open. What does it do?"
	case AllGood:
		return "It hangs as wanted. Call it done."
	case Spoilt:
		return "From here there is no way that puts it right. Give it up and see what would have done; another door costs nothing."
	case Strike:
		return [...]string{
			"You have named what there is, and one thing more. What would that show, and do you see it?",
			"Look again for signs of this: " + t.Fault(h.Fault) + ".",
			"There is no such fault here: " + t.Fault(h.Fault) + ". Strike it out.",
		}[h.Rung]
	case Diagnose:
		l := lores[h.Fault]
		switch h.Rung {
		case Question:
			return t.in(l.ask)
		case Look:
			return t.in(l.look)
		}
		return "It is this: " + t.Fault(h.Fault) + ". " + t.in(l.why)
	}
	return t.cure(h)
}

// cure says a hint about the next move.
func (t *Teller) cure(h *Hint) string {
	spec := trim.SpecOf(h.Move.Kind)
	switch h.Rung {
	case Question:
		switch spec.Trade {
		case trim.TheHinges:
			return "Must timber come off at all? What could be done at the hinges?"
		case trim.TheFrame:
			return "Is it the leaf that wants work, or what it shuts against?"
		}
		if h.Move.Kind == trim.Splice || h.Move.Kind == trim.Reuse {
			return "Where is there too little of the leaf, rather than too much?"
		}
		return "On which edge would the least timber do the most?"
	case Look:
		switch {
		case spec.Trade == trim.TheHinges && h.Move.Hinge > 0:
			return "It is done at " + t.hinge(h.Move.Hinge) + ". What would it move, and which way?"
		case spec.Trade == trim.TheHinges:
			return "It is done at the hinges, all of them alike. What would it move, and which way?"
		case spec.Trade == trim.TheFrame:
			return "It is done to the frame, at the " + words.FrameSide(t.Speaker, h.Move.Edge) + "."
		}
		return "It is done to the leaf, at its " + words.LeafEdge(t.Speaker, h.Move.Edge) + "."
	}
	return t.remedy(h.Move) + "."
}

// remedy says a move that cures, with what it is on site where the move goes by another
// name: a hinge off its seat is a packer too many to the model, and one whose screws
// stand proud is too thick a hinge.
func (t *Teller) remedy(m *trim.Move) string {
	said := t.Move(m)
	if on, ours := t.onSite(m); ours {
		return on + ". The move for that: " + lower(said)
	}
	return said
}

// onSite says what a move is on site, where it is done under another name here.
func (t *Teller) onSite(m *trim.Move) (said string, ours bool) {
	switch {
	case m.Kind == trim.Pack && m.First < 0 && m.On == trim.OnJamb && hasKind(t.kinds, fault.HingeSags):
		return "Draw " + t.hinge(m.Hinge) + " home on its seat, with longer screws, or take out what is packed behind it", true
	case m.Kind == trim.Rehinge && hasKind(t.kinds, fault.ScrewsProud):
		return "Sink the screw heads of " + t.hinge(m.Hinge) + ", so that it folds right up", true
	}
	return "", false
}
