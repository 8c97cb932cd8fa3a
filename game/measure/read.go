package measure

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Error says why a text is no length.
type Error struct {
	Text string // as typed
	Why  string // what is wrong or wanted
}

func (e *Error) Error() string { return strconv.Quote(e.Text) + ": " + e.Why }

// forms is what an unreadable text is answered with.
const forms = `a length is wanted, like 797, 797.5, 79.7 cm, 31 3/8 or 2' 7 3/8"`

// longest text worth looking at, in bytes.
const longest = 64

// vulgar are the one-character fractions.
var vulgar = map[rune][2]int{
	'½': {1, 2}, '¼': {1, 4}, '¾': {3, 4}, '⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8},
	'⅓': {1, 3}, '⅔': {2, 3}, '⅕': {1, 5}, '⅖': {2, 5}, '⅗': {3, 5}, '⅘': {4, 5}, '⅙': {1, 6}, '⅚': {5, 6},
}

// Read reads a length; a plain number is in the unit shown. The error is an
// [*Error].
func Read(text string, shown Unit) (Length, error) {
	typed := strings.TrimSpace(text)
	bad := func(why string) (Length, error) { return Length{}, &Error{typed, why} }
	if typed == "" {
		return bad(forms)
	}
	if len(typed) > longest || !utf8.ValidString(typed) {
		return bad(forms)
	}
	words, why := split(typed)
	if why != "" {
		return bad(why)
	}
	sign := 1.0
	if words[0].kind == minus {
		sign, words = -1, words[1:]
	}
	if len(words) == 0 {
		return bad(forms)
	}
	mm, why := value(words, shown)
	if why != "" {
		return bad(why)
	}
	if !(mm <= Most) {
		return bad("longer than " + strconv.Itoa(Most/1000) + " m")
	}
	mm = math.Round(mm*1e6) / 1e6
	if mm == 0 {
		sign = 1
	}
	return Length{sign * mm, typed}, nil
}

type kind int

const (
	number   kind = iota // 797 or 797.5
	fraction             // 3/8
	minus
	dash // between whole inches and their fraction
	feet
	inches
	metric // value is mm per unit
)

type word struct {
	kind  kind
	value float64
	whole bool // number without a decimal mark
}

// split cuts the text into words, or says what is wrong with it.
func split(text string) (words []word, why string) {
	for i := 0; i < len(text); {
		r, n := utf8.DecodeRuneInString(text[i:])
		switch {
		case unicode.IsSpace(r):
			i += n
		case r >= '0' && r <= '9' || r == '.' || r == ',':
			j := i
			for j < len(text) && (text[j] >= '0' && text[j] <= '9' || text[j] == '.' || text[j] == ',') {
				j++
			}
			w, why := figure(text[i:j])
			if why != "" {
				return nil, why
			}
			i = j
			if i < len(text) && text[i] == '/' || strings.HasPrefix(text[i:], "⁄") {
				_, n := utf8.DecodeRuneInString(text[i:])
				i += n
				j = i
				for j < len(text) && text[j] >= '0' && text[j] <= '9' {
					j++
				}
				of, err := strconv.Atoi(text[i:j])
				if err != nil || of < 2 || of > 64 || !w.whole {
					return nil, "a fraction is a whole number over 2 to 64, like 3/8"
				}
				w = word{kind: fraction, value: w.value / float64(of)}
				i = j
			}
			words = append(words, w)
		case vulgar[r] != [2]int{}:
			f := vulgar[r]
			words = append(words, word{kind: fraction, value: float64(f[0]) / float64(f[1])})
			i += n
		case r == '-' || r == '−' || r == '–' || r == '‑':
			k := dash
			if len(words) == 0 {
				k = minus
			}
			words = append(words, word{kind: k})
			i += n
		case r == '\'' || r == '′' || r == '’' || r == '‘':
			i += n
			if next, m := utf8.DecodeRuneInString(text[i:]); next == r { // two single marks stand for inches
				i += m
				words = append(words, word{kind: inches})
			} else {
				words = append(words, word{kind: feet})
			}
		case r == '"' || r == '″' || r == '”' || r == '“':
			words = append(words, word{kind: inches})
			i += n
		case unicode.IsLetter(r):
			j := i
			for j < len(text) && (text[j]|0x20 >= 'a' && text[j]|0x20 <= 'z') {
				j++
			}
			w, ok := unitWord(strings.ToLower(text[i:j]))
			if !ok && !strings.ContainsAny(text, "0123456789") {
				return nil, forms
			}
			if !ok {
				return nil, "the units known are mm, cm, m, ft and in"
			}
			words = append(words, w)
			i = j
			if i < len(text) && text[i] == '.' && w.kind != metric { // "in." and "ft."
				i++
			}
		default:
			return nil, forms
		}
	}
	return words, ""
}

