package main

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"leafwright/game"
	"leafwright/game/cutlist"
	"leafwright/game/dxf"
	"leafwright/game/measure"
	"leafwright/game/sheet"
	"leafwright/game/sheet/pdf"
	"leafwright/game/words"
)

var sheetCommand = command{
	name:  "sheet",
	usage: "sheet JOB [-option NAME] [-kind work|client|template] [-paper A4|Letter] [-units mm|in] [-words UK|AU|US] -o FILE",
	about: "lays out what is printed of an option: the marking-out sheet for the bench, the sheet for the client, full-size templates; FILE ends in .pdf or .svg, a file a page, or in .csv for its gaps and cuts or .dxf for its outlines; leaves with 1 where there is no sheet for the door, 2 on bad input",
	run:   layOut,
}

// several is a flag that may be given more than once, its values in order.
type several []string

func (s *several) String() string { return strings.Join(*s, ", ") }
func (s *several) Set(v string) error {
	*s = append(*s, v)
	return nil
}

// layOut leaves with 0 when the sheet is written, 1 when there is none for this door,
// 2 on bad input.
func layOut(_ context.Context, c command, args []string, std std) int {
	flags := flag.NewFlagSet(c.name, flag.ContinueOnError)
	var options several
	flags.Var(&options, "option", "the option of that `NAME` or number; up to three for a client's sheet, each with a flag of its own")
	kind := flags.String("kind", string(sheet.Work), "what the sheet is for: `work, client or template`")
	paper := flags.String("paper", sheet.Papers[0].Name, "the `paper`: A4 or Letter")
	units := unitsFlag(flags)
	region := flags.String("words", string(words.UK), "whose trade words to use: `UK, AU or US`")
	out := flags.String("o", "", "the `FILE` to write")
	path, args := fileFirst(flags, args)
	if status, good := c.parseJob(flags, path, args, std, true); !good {
		return status
	}
	ask, wrong := asked(*kind, *paper, *units, *region)
	ext := strings.ToLower(filepath.Ext(*out))
	switch {
	case *out == "":
		wrong = append(wrong, "-o FILE is missing")
	case !slices.Contains([]string{".pdf", ".svg", ".csv", ".dxf"}, ext):
		wrong = append(wrong, fmt.Sprintf("-o %q does not end in .pdf, .svg, .csv or .dxf", *out))
	}
	if len(wrong) > 0 {
		return c.misuse(std, "%s", strings.Join(wrong, "; "))
	}
	job, good := c.load(path, "", std)
	if !good {
		return misused
	}
	ask.Job = &job
	if *units == "in" || *units == "" && game.ReadInInches(&job) {
		ask.Unit = measure.Inch
	}
	if status, good := c.choose(std, &ask, options, ext); !good {
		return status
	}
	if ask.Kind == sheet.Client && len(ask.Options) > 0 {
		ask.Plans = game.Advice(&job, game.AdviceWishes{Inches: ask.Unit == measure.Inch}).Plans
	}
	files, err := filesOf(&ask, *out, ext)
	if err != nil {
		return c.fail(std, err)
	}
	for _, f := range files {
		if sameFile(path, f.name) {
			return c.misuse(std, "-o %q is the job's own file", f.name)
		}
	}
	for _, f := range files {
		if err := os.WriteFile(f.name, f.data, 0o644); err != nil {
			fmt.Fprintf(std.err, "leafwright sheet: the sheet was not written: %v\n", err)
			return misused
		}
		const other = "print the sheet from the page, or write an .svg: those are set in your own faces"
		if len(f.missing) > 0 {
			fmt.Fprintf(std.err, "leafwright sheet: the PDF shows empty boxes for %s, which its face has no letters for; %s\n", string(f.missing), other)
		}
		if len(f.unjoined) > 0 {
			fmt.Fprintf(std.err, "leafwright sheet: the PDF shows the letters %s unjoined; %s\n", spaced(f.unjoined), other)
		}
	}
	return ok
}

