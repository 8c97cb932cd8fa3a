package report

import (
	"encoding/json"
	"math"

	"leafwright/game"
	"leafwright/game/beside"
	"leafwright/game/words"
	"leafwright/geom/advise"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

type adviceFile struct {
	Version  int       `json:"leafwright_advice"`
	Name     string    `json:"name"`
	Outcome  string    `json:"outcome"` // good, refused, plans, conflict or none
	Headline string    `json:"headline"`
	Wishes   wishes    `json:"wishes"`
	Findings []short   `json:"not_as_wanted"`
	Plans    []plan    `json:"plans"`
	Near     []plan    `json:"near,omitempty"` // far less work, and a gap a little wider than wanted
	Trade    []trade   `json:"trade,omitempty"`
	Conflict *conflict `json:"conflict,omitempty"`
	Cautions []caution `json:"cautions"`
}

type wishes struct {
	Prefer      string  `json:"prefer"`
	KeepFrame   bool    `json:"keep_frame"`
	KeepHinges  bool    `json:"keep_hinges"`
	NoStrip     bool    `json:"no_strip"`
	StilesAlike bool    `json:"stiles_alike"`
	TopRail     float64 `json:"top_rail,omitempty"` // mm
}

type short struct {
	About   string  `json:"about"`
	Edge    string  `json:"edge"`
	Verdict string  `json:"verdict"`
	Worst   float64 `json:"worst"`
	At      float64 `json:"at"`
	Text    string  `json:"text"`
}

type plan struct {
	Title    string             `json:"title"`
	Family   string             `json:"family"`
	Strip    string             `json:"strip,omitempty"` // the side it is glued on
	Cost     cost               `json:"cost"`
	Price    float64            `json:"price"`           // in the preference's own measure
	Bound    float64            `json:"bound"`           // no plan of the same choices is below it
	Sure     float64            `json:"sure"`            // the part of the allowance for errors kept
	Given    []relax            `json:"given,omitempty"` // what must give way for it
	Text     []string           `json:"text"`
	Moves    []planMove         `json:"moves"`
	Stages   []stage            `json:"stages"`
	Option   optionFile         `json:"option"` // as in the job file
	Verdict  string             `json:"verdict"`
	Headline string             `json:"headline"`
	Gaps     map[string]edgeGap `json:"gaps"` // after the option
	Out      []short            `json:"not_as_wanted"`
}

type optionFile struct {
	Name  string            `json:"name"`
	Moves []json.RawMessage `json:"moves"`
}

type cost struct {
	Timber  float64 `json:"timber_off_cm3"`
	Most    float64 `json:"off_mm"` // where it is most
	Minutes float64 `json:"minutes"`
	Cuts    int     `json:"cuts"`
	Gains   int     `json:"gains_recut"`
	Strips  int     `json:"strips"`
	Frame   bool    `json:"frame_touched"`
	Uneven  float64 `json:"uneven_mm"`
}

type planMove struct {
	step
	Reason  string `json:"reason"`
	Cures   *int   `json:"cures,omitempty"` // which of not_as_wanted, from 0
	Needed  bool   `json:"needed"`
	Without *short `json:"without,omitempty"` // the worst there would be
}

type stage struct {
	Moves []json.RawMessage `json:"moves"`
	Read  []place           `json:"read,omitempty"` // gaps, once it is offered up
}

type place struct {
	Kind string  `json:"kind"` // gap or stop_gap, as readings have it
	Side string  `json:"side"`
	At   float64 `json:"at"`
}

type trade struct {
	Timber float64 `json:"timber_off_cm3"`
	Uneven float64 `json:"uneven_mm"`
}

type conflict struct {
	Text     []string `json:"text"`
	Limits   []relax  `json:"limits"`
	Together []relax  `json:"together,omitempty"`
	Missed   []relax  `json:"missed,omitempty"` // by the nearest that can be worked
	Plans    []plan   `json:"plans,omitempty"`  // each with what must give way for it
}

type relax struct {
	Limit  string  `json:"limit"`
	Edge   string  `json:"edge,omitempty"`
	Bound  string  `json:"bound,omitempty"` // least or most
	By     float64 `json:"by,omitempty"`
	Enough bool    `json:"enough,omitempty"` // by itself
}

var limitNames = [...]string{
	advise.GapLimit: "gap", advise.StopLimit: "stop", advise.SwingLimit: "swing", advise.HingeLimit: "hinges", advise.WayLimit: "clear way",
	advise.StilesAlike: "stiles alike", advise.TopRail: "top rail", advise.FrameStays: "keep frame", advise.HingesStay: "keep hinges", advise.NoStrip: "no strip",
}

// JSON writes the advice for a program, in mm, cm³ and minutes, unrounded.
func (a Advice) JSON(s words.Speaker) ([]byte, error) {
	j := &a.Job
	s.Hinges, s.Rails = len(j.Door.Hinges), beside.RailNames(&j.Anatomy)
	w := &a.Wishes
	out := adviceFile{
		Version: Version, Name: j.Name, Outcome: a.outcome(), Headline: s.AdviceHeadline(&a.Found), Plans: []plan{},
		Wishes:   wishes{Prefer: string(w.Prefer), KeepFrame: w.KeepFrame, KeepHinges: w.KeepHinges, NoStrip: w.NoStrip, StilesAlike: w.StilesAlike},
		Findings: shorts(a.Found.Findings, s),
	}
	if w.Prefer == "" {
		out.Wishes.Prefer = string(advise.LeastTimber)
	}
	if w.TopRail {
		out.Wishes.TopRail, _ = j.NeighbourTopRail()
	}
	plans := &out.Plans
	if c := a.Found.Conflict; c != nil {
		out.Conflict = &conflict{Text: s.Conflict(c), Limits: relaxes(c.Limits), Together: relaxes(c.Together), Missed: relaxes(c.Missed)}
		plans = &out.Conflict.Plans
	}
	for i := range a.Plans {
		if a.Found.Conflict == nil && i == len(a.Found.Plans) {
			plans = &out.Near
		}
		*plans = append(*plans, a.planOf(i, s))
	}
	for _, t := range a.Found.Trade {
		out.Trade = append(out.Trade, trade(t))
	}
	for _, c := range game.Cautions(j) {
		out.Cautions = append(out.Cautions, caution{c.Text, c.Ask, c.Source})
	}
	b, err := json.MarshalIndent(out, "", "  ")
	return append(b, '\n'), err
}

func (a Advice) outcome() string {
	switch f := &a.Found; {
	case f.Good:
		return "good"
	case f.Refused != nil:
		return "refused"
	case len(f.Plans) > 0:
		return "plans"
	case f.Conflict != nil:
		return "conflict"
	}
	return "none"
}

func (a Advice) planOf(i int, s words.Speaker) plan {
	p := &a.Plans[i]
	c := &p.Cost
	out := plan{
		Title: p.Title, Family: string(p.Family), Price: p.Price, Bound: p.Bound, Sure: p.Sure,
		Cost: cost{c.Timber, c.Most, c.Minutes, c.Cuts, c.Gains, c.Strips, c.Frame, c.Uneven},
		Text: []string{s.PlanCost(p.Plan)}, Option: optionFile{p.Option.Name, movesOf(p.Option.Moves)},
		Verdict: words.Word(p.After.Worst()), Headline: s.Headline(p.After.Findings), Gaps: map[string]edgeGap{}, Out: []short{},
	}
	if given := s.PlanIf(p.Plan); given != "" {
		out.Given, out.Text = relaxes(p.Given), append([]string{given}, out.Text...)
	}
	if sure := s.PlanSure(p.Plan, a.Job.IsSurveyed()); sure != "" {
		out.Text = append(out.Text, sure)
	}
	out.Text = append(out.Text, s.PlanStages(p.Plan)...)
	if p.Family == advise.Splice {
		out.Strip = edge(p.Strip)
	}
	for k, st := range p.After.stepsOf(p.Steps, s) {
		m := planMove{step: st}
		if k < len(p.Why) {
			w := &p.Why[k]
			m.Reason, m.Needed = s.PlanWhy(w, &a.Found), w.Needed
			if w.Cures >= 0 {
				m.Cures = &w.Cures
			}
			if w.Needed {
				m.Without = &shorts([]judge.Finding{w.Without}, s)[0]
			}
		}
		out.Moves = append(out.Moves, m)
	}
	for k := range p.Stages {
		st := stage{Moves: movesOf(p.Stages[k].Moves)}
		for _, r := range p.Stages[k].Read {
			st.Read = append(st.Read, place{string(r.Kind), string(r.Side), r.At})
		}
		out.Stages = append(out.Stages, st)
	}
	for e := range fit.Edges {
		g := &p.After.Fit.Gaps[e]
		var of []judge.Finding
		for _, f := range p.After.Findings {
			if f.Subject == judge.ClosedGap && f.Edge == e {
				of = append(of, f)
			}
		}
		out.Gaps[edge(e)] = edgeGap{number64(g.Least), number64(g.Most), words.Word(judge.Worst(of))}
	}
	for _, f := range p.After.Findings {
		if f.Verdict != judge.Good {
			out.Out = append(out.Out, shorts([]judge.Finding{f}, s)...)
		}
	}
	return out
}

func movesOf(moves []trim.Move) []json.RawMessage {
	out := make([]json.RawMessage, 0, len(moves))
	for i := range moves {
		out = append(out, json.RawMessage(game.MoveText(moves[i])))
	}
	return out
}

func shorts(all []judge.Finding, s words.Speaker) []short {
	out := make([]short, 0, len(all))
	for _, f := range all {
		out = append(out, short{subjects[f.Subject], edge(f.Edge), words.Word(f.Verdict), finite(f.Worst), finite(f.At), s.Finding(f).Text})
	}
	return out
}

// finite is 0 for what JSON cannot write.
func finite(v float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0
	}
	return v
}

func relaxes(all []advise.Relax) []relax {
	out := make([]relax, 0, len(all))
	for _, r := range all {
		x := relax{Limit: limitNames[r.Sort], By: r.By, Enough: r.Enough}
		if r.Sort <= advise.SwingLimit {
			x.Edge, x.Bound = edge(r.Edge), "least"
			if r.Upper {
				x.Bound = "most"
			}
		}
		out = append(out, x)
	}
	return out
}
