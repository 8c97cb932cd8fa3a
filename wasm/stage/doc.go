// Package stage paints a display list on the page's canvas with Ebitengine. It is
// the only package that knows Ebitengine; it knows nothing of doors or of the page.
package stage
