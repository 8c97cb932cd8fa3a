package site

import (
	"bytes"
	"compress/gzip"
	"context"
	"errors"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"

	"leafwright/cmd/leafwright/internal/static"
)

func checkout(t *testing.T) string {
	t.Helper()
	dir, err := Checkout(".")
	if err != nil {
		t.Fatal(err)
	}
	return dir
}

// unlinked gives the page as it is gathered, with a stand-in for each program:
// they take long to compile.
func unlinked(t *testing.T) Files {
	t.Helper()
	f := Files{program: []byte("\x00asm stand-in"), clerk: []byte("\x00asm another stand-in"), glue: []byte("// glue")}
	var err error
	if f["index.html"], err = os.ReadFile(filepath.Join(checkout(t), "index.html")); err != nil {
		t.Fatal(err)
	}
	for dir, to := range map[string]string{"wasm/site": "", "testdata/jobs": "jobs", "testdata/lessons": "lessons"} {
		if err := f.gather(filepath.Join(checkout(t), filepath.FromSlash(dir)), to); err != nil {
			t.Fatal(err)
		}
	}
	if err := f.paintIcons(); err != nil {
		t.Fatal(err)
	}
	if f[list], err = f.jobList(); err != nil {
		t.Fatal(err)
	}
	if f[lessons], err = f.lessonList(); err != nil {
		t.Fatal(err)
	}
	return f
}

func linked(t *testing.T) Files {
	t.Helper()
	f := unlinked(t)
	if err := f.link(); err != nil {
		t.Fatal(err)
	}
	return f
}

// quoted matches what a file of the page may name another by.
var quoted = regexp.MustCompile(`["']([A-Za-z0-9_./-]+\.(?:html|css|js|json|png|svg|wasm|webmanifest))["']`)

// absolute matches addresses that would not work from any folder of any host.
var absolute = regexp.MustCompile(`https?://[^"' ]+|(?:src|href)="/[^"]*`)

func TestEveryNameLeadsToAFile(t *testing.T) {
	f := linked(t)
	for name, data := range f {
		if path.Ext(name) == ".wasm" || isData(name) {
			continue
		}
		for _, m := range quoted.FindAllSubmatch(data, -1) {
			if to := string(m[1]); f[to] == nil {
				t.Errorf("%s names %s, which is not there", name, to)
			}
		}
		for _, bad := range absolute.FindAll(data, -1) {
			if name != f.named(t, "wasm_exec", ".js") && string(bad) != "http://www.w3.org/2000/svg" {
				t.Errorf("%s has the address %s, which is not relative", name, bad)
			}
		}
	}
	stage := f.named(t, "stage", ".html")
	if !bytes.Contains(f["index.html"], []byte(`data-src="`+stage+`"`)) {
		t.Errorf("the page does not name its frame %s", stage)
	}
}

// named gives the one file of the page with that stem and ending.
func (f Files) named(t *testing.T, stem, ext string) string {
	t.Helper()
	var found []string
	for name := range f {
		if strings.HasPrefix(name, stem+".") && strings.HasSuffix(name, ext) {
			found = append(found, name)
		}
	}
	if len(found) != 1 {
		t.Fatalf("%s*%s: %v", stem, ext, found)
	}
	return found[0]
}

func TestNamesChangeWithTheirContent(t *testing.T) {
	plain := linked(t)
	other := unlinked(t)
	other[program] = []byte("\x00asm another")
	if err := other.link(); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		stem, ext string
		changes   bool
		why       string
	}{
		{"leafwright", ".wasm", true, "it is another"},
		{"boot", ".js", true, "it names the program"},
		{"stage", ".html", true, "it names boot.js"},
		{"clerk", ".js", false, "it names another program"},
		{"page", ".css", false, "it names nothing"},
		{"icon", ".svg", false, "it names nothing"},
	} {
		if got := plain.named(t, c.stem, c.ext) != other.named(t, c.stem, c.ext); got != c.changes {
			t.Errorf("%s%s changes its name: %v, want %v: %s", c.stem, c.ext, got, c.changes, c.why)
		}
	}
	if bytes.Equal(plain[worker], other[worker]) {
		t.Error("the worker keeps its version though the program changed")
	}
	again := linked(t)
	for name, data := range plain {
		if !bytes.Equal(again[name], data) {
			t.Errorf("%s differs from one build to the next", name)
		}
	}
}

func TestWorkerKeepsEveryFile(t *testing.T) {
	f := linked(t)
	for name := range f {
		want := `"` + name + `"`
		if name == "index.html" {
			want = `"./"`
		}
		if has := bytes.Contains(f[worker], []byte(want)); has == (name == worker) {
			t.Errorf("the worker keeps %s: %v", name, has)
		}
	}
	later := []string{f.named(t, "clerk", ".js"), f.named(t, "clerk", ".wasm"), f.named(t, "practice", ".css"), f.named(t, "practice", ".js"), f.named(t, "practicehand", ".js")}
	slices.Sort(later)
	if want := `const LATER = ["` + strings.Join(later, `","`) + `"];`; !bytes.Contains(f[worker], []byte(want)) {
		t.Errorf("the worker has no line %s", want)
	}
	if bytes.Contains(f[worker], []byte(`"unbuilt"`)) {
		t.Error("the worker has no version")
	}
}

