package bench

// PutOption adds an option with its moves, as [game.OptionText] writes it, and shows
// it. It is one step to undo. What cannot be added changes nothing and is told.
func (s *State) PutOption(text string) error {
	s.dropPreview()
	return s.said(s.rearrange(change{act: plan, path: optionList, text: text}))
}

// adds tells whether the change makes an option with moves in it.
func (c *change) adds() bool { return c.act == try || c.act == plan }
