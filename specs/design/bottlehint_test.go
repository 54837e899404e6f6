package design_test

import (
	"strings"
	"testing"

	"slatwright/specs/table"
)

// Every word that is offered for a kind of bottle leads to one of the table.
func TestBottlesCalled(t *testing.T) {
	kinds := map[string]bool{}
	for _, b := range table.Bottles() {
		first, _, _ := strings.Cut(b.ID, "-")
		kinds[first] = true
	}
	for _, word := range []string{"champagne", "bordeaux", "riesling", "porto", "liter", "whisky", "beer", "piccolo", "pinot"} {
		if kind := table.BottleCalled(word); !kinds[kind] {
			t.Errorf("%s leads to %q, no kind of bottle", word, kind)
		}
	}
	if got := table.BottleCalled("carboy"); got != "" {
		t.Errorf("carboy leads to %q", got)
	}
}
