package sizes_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/sizes"
	"slatwright/specs/diag"
)

// Each size of a design with columns of its own is what a file comes to that
// states that size, with the [[column]]s and rows that are not in it taken out.
func TestSizesWithColumns(t *testing.T) {
	const (
		magnum = "[[column]]\nfit = [\"magnum-1500\"]\nrows = 2\n"
		pair   = "[[column]]\ncount = %d\ngap = 2\n"
		mixed  = "[[column]]\n[[column.row]]\nfit = [\"magnum-1500\"]\n[[column.row]]\nrise = 4\n"
		bottom = "[[column]]\n[[column.row]]\nfit = [\"magnum-1500\"]\n"
		open   = "[[column]]\ncount = \"most\"\nfit = [\"magnum-1500\"]\n"
		tie    = "where = [\"column.1.gap >= column.2.gap + 3/4 in\"]\n"
	)
	head := func(columns, rows int) string { return fmt.Sprintf("[rack]\ncolumns = %d\nrows = %d\n", columns, rows) }
	two := fmt.Sprintf(pair, 2)
	for _, c := range []struct {
		name, file    string
		columns, rows int
		same          string
	}{
		{"one table", magnum + two, 1, 2, head(1, 2) + magnum},
		{"half of a table", magnum + two, 2, 3, head(2, 3) + magnum + fmt.Sprintf(pair, 1)},
		{"all tables", magnum + two, 3, 3, head(3, 3) + magnum + two},
		{"and a plain column", magnum + two, 4, 3, head(4, 3) + magnum + two},
		{"and plain columns, own counts given", head(3, 5) + magnum + two, 5, 1, head(5, 1) + magnum + two},
		{"fewer than the file has", head(6, 5) + magnum + two, 2, 4, head(2, 4) + magnum + fmt.Sprintf(pair, 1)},
		{"rows described one by one", mixed, 2, 3, head(2, 3) + mixed},
		{"as many as are described", mixed, 2, 2, head(2, 2) + mixed},
		{"fewer than are described", mixed, 2, 1, head(2, 1) + bottom},
		{"a count left open takes what is left", magnum + open, 4, 2, head(4, 2) + magnum + open},
		{"an open count with nothing left", magnum + open, 1, 2, head(1, 2) + magnum},
		{"a relation between columns", tie + magnum + two, 3, 2, tie + head(3, 2) + magnum + two},
		{"a relation with a column that is not there", tie + magnum + two, 1, 2, head(1, 2) + magnum},
	} {
		list, err := sizes.Chart(read(t, c.file), sizes.Span{Least: c.columns, Most: c.columns}, sizes.Span{Least: c.rows, Most: c.rows})
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		got, want := list[0].Rack, racktest.Build(t, c.same)
		if got == nil {
			t.Errorf("%s: %s, %s", c.name, list[0].Outcome, list[0].Why)
			continue
		}
		if got.Counts != want.Counts || got.Counts.Columns != c.columns {
			t.Errorf("%s: %+v; want %+v", c.name, got.Counts, want.Counts)
		}
		for _, l := range want.Lengths {
			if v, ok := got.Find(l.Name); !ok || v.Value != l.Value {
				t.Errorf("%s: %s %v; want %v", c.name, l.Name, v.Value, l.Value)
			}
		}
	}
}

// Where every column states its rows a chart of several rows says nothing; one
// of a single number of rows is right for the tallest column alone.
func TestRowsThatCannotVary(t *testing.T) {
	d := read(t, "[[column]]\ncount = 2\nrows = 2\n[[column]]\nrows = \"3\"\n")
	_, err := sizes.Chart(d, sizes.Span{Least: 1, Most: 3}, sizes.Span{Least: 2, Most: 3})
	var list diag.List
	if !errors.As(err, &list) {
		t.Fatalf("error %v", err)
	}
	want := "test.toml:3:8: the rows of the chart cannot vary: every column states its own\n  rows = 2\n         ^\n" +
		"  so does line 5, column.2.rows = \"3\"\n  ask for one number of rows"
	if got := list.Format(d.Source); !strings.HasPrefix(got, want) {
		t.Errorf("message\n%s\nwant\n%s", got, want)
	}
	for rows, outcome := range map[int]sizes.Outcome{2: sizes.NoFit, 3: sizes.Fits} {
		one, err := sizes.Chart(d, sizes.Span{Least: 3, Most: 3}, sizes.Span{Least: rows, Most: rows})
		if err != nil || one[0].Outcome != outcome {
			t.Errorf("3 columns, %d rows: %v, %v; want %s", rows, one, err, outcome)
		}
	}
	more, err := sizes.Chart(d, sizes.Span{Least: 3, Most: 4}, sizes.Span{Least: 2, Most: 3})
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []sizes.Outcome{sizes.NoFit, sizes.Fits, sizes.Fits, sizes.Fits} {
		if s := more[i]; s.Outcome != want {
			t.Errorf("%d columns, %d rows: %s, %q; want %s", s.Columns, s.Rows, s.Outcome, s.Why, want)
		}
	}
	notes := strings.Join(sizes.Table{Sizes: more, Columns: sizes.Span{Least: 3, Most: 4}, Rows: sizes.Span{Least: 2, Most: 3}}.Notes(), "\n")
	for _, want := range []string{"counted from the left", `line 3, column.1.rows = 2; line 5, column.2.rows = "3"`} {
		if !strings.Contains(notes, want) {
			t.Errorf("notes %q; want %q among them", notes, want)
		}
	}
}
