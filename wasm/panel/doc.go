// Package panel fills the document round the drawing: the job's numbers, the
// findings as text, the controls, and the keeping of it all in the browser. With
// the program's entry it is the only package that knows the browser.
package panel
