package sizes_test

import (
	"errors"
	"fmt"
	"runtime"
	"strings"
	"testing"

	"slatwright/geometry/quote"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/saw"
	"slatwright/geometry/sizes"
	"slatwright/specs/design"
)

// limited is a design of a width that only some columns fit into, with boards
// too short for the aprons of the widest of them.
const limited = `
[rack]
columns = %d
rows = %d
width = "<= 19"
[top]
present = false
[[board]]
nominal = "1x3"
length = "18 in"
price = 4
`

func read(t *testing.T, text string) *design.Design {
	t.Helper()
	d, err := design.Read("test.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// Each size of a chart is what a design that states those counts comes to.
func TestSizesAreThoseOfDesigns(t *testing.T) {
	list, err := sizes.Chart(read(t, fmt.Sprintf(limited, 2, 2)), sizes.Span{Least: 1, Most: 6}, sizes.Span{Least: 2, Most: 3})
	if err != nil || len(list) != 12 {
		t.Fatalf("%d sizes, %v", len(list), err)
	}
	seen := map[sizes.Outcome]int{}
	for i, s := range list {
		if s.Columns != 1+i%6 || s.Rows != 2+i/6 {
			t.Errorf("size %d is %d x %d", i, s.Columns, s.Rows)
		}
		seen[s.Outcome]++
		name := fmt.Sprintf("%d x %d, %s", s.Columns, s.Rows, s.Outcome)
		r, err := racktest.Try(t, fmt.Sprintf(limited, s.Columns, s.Rows))
		var clash *rack.Clash
		if errors.As(err, &clash) {
			if s.Outcome != sizes.NoFit || s.Rack != nil || !strings.Contains(s.Why, `rack.width = "<= 19"`) {
				t.Errorf("%s, %q: the design has no answer", name, s.Why)
			}
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		cuts, err := saw.Make([]*rack.Rack{r}, saw.Quick)
		if err != nil {
			if s.Outcome != sizes.Uncut || s.Quote != nil || !strings.Contains(s.Why, "long enough") {
				t.Errorf("%s, %q: the boards do not reach: %v", name, s.Why, err)
			}
			continue
		}
		if s.Outcome != sizes.Fits || !s.Proven() {
			t.Fatalf("%s, %q: it can be made", name, s.Why)
		}
		q := quote.Make(r, cuts)
		for _, l := range []string{"rack.width", "rack.depth", "rack.height"} {
			if s.Rack.Len(l) != r.Len(l) {
				t.Errorf("%s: %s %v; want %v", name, l, s.Rack.Len(l), r.Len(l))
			}
		}
		if s.Rack.Counts != r.Counts || s.Quote.Cuts.Cost != cuts.Cost || s.Quote.Sum(quote.Supplies) != q.Sum(quote.Supplies) {
			t.Errorf("%s: %+v at %d; want %+v at %d", name, s.Rack.Counts, s.Quote.Cuts.Cost, r.Counts, cuts.Cost)
		}
	}
	for _, o := range []sizes.Outcome{sizes.Fits, sizes.NoFit, sizes.Uncut} {
		if seen[o] == 0 {
			t.Errorf("no size %s: %v", o, seen)
		}
	}
}

// A size that fails a check says which.
func TestFailingSizes(t *testing.T) {
	d := read(t, "[rack]\ncolumns = 2\nrows = 2\n[cell]\ngap = \"2 7/8\"\n[bottles]\nfit = [\"claret-750\"]\n")
	list, err := sizes.Chart(d, sizes.Span{Least: 2, Most: 3}, sizes.Span{Least: 2, Most: 2})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range list {
		if s.Outcome != sizes.Fails || !strings.Contains(s.Why, "fit.rest") || s.Quote == nil {
			t.Errorf("%d x %d: %s, %q", s.Columns, s.Rows, s.Outcome, s.Why)
		}
	}
}

// A size that fails a check and cannot be cut either says both.
func TestFailingUncutSizes(t *testing.T) {
	d := read(t, "[rack]\ncolumns = 2\nrows = 2\n[cell]\ngap = \"2 7/8\"\n[bottles]\nfit = [\"claret-750\"]\n[[board]]\nnominal = \"1x4\"\nlength = \"8 ft\"\non_hand = 1\n")
	list, err := sizes.Chart(d, sizes.Span{Least: 4, Most: 4}, sizes.Span{Least: 6, Most: 6})
	if err != nil {
		t.Fatal(err)
	}
	if s := list[0]; s.Outcome != sizes.Uncut || !strings.Contains(s.Why, "run out") || !strings.Contains(s.Why, "fails a check: fit.rest") {
		t.Errorf("%s, %q", s.Outcome, s.Why)
	}
}

// However many processors there are, the chart is the same.
func TestSameChart(t *testing.T) {
	d := read(t, "[rack]\ncolumns = 2\nrows = 2\n")
	chart := func() string {
		list, err := sizes.Chart(d, sizes.Span{Least: 1, Most: 3}, sizes.Span{Least: 1, Most: 3})
		if err != nil {
			t.Fatal(err)
		}
		text := ""
		for _, s := range list {
			text += fmt.Sprintln(s.Columns, s.Rows, s.Outcome, s.Quote.Lines, s.Quote.Assembled, s.Quote.Flat)
		}
		return text
	}
	many := chart()
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	if one := chart(); one != many {
		t.Errorf("on one processor\n%s\non several\n%s", one, many)
	}
}
