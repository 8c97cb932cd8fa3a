package survey

import (
	"cmp"
	"math"
	"slices"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/survey/lsq"
)

// State is what became of a reading.
type State int

// The states.
const (
	Used    State = iota // it has its full say in the shapes
	Doubted              // it and others contradict each other and nothing tells which is wrong: all have little say
	Suspect              // it does not fit the rest and has no say
	Faulty               // it is no reading at all; see Result.Faults
	Unused               // it needs a leaf that can be hung, and there is none
)

// Judged is a reading held against all the others.
type Judged struct {
	Reading
	Sigma float64 // its standard deviation, mm
	State State
	// Fitted is what the fitted shapes would read, and Residual the value less that:
	// of a suspect, how far it is off what all the others say.
	Fitted, Residual float64
	// Redundancy is the part of a slip in this reading that would show in its
	// residual, 0 to 1: the rest goes into the shapes unseen.
	Redundancy float64
	// Standardised is the residual in its own standard deviations; 0 when next to no
	// redundancy is left.
	Standardised float64
	// Shows is the least slip in this reading, mm, that the test would find 95 times
	// out of 100; infinite when nothing checks it.
	Shows float64
	Slips []Slip // what a suspect or doubted reading may have been, likeliest first
}

// Doubt is a group of readings, by their places among the readings, that
// contradict each other though none can be told to be the wrong one.
type Doubt struct{ Readings []int }

// Result is what the readings come to. Its methods share memory: they are for one
// goroutine at a time, with the Gaps it gives.
type Result struct {
	// Door is the fitted door: what was read, and square, plumb, flat and ordinary
	// where nothing was. It is only worth hanging when Hangs.
	Door  door.Door
	Hangs bool // the least set was read, and the door passes its check

	Readings []Judged // one for each reading, in their order; of too many, the first
	Doubts   []Doubt
	Members  []Member     // the stiles and rails that were read, in the readings' order
	Faults   []door.Fault // of the readings, of what is missing, of the door they make
	// Missing is a template of each reading the least set still lacks.
	Missing []Reading

	Chosen Chosen // what of the hanging is no more than a choice

	// Sigma0 is the size of the residuals of the readings used against what their
	// standard deviations promise: about 1; 0 when nothing was read twice over.
	Sigma0 float64
	// Redundancy is how many readings more there are than it takes, in effect.
	Redundancy float64

	adj *adjustment
}

// adjustment is one fit of the unknowns to the readings.
type adjustment struct {
	net      *net
	readings []Reading
	use      []bool // the readings that are sound
	rowOf    []int  // of each row, the reading
	row      []int  // of each reading, its row, or -1
	sigma    []float64
	weight   []float64 // by row; 0 has no say
	x        []float64
	sol      lsq.Solution
	hung     hung
	starting bool // only to have somewhere to hang the leaf from
	hanging  bool // readings of the hung leaf have their say
	judged   []Judged
	fresh    bool // judged as the unknowns stand
	doubts   []Doubt
	half     []float64 // memory, as long as the unknowns
	back     []float64
	pulls    []pulled // of each row that has a say, once asked for
	loose    looseness
	spare    pulled
	drawn    *draws // once asked for
	direct   []bool // of each quantity: whether it was itself read
}

// Adjust fits the shapes to the readings. It is a pure function of them; whatever
// they are, it gives a Result with all that is wrong in its Faults and everything
// that can be told. It takes every reading to be of the door as found.
func Adjust(readings []Reading) *Result { return AdjustMade(readings, nil) }

// AdjustMade fits the door as found where readings of the hung leaf may have been
// taken after moves made for keeps, see [Reading.After]: made does the moves. Nil
// takes every reading to be of the door as found.
func AdjustMade(readings []Reading, made Made) *Result { return AdjustFor(readings, made, nil) }

// AdjustFor does so, and hangs a leaf of which nothing tells that it ever hung as
// wanted, see [Result.Chosen]; nil hangs it as is usual.
func AdjustFor(readings []Reading, made Made, want *Hanging) *Result {
	a := &adjustment{readings: append([]Reading(nil), readings...)}
	a.hung.made = made
	res := &Result{adj: a}
	if n := len(readings); n > ReadingsMost {
		res.Faults = append(res.Faults, door.Fault{Path: "readings", Value: door.Say(float64(n)), Want: "at most " + door.Say(ReadingsMost)})
		a.readings = a.readings[:ReadingsMost]
	}
	a.sound(res)
	of := a.setApart()
	a.net = newNet(a.readings, a.use)
	a.rank()
	a.x = a.net.unknowns()
	a.sol.Room(len(a.rowOf)+len(a.net.wishes), 4*len(a.rowOf)+3*len(a.net.wishes)+len(a.hung.of)*a.net.columns)
	a.fit(res)
	res.Chosen = a.choose(want)
	a.tell(res)
	members, doubts := a.members(of)
	res.Members, res.Doubts = members, append(res.Doubts, doubts...)
	return res
}

