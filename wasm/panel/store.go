//go:build js

package panel

import (
	"errors"
	"syscall/js"
)

// Store is what the browser keeps for this page. It may be forbidden, or full; then
// even asking for it throws.
type Store struct{}

// storage gives the browser's store.
func storage() (store js.Value, err error) {
	err = try(func() { store = win.Get("Reflect").Call("get", win, "localStorage") })
	if err == nil && !store.Truthy() {
		err = errors.New("this browser keeps nothing for this page")
	}
	return store, err
}

// Get gives what is kept under a key.
func (Store) Get(key string) (text string, found bool) {
	store, err := storage()
	if err != nil {
		return "", false
	}
	var v js.Value
	if try(func() { v = store.Call("getItem", key) }) != nil || v.Type() != js.TypeString {
		return "", false
	}
	return v.String(), true
}

// Put keeps a text under a key.
func (Store) Put(key, text string) error {
	store, err := storage()
	if err != nil {
		return err
	}
	return try(func() { store.Call("setItem", key, text) })
}

// Delete drops what is kept under a key.
func (Store) Delete(key string) {
	if store, err := storage(); err == nil {
		try(func() { store.Call("removeItem", key) })
	}
}

// Keys gives every key there is.
func (Store) Keys() []string {
	store, err := storage()
	if err != nil {
		return nil
	}
	var keys []string
	try(func() {
		for i := range store.Get("length").Int() {
			keys = append(keys, store.Call("key", i).String())
		}
	})
	return keys
}

// Token is a few letters that tell this window from every other.
func Token() string {
	const letters = "abcdefghijklmnopqrstuvwxyz0123456789"
	bytes := win.Get("Uint8Array").New(8)
	win.Get("crypto").Call("getRandomValues", bytes)
	token := make([]byte, 8)
	for i := range token {
		token[i] = letters[bytes.Index(i).Int()%len(letters)]
	}
	return string(token)
}
