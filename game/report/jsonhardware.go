package report

import (
	"leafwright/game"
	"leafwright/game/hardware"
	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/timber"
)

type hanging struct {
	Seats []reseat          `json:"gains,omitempty"`
	Marks []float64         `json:"marks_on_jamb"` // from the top hinge down
	Under [2]float64        `json:"packers_under_foot"`
	Cares []timber.LockCare `json:"lock_cares,omitempty"`
	Keep  *keep             `json:"keep,omitempty"`
	Text  []string          `json:"text"`
}

type reseat struct {
	Hinge  int     `json:"hinge"` // 1 the top one
	OnJamb bool    `json:"on_jamb"`
	Up     float64 `json:"longer_above"`
	Down   float64 `json:"longer_below"`
	Deeper float64 `json:"deeper"`
	Above  float64 `json:"piece_in_above"`
	Below  float64 `json:"piece_in_below"`
	Pack   float64 `json:"fill_up"`
	Plug   bool    `json:"plug_old_holes"`
}

type keep struct {
	Height float64 `json:"height"`
	Up     float64 `json:"up"`
	In     float64 `json:"bolt_reaches"`
}

func (r Report) hanging(s words.Speaker) *hanging {
	before := r.before()
	h := hardware.HangOf(&before, &r.Tried)
	out := &hanging{Marks: h.Marks, Under: h.Under, Text: h.Lines(&s)}
	for _, x := range h.Seats {
		out.Seats = append(out.Seats, reseat{x.Hinge + 1, x.OnJamb, x.Up, x.Down, x.Deeper, x.Above, x.Below, x.Pack, x.Off})
	}
	if h.Lock != nil {
		out.Cares = append(out.Cares, h.Lock.Cares...)
	}
	if k := h.Keep; k != nil {
		out.Cares = append(out.Cares, k.Cares...)
		out.Keep = &keep{k.Height, k.Up, k.In}
	}
	return out
}

type badPlace struct {
	Cure   timber.Cure `json:"do"`
	Filler float64     `json:"filler_cm3,omitempty"`
	Foam   float64     `json:"foam_cm3,omitempty"`
	Lost   float64     `json:"part_of_member_lost"`
	Treat  bool        `json:"treat_first,omitempty"`
	Hinges []int       `json:"hinges,omitempty"` // whose screws stand in it, 1 the top one
	Moves  []int       `json:"moves,omitempty"`  // that come upon it, from 1
}

func (r Report) places(s words.Speaker) (out []badPlace) {
	all := r.repairs()
	if all == nil {
		return nil
	}
	for i := range all.Places {
		p := &all.Places[i]
		x := badPlace{Cure: p.Cure, Filler: p.Filler.Filler / 1000, Foam: p.Foam / 1000, Lost: p.Repair.Lost, Treat: p.Repair.Treat}
		for _, h := range p.Hinges {
			x.Hinges = append(x.Hinges, h.Hinge+1)
		}
		for _, c := range p.Cuts {
			x.Moves = append(x.Moves, c.Step+1)
		}
		out = append(out, x)
	}
	return out
}

// fitting gives the gaps to fit to today, nil where the job says nothing of room and paint.
func (r Report) fitting(s words.Speaker) map[string]fitTo {
	f := game.FittingOf(&r.Job, &r.Tried, game.WhereOf(&r.Job))
	if f.Season == nil && r.Job.Paint == (game.Paint{}) {
		return nil
	}
	return fitsTo(&s, &f)
}

func fitsTo(s *words.Speaker, f *game.Fitting) map[string]fitTo {
	out := map[string]fitTo{}
	for e := door.HingeSide; e < door.Edges; e++ {
		g := f.Gaps[e]
		out[edge(e)] = fitTo{g.Wanted, g.Paint, g.Season, g.All, hardware.Parts(s, f, e)}
	}
	return out
}

type costOf struct {
	Currency  string    `json:"currency,omitempty"`
	Items     []float64 `json:"items"` // as the bill's lines; 0 where no price was given
	Materials float64   `json:"materials"`
	Work      float64   `json:"work"`
	All       float64   `json:"all"`
	Unpriced  int       `json:"lines_without_a_price"`
	Text      []string  `json:"text"`
}

func costFor(s *words.Speaker, w *hardware.Work, j *game.Job) *costOf {
	c := hardware.CostOf(w, &j.Prices)
	if c == nil {
		return nil
	}
	out := &costOf{Currency: c.Currency, Materials: c.Materials, Work: c.Work, All: c.All, Unpriced: c.Unpriced, Text: c.Lines(s, w)}
	for _, i := range c.Items {
		out.Items = append(out.Items, i.Cost)
	}
	return out
}
