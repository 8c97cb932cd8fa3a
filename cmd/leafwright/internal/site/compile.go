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

// hurried are the packages compiled with inlining: the geometry, which works once a
// place, and what seeks advice in it. All else runs once an event or once a frame;
// without inlining the download is a tenth smaller.
var hurried = []string{"leafwright/geom", "leafwright/geom/fit", "leafwright/geom/survey/lsq", "leafwright/geom/advise", "leafwright/geom/advise/lp"}

// programs are the folders of the page's programs.
var programs = map[string]string{program: "./wasm", clerk: "./wasm/clerk"}

// compile puts the page's programs among its files as WebAssembly, and the Go
// toolchain's own script that starts them.
func (f Files) compile(ctx context.Context, checkout string) error {
	goTool, err := exec.LookPath("go")
	if err != nil {
		return errors.New("the page's programs are compiled by Go, and no go command was found: install Go from go.dev and try again")
	}
	dir, err := os.MkdirTemp("", "leafwright-build-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	var folders []string
	for _, folder := range programs {
		folders = append(folders, folder)
	}
	args, err := oneLine(ctx, goTool, checkout, dir, folders...)
	if err != nil {
		return err
	}
	args = append([]string{"build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w"}, args...)
	args = append(args, "-gcflags=all=-l")
	for _, p := range hurried {
		args = append(args, "-gcflags="+p+"=")
	}
	for name, folder := range programs {
		out := filepath.Join(dir, name)
		build := exec.CommandContext(ctx, goTool, append(args[:len(args):len(args)], "-o", out, folder)...)
		build.Dir = checkout
		build.Env = browserEnv()
		if text, err := build.CombinedOutput(); err != nil {
			return fmt.Errorf("compiling the page's program in %s: %w\n%s", folder, err, bytes.TrimSpace(text))
		}
		whole, err := os.ReadFile(out)
		if err != nil {
			return err
		}
		if f[name], err = joinSegments(whole); err != nil {
			return fmt.Errorf("packing the page's program in %s closely: %w", folder, err)
		}
	}
	env := exec.CommandContext(ctx, goTool, "env", "GOROOT")
	env.Dir = checkout // the checkout's go.mod may choose another toolchain
	root, err := env.Output()
	if err != nil {
		return fmt.Errorf("asking Go where it lives: %w", err)
	}
	f[glue], err = os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", glue))
	return err
}

// browserEnv is the environment in which Go compiles for the browser.
func browserEnv() []string {
	return append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0")
}
