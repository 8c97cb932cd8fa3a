package site

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// unhurried are the packages compiled without inlining, which takes a fourteenth off
// the download: they run once an event or once a frame, not once a place. The
// geometry, and what the language itself runs on, stay as fast as they can be.
var unhurried = []string{
	"leafwright/game/...", "leafwright/wasm/...", "leafwright/geom/judge", "leafwright/geom/trim", "leafwright/geom/advise/...", "leafwright/geom/survey", "leafwright/geom/door",
	"github.com/hajimehoshi/ebiten/v2/...",
	"text/template/...", "net/...", "go/...", "regexp/...", "encoding/...", "html/...", "archive/...", "compress/...", "image/...",
	"math/big", "fmt", "reflect", "strconv", "strings", "bytes", "bufio", "io/...", "os", "path/...", "time",
}

// compile gives the program in ./wasm as WebAssembly and the Go toolchain's own
// script that starts it.
func compile(ctx context.Context, checkout string) (wasm, script []byte, err error) {
	goTool, err := exec.LookPath("go")
	if err != nil {
		return nil, nil, errors.New("the page's program is compiled by Go, and no go command was found: install Go from go.dev and try again")
	}
	dir, err := os.MkdirTemp("", "leafwright-build-")
	if err != nil {
		return nil, nil, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, program)
	args := []string{"build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w"}
	for _, p := range unhurried {
		args = append(args, "-gcflags="+p+"=-l")
	}
	build := exec.CommandContext(ctx, goTool, append(args, "-o", out, "./wasm")...)
	build.Dir = checkout
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0")
	if text, err := build.CombinedOutput(); err != nil {
		return nil, nil, fmt.Errorf("compiling the page's program: %w\n%s", err, bytes.TrimSpace(text))
	}
	if wasm, err = os.ReadFile(out); err != nil {
		return nil, nil, err
	}
	env := exec.CommandContext(ctx, goTool, "env", "GOROOT")
	env.Dir = checkout // the checkout's go.mod may choose another toolchain
	root, err := env.Output()
	if err != nil {
		return nil, nil, fmt.Errorf("asking Go where it lives: %w", err)
	}
	script, err = os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", glue))
	return wasm, script, err
}
