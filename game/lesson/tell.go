package lesson

import (
	"regexp"
	"strconv"
	"strings"

	"leafwright/game/words"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fault"
	"leafwright/geom/survey"
)

// Teller says what is seen in a lesson, in plain words: by eye no more than an eye
// sees, by an instrument to its own steps.
type Teller struct {
	*words.Speaker
	width, height float64 // of the leaf, so that places are near the top or the foot
	kinds         []fault.Kind
}

// TellerOf gives a teller for a lesson; the speaker's hinges and rails are set to those
// of its door.
func TellerOf(l *Lesson, s *words.Speaker) *Teller {
	own := *s
	own.Hinges, own.Rails = len(l.Job.Door.Hinges), nil
	for _, r := range l.Job.Anatomy.Rails {
		own.Rails = append(own.Rails, r.Name)
	}
	return &Teller{&own, l.Job.Door.Leaf.Width, l.Job.LeafHeight, l.Kinds()}
}

// lengths are those in a text written in millimetres: a number, or two of a span.
var lengths = regexp.MustCompile(`(?:(\d+(?:\.\d+)?)( to | and | or ))?(\d+(?:\.\d+)?) mm\b`)

// Text gives a text of a lesson's or an explanation's file, whose lengths are in
// millimetres, with its lengths in the person's unit.
func (t *Teller) Text(text string) string {
	if t.Length == nil {
		return text
	}
	return lengths.ReplaceAllStringFunc(text, func(said string) string {
		m := lengths.FindStringSubmatch(said)
		length := func(digits string) string {
			mm, _ := strconv.ParseFloat(digits, 64)
			return t.Length(mm)
		}
		if m[1] == "" {
			return length(m[3])
		}
		return length(m[1]) + m[2] + length(m[3])
	})
}

// Fault is what a fault is called.
func (t *Teller) Fault(k fault.Kind) string {
	if name, ours := names[k]; ours {
		return t.in(name)
	}
	if s := fault.SpecOf(k); s != nil {
		return s.Name
	}
	return string(k)
}

// faults lists names, with and before the last.
func (t *Teller) faults(kinds []fault.Kind) string {
	names := make([]string, len(kinds))
	for i, k := range kinds {
		names[i] = t.Fault(k)
	}
	return words.Listed(names)
}

// Symptom says what a person notices, as a sentence.
func (t *Teller) Symptom(s fault.Symptom) string {
	at := t.where(s.Edge, s.Stretch, s.At)
	side := "the " + words.FrameSide(t.Speaker, s.Edge)
	switch s.Kind {
	case fault.SwingsOpen:
		return t.degree(s.Degree, "Let go of ajar, it creeps open by itself.", "Let go of ajar, it swings open by itself.", "It will not stay where it is put: it swings wide open by itself.")
	case fault.SwingsShut:
		return t.degree(s.Degree, "Left open, it creeps shut by itself.", "Left open, it swings shut by itself.", "It will not stay open: it falls shut by itself.")
	case fault.SpringsBack:
		return t.degree(s.Degree, "Near closed it asks for a push, and gives a little when let go.", "Near closed it has to be pushed home, and springs back when let go.", "It has to be forced shut, and springs open at once: the hinges strain.")
	case fault.HitsStop:
		return t.degree(s.Degree, "It touches ", "It meets ", "It knocks against ") + "the stop on the " + words.FrameSide(t.Speaker, s.Edge) + at + " before it is home."
	case fault.LatchMisses:
		return t.degree(s.Degree, "The latch catches only when the leaf is pressed.", "The latch does not catch.", "The latch is nowhere near its "+t.Keep+".")
	case fault.Rattles:
		return t.degree(s.Degree, "Latched, it has a little play.", "Latched, it rattles against its stops.", "Latched, it can be moved to and fro by a good deal.")
	case fault.StandsOff:
		return "Latched, it stands " + t.degree(s.Degree, "a little ", "", "far ") + "off the stop on the " + words.FrameSide(t.Speaker, s.Edge) + at + "."
	case fault.Rubs:
		if s.Edge == door.HingeSide {
			return words.Capital("the "+t.HangingEdge+" presses on ") + side + at + "."
		}
		return t.degree(s.Degree, "It just rubs ", "It rubs ", "It jams against ") + side + at + t.degree(s.Degree, "", "; the paint is polished there", ", and will not go in") + "."
	case fault.RubsSwinging:
		return "It fouls " + side + at + " on the way in, and is clear once it is shut."
	case fault.RubsFloor:
		return t.degree(s.Degree, "It brushes the floor", "It drags on the floor", "It jams on the floor") + " as it opens, at about " +
			strconv.Itoa(int(s.Angle.Degrees()/5+0.5)*5) + "°."
	case fault.Light:
		return t.degree(s.Degree, "The gap at ", "There is a wide gap at ", "There is a gap you could put a finger in at ") + side + at + t.degree(s.Degree, " looks wide", "", "") + "."
	case fault.Hairline:
		return "There is hardly any gap at " + side + at + "."
	case fault.Creaks:
		return words.Capital(t.hinge(s.Hinge)) + " creaks: it is out of line with the others."
	case fault.HingeOpen:
		return "The plates of " + t.hinge(s.Hinge) + " do not come together when the leaf is shut."
	}
	return ""
}

