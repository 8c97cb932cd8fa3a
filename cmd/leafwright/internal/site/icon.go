package site

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"image"
	"image/png"
	"io"

	"golang.org/x/image/vector"
)

// icon is the page's picture of itself. A home screen wants it in pixels.
const icon = "icon.svg"

// icons are the pictures made of it. One that is masked may be cut to a circle four
// fifths as wide (W3C Web Application Manifest, "Icon masks and safe zone"): its
// ground goes to the edge and what stands on that is smaller.
var icons = []struct {
	name   string
	size   int // px
	masked bool
}{
	{"icon-192.png", 192, false},
	{"icon-512.png", 512, false},
	{"icon-masked-512.png", 512, true},
	{"icon-180.png", 180, true}, // for screens that round the corners themselves
}

// safe is how much smaller things are on a masked icon: the farthest corner of what is
// drawn is 33 of 64 from the middle, and the circle's edge 25.6.
const safe = 0.76

// paintIcons puts the icons among the page's files.
func (f Files) paintIcons() error {
	d, err := readDrawing(f[icon])
	if err != nil {
		return fmt.Errorf("%s: %w", icon, err)
	}
	for _, i := range icons {
		var b bytes.Buffer
		encoder := png.Encoder{CompressionLevel: png.BestCompression}
		if err := encoder.Encode(&b, d.paint(i.size, i.masked)); err != nil {
			return err
		}
		f[i.name] = b.Bytes()
	}
	return nil
}

// drawing is a picture of filled shapes, side a side, the first of them the ground.
type drawing []shape

const side = 64

// paint gives the picture with size px a side.
func (d drawing) paint(size int, masked bool) image.Image {
	out := image.NewNRGBA(image.Rect(0, 0, size, size))
	for i, s := range d {
		p := pen{r: vector.NewRasterizer(size, size), times: float64(size) / side}
		switch {
		case masked && i == 0:
			p.rect(0, 0, side, side, 0)
		case masked:
			p.times *= safe
			p.shift = float64(size) * (1 - safe) / 2
			s.trace(&p)
		default:
			s.trace(&p)
		}
		p.r.Draw(out, out.Bounds(), image.NewUniform(s.fill), image.Point{})
	}
	return out
}

// readDrawing reads an SVG of rects, circles and paths in plain colours. What it does
// not know is an error: it would be missing in the pictures.
func readDrawing(data []byte) (d drawing, err error) {
	dec := xml.NewDecoder(bytes.NewReader(data))
	for {
		token, err := dec.Token()
		if errors.Is(err, io.EOF) && len(d) > 0 {
			return d, nil
		} else if err != nil {
			return nil, fmt.Errorf("no drawing: %w", err)
		}
		e, is := token.(xml.StartElement)
		if !is {
			continue
		}
		a := attributes{}
		for _, x := range e.Attr {
			a[x.Name.Local] = x.Value
		}
		if e.Name.Local == "svg" {
			if a["viewBox"] != "0 0 64 64" {
				return nil, fmt.Errorf("viewBox %q is not 0 0 64 64", a["viewBox"])
			}
			continue
		}
		s, err := a.shape(e.Name.Local)
		if err != nil {
			return nil, fmt.Errorf("<%s>: %w", e.Name.Local, err)
		}
		d = append(d, s)
	}
}
