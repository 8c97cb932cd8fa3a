package site

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"path"
	"sort"
	"strings"

	"leafwright/cmd/leafwright/internal/static"
)

// keepName are the files a browser must find under a name that never changes:
// the document itself, the worker, the jobs and the lessons with their lists.
func keepName(name string) bool {
	return name == "index.html" || name == worker || isData(name)
}

// isData tells of files that no code of ours is in.
func isData(name string) bool { return path.Dir(name) == "jobs" || path.Dir(name) == "lessons" }

const (
	worker   = "sw.js"
	practice = "practice" // its scripts and its styles
)

// Lines of sw.js that are filled in.
const (
	versionLine = `const VERSION = "unbuilt";`
	filesLine   = `const FILES = [];`
	laterLine   = `const LATER = [];`
)

// isLater tells of a file's name before linking or after whether the file is fetched
// when it is first needed, and not with the page.
func isLater(name string) bool {
	return strings.HasPrefix(name, strings.TrimSuffix(clerk, "wasm")) || strings.HasPrefix(name, practice)
}

// link gives every file that may be kept for ever a name with its content's
// hash, mends the references, writes the policy into the documents and tells the
// worker what to keep. A file is renamed only after everything it names.
func (f Files) link() error {
	for _, doc := range []string{"index.html", "stage.html"} {
		if err := f.put(doc, `<meta charset="utf-8">`, `<meta charset="utf-8">`+"\n"+policyMeta()); err != nil {
			return err
		}
	}
	done := map[string]bool{}
	for len(done) < len(f) {
		name, err := f.next(done)
		if err != nil {
			return err
		}
		if keepName(name) {
			done[name] = true
			continue
		}
		renamed := hashedName(name, f[name])
		for other := range f {
			if other != name && !strings.HasSuffix(other, ".wasm") && !isData(other) {
				f[other] = rename(f[other], name, renamed)
			}
		}
		f[renamed] = f[name]
		delete(f, name)
		done[renamed] = true
	}
	return f.fillWorker()
}

// next gives, of the files not yet done, one that names no other file not yet done.
func (f Files) next(done map[string]bool) (string, error) {
	var names []string
	for name := range f {
		if !done[name] {
			names = append(names, name)
		}
	}
	sort.Strings(names)
	for _, name := range names {
		if keepName(name) || strings.HasSuffix(name, ".wasm") || f.namesNone(name, names) {
			return name, nil
		}
	}
	return "", fmt.Errorf("the page's files name each other in a ring: %s", strings.Join(names, ", "))
}

func (f Files) namesNone(name string, others []string) bool {
	for _, other := range others {
		if other != name && !keepName(other) && !bytes.Equal(f[name], rename(f[name], other, "")) {
			return false
		}
	}
	return true
}

// rename changes every mention of a file in quotes.
func rename(text []byte, from, to string) []byte {
	for _, q := range []string{`"`, `'`} {
		text = bytes.ReplaceAll(text, []byte(q+from+q), []byte(q+to+q))
	}
	return text
}

func hashedName(name string, data []byte) string {
	sum := sha256.Sum256(data)
	ext := path.Ext(name)
	return strings.TrimSuffix(name, ext) + ".h-" + hex.EncodeToString(sum[:5]) + ext
}

// policyMeta is the policy for hosts that send no headers. A document cannot say
// who may frame it.
func policyMeta() string {
	var parts []string
	for _, p := range strings.Split(static.Policy, "; ") {
		if !strings.HasPrefix(p, "frame-ancestors") {
			parts = append(parts, p)
		}
	}
	return `<meta http-equiv="Content-Security-Policy" content="` + strings.Join(parts, "; ") + `">`
}

// fillWorker writes into the worker which files there are, those of them that come
// later, and a version that changes with any.
func (f Files) fillWorker() error {
	names := []string{}
	for name := range f {
		if name != worker {
			names = append(names, name)
		}
	}
	sort.Strings(names)
	sum := sha256.New()
	for _, name := range names {
		fmt.Fprintf(sum, "%s %d\n", name, len(f[name]))
		sum.Write(f[name])
	}
	sum.Write(f[worker])
	first, later := []string{}, []string{}
	for _, name := range names {
		switch {
		case name == "index.html":
			first = append(first, "./")
		case isLater(name):
			later = append(later, name)
		default:
			first = append(first, name)
		}
	}
	files, err := json.Marshal(first)
	if err != nil {
		return err
	}
	rest, err := json.Marshal(later)
	if err != nil {
		return err
	}
	version := "leafwright-" + hex.EncodeToString(sum.Sum(nil)[:6])
	if err := f.put(worker, versionLine, fmt.Sprintf("const VERSION = %q;", version)); err != nil {
		return err
	}
	if err := f.put(worker, filesLine, "const FILES = "+string(files)+";"); err != nil {
		return err
	}
	return f.put(worker, laterLine, "const LATER = "+string(rest)+";")
}

// put replaces the one mention of old in the file.
func (f Files) put(name, old, new string) error {
	if n := bytes.Count(f[name], []byte(old)); n != 1 {
		return fmt.Errorf("%s: %q stands there %d times, want once", name, old, n)
	}
	f[name] = bytes.Replace(f[name], []byte(old), []byte(new), 1)
	return nil
}
