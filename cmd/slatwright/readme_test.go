package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/golden"
	"slatwright/specs/table"
)

// README.md names every default, check, command and demo design.
func TestReadmeIsWhole(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(golden.Root(t), "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, d := range table.Defaults() {
		names = append(names, d.Name)
	}
	for _, c := range check.Checks() {
		names = append(names, c.Code)
	}
	for _, d := range designs(t) {
		names = append(names, strings.TrimSuffix(filepath.Base(d), ".toml"))
	}
	for _, name := range names {
		if !strings.Contains(string(text), "`"+name+"`") {
			t.Errorf("README.md does not name %s", name)
		}
	}
	for _, c := range newRoot().Commands() {
		if !strings.Contains(string(text), "slatwright "+c.Name()+" ") {
			t.Errorf("README.md does not show the command %s", c.Name())
		}
	}
}

// The pictures that README.md shows are there.
func TestReadmePictures(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(golden.Root(t), "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	shown := 0
	for _, part := range strings.Split(string(text), "](")[1:] {
		name, _, _ := strings.Cut(part, ")")
		if !strings.HasSuffix(name, ".svg") {
			continue
		}
		shown++
		if _, err := os.Stat(filepath.Join(golden.Root(t), filepath.FromSlash(name))); err != nil {
			t.Error(err)
		}
	}
	if shown < 3 {
		t.Errorf("README.md shows %d sheets, want at least 3", shown)
	}
}
