package game

import (
	"bytes"
	"encoding/json"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"leafwright/geom/door"
)

// schemaOf compiles the schema with a validator that is not ours.
func schemaOf(t testing.TB) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.DefaultDraft(jsonschema.Draft2020)
	if err := c.AddResource("job.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("job.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// holds tells whether a text is JSON and the schema lets it pass.
func holds(s *jsonschema.Schema, text []byte) bool {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	return err == nil && s.Validate(doc) == nil
}

func TestSchemaLetsSoundJobsPass(t *testing.T) {
	s := schemaOf(t)
	names, texts := seeds(t, "jobs")
	names, texts = append(names, "plainest", "rich", "least read", "every kind"), append(texts, []byte(plainest), []byte(rich), []byte(leastRead), []byte(rightly(t)))
	for i, name := range names {
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(texts[i]))
		if err != nil {
			t.Fatal(err)
		}
		if err := s.Validate(doc); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if out := Encode(must(t, string(texts[i]))); !holds(s, out) {
			t.Errorf("%s, as it is written again, does not pass:\n%s", name, out)
		}
	}
}

// Bad jobs whose fault lies between fields, or in what JSON readers make of a
// text: no schema can see these.
var unseen = map[string]string{
	"broken-letters":                              "JSON readers put a sign in their place",
	"control-character-in-the-name":               "letters",
	"edge-far-from-its-width":                     "a size and its edge",
	"edges-that-cross":                            "two edges",
	"field-twice":                                 "JSON readers keep the last",
	"floor-angles-falling":                        "order",
	"floor-with-a-short-row":                      "two lists",
	"hinge-off-the-leaf":                          "a hinge and the leaf",
	"hinges-from-the-bottom-up":                   "order",
	"hinges-too-near":                             "two hinges",
	"jambs-too-near":                              "two jambs",
	"latch-off-the-leaf":                          "the latch and the leaf",
	"leaf-of-another-door":                        "leaf and opening",
	"leaf-through-the-floor":                      "two heights of a hinge",
	"limits-in-the-wrong-order":                   "order",
	"move-done-and-left-out":                      "made and off",
	"move-past-its-kind":                          "what a kind of move can be",
	"neighbour-upside-down":                       "two heights of a rail",
	"reading-after-moves-not-made":                "readings and moves",
	"profile-too-steep":                           "two stations",
	"rails-that-overlap":                          "two rails",
	"reading-of-a-side-there-is-not":              "what a kind of reading needs",
	"reading-outside-its-straightedge":            "two places",
	"reading-ten-times-too-great":                 "what a kind of reading can be",
	"reading-that-is-no-length":                   "lengths as typed",
	"reading-under-a-straightedge-laid-backwards": "two places",
	"reading-with-a-place-too-many":               "what a kind of reading needs",
	"reading-with-a-thousand-or-a-decimal":        "lengths as typed",
	"reading-without-a-value":                     "value and off",
	"reading-without-its-place":                   "what a kind of reading needs",
	"reading-without-its-side":                    "what a kind of reading needs",
	"readings-beside-shapes":                      "readings and shapes",
	"right-hung-with-left-hung-stations":          "hand and sign",
	"stations-reversed":                           "order",
	"stop-before-the-front-edge":                  "stop and front edge",
	"top-below-the-bottom":                        "two edges",
	"void-upside-down":                            "two places",
	"two-values-at-one-station":                   "order",
}

func TestSchemaRefusesBadJobs(t *testing.T) {
	s := schemaOf(t)
	names, texts := seeds(t, "bad")
	seen := map[string]bool{}
	for i, name := range names {
		name = strings.TrimSuffix(filepath.Base(name), ".json")
		why, blind := unseen[name]
		seen[name] = true
		if got := !holds(s, texts[i]); got == blind {
			t.Errorf("%s: refused %v; what a schema cannot see in it: %q", name, got, why)
		}
	}
	for name := range unseen {
		if !seen[name] {
			t.Errorf("no bad job %s", name)
		}
	}
}

