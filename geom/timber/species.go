package timber

import "strings"

// Species is a timber doors are made of.
type Species struct {
	Name, Latin string
	// Also are other names of it, Loose those that may mean another timber as well;
	// both in small letters with commas between.
	Also, Loose string
	Gravity     float64 // ovendry mass over the volume near 12 % moisture, to water's
	Density     float64 // kg/m³ at 12 %
	// Radial and Tangential are the change of width per % of moisture, as a part of the
	// width, of boards sawn on the quarter and flat-sawn.
	Radial, Tangential float64
	Status             Status
}

// Timbers are the species. Coefficients: Wood Handbook (FPL-GTR-190, 2010) Table 13-5;
// of the last three, which are not in it, [Coefficient] of their published shrinkage
// from 30 %. Gravities: Tables 5-3a and 5-5a, of the tropical ones on the green volume,
// which makes screws look a little weaker; most from memory, so the rows are "partly".
// Scots pine: shrinkage from Hoadley's table, density from memory. Radiata pine: an
// exporters' guide, its shrinkage to 12 % over 0.6. Kauri: all from memory, and doubtful.
var Timbers = []Species{
	{"Douglas-fir", "Pseudotsuga menziesii", "douglas fir, oregon, columbian pine", "", 0.48, 538, 0.00165, 0.00267, Published},
	{"Douglas-fir (interior north)", "Pseudotsuga menziesii", "", "", 0.48, 538, 0.00130, 0.00241, Partly},
	{"Douglas-fir (interior west)", "Pseudotsuga menziesii", "", "", 0.50, 560, 0.00165, 0.00263, Partly},
	{"western redcedar", "Thuja plicata", "western red cedar, red cedar", "cedar", 0.32, 358, 0.00111, 0.00234, Partly},
	{"redwood (old growth)", "Sequoia sempervirens", "sequoia, californian redwood, coast redwood", "", 0.40, 448, 0.00120, 0.00205, Partly},
	{"redwood (young growth)", "Sequoia sempervirens", "", "", 0.35, 392, 0.00101, 0.00229, Partly},
	{"eastern white pine", "Pinus strobus", "yellow pine, quebec pine", "white pine", 0.35, 392, 0.00071, 0.00212, Partly},
	{"western white pine", "Pinus monticola", "", "", 0.38, 426, 0.00141, 0.00259, Partly},
	{"ponderosa pine", "Pinus ponderosa", "ponderosa", "", 0.40, 448, 0.00133, 0.00216, Partly},
	{"sugar pine", "Pinus lambertiana", "", "", 0.36, 403, 0.00099, 0.00194, Partly},
	{"longleaf pine", "Pinus palustris", "pitch pine", "", 0.59, 661, 0.00176, 0.00263, Partly},
	{"western hemlock", "Tsuga heterophylla", "hemlock", "", 0.45, 504, 0.00144, 0.00274, Published},
	{"white fir", "Abies concolor", "", "fir", 0.39, 437, 0.00112, 0.00245, Partly},
	{"yellow-poplar", "Liriodendron tulipifera", "tulipwood, yellow poplar", "poplar", 0.42, 470, 0.00158, 0.00289, Partly},
	{"red alder", "Alnus rubra", "", "alder", 0.41, 459, 0.00151, 0.00256, Partly},
	{"red oak", "Quercus rubra", "northern red oak", "", 0.63, 706, 0.00158, 0.00369, Partly},
	{"white oak", "Quercus alba", "", "oak", 0.68, 762, 0.00180, 0.00365, Partly},
	{"American chestnut", "Castanea dentata", "", "chestnut", 0.43, 482, 0.00116, 0.00234, Partly},
	{"sweetgum", "Liquidambar styraciflua", "", "gum", 0.52, 582, 0.00183, 0.00365, Partly},
	{"mahogany", "Swietenia macrophylla", "true mahogany, honduras mahogany", "", 0.45, 543, 0.00172, 0.00238, Partly},
	{"African mahogany", "Khaya", "khaya", "", 0.42, 504, 0.00141, 0.00201, Partly},
	{"Spanish-cedar", "Cedrela", "spanish cedar", "", 0.41, 491, 0.00141, 0.00219, Partly},
	{"American elm", "Ulmus americana", "", "elm", 0.50, 560, 0.00144, 0.00338, Partly},
	{"western larch", "Larix occidentalis", "", "larch", 0.52, 582, 0.00155, 0.00323, Partly},
	{"Sitka spruce", "Picea sitchensis", "", "spruce, whitewood, white deal", 0.40, 448, 0.00148, 0.00263, Partly},
	{"Scots pine", "Pinus sylvestris", "baltic pine, european redwood, red deal", "redwood, pine, deal", 0.46, 515, 0.00137, 0.00271, Partly},
	{"radiata pine", "Pinus radiata", "radiata, monterey pine", "", 0.42, 470, 0.00119, 0.00226, Partly},
	{"kauri", "Agathis australis", "new zealand kauri, nz kauri", "", 0.50, 560, 0.00130, 0.00237, Memory},
}

// Softwood is what a leaf is taken to be of while its timber is not known: 510 kg/m³, and
// the middle of the softwoods' coefficients above.
var Softwood = Species{Name: "softwood", Gravity: 0.45, Density: 510, Radial: 0.0013, Tangential: 0.00245, Status: Practice}

// Find gives the species a person's words name, and whether they name it beyond doubt:
// "old growth redwood" does not, for redwood is a pine in one country and a sequoia in
// another. Words that name none give [Softwood]. The longest name in the words wins.
func Find(words string) (s *Species, sure bool) {
	words = strings.ToLower(words)
	s = &Softwood
	longest := 0
	look := func(i int, names string, beyondDoubt bool) {
		for names != "" {
			var name string
			name, names, _ = strings.Cut(names, ",")
			if name = strings.TrimSpace(name); len(name) > longest && says(words, name) {
				s, sure, longest = &Timbers[i], beyondDoubt, len(name)
			}
		}
	}
	for i := range Timbers {
		t := &Timbers[i]
		look(i, strings.ToLower(t.Name), true)
		look(i, strings.ToLower(t.Latin), true)
		look(i, t.Also, true)
		look(i, t.Loose, false)
	}
	return s, sure
}

// says tells whether the name stands in the words as a word or words of its own.
func says(words, name string) bool {
	for from := 0; ; {
		at := strings.Index(words[from:], name)
		if at < 0 {
			return false
		}
		at += from
		end := at + len(name)
		if (at == 0 || !letter(words[at-1])) && (end == len(words) || !letter(words[end])) {
			return true
		}
		from = at + 1
	}
}

func letter(c byte) bool { return 'a' <= c && c <= 'z' || c >= 0x80 }
