package rack_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slatwright/geometry/rack"
	"slatwright/specs/design"
)

// Every design in testdata/hard says in comments what is expected of it:
//
//	#> NAME = FIGURE     a solved length or count
//	#! TEXT              a note or the advice about a contradiction, all of them in order
//
// A design that is expected to be contradictory has #! lines, any other has none.
func TestHardCases(t *testing.T) {
	files, err := filepath.Glob("../../testdata/hard/*.toml")
	if err != nil || len(files) < 10 {
		t.Fatalf("%d designs, %v", len(files), err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".toml"), func(t *testing.T) {
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			d, err := design.Read(filepath.Base(file), text)
			if err != nil {
				t.Fatal(err)
			}
			r, err := rack.Build(d)
			var clash *rack.Clash
			if err != nil && !errors.As(err, &clash) {
				t.Fatal(err)
			}
			if got, want := facts(r, clash, marked(text, "#>")), append(marked(text, "#>"), marked(text, "#!")...); strings.Join(got, "\n") != strings.Join(want, "\n") {
				t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
			}
		})
	}
}

// marked lists what stands behind a mark at the start of a line.
func marked(text []byte, mark string) (out []string) {
	for _, line := range strings.Split(string(text), "\n") {
		if rest, ok := strings.CutPrefix(line, mark+" "); ok {
			out = append(out, rest)
		}
	}
	return out
}

// facts lists what the answer says of the same things.
func facts(r *rack.Rack, clash *rack.Clash, wanted []string) (out []string) {
	if clash != nil {
		for _, m := range clash.Messages() {
			out = append(append(out, m.Notes...), m.Hint)
		}
		return out
	}
	for _, w := range wanted {
		name, _, _ := strings.Cut(w, " = ")
		figure := "not there"
		switch {
		case name == "rack.columns":
			figure = fmt.Sprint(r.Counts.Columns)
		case name == "rack.rows":
			figure = fmt.Sprint(r.Counts.Rows)
		case r.Has(name):
			figure = r.Format.Text(r.Len(name))
		}
		out = append(out, name+" = "+figure)
	}
	return out
}
