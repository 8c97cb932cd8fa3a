package timber

import (
	"slices"

	"leafwright/geom/door"
)

// Grown gives the door with its leaf so many mm wider across, below 0 narrower, as the
// seasons make it: the leaf is held by its hinges, so its closing edge moves and nothing
// else. The door shares all but that edge with the one given. What is no number moves
// nothing.
func Grown(d door.Door, across float64) door.Door {
	by := held(across, -100, 100)
	if across != across {
		by = 0
	}
	edge := slices.Clone(d.Leaf.Closing)
	for i := range edge {
		edge[i].Value += by
	}
	d.Leaf.Closing = edge
	return d
}
