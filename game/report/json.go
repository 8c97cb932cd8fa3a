package report

import (
	"encoding/json"
	"math"

	"leafwright/game"
	"leafwright/game/beside"
	"leafwright/game/words"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// JSON writes the report for a program: lengths in mm, angles in degrees, places
// as world y on upright edges and x from the hinge jamb on the others, with the
// hinges on the left whatever the job's hand. Numbers are as computed, unrounded.
func (r Report) JSON(s words.Speaker) ([]byte, error) {
	f := r.Fit
	out := file{
		Version: Version, Name: r.Job.Name, Verdict: words.Word(r.Worst()), Headline: s.Headline(r.Findings),
		Closed: f.Closed.Degrees(), LatchAngle: f.LatchAngle.Degrees(), StopAngle: f.StopAngle.Degrees(),
		StopBound: f.StopBound, LatchMiss: f.LatchMiss, Strain: f.Strain,
		ClearWidth: f.ClearWidth, ClearToStop: f.ClearToStop,
		Gaps: map[string]gap{}, Shown: map[string]gap{}, Stops: map[string]gap{}, Swing: map[string]sweep{},
	}
	for e := fit.HingeSide; e < fit.Edges; e++ {
		out.Gaps[edge(e)] = gapOf(f.Gaps[e])
		out.Shown[edge(e)] = gapOf(f.Shown[e])
		if int(e) < len(f.Stops) {
			out.Stops[edge(e)] = gapOf(f.Stops[e])
		}
		w := f.Swing[e]
		out.Swing[edge(e)] = sweep{w.Least, [3]float64{w.At.X, w.At.Y, w.At.Z}, w.Angle.Degrees()}
	}
	for _, x := range r.Findings {
		l := s.Finding(x)
		out.Findings = append(out.Findings, finding{
			Margin: x.Margin, Odds: oddsOf(x.Odds),
			About: subjects[x.Subject], Edge: edge(x.Edge), Verdict: words.Word(x.Verdict),
			From: number64(x.Stretch.Lo), To: number64(x.Stretch.Hi), Worst: x.Worst, At: x.At,
			Angle: x.Angle.Degrees(), Limits: limits{x.Limits.Least, x.Limits.Target, x.Limits.Most},
			Text: l.Text, Cause: l.Cause, Causes: causes(x.Causes),
		})
	}
	for _, c := range r.Conditions {
		k := condition{Quantity: string(c.Quantity), Value: c.Value}
		for _, g := range c.Grades {
			k.Grades = append(k.Grades, grade{g.Standard, g.Name, g.Limit, g.Keeps, g.Remembered})
		}
		out.Conditions = append(out.Conditions, k)
	}
	for _, c := range r.Cautions {
		out.Cautions = append(out.Cautions, caution{c.Text, c.Ask, c.Source})
	}
	s.Hinges, s.Rails = len(r.Job.Door.Hinges), beside.RailNames(&r.Job.Anatomy)
	out.Made = r.stepsOf(r.Stands.Steps, s)
	if r.Option >= 0 {
		out.Option = &option{r.Option + 1, r.Job.OptionName(r.Option), r.stepsOf(r.Tried.Steps, s)}
	}
	for i := range r.Job.Options {
		out.Options = append(out.Options, r.Job.OptionName(i))
	}
	out.Readings = r.rests(s)
	if !game.Rated(&r.Job) {
		out.Hardware, out.Work = r.hang(s), r.workFor(s)
		out.Hanging, out.Places, out.Fit = r.hanging(s), r.places(s), r.fitting(s)
	}
	b, err := json.MarshalIndent(out, "", "  ")
	return append(b, '\n'), err
}

// Version is the version of the report's form.
const Version = 1

type file struct {
	Version     int              `json:"leafwright_report"`
	Name        string           `json:"name"`
	Verdict     string           `json:"verdict"`
	Headline    string           `json:"headline"`
	Closed      float64          `json:"closed_deg"`
	LatchAngle  float64          `json:"latch_deg"`
	StopAngle   float64          `json:"stop_deg"`
	StopBound   bool             `json:"stop_bound"`
	LatchMiss   float64          `json:"latch_miss"`
	Strain      float64          `json:"hinge_strain"`
	ClearWidth  float64          `json:"clear_width"`
	ClearToStop float64          `json:"clear_to_stop"`
	Gaps        map[string]gap   `json:"gaps"`
	Shown       map[string]gap   `json:"shown_gaps"`
	Stops       map[string]gap   `json:"stop_gaps"`
	Swing       map[string]sweep `json:"swing"`
	Findings    []finding        `json:"findings"`
	Conditions  []condition      `json:"conditions"`
	Cautions    []caution        `json:"cautions"`
	Made        []step           `json:"made,omitempty"`
	Option      *option          `json:"option,omitempty"`   // the one tried
	Options     []string         `json:"options,omitempty"`  // all there are
	Readings    *rests           `json:"readings,omitempty"` // of a job that rests on them
	Hardware    *hang            `json:"hardware"`
	Work        *workOf          `json:"work,omitempty"` // of the option, or of what was made
	Hanging     *hanging         `json:"hanging"`
	Places      []badPlace       `json:"bad_places,omitempty"`
	Fit         map[string]fitTo `json:"fit_to,omitempty"` // where the job says something of room or paint
}

type gap struct {
	Least   *float64     `json:"least"`
	LeastAt *float64     `json:"least_at"`
	Most    *float64     `json:"most"`
	MostAt  *float64     `json:"most_at"`
	Curve   [][2]float64 `json:"at_and_gap"` // at the ends of its smooth pieces
}

type sweep struct {
	Least float64    `json:"least"`
	At    [3]float64 `json:"at_xyz"`
	Angle float64    `json:"angle_deg"`
}

type limits struct {
	Least  float64 `json:"least"`
	Target float64 `json:"target"`
	Most   float64 `json:"most,omitempty"`
}

type finding struct {
	About   string   `json:"about"`
	Edge    string   `json:"edge"`
	Verdict string   `json:"verdict"`
	From    *float64 `json:"from,omitempty"`
	To      *float64 `json:"to,omitempty"`
	Worst   float64  `json:"worst"`
	Margin  float64  `json:"margin_90,omitempty"` // ± of worst
	Odds    *odds    `json:"odds,omitempty"`
	At      float64  `json:"at"`
	Angle   float64  `json:"angle_deg,omitempty"`
	Limits  limits   `json:"wanted"`
	Text    string   `json:"text"`
	Cause   string   `json:"cause,omitempty"`
	Causes  []cause  `json:"causes,omitempty"`
}

type cause struct {
	Departure string  `json:"departure"`
	Amount    float64 `json:"amount"`
	Effect    float64 `json:"effect"`
}

type condition struct {
	Quantity string  `json:"quantity"`
	Value    float64 `json:"value"`
	Grades   []grade `json:"grades,omitempty"`
}

type grade struct {
	Standard   string  `json:"standard"`
	Class      string  `json:"class,omitempty"`
	Limit      float64 `json:"limit"`
	Keeps      bool    `json:"keeps"`
	Remembered bool    `json:"figure_from_memory,omitempty"`
}

type caution struct {
	Text   string `json:"text"`
	Ask    string `json:"ask"`
	Source string `json:"source"`
}

var subjects = map[judge.Subject]string{
	judge.ClosedGap: "gap", judge.Latching: "latch", judge.StopGap: "stop", judge.SwingGap: "swing",
	judge.SwingFloor: "swing over the floor", judge.HingeLine: "hinges", judge.ClearWay: "clear way", judge.LetGo: "let go",
}

func edge(e fit.Edge) string { return [fit.Edges]string{"hinge", "latch", "head", "floor"}[e] }

// number64 is nil for what JSON cannot write and what is not there.
func number64(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}

func gapOf(g fit.Gap) gap {
	out := gap{number64(g.Least), number64(g.LeastAt), number64(g.Most), number64(g.MostAt), [][2]float64{}}
	for i, p := range g.Pieces {
		if i == 0 {
			out.Curve = append(out.Curve, [2]float64{p.Lo, p.C0})
		}
		out.Curve = append(out.Curve, [2]float64{p.Hi, p.At(p.Hi)})
	}
	return out
}

func causes(c []judge.Cause) []cause {
	var out []cause
	for _, x := range c {
		out = append(out, cause{string(x.Departure), x.Amount, x.Effect})
	}
	return out
}
