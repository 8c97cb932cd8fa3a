package game

import (
	"math"
	"strings"
	"testing"

	"leafwright/geom/door"
	"leafwright/geom/judge"
	"leafwright/geom/timber"
)

// hall is a framed leaf whose stiles of 120 mm each move, gaps of the usual preset.
func hall(t *testing.T, more string) Job {
	t.Helper()
	text := swap(t, plainest, `"thickness": 35`, `"thickness": 35, "make": "framed", "stiles": {"hanging": 120, "closing": 120}, "timber": "western hemlock"`)
	return must(t, strings.TrimSuffix(text, "\n}\n")+more+"\n}\n")
}

// The gap wanted when a leaf is first hung bare is the one wanted in service, and paint to
// come on both faces, and swelling to come (model.md §6). By hand: western hemlock, Wood
// Handbook table 13-5, radial 0.00144 and tangential 0.00274, middle 0.00209, of 240 mm;
// maritime and heated, 20 °C and 60 % in July.
func TestFittingByHand(t *testing.T) {
	j := hall(t, `,
  "house": {"climate": "maritime", "room": "heated"},
  "meter": {"february": 8},
  "paint": {"leaf": {"primer": 1, "to_come": 2}, "frame": {"on": 4, "old": "enamel", "strip": true, "to_come": 1}}`)
	stands := j.Stands()
	f := FittingOf(&j, &stands, WhereOf(&j))
	p := timber.PresetFor(timber.Maritime, timber.Heated)
	air := p.Year(false)
	year := air.Moisture()
	moved := year[6] + 8 - year[1] // the meter moves every month alike
	grows := 240 * 0.00209 * (moved - 8)
	leaf, frame := (37.5+2*27.5)/1000, (27.5-4*27.5)/1000
	near := func(what string, got, want float64) {
		if math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %v, want %v", what, got, want)
		}
	}
	g := f.Gaps[door.LatchSide]
	near("paint", g.Paint, leaf+frame)
	near("season", g.Season, grows)
	near("all", g.All, 2.5+leaf+frame+grows)
	near("head", f.Gaps[door.HeadSide].All, 2.5+leaf+frame)
	near("floor is no painted face", f.Gaps[door.FloorSide].All, j.Wanted.Gaps[door.FloorSide].Target+leaf)
	w := f.Wanted.Gaps[door.LatchSide]
	near("least", w.Least, 2+leaf+frame+grows)
	slack := f.Season.Grows[f.Season.Slack]
	most := 3 + leaf + frame + slack
	if f.Crowded {
		most = w.Least + 1 // as much room as there was
	}
	near("most", w.Most, most)
	if f.Crowded != (3+leaf+frame+slack < 2+leaf+frame+grows+0.5) {
		t.Errorf("crowded %v", f.Crowded)
	}

	// at the ends of what is wanted at fitting, the closing gap keeps its limits all the year
	if !f.Crowded {
		for _, at := range []float64{w.Least, w.Most} {
			for m, gap := range f.Season.Through(at - leaf - frame) {
				if v := j.Wanted.Gaps[door.LatchSide].Judge(gap + math.Copysign(1e-9, 2.5-gap)); v != judge.Good {
					t.Errorf("fitted to %v it is %v in month %d: %v", at, gap, m, v)
				}
			}
		}
	}
}

// Where the job says nothing of room and paint, the gaps wanted at fitting are those
// wanted; where they are for bare wood the paint is in them already.
func TestFittingSaysNothingOfItself(t *testing.T) {
	for _, more := range []string{"", `, "meter": {"may": 14}`, `, "house": {"region": "UK", "built": 1890}`, `, "house": {"climate": "tropical"}`} {
		j := hall(t, more)
		stands := j.Stands()
		if f := FittingOf(&j, &stands, WhereOf(&j)); f.Wanted != j.Wanted || f.Season != nil {
			t.Errorf("%s: %+v, want %+v", more, f.Wanted, j.Wanted)
		}
	}
	j := hall(t, `, "wanted": {"preset": "bare"}, "paint": {"leaf": {"to_come": 3}, "frame": {"to_come": 3}}`)
	stands := j.Stands()
	if f := FittingOf(&j, &stands, WhereOf(&j)); f.Wanted != j.Wanted || !f.Holds {
		t.Errorf("paint counted twice: %+v", f)
	}
}

// Whatever is wanted, the limits at fitting stay in order and nothing is below 0.
func TestFittingKeepsOrder(t *testing.T) {
	for _, most := range []string{"0", "2.25", "2.5", "9"} {
		for _, strip := range []string{"false", "true"} {
			for _, room := range []string{"heated", "outside"} {
				j := hall(t, `, "house": {"climate": "continental", "room": "`+room+`"}, "meter": {"june": 14},
  "wanted": {"latch": {"least": 0.2, "target": 2, "most": `+most+`}}, "paint": {"leaf": {"on": 20, "film": 3, "strip": `+strip+`}}`)
				stands := j.Stands()
				f := FittingOf(&j, &stands, WhereOf(&j))
				for e, l := range f.Wanted.Gaps {
					if l.Least < 0 || l.Target < l.Least || l.Most > 0 && l.Most < l.Target {
						t.Errorf("most %s, strip %s, %s: edge %d: %+v", most, strip, room, e, l)
					}
				}
			}
		}
	}
}

// One reading of the meter is today's; of several none is.
func TestWhereOfMeter(t *testing.T) {
	j := hall(t, `, "meter": {"march": 11}`)
	if w := WhereOf(&j); w.Month != 2 || w.Meter != 11 {
		t.Errorf("%+v", w)
	}
	j = hall(t, `, "meter": {"march": 11, "june": 12}`)
	if w := WhereOf(&j); w.Month != -1 || w.Meter != 0 || w.Read[5] != 12 {
		t.Errorf("%+v", w)
	}
	w := WhereOf(&j)
	w.Climate, w.Room, w.Month = timber.Maritime, timber.Heated, 5
	if year, today, by := MoistureOf(&w); today != 12 || year[2] != 11 || by != ByMonth {
		t.Errorf("%v today by %v, %v", today, by, year)
	}
}
