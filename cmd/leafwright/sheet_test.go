package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A sheet of every kind and form is written, to the files named and no others.
func TestSheetFiles(t *testing.T) {
	for name, starts := range map[string]string{"a.pdf": "%PDF-", "a.svg": "<svg ", "a.csv": "\uFEFF", "a.dxf": "  0"} {
		for _, kind := range []string{"work", "client", "template"} {
			folder := t.TempDir()
			out := filepath.Join(folder, name)
			status, said, errs := callWith("", "sheet", falling, "-option", "3", "-kind", kind, "-o", out)
			if status != ok || said != "" || errs != "" {
				t.Fatalf("%s, %s: status %d, %q, %q", kind, name, status, said, errs)
			}
			data, err := os.ReadFile(out)
			if err != nil || !bytes.HasPrefix(data, []byte(starts)) {
				t.Errorf("%s, %s: %v, begins %.20q", kind, name, err, data)
			}
			all, _ := filepath.Glob(filepath.Join(folder, "*"))
			many := name == "a.svg" && kind != "client"
			if many && len(all) < 2 || name != "a.svg" && len(all) != 1 {
				t.Errorf("%s, %s: the files are %v", kind, name, all)
			}
			if many {
				if _, err := os.Stat(filepath.Join(folder, "a-2.svg")); err != nil {
					t.Error(err)
				}
			}
		}
	}
}

// Equal jobs give equal files.
func TestSheetSameBytes(t *testing.T) {
	folder := t.TempDir()
	var first []byte
	for range 2 {
		out := filepath.Join(folder, "a.pdf")
		callWith("", "sheet", falling, "-option", "1", "-o", out)
		data, err := os.ReadFile(out)
		if err != nil || first != nil && !bytes.Equal(first, data) {
			t.Fatalf("the second file differs, %v", err)
		}
		first = data
	}
}

// What is wrong is said, all of it, with the status of bad input; what cannot be laid out
// says why, with the other; nothing is written then.
func TestSheetSaysWhatIsWrong(t *testing.T) {
	folder := t.TempDir()
	out := filepath.Join(folder, "a.pdf")
	rated := filepath.Join(folder, "rated.json")
	data, err := os.ReadFile(falling)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Replace(string(data), `"thickness": 35`, `"thickness": 35, "rated": true`, 1)
	if err := os.WriteFile(rated, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args   []string
		status int
		says   []string
	}{
		{[]string{falling, "-option", "1"}, misused, []string{"-o FILE is missing"}},
		{[]string{falling, "-option", "1", "-o", "a.doc", "-kind", "bill", "-paper", "A3", "-units", "ell", "-words", "XY"}, misused, []string{`-kind "bill"`, `-paper "A3"`, `-units "ell"`, `-words "XY"`, `"a.doc" does not end in .pdf, .svg, .csv or .dxf`}},
		{[]string{falling, "-o", out}, misused, []string{"-option NAME is missing: this job has 3"}},
		{[]string{jobs + "1-schoolroom-square.json", "-o", out}, misused, []string{"no options"}},
		{[]string{falling, "-option", "9", "-o", out}, misused, []string{"no such option", "Plane the top"}},
		{[]string{falling, "-option", "1", "-option", "2", "-o", out}, misused, []string{"2 options are too many"}},
		{[]string{falling, "-option", "1", "-o", filepath.Join(folder, "none", "a.pdf")}, misused, []string{"was not written"}},
		{[]string{rated, "-option", "1", "-o", out}, failed, []string{"rated or labelled", "no cuts are laid out", "certificate"}},
		{[]string{rated, "-option", "1", "-o", filepath.Join(folder, "a.dxf")}, failed, []string{"no cuts are laid out"}},
		{[]string{"-o", out}, misused, []string{"JOB is missing"}},
	} {
		status, said, errs := callWith("", append([]string{"sheet"}, c.args...)...)
		if status != c.status || said != "" {
			t.Errorf("%v: status %d, %q", c.args, status, said)
		}
		for _, s := range c.says {
			if !strings.Contains(errs, s) {
				t.Errorf("%v: %q does not say %q", c.args, errs, s)
			}
		}
		if _, err := os.Stat(out); err == nil {
			t.Errorf("%v: a sheet was written", c.args)
		}
	}
}

// The job's own file is never written over, under whatever name it goes.
func TestSheetLeavesTheJobAlone(t *testing.T) {
	folder := t.TempDir()
	data, err := os.ReadFile(falling)
	if err != nil {
		t.Fatal(err)
	}
	own := filepath.Join(folder, "job-2.svg") // a job may be called so
	if err := os.WriteFile(own, data, 0o600); err != nil {
		t.Fatal(err)
	}
	for _, out := range []string{own, filepath.Join(folder, ".", "job-2.svg"), filepath.Join(folder, "job.svg")} {
		status, _, errs := callWith("", "sheet", own, "-option", "3", "-o", out)
		if after, err := os.ReadFile(own); status != misused || !strings.Contains(errs, "the job's own file") || err != nil || !bytes.Equal(after, data) {
			t.Errorf("%s: status %d, %s, %v", out, status, errs, err)
		}
	}
}

// Letters the PDF's face has not are told, and those it shows unjoined; that the page's print
// shows them is told too.
func TestSheetTellsMissingLetters(t *testing.T) {
	data, err := os.ReadFile(falling)
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{
		"門":                  "shows empty boxes for 門,",
		"\u0628\u0627\u0628": "shows the letters \u0627 \u0628 unjoined", // a door, in Arabic
		"Дверь Θύρα דלת":     "",
	} {
		text := strings.Replace(string(data), "Terrace house", name+" house", 1)
		status, _, errs := callWith(text, "sheet", "-", "-option", "1", "-o", filepath.Join(t.TempDir(), "a.pdf"))
		if status != ok || !strings.Contains(errs, want) || (want == "") != (errs == "") || want != "" && !strings.Contains(errs, "print the sheet from the page") {
			t.Errorf("%s: status %d, %q", name, status, errs)
		}
	}
}

// The advice is asked for a client's sheet: that of the falling head tells of a way that takes
// less than the one recommended, and no other sheet does.
func TestClientSheetTellsOfTheAdvice(t *testing.T) {
	folder := t.TempDir()
	for kind, want := range map[string]bool{"client": true, "work": false} {
		out := filepath.Join(folder, kind+".svg")
		if status, _, errs := callWith("", "sheet", falling, "-option", "3", "-kind", kind, "-o", out); status != ok {
			t.Fatal(errs)
		}
		data, err := os.ReadFile(out)
		if told := bytes.Contains(data, []byte("A way that takes less is known")); err != nil || told != want {
			t.Errorf("%s: told is %v, %v", kind, told, err)
		}
	}
}
