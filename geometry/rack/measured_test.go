package rack_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/specs/unit"
)

// lengths are the figures that a test asks for, in inches.
type lengths map[string]string

func TestMeasured(t *testing.T) {
	const bar = "[rack]\ncolumns = 4\nrows = 5\n[bottles]\nfit = [\"claret-750\"]\n"
	for _, c := range []struct {
		name, text string
		want       lengths
		after      map[string][]string // parts marked to be cut after measuring
	}{
		// 5 legs and 4 channels: 5 x 3/4 + 4 x 3 23/32 = 18 5/8. The gap takes the
		// rest up, off the grid; the ladders stay as they were.
		{"a glued cell", bar + "[measured]\ncell.channel = \"3 23/32\"\n",
			lengths{"cell.gap": "2 7/32", "slat.thickness": "3/4", "leg.length": "23 1/16", "apron.length": "18 5/8", "top.length": "20 1/8"},
			map[string][]string{"apron": {"cell.channel"}, "top": {"cell.channel"}}},
		{"to be measured", bar + "[measured]\ncell.channel = \"later\"\n",
			lengths{"cell.gap": "2 3/16", "cell.channel": "3 11/16", "apron.length": "18 1/2", "top.length": "20"},
			map[string][]string{"apron": {"cell.channel"}, "top": {"cell.channel"}}},
		// The pitch that was stated gives way: the cells are glued. 4 x 3 25/32 + 5 x 3/4.
		{"a cell of a stated pitch", bar + "[ladder]\npitch = \"4 1/2\"\n[measured]\ncell.channel = \"3 25/32\"\n",
			lengths{"cell.gap": "2 9/32", "ladder.pitch": "4 17/32", "apron.length": "18 7/8"},
			map[string][]string{"apron": {"cell.channel"}, "top": {"cell.channel"}}},
		// Stock: nothing is cut, the gap stays, all that adds up follows. 5 x 23/32 + 4 x 3 11/16.
		{"thin stock", bar + "[measured]\nleg.thickness = \"23/32\"\n",
			lengths{"cell.gap": "2 3/16", "ladder.pitch": "4 13/32", "apron.length": "18 11/32", "leg.length": "23 1/16"},
			map[string][]string{"apron": {"leg.thickness"}, "top": {"leg.thickness"}}},
		// A width that the file states stays, and so does the overhang, a default: the
		// cells take up what the legs gave, (5 x 1/32) / 4 each, and no length moves.
		{"a stated width", "[rack]\ncolumns = 4\nrows = 5\nwidth = 20\n[measured]\nleg.thickness = \"23/32\"\n",
			lengths{"apron.length": "18 1/2", "overhang.side": "3/4", "top.length": "20"}, nil},
		// The stock is measured in place of what its nominal size says.
		{"a nominal size", bar + "[apron]\nstock = \"1x4\"\n[measured]\napron.thickness = \"25/32\"\n",
			lengths{"apron.thickness": "25/32", "apron.height": "3 1/2", "carcase.depth": "11 1/16", "top.width": "11 9/16"},
			map[string][]string{"top": {"apron.thickness"}}},
	} {
		r := racktest.Build(t, c.text)
		for name, want := range c.want {
			if got, want := r.Len(name), unit.MustParse(want, unit.Imperial); got != want {
				t.Errorf("%s: %s is %s; want %s", c.name, name, r.Format.Unit(got), r.Format.Unit(want))
			}
		}
		for _, p := range r.Parts {
			if !slices.Equal(p.After, c.after[p.Name]) {
				t.Errorf("%s: %s is cut after %q; want %q", c.name, p.Name, p.After, c.after[p.Name])
			}
		}
	}
}

