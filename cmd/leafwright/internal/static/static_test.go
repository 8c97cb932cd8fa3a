package static

import (
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"testing/fstest"
)

var files = fstest.MapFS{
	"index.html":                   {Data: []byte("<p>page")},
	"index.html.gz":                {Data: []byte("gz-page")},
	"index.html.br":                {Data: []byte("br-page")},
	"leafwright.h-0123abcd.wasm":   {Data: []byte("\x00asm")},
	"app.webmanifest":              {Data: []byte("{}")},
	"icon.svg":                     {Data: []byte("<svg/>")},
	"page.css":                     {Data: []byte("p{}")},
	"page.js":                      {Data: []byte("1")},
	"page.js.gz":                   {Data: []byte("gz-js")},
	"jobs/list.json":               {Data: []byte("[]")},
	"jobs/index.html":              {Data: []byte("jobs")},
	"notes.txt":                    {Data: []byte("not part of the page")},
	"stage.html":                   {Data: []byte("<p>stage")},
	"deep/er/leafwright.h-01.wasm": {Data: []byte("short hash")},
}

func ask(t *testing.T, method, target string, header ...string) *http.Response {
	t.Helper()
	r := httptest.NewRequest(method, "http://page.test/", nil)
	r.URL.Path = target
	for i := 0; i < len(header); i += 2 {
		r.Header.Set(header[i], header[i+1])
	}
	w := httptest.NewRecorder()
	Handler(files).ServeHTTP(w, r)
	return w.Result()
}

func body(t *testing.T, r *http.Response) string {
	t.Helper()
	b, err := io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func TestFilesAndTypes(t *testing.T) {
	for _, c := range []struct {
		name, path string
		status     int
		kind, body string
	}{
		{"root is the page", "/", 200, "text/html; charset=utf-8", "<p>page"},
		{"page by name", "/index.html", 200, "text/html; charset=utf-8", "<p>page"},
		{"program", "/leafwright.h-0123abcd.wasm", 200, "application/wasm", "\x00asm"},
		{"manifest", "/app.webmanifest", 200, "application/manifest+json", "{}"},
		{"icon", "/icon.svg", 200, "image/svg+xml", "<svg/>"},
		{"style", "/page.css", 200, "text/css; charset=utf-8", "p{}"},
		{"script", "/page.js", 200, "text/javascript; charset=utf-8", "1"},
		{"list of jobs", "/jobs/list.json", 200, "application/json", "[]"},
		{"folder with an index", "/jobs/", 200, "text/html; charset=utf-8", "jobs"},
		{"folder without its slash is not listed", "/jobs", 404, "text/plain; charset=utf-8", ""},
		{"folder without an index is not listed", "/deep/", 404, "text/plain; charset=utf-8", ""},
		{"missing", "/none.html", 404, "text/plain; charset=utf-8", ""},
		{"packed copy by name", "/index.html.br", 404, "text/plain; charset=utf-8", ""},
		{"kind the page does not use", "/notes.txt", 404, "text/plain; charset=utf-8", ""},
		{"way out by dots stays inside", "/../../index.html", 200, "text/html; charset=utf-8", "<p>page"},
		{"way out by dots finds nothing", "/../static.go", 404, "text/plain; charset=utf-8", ""},
		{"dots in the middle", "/jobs/../stage.html", 200, "text/html; charset=utf-8", "<p>stage"},
		{"backslashes", `/..\..\go.html`, 404, "text/plain; charset=utf-8", ""},
		{"zero byte", "/index.html\x00.html", 404, "text/plain; charset=utf-8", ""},
		{"empty path", "", 200, "text/html; charset=utf-8", "<p>page"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ask(t, "GET", c.path)
			if r.StatusCode != c.status {
				t.Fatalf("status %d, want %d", r.StatusCode, c.status)
			}
			if got := r.Header.Get("Content-Type"); got != c.kind {
				t.Errorf("type %q, want %q", got, c.kind)
			}
			if got := body(t, r); c.status == 200 && got != c.body {
				t.Errorf("body %q, want %q", got, c.body)
			}
		})
	}
}

