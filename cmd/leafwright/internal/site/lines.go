package site

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"go/scanner"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
)

// The compiler notes for every instruction which line of the source it came from, so
// that a crash can tell. That is a fortieth of the page's download, and its reader has
// no source. So the page's programs are compiled from copies in which every line says
// that it is the first: a crash still tells the function.

// oneLine writes those copies into dir and gives the compiler's arguments for using
// them. Sources that Go keeps in its module cache may not be replaced and stay.
func oneLine(ctx context.Context, goTool, checkout, dir string, packages ...string) ([]string, error) {
	list := exec.CommandContext(ctx, goTool, append([]string{"list", "-deps", "-json=Dir,GoFiles"}, packages...)...)
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
	replace := map[string]string{}
	for all := json.NewDecoder(bytes.NewReader(said)); all.More(); {
		var p struct {
			Dir     string
			GoFiles []string
		}
		if err := all.Decode(&p); err != nil {
			return nil, err
		}
		if strings.HasPrefix(p.Dir, cache) {
			continue
		}
		for _, name := range p.GoFiles {
			from, to := filepath.Join(p.Dir, name), filepath.Join(dir, strconv.Itoa(len(replace))+".go")
			src, err := os.ReadFile(from)
			if err != nil {
				return nil, err
			}
			if err := os.WriteFile(to, onOneLine(src), 0o600); err != nil {
				return nil, err
			}
			replace[from] = to
		}
	}
	overlay, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return nil, err
	}
	file := filepath.Join(dir, "overlay.json")
	return []string{"-overlay", file}, os.WriteFile(file, overlay, 0o600)
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