// choose finds the options that are named; not good when it has told what is wrong.
func (c command) choose(std std, ask *sheet.Ask, names []string, ext string) (status int, good bool) {
	job := ask.Job
	for _, name := range names {
		i, known := job.OptionNamed(name)
		if !known {
			return c.noOption(std, *job, name), false
		}
		ask.Options = append(ask.Options, i)
	}
	table := ext == ".csv" || ext == ".dxf"
	bench := ask.Kind != sheet.Client && !table
	switch n := len(names); {
	case n == 0 && bench && len(job.Options) != 1:
		if len(job.Options) > 0 {
			return c.misuse(std, "-option NAME is missing: this job has %d", len(job.Options)), false
		}
		return c.misuse(std, "this job has no options to lay out; advise JOB -save FILE adds to it the ways it knows"), false
	case n == 0 && bench:
		ask.Options = []int{0}
	case n == 0 && !table:
		for i := range min(3, len(job.Options)) {
			ask.Options = append(ask.Options, i)
		}
	case n > 1 && (bench || table), n > 3:
		return c.misuse(std, "%d options are too many", n), false
	}
	return ok, true
}

// file is a file to write.
type file struct {
	name     string
	data     []byte
	missing  []rune // letters the face in it has not
	unjoined []rune // letters shown each by itself that belong joined
}

// filesOf gives what is to be written.
func filesOf(ask *sheet.Ask, name, ext string) ([]file, error) {
	option := game.AsItStands
	if len(ask.Options) > 0 {
		option = ask.Options[0]
	}
	if ext == ".csv" || ext == ".dxf" {
		if game.Rated(ask.Job) {
			return nil, sheet.ErrRated
		}
		speaker := &words.Speaker{Lexicon: words.For(ask.Words)}
		if ask.Unit == measure.Inch {
			speaker.Length, speaker.Place = words.Inches, words.InchPlace
		}
		if ext == ".dxf" {
			return []file{{name: name, data: dxf.Of(ask.Job, option, speaker.Lexicon)}}, nil
		}
		return []file{{name: name, data: cutlist.CSV(cutlist.Rows(ask.Job, option, speaker), ask.Unit)}}, nil
	}
	pages, err := sheet.Pages(ask)
	if err != nil {
		return nil, err
	}
	if ext == ".pdf" {
		var b bytes.Buffer
		if err := pdf.Write(&b, pages, pages[0].Title); err != nil {
			return nil, err
		}
		return []file{{name, b.Bytes(), pdf.Missing(pages), pdf.Unjoined(pages)}}, nil
	}
	var files []file
	for i := range pages {
		files = append(files, file{name: numbered(name, i), data: sheet.SVG(&pages[i])})
	}
	return files, nil
}

// asked reads what is asked for, and says all that is wrong with it.
func asked(kind, paper, units, region string) (a sheet.Ask, wrong []string) {
	a.Kind, a.Words = sheet.Kind(kind), words.Region(region)
	there := false
	for _, k := range sheet.Kinds {
		there = there || k == a.Kind
	}
	if !there {
		wrong = append(wrong, fmt.Sprintf("-kind %q is not one of work, client and template", kind))
	}
	for _, p := range sheet.Papers {
		if strings.EqualFold(p.Name, paper) {
			a.Paper = p
		}
	}
	if a.Paper.Name == "" {
		wrong = append(wrong, fmt.Sprintf("-paper %q is not one of A4 and Letter", paper))
	}
	if why := wrongUnits(units); why != "" {
		wrong = append(wrong, why)
	}
	if !known(region) {
		wrong = append(wrong, fmt.Sprintf("-words %q is not one of UK, AU and US", region))
	}
	return a, wrong
}

// spaced writes letters apart, as they are shown.
func spaced(letters []rune) string {
	all := make([]string, len(letters))
	for i, r := range letters {
		all[i] = string(r)
	}
	return strings.Join(all, " ")
}

// numbered gives the name of a page's file: after the first with its number before the
// ending.
func numbered(name string, i int) string {
	if i == 0 {
		return name
	}
	ext := filepath.Ext(name)
	return strings.TrimSuffix(name, ext) + "-" + strconv.Itoa(i+1) + ext
}

// sameFile tells whether two names are one file.
func sameFile(a, b string) bool {
	x, err := os.Stat(a)
	if err != nil {
		return false
	}
	y, err := os.Stat(b)
	return err == nil && os.SameFile(x, y)
}
