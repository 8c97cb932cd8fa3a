//go:build js

package panel

import (
	"errors"
	"fmt"
	"syscall/js"
)

// win is the drawing's frame, where the program runs; page is the window round it
// and doc that window's document.
var (
	win  = js.Global()
	page = win.Get("parent")
	doc  = page.Get("document")
)

// try turns a JavaScript exception or a panic in f into an error.
func try(f func()) (err error) {
	defer func() {
		if r := recover(); r != nil {
			var ok bool
			if err, ok = r.(error); !ok {
				err = errors.New(fmt.Sprint(r))
			}
		}
	}()
	f()
	return nil
}

// guard does f. A failure in it is shown, and what was there before stays.
func guard(what string, f func()) {
	if err := try(f); err != nil {
		win.Get("console").Call("error", what+": "+err.Error())
	}
}

// heard gives f to the browser, to be called at an event.
func heard(event string, f func(e js.Value)) js.Func {
	return js.FuncOf(func(_ js.Value, args []js.Value) any {
		guard("event "+event, func() { f(args[0]) })
		return nil
	})
}

// on listens for as long as the program runs.
func on(target js.Value, event string, f func(e js.Value)) {
	target.Call("addEventListener", event, heard(event, f))
}

// then waits for a promise.
func then(promise js.Value, good func(js.Value), bad func(err error)) {
	var done, failed js.Func
	release := func() {
		done.Release()
		failed.Release()
	}
	done = js.FuncOf(func(_ js.Value, args []js.Value) any {
		defer release()
		if err := try(func() { good(args[0]) }); err != nil {
			bad(err)
		}
		return nil
	})
	failed = js.FuncOf(func(_ js.Value, args []js.Value) any {
		defer release()
		bad(errors.New(args[0].Call("toString").String()))
		return nil
	})
	promise.Call("then", done, failed)
}

func byID(id string) js.Value { return doc.Call("getElementById", id) }

// attrs are an element's attributes, each name followed by its value; the name "text"
// is its text. As pairs they weigh a fraction of what a map does in the download.
type attrs []string

// el makes an element of the document.
func el(tag string, a attrs, children ...js.Value) js.Value {
	e := doc.Call("createElement", tag)
	dress(e, a, children)
	return e
}

// svg makes an element of a drawing inside the document.
func svg(tag string, a attrs, children ...js.Value) js.Value {
	e := doc.Call("createElementNS", "http://www.w3.org/2000/svg", tag)
	dress(e, a, children)
	return e
}

func dress(e js.Value, a attrs, children []js.Value) {
	for i := 1; i < len(a); i += 2 {
		if name, value := a[i-1], a[i]; name == "text" {
			e.Set("textContent", value)
		} else {
			e.Call("setAttribute", name, value)
		}
	}
	for _, c := range children {
		e.Call("appendChild", c)
	}
}

// fill puts children in place of what an element held.
func fill(e js.Value, children ...js.Value) {
	list := make([]any, len(children))
	for i, c := range children {
		list[i] = c
	}
	e.Call("replaceChildren", list...)
}

// setText changes an element's text only where it differs, so that a screen
// reader is not told the same again.
func setText(e js.Value, text string) {
	if e.Get("textContent").String() != text {
		e.Set("textContent", text)
	}
}

// setValue changes an input's value only where it differs, which leaves the
// cursor where it is.
func setValue(input js.Value, text string) {
	if input.Get("value").String() != text {
		input.Set("value", text)
	}
}

func show(e js.Value, visible bool) { e.Set("hidden", !visible) }
