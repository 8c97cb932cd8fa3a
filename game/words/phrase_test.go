package words

import "testing"

func TestPhrases(t *testing.T) {
	for text, want := range map[string]string{"": "", "top": "Top", "−2.0 mm": "−2.0 mm", "été": "été", "7 mm": "7 mm"} {
		if got := Capital(text); got != want {
			t.Errorf("Capital(%q) is %q", text, got)
		}
	}
	for _, c := range []struct {
		all  []string
		want string
	}{{nil, ""}, {[]string{"a"}, "a"}, {[]string{"a", "b"}, "a and b"}, {[]string{"a", "b", "c"}, "a, b and c"}} {
		if got := Listed(c.all); got != c.want {
			t.Errorf("Listed(%q) is %q", c.all, got)
		}
	}
}