func TestPolicyStandsInTheDocuments(t *testing.T) {
	f := linked(t)
	for _, name := range []string{"index.html", f.named(t, "stage", ".html")} {
		if n := bytes.Count(f[name], []byte(`http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self'`)); n != 1 {
			t.Errorf("%s: the policy stands there %d times", name, n)
		}
		if bytes.Contains(f[name], []byte("frame-ancestors")) {
			t.Errorf("%s: a document cannot say who may frame it", name)
		}
		for _, bad := range []string{" style=", "<style", " onclick=", "javascript:"} {
			if bytes.Contains(f[name], []byte(bad)) {
				t.Errorf("%s holds %q, which the policy refuses", name, bad)
			}
		}
	}
	if !strings.Contains(static.Policy, "frame-ancestors") {
		t.Error("the header does not say who may frame the page")
	}
}

func TestRingOfNames(t *testing.T) {
	f := unlinked(t)
	f["boot.js"] = append(f["boot.js"], []byte(`'stage.html'`)...)
	if err := f.link(); err == nil || !strings.Contains(err.Error(), "ring") {
		t.Errorf("error %v", err)
	}
}

func TestJobList(t *testing.T) {
	for _, c := range []struct {
		name  string
		files Files
		want  string
	}{
		{"in order of number", Files{"jobs/10-c.json": []byte(`{"name":"C","note":"Two at once. More of it."}`), "jobs/2-b.json": []byte(`{"name":"B","note":"It binds."}`), "jobs/1-a.json": []byte(`{"name":"A"}`)},
			`[ { "file": "1-a.json", "name": "A", "about": "" }, { "file": "2-b.json", "name": "B", "about": "It binds." }, { "file": "10-c.json", "name": "C", "about": "Two at once." } ]`},
		{"none", Files{"index.html": nil}, `[]`},
		{"no name", Files{"jobs/x.json": []byte(`{}`)}, "jobs/x.json: no name to list it by"},
		{"no JSON", Files{"jobs/x.json": []byte(`{`)}, "jobs/x.json: unexpected end of JSON input"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := c.files.jobList()
			if err != nil {
				got = []byte(err.Error())
			}
			if strings.Join(strings.Fields(string(got)), " ") != c.want {
				t.Errorf("%s, want %s", got, c.want)
			}
		})
	}
}

func TestPack(t *testing.T) {
	long := bytes.Repeat([]byte("a leaf in its opening; "), 40000)
	for _, quick := range []bool{true, false} {
		f := Files{"a.html": long, "tiny.js": []byte("1")}
		if err := f.pack(context.Background(), quick); err != nil {
			t.Fatal(err)
		}
		z, err := gzip.NewReader(bytes.NewReader(f["a.html.gz"]))
		if err != nil {
			t.Fatal(err)
		}
		if got, err := io.ReadAll(z); err != nil || !bytes.Equal(got, long) {
			t.Errorf("quick %v: gzip gives other bytes back (%v)", quick, err)
		}
		if has := f["a.html.br"] != nil; has == quick {
			t.Errorf("quick %v: brotli copy there: %v", quick, has)
		}
		if !quick {
			if got, err := io.ReadAll(brotli.NewReader(bytes.NewReader(f["a.html.br"]))); err != nil || !bytes.Equal(got, long) {
				t.Errorf("brotli gives other bytes back (%v)", err)
			}
		}
		if f["tiny.js.gz"] != nil {
			t.Error("a packed copy larger than the file")
		}
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if err := (Files{"a.html": long}).pack(ctx, false); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped: %v", err)
	}
}

func TestWrite(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new")
	if err := (Files{"index.html": []byte("1"), "jobs/list.json": []byte("[]"), "old.css": []byte("o")}).Write(dir); err != nil {
		t.Fatal(err)
	}
	if err := (Files{"index.html": []byte("2"), "new.css": []byte("n")}).Write(dir); err != nil {
		t.Fatal(err)
	}
	var got []string
	fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			got = append(got, name)
		}
		return err
	})
	if want := []string{"index.html", "new.css", made}; !slices.Equal(got, want) {
		t.Errorf("files %v, want %v", got, want)
	}

	taken := t.TempDir()
	keep := filepath.Join(taken, "thesis.txt")
	if err := os.WriteFile(keep, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := (Files{"index.html": []byte("1")}).Write(taken); err == nil || !strings.Contains(err.Error(), "other files") {
		t.Errorf("a folder with other files: %v", err)
	}
	if _, err := os.Stat(filepath.Join(taken, "index.html")); err == nil {
		t.Error("something was written beside other files")
	}

	// A list of files made by someone else cannot reach out of the folder.
	outside := filepath.Join(t.TempDir(), "outside.txt")
	if err := os.WriteFile(outside, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, made), []byte("../../outside.txt\n"+outside+"\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := (Files{"index.html": []byte("3")}).Write(dir); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(outside); err != nil {
		t.Error("a file outside the folder was taken away")
	}
}

func TestCheckout(t *testing.T) {
	top := checkout(t)
	for _, sub := range []string{".", "wasm", "wasm/site", "testdata/jobs"} {
		if got, err := Checkout(filepath.Join(top, sub)); err != nil || got != top {
			t.Errorf("from %s: %s, %v", sub, got, err)
		}
	}
	if _, err := Checkout(t.TempDir()); !errors.Is(err, ErrNoCheckout) {
		t.Errorf("outside: %v", err)
	}
	other := t.TempDir()
	if err := os.WriteFile(filepath.Join(other, "go.mod"), []byte("module leafwright/fork\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := Checkout(other); !errors.Is(err, ErrNoCheckout) {
		t.Errorf("in another module: %v", err)
	}
}
