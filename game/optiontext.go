package game

import "strings"

// OptionText writes an option in a line of its name and one for each move, as
// [MoveText] writes it.
func OptionText(o Option) string {
	var b strings.Builder
	b.WriteString(o.Name)
	for _, m := range o.Moves {
		b.WriteByte('\n')
		b.WriteString(MoveText(m))
	}
	return b.String()
}

// AddOption gives the job with one option more, of a text such as [OptionText] writes;
// its name is numbered where another has it. The error is a [Faults].
func (fm Form) AddOption(job Job, text string) (Job, error) {
	file := job.filed()
	at := len(file.Options)
	if at >= OptionsMost {
		return job, Faults{{Path: optionsPath, Want: full(at)}}
	}
	name, rest, _ := strings.Cut(text, "\n")
	o := Option{Name: file.freeName(cutLine(name))}
	var all Faults
	for rest != "" {
		var line string
		line, rest, _ = strings.Cut(rest, "\n")
		m, faults := takeMove(line, MovePath(at, len(o.Moves)))
		all = append(all, faults...)
		o.Moves = append(o.Moves, m)
	}
	if len(all) > 0 {
		return job, all
	}
	file.Options = append(file.Options, o)
	return fm.accept(job, file)
}