// For every length and angle of the file: at the ends of its range schema and
// reader both find the field right, just beyond both find it wrong.
func TestSchemaAndReaderAgreeOnEveryRange(t *testing.T) {
	s := schemaOf(t)
	sample := must(t, rich)
	file := sample.filed()
	tried := 0
	walk(table(), &file, "", 0, func(f *field, path string, i int) bool {
		var allow door.Range
		var set func(x float64) []byte
		switch f.at(&file, i).(type) {
		case whole:
			if allow = f.limits; f.unit == "" {
				return true // what it may be turns on others
			}
			for _, x := range []float64{allow.Lo - 1, allow.Lo, allow.Hi, allow.Hi + 1} {
				text, right := withNumber(t, path, x), x >= allow.Lo && x <= allow.Hi
				if holds(s, text) != right || ownFault(text, path, allow) == right {
					t.Errorf("%s = %v: schema or reader does not say %v", path, x, right)
				}
			}
			return true
		case length, degrees:
			if f.counts != nil && !f.counts(&file, i) {
				return true
			}
			allow = f.limits
			set = func(x float64) []byte { return withNumber(t, path, x) }
		default:
			return true
		}
		tried++
		for _, row := range []struct {
			x     float64
			right bool
		}{{allow.Lo, true}, {allow.Hi, true}, {allow.Lo - 0.25, false}, {allow.Hi + 0.25, false}} {
			text := set(row.x)
			if holds(s, text) != row.right {
				t.Errorf("%s = %v: schema says %v", path, row.x, !row.right)
			}
			if found := ownFault(text, path, allow); found == row.right {
				t.Errorf("%s = %v: reader finds it wrong: %v", path, row.x, found)
			}
		}
		return true
	})
	if tried < 115 {
		t.Errorf("only %d numbers tried", tried)
	}
}

// withNumber is the rich job with one number changed.
func withNumber(t testing.TB, path string, x float64) []byte {
	t.Helper()
	var doc any
	if err := json.Unmarshal([]byte(rich), &doc); err != nil {
		t.Fatal(err)
	}
	at := doc
	steps := strings.FieldsFunc(path, func(r rune) bool { return r == '.' || r == '[' || r == ']' })
	for k, step := range steps {
		last := k == len(steps)-1
		switch v := at.(type) {
		case map[string]any:
			if last {
				v[step] = x
			}
			at = v[step]
		case []any:
			at = v[step[0]-'0']
		default:
			t.Fatalf("%s: nothing at %s", path, step)
		}
	}
	out, err := json.Marshal(doc)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// ownFault tells whether the reader finds the field outside its own range.
func ownFault(text []byte, path string, allow door.Range) bool {
	_, err := Parse(text)
	faults, _ := err.(Faults)
	for _, f := range faults {
		if f.Path == path && f.Want == allow.String() {
			return true
		}
	}
	return false
}

// The schema and the table know the same fields: both refuse a stranger in every
// group of the file.
func TestSchemaRefusesStrangersEverywhere(t *testing.T) {
	s := schemaOf(t)
	for _, group := range []string{`"leaf": {
    "width"`, `"face": {`, `"bevel": {`, `"stiles": {`, `"lock": {`, `"opening": {`, `"front": {`, `"stops": {`,
		`"latch": {"height": 931`, `"floor": {"radii"`, `"wanted": {`, `"swing": {`, `"joints": {`, `"neighbour": {`, `"house": {`, `"paint": {`, `"frame": {"on"`, `"meter": {`, `"prices": {`, `{"at": "closing"`, `{"from": 10`, `{"do": "sink"`, `{"do": "bevel"`, `{"at": 380`, `{"name": "bottom"`, `{"jamb": 1800`} {
		brace := strings.IndexByte(group, '{') + 1
		text := swap(t, rich, group, group[:brace]+`"stranger": 1, `+group[brace:])
		if holds(s, []byte(text)) {
			t.Errorf("the schema lets a stranger into %s", group)
		}
		_, err := Parse([]byte(text))
		if err == nil || !strings.Contains(err.Error(), "stranger: no such field") {
			t.Errorf("a stranger in %s: %v", group, err)
		}
	}
}
