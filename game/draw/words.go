package draw

import (
	"math"
	"strconv"

	"leafwright/geom/judge"
)

// words keeps the writings of recent drawings, so that a frame that says what the
// last one said makes no new strings.
type words struct {
	kept map[string]string
	buf  []byte
}

const mostWords = 2000

// tidy forgets all when too much is kept.
func (w *words) tidy() {
	if w.kept == nil || len(w.kept) > mostWords {
		w.kept = make(map[string]string, 64)
	}
}

// keep gives the buffer as a string and empties it.
func (w *words) keep() string {
	s, ok := w.kept[string(w.buf)]
	if !ok {
		s = string(w.buf)
		w.kept[s] = s
	}
	w.buf = w.buf[:0]
	return s
}

func (w *words) say(s string) *words {
	w.buf = append(w.buf, s...)
	return w
}

// number writes x to some decimals, with a true minus sign and no minus nought.
func (w *words) number(x float64, decimals int) *words {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return w.say("?")
	}
	grain := 0.5
	for range decimals {
		grain /= 10
	}
	if x < 0 {
		if x = -x; x >= grain {
			w.say("−")
		}
	}
	w.buf = strconv.AppendFloat(w.buf, x, 'f', decimals, 64)
	return w
}

// gap writes a gap as the view wants figures written.
func (s *Scene) gap(mm float64) *words {
	if s.v.Format != nil {
		return s.words.say(s.v.Format(mm))
	}
	return s.words.number(mm, 1)
}

// held writes a gap held against its limits: one just out of them that reads like the limit
// it misses with the side of it that it is on, as ">3.0".
func (s *Scene) held(mm float64, to judge.Limits) *words {
	said, limit, side := s.gap(mm).keep(), to.Most, ">"
	v := to.Judge(mm)
	if v == judge.Tight {
		limit, side = to.Least, "<"
	}
	if (v == judge.Tight || v == judge.Slack) && s.gap(limit).keep() == said {
		s.words.say(side)
	}
	return s.words.say(said)
}

// length writes a height or a width as the view wants it.
func (s *Scene) length(mm float64) *words {
	if s.v.Length != nil {
		return s.words.say(s.v.Length(mm))
	}
	return s.words.number(mm, 0).say(" mm")
}

// degrees writes an angle, to a tenth when small.
func (w *words) degrees(d float64) *words {
	decimals := 0
	if math.Abs(d) < 9.95 {
		decimals = 1
	}
	return w.number(d, decimals).say("°")
}