// What was stated stays to be seen beside what was measured, and lengths that
// measuring left alone keep the proof they had.
func TestMeasuredKeepsWhatWasStated(t *testing.T) {
	r := racktest.Build(t, "[rack]\ncolumns = 2\nrows = 2\n[ladder]\npitch = \"4 1/2\"\n[cell]\nchannel = \">= 3\"\n[measured]\ncell.channel = \"3 25/32\"\nslat.height = \"later\"\n")
	m := r.Measured
	if len(m) != 2 || m[0].Name != "cell.channel" || m[0].Line != 9 || m[0].Later || len(m[0].Aside) != 2 || m[0].Aside[0].Text != `ladder.pitch = "4 1/2"` ||
		m[0].Designed != unit.MustParse("3 3/4", unit.Imperial) || !m[1].Later || m[1].Value != m[1].Designed {
		t.Errorf("measured %+v", m)
	}
	for name, want := range map[string]rack.Origin{"cell.channel": rack.Stated, "slat.height": rack.Default, "leg.width": rack.Default, "slat.length": rack.Default, "carcase.width": rack.Follows} {
		if l, _ := r.Find(name); l.From != want {
			t.Errorf("%s is %s; want %s", name, l.From, want)
		}
	}
	if l, _ := r.Find("cell.channel"); l.Line != 9 || !strings.HasPrefix(l.Because, "measured.cell.channel") {
		t.Errorf("cell.channel: line %d, %s", l.Line, l.Because)
	}
	if _, said := r.Design.Length("slat.length"); said {
		t.Error("what is held shows among the file's own statements")
	}
}

// What is glued has its columns: more do not come, and where the site is too
// narrow for them that is told, not solved away.
func TestMeasuredKeepsCounts(t *testing.T) {
	const wide = "[site]\nwidth = \"40 1/4\"\n[rack]\ncolumns = \"most\"\nrows = 3\n[measured]\ncell.channel = "
	before := racktest.Build(t, wide+"\"later\"\n")
	if got := racktest.Build(t, wide+"\"3 5/8\"\n").Counts.Columns; got != before.Counts.Columns {
		t.Errorf("%d columns; want %d as before", got, before.Counts.Columns)
	}
	_, err := racktest.Try(t, wide+"\"4 1/4\"\n")
	var clash *rack.Clash
	if !errors.As(err, &clash) || !slices.ContainsFunc(clash.Lines, func(l rack.LineText) bool { return strings.Contains(l.Text, "as before measuring") }) {
		t.Errorf("error %v; want a clash that names what is held", err)
	}
}

// Columns that differ are measured one by one; the others stay.
func TestMeasuredColumn(t *testing.T) {
	r := racktest.Build(t, "[rack]\nrows = 3\n[[column]]\ncount = 2\n[[column]]\nfit = [\"magnum-1500\"]\n[measured]\ncolumn.2.channel = \"4 11/32\"\n")
	if got, want := r.Kinds[1].Channel, unit.MustParse("4 11/32", unit.Imperial); got != want {
		t.Errorf("channel %s; want %s", got, want)
	}
	if got, want := r.Kinds[0].Channel, unit.MustParse("3 11/16", unit.Imperial); got != want {
		t.Errorf("channel of the others %s; want %s", got, want)
	}
	if p, _ := r.PartNamed("apron"); !slices.Equal(p.After, []string{"column.2.channel"}) {
		t.Errorf("aprons are cut after %q", p.After)
	}
}

// To be measured later, or measured as drawn, moves nothing: every length and
// count of every demo design stays, whatever is measured.
func TestMeasuredAsDrawn(t *testing.T) {
	for file, text := range racktest.Demos(t) {
		before := racktest.Build(t, text)
		names := []string{"leg.thickness", "slat.height", "slat.length", "slat.first", "cell.channel", "cell.rise", "ladder.pitch"}
		if len(before.Design.Columns) > 0 {
			names = []string{"leg.thickness", "slat.height", "slat.length", "column.1.channel", "column.2.rise"}
		}
		for _, name := range names {
			for _, figure := range []string{"later", before.Len(name).Decimal() + " mm"} {
				r := racktest.Build(t, fmt.Sprintf("%s\n[measured]\n%s = %q\n", text, name, figure))
				if r.Counts != before.Counts {
					t.Errorf("%s, %s = %s: counts %v; want %v", file, name, figure, r.Counts, before.Counts)
				}
				for _, l := range before.Lengths {
					if got := r.Len(l.Name); got != l.Value {
						t.Errorf("%s, %s = %s: %s is %s; want %s", file, name, figure, l.Name, got, l.Value)
					}
				}
			}
		}
	}
}

