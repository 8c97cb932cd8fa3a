package report

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/trim"
)

// moves writes what was done for keeps and what the option does.
func (r Report) moves(b *strings.Builder, s words.Speaker) {
	r.steps(b, s, "DONE FOR KEEPS", r.Stands.Steps)
	if r.Option >= 0 {
		r.steps(b, s, "THE MOVES OF "+strings.ToUpper(r.Job.OptionName(r.Option)), r.Tried.Steps)
		if len(r.Tried.Steps) == 0 {
			b.WriteString("\n")
			wrap(b, "This option has no moves yet.", 0, 0)
		}
	}
	if len(r.Job.Options) > 0 && r.Option < 0 {
		b.WriteString("\nOPTIONS TO TRY\n")
		for i := range r.Job.Options {
			wrap(b, fmt.Sprintf("%d. %s", i+1, r.Job.OptionName(i)), 2, 5)
		}
	}
}

func (r Report) steps(b *strings.Builder, s words.Speaker, title string, steps []trim.Step) {
	if len(steps) == 0 {
		return
	}
	b.WriteString("\n" + title + "\n")
	for i := range steps {
		st := &steps[i]
		said := s.Move(&st.Move)
		switch {
		case st.Move.Off:
			said = "Left out: " + said
		case refused(st):
			said = "Cannot be done: " + said
		}
		wrap(b, fmt.Sprintf("%d. %s.", i+1, said), 2, 5)
		if st.Move.Note != "" {
			wrap(b, st.Move.Note, 5, 5)
		}
		if st.Move.Off {
			continue
		}
		if refused(st) {
			wrap(b, s.Care(st.Why)+".", 5, 7)
		} else if did := s.Did(&st.Done); did != "" {
			wrap(b, did+".", 5, 7)
		}
		for _, c := range cares(st) {
			wrap(b, "Mind: "+s.Care(&c)+".", 5, 7)
		}
		r.cautions(b, steps, i)
	}
}

// cautions writes those of the i-th step; where they are an earlier one's, they are
// not said twice.
func (r Report) cautions(b *strings.Builder, steps []trim.Step, i int) {
	all := game.StepCautions(&r.Job, &steps[i].Move)
	if len(all) == 0 {
		return
	}
	for k := range i {
		if !steps[k].Move.Off && slices.Equal(game.StepCautions(&r.Job, &steps[k].Move), all) {
			wrap(b, fmt.Sprintf("! Take care as at move %d.", k+1), 5, 7)
			return
		}
	}
	for _, c := range all {
		wrap(b, "! "+c.Text+" "+c.Ask, 5, 7)
	}
}

func refused(s *trim.Step) bool { return s.Why != nil && s.Why.About.Forbids() }

// cares are what is to be minded at a move.
func cares(s *trim.Step) []trim.Care {
	if s.Why != nil && !refused(s) {
		return append([]trim.Care{*s.Why}, s.Done.Cares...)
	}
	return s.Done.Cares
}

type option struct {
	Number int    `json:"number"` // from 1
	Name   string `json:"name"`
	Moves  []step `json:"moves"`
}

type step struct {
	Move     json.RawMessage `json:"move"` // as in the job file
	Text     string          `json:"text"`
	State    string          `json:"state"` // done, off or refused
	Why      string          `json:"why,omitempty"`
	OffArea  float64         `json:"off_mm2,omitempty"`
	OnArea   float64         `json:"on_mm2,omitempty"`
	Most     float64         `json:"off_mm,omitempty"` // where it is most
	Volume   float64         `json:"timber_off_cm3,omitempty"`
	Strips   int             `json:"strips,omitempty"`
	Cuts     int             `json:"cuts,omitempty"`
	Gains    []int           `json:"hinges_recut,omitempty"` // 1 the top one
	Frame    bool            `json:"frame_touched,omitempty"`
	Minutes  float64         `json:"minutes,omitempty"`
	Left     []left          `json:"left,omitempty"`
	Mind     []string        `json:"mind,omitempty"`
	Cautions []caution       `json:"cautions,omitempty"`
}

type left struct {
	Text   string  `json:"text"`
	Before float64 `json:"before"` // of the leaf's own timber
	Now    float64 `json:"now"`
	Faces  *faces  `json:"with_strips,omitempty"` // the whole face, where a strip is glued to it
}

type faces struct {
	Before float64 `json:"before"`
	Now    float64 `json:"now"`
}

func leftOf(s *words.Speaker, l trim.Left) left {
	out := left{s.Left(l), l.Before, l.Now, nil}
	if l.FaceBefore > l.Before || l.FaceNow > l.Now {
		out.Faces = &faces{l.FaceBefore, l.FaceNow}
	}
	return out
}

func (r Report) stepsOf(steps []trim.Step, s words.Speaker) []step {
	out := make([]step, 0, len(steps))
	for i := range steps {
		st, d := &steps[i], &steps[i].Done
		x := step{
			Move: json.RawMessage(game.MoveText(st.Move)), Text: s.Move(&st.Move), State: "done",
			OffArea: d.Off, OnArea: d.On, Most: d.Most, Volume: d.Volume / 1000, Strips: d.Strips, Cuts: d.Cuts, Frame: d.Frame, Minutes: d.Minutes,
		}
		switch {
		case st.Move.Off:
			x.State = "off"
		case refused(st):
			x.State, x.Why = "refused", s.Care(st.Why)
		}
		for _, h := range d.Gains {
			x.Gains = append(x.Gains, h+1)
		}
		for _, l := range d.Left {
			x.Left = append(x.Left, leftOf(&s, l))
		}
		if !st.Move.Off {
			for _, c := range cares(st) {
				x.Mind = append(x.Mind, s.Care(&c))
			}
			for _, c := range game.StepCautions(&r.Job, &st.Move) {
				x.Cautions = append(x.Cautions, caution{c.Text, c.Ask, c.Source})
			}
		}
		out = append(out, x)
	}
	return out
}
