// Package racktest builds racks from the text of a design, for tests.
package racktest

import (
	"os"
	"path/filepath"
	"testing"

	"slatwright/geometry/rack"
	"slatwright/golden"
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

// Demos returns the texts of the demo designs by their files' names.
func Demos(t testing.TB) map[string]string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(golden.Root(t), "testdata", "designs", "*.toml"))
	if err != nil || len(files) < 6 {
		t.Fatalf("%d demo designs, %v; want at least 6", len(files), err)
	}
	out := map[string]string{}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		out[filepath.Base(f)] = string(text)
	}
	return out
}

// DemoRacks returns the demo designs' racks by their files' names.
func DemoRacks(t testing.TB) map[string]*rack.Rack {
	t.Helper()
	out := map[string]*rack.Rack{}
	for name, text := range Demos(t) {
		out[name] = Build(t, text)
	}
	return out
}
