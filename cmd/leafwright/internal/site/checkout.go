package site

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
)

// ErrNoCheckout tells that the page cannot be built because its sources are not here.
var ErrNoCheckout = errors.New("the page is built from Leafwright's sources, and this folder is not inside a checkout of them: " +
	"change into the checkout (the folder with go.mod, game, geom and wasm) and run the command again")

var moduleLine = regexp.MustCompile(`(?m)^module\s+leafwright\s*$`)

// Checkout gives the top folder of the checkout that dir lies in.
func Checkout(dir string) (string, error) {
	dir, err := filepath.Abs(dir)
	if err != nil {
		return "", err
	}
	for {
		mod, err := os.ReadFile(filepath.Join(dir, "go.mod"))
		if err == nil && moduleLine.Match(mod) {
			return dir, nil
		}
		if err != nil && !errors.Is(err, os.ErrNotExist) {
			return "", fmt.Errorf("looking for the checkout: %w", err)
		}
		up := filepath.Dir(dir)
		if up == dir {
			return "", ErrNoCheckout
		}
		dir = up
	}
}
