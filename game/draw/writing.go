package draw

import "unicode/utf8"

// Widths of the printable ASCII signs from space on, in thousandths of the type
// size, as a common sans-serif face has them.
var widths = [95]uint16{
	278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
	556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
	1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
	667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
	333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
	556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
}

const (
	widthElse = 600  // any other sign, thousandths
	widthWide = 1000 // from firstWide on, where the scripts stand whose signs are as wide as high
	firstWide = 0x2e80
	roomy     = 1.12 // the widest of the faces a system may bring, over the common one
	bolder    = 1.09 // bold letters over plain ones
	usual     = 1.06 // what TextWidth gives over a middling face
	ascent    = 0.75 // of the size, above the baseline
	descent   = 0.23 // below it
	leading   = 1.35 // from line to line
)

// TextWidth gives the width in px that a text of the given size takes up in the
// wider sans-serif faces; others stay up to a fifth below it. Labels are kept apart
// by it, since nothing here can know the face they will be set in.
func TextWidth(s string, size float64, bold bool) float64 {
	n := 0
	for _, r := range s {
		if r >= ' ' && int(r-' ') < len(widths) {
			n += int(widths[r-' '])
		} else if r >= firstWide {
			n += widthWide
		} else {
			n += widthElse
		}
	}
	w := float64(n) / 1000 * size * roomy
	if bold {
		w *= bolder
	}
	return w
}

// cut gives the longest start of s, ending between words, that is no wider than
// the room, and the rest. A first word too long is given whole.
func cut(s string, size, room float64) (line, rest string) {
	end := 0
	for i := 0; i <= len(s); {
		if i == len(s) || s[i] == ' ' {
			if end > 0 && TextWidth(s[:i], size, false) > room {
				break
			}
			end = i
		}
		if i == len(s) {
			break
		}
		_, n := utf8.DecodeRuneInString(s[i:])
		i += n
	}
	line, rest = s[:end], s[end:]
	for len(rest) > 0 && rest[0] == ' ' {
		rest = rest[1:]
	}
	return line, rest
}

// lines breaks a text into as few lines as the room allows and makes them nearly
// even.
func lines(text string, size, room float64) (count int, even float64) {
	count = countLines(text, size, room)
	even = room
	for range 20 { // down to less than half the room
		if count < 2 || countLines(text, size, even*0.96) != count {
			break
		}
		even *= 0.96
	}
	return count, even
}

func countLines(text string, size, room float64) (n int) {
	for ; text != ""; n++ {
		_, text = cut(text, size, room)
	}
	return n
}
