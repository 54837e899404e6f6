// Package racktest builds racks from the text of a design, for tests.
package racktest

import (
	"testing"

	"slatwright/geometry/rack"
	"slatwright/specs/design"
)

// Build reads and solves a design; the test ends where it cannot be built.
func Build(t testing.TB, text string) *rack.Rack {
	t.Helper()
	r, err := Try(t, text)
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return r
}

// Try reads a design, which must be well written, and solves it.
func Try(t testing.TB, text string) (*rack.Rack, error) {
	t.Helper()
	d, err := design.Read("test.toml", []byte(text))
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return rack.Build(d)
}
