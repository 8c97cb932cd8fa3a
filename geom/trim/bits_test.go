package trim_test

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"runtime"
	"testing"

	"leafwright/geom/trim"
)

// pinnedBits is the digest of what random moves make of 100 random doors. It was made
// natively on amd64 and must come out in WebAssembly too; a change of a move, or of
// what the random ones are, changes it, nothing else may.
const pinnedBits = "0350639eeaa89c130d99374e387ba2ec"

// fused lists the processors whose Go compiler rounds a product and a sum once
// where others round twice: their last bits may differ.
var fused = map[string]bool{"arm64": true, "ppc64": true, "ppc64le": true, "s390x": true, "riscv64": true, "loong64": true}

func TestSameBitsEverywhere(t *testing.T) {
	if fused[runtime.GOARCH] {
		t.Skipf("%s fuses multiply and add", runtime.GOARCH)
	}
	sum := sha256.New()
	for n := range 100 {
		p := randomPiece(n)
		c := throw(4_000_000 + n)
		for range 10 {
			q, done, _ := trim.Do(p, c.move(&p))
			fmt.Fprintln(sum, done.Off, done.On, done.Volume, done.Most, done.Left)
			p = q
		}
		fmt.Fprintln(sum, p.Door)
	}
	if got := hex.EncodeToString(sum.Sum(nil)[:16]); got != pinnedBits {
		t.Errorf("digest on %s is %s, pinned is %s", runtime.GOARCH, got, pinnedBits)
	}
}
