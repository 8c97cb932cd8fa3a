package lesson

import (
	"bytes"
	"testing"

	"leafwright/game"
)

func TestSoundDoorsAreSoundJobs(t *testing.T) {
	for _, old := range []float64{0, 0.5, 1} {
		for seed := range uint64(60) {
			j := soundDoor(seed, old)
			if faults := j.Check(); len(faults) > 0 {
				t.Fatalf("%v %d: %v", old, seed, faults)
			}
			p := pieceOf(&j)
			if bad := out(verdicts(&p, &j.Wanted)); len(bad) > 0 {
				t.Errorf("%v %d: %+v", old, seed, bad[0])
			}
			file := game.Encode(j)
			back, err := game.Parse(file)
			if err != nil {
				t.Fatalf("%v %d: %v", old, seed, err)
			}
			if !bytes.Equal(game.Encode(back), file) {
				t.Errorf("%v %d: is read back as another job", old, seed)
			}
		}
	}
}
