package game

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"leafwright/game/measure"
	"leafwright/geom"
	"leafwright/geom/survey"
)

func mm(text string) measure.Length { l, _ := Typed(text, measure.MM); return l }

func TestParseReadings(t *testing.T) {
	two := []Reading{
		{Kind: survey.OpeningWidth, At: mm("1000"), Value: mm("797.5")},
		{Kind: survey.JambPlumb, Side: survey.Latch, From: mm("50"), To: mm("1900"), Value: mm("-2")},
	}
	comma := slicesOf(two)
	comma[0].Value = mm("797,5")
	for _, row := range []struct {
		situation, text string
		want            []Reading
	}{
		{"commas", "kind,side,at,from,to,value\nopening_width,,1000,,,797.5\njamb_plumb,latch,,50,1900,-2\n", two},
		{"semicolons and a decimal comma", "kind;at;value;side;from;to\nopening_width;1000;797,5\njamb_plumb;;-2;latch;50;1900", comma},
		{"tabs, as pasted from a sheet", "kind\tside\tat\tfrom\tto\tvalue\nopening_width\t\t1000\t\t\t797.5\njamb_plumb\tlatch\t\t50\t1900\t-2\n", two},
		{"a decimal comma in quotes among commas", "kind,at,value,side,from,to\nopening_width,1000,\"797,5\"\njamb_plumb,,-2,latch,50,1900", comma},
		{"lines of an old machine", "kind,side,at,from,to,value\r\nopening_width,,1000,,,797.5\rjamb_plumb,latch,,50,1900,-2\r", two},
		{"comments, empty lines and lines of nothing but separators", "# taken on Tuesday\n\nkind,side,at,from,to,value\n,,,,,\nopening_width,,1000,,,797.5\n  # the latch jamb\njamb_plumb,latch,,50,1900,-2\n,,\n", two},
		{"a mark of its coding, capitals and spaces", "\ufeffKind , Side,At,From,To,Value\n opening_width ,, 1000 ,,, 797.5 \njamb_plumb,latch,,50,1900,-2", two},
		{"units as typed", "kind,at,value\nopening_width,1 m,2' 7 3/8\"\nleaf_width,\"39 3/8\"\"\",79.7cm\n", []Reading{
			{Kind: survey.OpeningWidth, At: mm("1 m"), Value: mm(`2' 7 3/8"`)},
			{Kind: survey.LeafWidth, At: mm(`39 3/8"`), Value: mm("79.7cm")},
		}},
		{"everything a reading can have", "kind,side,hinge,at,from,to,angle,value,sigma,instrument,note,off\n" +
			"floor_height,,,400,,,\"45,5\",2,0.5,level,\"by the hearth, \"\"warm\"\"\",yes\nhinge_on_leaf,,2,,,,,265,,,,\nrub,latch,,900,,,,,,,,no\n", []Reading{
			{Kind: survey.FloorHeight, At: mm("400"), Angle: 45.5 * geom.Degree, Value: mm("2"), Sigma: mm("0.5"), Instrument: survey.Level, Note: `by the hearth, "warm"`, Off: true},
			{Kind: survey.HingeOnLeaf, Hinge: 2, Value: mm("265")},
			{Kind: survey.Rub, Side: survey.Latch, At: mm("900")},
		}},
		{"a header and nothing else", "kind,value\n", nil},
	} {
		t.Run(row.situation, func(t *testing.T) {
			got, err := ParseReadings([]byte(row.text))
			if err != nil || !reflect.DeepEqual(got, row.want) {
				t.Fatalf("read as %+v, %v", got, err)
			}
			back, err := ParseReadings(EncodeReadings(got))
			if err != nil || !reflect.DeepEqual(back, got) {
				t.Errorf("written as\n%s\nread back as %+v, %v", EncodeReadings(got), back, err)
			}
		})
	}
}

func slicesOf(r []Reading) []Reading { return append([]Reading(nil), r...) }

