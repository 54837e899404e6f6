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
