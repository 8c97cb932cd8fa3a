//go:build js

package panel

import (
	"math"
	"strconv"
	"strings"
	"syscall/js"

	"leafwright/game/bench"
	"leafwright/game/measure"
	"leafwright/game/words"
	"leafwright/geom/fit"
)

// controls are the hands on the drawing that are not on it: everything the
// pointer can do there can be done here with keys.
type controls struct {
	p *Panel

	pictures               map[bench.Show]js.Value
	swingRein, factorRein  rein
	swing, factor, section slider
	edge, place            js.Value
	reading                js.Value
	lens                   js.Value
	unit                   map[bool]js.Value
	words                  map[words.Region]js.Value
	theme                  map[string]js.Value
	look                   bench.Look // as the buttons show it
	edges                  string     // the sides' names as they stand in the choice
}

// slider is a range with its value beside it as a field to type in.
type slider struct {
	thumb, field, unit js.Value
	now                *slid // as it stands
}

// slid is where a thumb stands, between what, and how it is said.
type slid struct {
	lo, hi, value float64
	spoken        string
}

// slide makes a slider in a row of its own. set gets the value in the slider's own
// measure; read understands what is typed.
func (c *controls) slide(id, label, unit string, step string, read func(string) (float64, bool), set func(float64)) (slider, js.Value) {
	s := slider{
		thumb: el("input", attrs{"type", "range", "id", id, "step", step}),
		field: el("input", attrs{"type", "text", "inputmode", "decimal", "id", id + "-number", "aria-label", label + ", as a number", "autocomplete", "off", "spellcheck", "false"}),
		unit:  el("span", attrs{"class", "unit", "text", unit, "aria-hidden", "true"}),
		now:   &slid{},
	}
	c.drawn(s, set)
	take := func(js.Value) {
		x, good := read(s.field.Get("value").String())
		invalid(s.field, !good)
		if good {
			set(x)
			c.p.changed()
		}
	}
	on(s.field, "input", take)
	on(s.field, "blur", func(js.Value) {
		invalid(s.field, false)
		c.show()
	})
	return s, el("div", attrs{"class", "slide tall"},
		el("label", attrs{"for", id, "text", label}),
		el("span", attrs{"class", "box has-unit"}, s.field, s.unit), s.thumb)
}

// drawn sets what the thumb is drawn to.
func (c *controls) drawn(s slider, set func(float64)) {
	on(s.thumb, "input", func(js.Value) {
		if x, good := plain(s.thumb.Get("value").String()); good {
			s.now.spoken = "" // it stands elsewhere now
			set(x)
			c.p.changed()
		}
	})
}

// slideTo puts the thumb at a value between two ends.
func (s slider) slideTo(lo, hi, value float64, spoken string) {
	now := slid{lo, hi, value, spoken}
	if now == *s.now {
		return
	}
	*s.now = now
	s.thumb.Call("setAttribute", "min", strconv.FormatFloat(lo, 'f', -1, 64))
	s.thumb.Call("setAttribute", "max", strconv.FormatFloat(hi, 'f', -1, 64))
	setValue(s.thumb, strconv.FormatFloat(value, 'f', -1, 64))
	s.thumb.Call("setAttribute", "aria-valuetext", spoken)
}

// show puts thumb and field at a value.
func (s slider) show(lo, hi, value float64, text, spoken string) {
	s.slideTo(lo, hi, value, spoken)
	if !focused(s.field) {
		setValue(s.field, text)
	}
}

// rein is a slider beside the drawing, within reach of the thumb that holds the phone.
type rein struct {
	box, says js.Value
	slider    slider
}

func (c *controls) rein(id, label, step string, set func(float64)) rein {
	r := rein{says: el("output", attrs{"for", id})}
	r.slider = slider{thumb: el("input", attrs{"type", "range", "id", id, "step", step}), now: &slid{}}
	c.drawn(r.slider, set)
	r.box = el("div", attrs{"class", "slide"}, el("label", attrs{"for", id, "text", label}), r.slider.thumb, r.says)
	return r
}

func (r rein) show(lo, hi, value float64, says, spoken string, visible bool) {
	r.slider.slideTo(lo, hi, value, spoken)
	setText(r.says, says)
	show(r.box, visible)
}

