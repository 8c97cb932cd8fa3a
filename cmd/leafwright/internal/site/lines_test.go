package site

import (
	"bytes"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestOnOneLine(t *testing.T) {
	const src = "//go:build js\n\n// Package p does.\npackage p\n\nimport _ \"embed\"\n\n//go:embed x\nvar x string /* a\n comment */\n\nvar raw = `one\n\ttwo\n`\n\nfunc f(\n\ta int, // why\n) int {\n\treturn a +\n\t\t1\n}\n"
	const want = "//go:build js\n\n// Package p does.\n//line z:1\npackage p\n\n//line z:1\nimport _ \"embed\"\n\n//go:embed x\n//line z:1\nvar x string /* a\n comment */\n\n//line z:1\nvar raw = `one\n\ttwo\n`\n\n//line z:1\nfunc f(\n//line z:1\n\ta int, // why\n//line z:1\n) int {\n//line z:1\n\treturn a +\n//line z:1\n\t\t1\n//line z:1\n}\n"
	if got := string(onOneLine([]byte(src))); got != want {
		t.Errorf("got\n%s", got)
	}
}

// What is compiled is the same program: taking the lines out again gives the source
// back, and everything that runs now stands on line 1.
func TestOnOneLineKeepsThePrograms(t *testing.T) {
	files, err := filepath.Glob("../../../../*/*/*.go")
	if err != nil || len(files) < 100 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		got := onOneLine(src)
		if back := bytes.ReplaceAll(got, []byte("//line z:1\n"), nil); !bytes.Equal(back, src) {
			t.Errorf("%s: more changed than lines", name)
		}
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, name, got, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if s, ok := n.(ast.Stmt); ok {
				if at := set.Position(s.Pos()); at.Line != 1 {
					t.Errorf("%s: a statement is on line %d", name, at.Line)
					return false
				}
			}
			return true
		})
	}
}