// sound notes which readings can be used, and what is wrong with the others.
func (a *adjustment) sound(res *Result) {
	a.use = make([]bool, len(a.readings))
	a.judged = make([]Judged, len(a.readings))
	for i := range a.readings {
		r := &a.readings[i]
		faults := r.Check(at(i))
		res.Faults = append(res.Faults, faults...)
		a.use[i] = len(faults) == 0
		a.judged[i] = Judged{Reading: *r, Sigma: SigmaOf(*r), Fitted: math.NaN(), Shows: math.Inf(1)}
	}
	s := sizeOf(a.readings, a.use)
	for i := range a.readings {
		if a.use[i] {
			if f, bad := s.beyond(&a.readings[i], at(i)); bad {
				res.Faults = append(res.Faults, f)
				a.use[i] = false
			}
		}
		if !a.use[i] {
			a.judged[i].State = Faulty
		}
	}
}

// rank gives each sound reading its row.
func (a *adjustment) rank() {
	a.row = make([]int, len(a.readings))
	for i := range a.readings {
		a.row[i] = -1
		if !a.use[i] {
			continue
		}
		row := len(a.rowOf)
		a.row[i] = row
		a.rowOf = append(a.rowOf, i)
		s := a.judged[i].Sigma
		a.sigma = append(a.sigma, s)
		a.weight = append(a.weight, 1/float64(s*s))
		if specs[a.readings[i].Kind].hung {
			a.hung.of = append(a.hung.of, row)
		}
	}
}

// say adds a row for each reading and each wish, linearised at x.
func (a *adjustment) say(x []float64, rows *lsq.Rows) {
	a.net.write(x)
	o := observer{d: &a.net.d, net: a.net, rows: rows}
	var hung []float64
	if a.hanging {
		if a.hung.exact && !a.hangs() {
			rows.End(math.NaN(), 1) // no place to go to
			return
		}
		hung = a.read(x)
	}
	a.hung.leant = 0
	next := 0
	for row, i := range a.rowOf {
		r := &a.readings[i]
		spec := specs[r.Kind]
		var was float64
		if !spec.hung {
			was = r.Value - spec.observe(&o, r)
		} else {
			if a.hanging && a.judged[i].State != Unused {
				leans := false
				if was, leans = short(r, hung[next]); leans {
					a.hung.lean(rows, next)
					a.hung.leant++
				}
			}
			next++
		}
		rows.End(was, a.weight[row])
	}
	a.net.rows(rows)
}

// fit fits tape, level and straightedge first, and then, if the leaf can be hung,
// the readings of the hung leaf with them. Where nothing turns out to be wrong with
// any reading that is all; else each is held against the others without the hung
// ones first, which a slip with the tape would upset.
func (a *adjustment) fit(res *Result) {
	n := a.net.columns
	a.half, a.back, a.spare = make([]float64, n), make([]float64, n), newPulled(n)
	a.direct = make([]bool, len(a.net.quantity))
	a.pulls = make([]pulled, len(a.rowOf))
	for _, row := range a.hung.of {
		a.judged[a.rowOf[row]].State = Unused
	}
	a.arrange()
	if a.fitAll() {
		return
	}
	if err := a.snoop(); err != nil {
		res.Faults = append(res.Faults, astray(err))
	}
	a.net.write(a.x)
	if !a.hangable() {
		return
	}
	a.hang()
	if err := a.snoop(); err != nil {
		res.Faults = append(res.Faults, astray(err))
	}
}

// hangable tells whether there are hung readings to be had a say, and a leaf that
// can be hung.
func (a *adjustment) hangable() bool {
	return len(a.hung.of) > 0 && len(a.net.size.missing) == 0 && a.net.hangs()
}

// hang gives the hung readings their say.
func (a *adjustment) hang() {
	a.revive()
	a.fresh, a.hanging = false, true
	a.hung.at, a.hung.exact = nil, false
}

// fitAll fits all readings at once and tells whether nothing was wrong with any;
// else all is as it was before.
func (a *adjustment) fitAll() bool {
	if len(a.hung.of) == 0 || len(a.net.size.missing) > 0 {
		return false
	}
	sound := func() bool {
		a.starting = true
		err := a.solve()
		a.starting = false
		if err != nil {
			return false
		}
		if a.net.write(a.x); !a.hangable() {
			return false
		}
		a.hang()
		for range 3 {
			if err := a.settle(); err != nil {
				return false
			}
			if a.net.write(a.x); !a.net.worse() {
				break
			}
		}
		a.judge()
		for i := range a.judged {
			if j := &a.judged[i]; j.State == Used && math.Abs(j.Standardised) > critical {
				return false
			}
		}
		return true
	}
	if sound() {
		return true
	}
	a.hanging, a.fresh = false, false
	for _, row := range a.hung.of {
		a.judged[a.rowOf[row]].State = Unused
	}
	a.net.wishAnew()
	a.x = a.net.unknowns()
	return false
}

