// Package site makes the static page out of the checkout: the program compiled
// to WebAssembly, the document, its scripts and styles, the demo jobs, all with
// relative addresses, so that any static host can serve it from any folder.
package site

import (
	"cmp"
	"context"
	"encoding/json"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"sort"
	"strconv"
	"strings"
)

// Files is the finished page: names with forward slashes, and contents.
type Files map[string][]byte

// Options says how to make the page.
type Options struct {
	Checkout string            // top folder of the sources
	Quick    bool              // pack with gzip alone, lightly: for looking at it here and now
	Say      func(what string) // called before each step that takes a while
}

// Names inside the page.
const (
	program = "leafwright.wasm"
	clerk   = "clerk.wasm" // fetched when it is first asked for something
	glue    = "wasm_exec.js"
	list    = "jobs/list.json"
	lessons = "lessons/list.json"
)

// Make compiles and gathers the page. Nothing is written outside Go's own build
// cache and a temporary folder.
func Make(ctx context.Context, o Options) (Files, error) {
	files := Files{}
	o.Say("Compiling the page's programs for the browser (the first time takes a minute or two)")
	err := files.compile(ctx, o.Checkout)
	if err != nil {
		return nil, err
	}
	if files["index.html"], err = os.ReadFile(filepath.Join(o.Checkout, "index.html")); err != nil {
		return nil, err
	}
	if err := files.gather(filepath.Join(o.Checkout, "wasm", "site"), ""); err != nil {
		return nil, err
	}
	for _, folder := range []string{"jobs", "lessons"} {
		if err := files.gather(filepath.Join(o.Checkout, "testdata", folder), folder); err != nil {
			return nil, err
		}
	}
	if err := files.paintIcons(); err != nil {
		return nil, err
	}
	if files[list], err = files.jobList(); err != nil {
		return nil, err
	}
	if files[lessons], err = files.lessonList(); err != nil {
		return nil, err
	}
	if err := files.link(); err != nil {
		return nil, err
	}
	if o.Quick {
		o.Say("Packing it")
	} else {
		o.Say("Packing it as small as it goes (about a minute)")
	}
	return files, files.pack(ctx, o.Quick)
}

// kinds are the endings of the files that belong to the page.
var kinds = map[string]bool{".html": true, ".css": true, ".js": true, ".json": true, ".svg": true, ".webmanifest": true}

// gather takes in the page's files that lie in dir itself, under the name to/.
func (f Files) gather(dir, to string) error {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return err
	}
	for _, e := range entries {
		if !e.Type().IsRegular() || !kinds[path.Ext(e.Name())] {
			continue
		}
		if f[path.Join(to, e.Name())], err = os.ReadFile(filepath.Join(dir, e.Name())); err != nil {
			return err
		}
	}
	return nil
}

// Entry is one demo job in the page's list, with what is wrong with the door.
type Entry struct {
	File  string `json:"file"`
	Name  string `json:"name"`
	About string `json:"about"`
}

// jobList gives the list the page offers its demo jobs from, in order of the numbers that
// the file names begin with, and then of the names. What is wrong with a door is the
// first sentence of its note.
func (f Files) jobList() ([]byte, error) {
	entries := []Entry{}
	for name, data := range f {
		if path.Dir(name) != "jobs" || name == list {
			continue
		}
		var job struct{ Name, Note string }
		if err := json.Unmarshal(data, &job); err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		if job.Name == "" {
			return nil, fmt.Errorf("%s: no name to list it by", name)
		}
		about, _, more := strings.Cut(job.Note, ". ")
		if more {
			about += "."
		}
		entries = append(entries, Entry{path.Base(name), job.Name, about})
	}
	number := func(e Entry) int {
		digits, _, _ := strings.Cut(e.File, "-")
		n, _ := strconv.Atoi(digits)
		return n
	}
	slices.SortFunc(entries, func(a, b Entry) int {
		return cmp.Or(cmp.Compare(number(a), number(b)), cmp.Compare(a.File, b.File))
	})
	return json.MarshalIndent(entries, "", " ")
}

// LessonEntry is one lesson or explanation in the page's list.
type LessonEntry struct {
	File  string `json:"file"`
	Title string `json:"title"`
	Why   bool   `json:"why"` // an explanation
}

// lessonList gives the list the page offers its lessons from, in order of file name.
func (f Files) lessonList() ([]byte, error) {
	entries := []LessonEntry{}
	for name, data := range f {
		if path.Dir(name) != "lessons" || name == lessons {
			continue
		}
		var file struct {
			Title       string
			Explanation int `json:"leafwright_explanation"`
		}
		if err := json.Unmarshal(data, &file); err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		if file.Title == "" {
			return nil, fmt.Errorf("%s: no title to list it by", name)
		}
		entries = append(entries, LessonEntry{path.Base(name), file.Title, file.Explanation > 0})
	}
	sort.Slice(entries, func(i, j int) bool { return entries[i].File < entries[j].File })
	return json.MarshalIndent(entries, "", " ")
}

// Size gives the bytes of the files with the given ending packed, "" for plain.
func (f Files) Size(suffix string) int {
	n := 0
	for name, data := range f {
		packed := strings.HasSuffix(name, gzipSuffix) || strings.HasSuffix(name, brotliSuffix)
		if suffix == "" && !packed || suffix != "" && strings.HasSuffix(name, suffix) {
			n += len(data)
		}
	}
	return n
}

// made lists the files a build wrote into a folder, so that the next build there
// can take away exactly those.
const made = "page-files.txt"

// Write puts the page into the folder dir, which must be new, empty or hold an
// earlier page; an earlier page's files are taken away.
func (f Files) Write(dir string) error {
	old, err := earlier(dir)
	if err != nil {
		return err
	}
	for _, name := range old {
		if f[name] == nil {
			if err := os.Remove(filepath.Join(dir, filepath.FromSlash(name))); err != nil && !os.IsNotExist(err) {
				return err
			}
		}
	}
	names := make([]string, 0, len(f))
	for name, data := range f {
		to := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(to, data, 0o644); err != nil {
			return err
		}
		names = append(names, name)
	}
	sort.Strings(names)
	return os.WriteFile(filepath.Join(dir, made), []byte(strings.Join(names, "\n")+"\n"), 0o644)
}

// earlier gives the files an earlier build left in dir.
func earlier(dir string) ([]string, error) {
	entries, err := os.ReadDir(dir)
	if os.IsNotExist(err) || err == nil && len(entries) == 0 {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	text, err := os.ReadFile(filepath.Join(dir, made))
	if err != nil {
		return nil, fmt.Errorf("%s holds other files: give a new or an empty folder, or one with an earlier page in it", dir)
	}
	var names []string
	for _, name := range strings.Fields(string(text)) {
		if fs.ValidPath(name) {
			names = append(names, name)
		}
	}
	return names, nil
}
