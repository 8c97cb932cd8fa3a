package fit_test

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"hash"
	"math"
	"runtime"
	"testing"

	"leafwright/geom/fit"
)

// pinnedBits is the digest of every number that 400 random doors measure. It was
// made natively on amd64 and must come out in WebAssembly too; a change of the
// model changes it, nothing else may.
const pinnedBits = "faf44465e213cc0aaed4f1a77e348fa7"

// pinnedSectionBits is the same for doors with eased arrises and thin strips.
const pinnedSectionBits = "925af09280d3abf27343f331834ab01f"

// fused lists the processors whose Go compiler rounds a product and a sum once
// where others round twice: their last bits may differ, inside the library too.
var fused = map[string]bool{"arm64": true, "ppc64": true, "ppc64le": true, "s390x": true, "riscv64": true, "loong64": true}

func TestSameBitsEverywhere(t *testing.T) {
	if fused[runtime.GOARCH] {
		t.Skipf("%s fuses multiply and add", runtime.GOARCH)
	}
	plain, sections := sha256.New(), sha256.New()
	var f fit.Fit
	for i := range 400 {
		source := randomSource(i)
		d := randomDoor(source)
		fit.Evaluate(&f, &d)
		digest(plain, &f)
		if i < 100 {
			chance{source}.sections(&d)
			fit.Evaluate(&f, &d)
			digest(sections, &f)
		}
	}
	for _, c := range []struct {
		of     string
		sum    hash.Hash
		pinned string
	}{{"plain leaves", plain, pinnedBits}, {"sections", sections, pinnedSectionBits}} {
		if got := hex.EncodeToString(c.sum.Sum(nil)[:16]); got != c.pinned {
			t.Errorf("%s: digest on %s is %s, pinned is %s", c.of, runtime.GOARCH, got, c.pinned)
		}
	}
}

func digest(to hash.Hash, f *fit.Fit) {
	put := func(vs ...float64) {
		var b [8]byte
		for _, v := range vs {
			binary.LittleEndian.PutUint64(b[:], math.Float64bits(v))
			to.Write(b[:])
		}
	}
	put(f.Strain, float64(f.Closed), float64(f.LatchAngle), float64(f.StopAngle), f.LatchMiss, f.ClearWidth, f.ClearToStop)
	for e := range f.Gaps {
		for _, g := range [2]*fit.Gap{&f.Gaps[e], &f.Shown[e]} {
			put(g.Least, g.LeastAt, g.Most, g.MostAt)
			for _, p := range g.Pieces {
				put(p.Lo, p.Hi, p.C0, p.C1, p.C2)
			}
		}
		s := f.Swing[e]
		put(s.Least, s.At.X, s.At.Y, s.At.Z, float64(s.Angle))
	}
	for _, g := range f.Stops {
		put(g.Least, g.LeastAt, g.Most, g.MostAt)
	}
}
