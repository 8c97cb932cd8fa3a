package draw

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden drawings anew")

// sheetOf gives each golden drawing a size of its own, so that all are kept.
func sheetOf(i int) (name string, w, h float64, show Show) {
	s := sheets[i%len(sheets)]
	return s.name, s.width, s.height, s.show
}

// The drawings of the demo jobs and of three awkward doors, as text; open them in a
// browser to look at them. After a change that is meant: go test ./game/draw -update
func TestGolden(t *testing.T) {
	all := demoJobs(t)
	after := 9 // jobs that came later stand behind, so that every drawing keeps its sheet
	for _, s := range situations() {
		switch s.name {
		case "square-edge-fouls", "right-hung-bevel", "flush-short":
			all = slices.Insert(all, after, s)
			after++
		}
	}
	for i, s := range all {
		t.Run(s.name, func(t *testing.T) {
			var l List
			var sc Scene
			_, w, h, show := sheetOf(i + 3)
			s.view.Show = show
			s.draw(&l, &sc, w, h)
			palette := &Day
			if i%4 == 3 {
				palette = &Night
			}
			golden(t, s.name, l.SVG(palette))
		})
	}
}

// golden compares a drawing with the one kept, byte for byte.
func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	file := filepath.Join("testdata", name+".svg")
	if *update {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		beside := filepath.Join(t.ArtifactDir(), name+".svg")
		if err := os.WriteFile(beside, got, 0o644); err != nil {
			t.Fatal(err)
		}
		t.Errorf("drawing changed; look at it: diff %s %s", file, beside)
	}
}

func TestSVGStandsByItself(t *testing.T) {
	var l List
	var sc Scene
	for _, s := range situations() {
		s.draw(&l, &sc, 1000, 850)
		out := l.SVG(&Day)
		if again := l.SVG(&Day); !bytes.Equal(out, again) {
			t.Errorf("%s: written twice, differs", s.name)
		}
		dec, elements, titles := xml.NewDecoder(bytes.NewReader(out)), 0, 0
		for {
			tok, err := dec.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				t.Fatalf("%s: %v", s.name, err)
			}
			e, ok := tok.(xml.StartElement)
			if !ok {
				continue
			}
			elements++
			switch e.Name.Local {
			case "title", "desc":
				titles++
			case "svg", "path", "text":
			default:
				t.Errorf("%s: element %s", s.name, e.Name.Local)
			}
			for _, a := range e.Attr {
				if a.Name.Local == "style" || strings.HasPrefix(a.Name.Local, "on") || strings.Contains(a.Value, "url(") || strings.Contains(a.Value, "NaN") {
					t.Errorf("%s: attribute %s=%q", s.name, a.Name.Local, a.Value)
				}
			}
		}
		if elements < 50 || titles != 2 {
			t.Errorf("%s: %d elements, %d of them title or desc", s.name, elements, titles)
		}
	}
}

func TestSVGEscapes(t *testing.T) {
	l := List{Width: 10, Height: 10, Title: `a < b & "c"`, Points: []Pt{{-0.01, 1.26}}}
	l.Marks = []Mark{{Kind: Text, Ink: TextInk, Size: 12, From: 0, To: 1, Text: "</text><script>"}}
	got := string(l.SVG(&Day))
	for _, want := range []string{"<title>a &lt; b &amp;", "&lt;/text&gt;&lt;script&gt;", `x="0" y="1.3"`} {
		if !strings.Contains(got, want) {
			t.Errorf("want %q in %s", want, got)
		}
	}
	if strings.Contains(got, "<script>") {
		t.Errorf("script in %s", got)
	}
}
