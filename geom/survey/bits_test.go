package survey

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"math"
	"math/rand/v2"
	"runtime"
	"testing"

	"leafwright/geom/fit"
)

// pinnedBits is the digest of what thirty jobs come to. It was found on amd64 and
// must hold on every processor and in WebAssembly: the same readings give the same
// bits.
const pinnedBits = "17b16b70569bbad9415f1ae2ebc20c8a"

func TestSameBitsEverywhere(t *testing.T) {
	sum := sha256.New()
	put := func(v float64) {
		var b [8]byte
		binary.LittleEndian.PutUint64(b[:], math.Float64bits(v))
		sum.Write(b[:])
	}
	d := square()
	for n := range uint64(30) {
		rng := rand.New(rand.NewPCG(20250611, n))
		rs := whole(&d)
		for i := range rs {
			rs[i].Value = math.Max(SpecOf(rs[i].Kind).Allowed.Lo, Expect(&d, rs[i])+2*SigmaOf(rs[i])*(rng.Float64()-0.5))
		}
		if n%3 == 0 {
			rs[rng.IntN(len(rs))].Value += 9
		}
		if n%2 == 0 {
			rs = append(rs, Reading{Kind: GapRead, Side: Latch, At: 900, Value: 4 + rng.Float64()}, Reading{Kind: Rub, Side: Head, At: 700})
		}
		res := Adjust(rs)
		for _, x := range res.adj.x {
			put(x)
		}
		for _, j := range res.Readings {
			put(j.Residual)
			put(j.Redundancy)
			put(j.Standardised)
		}
		if g := res.Gaps(); g != nil {
			for e := fit.HingeSide; e < fit.Edges; e++ {
				u, _ := g.Least(e)
				put(u.Sigma)
				put(u.Binds())
				put(g.Binds(e))
			}
			a, _ := g.NextForTightest()
			put(a.Then)
		}
	}
	if got := hex.EncodeToString(sum.Sum(nil)[:16]); got != pinnedBits {
		t.Errorf("digest on %s is %s, pinned is %s", runtime.GOARCH, got, pinnedBits)
	}
}
