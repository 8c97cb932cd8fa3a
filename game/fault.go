package game

import (
	"strings"

	"leafwright/geom/door"
)

// Faults is everything wrong with a job, as one error: a line each.
type Faults []door.Fault

func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// add appends the faults about fields that have none yet: what is wrong with a
// field by itself is told before what it does to others, and once.
func (fs *Faults) add(more ...door.Fault) {
	had := len(*fs)
	for _, f := range more {
		known := false
		for _, old := range (*fs)[:had] {
			known = known || within(old.Path, f.Path) || within(f.Path, old.Path)
		}
		if !known {
			*fs = append(*fs, f)
		}
	}
}

// within tells whether path is the field at or under over.
func within(path, over string) bool {
	rest, ok := strings.CutPrefix(path, over)
	return ok && (rest == "" || rest[0] == '.' || rest[0] == '[')
}
