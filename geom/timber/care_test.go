package timber_test

import (
	"testing"

	"leafwright/geom/timber"
)

func triggers(f timber.Facts, c timber.Caution) bool {
	for _, r := range timber.Cautions(&f) {
		if r.Caution == c {
			return true
		}
	}
	return false
}

// Each threshold just on either side of it.
func TestCautions(t *testing.T) {
	type facts = timber.Facts
	old := func(r timber.Region, built int) facts { return facts{Region: r, Built: built, Cuts: true} }
	with := func(f facts, change func(*facts)) facts { change(&f); return f }
	for _, c := range []struct {
		caution timber.Caution
		f       facts
		want    bool
	}{
		// lead: US before 1978; Australia before 1970, possible until 1997; NZ 1980, UK 1960 and 1992 from memory
		{timber.LeadLikely, old(timber.US, 1977), true},
		{timber.LeadLikely, old(timber.US, 1978), false},
		{timber.LeadPossible, old(timber.US, 1978), false},
		{timber.LeadLikely, old(timber.AU, 1969), true},
		{timber.LeadLikely, old(timber.AU, 1970), false},
		{timber.LeadPossible, old(timber.AU, 1970), true},
		{timber.LeadPossible, old(timber.AU, 1996), true},
		{timber.LeadPossible, old(timber.AU, 1997), false},
		{timber.LeadLikely, old(timber.NZ, 1979), true},
		{timber.LeadLikely, old(timber.NZ, 1980), false},
		{timber.LeadLikely, old("", 1979), true},
		{timber.LeadPossible, old("", 1996), true},
		{timber.LeadLikely, old(timber.UK, 1959), true},
		{timber.LeadPossible, old(timber.UK, 1991), true},
		{timber.LeadPossible, old(timber.UK, 1992), false},
		{timber.LeadLikely, old(timber.UK, 0), true}, // the year is not known
		{timber.LeadLikely, with(old(timber.UK, 2010), func(f *facts) { f.Reclaimed = true }), true},
		{timber.LeadLikely, with(old(timber.UK, 1900), func(f *facts) { f.LeadFree = true }), false},
		{timber.LeadLikely, with(old(timber.UK, 1900), func(f *facts) { f.Bare = true }), false},
		{timber.LeadLikely, facts{Built: 1900, Region: timber.UK}, false}, // nothing is worked
		{timber.LeadLikely, facts{Built: 1900, Region: timber.UK, Sands: true}, true},
		{timber.LeadBanned, facts{Built: 1900, Region: timber.US, Heats: true}, true},
		{timber.LeadBanned, facts{Built: 1900, Region: timber.US, Sands: true, Machine: true}, true},
		{timber.LeadBanned, facts{Built: 1900, Region: timber.US, Sands: true}, false},
		// 40 CFR 745: 6 ft² inside, 20 ft² outside
		{timber.LeadRegulated, facts{Region: timber.US, Built: 1950, Paid: true, Disturbed: 0.5575}, true},
		{timber.LeadRegulated, facts{Region: timber.US, Built: 1950, Paid: true, Disturbed: 0.5573}, false},
		{timber.LeadRegulated, facts{Region: timber.US, Built: 1950, Paid: true, Outer: true, Disturbed: 1.8582}, true},
		{timber.LeadRegulated, facts{Region: timber.US, Built: 1950, Paid: true, Outer: true, Disturbed: 1.8580}, false},
		{timber.LeadRegulated, facts{Region: timber.US, Built: 1950, Disturbed: 5}, false},
		{timber.RatedLeaf, facts{Rated: true}, true},
		{timber.RatedLeaf, facts{}, false},
		{timber.Asbestos, facts{Rated: true, Built: 2003}, true},
		{timber.Asbestos, facts{Rated: true, Built: 2004}, false},
		{timber.LowGlazing, facts{Glazed: true, GlassFrom: 1499}, true},
		{timber.LowGlazing, facts{Glazed: true, GlassFrom: 1500}, false},
		{timber.GlassWork, facts{Glazed: true, Cuts: true}, true},
		{timber.GlassWork, facts{Glazed: true}, false},
		{timber.HeavyLeaf, facts{Lifts: true, Mass: 25.1}, true}, // UK guideline, from memory
		{timber.HeavyLeaf, facts{Lifts: true, Mass: 25}, false},
		// ADA 32 in to the 815 mm of its metric text; AD M 750; NCC 820
		{timber.ClearNarrow, facts{Region: timber.US, ClearIs: 814}, true},
		{timber.ClearNarrow, facts{Region: timber.US, ClearIs: 815}, false},
		{timber.ClearNarrow, facts{Region: timber.UK, ClearIs: 749}, true},
		{timber.ClearNarrow, facts{Region: timber.UK, ClearIs: 750}, false},
		{timber.ClearNarrow, facts{Region: timber.AU, ClearIs: 819}, true},
		{timber.ClearNarrow, facts{Region: timber.AU, ClearIs: 820}, false},
		{timber.ClearNarrow, facts{Region: timber.AU, ClearWas: 850, ClearIs: 848}, true}, // hinges packed out 2 mm
		{timber.ClearNarrow, facts{Region: timber.AU, ClearWas: 850, ClearIs: 850}, false},
		{timber.ClearNarrow, facts{Narrows: true}, true},
		{timber.EscapeRoute, facts{Escape: true, Narrows: true}, true},
		{timber.UnsaidUse, facts{Unsaid: true, Rehung: true}, true},
		{timber.UnsaidUse, facts{Unsaid: true, Lifts: true}, false},
		{timber.UnsaidUse, facts{Rehung: true}, false},
		{timber.HighStep, facts{Step: 13.1}, true}, // ADA ½ in
		{timber.HighStep, facts{Step: 13}, false},
		{timber.EscapeRoute, facts{Escape: true, Rehung: true}, true},
		{timber.EscapeRoute, facts{Escape: true, Step: 1}, true},
		{timber.EscapeRoute, facts{Escape: true, ClearWas: 800, ClearIs: 790}, true},
		{timber.EscapeRoute, facts{Escape: true}, false},
		{timber.SmallToilet, facts{Toilet: true, Inward: true}, true},
		{timber.SmallToilet, facts{Toilet: true}, false},
		{timber.Structure, facts{Lost: 0.34}, true},
		{timber.Structure, facts{Lost: 0.33}, false},
		{timber.LiveBorer, facts{ActiveBore: true}, true},
		{timber.BadScrews, facts{HoldsNot: true}, true},
		{timber.WoodDust, facts{Sands: true}, true},
		{timber.WoodDust, facts{Lifts: true}, false},
		{timber.CedarDust, facts{Cedar: true, Cuts: true}, true},
		{timber.CedarDust, facts{Cuts: true}, false},
		{timber.Solvents, facts{Strips: true}, true},
		{timber.HiddenMetal, facts{Cuts: true}, true},
	} {
		if got := triggers(c.f, c.caution); got != c.want {
			t.Errorf("%s: %v with %+v", c.caution, got, c.f)
		}
	}
	seen := map[timber.Caution]bool{}
	for i := range timber.Rules {
		r := &timber.Rules[i]
		if seen[r.Caution] || r.Source == "" || r.Ask == "" || r.Status == "" || r.When == nil {
			t.Errorf("rule %s is not whole, or there twice", r.Caution)
		}
		seen[r.Caution] = true
	}
	if n := len(timber.Cautions(&timber.Facts{Bare: true})); n != 0 {
		t.Errorf("%d cautions of nothing at all", n)
	}
}

// US EPA FAQ 23002-14294: a 1 in strip off a 36 in wide door is 36 in²; 6 ft² is 864 in².
func TestLeadArea(t *testing.T) {
	const in2 = 25.4 * 25.4 * 1e-6
	near(t, "36 in²", timber.Disturbs(36*25.4, 25.4), 36*in2, 1e-12)
	near(t, "6 ft²", timber.LeadInside, 864*in2, 1e-12)
	near(t, "20 ft²", timber.LeadOutside, 2880*in2, 1e-12)
}
