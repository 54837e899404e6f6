package design_test

import (
	"errors"
	"testing"

	"slatwright/specs/design"
	"slatwright/specs/diag"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

func TestLabels(t *testing.T) {
	grid := func(id string) table.LabelGrid {
		g, ok := table.FindLabelGrid(id)
		if !ok {
			t.Fatalf("no grid %s", id)
		}
		return g
	}
	cut := grid("a4-21")
	cut.Cut = true
	for _, c := range []struct {
		text  string
		want  table.LabelGrid
		first int
	}{
		{"", grid("letter-cut"), 1},
		{"units = \"mm\"\n", grid("a4-cut"), 1},
		{"[labels]\nfirst = 30\n[paper]\nlabels = \"letter\"\n", grid("letter-cut"), 30},
		{"[labels]\ngrid = \"a4-21\"\ncut = true\nfirst = 21\n[paper]\nlabels = \"a4\"\n", cut, 21},
		// Margins as stated; the gap down is nothing.
		{"[labels]\npaper_width = \"150 mm\"\npaper_height = \"6 in\"\ncolumns = 2\nrows = 3\nwidth = \"65 mm\"\nheight = \"40 mm\"\nleft = \"7 mm\"\ntop = 0.5\nacross_gap = \"5 mm\"\n",
			table.LabelGrid{PaperWidth: 150 * mm, PaperHeight: 6 * unit.Inch, Columns: 2, Rows: 3, Width: 65 * mm, Height: 40 * mm,
				Left: 7 * mm, Top: unit.Inch / 2, AcrossGap: 5 * mm}, 1},
		// In the middle of the paper of [paper], which stands below: (210 - 2 x 90 - 4) / 2 and (297 - 5 x 50) / 2.
		{"units = \"mm\"\n[labels]\ncolumns = 2\nrows = 5\nwidth = 90\nheight = 50\nacross_gap = 4\ncut = true\n[paper]\nlabels = \"a4\"\n",
			table.LabelGrid{Paper: "a4", PaperWidth: 210 * mm, PaperHeight: 297 * mm, Columns: 2, Rows: 5, Width: 90 * mm, Height: 50 * mm,
				Left: 13 * mm, Top: 47 * mm / 2, AcrossGap: 4 * mm, Cut: true}, 1},
	} {
		if got := read(t, c.text).Labels; got.Grid != c.want || got.First != c.first {
			t.Errorf("%s\ngot  %+v, first %d\nwant %+v, first %d", c.text, got.Grid, got.First, c.want, c.first)
		}
	}
}

// Each thing that can be wrong with a sheet of labels is told at its place, with
// what to do.
func TestLabelFaults(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{`[labels]
columns = 3
rows = 8
width = "2 7/8"
height = 1.25
`, `x.toml:4:9: the labels run off the paper: 3 of 2 7/8 in make 8 5/8 in; the paper is 8 1/2 in wide
  width = "2 7/8"
          ^^^^^^^
  width = "2 13/16" at most; or fewer columns
`},
		{`units = "mm"
[labels]
columns = 2
rows = 8
width = 80
height = 36
top = 12
down_gap = 2
`, `x.toml:6:10: the labels run off the paper: 8 of 36 mm, gaps of 2 mm, margin of 12 mm make 314 mm; the paper is 297 mm high
  height = 36
           ^^
  height = "33.8" at most; or fewer rows
`},
		{`units = "mm"
[labels]
columns = 2
rows = 5
width = 80
height = 40
left = 300
`, `x.toml:5:9: the labels run off the paper: 2 of 80 mm, margin of 300 mm make 460 mm; the paper is 210 mm wide
  width = 80
          ^^
  fewer columns, a smaller margin or gap, or paper_width and paper_height of the sheet
`},
		{`units = "mm"
[labels]
columns = 2
rows = 5
width = 80
height = 40
across_gap = -3
`, `x.toml:7:14: the labels overlap: a gap is not negative
  across_gap = -3
               ^^
  write 0 where they touch
`},
		{`units = "mm"
[labels]
columns = 4
rows = 10
width = 40
height = 20
`, `x.toml:5:9: a label of 40 x 20 mm can't hold its lettering at the least height
  width = 40
          ^^
  the least on this sheet is 60 x 24 or 82 x 20 or 42 x 36, each width x height in millimetres
`},
		{`[labels]
columns = 2
rows = 12
width = 3
height = "11/16"
`, `x.toml:5:10: a label of 3 x 11/16 in can't hold its lettering at the least height
  height = "11/16"
           ^^^^^^^
  the least on this sheet is 2 3/8 x 15/16 or 3 1/4 x 13/16 or 1 11/16 x 1 7/16, each width x height in inches
`},
		{`[labels]
grid = "letter30"
`, `x.toml:2:8: unknown grid of labels "letter30"
  grid = "letter30"
         ^^^^^^^^^^
  did you mean ` + "`letter-30`? `slatwright tables labels` lists all" + `
`},
		{`[labels]
columns = 0
rows = 10
width = 2
height = 1
`, "x.toml:2:11: `labels.columns` must be a whole number from 1 to 50\n  columns = 0\n            ^\n"},
		{`[labels]
grid = "letter-30"
first = 31
`, `x.toml:3:9: there is no label 31: the sheet holds 30
  first = 31
          ^^
  labels are counted row by row from the top left, from 1
`},
		{`[labels]
first = 0
`, "x.toml:2:9: `labels.first` must be a whole number from 1 to 2500\n  first = 0\n          ^\n"},
		{`[labels]
grid = "letter-30"
columns = 2
`, "x.toml:3:1: `labels.grid = \"letter-30\"` and a sheet of your own, of which there can be one\n  columns = 2\n  ^^^^^^^\n" +
			"  keep `grid`, or leave it out and state your own sheet\n"},
		{`[labels]
columns = 2
width = 3
height = 2
`, "x.toml:1:2: the sheet of labels has no `rows`\n  [labels]\n   ^^^^^^\n" +
			"  a sheet of your own needs columns, rows, width and height; or name a grid, such as grid = \"letter-cut\"\n"},
		{`[labels]
grid = "a4-24"
[paper]
labels = "letter"
`, "x.toml:2:8: `a4-24` is on a4 paper, and paper.labels = \"letter\"\n  grid = \"a4-24\"\n         ^^^^^^^\n" +
			"  leave that line out: the grid says its paper\n"},
		{`[labels]
paper_width = 4
columns = 1
rows = 1
width = 3
height = 2
`, `x.toml:2:1: the sheet's paper has a width and no height
  paper_width = 4
  ^^^^^^^^^^^
  add paper_height
`},
		{`paper.labels = "letter"
[labels]
paper_width = 4
paper_height = 6
columns = 1
rows = 1
width = 3
height = 2
`, `x.toml:3:1: paper.labels = "letter" is the sheet's paper already
  paper_width = 4
  ^^^^^^^^^^^
  leave out that line, or paper_width and paper_height
`},
		{`[labels]
paper_width = "3 m"
paper_height = "3 m"
columns = 1
rows = 1
width = 3
height = 2
`, "x.toml:2:15: `labels.paper_width` is at most 2 m\n  paper_width = \"3 m\"\n                ^^^^^\n" +
			"x.toml:3:16: `labels.paper_height` is at most 2 m\n  paper_height = \"3 m\"\n                 ^^^^^\n"},
		{`[labels]
cut = "yes"
`, "x.toml:2:7: `labels.cut` is true or false, not a text\n  cut = \"yes\"\n        ^^^^^\n  write true or false\n"},
		{`[labels]
height = "<= 2"
columns = 1
rows = 1
width = 3
`, "x.toml:2:10: `labels.height` must be one length, not a limit or a range\n  height = \"<= 2\"\n           ^^^^^^\n" +
			"  write one figure, such as \"1/8 in\"\n"},
	} {
		d, err := design.Read("x.toml", []byte(c.text))
		var list diag.List
		if !errors.As(err, &list) {
			t.Errorf("%s\nerror %v; want a list of messages", c.text, err)
			continue
		}
		if got := list.Format(d.Source); got != c.want {
			t.Errorf("%s\ngot\n%s\nwant\n%s", c.text, got, c.want)
		}
	}
}
