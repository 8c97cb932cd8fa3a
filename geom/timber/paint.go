package timber

// Film gives the dry film, µm, of paint with so much solids by volume, %, spread so far,
// m² a litre. The identity of every coating's data sheet: solids × 10 / rate.
func Film(solids, rate float64) float64 {
	return float64(held(solids, 0, 100)*10) / held(rate, 0.1, 1000)
}

// Wet gives the wet film, µm, of paint spread so far, m² a litre: 1000 / rate.
func Wet(rate float64) float64 { return 1000 / held(rate, 0.1, 1000) }

// Rate gives how far a litre goes, m², for a dry film of so many µm from paint with so
// much solids by volume, %.
func Rate(film, solids float64) float64 {
	return float64(held(solids, 0, 100)*10) / held(film, 0.1, 1e5)
}

// Paint is a kind of coating.
type Paint string

// The kinds.
const (
	Primer   Paint = "primer"  // and undercoat
	Enamel   Paint = "enamel"  // waterborne
	Alkyd    Paint = "alkyd"   // solvent-borne gloss and satin
	OldPaint Paint = "old"     // a coat of an old build-up
	Unbuilt  Paint = "unbuilt" // oil, stain or wax, which leaves no film worth counting
)

// Coat is what a coat of a kind is like.
type Coat struct {
	Paint   Paint
	Lo, Hi  float64 // dry film, µm
	Solids  float64 // % by volume
	Covers  float64 // m² a litre
	Between float64 // hours to the next coat
	Status  Status
}

// Coats are the kinds: ranges of data sheets, from memory. An old build-up of many coats
// is 200 to 600 µm a face (from memory): measure it, by a chip taken off. Hours
// between coats are common practice; the tin says better.
var Coats = []Coat{
	{Primer, 30, 45, 42, 12, 16, Memory},
	{Enamel, 20, 35, 38, 14, 4, Memory},
	{Alkyd, 28, 40, 52, 15, 16, Memory},
	{OldPaint, 25, 50, 50, 13, 0, Memory},
	{Unbuilt, 0, 5, 20, 15, 6, Practice},
}

// CoatOf gives what a coat is like, nil for an unknown kind.
func CoatOf(p Paint) *Coat {
	for i := range Coats {
		if Coats[i].Paint == p {
			return &Coats[i]
		}
	}
	return nil
}

// Layers are coats of one kind on one face.
type Layers struct {
	Paint Paint
	Coats int
	Film  float64 // µm of one coat, measured or from the tin; 0 = by the kind
}

// Face is a painted face that looks at a gap.
type Face struct {
	Off   []Layers // to be stripped
	OffMM float64  // or stripped thickness as measured, mm; counts before Off where it is above 0
	On    []Layers // to come
}

// Allowance is what paint does to a gap, mm.
type Allowance struct {
	Takes float64 // the gap loses so much by the coats to come, at the middle of their ranges
	Gives float64 // it gains so much by what is stripped
	// Least and Most are what it loses in all, by the ends of the ranges; below 0 it gains.
	Least, Most float64
}

// Loses gives what the gap loses in all, mm: what a gap to be cut must have beyond the
// one wanted in service.
func (a Allowance) Loses() float64 { return a.Takes - a.Gives }

// thickness gives the layers' film, mm: least, middle, most.
func thickness(layers []Layers) (lo, mid, hi float64) {
	const most = 100 // coats
	for _, l := range layers {
		n := float64(min(max(l.Coats, 0), most)) / 1000
		if film := held(l.Film, 0, 5000); film > 0 {
			f := float64(n * film)
			lo, mid, hi = lo+f, mid+f, hi+f
		} else if c := CoatOf(l.Paint); c != nil {
			lo += float64(n * c.Lo)
			mid += float64(n * (c.Lo + c.Hi) / 2)
			hi += float64(n * c.Hi)
		}
	}
	return lo, mid, hi
}

// AllowanceOf gives what paint does to the gap between two faces, the leaf's edge and
// the frame's.
func AllowanceOf(leaf, frame Face) (a Allowance) {
	for _, f := range [2]Face{leaf, frame} {
		lo, mid, hi := thickness(f.On)
		offLo, off, offHi := thickness(f.Off)
		if mm := held(f.OffMM, 0, 10); mm > 0 {
			offLo, off, offHi = mm, mm, mm
		}
		a.Takes += mid
		a.Gives += off
		a.Least += lo - offHi
		a.Most += hi - offLo
	}
	return a
}
