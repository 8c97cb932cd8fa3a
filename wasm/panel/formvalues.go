//go:build js

package panel

import (
	"strings"

	"leafwright/game"
	"leafwright/game/words"
)

// values puts the values, or what stands typed and was not taken, in place.
func (f *form) values(s game.Section) {
	each := func(d game.Field) {
		in := f.inputs[d.Path]
		if in == nil {
			return
		}
		draft, bad := f.p.bench.Draft(d.Path)
		if !in.dirty && d.Value == in.value && bad == in.bad && draft == in.draft {
			return
		}
		// While a person types there, what they typed stays, however it would be written.
		if d.Kind == game.Flag || bad || !f.p.bench.Typing(d.Path) {
			text := d.Value
			if bad {
				text = draft.Text
			}
			in.put(text)
		}
		if bad || in.bad {
			in.say(draft.Why, bad)
		}
		in.value, in.draft, in.bad, in.dirty = d.Value, draft, bad, false
	}
	var folds []fold
	if sec := f.sections[s.Name]; sec != nil { // an option's fields stand elsewhere
		folds = sec.folds
	}
	for _, g := range s.Groups {
		if g.Fold {
			if line, said := &folds[0], g.Title+g.Now; said != line.said {
				line.said = said
				line.title.Set("textContent", g.Title)
				line.now.Set("textContent", g.Now)
			}
			folds = folds[1:]
		}
		for _, d := range g.Fields {
			each(d)
			for _, r := range d.Rows {
				for _, c := range r.Cells {
					each(c)
				}
			}
		}
	}
}

// put makes the element hold a text. What it holds already is not put once more, which
// leaves the cursor where it is.
func (in *input) put(text string) {
	if in.kind == game.Flag {
		in.field.Set("checked", text == "true")
	} else if text != in.has {
		in.field.Set("value", text)
	}
	in.has = text
}

// say shows why what stands there was not taken, or that it was.
func (in *input) say(why string, bad bool) {
	invalid(in.field, bad)
	setText(in.fault, words.Capital(why))
	show(in.fault, bad)
	described := in.help
	if bad {
		described = strings.TrimSpace(in.fault.Get("id").String() + " " + in.help)
	}
	if described != "" {
		in.field.Call("setAttribute", "aria-describedby", described)
	} else {
		in.field.Call("removeAttribute", "aria-describedby")
	}
}