func (t *Teller) degree(d fault.Degree, slight, plain, gross string) string {
	return [...]string{slight, plain, gross}[min(d, fault.Gross)]
}

// hinge names a hinge, 1 the top one.
func (t *Teller) hinge(n int) string {
	return strings.TrimPrefix(t.Thing(survey.Reading{Kind: survey.HingePin, Hinge: n - 1}), "the pin of ")
}

// where says a place by eye, with a space before it.
func (t *Teller) where(e door.Edge, stretch geom.Interval, at float64) string {
	long := t.width
	if e.Upright() {
		long = t.height
	}
	if stretch.Lo < stretch.Hi {
		if stretch.Hi-stretch.Lo > 0.75*long {
			if e.Upright() {
				return ", from top to bottom"
			}
			return ", right across"
		}
		at = (stretch.Lo + stretch.Hi) / 2
	}
	part := min(4, max(0, int(5*at/long)))
	if e.Upright() {
		return [...]string{" near the foot", " below the middle", " about half-way up", " above the middle", " near the top"}[part]
	}
	return [...]string{" at the hinge end", " towards the hinges", " in the middle", " towards the " + t.Latch + " side", " at the " + t.LatchCorner}[part]
}

// Read says what a reading showed, as a sentence.
func (t *Teller) Read(r survey.Reading, took Took) string {
	thing := words.Capital(strings.TrimSuffix(t.Thing(r), "."))
	if took.NoneIn {
		return thing + ": not even the thinnest blade goes in."
	}
	amount := t.Amount(took.Value)
	if took.Value < 0 {
		amount = "minus " + amount
	}
	sign := ""
	if s := words.Sign(r.Kind); s != "" && took.Value != 0 {
		sign = " (" + lower(strings.TrimSuffix(s, ".")) + ")"
	}
	return thing + ": " + amount + sign + "."
}

// Seen says what came of an act, in sentences.
func (t *Teller) Seen(a *Act, s *Seen) (out []string) {
	switch a.Deed {
	case Try:
		for _, x := range s.Symptoms {
			out = append(out, t.Symptom(x))
		}
		if out == nil {
			out = append(out, "It swings freely, stays where it is put, shuts and latches, and its gaps look even.")
		}
	case Read:
		out = append(out, t.Read(a.Reading, s.Took))
	case Name:
		out = append(out, "You say: "+t.faults(a.Faults)+".")
	case Work:
		if s.Step.Why != nil {
			return append(out, t.Move(&a.Move)+": it cannot be done. "+words.Capital(t.Care(s.Step.Why))+".")
		}
		out = append(out, t.Move(&a.Move)+".")
		for i := range s.Step.Done.Cares {
			out = append(out, words.Capital(t.Care(&s.Step.Done.Cares[i]))+".")
		}
	case Ask:
		out = append(out, t.Hint(&s.Hint))
	case Finish:
		out = append(out, "You call it done.")
	case GiveUp:
		out = append(out, "You give it up, and are shown the answer.")
	}
	return out
}
