// Package survey makes shapes of readings. A person has a tape, a level, a
// straightedge, winding sticks, string, a square and, once the leaf is offered
// up, a feeler gauge; whatever they read, in any amount, goes into one weighted
// least-squares fit, and out come the leaf, the opening and the hinges with how
// well each is known.
//
// The unknowns are the values at stations along every edge. Where the readings
// leave freedom the shape is the one nearest to square, plumb, flat and straight:
// every ordinary departure from that (a jamb's lean, its bow, a leaf's wind) is
// wished to be nothing. Where readings tell otherwise the wish gives way: a bow read
// with a straightedge keeps all but 1 part in 10⁵, one found by three widths with a
// tape all but a two-hundredth (see times in pull.go). Where they do not, how far
// off the wish may be counts in every error, with the full size such departures
// ordinarily have.
//
// Readings of the hung leaf may have been taken before or after moves made for keeps
// (see Reading.After): each is held against the door as it then stood, and all of
// them sharpen the one shape, that of the door as found.
//
// Places are those of the world and of the leaf (see geom), so they run from the
// hinge side whichever hand the leaf is; no sign of a reading depends on the hand.
package survey
