package site

import (
	"encoding/hex"
	"fmt"
	"image/color"
	"regexp"
	"strconv"
	"strings"

	"golang.org/x/image/vector"
)

// shape is an outline and what it is filled with.
type shape struct {
	fill  color.Color
	trace func(p *pen)
}

// attributes are an SVG element's.
type attributes map[string]string

// shape makes a shape of an element.
func (a attributes) shape(element string) (s shape, err error) {
	rgb, err := hex.DecodeString(strings.TrimPrefix(a["fill"], "#"))
	if err != nil || len(rgb) != 3 {
		return s, fmt.Errorf("fill %q is no colour of six hexadecimal digits", a["fill"])
	}
	s.fill = color.NRGBA{rgb[0], rgb[1], rgb[2], 255}
	var wrong error
	number := func(name string) float64 {
		x, err := strconv.ParseFloat(a[name], 64)
		if err != nil && a[name] != "" {
			wrong = fmt.Errorf("%s %q is no number", name, a[name])
		}
		return x
	}
	switch element {
	case "rect":
		x, y, w, h, r := number("x"), number("y"), number("width"), number("height"), number("rx")
		s.trace = func(p *pen) { p.rect(x, y, w, h, r) }
	case "circle":
		x, y, r := number("cx"), number("cy"), number("r")
		s.trace = func(p *pen) { p.rect(x-r, y-r, 2*r, 2*r, r) }
	case "path":
		steps, err := readPath(a["d"])
		if err != nil {
			return s, err
		}
		s.trace = func(p *pen) { p.walk(steps) }
	default:
		return s, fmt.Errorf("is not one of rect, circle and path")
	}
	return s, wrong
}

// step is a command of a path and its numbers.
type step struct {
	command byte
	numbers []float64
}

var (
	pathStep   = regexp.MustCompile(`^\s*([MLHVZmlhvz])([^A-Za-z]*)`)
	pathNumber = regexp.MustCompile(`^[\s,]*([-+]?(?:\d+\.?\d*|\.\d+))`)
)

// each is how many numbers a command takes.
var each = map[byte]int{'M': 2, 'L': 2, 'H': 1, 'V': 1, 'Z': 0}

// readPath reads the straight lines of a path (SVG 2, section 9.3); for each
// repetition of a command's numbers there is a step.
func readPath(d string) (steps []step, err error) {
	for strings.TrimSpace(d) != "" {
		m := pathStep.FindStringSubmatch(d)
		if m == nil {
			return nil, fmt.Errorf("the path's %q is no straight line", d)
		}
		d = d[len(m[0]):]
		command := m[1][0]
		n := each[command&^0x20]
		var numbers []float64
		for rest := m[2]; strings.TrimSpace(rest) != ""; {
			k := pathNumber.FindStringSubmatch(rest)
			if k == nil {
				return nil, fmt.Errorf("the path's %q is no number", rest)
			}
			x, err := strconv.ParseFloat(k[1], 64)
			if err != nil {
				return nil, err
			}
			numbers = append(numbers, x)
			rest = rest[len(k[0]):]
		}
		if n == 0 && len(numbers) > 0 || n > 0 && (len(numbers) == 0 || len(numbers)%n != 0) {
			return nil, fmt.Errorf("the path's %c has %d numbers", command, len(numbers))
		}
		if n == 0 {
			steps = append(steps, step{command, nil})
		}
		for ; len(numbers) > 0; numbers = numbers[n:] {
			steps = append(steps, step{command, numbers[:n]})
			if command == 'M' || command == 'm' {
				command-- // what follows a move's first point are lines
			}
		}
	}
	return steps, nil
}

// pen traces outlines in a drawing's own measure.
type pen struct {
	r            *vector.Rasterizer
	times, shift float64
	x, y, x0, y0 float64 // where it is, and where the outline began
}

func (p *pen) at(x, y float64) (float32, float32) {
	return float32(p.times*x + p.shift), float32(p.times*y + p.shift)
}

func (p *pen) move(x, y float64) {
	p.x, p.y, p.x0, p.y0 = x, y, x, y
	p.r.MoveTo(p.at(x, y))
}

func (p *pen) line(x, y float64) {
	p.x, p.y = x, y
	p.r.LineTo(p.at(x, y))
}

func (p *pen) close() {
	p.r.ClosePath()
	p.x, p.y = p.x0, p.y0
}

// round goes a quarter of a circle on, inside the corner cx, cy.
func (p *pen) round(cx, cy, x, y float64) {
	const k = 0.5523 // of the radius: the cubic nearest to a circle's quarter
	bx, by := p.at(p.x+k*(cx-p.x), p.y+k*(cy-p.y))
	ex, ey := p.at(x+k*(cx-x), y+k*(cy-y))
	tx, ty := p.at(x, y)
	p.r.CubeTo(bx, by, ex, ey, tx, ty)
	p.x, p.y = x, y
}

// rect traces a rectangle whose corners have the radius r.
func (p *pen) rect(x, y, w, h, r float64) {
	p.move(x+r, y)
	p.line(x+w-r, y)
	p.round(x+w, y, x+w, y+r)
	p.line(x+w, y+h-r)
	p.round(x+w, y+h, x+w-r, y+h)
	p.line(x+r, y+h)
	p.round(x, y+h, x, y+h-r)
	p.line(x, y+r)
	p.round(x, y, x+r, y)
	p.close()
}

// walk goes the steps of a path.
func (p *pen) walk(steps []step) {
	for _, s := range steps {
		x, y := 0.0, 0.0
		if s.command >= 'a' {
			x, y = p.x, p.y
		}
		switch s.command {
		case 'M', 'm':
			p.move(x+s.numbers[0], y+s.numbers[1])
		case 'L', 'l':
			p.line(x+s.numbers[0], y+s.numbers[1])
		case 'H', 'h':
			p.line(x+s.numbers[0], p.y)
		case 'V', 'v':
			p.line(p.x, y+s.numbers[0])
		default:
			p.close()
		}
	}
}
