//go:build js

package main

import (
	"strconv"
	"syscall/js"

	"leafwright/game"
	"leafwright/game/bench"
	"leafwright/game/draw"
	"leafwright/game/lesson"
	"leafwright/game/lesson/hand"
	"leafwright/game/words"
	"leafwright/geom"
	"leafwright/geom/fit"
)

// viewed is the view a question asks for.
func viewed(q js.Value) draw.View {
	size := func(name string, std float64) float64 {
		if v := q.Get(name); v.Type() == js.TypeNumber {
			return geom.Interval{Lo: 200, Hi: 2000}.Clamp(v.Float())
		}
		return std
	}
	view := draw.View{Width: size("width", 360), Height: size("height", 480), Still: true}
	switch text(q, "show") {
	case "front":
		view.Show = draw.Front
	case "plan":
		view.Show = draw.Plan
	}
	if v := q.Get("swing"); v.Type() == js.TypeNumber {
		view.Swing = geom.Angle(v.Float()) * geom.Degree
	}
	return view
}

// picture draws a job's door as SVG, with its figures.
func picture(q js.Value, job *game.Job) string {
	stands := job.Stands()
	var f fit.Fit
	fit.Evaluate(&f, &stands.Door)
	view := viewed(q)
	view.RightHung = job.Hand == game.Right
	view.Swing = max(view.Swing, f.Closed)
	var l draw.List
	var s draw.Scene
	s.Draw(&l, &f, &stands.Door, &stands.Anatomy, &job.Wanted, view)
	return svg(q, &l)
}

func svg(q js.Value, l *draw.List) string {
	palette := &draw.Day
	if q.Get("dark").Truthy() {
		palette = &draw.Night
	}
	return string(l.SVG(palette))
}

// seen draws a job's door as a learner sees it.
func seen(q js.Value, job *game.Job) *hand.Picture {
	return hand.Show(job, hand.ToolOf(text(q, "tool")), viewed(q))
}

// held tells what the tool in hand does to the picture:
//
//	over  what lies over the picture, SVG
//	move  the text of the move it comes to, empty where there is none
//	said  the sentence for it
func held(q js.Value, p *lesson.Play) map[string]any {
	job := p.Stands()
	pic := seen(q, &job)
	out := map[string]any{"fault": "", "move": "", "said": ""}
	if q.Get("from").Truthy() {
		at := func(name string) draw.Pt {
			v := q.Get(name)
			return draw.Pt{X: v.Index(0).Float(), Y: v.Index(1).Float()}
		}
		stroke := hand.Stroke{
			From: at("from"), To: at("to"), Moved: q.Get("moved").Truthy(), Shaving: q.Get("shaving").Float(),
			Packs: text(q, "tap") == "packs", Home: text(q, "tap") == "home", Inches: q.Get("inches").Truthy(),
		}
		if before := text(q, "move"); before != "" {
			var faults game.Faults
			if a, good := lesson.ReadAct([]byte(`{"act": "move", "move": `+before+`}`), "move", &faults); good {
				stroke.Before = &a.Move
			}
		}
		if m, ok := pic.Work(stroke); ok {
			say := speaker(q, &job)
			out["move"], out["said"] = game.MoveText(m), say.Move(&m)+"."
		}
	}
	out["over"] = svg(q, pic.Over())
	return out
}

// tools are those for the picture, each with kind, name, use and move, the kind of move
// it makes first of all.
func tools() (out []any) {
	for i := range hand.Tools {
		t := &hand.Tools[i]
		out = append(out, map[string]any{"kind": t.Kind, "name": t.Name, "use": t.Use, "move": string(t.Move)})
	}
	return out
}

// shavings are those to choose from, each with value, mm, and label.
func shavings(q js.Value, say *words.Speaker) (out []any) {
	for _, mm := range bench.Shavings(q.Get("inches").Truthy()) {
		out = append(out, map[string]any{"value": strconv.FormatFloat(mm, 'f', -1, 64), "label": say.Amount(mm)})
	}
	return out
}
