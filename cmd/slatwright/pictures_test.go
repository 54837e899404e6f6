package main

import (
	"path/filepath"
	"testing"

	"slatwright/golden"
)

// The sheets that README.md shows are what the program draws today.
func TestPictures(t *testing.T) {
	set := golden.Open(t, "pictures")
	files := drawInto(t, filepath.Join(designsDir(t), "harbour-small.toml"))
	for _, name := range []string{"01-order.svg", "02-front.svg", "05-section.svg"} {
		set.Check(name, files["svg/"+name])
	}
}
