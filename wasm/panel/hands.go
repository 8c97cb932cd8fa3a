//go:build js

package panel

import (
	"strconv"
	"strings"
	"syscall/js"

	"leafwright/game/bench"
	"leafwright/game/measure"
)

// hands is the row of tools under the drawing: which one is in hand, how much a
// pass takes, and what the hand would do now.
type hands struct {
	p       *Panel
	tools   map[bench.Tool]js.Value
	packs   map[bool]js.Value
	pack    js.Value
	shaving js.Value
	take    js.Value
	says    js.Value
	unit    measure.Unit // the shavings are offered in
	filled  bool
}

// toolSigns are the tools' pictures, 24 by 24.
var toolSigns = map[bench.Tool]string{
	bench.Swing:     "M5 21V4M5 6h13M18 6a13 13 0 0 1-4 9M14 15l4.6-.6M14 15l-.6-4.4",
	bench.PlaneTool: "M2 17h20v-4l-3-1-2-4h-3l-1 4H7c-1-3-4-3-5-1zM12.5 12l2 5M2 20c3 2 5-1 8 1",
	bench.HingeTool: "M9 3h6v18H9zM9 8h6M9 12h6M9 16h6M9 5H4v14h5M15 5h5v14h-5",
	bench.StripTool: "M4 9h16v12H4zM4 4h16v2.5H4zM12 14v-3M10.5 12.5 12 11l1.5 1.5",
	bench.SawTool:   "M3 8l14 6v-4h4v9h-4L3 11zM4 15h1M8 17h1M12 19h1",
}

func (h *hands) init(p *Panel) {
	h.p = p
	b := p.bench
	items := b.Tools()
	names := make([]bench.Tool, len(items))
	of := map[bench.Tool]bench.ToolItem{}
	for i, t := range items {
		names[i] = t.Tool
		of[t.Tool] = t
	}
	var tools js.Value
	h.tools, tools = choose(p, "tool", "Tool in hand", names, func(t bench.Tool) string { return of[t].Name }, b.SetTool)
	tools.Get("classList").Call("add", "tools-choice")
	for t, button := range h.tools {
		face := button.Get("nextSibling")
		face.Call("prepend", svg("svg", attrs{"viewBox", "0 0 24 24", "width", "22", "height", "22", "aria-hidden", "true", "focusable", "false"},
			svg("path", attrs{"d", toolSigns[t]})))
		button.Get("parentNode").Call("setAttribute", "title", of[t].Hint+" (key "+of[t].Key+")")
	}
	h.packs, h.pack = choose(p, "packs", "A tap on a hinge", []bool{false, true},
		func(pack bool) string { return map[bool]string{false: "Deepen", true: "Pack"}[pack] }, b.SetPacks)
	h.shaving = el("select", attrs{"id", "shaving"})
	on(h.shaving, "change", func(js.Value) {
		if x, good := plain(h.shaving.Get("value").String()); good {
			b.SetShaving(x)
			p.changed()
		}
	})
	h.take = el("label", attrs{"class", "take", "for", "shaving"}, el("span", attrs{"text", "A pass takes"}), el("span", attrs{"class", "box"}, h.shaving))
	h.says = el("p", attrs{"class", "hand-says", "id", "hand-says", "role", "status"})
	fill(byID("hands"), tools, h.pack, h.take, h.says)
}

func (h *hands) show() {
	b := h.p.bench
	now := b.Tool()
	for t, button := range h.tools {
		button.Set("checked", t == now)
	}
	for pack, button := range h.packs {
		button.Set("checked", pack == b.Packs())
	}
	doc.Get("documentElement").Get("dataset").Set("tool", string(now))
	show(h.pack, now == bench.HingeTool)
	show(h.take, now == bench.PlaneTool || now == bench.HingeTool)
	h.offer()
	text := b.HandSays()
	if text == "" && now != bench.Swing {
		for _, t := range b.Tools() {
			if t.Tool == now {
				text = t.Hint
			}
		}
	}
	setText(h.says, text)
	show(h.says, now != bench.Swing || text != "")
	if b.HandBad() {
		h.says.Get("classList").Call("add", "bad")
	} else {
		h.says.Get("classList").Call("remove", "bad")
	}
}

// offer fills the choice of shavings, in the unit shown.
func (h *hands) offer() {
	b := h.p.bench
	if unit := b.Unit(); !h.filled || unit != h.unit {
		h.unit, h.filled = unit, true
		options := []js.Value{}
		for _, mm := range b.Shavings() {
			label := strings.TrimSuffix(measure.Format(mm, unit), " mm")
			if unit == measure.MM {
				label += " mm"
			}
			options = append(options, el("option", attrs{"value", strconv.FormatFloat(mm, 'g', -1, 64), "text", label}))
		}
		fill(h.shaving, options...)
	}
	setValue(h.shaving, strconv.FormatFloat(b.Shaving(), 'g', -1, 64))
}
