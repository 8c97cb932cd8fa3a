package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"strings"

	"leafwright/game"
	"leafwright/game/report"
	"leafwright/game/words"
	"leafwright/geom/advise"
)

var adviseCommand = command{
	name:  "advise",
	usage: "advise JOB [-prefer timber|even|quick|frame] [-forbid frame,hinges,strip] [-alike] [-toprail] [-save FILE] [-json] [-units mm|in] [-words UK|AU|US]",
	about: "finds the least that makes the job's door fit as it stands; leaves with 0 when it fits or can be made to, 1 when no way is found, 2 on bad input",
	run:   adviseRun,
}

// adviseRun leaves with 0 when the door fits as it is or a plan makes it fit, 1 when
// none does or the leaf is rated, 2 on bad input.
func adviseRun(_ context.Context, c command, args []string, std std) int {
	flags := flag.NewFlagSet(c.name, flag.ContinueOnError)
	prefer := flags.String("prefer", string(advise.LeastTimber), "what matters most: `timber, even, quick or frame`, for the least timber, the most even gaps, the quickest, the frame left alone")
	forbid := flags.String("forbid", "", "what is not to be done, with commas between: `frame, hinges, strip`")
	alike := flags.Bool("alike", false, "take as much off one stile as off the other")
	topRail := flags.Bool("toprail", false, "leave the top rail as high as that of the door beside it")
	save := flags.String("save", "", "write the job to `FILE`, which must not be there yet, with the plans added as options")
	asJSON := flags.Bool("json", false, "print the advice as JSON, for a program")
	units := flags.String("units", "", "units to work and speak in: `mm or in`, by half a millimetre or by 1/32 in.; else inches where the job was typed in them, or mm")
	region := flags.String("words", string(words.UK), "whose trade words to use: `UK, AU or US`")
	path, args := fileFirst(flags, args)
	if status, good := c.parseJob(flags, path, args, std, true); !good {
		return status
	}
	if !known(*region) {
		return c.misuse(std, "-words %q is not one of UK, AU and US", *region)
	}
	wishes := game.AdviceWishes{Prefer: advise.Preference(*prefer), StilesAlike: *alike, TopRail: *topRail}
	if why := wish(&wishes, *forbid, *units); why != "" {
		return c.misuse(std, "%s", why)
	}
	job, good := c.load(path, "", std)
	if !good {
		return misused
	}
	wishes.Inches = wishes.Inches || *units == "" && game.ReadInInches(&job)
	if _, has := job.NeighbourTopRail(); *topRail && !has {
		return c.misuse(std, "-toprail: this job gives no rails of a door beside it")
	}
	speaker := speakerOf(&job, *region, *units)
	advice := report.Advise(job, wishes, speaker)
	if *save != "" {
		if err := saveAdvice(advice, *save); err != nil {
			fmt.Fprintf(std.err, "leafwright %s: the job was not saved: %v\n", c.name, err)
			return misused
		}
	}
	if !c.say(std, "the advice", advice, speaker, *asJSON) {
		return misused
	}
	if !advice.Helped() {
		return failed
	}
	return ok
}

// wish takes what the flags say in words, and tells what is wrong with all of them.
func wish(w *game.AdviceWishes, forbid, units string) (why string) {
	var wrong []string
	sound := false
	for _, p := range advise.Preferences {
		sound = sound || p == w.Prefer
	}
	if !sound {
		wrong = append(wrong, fmt.Sprintf("-prefer %q is not one of timber, even, quick and frame", w.Prefer))
	}
	for _, word := range strings.Split(forbid, ",") {
		switch word = strings.TrimSpace(word); strings.ToLower(word) {
		case "":
		case "frame":
			w.KeepFrame = true
		case "hinges":
			w.KeepHinges = true
		case "strip":
			w.NoStrip = true
		default:
			wrong = append(wrong, fmt.Sprintf("-forbid %q is not one of frame, hinges and strip", word))
		}
	}
	switch units {
	case "mm", "": // the job's own
	case "in":
		w.Inches = true
	default:
		wrong = append(wrong, fmt.Sprintf("-units %q is not one of mm and in", units))
	}
	return strings.Join(wrong, "; ")
}

// saveAdvice writes the job with the plans as options to a new file.
func saveAdvice(a report.Advice, path string) error {
	if len(a.Plans) == 0 {
		return errors.New("there is no plan to add to it")
	}
	job, err := a.Saved()
	if err != nil {
		return err
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("%s is there already, and nothing is written over", path)
	}
	if err != nil {
		return err
	}
	_, err = f.Write(game.Encode(job))
	return errors.Join(err, f.Close())
}