func TestPacking(t *testing.T) {
	for _, c := range []struct {
		name, path, accept, coding, body string
	}{
		{"brotli and gzip taken", "/", "gzip, deflate, br", "br", "br-page"},
		{"only gzip taken", "/", "gzip", "gzip", "gz-page"},
		{"brotli refused by q=0", "/", "br;q=0, gzip;q=0.5", "gzip", "gz-page"},
		{"both refused", "/", "br;q=0, gzip; q=0.0", "", "<p>page"},
		{"nothing said", "/", "", "", "<p>page"},
		{"identity asked", "/", "identity", "", "<p>page"},
		{"anything taken", "/", "*", "br", "br-page"},
		{"anything but brotli", "/", "*, br;q=0", "gzip", "gz-page"},
		{"anything refused", "/", "*;q=0", "", "<p>page"},
		{"capitals", "/", "GZIP;Q=1", "gzip", "gz-page"},
		{"nonsense weight", "/", "br;q=x", "", "<p>page"},
		{"no brotli copy", "/page.js", "br, gzip", "gzip", "gz-js"},
		{"no copy at all", "/page.css", "br, gzip", "", "p{}"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ask(t, "GET", c.path, "Accept-Encoding", c.accept)
			if got := r.Header.Get("Content-Encoding"); got != c.coding {
				t.Errorf("coding %q, want %q", got, c.coding)
			}
			if got := r.Header.Get("Vary"); got != "Accept-Encoding" {
				t.Errorf("Vary %q", got)
			}
			if got := body(t, r); got != c.body {
				t.Errorf("body %q, want %q", got, c.body)
			}
		})
	}
}

func TestCaching(t *testing.T) {
	if got := ask(t, "GET", "/leafwright.h-0123abcd.wasm").Header.Get("Cache-Control"); !strings.Contains(got, "immutable") {
		t.Errorf("hashed name: Cache-Control %q, want immutable", got)
	}
	for _, p := range []string{"/", "/page.js", "/deep/er/leafwright.h-01.wasm"} {
		if got := ask(t, "GET", p).Header.Get("Cache-Control"); got != "no-cache" {
			t.Errorf("%s: Cache-Control %q, want no-cache", p, got)
		}
	}
	plain := ask(t, "GET", "/").Header.Get("ETag")
	packed := ask(t, "GET", "/", "Accept-Encoding", "br").Header.Get("ETag")
	if plain == "" || plain == packed {
		t.Errorf("tags %s and %s: want one for each coding", plain, packed)
	}
	for _, c := range []struct {
		name, match string
		status      int
	}{
		{"same tag", plain, 304},
		{"weak form of the tag", "W/" + plain, 304},
		{"one of several", `"a", ` + plain, 304},
		{"any", "*", 304},
		{"the packed copy's tag", packed, 200},
		{"another tag", `"a"`, 200},
		{"none", "", 200},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ask(t, "GET", "/", "If-None-Match", c.match)
			if r.StatusCode != c.status {
				t.Fatalf("status %d, want %d", r.StatusCode, c.status)
			}
			if b := body(t, r); (b == "") != (c.status == 304) {
				t.Errorf("body %q with status %d", b, c.status)
			}
		})
	}
}

func TestMethods(t *testing.T) {
	r := ask(t, "HEAD", "/")
	if r.StatusCode != 200 || r.Header.Get("Content-Length") != "7" || body(t, r) != "" {
		t.Errorf("HEAD: %d, length %s", r.StatusCode, r.Header.Get("Content-Length"))
	}
	for _, m := range []string{"POST", "PUT", "DELETE", "OPTIONS", "PATCH"} {
		r := ask(t, m, "/")
		if r.StatusCode != 405 || r.Header.Get("Allow") != "GET, HEAD" {
			t.Errorf("%s: %d, Allow %q", m, r.StatusCode, r.Header.Get("Allow"))
		}
	}
}

func TestHeadersOnEveryAnswer(t *testing.T) {
	for _, p := range []string{"/", "/none.html", "/page.js"} {
		h := ask(t, "GET", p).Header
		if h.Get("Content-Security-Policy") != Policy || h.Get("X-Content-Type-Options") != "nosniff" || h.Get("Referrer-Policy") != "no-referrer" {
			t.Errorf("%s: headers %v", p, h)
		}
	}
	for _, bad := range []string{"unsafe-inline", "'unsafe-eval'", "http:", "https:", "*", "data:"} {
		if strings.Contains(Policy, bad) {
			t.Errorf("policy allows %s", bad)
		}
	}
	if !strings.HasPrefix(Policy, "default-src 'none'") {
		t.Error("policy does not start from nothing")
	}
}