// plain reads a number without a unit.
func plain(text string) (float64, bool) {
	x, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	return x, err == nil && !math.IsNaN(x) && !math.IsInf(x, 0)
}

func focused(e js.Value) bool { return doc.Get("activeElement").Equal(e) }

func invalid(field js.Value, is bool) {
	if is {
		field.Call("setAttribute", "aria-invalid", "true")
	} else {
		field.Call("removeAttribute", "aria-invalid")
	}
}

// choose makes radio buttons in a row, one of which is on.
func choose[T comparable](p *Panel, name, label string, options []T, text func(T) string, set func(T)) (map[T]js.Value, js.Value) {
	texts := make([]string, len(options))
	for i, o := range options {
		texts[i] = text(o)
	}
	all, box := radios(p, name, label, texts, func(i int) { set(options[i]) })
	buttons := map[T]js.Value{}
	for i, o := range options {
		buttons[o] = all[i]
	}
	return buttons, box
}

// radios makes radio buttons with these texts; set gets the place of the one pressed.
func radios(p *Panel, name, label string, texts []string, set func(i int)) (buttons []js.Value, box js.Value) {
	box = el("div", attrs{"class", "choice", "role", "radiogroup", "aria-label", label})
	for i, text := range texts {
		in := el("input", attrs{"type", "radio", "name", name, "id", name + "-" + strconv.Itoa(i)})
		on(in, "change", func(js.Value) {
			set(i)
			p.changed()
		})
		box.Call("append", el("label", nil, in, el("span", attrs{"text", text})))
		buttons = append(buttons, in)
	}
	return buttons, box
}

func (c *controls) init(p *Panel) {
	c.p = p
	b := p.bench
	var pictures, swing, factor, section js.Value
	c.pictures, pictures = choose(p, "show", "Pictures", []bench.Show{bench.Front, bench.Plan, bench.Both},
		func(s bench.Show) string {
			return map[bench.Show]string{bench.Front: "Front", bench.Plan: "Plan", bench.Both: "Both"}[s]
		}, b.SetShow)
	length := func(text string) (float64, bool) {
		l, err := measure.Read(text, b.Unit())
		return l.MM, err == nil
	}
	c.swing, swing = c.slide("swing", "Swing", "°", "0.1", plain, b.SetSwing)
	c.factor, factor = c.slide("factor", "Gaps enlarged", "times", "1", plain, b.SetFactor)
	c.section, section = c.slide("section", "Plan cut at", "mm", "1", length, b.SetSection)
	c.swingRein = c.rein("swing-rein", "Swing", "0.1", b.SetSwing)
	c.factorRein = c.rein("factor-rein", "Gaps", "1", b.SetFactor)
	fill(byID("reins"), pictures, c.swingRein.box, c.factorRein.box)

	c.edge = el("select", attrs{"id", "edge"})
	for e := range fit.Edges {
		c.edge.Call("append", el("option", attrs{"value", strconv.Itoa(int(e))}))
	}
	c.place = el("input", attrs{"type", "text", "inputmode", "decimal", "id", "place", "autocomplete", "off", "spellcheck", "false", "aria-describedby", "reading"})
	c.reading = el("p", attrs{"id", "reading", "role", "status"})
	c.lens = el("input", attrs{"type", "checkbox", "id", "lens"})
	read := func(js.Value) {
		r := b.Look().Reading
		e, _ := strconv.Atoi(c.edge.Get("value").String())
		if fit.Edge(e) != r.Edge {
			lo, hi := b.ReadingRange(fit.Edge(e))
			r.Edge, r.Place = fit.Edge(e), lo+(hi-lo)/2
		} else if at, good := length(c.place.Get("value").String()); good {
			r.Place = at
			invalid(c.place, false)
		} else {
			invalid(c.place, true)
			return
		}
		r.On = true
		b.SetReading(r)
		p.changed()
	}
	on(c.edge, "change", read)
	on(c.place, "input", read)
	on(c.place, "blur", func(js.Value) {
		invalid(c.place, false)
		c.show()
	})
	on(c.lens, "change", func(js.Value) {
		r := b.Look().Reading
		r.On = c.lens.Get("checked").Bool()
		b.SetReading(r)
		p.changed()
	})
	fill(byID("drawing"), swing, factor, section,
		el("fieldset", attrs{"class", "group"},
			el("legend", attrs{"text", "Read the gap at a place"}),
			el("div", attrs{"class", "pair"},
				el("div", attrs{"class", "field"}, el("label", attrs{"for", "edge", "text", "Side"}), el("span", attrs{"class", "box"}, c.edge)),
				el("div", attrs{"class", "field"}, el("label", attrs{"for", "place", "id", "place-label"}), el("span", attrs{"class", "box has-unit"}, c.place, el("span", attrs{"class", "unit", "id", "place-unit", "aria-hidden", "true"})))),
			c.reading,
			el("label", attrs{"class", "check"}, c.lens, el("span", attrs{"text", "Show the place in the drawing, true to scale"}))))
	c.settings()
}

