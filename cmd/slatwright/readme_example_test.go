package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slatwright/geometry/rack"
	"slatwright/golden"
	"slatwright/specs/design"
)

// examples returns the design files, or parts of them, that README.md shows.
func examples(t *testing.T) []string {
	text, err := os.ReadFile(filepath.Join(golden.Root(t), "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, part := range strings.Split(string(text), "```toml\n")[1:] {
		body, _, ok := strings.Cut(part, "```")
		if !ok {
			t.Fatal("an example does not end")
		}
		list = append(list, body)
	}
	return list
}

// Every example of README.md reads, and each that asks for columns and rows has
// a solution.
func TestReadmeExamples(t *testing.T) {
	list := examples(t)
	if len(list) < 5 {
		t.Fatalf("%d examples; want 5 or more", len(list))
	}
	solved := 0
	for _, text := range list {
		d, err := design.Read("README.md", []byte(text))
		if err != nil {
			t.Errorf("%s\n%v", text, err)
			continue
		}
		if _, ok := d.Count("rack.columns"); !ok {
			continue
		}
		if _, err := rack.Build(d); err != nil {
			t.Errorf("%s\n%v", text, err)
		}
		solved++
	}
	if solved < 2 {
		t.Errorf("%d examples were solved; want 2 or more", solved)
	}
}

// The example of a [[column]] beside rows does what it is there to show: the
// lowest two rows of every column hold champagne, the others claret alone.
func TestReadmeColumns(t *testing.T) {
	for _, text := range examples(t) {
		if !strings.Contains(text, "[[column.row]]") {
			continue
		}
		d, err := design.Read("README.md", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		r, err := rack.Build(d)
		if err != nil {
			t.Fatal(err)
		}
		if len(r.Kinds) != 1 || r.Kinds[0].Count != len(r.Columns) || len(r.Columns) < 2 || r.Kinds[0].Rows < 3 {
			t.Fatalf("%d kinds of column, the first %d of %d columns, %d rows", len(r.Kinds), r.Kinds[0].Count, len(r.Columns), r.Kinds[0].Rows)
		}
		for row, fit := range r.Kinds[0].Fit {
			want := "claret-750"
			if row < 2 {
				want = "sparkling-750"
			}
			if len(fit) != 1 || fit[0].ID != want {
				t.Errorf("row %d holds %v; want %s", row+1, fit, want)
			}
		}
		return
	}
	t.Fatal("no example shows [[column.row]]")
}
