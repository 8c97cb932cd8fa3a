// Package lesson is practice on doors that can be spoiled for nothing: a door with
// hidden faults, what a learner does to it, and what is to be said of that.
//
// A [Lesson] is a job with faults made into it, read from a file a teacher wrote
// ([Parse]) or drawn by a seed ([Attempt]). A [Play] is a lesson being played: its acts
// are trying the door, reading it, naming the fault, working on it for keeps, asking for
// a hint, calling it done or giving up. A play is nothing but its acts: the same acts
// give the same play, so a session ([Play.Session]) is a text of acts that is replayed
// step by step. A play never shows what a real door would not.
//
// [Play.Judge] holds a play against the model and against the cure that costs least.
// Nothing here knows a screen or a clock; minutes are those the work would take.
package lesson