// settings are how the page speaks and looks.
func (c *controls) settings() {
	p, b := c.p, c.p.bench
	var unit, region, theme js.Value
	c.unit, unit = choose(p, "unit", "Lengths in", []bool{false, true},
		func(inches bool) string { return map[bool]string{false: "mm", true: "feet and inches"}[inches] }, b.SetInches)
	c.words, region = choose(p, "words", "Trade words", words.Regions, func(r words.Region) string { return string(r) }, b.SetWords)
	c.theme, theme = choose(p, "theme", "Light or dark", []string{"", "light", "dark"},
		func(t string) string {
			return map[string]string{"": "As the device", "light": "Light", "dark": "Dark"}[t]
		}, setTheme)
	line := func(label string, box js.Value) js.Value {
		return el("div", attrs{"class", "field"}, el("span", attrs{"class", "label", "text", label, "aria-hidden", "true"}), box)
	}
	fill(byID("settings"), line("Lengths in", unit), line("Trade words", region), line("Light or dark", theme))
	if button, ok := c.theme[Theme()]; ok {
		button.Set("checked", true)
	}
}

func (c *controls) show() {
	b := c.p.bench
	look := b.Look()
	if look != c.look {
		c.look = look
		doc.Get("documentElement").Get("dataset").Set("show", string(look.Show))
		for s, button := range c.pictures {
			button.Set("checked", s == look.Show)
		}
		for inches, button := range c.unit {
			button.Set("checked", inches == look.Inches)
		}
		for r, button := range c.words {
			button.Set("checked", r == look.Words)
		}
	}
	lo, hi := b.SwingRange()
	degrees := strconv.FormatFloat(b.Swing(), 'f', 1, 64)
	lo = math.Floor(lo*10) / 10
	c.swing.show(lo, hi, b.Swing(), degrees, degrees+" degrees")
	c.swingRein.show(lo, hi, b.Swing(), strconv.FormatFloat(b.Swing(), 'f', 0, 64)+"°", degrees+" degrees", look.Show != bench.Front)
	times := strconv.FormatFloat(b.Factor(), 'f', -1, 64)
	c.factor.show(1, bench.MostFactor, b.Factor(), times, times+" times true size")
	c.factorRein.show(1, bench.MostFactor, b.Factor(), "× "+times, times+" times true size", look.Show == bench.Front || look.Show == bench.Both && !Narrow())
	lo, hi = b.SectionRange()
	unit := b.Unit()
	c.section.show(lo, hi, math.Round(b.Section()), measure.Format(b.Section(), unit), b.Length(b.Section()))
	setText(c.section.unit, unit.String())
	setText(byID("place-unit"), unit.String())

	r := look.Reading
	names, all := [fit.Edges]string{}, ""
	for e := range fit.Edges {
		names[e] = words.Capital(b.EdgeName(e))
		all += names[e]
	}
	if all != c.edges {
		c.edges = all
		options := c.edge.Get("options")
		for e, name := range names {
			setText(options.Index(e), name)
		}
	}
	setValue(c.edge, strconv.Itoa(int(r.Edge)))
	label := "Across from the hinges"
	if r.Edge.Upright() {
		label = "Up from the floor"
	}
	setText(byID("place-label"), label)
	if !focused(c.place) {
		setValue(c.place, measure.Format(r.Place, unit))
	}
	setText(c.reading, b.ReadOff())
	c.lens.Set("checked", r.On)
}
