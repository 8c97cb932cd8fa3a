package game

import (
	"strconv"

	"leafwright/game/measure"
	"leafwright/geom/door"
	"leafwright/geom/survey"
)

// readings shows every reading as a group folded away, of the fields its kind has.
func (fm Form) readings(s *Section, f *field, j *Job) {
	if !j.IsSurveyed() {
		s.Help = "This door's shapes were given by hand. Measured anew, they come from readings alone."
		s.Adds = append(s.Adds, Action{readingsPath, "Measure this door"})
	} else if len(j.Readings) < int(f.count.Hi) {
		s.Adds = append(s.Adds, Action{readingsPath, "Add a reading"})
	}
	for i := range j.Readings {
		r := &j.Readings[i]
		g := Group{Title: f.item(j, i), Remove: readingsPath + index(i), Fold: true, Now: fm.readNow(r)}
		for _, p := range f.parts {
			if p.shown != nil && !p.shown(j) {
				continue
			}
			if c := fm.readingField(Field{Path: join(g.Remove, p.name), Label: p.label, Help: p.help}, p, j, i, r); c.Path != "" {
				g.Fields = append(g.Fields, c)
			}
		}
		s.Groups = append(s.Groups, g)
	}
}

// readNow says what a reading read, and whether it has no say.
func (fm Form) readNow(r *Reading) string {
	said := "noted"
	if spec := survey.SpecOf(r.Kind); spec == nil || spec.Needs&survey.NoValue == 0 {
		if !given(r.Value) {
			return "not read yet"
		}
		if said = ShowTyped(r.Value, fm.Units); said[len(said)-1] <= '9' && said[len(said)-1] >= '0' {
			said += " mm"
		}
	}
	if r.Off {
		said += ", left out"
	}
	return said
}

func lowered(label string) string { return string(label[0]|0x20) + label[1:] }

// readingField gives one field of a reading; one without a path where the reading's kind
// has no use for it.
func (fm Form) readingField(c Field, p *field, j *Job, i int, r *Reading) Field {
	spec := survey.SpecOf(r.Kind)
	if spec == nil {
		spec = &survey.Spec{}
	}
	for _, part := range readingParts {
		if part.name != p.name {
			continue
		}
		if spec.Needs&part.need == 0 {
			return Field{}
		}
		if part.need != survey.NeedAngle { // the group's title says it
			c.Help = ""
		}
	}
	if p.counts != nil && !p.counts(j, i) {
		return Field{}
	}
	v := p.at(j, i)
	c.Value = v.show(fm.Units)
	switch v := v.(type) {
	case verbatim:
		c.Kind, c.Unit = Length, fm.Units.String()
		allow := spec.Place
		switch p.name {
		case "value":
			if spec.Needs&survey.NoValue != 0 {
				return Field{}
			}
			allow = spec.Allowed
		case "sigma":
			allow = survey.SigmaRange
		}
		c.Min, c.Max = allow.Lo, allow.Hi
	case degrees:
		return fm.degrees(c, v, p.limits)
	case whole:
		c.Kind, c.Choices = Pick, hingeChoices(p.limits)
		if p.name == "after" {
			c.Choices = afterChoices(len(j.Made))
		}
		if p.name == "rail" {
			c.Choices[0].Label = "1, the bottom one"
		}
	case truth:
		c.Kind = Flag
	case line:
		c.Kind = Line
	case chooser:
		c.Kind, c.Choices = Pick, v.options()
		if p.name == "side" {
			c.Choices = sideChoices(spec)
		}
	}
	return c
}

// hingeChoices names the hinges by number, 0 for all of them where that is allowed.
func hingeChoices(allow door.Range) (out []Choice) {
	for n := int(allow.Lo); n <= int(allow.Hi); n++ {
		c := Choice{strconv.Itoa(n), strconv.Itoa(n)}
		switch n {
		case 0:
			c.Label = "all"
		case 1:
			c.Label = "1, the top one"
		}
		out = append(out, c)
	}
	return out
}

// afterChoices are the states of the door a reading may have been taken in.
func afterChoices(made int) []Choice {
	out := []Choice{{"0", "0, as found"}}
	for n := 1; n <= made; n++ {
		out = append(out, Choice{strconv.Itoa(n), strconv.Itoa(n)})
	}
	return out
}

// retype goes along with a change of a reading's kind: it drops the places the new
// kind has no use for, gives those it lacks, and puts the reading off when what was
// read cannot be of that kind.
func retype(old, j *Job) {
	for i := range min(len(old.Readings), len(j.Readings)) {
		r := &j.Readings[i]
		spec := survey.SpecOf(r.Kind)
		if r.Kind == old.Readings[i].Kind || spec == nil {
			continue
		}
		fresh := j.fresh(r.Kind, measure.MM)
		if !hasSide(spec, r.Side) {
			r.Side = fresh.Side
		}
		if spec.Needs&survey.NeedHinge == 0 || r.Hinge == 0 {
			r.Hinge = fresh.Hinge
		}
		if spec.Needs&survey.NeedRail == 0 || r.Rail == 0 {
			r.Rail = fresh.Rail
		}
		if spec.Needs&survey.NeedAt == 0 || !given(r.At) || spec.Needs&survey.NeedSpan != 0 {
			r.At = fresh.At
		}
		if spec.Needs&survey.NeedSpan == 0 || !given(r.From) {
			r.From, r.To, r.At = fresh.From, fresh.To, fresh.At
		}
		if spec.Needs&survey.NeedAngle == 0 {
			r.Angle = 0
		}
		if !isHung(r.Kind) || !isHung(old.Readings[i].Kind) {
			r.After = fresh.After
		}
		if _, bad := spec.Allowed.Fault("", r.Value.MM, true); bad || spec.Needs&survey.NoValue != 0 {
			r.Value = measure.Length{}
		}
		r.Off = r.Off || !given(r.Value) && spec.Needs&survey.NoValue == 0
	}
}

func hasSide(spec *survey.Spec, s survey.Side) bool {
	for _, x := range spec.Sides {
		if x == s {
			return true
		}
	}
	return s == "" && len(spec.Sides) == 0
}

// reread goes along with a change of what was read: a reading that had no value gets
// its say with the first, and one whose value is wiped out is put off.
func reread(old, j *Job) {
	for i := range min(len(old.Readings), len(j.Readings)) {
		r, was := &j.Readings[i], given(old.Readings[i].Value)
		switch is := given(r.Value); {
		case was && !is:
			r.Off = true
		case !was && is && j.IsSurveyed():
			r.Off = false
		}
	}
}
