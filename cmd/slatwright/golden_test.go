package main

import (
	"path"
	"path/filepath"
	"strings"
	"testing"

	"slatwright/golden"
)

// The solved model of every demo design, and all sheets of one of them, are
// what they were. The README shows some of these sheets.
func TestGolden(t *testing.T) {
	set := golden.Open(t, "demo")
	for _, d := range designs(t) {
		name := strings.TrimSuffix(filepath.Base(d), ".toml")
		files := drawInto(t, d)
		set.Check(path.Join(name, "report.json"), files["report.json"])
		set.Check(path.Join(name, "parts.csv"), files["parts.csv"])
		if name != "harbour-small" {
			continue
		}
		for file, data := range files {
			if path.Ext(file) == ".svg" {
				set.Check(path.Join(name, file), data)
			}
		}
	}
}
