package pdf

import (
	"bytes"
	"compress/zlib"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"
)

// What follows reads a PDF's pages back, knowing nothing of how they were written: the
// content streams of ISO 32000-1, as far as lines and words go.

// drawn is what a page's stream lays down: the points of its paths in pt, up from the
// lower edge as PDF has them, and its words in order.
type drawn struct {
	paths [][][2]float64
	words []said
}

type said struct {
	text string
	x, y float64
}

var streamStart = regexp.MustCompile(`stream\r?\n`)

// pagesOf gives what every page draws, in order.
func pagesOf(t testing.TB, file []byte) (pages []drawn) {
	t.Helper()
	for rest := file; ; {
		at := streamStart.FindIndex(rest)
		if at == nil {
			break
		}
		end := bytes.Index(rest[at[1]:], []byte("endstream"))
		body := rest[at[1] : at[1]+end]
		rest = rest[at[1]+end+len("endstream"):]
		z, err := zlib.NewReader(bytes.NewReader(body))
		if err != nil {
			continue
		}
		data, err := io.ReadAll(z)
		if err != nil || !bytes.Contains(data, []byte(" m\n")) || bytes.Contains(data, []byte("begincmap")) || bytes.HasPrefix(data, []byte{0, 1, 0, 0}) {
			continue
		}
		pages = append(pages, readStream(t, data))
	}
	return pages
}

func readStream(t testing.TB, data []byte) (p drawn) {
	t.Helper()
	var operands []string
	var x, y float64
	number := func(i int) float64 {
		v, err := strconv.ParseFloat(operands[len(operands)+i], 64)
		if err != nil {
			t.Fatalf("%q is no number", operands[len(operands)+i])
		}
		return v
	}
	for i := 0; i < len(data); {
		switch c := data[i]; {
		case c == ' ' || c == '\n' || c == '\r' || c == '\t':
			i++
		case c == '(':
			var s []byte
			for i++; data[i] != ')'; i++ {
				if data[i] == '\\' {
					i++
					switch data[i] {
					case 'r':
						s = append(s, '\r')
						continue
					case 'n':
						s = append(s, '\n')
						continue
					}
				}
				s = append(s, data[i])
			}
			i++
			operands = append(operands, string(s))
		default:
			from := i
			for i < len(data) && !strings.ContainsRune(" \n\r\t(", rune(data[i])) {
				i++
			}
			word := string(data[from:i])
			switch word {
			case "m":
				p.paths = append(p.paths, [][2]float64{{number(-2), number(-1)}})
			case "l":
				last := &p.paths[len(p.paths)-1]
				*last = append(*last, [2]float64{number(-2), number(-1)})
			case "Td":
				x, y = number(-2), number(-1)
			case "Tj":
				raw := operands[len(operands)-1]
				var u []uint16
				for k := 0; k+1 < len(raw); k += 2 {
					u = append(u, uint16(raw[k])<<8|uint16(raw[k+1]))
				}
				p.words = append(p.words, said{string(utf16.Decode(u)), x, y})
			default:
				operands = append(operands, word)
				continue
			}
			operands = operands[:0]
		}
	}
	return p
}