// What is measured or glued is never offered as a change. What is offered,
// typed under [measured], puts the check right and leaves the ladders alone.
func TestRemediesLeaveTheGluedAlone(t *testing.T) {
	const (
		bar    = "[rack]\ncolumns = 4\nrows = 5\n[bottles]\nfit = [\"claret-750\"]\n"
		lifted = bar + "[apron]\nlift = \"3/8\"\n"
		stock  = "[measured]\nleg.thickness = \"23/32\"\nslat.thickness = \"23/32\"\n"
	)
	for _, c := range []struct {
		name, text, check string
		want              []string // the lines to add under [measured], "" where nothing helps
	}{
		{"aprons too high", bar + stock + "cell.channel = \"3 13/16\"\n", "fit.lower_apron", []string{"measured.apron.height 2 3/8 in"}},
		{"aprons stated", bar + "[apron]\nheight = \"2 1/2\"\n" + stock + "cell.channel = \"3 13/16\"\n", "fit.lower_apron", []string{"measured.apron.height 2 3/8 in"}},
		{"aprons lifted", lifted + stock + "cell.channel = \"3 13/16\"\n", "fit.lower_apron", []string{"measured.apron.lift 1/4 in", "measured.apron.height 2 3/8 in"}},
		{"cell too narrow", bar + "[measured]\ncell.channel = \"3 3/16\"\n", "fit.side", []string{""}},
	} {
		r := racktest.Build(t, c.text)
		var got []string
		for _, x := range r.Remedies {
			if x.Check != c.check {
				continue
			}
			for _, l := range x.Changes {
				if l.Line != 0 {
					t.Errorf("%s: offers to change line %d: %s", c.name, l.Line, l.Text)
				}
				got = append(got, l.Text)
			}
			if says := rack.Advice(x.Changes); c.want[0] == "" && says != "nothing that is still to be cut can put this right" {
				t.Errorf("%s: advice %q", c.name, says)
			}
		}
		if c.want[0] == "" {
			continue
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: offers %q; want %q", c.name, got, c.want)
		}
		for _, l := range got {
			name, value, _ := strings.Cut(strings.TrimPrefix(l, "measured."), " ")
			mended := racktest.Build(t, fmt.Sprintf("%s%s = %q\n", c.text, name, value))
			if !passes(mended, c.check) {
				t.Errorf("%s: %s does not put it right", c.name, l)
			}
			for _, name := range []string{"slat.first", "slat.height", "leg.length", "cell.rise", "cell.gap", "apron.length"} {
				if mended.Len(name) != r.Len(name) {
					t.Errorf("%s: %s moves %s", c.name, l, name)
				}
			}
		}
	}
}

// Lines of [measured] are not offered in contradictions either.
func TestClashLeavesTheMeasuredAlone(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"[site]\nwidth = \"40 1/4\"\n[rack]\ncolumns = \"most\"\nrows = 3\n[measured]\ncell.channel = \"4 1/4\"\n", "nothing that is still to be cut can put this right"},
		{"[rack]\ncolumns = 4\nrows = 3\nwidth = 20\n[cell]\ngap = \"2 3/16\"\n[overhang]\nside = \"3/4\"\n[measured]\nleg.thickness = \"23/32\"\n", "no change of one of these lines alone helps"},
	} {
		_, err := racktest.Try(t, c.text)
		var clash *rack.Clash
		if !errors.As(err, &clash) {
			t.Fatalf("error %v; want a clash\n%s", err, c.text)
		}
		if hint := clash.Messages()[0].Hint; !strings.HasPrefix(hint, c.want) || strings.Contains(hint, "measured.") {
			t.Errorf("hint %q; want %q and no measured line\n%s", hint, c.want, c.text)
		}
	}
}
