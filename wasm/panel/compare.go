//go:build js

package panel

import (
	"strconv"
	"syscall/js"

	"leafwright/game/bench"
	"leafwright/game/beside"
	"leafwright/game/draw"
	"leafwright/game/words"
	"leafwright/geom/judge"
)

// compare is the table of all ways side by side, each with its picture. A row's name
// is a button that sorts the ways by it.
type compare struct {
	p  *Panel
	by int // row sorted by, below zero as they come
}

// Size of a way's picture, px.
const wayWide, wayHigh = 240, 320

func (c *compare) init(p *Panel) {
	c.p, c.by = p, -1
	box := byID("compare")
	on(byID("compare-close"), "click", func(js.Value) { box.Call("close") })
	on(box, "click", func(e js.Value) {
		if e.Get("target").Equal(box) { // on the backdrop
			box.Call("close")
		}
	})
	on(byID("compare-body"), "click", func(e js.Value) {
		button := e.Get("target").Call("closest", "button")
		if !button.Truthy() {
			return
		}
		data := button.Get("dataset")
		if row := data.Get("row"); row.Type() == js.TypeString {
			c.by, _ = strconv.Atoi(row.String())
			c.fill()
			return
		}
		if way := data.Get("way"); way.Type() == js.TypeString {
			shown, _ := strconv.Atoi(way.String())
			p.bench.ShowOption(bench.Shown(shown))
			box.Call("close")
			p.changed()
		}
	})
}

func (c *compare) open() {
	c.fill()
	byID("compare").Call("showModal")
}

// show renews the table where it is open.
func (c *compare) show() {
	if byID("compare").Get("open").Bool() {
		c.fill()
	}
}

func (c *compare) fill() {
	focus := focusedID()
	side := c.p.bench.SideBySide()
	order := make([]int, len(side.Ways))
	for i := range order {
		order[i] = i
	}
	if c.by >= 0 && c.by < len(side.Rows) {
		order = beside.Order(side.Rows[c.by])
	}
	palette := &draw.Day
	if Dark() {
		palette = &draw.Night
	}
	names, pictures := el("tr", nil, el("td", nil)), el("tr", nil, el("td", nil))
	for _, i := range order {
		w := &side.Ways[i]
		open := el("button", attrs{"type", "button", "class", "plain", "id", "way-open-" + strconv.Itoa(i), "data-way", strconv.Itoa(int(w.Shown)), "text", w.Name})
		names.Call("append", el("th", attrs{"scope", "col"}, open))
		pictures.Call("append", el("td", attrs{"class", "way-picture", "aria-hidden", "true"}, importSVG(c.p.bench.WayPicture(w, wayWide, wayHigh), palette)))
	}
	body := el("tbody", nil, pictures)
	for r := range side.Rows {
		row := &side.Rows[r]
		pressed := "false"
		if r == c.by {
			pressed = "true"
		}
		sort := el("button", attrs{"type", "button", "class", "sort", "id", "way-row-" + strconv.Itoa(r), "data-row", strconv.Itoa(r), "aria-pressed", pressed, "title", "Sort by this, the best first", "text", row.Label})
		tr := el("tr", nil, el("th", attrs{"scope", "row"}, sort))
		for _, i := range order {
			cell := &row.Cells[i]
			td := el("td", nil)
			if cell.Verdict != judge.Good {
				td.Set("className", words.Word(cell.Verdict))
				td.Call("append", el("span", attrs{"class", "verdict-sign"}, sign(cell.Verdict)))
			}
			td.Call("append", cell.Text)
			tr.Call("append", td)
		}
		body.Call("append", tr)
	}
	wrong := el("tr", nil, el("th", attrs{"scope", "row", "text", "What is not as wanted"}))
	for _, i := range order {
		td := el("td", nil)
		if len(side.Ways[i].Wrong) == 0 {
			td.Call("append", "nothing")
		}
		for _, text := range side.Ways[i].Wrong {
			td.Call("append", el("p", attrs{"text", words.Capital(text)}))
		}
		wrong.Call("append", td)
	}
	body.Call("append", wrong)
	fill(byID("compare-body"), el("table", attrs{"class", "ways-table"}, el("thead", nil, names), body))
	refocus(focus)
}
