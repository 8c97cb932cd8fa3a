package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const lessonFiles = "../../testdata/lessons/"

// lessonRuns runs the command and gives what it wrote.
func lessonRuns(t *testing.T, args ...string) (status int, out, err string) {
	t.Helper()
	var o, e strings.Builder
	status = run(t.Context(), append([]string{"lesson"}, args...), std{strings.NewReader(""), &o, &e})
	return status, o.String(), e.String()
}

func TestLessonsAreChecked(t *testing.T) {
	paths, err := filepath.Glob(lessonFiles + "*.json")
	if err != nil || len(paths) < 14 {
		t.Fatalf("%d files, %v", len(paths), err)
	}
	for _, path := range paths {
		status, out, err := lessonRuns(t, path)
		if status != ok || err != "" {
			t.Errorf("%s: status %d\n%s", path, status, err)
		}
		if strings.Contains(path, "why-") {
			if !strings.Contains(out, "To play with: ") {
				t.Errorf("%s:\n%s", path, out)
			}
			continue
		}
		if !strings.Contains(out, "The lesson is sound: ") || strings.Contains(out, "What is wrong") {
			t.Errorf("%s:\n%s", path, out)
		}
		status, out, _ = lessonRuns(t, path, "-tell")
		for _, title := range []string{"What is wrong\n", "What it shows\n", "What puts it right\n"} {
			if status != ok || !strings.Contains(out, title) {
				t.Errorf("%s: status %d, no %q in\n%s", path, status, title, out)
			}
		}
		for _, line := range strings.Split(out, "\n") {
			if len([]rune(line)) > textWidth {
				t.Errorf("%s: %q is too long", path, line)
			}
		}
	}
}

func TestLessonMisuse(t *testing.T) {
	bad := filepath.Join(t.TempDir(), "bad.json")
	if err := os.WriteFile(bad, []byte(`{"leafwright_lesson": 1, "titel": "T"}`), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args []string
		want string
	}{
		{nil, "a FILE or -draw LEVEL,SEED is wanted, and not both"},
		{[]string{bad, "-draw", "1,1"}, "a FILE or -draw LEVEL,SEED is wanted, and not both"},
		{[]string{"-draw", "9,1"}, `-draw "9,1" is not a level from 1 to 6 and a seed, like 2,17`},
		{[]string{bad, "-words", "FR"}, `-words "FR" is not one of UK, AU and US`},
		{[]string{bad, "-units", "cm"}, `-units "cm" is not one of mm and in`},
		{[]string{"no-such-file.json"}, "it could not be opened: no such file or directory"},
		{[]string{bad}, "bad.json cannot be used as it is:\ntitle: missing; a text in quotes is wanted\n"},
		{[]string{bad}, "titel: no such field; is it title?\n"},
	} {
		status, out, err := lessonRuns(t, c.args...)
		if status != misused || out != "" || !strings.Contains(err, c.want) {
			t.Errorf("%q: status %d\n%s\n%s", c.args, status, out, err)
		}
	}
}

// A session is judged: 0 where the door was put right within limits, 1 where it was
// not, 2 where it is none of this lesson.
func TestSessionsAreJudged(t *testing.T) {
	const wide = "01-rubs-all-the-way-up"
	file := lessonFiles + wide + ".json"
	session := func(text string) string {
		path := filepath.Join(t.TempDir(), "session")
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	head := `{"leafwright_session": 1, "lesson": "` + wide + `", "learner": "R. Holt's class"}` + "\n"
	const tried = `{"act": "try"}` + "\n"
	const named = `{"act": "name", "faults": ["leaf wide"]}` + "\n"
	const planed = `{"act": "move", "move": {"do": "plane", "edge": "closing", "first": 5}}` + "\n"
	const over = `{"act": "done"}` + "\n"
	for _, c := range []struct {
		name, text string
		status     int
		want       string
	}{
		{"well done", head + tried + named + planed + over, ok, "You named it rightly: leaf too wide."},
		{"not enough", head + tried + named + over, failed, "How it hangs now\n  Binds, "},
		{"past a limit", head + planed + strings.Replace(planed, "closing", "foot", 1) + strings.Replace(planed, "closing", "foot", 1) + over, failed, "You did not say what was wrong."},
		{"another's", strings.Replace(head, wide, "02", 1) + tried, misused, "is a session of another lesson"},
		{"no session", "nonsense", misused, "line 1: a value is wanted, and 'n' stands there"},
		{"an act too many", head + over + tried, misused, "acts[1].act: the lesson is over, and nothing more can be done"},
	} {
		status, out, err := lessonRuns(t, file, "-play", session(c.text))
		if status != c.status || !strings.Contains(out+err, c.want) {
			t.Errorf("%s: status %d\n%s\n%s", c.name, status, out, err)
		}
	}
	status, out, err := lessonRuns(t, "-draw", "1,2", "-units", "in", "-words", "US", "-play", session(`{"leafwright_session": 1, "lesson": "attempt 1 2"}`+"\n"+tried+`{"act": "give up"}`+"\n"))
	if status != failed || !strings.Contains(out, "You give it up, and are shown the answer.") || strings.Contains(out, " mm") {
		t.Errorf("status %d\n%s\n%s", status, out, err)
	}
}
