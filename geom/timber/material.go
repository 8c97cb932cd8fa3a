package timber

import (
	"math"

	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// Thing is something a piece of work takes.
type Thing string

// The things, with what Size and Amount mean for each.
const (
	StripStock Thing = "strip"     // N lengths: length × height × thickness before dressing
	DowelStock Thing = "dowel"     // N dowels: diameter × length
	Glue       Thing = "glue"      // Amount in g
	ScrewStock Thing = "screw"     // N: diameter × length
	HingeStock Thing = "hinge"     // N: height of the plates, thickness folded shut
	PackerCard Thing = "packer"    // N: height × thickness
	PlugStock  Thing = "plug"      // N for old screw holes: diameter × length
	LiningWood Thing = "lining"    // N lengths for jamb, head or stop: length × width × thickness
	SillStock  Thing = "threshold" // N: length × width × height
	PaintStock Thing = "paint"     // Amount in ml of Paint, for N coats
	PatchStock Thing = "patch"     // N pieces of timber let in: length × width × depth
	FillerMix  Thing = "filler"    // Amount in cm³, in N batches
	FoamCore   Thing = "foam"      // Amount in cm³
)

// Item is a line of the bill.
type Item struct {
	Thing  Thing
	Paint  Paint // of paint
	N      int
	Size   [3]float64 // mm
	Amount float64
}

// Means is what the work is done with; zero values are usual ones.
type Means struct {
	Round   float64  // radius of the stock's arrises, mm
	Screw   Screws   // those of one plate: Number, Diameter and Into count; 0 = 4 of No. 8, 1¼ in
	Coats   []Layers // on bared wood, in order; nil = a coat of primer and two of enamel
	Voids   []Void   // to be filled or pieced
	Foam    bool     // a foam core under the filler's skin
	PotLife float64  // of the filler, minutes; 0 = 6
}

// What the bill goes by (common practice, no published source).
const (
	glueSpread  = 180.0 // g on a square metre of joint, one face wetted
	sawnLong    = 20.0  // mm a strip is longer than its edge, before it is dressed
	sawnHigh    = 3.0   // mm it is higher than wanted, before it is dressed
	plugAcross  = 10.0  // mm
	hingeScrews = 4
	glueSets    = 60.0      // minutes in the cramps
	glueCures   = 12 * 60.0 // minutes before the joint is worked
	treatDries  = 24 * 60.0 // minutes a treatment takes to dry
	takeDown    = 20.0      // minutes, its fittings with it
	tryDry      = 30.0      // minutes, hung on two screws a plate, its gaps read by feeler
	tryHung     = 10.0      // minutes, of a leaf that hangs as it did
	downAgain   = 5.0       // minutes, off two screws a plate
	hangWhole   = 20.0      // minutes, with all screws and fittings
)

// Bill is what a list of steps takes, and the order it is done in. Prices are the person's.
type Bill struct {
	Items []Item
	Tasks []Task
	Bared float64 // m² of bared wood to be painted
	Glued float64 // m² of joints
	Hands float64 // minutes of work
	Waits float64 // minutes of waiting, glue and paint, one after another
}

// Doing is what is done.
type Doing string

// The doings, in the order they come: what is bad is made good, the steps are done, the
// leaf is tried unpainted while a plane can still mend it, comes down again where wood is
// to be painted, and is hung for good.
const (
	TestPaint Doing = "test the paint"
	TakeDown  Doing = "take the leaf down"
	TreatIt   Doing = "treat" // beetles or damp, and let it dry
	FillVoids Doing = "fill"
	PieceIn   Doing = "piece in"
	DoStep    Doing = "step"
	SetGlue   Doing = "let the glue set"
	TryLeaf   Doing = "try the leaf"     // hung dry, or as it hangs: its swing, and its gaps by feeler
	Prime     Doing = "paint bared wood" // one coat
	HangLeaf  Doing = "hang the leaf"    // for good
)

// Task is one thing to do.
type Task struct {
	Doing   Doing
	Step    int     // of the list, counted from 0; −1 for none
	Void    int     // of the list; −1 for none
	Minutes float64 // of work (rough; common practice)
	Wait    float64 // minutes until the next may begin
}

// bill is a bill being made.
type bill struct {
	Bill
	means Means
	edges [door.Edges]float64 // mm of bared wood across each edge, faces counted
	thick float64
}

// BillOf gives what the steps take, done one after another on the piece as it was found
// before the first; steps that are off or were refused take nothing.
func BillOf(found trim.Piece, steps []trim.Step, means Means) Bill {
	b := &bill{means: means, thick: held(found.Door.Leaf.Thickness, 0, 1e3)}
	if b.means.Screw.Number <= 0 {
		b.means.Screw.Number = hingeScrews
	}
	b.means.Screw.Number = min(b.means.Screw.Number, 20)
	if b.means.Screw.Diameter = held(b.means.Screw.Diameter, 0, 20); b.means.Screw.Diameter == 0 {
		b.means.Screw.Diameter = Shank(8)
	}
	if b.means.Screw.Into = held(b.means.Screw.Into, 0, 200); b.means.Screw.Into == 0 {
		b.means.Screw.Into = 1.25 * inch
	}
	if means.Coats == nil {
		b.means.Coats = []Layers{{Paint: Primer, Coats: 1}, {Paint: Enamel, Coats: 2}}
	}
	paint, down := first(steps, means.Voids)
	if paint {
		b.task(Task{TestPaint, -1, -1, 15, 0})
	}
	if down {
		b.task(Task{TakeDown, -1, -1, takeDown, 0})
	}
	b.voids(&found)
	p := found
	for i := range steps {
		s := &steps[i]
		if s.Move.Off || s.Why != nil {
			continue
		}
		q, done, why := trim.Do(p, s.Move)
		if why != nil { // the list is of another piece
			continue
		}
		b.step(i, &p, &q, &s.Move, &done)
		p = q
	}
	if !down {
		if len(b.Tasks) > 0 {
			b.task(Task{TryLeaf, -1, -1, tryHung, 0})
		}
		return b.Bill
	}
	b.task(Task{TryLeaf, -1, -1, tryDry, 0})
	again := len(b.Tasks)
	if b.paint(&p); len(b.Tasks) > again {
		b.Tasks = append(b.Tasks, Task{})
		copy(b.Tasks[again+1:], b.Tasks[again:])
		b.Tasks[again] = Task{TakeDown, -1, -1, downAgain, 0}
		b.Hands += downAgain
	}
	b.task(Task{HangLeaf, -1, -1, hangWhole, 0})
	return b.Bill
}

// first tells whether painted wood is worked, so that its paint is tested before, and
// whether the leaf comes down: not for work on the frame alone, unless on the hinge jamb's
// face.
func first(steps []trim.Step, voids []Void) (paint, down bool) {
	paint, down = len(voids) > 0, len(voids) > 0
	for i := range steps {
		s := &steps[i]
		spec := trim.SpecOf(s.Move.Kind)
		if s.Move.Off || s.Why != nil || spec == nil {
			continue
		}
		switch s.Move.Kind {
		case trim.Pack, trim.Set, trim.PackJamb, trim.Threshold:
		default:
			paint = true
		}
		faced := s.Move.Kind == trim.PlaneJamb || s.Move.Kind == trim.PackJamb
		down = down || spec.Trade != trim.TheFrame || faced && s.Move.Edge == door.HingeSide
	}
	return paint, down
}

func (b *bill) task(t Task) {
	b.Tasks = append(b.Tasks, t)
	b.Hands += t.Minutes
	b.Waits += t.Wait
}

// add adds an item to the bill, to a line like it if there is one.
func (b *bill) add(i Item) {
	if i.N <= 0 && !(i.Amount > 0) {
		return
	}
	for k := range b.Items {
		if o := &b.Items[k]; o.Thing == i.Thing && o.Paint == i.Paint && o.Size == i.Size {
			o.N += i.N
			o.Amount += i.Amount
			return
		}
	}
	b.Items = append(b.Items, i)
}

// glue counts the glue for so many mm² of joint.
func (b *bill) glue(mm2 float64) {
	b.Glued += float64(mm2 * 1e-6)
	b.add(Item{Thing: Glue, Amount: float64(float64(mm2*1e-6) * glueSpread)})
}

// bared notes that so much of an edge's section, mm, is bare wood now.
func (b *bill) bared(e door.Edge, across float64) {
	if e >= 0 && e < door.Edges {
		b.edges[e] = max(b.edges[e], held(across, 0, 1e3))
	}
}

func (b *bill) voids(p *trim.Piece) {
	var sum Filler
	for i := range b.means.Voids {
		v := b.means.Voids[i]
		r := RepairOf(p, v)
		cure := CureFor(v, r, b.thick)
		if r.Treat {
			b.task(Task{TreatIt, -1, i, 15, treatDries})
		}
		switch cure {
		case LeaveIt:
			continue
		case CutItOut:
			b.task(Task{PieceIn, -1, i, 60, glueSets + glueCures})
			size := [3]float64{held(v.Up.Length(), 0, 1e4), held(v.Across.Length(), 0, 1e4), held(v.Depth, 0, b.thick)}
			b.add(Item{Thing: PatchStock, N: 1, Size: size})
			b.glue(float64(size[0] * size[1]))
			continue
		}
		f := FillerFor(v, b.thick, cure == FoamIt || v.Cure == "" && b.means.Foam)
		sum.Filler += f.Filler
		sum.Foam += f.Foam
		b.task(Task{FillVoids, -1, i, 15, 30})
	}
	pot := held(b.means.PotLife, 0, 240)
	if pot == 0 {
		pot = 6
	}
	n, _ := Batches(sum.Filler, pot, 0)
	b.add(Item{Thing: FillerMix, N: n, Amount: sum.Filler / 1000})
	b.add(Item{Thing: FoamCore, Amount: sum.Foam / 1000})
}

// step counts what one move takes.
func (b *bill) step(i int, p, q *trim.Piece, m *trim.Move, done *trim.Done) {
	wait := 0.0
	l := &p.Door.Leaf
	hinges := 1
	if m.Hinge == 0 {
		hinges = len(p.Door.Hinges)
	}
	sides := 1
	if m.On == trim.OnBoth {
		sides = 2
	}
	plates := sides * hinges
	plate := 100.0
	if len(p.Door.Hinges) > 0 {
		plate = p.Door.Hinges[0].Height
	}
	long := edgeEnds(l, m.Edge).Length()
	if m.Edge >= door.HeadSide && (m.Kind == trim.PackJamb || m.Kind == trim.Follow) {
		long = edgeEnds(l, door.HeadSide).Length()
	}
	switch m.Kind {
	case trim.Plane, trim.Scribe, trim.Bevel, trim.Ease, trim.Cut, trim.Undercut:
		b.bared(m.Edge, b.thick)
	case trim.Splice, trim.Reuse:
		d, _ := DowelsFor(*p, *m, b.means.Round)
		if d == nil {
			break
		}
		wait = glueSets + glueCures
		if m.Kind == trim.Splice {
			b.add(Item{Thing: StripStock, N: 1, Size: d.Blank})
		}
		short := d.Shorts[0] + d.Shorts[1]
		b.add(Item{Thing: DowelStock, N: len(d.Places) - short, Size: [3]float64{d.Diameter, d.Length}})
		b.add(Item{Thing: DowelStock, N: short, Size: [3]float64{d.Diameter, d.ShortLength}})
		b.glue(d.GlueArea)
		b.bared(m.Edge, b.thick+2*d.High)
	case trim.Shift, trim.Raise:
		if m.Kind == trim.Raise {
			plates = sides * len(p.Door.Hinges)
		}
		wait = b.plugs(plates)
	case trim.Pack:
		b.add(Item{Thing: PackerCard, N: plates, Size: [3]float64{plate, m.First}})
	case trim.Rehinge:
		wait = b.plugs(2 * hinges)
		b.add(Item{Thing: HingeStock, N: hinges, Size: [3]float64{m.Plates, m.Closed}})
		b.add(Item{Thing: ScrewStock, N: 2 * hinges * b.means.Screw.Number, Size: [3]float64{b.means.Screw.Diameter, b.means.Screw.Into}})
	case trim.PackJamb:
		b.add(Item{Thing: LiningWood, N: 1, Size: [3]float64{long, b.thick, max(m.First, m.Last)}})
	case trim.Follow:
		b.add(Item{Thing: LiningWood, N: 1, Size: [3]float64{long, b.thick, q.Door.Frame.StopWidth}})
	case trim.Threshold:
		across := q.Door.Frame.LatchJamb.At(0) - q.Door.Frame.HingeJamb.At(0)
		b.add(Item{Thing: SillStock, N: 1, Size: [3]float64{held(across, 0, 1e4), m.Wide, m.Cover}})
	}
	b.task(Task{DoStep, i, -1, held(done.Minutes, 0, 1e5), 0})
	if wait > 0 {
		b.task(Task{SetGlue, i, -1, 0, wait})
	}
}

// plugs counts those for the old screw holes of so many plates, and gives how long their
// glue sets before a screw is driven into one.
func (b *bill) plugs(plates int) (wait float64) {
	n := plates * b.means.Screw.Number
	b.add(Item{Thing: PlugStock, N: n, Size: [3]float64{plugAcross, b.means.Screw.Into}})
	b.glue(float64(float64(float64(n)*math.Pi) * float64(plugAcross*b.means.Screw.Into)))
	return glueSets
}

// paint counts the paint for what is bare in the end.
func (b *bill) paint(p *trim.Piece) {
	mm2 := 0.0
	for e, across := range b.edges {
		mm2 += float64(across * edgeEnds(&p.Door.Leaf, door.Edge(e)).Length())
	}
	b.Bared = mm2 * 1e-6
	if b.Bared <= 0 {
		return
	}
	for _, c := range b.means.Coats {
		of := CoatOf(c.Paint)
		n := min(max(c.Coats, 0), 10)
		if of == nil || n == 0 {
			continue
		}
		covers := of.Covers
		if film := held(c.Film, 0, 5000); film > 0 {
			covers = Rate(film, of.Solids)
		}
		b.add(Item{Thing: PaintStock, Paint: c.Paint, N: n, Amount: float64(float64(n)*b.Bared) / covers * 1000})
		for range n {
			b.task(Task{Prime, -1, -1, 10 + float64(b.Bared*20), of.Between * 60})
		}
	}
}