func unitWord(s string) (word, bool) {
	switch s {
	case "mm":
		return word{kind: metric, value: 1}, true
	case "cm":
		return word{kind: metric, value: 10}, true
	case "m":
		return word{kind: metric, value: 1000}, true
	case "ft", "foot", "feet":
		return word{kind: feet}, true
	case "in", "inch", "inches", "ins":
		return word{kind: inches}, true
	}
	return word{}, false
}

// figure reads digits with at most one decimal mark.
func figure(s string) (word, string) {
	marks := strings.Count(s, ".") + strings.Count(s, ",")
	if marks > 1 {
		return word{}, "one decimal point or comma at most, and none between thousands"
	}
	if i := strings.IndexByte(s, ','); i > 0 && len(s)-i == 4 && s[0] != '0' {
		return word{}, "could be " + s[:i] + s[i+1:] + " or " + s[:i] + "." + s[i+1:] + ": leave the comma out or write a point"
	}
	x, err := strconv.ParseFloat(strings.Replace(s, ",", ".", 1), 64)
	if err != nil {
		return word{}, forms
	}
	return word{kind: number, value: x, whole: marks == 0}, ""
}

// value reads a length without its sign, in mm.
func value(w []word, shown Unit) (mm float64, why string) {
	if len(w) == 2 && w[0].kind == number && w[1].kind == metric {
		return w[0].value * w[1].value, ""
	}
	if len(w) == 1 && w[0].kind == number && shown == MM {
		return w[0].value, ""
	}
	hasFeet := false
	if len(w) >= 2 && w[0].kind == number && w[1].kind == feet {
		hasFeet = true
		mm, w = w[0].value*12*PerInch, w[2:]
		if len(w) == 0 {
			return mm, ""
		}
		if w[0].kind == dash { // 2'-7"
			w = w[1:]
		}
	}
	in, rest, why := inchPart(w)
	if why != "" {
		return 0, why
	}
	if len(rest) == 1 && rest[0].kind == inches {
		rest = nil
	}
	if len(rest) > 0 {
		return 0, forms
	}
	if hasFeet && in >= 12 {
		return 0, "inches behind feet must be below 12"
	}
	return mm + in*PerInch, ""
}

// inchPart reads whole inches, a fraction, or both.
func inchPart(w []word) (in float64, rest []word, why string) {
	if len(w) == 0 {
		return 0, nil, forms
	}
	if w[0].kind == fraction {
		return w[0].value, w[1:], ""
	}
	if w[0].kind != number {
		return 0, nil, forms
	}
	in, whole := w[0].value, w[0].whole
	w = w[1:]
	joined := len(w) > 0 && w[0].kind == dash
	if joined {
		w = w[1:]
	}
	if len(w) == 0 || w[0].kind != fraction {
		if joined {
			return 0, nil, forms
		}
		return in, w, ""
	}
	if !whole || w[0].value >= 1 {
		return 0, nil, "a fraction behind whole inches must be below 1, like 31 3/8"
	}
	return in + w[0].value, w[1:], ""
}
