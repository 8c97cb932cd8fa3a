// Package static serves the built page: a folder of plain files, some of them
// beside a copy packed with gzip or brotli. It answers GET and HEAD only, lists
// no folder and reaches nothing outside the folder.
package static

import (
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"net/http"
	"path"
	"regexp"
	"strconv"
	"strings"
)

// Policy is what the page may do: run its own files and Go's WebAssembly, talk
// to its own server, and nothing else.
const Policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'; " +
	"style-src 'self'; frame-src 'self'; img-src 'self'; manifest-src 'self'; worker-src 'self'; " +
	"frame-ancestors 'self'; base-uri 'none'; form-action 'none'"

// packings are the packed copies looked for, the smallest first.
var packings = []struct{ coding, suffix string }{{"br", ".br"}, {"gzip", ".gz"}}

// types gives every kind of file the page is made of; what is not here is not served.
var types = map[string]string{
	".html":        "text/html; charset=utf-8",
	".css":         "text/css; charset=utf-8",
	".js":          "text/javascript; charset=utf-8",
	".json":        "application/json",
	".png":         "image/png",
	".svg":         "image/svg+xml",
	".wasm":        "application/wasm",
	".webmanifest": "application/manifest+json",
}

// hashed matches names that carry a hash of their content, so that a name never
// changes its meaning.
var hashed = regexp.MustCompile(`\.h-[0-9a-f]{8,}\.`)

// Handler serves the files of root.
func Handler(root fs.FS) http.Handler { return handler{root} }

type handler struct{ root fs.FS }

func (h handler) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	head := w.Header()
	head.Set("Content-Security-Policy", Policy)
	head.Set("X-Content-Type-Options", "nosniff")
	head.Set("Referrer-Policy", "no-referrer")
	head.Set("Cross-Origin-Opener-Policy", "same-origin")
	if r.Method != http.MethodGet && r.Method != http.MethodHead {
		head.Set("Allow", "GET, HEAD")
		http.Error(w, "only GET and HEAD are answered here", http.StatusMethodNotAllowed)
		return
	}
	name := fileName(r.URL.Path)
	kind, known := types[path.Ext(name)]
	if !known || !fs.ValidPath(name) {
		http.NotFound(w, r)
		return
	}
	file, coding := h.pick(name, r.Header.Get("Accept-Encoding"))
	body, err := fs.ReadFile(h.root, file)
	if err != nil {
		http.NotFound(w, r)
		return
	}
	sum := sha256.Sum256(body)
	tag := `"` + hex.EncodeToString(sum[:12]) + `"`
	head.Add("Vary", "Accept-Encoding")
	head.Set("ETag", tag)
	head.Set("Content-Type", kind)
	head.Set("Cache-Control", caching(name))
	if coding != "" {
		head.Set("Content-Encoding", coding)
	}
	if matches(r.Header.Get("If-None-Match"), tag) {
		w.WriteHeader(http.StatusNotModified)
		return
	}
	head.Set("Content-Length", strconv.Itoa(len(body)))
	if r.Method == http.MethodGet {
		w.Write(body)
	}
}

// fileName gives the file a request's path asks for; a folder asks for its index.html.
func fileName(asked string) string {
	name := strings.TrimPrefix(path.Clean("/"+asked), "/")
	if name == "" || strings.HasSuffix(asked, "/") {
		name = path.Join(name, "index.html")
	}
	return name
}

// pick gives the copy of the file to send: the smallest the client takes.
func (h handler) pick(name, accept string) (file, coding string) {
	for _, p := range packings {
		if !accepts(accept, p.coding) {
			continue
		}
		if _, err := fs.Stat(h.root, name+p.suffix); err == nil {
			return name + p.suffix, p.coding
		}
	}
	return name, ""
}

// accepts tells whether an Accept-Encoding header allows the coding. The coding's
// own entry decides; without one, the entry for any coding does.
func accepts(header, coding string) bool {
	any := false
	for _, part := range strings.Split(header, ",") {
		fields := strings.Split(part, ";")
		allowed := true
		for _, f := range fields[1:] {
			if v, ok := strings.CutPrefix(strings.ToLower(strings.TrimSpace(f)), "q="); ok {
				q, err := strconv.ParseFloat(v, 64)
				allowed = err == nil && q > 0
			}
		}
		switch strings.ToLower(strings.TrimSpace(fields[0])) {
		case coding:
			return allowed
		case "*":
			any = allowed
		}
	}
	return any
}

// matches tells whether an If-None-Match header names the tag.
func matches(header, tag string) bool {
	for _, t := range strings.Split(header, ",") {
		t = strings.TrimPrefix(strings.TrimSpace(t), "W/")
		if t == tag || t == "*" {
			return true
		}
	}
	return false
}

func caching(name string) string {
	if hashed.MatchString(name) {
		return "public, max-age=31536000, immutable"
	}
	return "no-cache"
}
