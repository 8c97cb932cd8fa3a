package geom_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// arrows is the policy of who may import whom inside the module. A folder may
// import those named and what stands below itself. A new arrow is a decision, and
// is made here.
var arrows = map[string][]string{
	"geom":                {},
	"geom/door":           {"geom"},
	"geom/fit":            {"geom", "geom/door"},
	"geom/judge":          {"geom", "geom/door", "geom/fit"},
	"geom/caseone":        {"geom", "geom/door", "geom/fit", "geom/judge"},
	"geom/survey":         {"geom", "geom/door", "geom/fit"},
	"geom/trim":           {"geom", "geom/door", "geom/fit"},
	"geom/fault":          {"geom", "geom/door", "geom/fit", "geom/judge", "geom/trim"},
	"geom/advise":         {"geom", "geom/door", "geom/fit", "geom/judge", "geom/survey", "geom/trim"},
	"geom/timber":         {"geom", "geom/door", "geom/trim"},
	"game":                {"geom", "geom/door", "geom/fit", "geom/judge", "geom/survey", "geom/trim", "geom/advise", "geom/timber", "game/measure"},
	"game/internal/demos": {"game"},
	"game/measure":        {},
	"game/draw":           {"geom", "geom/door", "geom/fit", "geom/judge", "geom/trim"},
	"game/words":          {"geom", "geom/door", "geom/fit", "geom/judge", "geom/survey", "geom/trim", "geom/advise", "geom/timber", "game/measure"},
	"game/beside":         {"geom", "geom/door", "geom/fit", "geom/judge", "geom/trim", "game", "game/words"},
	"game/lesson":         {"geom", "geom/door", "geom/fit", "geom/judge", "geom/survey", "geom/trim", "geom/advise", "geom/fault", "game", "game/measure", "game/words"},
	"game/lesson/hand":    {"geom", "geom/door", "geom/fit", "geom/trim", "game", "game/draw", "game/words", "game/measure", "game/bench"},
	"game/hardware":       {"geom", "geom/door", "geom/fit", "geom/judge", "geom/trim", "geom/timber", "game", "game/words"},
	"game/report":         {"geom", "geom/door", "geom/fit", "geom/judge", "geom/survey", "geom/trim", "geom/advise", "geom/timber", "game", "game/words", "game/measure", "game/beside", "game/hardware"},
	"game/cutlist":        {"geom", "geom/door", "geom/fit", "geom/judge", "geom/trim", "game", "game/words", "game/measure", "game/hardware"},
	"game/dxf":            {"geom", "geom/door", "geom/trim", "game", "game/words", "game/hardware"},
	"game/sheet":          {"geom", "geom/door", "geom/fit", "geom/judge", "geom/survey", "geom/trim", "geom/advise", "geom/timber", "game", "game/draw", "game/words", "game/measure", "game/beside", "game/hardware"},
	"game/bench":          {"geom", "geom/door", "geom/fit", "geom/judge", "geom/survey", "geom/trim", "geom/advise", "geom/timber", "game", "game/draw", "game/words", "game/measure", "game/beside"},
	"wasm":                {"geom", "game"},
	"cmd":                 {"geom", "game", "wasm"},
}

// outside is which folders may import what is not the standard library; tests may
// import anything.
var outside = map[string][]string{
	"github.com/hajimehoshi/ebiten/v2": {"wasm/stage", "wasm/e2e/bare"},
	"syscall/js":                       {"wasm", "wasm/panel", "wasm/clerk", "wasm/e2e/bare"},
	"github.com/andybalholm/brotli":    {"cmd"},
	"codeberg.org/go-pdf/fpdf":         {"game/sheet/pdf"},
	"github.com/go-fonts/dejavu":       {"game/sheet/pdf"},
	"golang.org/x/image":               {"game/sheet/pdf", "cmd"},
	"golang.org/x/text":                {"game/sheet/pdf"},
}

func TestArrowsPointOneWay(t *testing.T) {
	err := filepath.WalkDir("..", func(path string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if e.IsDir() && (strings.HasPrefix(e.Name(), ".") && e.Name() != "..") {
			return fs.SkipDir
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		folder := filepath.ToSlash(filepath.Dir(strings.TrimPrefix(path, ".."+string(filepath.Separator))))
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, i := range file.Imports {
			name, _ := strconv.Unquote(i.Path.Value)
			if to, ours := strings.CutPrefix(name, "leafwright/"); ours {
				if !mayUse(folder, to) {
					t.Errorf("%s imports %s: no such arrow", path, to)
				}
				continue
			}
			if strings.Contains(strings.Split(name, "/")[0], ".") || name == "syscall/js" {
				if !mayReach(folder, name) {
					t.Errorf("%s imports %s: not its place", path, name)
				}
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// home gives the longest folder of the policy that holds the folder.
func home(folder string) string {
	for folder != "." {
		if _, ok := arrows[folder]; ok {
			return folder
		}
		folder = filepath.ToSlash(filepath.Dir(folder))
	}
	return ""
}

func under(folder, top string) bool { return folder == top || strings.HasPrefix(folder, top+"/") }

func mayUse(folder, to string) bool {
	from := home(folder)
	if from == "" {
		return false
	}
	return under(to, from) && from != "geom" && from != "game" ||
		slices.ContainsFunc(arrows[from], func(top string) bool {
			return to == top || (from == "wasm" || from == "cmd") && under(to, top)
		})
}

func mayReach(folder, name string) bool {
	for library, folders := range outside {
		if !under(name, library) {
			continue
		}
		return slices.ContainsFunc(folders, func(top string) bool {
			return folder == top || top == "cmd" && under(folder, top)
		})
	}
	return false
}
