package game

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"
	"unicode/utf8"
)

// plainValue turns a tree into what encoding/json makes of the same text.
func plainValue(n *node) any {
	switch n.kind {
	case boolNode:
		return n.text == "true"
	case numberNode:
		return n.num
	case textNode:
		return n.text
	case listNode:
		all := make([]any, 0, len(n.items))
		for i := range n.items {
			all = append(all, plainValue(&n.items[i]))
		}
		return all
	case groupNode:
		all := map[string]any{}
		for i := range n.members {
			all[n.members[i].name] = plainValue(&n.members[i].node)
		}
		return all
	}
	return nil
}

// odds tells whether the tree has what JSON has not, or what this reader will not
// have: numbers past a float64, and NaN.
func odds(n *node) bool {
	if n.kind == oddNode {
		return true
	}
	for i := range n.items {
		if odds(&n.items[i]) {
			return true
		}
	}
	for i := range n.members {
		if odds(&n.members[i].node) {
			return true
		}
	}
	return false
}

func FuzzScan(f *testing.F) {
	for _, s := range []string{
		`{"a": [1, -2.5e3, true, null, "x\n\u00e9\ud83d\ude00"], "b": {}}`, "[]", "1", `"\ud800"`, "-", "01", "1.", "1e", "[1,]", `{"a":1,}`,
		"NaN", "-Infinity", "[1e999]", "\ufeff{}", "{} {}", "\"\x01\"", `{"a":1 "b":2}`, "tru", `"\x"`, "-0", " [ ] ",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		tree, bad := scan([]byte(s))
		text := strings.TrimPrefix(s, "\ufeff")
		if bad != nil {
			if bad.pos < 0 || bad.pos > len(s) || bad.want == "" {
				t.Fatalf("fault at %d of %d, %q", bad.pos, len(s), bad.want)
			}
			place([]byte(s), bad.pos)
			deep := strings.Count(text, "[")+strings.Count(text, "{") > deepest
			lone := strings.Contains(text, `\u`) // halves of letters, which encoding/json lets pass
			if json.Valid([]byte(text)) && utf8.ValidString(text) && !deep && !lone {
				t.Fatalf("%q is JSON, refused: %s", s, bad.want)
			}
			return
		}
		if odds(&tree) {
			return
		}
		var want any
		if err := json.Unmarshal([]byte(text), &want); err != nil {
			t.Fatalf("%q is no JSON (%v), read all the same", s, err)
		}
		if got := plainValue(&tree); !reflect.DeepEqual(got, want) {
			t.Fatalf("%q read as %v, encoding/json reads %v", s, got, want)
		}
		again, bad := scan(tree.print())
		if bad != nil || !reflect.DeepEqual(plainValue(&again), want) {
			t.Fatalf("%q printed as %s, which reads as %v, %v", s, tree.print(), plainValue(&again), bad)
		}
	})
}

func TestScanTells(t *testing.T) {
	for _, row := range []struct{ situation, text, want string }{
		{"nothing", "", "line 1, column 1: the file ends where a value is wanted"},
		{"cut short", "{\n  \"a\": 1", "line 2, column 9: the file ends where a comma or a closing brace is wanted"},
		{"comma too many", "{\"a\": 1,\n}", "line 2, column 1: a field's name in quotes is wanted, and '}' stands there"},
		{"name without quotes", "{a: 1}", "line 1, column 2: a field's name in quotes is wanted, and 'a' stands there"},
		{"text after the end", "{} x", "line 1, column 4: the end of the file is wanted, and 'x' stands there"},
		{"columns count letters, not bytes", "{\"é\": x}", "line 1, column 7: a value is wanted, and 'x' stands there"},
		{"broken UTF-8", "{\"a\": \"\xff\"}", "line 1, column 8: the text must be UTF-8, and the byte here is not"},
		{"half a letter", `{"a": "\ud800"}`, `line 1, column 8: \u must stand before four figures of 0-9 and a-f, and halves of one letter in pairs`},
		{"nested without end", strings.Repeat("[", 40), "line 1, column 17: nested deeper than 16 levels"},
		{"a number in words", "[one]", "line 1, column 2: a value is wanted, and 'o' stands there"},
		{"nought before figures", "[012]", "line 1, column 3: a comma or a closing bracket is wanted, and '1' stands there"},
		{"point without figures", "[1.]", "line 1, column 4: a figure behind the point is wanted, and ']' stands there"},
		{"line break in a text", "[\"a\nb\"]", `line 1, column 4: a closing quote is wanted, and '\n' stands there`},
	} {
		t.Run(row.situation, func(t *testing.T) {
			_, err := Parse([]byte(row.text))
			if err == nil || err.Error() != row.want {
				t.Errorf("got  %v\nwant %v", err, row.want)
			}
		})
	}
}
