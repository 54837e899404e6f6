package design_test

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"slatwright/specs/design"
	"slatwright/specs/diag"
)

// Each file of testdata/errors bears, as a comment on each faulty line, the
// message expected there: "# error: TEXT -> HINT". Every report must be
// expected and every expectation reported.
func TestErrors(t *testing.T) {
	files, err := filepath.Glob("../../testdata/errors/*.toml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no files to read: %v", err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		d, err := design.Read(filepath.Base(file), text)
		var list diag.List
		if !errors.As(err, &list) {
			t.Errorf("%s: error %v; want a list of messages", file, err)
			continue
		}
		if !slices.IsSortedFunc(list, func(a, b diag.Message) int { return a.Place.Start - b.Place.Start }) {
			t.Errorf("%s: the messages are not in the order of the file", file)
		}
		got := map[int][]string{}
		for _, m := range list {
			said := m.Text
			if m.Hint != "" {
				said += " -> " + m.Hint
			}
			got[m.Place.Line] = append(got[m.Place.Line], said)
			checkPlace(t, d.Source, m)
		}
		for i, line := range strings.Split(string(text), "\n") {
			var want []string
			if _, comment, ok := strings.Cut(line, "# error: "); ok {
				want = []string{comment}
			}
			if !slices.Equal(got[i+1], want) {
				t.Errorf("%s:%d:\ngot  %q\nwant %q", file, i+1, got[i+1], want)
			}
		}
	}
}

// checkPlace sees that the message points at something of its line.
func checkPlace(t *testing.T, src *diag.Source, m diag.Message) {
	t.Helper()
	p := m.Place
	line := []rune(src.Line(p.Line))
	if p.Line < 1 || p.Start > p.End || p.End > len(src.Text) || p.Column < 1 || p.Column > len(line)+1 || p.Column-1+m.Width > len(line)+1 {
		t.Errorf("%q is at %+v, %d wide, outside its line %q", m.Text, p, m.Width, string(line))
	}
}
