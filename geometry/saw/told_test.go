package saw_test

import (
	"strings"
	"testing"

	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/saw"
)

// The steps say what is jointed first, what the ends lose, and what is left long
// until it was measured; metric orders have no feet in them.
func TestStepsTell(t *testing.T) {
	for _, c := range []struct {
		design, mass    string
		wants, unwanted []string
	}{
		{"[rack]\ncolumns = 3\nrows = 4\n[measured]\ncell.channel = \"later\"\n", "2 lb (1.0 kg)",
			[]string{"joint the first edge", "C: leave long: cut to length after measuring cell.channel", "reckoned for each end"}, []string{"mm"}},
		{"[rack]\ncolumns = 3\nrows = 4\n[measured]\nleg.thickness = \"23/32\"\ncell.channel = \"later\"\n", "2 lb (1.0 kg)",
			[]string{"C: leave long: cut to length after measuring cell.channel"}, []string{"leg.thickness"}},
		{"[rack]\ncolumns = 3\nrows = 4\n[measured]\nleg.thickness = \"23/32\"\nslat.thickness = \"23/32\"\n", "2 lb (1.0 kg)",
			nil, []string{"leave long"}},
		{"units = \"mm\"\n[rack]\ncolumns = 3\nrows = 4\n", "1.0 kg (2 lb)", []string{"joint the first edge", "reckoned for each end"}, []string{"foot", "leave long"}},
	} {
		p, err := saw.Make([]*rack.Rack{racktest.Build(t, c.design)}, saw.Quick)
		if err != nil {
			t.Fatal(err)
		}
		var all []string
		for _, s := range p.Steps {
			all = append(all, s.Cautions...)
		}
		text := strings.Join(all, "\n")
		for _, w := range c.wants {
			if !strings.Contains(text, w) {
				t.Errorf("no step says %q", w)
			}
		}
		for _, w := range c.unwanted {
			if strings.Contains(text, w) {
				t.Errorf("a step says %q", w)
			}
		}
		if got := p.Mass(1000); got != c.mass {
			t.Errorf("a kilogram is %q, want %q", got, c.mass)
		}
		if got := p.Losses(); !strings.Contains(got, p.Unit(p.Job.Shop.Kerf)) || !strings.Contains(got, p.Unit(p.Job.Shop.EndTrim)) {
			t.Errorf("losses are %q", got)
		}
	}
}
