package advise_test

import (
	"flag"
	"fmt"
	"testing"

	"leafwright/geom/advise"
	"leafwright/geom/fault"
)

var honest = flag.Int("honest", 16, "how many faulty doors are asked about by every preference and with everything forbidden")

// forbids are the combinations of what may be forbidden, as bits: frame, hinges, strips.
const forbids = 8

// asks are the advices on a door, by preference and by what is forbidden.
type asks [4][forbids]advise.Advice

func everyAsk(p *advise.Problem) (got asks) {
	for i, prefer := range advise.Preferences {
		for f := range forbids {
			q := *p
			q.Wishes = advise.Wishes{Prefer: prefer, LeaveFrame: f&1 > 0, HingesStay: f&2 > 0, NoStrip: f&4 > 0}
			got[i][f] = advise.Plans(&q)
		}
	}
	return got
}

// more is a set of asks that forbid no less than another's.
func more(f int) (out []int) {
	for g := range forbids {
		if g&f == f {
			out = append(out, g)
		}
	}
	return out
}

// unheard gives the asks that no plan was found for though another, by any preference
// and forbidding no less, had one.
func (a *asks) unheard() (out []string) {
	for f := range forbids {
		by := ""
		for i := range a {
			for _, g := range more(f) {
				if len(a[i][g].Plans) > 0 {
					by = fmt.Sprintf("%s, forbidding %03b", advise.Preferences[i], g)
				}
			}
		}
		for i := range a {
			if is := &a[i][f]; by != "" && len(is.Plans) == 0 && !is.Good {
				out = append(out, fmt.Sprintf("no way by %s, forbidding %03b, but one by %s", advise.Preferences[i], f, by))
			}
		}
	}
	return out
}

// beaten gives the asks whose plan costs more, by their own preference, than one found
// for another that forbids no less, by more than a part of it and a little, and how many
// asks there were. Where gaps are not well known chances are in the price, and only asks
// of one preference are compared.
func (a *asks) beaten(rough bool, part, little float64) (out []string, count int) {
	for i, prefer := range advise.Preferences {
		for f := range forbids {
			if len(a[i][f].Plans) == 0 {
				continue
			}
			count++
			best := &a[i][f].Plans[0]
			price := func(p *advise.Plan) float64 {
				if rough {
					return p.Price
				}
				return advise.PriceOf(prefer, p)
			}
			mine := price(best)
			worst, by := "", little+part*mine
			for k := range a {
				if rough && k != i {
					continue
				}
				for _, g := range more(f) {
					for n := range a[k][g].Plans {
						p := &a[k][g].Plans[n]
						if prefer == advise.LeaveFrame && p.Cost.Frame && !best.Cost.Frame {
							continue // it costs more by what is preferred
						}
						if d := mine - price(p); d > by {
							by, worst = d, fmt.Sprintf("%s, forbidding %03b, plan %d: %s %+v", advise.Preferences[k], g, n, p.Family, p.Cost)
						}
					}
				}
			}
			if worst != "" {
				out = append(out, fmt.Sprintf("%s, forbidding %03b: %.1f by %s %+v, but %.1f less by %s", prefer, f, mine, best.Family, best.Cost, by, worst))
			}
		}
	}
	return out, count
}

// A preference weighs ways and finds none more or fewer; what is forbidden strikes ways
// off and adds none. So what any ask finds is found by all that forbid no more, and none
// is beaten at its own price by more than a step of rounding comes to.
func TestPreferencesOnlyWeigh(t *testing.T) {
	names, all := problems(t)
	for i, p := range all {
		got := everyAsk(p)
		for _, s := range got.unheard() {
			t.Errorf("%s: %s", names[i], s)
		}
		beaten, _ := got.beaten(p.Sigma != nil, 0.05, 5)
		for _, s := range beaten {
			t.Errorf("%s: %s", names[i], s)
		}
	}
	unheard, beaten, count := 0, 0, 0
	for n := range *honest {
		seed := uint64(7000 + n)
		hard := float64(seed%4) / 3
		sound := fault.Sound(seed, float64(seed%5)/4)
		kinds := fault.Mix(sound, nil, 1+n%3, seed, hard)
		piece, _ := fault.Make(sound, kinds, seed, hard)
		got := everyAsk(&advise.Problem{Piece: piece, Wanted: fault.Wanted()})
		none := got.unheard()
		dear, asked := got.beaten(false, 0.05, 5)
		for _, s := range append(none, dear...) {
			t.Logf("seed %d, %v: %s", seed, kinds, s)
		}
		unheard, beaten, count = unheard+len(none), beaten+len(dear), count+asked
	}
	t.Logf("%d asks answered, %d more without an answer another found, %d beaten by 5 %%", count, unheard, beaten)
	if 100*unheard > count || 20*beaten > count {
		t.Errorf("preferences do more than weigh")
	}
}

// No plan has a move that does nothing.
func TestNoMoveIsIdle(t *testing.T) {
	for n := range 40 {
		seed := uint64(9000 + n)
		sound := fault.Sound(seed, float64(seed%5)/4)
		piece, _ := fault.Make(sound, fault.Mix(sound, nil, 1+n%3, seed, 0.3), seed, 0.3)
		a := advise.Plans(&advise.Problem{Piece: piece, Wanted: fault.Wanted(), Wishes: advise.Wishes{Prefer: advise.Preferences[n%4]}})
		for i := range a.Plans {
			for s := range a.Plans[i].Stages {
				for _, m := range a.Plans[i].Stages[s].Moves {
					most := max(m.First, -m.First, m.Last, -m.Last)
					for _, at := range m.Line {
						most = max(most, at.Value)
					}
					if most < 0.05 && m.Angle == 0 {
						t.Errorf("seed %d, plan %d: %s by %g", seed, i, m.Kind, most)
					}
				}
			}
		}
	}
}
