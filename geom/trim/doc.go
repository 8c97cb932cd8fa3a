// Package trim holds the moves: everything a person can do to a leaf, its hinges and
// its frame to make the one fit the other. A move takes shapes and gives new shapes,
// or says why it cannot be done. Nothing in it is a correction to a gap: the
// geometry itself is changed, and package fit measures it anew.
//
// Leaf axes stay fixed in the timber: a planed hanging edge stands at u above 0
// afterwards, a strip on the foot reaches to v below 0. What was laid out on the
// leaf (hinges, latch, lock, rails) therefore keeps its numbers, but for what is
// counted from an edge: a gain grows shallower by what is planed off there, a
// lock's backset shorter.
package trim
