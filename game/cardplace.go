package game

import (
	"strings"

	"leafwright/geom/survey"
)

// cutPlace parts the path of where a prompt's reading is taken, such as
// opening_width.2.at, into the prompt's own and the place's name.
func cutPlace(id string) (slot, part string, is bool) {
	i := strings.LastIndexByte(id, '.')
	if i < 0 {
		return id, "", false
	}
	switch part = id[i+1:]; part {
	case "at", "from", "to":
		return id[:i], part, true
	}
	return id, "", false
}

// setPlace takes where the reading of that slot is taken, read yet or not.
func (fm Form) setPlace(job Job, id, part, text string) (Job, error) {
	path := cardPath + id + "." + part
	slots, k, err := fm.slotOf(&job, id, path)
	if err != nil {
		return job, err
	}
	i := job.match(slots)[k]
	file := job.filed()
	if i < 0 {
		r := slots[k].template
		r.Off = survey.SpecOf(r.Kind).Needs&survey.NoValue == 0
		i = len(file.Readings)
		file.Readings = append(file.Readings, r)
	}
	if why := fm.put(&file, readingsPath+index(i)+"."+part, text); why != "" {
		return job, Faults{{Path: path, Want: why}}
	}
	out, err := fm.accept(job, file)
	if faults, ok := err.(Faults); ok {
		for n := range faults {
			if within(faults[n].Path, readingsPath+index(i)) {
				faults[n].Path = path
			}
		}
	}
	return out, err
}
