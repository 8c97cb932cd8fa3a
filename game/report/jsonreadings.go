package report

import (
	"leafwright/game/words"
	"leafwright/geom/judge"
	"leafwright/geom/survey"
)

// odds are the chances of a finding's verdicts.
type odds struct {
	Binds float64 `json:"binds"`
	Tight float64 `json:"tight"`
	Slack float64 `json:"slack"`
	Good  float64 `json:"good"`
}

func oddsOf(o judge.Odds) *odds {
	if !o.Told() {
		return nil
	}
	return &odds{o[judge.Binds], o[judge.Tight], o[judge.Slack], o[judge.Good]}
}

// rests is what a job rests on.
type rests struct {
	// Sigma0 is the size of the residuals against what the instruments promise, about
	// 1; Redundancy how many readings there are more than it takes.
	Sigma0     float64   `json:"sigma0"`
	Redundancy float64   `json:"redundancy"`
	Readings   []reading `json:"each"`
	Misfits    []misfit  `json:"misfits"`
	Members    []string  `json:"members_that_cannot_be,omitempty"` // read of stiles and rails
	Assumed    []assumed `json:"not_measured"`
	Unusual    []unusual `json:"unusual"`
	Next       *nextToDo `json:"measure_next,omitempty"`
}

type reading struct {
	Index        int      `json:"reading"` // its place in the job file, from 0
	Kind         string   `json:"kind"`
	Typed        string   `json:"typed"`
	Value        float64  `json:"value"`
	Sigma        float64  `json:"sigma"`
	State        string   `json:"state"`
	Fitted       *float64 `json:"fitted"`
	Residual     float64  `json:"residual"`
	Standardised float64  `json:"standardised"`
	Redundancy   float64  `json:"redundancy"`
	Shows        *float64 `json:"least_slip_that_shows"`
}

type misfit struct {
	Readings []int    `json:"readings"`
	Slips    [][]slip `json:"slips"` // of each, the likeliest first
	Text     string   `json:"text"`
}

type slip struct {
	Kind  string  `json:"kind"`
	Value float64 `json:"value"`
}

type assumed struct {
	What  string  `json:"what"`
	Taken string  `json:"taken"`
	Sigma float64 `json:"sigma"`
	Text  string  `json:"text"`
}

// unusual is a departure far from ordinary that nothing contradicts.
type unusual struct {
	What  string  `json:"what"`
	Off   float64 `json:"off"`
	Sigma float64 `json:"sigma"`
}

type nextToDo struct {
	Kind  string  `json:"kind"`
	Side  string  `json:"side,omitempty"`
	Hinge int     `json:"hinge,omitempty"`
	At    float64 `json:"at"`
	From  float64 `json:"from"`
	To    float64 `json:"to"`
	Angle float64 `json:"angle_deg"`
	Edge  string  `json:"for_gap"`
	Place float64 `json:"for_gap_at"`
	Now   float64 `json:"margin_now"`
	Then  float64 `json:"margin_then"`
	Text  string  `json:"text"`
}

var states = map[survey.State]string{
	survey.Used: "used", survey.Doubted: "doubted", survey.Suspect: "left out", survey.Faulty: "faulty", survey.Unused: "not used",
}

// rests gives what the job rests on, nil where its shapes were given by hand.
func (r Report) rests(s words.Speaker) *rests {
	sv := r.Job.Survey
	if sv == nil {
		return nil
	}
	out := &rests{Unusual: []unusual{}, Sigma0: sv.Sigma0, Redundancy: sv.Redundancy, Readings: []reading{}, Misfits: []misfit{}, Assumed: []assumed{}}
	for k, i := range r.Job.Counted() {
		if k >= len(sv.Readings) {
			break
		}
		j := sv.Readings[k]
		out.Readings = append(out.Readings, reading{
			i, string(j.Kind), r.Job.Readings[i].Value.Text, j.Value, j.Sigma, states[j.State], number64(j.Fitted), j.Residual, j.Standardised,
			j.Redundancy, number64(j.Shows),
		})
	}
	said := r.suspects(s)
	misfits := r.Job.Misfits()
	out.Members = said[len(misfits):]
	for n, m := range misfits {
		o := misfit{Readings: m.Readings, Text: said[n]}
		for _, j := range m.Judged {
			slips := []slip{}
			for _, x := range j.Slips {
				slips = append(slips, slip{string(x.Kind), x.Value})
			}
			o.Slips = append(o.Slips, slips)
		}
		out.Misfits = append(out.Misfits, o)
	}
	for _, a := range sv.Assumptions() {
		out.Assumed = append(out.Assumed, assumed{a.What, a.Taken, a.Sigma, s.Assumed(a)})
	}
	for _, u := range sv.Unusual() {
		out.Unusual = append(out.Unusual, unusual{u.What, u.Off, u.Sigma})
	}
	if r.Sure != nil && r.Sure.HasNext {
		a := r.Sure.Next
		t := a.Reading
		out.Next = &nextToDo{
			Kind: string(t.Kind), Side: string(t.Side), At: t.At, From: t.From, To: t.To, Angle: t.Angle.Degrees(),
			Edge: edge(a.Edge), Place: a.At, Now: a.Now.Margin(), Then: a.Margin(), Text: s.Next(a),
		}
		if survey.SpecOf(t.Kind).Needs&survey.NeedHinge != 0 {
			out.Next.Hinge = t.Hinge + 1
		}
	}
	return out
}
