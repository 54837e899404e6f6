package rack

import (
	"errors"
	"testing"

	"slatwright/specs/design"
)

// BenchmarkBuild is the way from a design to its solved lengths, and the whole
// way to a rack set in space with the advice on one more of each open count, or
// to the explanation of a contradiction.
func BenchmarkBuild(b *testing.B) {
	for _, c := range []struct {
		name, text string
		clash      bool
	}{
		{"20 bottles", "[rack]\ncolumns = 4\nrows = 5\n", false},
		{"80 bottles in a site", "[site]\nwidth = 42\nheight = 42\n[rack]\ncolumns = \"most\"\nrows = \"most\"\n", false},
		{"10 columns in 42 in, defaults bend", "[site]\nwidth = 42\nheight = 42\n[rack]\ncolumns = 10\nrows = 5\n", false},
		{"most in 200 by 100 in", "[site]\nwidth = 200\nheight = 100\n[rack]\ncolumns = \"most\"\nrows = \"most\"\n", false},
		{"most in a wall of 5,000", "[site]\nwidth = 430\nheight = 200\n[rack]\ncolumns = \"most\"\nrows = \"most\"\n", false},
		{"magnums beside clarets, most of all", "[site]\nwidth = \"38 1/2\"\nheight = 71\n[rack]\ncolumns = \"most\"\nrows = \"most\"\n[[column]]\ncount = 2\nfit = [\"magnum-1500\"]\n", false},
		{"a contradiction of three lines", "[rack]\nwidth = \"<= 12\"\ncolumns = 4\nrows = 5\n", true},
		{"two contradictions", "[site]\nwidth = 30\nheight = 20\ndepth = 12\n[rack]\ncolumns = 6\nrows = 8\n[leg]\nstock = \"2x4\"\n[slat]\nlength = 12\n", true},
	} {
		b.Run(c.name+"/solved", func(b *testing.B) {
			for b.Loop() {
				d, err := design.Read("bench.toml", []byte(c.text))
				if err != nil {
					b.Fatal(err)
				}
				if a, err := solveDesign(d); err != nil || (a.s == nil) != c.clash {
					b.Fatal(err)
				}
			}
		})
		b.Run(c.name+"/whole", func(b *testing.B) {
			for b.Loop() {
				d, err := design.Read("bench.toml", []byte(c.text))
				if err != nil {
					b.Fatal(err)
				}
				r, err := Build(d)
				var clash *Clash
				if errors.As(err, &clash) != c.clash || err != nil && !c.clash {
					b.Fatal(err)
				}
				if r != nil {
					b.ReportMetric(float64(r.Counts.Bottles), "bottles")
				}
			}
		})
	}
}
