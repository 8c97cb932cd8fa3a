package dxf

import (
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/internal/demos"
	"leafwright/game/words"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// entity is what a reader made of one thing drawn.
type entity struct {
	Kind, Layer, Text string
	Closed            bool
	Points            []pt
}

// jobs are the demos, the first two with the hinges on either side, and one option
// more that works every edge, the hinges and the frame.
func jobs(t *testing.T) (all []game.Job) {
	t.Helper()
	for i, j := range demos.All(t) {
		o := game.Option{Name: "Дверь 門 \\ 😀 ^x"}
		o.Moves = []trim.Move{
			{Kind: trim.Plane, Edge: door.HingeSide, First: 1, Last: 2},
			{Kind: trim.Plane, Edge: door.LatchSide, First: 3, Last: 1, From: 300, To: 1100},
			{Kind: trim.Cut, Edge: door.HeadSide, First: 14, Last: 9},
			{Kind: trim.Scribe, Edge: door.FloorSide, Line: geom.Through(0, 2, 200, 3.5, 500, 1)},
			{Kind: trim.Splice, Edge: door.HeadSide, Face: trim.Middle, First: 12, Last: 12, Stock: j.Door.Leaf.Thickness},
			{Kind: trim.Sink, Hinge: 1, On: trim.OnBoth, First: 1.5},
			{Kind: trim.Bevel, Edge: door.LatchSide, Angle: 4 * geom.Degree},
			{Kind: trim.PlaneJamb, Edge: door.LatchSide, First: 2, Last: 0},
		}
		j.Options = append(j.Options, o)
		all = append(all, j)
		if i < 2 {
			j = j.Clone()
			j.Hand = map[game.Hand]game.Hand{game.Left: game.Right, game.Right: game.Left}[j.Hand]
			j.Made = []trim.Move{{Kind: trim.Plane, Edge: door.FloorSide, First: 1, Last: 2}}
			all = append(all, j)
		}
	}
	if len(all) < 11 {
		t.Fatal("no demos")
	}
	return all
}

// byCodes reads a file by its group codes, as the format's published reference has
// them: 0 begins a thing, 8 is its layer, 10 and 20 a point, 70 bit 1 a closed line.
func byCodes(t *testing.T, data []byte) (all []entity, variables map[string]string) {
	t.Helper()
	lines := strings.Split(strings.TrimSuffix(string(data), "\r\n"), "\r\n")
	if len(lines)%2 != 0 {
		t.Fatalf("%d lines", len(lines))
	}
	variables = map[string]string{}
	section, variable := "", ""
	for i := 0; i < len(lines); i += 2 {
		code, err := strconv.Atoi(strings.TrimSpace(lines[i]))
		value := lines[i+1]
		if err != nil {
			t.Fatalf("line %d: code %q", i+1, lines[i])
		}
		for k := range len(value) {
			if value[k] < ' ' || value[k] > '~' {
				t.Fatalf("line %d holds %q", i+2, value)
			}
		}
		switch {
		case code == 2 && i > 1 && lines[i-1] == "SECTION":
			section = value
		case code == 9:
			variable = value
		case section == "HEADER" && variables[variable] == "":
			variables[variable] = value
		case section != "ENTITIES":
		case code == 0 && (value == "VERTEX" || value == "SEQEND" || value == "ENDSEC" || value == "EOF"):
			if value == "VERTEX" { // its own point follows
				all[len(all)-1].Points = append(all[len(all)-1].Points, pt{math.NaN(), math.NaN()})
			}
		case code == 0:
			all = append(all, entity{Kind: value})
			if value == "LINE" || value == "POINT" || value == "TEXT" {
				all[len(all)-1].Points = []pt{{math.NaN(), math.NaN()}}
			}
		default:
			e := &all[len(all)-1]
			x, _ := strconv.ParseFloat(value, 64)
			n := len(e.Points) - 1
			switch code {
			case 8:
				e.Layer = value
			case 1:
				e.Text = value
			case 70:
				e.Closed = value == "1"
			case 10:
				if n >= 0 {
					e.Points[n].x = x
				}
			case 20:
				if n >= 0 {
					e.Points[n].y = x
				}
			case 11:
				e.Points = append(e.Points, pt{x, math.NaN()})
			case 21:
				e.Points[n].y = x
			}
		}
	}
	return all, variables
}

// byLibrary reads a file with dxf-parser, a program of others for Node, in the folder
// of modules that LEAFWRIGHT_DXF names.
func byLibrary(t *testing.T, data []byte) (all []entity, variables map[string]string) {
	t.Helper()
	const program = `
const P = require("dxf-parser"), fs = require("fs");
const d = new P().parseSync(fs.readFileSync(0, "utf8"));
const xy = (p) => ({X: p.x, Y: p.y});
console.log(JSON.stringify({
  Header: d.header,
  Layers: Object.keys(d.tables.layer.layers),
  All: d.entities.map((e) => ({Kind: e.type, Layer: e.layer, Closed: !!e.shape, Text: e.text || "",
    Points: (e.vertices || [e.position || e.startPoint]).map(xy)}))}));`
	c := exec.Command("node", "-e", program)
	c.Env = append(os.Environ(), "NODE_PATH="+os.Getenv("LEAFWRIGHT_DXF"))
	c.Stdin = strings.NewReader(string(data))
	c.Stderr = os.Stderr
	out, err := c.Output()
	if err != nil {
		t.Fatal(err)
	}
	var said struct {
		Header map[string]any
		Layers []string
		All    []struct {
			Kind, Layer, Text string
			Closed            bool
			Points            []struct{ X, Y float64 }
		}
	}
	if err := json.Unmarshal(out, &said); err != nil {
		t.Fatal(err)
	}
	known := map[string]bool{}
	for _, l := range said.Layers {
		known[l] = true
	}
	variables = map[string]string{}
	for name, v := range said.Header {
		switch v := v.(type) {
		case string:
			variables[name] = v
		case float64:
			variables[name] = strconv.FormatFloat(v, 'f', -1, 64)
		}
	}
	for _, e := range said.All {
		if !known[e.Layer] {
			t.Errorf("%s on %q, a layer there is not", e.Kind, e.Layer)
		}
		to := entity{Kind: e.Kind, Layer: e.Layer, Text: e.Text, Closed: e.Closed}
		for _, p := range e.Points {
			to.Points = append(to.Points, pt{p.X, p.Y})
		}
		all = append(all, to)
	}
	return all, variables
}

// off gives how far a point lies from a line of pieces.
func off(p pt, e *entity) float64 {
	least := math.Inf(1)
	n := len(e.Points)
	for i := range n {
		a, b := e.Points[i], e.Points[(i+1)%n]
		if i == n-1 && !e.Closed {
			break
		}
		dx, dy := b.x-a.x, b.y-a.y
		k := 0.0
		if d := dx*dx + dy*dy; d > 0 {
			k = min(1, max(0, ((p.x-a.x)*dx+(p.y-a.y)*dy)/d))
		}
		least = min(least, math.Hypot(p.x-a.x-k*dx, p.y-a.y-k*dy))
	}
	return least
}

const within = 0.01 // mm

// holdLeaf compares a drawn outline with the leaf: every place of every edge lies on it,
// and it reaches no farther.
func holdLeaf(t *testing.T, what string, j *game.Job, e *entity, l *door.Leaf, depth float64) {
	t.Helper()
	place := func(u, v float64) pt {
		if j.Hand == game.Right {
			return pt{j.Door.Leaf.Width - u, v}
		}
		return pt{u, v}
	}
	back := [door.Edges]float64{depth * math.Tan(float64(l.HangingBevel)), -depth * math.Tan(float64(l.ClosingBevel))}
	lo, hi := pt{math.Inf(1), math.Inf(1)}, pt{math.Inf(-1), math.Inf(-1)}
	for side := range door.Edges {
		from, to := ends(l, side, depth)
		line := edgeOf(l, side)
		for i := range 201 {
			at := from + (to-from)*float64(i)/200
			p := place(at, line.At(at))
			if side.Upright() {
				p = place(line.At(at)+back[side], at)
			}
			lo, hi = pt{min(lo.x, p.x), min(lo.y, p.y)}, pt{max(hi.x, p.x), max(hi.y, p.y)}
			if d := off(p, e); !(d <= within) {
				t.Fatalf("%s: edge %d at %.1f is %.3f mm off the outline drawn", what, side, at, d)
			}
		}
	}
	for _, p := range e.Points {
		if p.x < lo.x-1 || p.x > hi.x+1 || p.y < lo.y-1 || p.y > hi.y+1 { // bends between the places looked at
			t.Errorf("%s: %v is drawn outside the leaf", what, p)
		}
	}
}

// the readers and what each needs.
func readers(t *testing.T) map[string]func(*testing.T, []byte) ([]entity, map[string]string) {
	all := map[string]func(*testing.T, []byte) ([]entity, map[string]string){"by codes": byCodes}
	switch {
	case os.Getenv("LEAFWRIGHT_DXF") != "":
		all["by dxf-parser"] = byLibrary
	case os.Getenv("CI") != "":
		t.Error("LEAFWRIGHT_DXF names no folder with dxf-parser")
	default:
		t.Log("without dxf-parser: LEAFWRIGHT_DXF names no folder")
	}
	return all
}

func TestOutlinesReadBack(t *testing.T) {
	for name, read := range readers(t) {
		t.Run(name, func(t *testing.T) {
			for _, j := range jobs(t) {
				options := []int{len(j.Options) - 1, game.AsItStands}
				if name == "by codes" {
					options = append(options, 0)
				}
				for _, option := range options {
					checkFile(t, &j, option, read)
				}
			}
		})
	}
}

// checkFile reads a drawing back and holds what is drawn against the model.
func checkFile(t *testing.T, j *game.Job, option int, read func(*testing.T, []byte) ([]entity, map[string]string)) {
	t.Helper()
	all, variables := read(t, Of(j, option, words.For(words.AU)))
	for name, want := range map[string]string{"$ACADVER": "AC1009", "$INSUNITS": "4", "$MEASUREMENT": "1"} {
		if variables[name] != want {
			t.Errorf("%s is %q, want %q", name, variables[name], want)
		}
	}
	on := map[string][]entity{}
	for _, e := range all {
		on[e.Layer] = append(on[e.Layer], e)
	}
	p := trim.Piece{Door: j.Door, Anatomy: j.Anatomy}
	p, _ = trim.All(p, j.Made)
	stands := p
	var steps []trim.Step
	if option >= 0 {
		p, steps = trim.All(p, j.Options[option].Moves)
	}
	outline := func(layer string, l *door.Leaf, depth float64) {
		if len(on[layer]) != 1 || !on[layer][0].Closed {
			t.Errorf("%s, option %d: %d outlines on %s", j.Name, option, len(on[layer]), layer)
			return
		}
		holdLeaf(t, j.Name+" "+layer, j, &on[layer][0], l, depth)
	}
	outline(LeafAsFound, &j.Door.Leaf, 0)
	outline(LeafAfter, &p.Door.Leaf, 0)
	if len(j.Made) > 0 {
		outline(LeafAsItStands, &stands.Door.Leaf, 0)
	}
	if p.Door.Leaf.ClosingBevel != 0 || p.Door.Leaf.HangingBevel != 0 {
		outline(LeafAfterStop, &p.Door.Leaf, p.Door.Leaf.Thickness)
	}

	// the frame, by its own profiles
	frame := func(x, y float64) pt {
		if j.Hand == game.Right {
			x = j.OpeningWidth - x
		}
		return pt{j.Door.Leaf.Width + Beside + x, y}
	}
	f := &p.Door.Frame
	a, b := f.HeadCorners()
	for i := range 101 {
		k := float64(i) / 100
		y, x := 50+k*(min(a.Y, b.Y)-50), a.X+k*(b.X-a.X)
		for _, q := range []pt{frame(f.HingeJamb.At(y), y), frame(f.LatchJamb.At(y), y), frame(x, f.Head.At(x))} {
			if d := off(q, &on[Opening][0]); !(d <= within) {
				t.Fatalf("%s: %v of the frame is %.3f mm off the opening drawn", j.Name, q, d)
			}
		}
	}

	// recesses, one in leaf and jamb for each hinge that has them
	recesses := 0
	for _, h := range p.Door.Hinges {
		if h.LeafGain > 0 {
			recesses++
		}
		if h.JambGain > 0 {
			recesses++
		}
	}
	if got := len(on["HINGE_CHECK_OUTS"]); got != recesses {
		t.Errorf("%s: %d check-outs, want %d", j.Name, got, recesses)
	}
	cuts, strips := 0, 0
	for _, s := range steps {
		if s.Why == nil && s.Done.Cuts > 0 && s.Done.Off > 0 {
			cuts++
		}
		if s.Why == nil {
			strips += s.Done.Strips
		}
	}
	if len(on[Cuts]) != cuts || len(on[Strips]) != strips {
		t.Errorf("%s, option %d: %d cuts and %d strips, want %d and %d", j.Name, option, len(on[Cuts]), len(on[Strips]), cuts, strips)
	}
	if strips > 0 && len(on[Dowels]) < 9 { // three at least, each with bore, middle and mark
		t.Errorf("%s: %d things for dowels", j.Name, len(on[Dowels]))
	}
}

// The last cut of an edge is where the leaf after ends, where nothing is glued on.
func TestLastCutIsTheEdge(t *testing.T) {
	j := jobs(t)[0]
	j.Options = []game.Option{{Moves: []trim.Move{
		{Kind: trim.Plane, Edge: door.LatchSide, First: 2, Last: 2},
		{Kind: trim.Plane, Edge: door.LatchSide, First: 0, Last: 3},
	}}}
	all, _ := byCodes(t, Of(&j, 0, words.For(words.UK)))
	var last, after *entity
	for i := range all {
		switch all[i].Layer {
		case Cuts:
			last = &all[i]
		case LeafAfter:
			after = &all[i]
		}
	}
	for _, p := range last.Points {
		if d := off(p, after); !(d <= 1e-3) {
			t.Errorf("%v of the last cut is %.4f mm off the leaf after", p, d)
		}
	}
	top := last.Points[len(last.Points)-1]
	if want := j.Door.Leaf.Closing.At(top.y) - 5; !(math.Abs(top.x-want) <= 1e-3) {
		t.Errorf("the cut ends at %v, want x %v", top, want)
	}
}

func TestOtherScriptsInASCII(t *testing.T) {
	for text, want := range map[string]string{
		"Дверь":     `\U+0414\U+0432\U+0435\U+0440\U+044C`,
		"門 a\\b^\n": `\U+9580 a/b  `,
		"😀":         `\U+D83D\U+DE00`,
	} {
		if got := escaped(text); got != want {
			t.Errorf("%q is written %q, want %q", text, got, want)
		}
	}
	if HingeLayer(words.For(words.UK)) != "HINGE_RECESSES" || HingeLayer(words.For(words.US)) != "HINGE_GAINS" {
		t.Error(HingeLayer(words.For(words.UK)), HingeLayer(words.For(words.US)))
	}
}

func TestNothingThatIsNoNumber(t *testing.T) {
	data := file([]layer{{"A", 7, false}}, func(w *writer) {
		w.polyline(layer{"A", 7, false}, true, pt{0, 0}, pt{math.NaN(), 1})
		w.polyline(layer{"A", 7, false}, true, pt{0, 0})
		w.line(layer{"A", 7, false}, pt{0, 0}, pt{math.Inf(1), 1})
	})
	if all, _ := byCodes(t, data); len(all) != 0 {
		t.Errorf("drawn: %v", all)
	}
}

func FuzzText(f *testing.F) {
	for _, s := range []string{"", "\r\n  0\r\nEOF", "\xff", "門"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		data := file(nil, func(w *writer) { w.text(layer{name: "0"}, pt{}, 20, text) })
		all, _ := byCodes(t, data)
		if text != "" && len(all) != 1 || text == "" && len(all) != 0 {
			t.Errorf("%q became %d things", text, len(all))
		}
	})
}
