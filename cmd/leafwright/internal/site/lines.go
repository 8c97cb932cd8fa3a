package site

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"go/scanner"
	"go/token"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// The compiler notes for every instruction which line of the source it came from, so
// that a crash can tell. That is a fortieth of the page's download, and its reader has
// no source. So the page's programs are compiled from copies in which every line says
// that it is the first: a crash still tells the function.

// oneLine writes those copies into dir and gives the compiler's arguments for using
// them. What Go keeps in its module cache may not be overlaid: of a module there the
// packages the page needs are copied, and a go.mod of the build's own names the copy.
func oneLine(ctx context.Context, goTool, checkout, dir string, packages ...string) ([]string, error) {
	list := exec.CommandContext(ctx, goTool, append([]string{"list", "-deps", "-json=Dir,GoFiles,SFiles,HFiles,EmbedFiles,Module"}, packages...)...)
	list.Dir, list.Env = checkout, browserEnv()
	said, err := list.Output()
	if err != nil {
		return nil, fmt.Errorf("asking Go what the page is made of: %w", err)
	}
	env := exec.CommandContext(ctx, goTool, "env", "GOMODCACHE")
	env.Dir = checkout
	kept, err := env.Output()
	if err != nil {
		return nil, fmt.Errorf("asking Go where it keeps modules: %w", err)
	}
	cache := strings.TrimSpace(string(kept)) + string(filepath.Separator)
	overlay, modules := map[string]string{}, map[string]string{}
	for all := json.NewDecoder(bytes.NewReader(said)); all.More(); {
		var p struct {
			Dir                                 string
			GoFiles, SFiles, HFiles, EmbedFiles []string
			Module                              *struct{ Path, Dir string }
		}
		if err := all.Decode(&p); err != nil {
			return nil, err
		}
		to := func(name string) string {
			copied := filepath.Join(dir, strconv.Itoa(len(overlay))+".go")
			overlay[filepath.Join(p.Dir, name)] = copied
			return copied
		}
		if strings.HasPrefix(p.Dir, cache) {
			if p.Module == nil {
				continue // a toolchain's own
			}
			copied := filepath.Join(dir, "modules", filepath.FromSlash(p.Module.Path))
			modules[p.Module.Path] = copied
			if err := copyFile(filepath.Join(p.Module.Dir, "go.mod"), filepath.Join(copied, "go.mod")); err != nil {
				return nil, err
			}
			within := filepath.Join(copied, strings.TrimPrefix(p.Dir, p.Module.Dir))
			to = func(name string) string { return filepath.Join(within, name) }
			for _, name := range slices.Concat(p.SFiles, p.HFiles, p.EmbedFiles) {
				if err := copyFile(filepath.Join(p.Dir, name), to(name)); err != nil {
					return nil, err
				}
			}
		}
		for _, name := range p.GoFiles {
			src, err := os.ReadFile(filepath.Join(p.Dir, name))
			if err == nil {
				err = writeFile(to(name), onOneLine(src))
			}
			if err != nil {
				return nil, err
			}
		}
	}
	text, err := json.Marshal(map[string]any{"Replace": overlay})
	if err != nil {
		return nil, err
	}
	file := filepath.Join(dir, "overlay.json")
	if err := writeFile(file, text); err != nil {
		return nil, err
	}
	mod, err := os.ReadFile(filepath.Join(checkout, "go.mod"))
	if err != nil {
		return nil, err
	}
	for _, path := range slices.Sorted(maps.Keys(modules)) {
		mod = fmt.Appendf(mod, "\nreplace %s => %q\n", path, modules[path])
	}
	own := filepath.Join(dir, "own.mod")
	if err := writeFile(own, mod); err != nil {
		return nil, err
	}
	return []string{"-overlay", file, "-modfile", own}, copyFile(filepath.Join(checkout, "go.sum"), filepath.Join(dir, "own.sum"))
}

func copyFile(from, to string) error {
	data, err := os.ReadFile(from)
	if err != nil {
		return err
	}
	return writeFile(to, data)
}

func writeFile(to string, data []byte) error {
	if err := os.MkdirAll(filepath.Dir(to), 0o700); err != nil {
		return err
	}
	return os.WriteFile(to, data, 0o600)
}

// onOneLine puts before every line of Go that begins with a token a word to the
// compiler that it is line 1. Lines inside a raw string or a comment, and the
// compiler's own words, stay as they are.
func onOneLine(src []byte) []byte {
	set := token.NewFileSet()
	file := set.AddFile("", -1, len(src))
	var s scanner.Scanner
	s.Init(file, src, nil, scanner.ScanComments)
	var out bytes.Buffer
	copied, end := 0, 0 // how much of src is copied, where the last token ended
	for {
		pos, tok, text := s.Scan()
		if tok == token.EOF {
			break
		}
		if tok == token.SEMICOLON && text == "\n" {
			continue // the scanner's own
		}
		at := file.Offset(pos)
		if begins := bytes.LastIndexByte(src[:at], '\n') + 1; tok != token.COMMENT && begins >= end {
			out.Write(src[copied:begins])
			out.WriteString("//line z:1\n")
			copied = begins
		}
		if end = at + len(text); text == "" {
			end = at + len(tok.String())
		}
	}
	out.Write(src[copied:])
	return out.Bytes()
}