func TestFaultsOfReadingsTold(t *testing.T) {
	for _, row := range []struct{ situation, text, want string }{
		{"nothing", "", "file: empty; a line with the columns' names is wanted first, like kind, at, value"},
		{"nothing but comments", "# a\n\n#b", "file: empty; a line with the columns' names is wanted first, like kind, at, value"},
		{"no header", "opening_width,1000,797\n", "line 1: a line with the columns' names is wanted first, like kind, at, value"},
		{"a misspelt column, and one twice", "kind,vlaue,at,at\n", "line 1, vlaue: no such column; is it value?\nline 1, at: a column given twice"},
		{"no column of values", "kind,at\nleaf_width,1\n", "line 1, value: missing among the columns"},
		{"everything at once", "kind,side,hinge,at,value\n# one\nopening_wdith,,,1000,797\nopening_width,,,1000,8130\n\nopening_width,,,\"1,000\",797\nhinge_on_leaf,,0,,265\nleaf_thickness,latch,,,a bit\nleaf_width,,,,762,1,2\nleaf_width,,,900,\n",
			`line 3, kind: "opening_wdith" is not known here; is it opening_width?
line 4, value: 8130 is not between 200 and 1700; is it 813?
line 6, at: "1,000": could be 1000 or 1.000: leave the comma out or write a point
line 7, hinge: missing; which hinge, 1 the top one, is wanted for hinge_on_leaf
line 8, value: "a bit": a length is wanted, like 797, 797.5, 79.7 cm, 31 3/8 or 2' 7 3/8"
line 8, side: latch is not wanted: leaf_thickness has no side
line 9: 7 cells is not at most 5, one for each column
line 10, value: missing; what was read is wanted, or off: true where it was not read yet`},
		{"a quote that does not end", "kind,value,note\nleaf_thickness,40,\"as found\nleaf_width,1,2\n", "line 2: a quoted cell must end with a quote before the next separator or the end of the line; a quote inside is doubled\n" +
			"line 3, at: missing; the place is wanted for leaf_width\nline 3, value: 1 is not between 200 and 1500"},
		{"a cell with more behind its quote", "kind,value\n\"leaf_thickness\" x,40\n", "line 2: a quoted cell must end with a quote before the next separator or the end of the line; a quote inside is doubled"},
		{"another coding", "kind,value\nleaf_thickness,4\xff0\n", "line 2: the text must be UTF-8, and the byte here is not"},
		{"neither yes nor no", "kind,value,off\nleaf_thickness,40,perhaps\n", `line 2, off: "perhaps" is not yes or no`},
		{"a control character", "kind,value,note\nleaf_thickness,40,\"a\x01b\"\n", `line 2, note: a text without control characters is wanted`},
	} {
		t.Run(row.situation, func(t *testing.T) {
			got, err := ParseReadings([]byte(row.text))
			if err == nil || err.Error() != row.want || got != nil {
				t.Errorf("got\n%v\nwant\n%s", err, row.want)
			}
		})
	}
	if _, err := ParseReadings(make([]byte, Largest+1)); err == nil {
		t.Error("too large a file was read")
	}
	many := "kind,value\n" + strings.Repeat("leaf_thickness,40\n", survey.ReadingsMost)
	if got, err := ParseReadings([]byte(many)); err != nil || len(got) != survey.ReadingsMost {
		t.Errorf("as many readings as there may be: %v", err)
	}
	if _, err := ParseReadings([]byte(many + "leaf_thickness,40\n")); err == nil || !strings.Contains(err.Error(), "line 402: more than 400 readings") {
		t.Errorf("one more: %v", err)
	}
	wrong := "kind,value\n" + strings.Repeat("x,y\n", 5000)
	if _, err := ParseReadings([]byte(wrong)); err == nil || strings.Count(err.Error(), "\n") > 210 {
		t.Error("a wrong file is told of in a few lines")
	}
}

func TestReadingsFromATableGoIntoAJob(t *testing.T) {
	read := must(t, rightly(t))
	table, err := ParseReadings(EncodeReadings(read.Readings))
	if err != nil || !reflect.DeepEqual(table, read.Readings) {
		t.Fatalf("%v\n%s", err, EncodeReadings(read.Readings))
	}
	j, err := Measure(must(t, plainest)).WithReadings(table)
	if err != nil || len(j.Readings) != len(table) || !reflect.DeepEqual(j.Door, read.Door) {
		t.Errorf("%v", err)
	}
	if _, err := must(t, plainest).WithReadings(table); err == nil {
		t.Error("readings went into a job whose shapes were given by hand")
	}
	full := j
	for len(full.Readings)+len(table) <= survey.ReadingsMost {
		if full, err = full.WithReadings(table); err != nil {
			t.Fatal(err)
		}
	}
	if again, err := full.WithReadings(table); err == nil || !alike(again, full) {
		t.Error("more readings went in than there may be")
	}
}

// tables are the tables of readings in testdata.
func tables(t testing.TB) (texts [][]byte) {
	t.Helper()
	names, err := filepath.Glob(filepath.Join("..", "testdata", "readings", "*.csv"))
	if err != nil || len(names) == 0 {
		t.Fatalf("no tables of readings: %v", err)
	}
	for _, name := range names {
		b, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		texts = append(texts, b)
	}
	return texts
}

func FuzzParseReadings(f *testing.F) {
	for _, b := range tables(f) {
		f.Add(b)
	}
	f.Add(EncodeReadings(must(f, rightly(f)).Readings))
	f.Add([]byte("kind\tvalue\tnote\nleaf_thickness\t\"40\"\t\"#a \"\"b\"\"\"\n"))
	f.Add([]byte("off;angle;kind;at;value\n1;0,5;floor_height;\"1\" ;1/16\r;;\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		got, err := ParseReadings(data)
		if err != nil {
			if err.Error() == "" || got != nil {
				t.Fatalf("refused without words, or in part: %v", got)
			}
			return
		}
		out := EncodeReadings(got)
		back, err := ParseReadings(out)
		if err != nil || !reflect.DeepEqual(back, got) {
			t.Fatalf("written as\n%s\nread back as %+v\nwas %+v, %v", out, back, got, err)
		}
		for i := range got {
			if faults := got[i].check(""); faults != nil {
				t.Fatalf("read without a fault, but %v", faults)
			}
		}
	})
}
