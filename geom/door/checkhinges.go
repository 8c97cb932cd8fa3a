package door

import "strconv"

// CheckHinges gives what is wrong with the hinges; with a leaf that is sound in
// itself, also whether they are on it.
func CheckHinges(hinges []Hinge, leaf *Leaf) (faults []Fault) {
	n := len(hinges)
	if n < HingesLeast || n > HingesMost {
		count := Range{HingesLeast, HingesMost}
		return []Fault{{Path: "hinges", Value: plural(n, "hinge"), Want: count.String()}}
	}
	for i, h := range hinges {
		path := at("hinges", i)
		for _, c := range []struct {
			name  string
			value float64
			allow Range
		}{
			{"jamb", h.JambHeight, OpeningRange()},
			{"leaf", h.LeafHeight, LeafRange()},
			{"closed", h.Closed, Closed},
			{"leaf_gain", h.LeafGain, Gain},
			{"jamb_gain", h.JambGain, Gain},
			{"leaf_packer", h.LeafPacker, Packer},
			{"jamb_packer", h.JambPacker, Packer},
			{"pin", h.Pin, Pin},
			{"proud", h.Proud, Proud},
			{"height", h.Height, HingePlate},
		} {
			if !c.allow.Holds(c.value) {
				f, _ := c.allow.Fault(path+"."+c.name, c.value, true)
				faults = append(faults, f)
			}
		}
	}
	if len(faults) > 0 {
		return faults
	}
	for i, h := range hinges {
		path := at("hinges", i)
		if f, bad := LeafLift.Fault(path, h.JambHeight-h.LeafHeight, false); bad {
			f.Value = "a leaf hung " + f.Value + " above the floor"
			faults = append(faults, f)
		}
		if i == 0 {
			continue
		}
		above := hinges[i-1]
		for _, c := range []struct {
			name       string
			here, over float64
		}{{"jamb", h.JambHeight, above.JambHeight}, {"leaf", h.LeafHeight, above.LeafHeight}} {
			if c.here >= c.over {
				faults = append(faults, Fault{Path: path + "." + c.name, Value: Say(c.here), Want: "below the hinge before, " + Say(c.over) + ": hinges stand from the top one down"})
			} else if least := (h.Height + above.Height) / 2; c.over-c.here < least {
				faults = append(faults, Fault{Path: path + "." + c.name, Value: Say(c.over-c.here) + " below the hinge before", Want: "at least " + Say(least) + ": the plates would overlap"})
			}
		}
	}
	top, foot := hinges[0], hinges[n-1]
	for _, c := range []struct {
		name  string
		apart float64
	}{{"jamb", top.JambHeight - foot.JambHeight}, {"leaf", top.LeafHeight - foot.LeafHeight}} {
		if c.apart >= 0 && c.apart < HingesApart {
			faults = append(faults, Fault{Path: at("hinges", n-1) + "." + c.name, Value: Say(c.apart) + " below the top hinge", Want: "at least " + Say(HingesApart)})
		}
	}
	if leaf == nil {
		return faults
	}
	c := leaf.Corners(0)
	for i, h := range hinges {
		on := Range{c.HangingFoot.Y + h.Height/2, c.HangingHead.Y - h.Height/2}
		if !on.Holds(h.LeafHeight) {
			faults = append(faults, Fault{Path: at("hinges", i) + ".leaf", Value: Say(h.LeafHeight), Want: on.String() + ", where the hinge's plate is on the leaf"})
		}
	}
	return faults
}

// LeafRange is where on a leaf's edge a thing can be, and OpeningRange where on
// a jamb, before the leaf or the jamb is known.
func LeafRange() Range    { return Range{-HeightOff, LeafHeight.Hi + HeightOff} }
func OpeningRange() Range { return Range{-HeightOff, OpeningHeight.Hi + HeightOff} }

func plural(n int, thing string) string {
	if n != 1 {
		thing += "s"
	}
	return strconv.Itoa(n) + " " + thing
}

// Check gives what is wrong with the latch; with a sound leaf, also whether it is on it.
func (l Latch) Check(leaf *Leaf) (faults []Fault) {
	if f, bad := Proud.Fault("latch.proud", l.Proud, true); bad {
		faults = append(faults, f)
	}
	on := LeafRange()
	if leaf != nil {
		c := leaf.Corners(0)
		on = Range{c.ClosingFoot.Y, c.ClosingHead.Y}
	}
	if f, bad := on.Fault("latch.height", l.Height, true); bad {
		f.Want += ", where the closing edge is"
		faults = append(faults, f)
	}
	return faults
}
