package label_test

import (
	"fmt"
	"strings"
	"testing"

	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/render/label"
)

// A rack of many pieces has one label for the slats of each face of each ladder
// and one for its legs, and its bundles hold every piece once.
func TestBundles(t *testing.T) {
	r := racktest.Build(t, "[rack]\ncolumns = 8\nrows = 17\n")
	sheets, err := label.Sheets(r, "3F9A-77C1")
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]int{}
	labels := 0
	for _, s := range sheets {
		for _, f := range drawing.Legible(s) {
			t.Error(f)
		}
		for _, m := range s.Marks {
			text, ok := m.(drawing.Text)
			if !ok {
				continue
			}
			if text.Class == drawing.ItemText {
				labels++
			}
			for _, what := range []string{"slat", "leg"} {
				var n int
				if k, _ := fmt.Sscanf(text.String(), "%d "+what, &n); k == 1 && strings.Contains(text.String(), what) {
					got[what] += n
				}
			}
		}
	}
	look(t, "bundles", sheets)
	if got["slat"] != r.Counts.Slats || got["leg"] != r.Counts.Legs {
		t.Errorf("bundles hold %v, want %d slats and %d legs", got, r.Counts.Slats, r.Counts.Legs)
	}
	// nine ladders: legs once, slats on sixteen faces; four aprons, the top and
	// the blocks under it
	if want := 9 + 16 + 4 + 1 + 1; labels != want {
		t.Errorf("%d labels, want %d", labels, want)
	}
}
