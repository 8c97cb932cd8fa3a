//go:build js

package panel

import (
	"slices"
	"syscall/js"

	"leafwright/game/words"
	"leafwright/geom/judge"
)

// lines is a list of findings in the document. Only what changed is written anew: to
// make elements costs more than all the rest of a change.
type lines struct {
	id   string
	rows []lineRow
}

// lineRow is one finding: the verdict with its sign, the figure, what and where, why.
type lineRow struct {
	line                      words.Line
	item, figure, text, cause js.Value
}

// show brings the list up to date.
func (l *lines) show(all []words.Line) {
	if len(l.rows) == 0 {
		fill(byID(l.id)) // of a program before
	}
	for i := range all {
		if i == len(l.rows) {
			l.rows = append(l.rows, newRow(all[i]))
			byID(l.id).Call("append", l.rows[i].item)
			continue
		}
		if row := &l.rows[i]; !row.alike(&all[i]) {
			old := row.item
			*row = newRow(all[i])
			old.Call("replaceWith", row.item)
		} else if row.line != all[i] {
			row.put(all[i])
		}
	}
	for _, row := range l.rows[len(all):] {
		row.item.Call("remove")
	}
	l.rows = l.rows[:len(all)]
}

// alike tells whether a row's elements serve for another line.
func (r *lineRow) alike(l *words.Line) bool {
	return r.line.Verdict == l.Verdict && r.line.Word == l.Word && (r.line.Figure == "") == (l.Figure == "") && (r.line.Cause == "") == (l.Cause == "")
}

func (r *lineRow) put(l words.Line) {
	if l.Figure != r.line.Figure {
		r.figure.Set("textContent", l.Figure)
	}
	if l.Text != r.line.Text {
		text := words.Capital(l.Text)
		if l.Figure != "" {
			text = " " + l.Text
		}
		r.text.Set("textContent", text)
	}
	if l.Cause != r.line.Cause {
		r.cause.Set("textContent", l.Cause)
	}
	r.line = l
}

func newRow(l words.Line) lineRow {
	r := lineRow{figure: el("b", nil), text: el("span", nil), cause: el("p", attrs{"class", "cause"})}
	said := el("p", nil)
	if l.Figure != "" {
		said.Call("append", r.figure)
	}
	said.Call("append", r.text)
	r.item = el("li", attrs{"class", words.Word(l.Verdict)},
		el("p", attrs{"class", "verdict"}, sign(l.Verdict), el("span", attrs{"text", l.Word})), said)
	if l.Cause != "" {
		r.item.Call("append", r.cause)
	}
	r.put(l)
	return r
}

// showFindings writes what the fit shows, as text.
func (p *Panel) showFindings() {
	setText(byID("headline"), p.bench.Headline())
	show(byID("fit-title"), !p.bench.Lacking())
	p.findings.show(p.bench.Findings())
}

// showConditions writes how leaf and frame stand by themselves, and the cautions.
func (p *Panel) showConditions() {
	p.conditions.show(p.bench.Conditions())
	all := p.bench.Cautions()
	if slices.Equal(all, p.cautions) {
		return
	}
	p.cautions = all
	rows := make([]js.Value, len(all))
	for i, c := range all {
		rows[i] = el("li", nil,
			el("p", attrs{"text", c.Text}),
			el("p", attrs{"class", "quiet", "text", c.Ask + " Source: " + c.Source + "."}))
	}
	fill(byID("cautions"), rows...)
}

// signs are the verdicts' signs, as the drawing has them.
var signs = map[judge.Verdict]attrs{
	judge.Binds: {"d", "M7 1 13 12H1z", "class", "solid"},
	judge.Tight: {"d", "M13 1.5V12H1z", "class", "solid"},
	judge.Slack: {"d", "M7 2.2a4.8 4.8 0 1 0 .01 0z"},
	judge.Good:  {"d", "M7 2.5a4.5 4.5 0 1 0 .01 0z", "class", "solid"},
}

func sign(v judge.Verdict) js.Value {
	return svg("svg", attrs{"viewBox", "0 0 14 14", "width", "14", "height", "14", "aria-hidden", "true", "focusable", "false"},
		svg("path", signs[v]))
}
