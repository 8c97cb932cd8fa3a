// Package hardware says what a job's leaf weighs and what hangs it, what a list of
// moves takes and in which order it is done, and how the leaf goes through the year:
// package timber's figures for the door of a job, and the words for them.
//
// The page's program does not link it.
package hardware
