package sheet

import (
	"slices"
	"strings"
	"unicode"
)

// term is a word of the trade, in the forms it comes in, and what it means in words
// that need no explaining.
type term struct {
	forms   string // small letters, commas between; the first is its head
	meaning string
}

// terms are the words of the trade that a sheet for the client may hold: in the sheet's
// own sentences, or in the names a person gave to the ways to make a door fit. Those
// that differ by region stand here in all their forms.
var terms = []term{
	{"arris,arrises", "the sharp line where two faces of a piece of wood meet"},
	{"backset", "how far the handle is from the door's edge"},
	{"bevel,bevels,bevelled,bevelling", "an edge cut a little off square, so that it clears the frame as the door opens"},
	{"bind,binds,binding", "to touch the frame where there ought to be a gap"},
	{"closing edge,lock edge", "the edge of the door at the handle side"},
	{"dowel,dowels,dowelled", "a round wooden peg that holds two pieces together"},
	{"hanging edge,hinge edge", "the edge of the door that the hinges are on"},
	{"ease,eased,easing", "to take a sharp edge off"},
	{"gain,gains,recess,recesses,check-out,check-outs,check out", "the shallow pocket in the wood that a hinge sits in"},
	{"gauge", "a tool that marks a line at an even distance from an edge"},
	{"gape,gapes", "to stand farther from the frame than it ought to"},
	{"haunch,haunches", "a short step beside the peg of a joint"},
	{"head", "the top of the frame"},
	{"hinge-bound", "the door presses on the frame at its hinges and springs back open"},
	{"jamb,jambs", "an upright side of the frame"},
	{"keep,striker,strike", "the metal plate in the frame that holds the door shut"},
	{"kerf", "the wood a saw turns to dust"},
	{"knuckle,knuckles", "the round part of a hinge with the pin in it, on the side the door opens towards"},
	{"latches,latching", "staying shut by itself until the handle is turned"},
	{"latch", "the part that holds the door shut until the handle is turned"},
	{"latch corner,lock corner", "the corner at the handle side"},
	{"latch jamb,lock jamb", "the upright side of the frame beside the handle"},
	{"latch side,lock side", "the side of the door where the handle is"},
	{"leaf", "the door itself, without its frame"},
	{"let in,checked in", "set into the wood, so that it lies level with it"},
	{"lining,linings", "the boards of the frame"},
	{"lock", "here also the part that holds the door shut until the handle is turned"},
	{"mortice,mortices,mortise", "a slot cut into the wood"},
	{"muntin,muntins", "an upright bar inside the door, between panels"},
	{"offcut,offcuts", "the piece a saw leaves over"},
	{"pack,packed,shimmed", "to put thin card or wood behind something, to bring it out a little"},
	{"packer,packers,packing,shim,shims", "thin card or wood put behind a hinge or a board, to bring it out a little"},
	{"plane,planes,planed,planing", "to take thin shavings off with a hand tool"},
	{"plumb", "exactly upright"},
	{"proud", "standing out a little"},
	{"rail,rails", "a cross-piece of the door"},
	{"rebate,rabbet,rebates,rabbets", "the step in the frame that the door shuts into"},
	{"restop", "to move the strip on the frame that the door shuts against"},
	{"scribe,scribes,scribed,scribing", "to mark and cut so that the edge follows a crooked line"},
	{"sink,sunk,sinking", "to set deeper into the wood"},
	{"splice,splices,spliced,splicing", "to glue new wood on"},
	{"stile,stiles", "an upright side of the door"},
	{"stop,stops", "the strip on the frame that the door shuts against"},
	{"stop-bound", "held open by the strip on the frame that it shuts against"},
	{"taper,tapers,tapered,tapering", "getting thinner from one end to the other"},
	{"tenon,tenons", "the tongue of a joint, that goes into a slot"},
	{"threshold,thresholds,sill", "the raised strip on the floor under the door"},
	{"undercut", "to saw the bottom so that the floor covering goes under"},
	{"wedge,wedges", "a thin slip of wood that holds a joint tight"},
	{"in wind,winding", "twisted"},
}

// explained gives the terms that texts hold, each with the forms met as its head.
func explained(texts []string) (out [][2]string) {
	at := map[string]int{} // by form
	for i := range terms {
		for _, form := range strings.Split(terms[i].forms, ",") {
			at[form] = i
		}
	}
	met := make([][]string, len(terms))
	meet := func(form string) bool {
		k, ok := at[form]
		if ok && !slices.Contains(met[k], form) {
			met[k] = append(met[k], form)
		}
		return ok
	}
	for _, text := range texts {
		all := wordsOf(text)
		for i := 0; i < len(all); i++ {
			if i+1 < len(all) && meet(all[i]+" "+all[i+1]) {
				i++
				continue
			}
			meet(all[i])
		}
	}
	for i, forms := range met {
		if len(forms) > 0 {
			out = append(out, [2]string{strings.Join(forms, ", "), terms[i].meaning})
		}
	}
	return out
}

// wordsOf cuts a text into words of small letters; a hyphen between letters belongs to
// its word.
func wordsOf(text string) []string {
	r := []rune(strings.ToLower(text))
	inside := func(i int) bool {
		return i >= 0 && i < len(r) && (unicode.IsLetter(r[i]) || unicode.IsDigit(r[i]))
	}
	var out []string
	from := -1
	for i := 0; i <= len(r); i++ {
		in := inside(i) || i < len(r) && r[i] == '-' && inside(i-1) && inside(i+1)
		if in && from < 0 {
			from = i
		}
		if !in && from >= 0 {
			out = append(out, string(r[from:i]))
			from = -1
		}
	}
	return out
}
