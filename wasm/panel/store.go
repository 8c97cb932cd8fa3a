//go:build js

package panel

import (
	"errors"
	"syscall/js"

	"leafwright/game/bench"
)

// storage gives the browser's store. It may be forbidden, and then even asking
// for it throws.
func storage() (store js.Value, err error) {
	err = try(func() { store = win.Get("Reflect").Call("get", win, "localStorage") })
	if err == nil && !store.Truthy() {
		err = errors.New("this browser keeps nothing for this page")
	}
	return store, err
}

// former is what a record's predecessor is kept under.
func former(key string) string { return key + ":old" }

// keep writes a sealed record and keeps its predecessor, should the write be cut short.
func keep(key, sealed string) error {
	store, err := storage()
	if err != nil {
		return err
	}
	try(func() { // a second copy is worth having, but not worth failing for
		if old := store.Call("getItem", key); old.Type() == js.TypeString {
			if _, ok := bench.Unseal(old.String()); ok {
				store.Call("setItem", former(key), old)
			}
		}
	})
	write := func() { store.Call("setItem", key, sealed) }
	if try(write) == nil {
		return nil
	}
	return try(func() { // room for one copy, perhaps
		store.Call("removeItem", former(key))
		write()
	})
}

// kept gives the newest sound record, or nothing.
func kept(key string) (data []byte, found bool) {
	store, err := storage()
	if err != nil {
		return nil, false
	}
	for _, k := range []string{key, former(key)} {
		var text js.Value
		if try(func() { text = store.Call("getItem", k) }) == nil && text.Type() == js.TypeString {
			if data, ok := bench.Unseal(text.String()); ok {
				return data, true
			}
		}
	}
	return nil, false
}
