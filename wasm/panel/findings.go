//go:build js

package panel

import (
	"syscall/js"

	"leafwright/game/words"
	"leafwright/geom/judge"
)

// showFindings writes what the fit shows, as text.
func (p *Panel) showFindings() {
	setText(byID("headline"), p.bench.Headline())
	show(byID("fit-title"), !p.bench.Lacking())
	rows := []js.Value{}
	for _, l := range p.bench.Findings() {
		rows = append(rows, row(l))
	}
	fill(byID("findings"), rows...)
}

// showConditions writes how leaf and frame stand by themselves, and the cautions.
func (p *Panel) showConditions() {
	rows := []js.Value{}
	for _, l := range p.bench.Conditions() {
		rows = append(rows, row(l))
	}
	fill(byID("conditions"), rows...)
	rows = rows[:0]
	for _, c := range p.bench.Cautions() {
		rows = append(rows, el("li", nil,
			el("p", attrs{"text", c.Text}),
			el("p", attrs{"class", "quiet", "text", c.Ask + " Source: " + c.Source + "."})))
	}
	fill(byID("cautions"), rows...)
}

// row is one finding: the verdict with its sign, the figure, what and where, why.
func row(l words.Line) js.Value {
	said := el("p", nil)
	if l.Figure != "" {
		said.Call("append", el("b", attrs{"text", l.Figure}), " ", l.Text)
	} else {
		said.Call("append", capital(l.Text))
	}
	li := el("li", attrs{"class", words.Word(l.Verdict)},
		el("p", attrs{"class", "verdict"}, sign(l.Verdict), el("span", attrs{"text", l.Word})), said)
	if l.Cause != "" {
		li.Call("append", el("p", attrs{"class", "cause", "text", l.Cause}))
	}
	return li
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
