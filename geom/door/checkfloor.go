package door

import "strconv"

// Check gives what is wrong with the floor.
func (f *Floor) Check() (faults []Fault) {
	if len(f.Radii) == 0 && len(f.Angles) == 0 && len(f.Heights) == 0 {
		return nil
	}
	rising := func(path, what string, n int, value func(int) float64, allow Range, least float64) {
		if n < 1 || n > FloorMost {
			faults = append(faults, Fault{Path: path, Value: plural(n, what), Want: "between 1 and " + strconv.Itoa(FloorMost)})
			return
		}
		for i := range n {
			x := value(i)
			if g, bad := allow.Fault(at(path, i), x, what == "radius"); bad {
				faults = append(faults, g)
			} else if i > 0 && !(x-value(i-1) >= least) {
				faults = append(faults, Fault{Path: at(path, i), Value: Say(x), Want: "above the one before, " + Say(value(i-1)) + ", by " + Say(least) + " at least"})
			}
		}
	}
	rising("floor.radii", "radius", len(f.Radii), func(i int) float64 { return f.Radii[i] }, FloorRadius, ApartLeast)
	rising("floor.angles", "angle", len(f.Angles), func(i int) float64 { return f.Angles[i].Degrees() }, FloorAngle.Round(degreeNoise), 0.1)
	if len(f.Heights) != len(f.Angles) {
		faults = append(faults, Fault{Path: "floor.heights", Value: plural(len(f.Heights), "row"), Want: "one row for each of " + plural(len(f.Angles), "angle")})
	}
	if len(faults) > 0 {
		return faults
	}
	for i, row := range f.Heights {
		if len(row) != len(f.Radii) {
			faults = append(faults, Fault{Path: at("floor.heights", i), Value: plural(len(row), "height"), Want: "one height for each of the " + strconv.Itoa(len(f.Radii)) + " radii"})
			continue
		}
		for k, y := range row {
			if g, bad := FloorHeight.Fault(at(at("floor.heights", i), k), y, true); bad {
				faults = append(faults, g)
			}
		}
	}
	return faults
}