func astray(err error) door.Fault {
	return door.Fault{Path: "readings", Want: "no shape fits them: " + err.Error()}
}

// tell fills the result.
func (a *adjustment) tell(res *Result) {
	a.net.write(a.x)
	a.judge()
	stands := a.net.stand()
	res.Door = stands.Clone()
	a.straighten(&res.Door)
	res.Readings = a.judged
	for _, d := range a.doubts { // some of which may have been told apart later
		d.Readings = slices.DeleteFunc(slices.Clone(d.Readings), func(i int) bool { return a.judged[i].State != Doubted })
		if len(d.Readings) > 0 {
			res.Doubts = append(res.Doubts, d)
		}
	}
	res.Faults = append(res.Faults, a.beyondRepair(res.Doubts)...)
	res.Faults = append(res.Faults, a.net.size.missing...)
	res.Missing = a.net.size.wanted
	var sum float64
	for _, j := range a.judged {
		if j.State == Used && j.Redundancy > 0 {
			res.Redundancy += j.Redundancy
			sum += float64(j.Residual*j.Residual) / float64(j.Sigma*j.Sigma)
		}
	}
	if res.Redundancy > leastRedundancy {
		res.Sigma0 = sqrt(sum / res.Redundancy)
	}
	wrong := res.Door.Check()
	res.Hangs = len(wrong) == 0 && len(a.net.size.missing) == 0
	if len(a.net.size.missing) == 0 {
		res.Faults = append(res.Faults, wrong...)
	}
}

// assumed is the least part of what is known of a thing that comes from what is
// ordinary for it to be called not measured: the readings tell less than a quarter
// as much.
const assumed = 0.8

// Assumptions tells what was taken to be ordinary, no reading saying otherwise.
func (r *Result) Assumptions() []Assumption {
	a := r.adj
	n := a.net
	share := make([]float64, len(n.names))
	count := make([]float64, len(n.names))
	sigma := make([]float64, len(n.names))
	n.write(a.x)
	for i := range n.wishes {
		w, row := &n.wishes[i], len(a.rowOf)+i
		if w.name < 0 || row >= a.sol.Rows.Len() {
			continue
		}
		count[w.name]++
		if a.sol.Rows.Weight(row) > 0 {
			a.sol.Rows.Scatter(a.half, row, 1/w.sigma)
			a.sol.Factor.Half(a.half, a.half)
			share[w.name] += lsq.Dot(a.half, a.half)
		}
		sigma[w.name] = max(sigma[w.name], w.sigma)
	}
	var out []Assumption
	tilt, tilted := r.Tilt()
	for i, name := range n.names {
		if tilted && (name.what == floorLevel || name.what == lineSpecs[head].name) {
			continue // not level, but half and half
		}
		if count[i] > 0 && share[i] >= assumed*count[i] {
			out = append(out, n.say(name, sigma[i]))
		}
	}
	if tilted {
		out = append(out, Assumption{What: Fall, Taken: "as partly the head's and partly the floor's", Sigma: math.Abs(tilt.Fall) / 2, Tilt: tilt})
	}
	if c := r.Chosen; c.Any() {
		on := "on jamb and leaf"
		switch {
		case !c.Leaf:
			on = "on the jamb"
		case !c.Jamb:
			on = "on the leaf"
		}
		out = append(out, Assumption{What: "places and gains of the hinges " + on, Taken: "where the gaps wanted ask for them, since nothing tells that they are cut", Sigma: marked})
	}
	return out
}

// Unusual is a departure far beyond what is ordinary. Nothing contradicts it, but
// where only one reading tells of it that reading is worth taking again.
type Unusual struct {
	What  string // "closed thickness of the bottom hinge"
	Off   float64
	Sigma float64 // of what is ordinary, and of the reading
}

// Unusual tells what is far from ordinary, worst first.
func (r *Result) Unusual() []Unusual {
	const far = 4.5 // standard deviations
	a := r.adj
	n := a.net
	var out []Unusual
	n.write(a.x)
	for i := range n.wishes {
		w, row := &n.wishes[i], len(a.rowOf)+i
		off := n.is(w) - w.mean
		if w.name < 0 || row >= a.sol.Rows.Len() || math.Abs(off) <= far*w.sigma {
			continue
		}
		a.sol.Rows.Scatter(a.half, row, 1)
		a.pull(a.spare, a.half)
		sigma := sqrt(float64(w.sigma*w.sigma) + a.variance(a.spare))
		if math.Abs(off) > far*sigma {
			out = append(out, Unusual{n.names[w.name].says(), off, sigma})
		}
	}
	geom.Order(out, func(a, b Unusual) int {
		return cmp.Compare(math.Abs(b.Off)*a.Sigma, math.Abs(a.Off)*b.Sigma)
	})
	return out
}
