package sheet_test

import (
	"math"
	"strings"
	"testing"

	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// The carcase sheet of each demo design says where each leg's left face is, from
// one end, which spacers go in without meeting a slat, and where the aprons' nails
// are; and the ground of the diagonal's figure hides no leg.
func TestCarcaseSheet(t *testing.T) {
	for name, r := range demos(t) {
		for _, s := range packet(t, r) {
			if !strings.HasSuffix(s.Name, "-carcase") {
				continue
			}
			got := map[unit.Length]bool{}
			var plate drawing.Rect
			for _, d := range s.Dims {
				if d.Role == drawing.Running {
					got[d.Value] = true
				}
			}
			for _, l := range r.Ladders[1:] {
				if len(got) > 0 && !got[l.X] { // else there is only room for steps, and words
					t.Errorf("%s: no figure to a leg's left face at %s", name, r.Format.Text(l.X))
				}
			}
			for _, m := range s.Marks {
				if p, ok := m.(drawing.Path); ok && p.Class == drawing.Solid && p.Fill == drawing.White && p.Bounds().H() > 10*drawing.MM {
					plate = p.Bounds()
				}
			}
			for _, m := range s.Marks {
				p, ok := m.(drawing.Path)
				if ok && p.Class == drawing.Visible && p.Bounds().W() == 0 && p.Start.X > plate.Min.X && p.Start.X < plate.Max.X {
					t.Errorf("%s: the ground of the diagonal's figure hides a leg", name)
				}
			}
			text := lettered([]*drawing.Sheet{s}, "")
			for _, want := range []string{"Leftfacesofthelegs", "Spacers,dash-dotted,", "twotoacolumn", "belowthelowestslats", "partC,sheet"} {
				if !strings.Contains(text, want) {
					t.Errorf("%s: does not say %q", name, want)
				}
			}
		}
	}
}

// Slats that no apron covers are not said to pass behind one.
func TestSlatsBehindAprons(t *testing.T) {
	for _, lift := range []string{"0", "3"} {
		r := racktest.Build(t, "units = \"in\"\n[bottles]\nfit = [\"claret-750\"]\n[rack]\ncolumns = 2\nrows = 4\n[slat]\nfirst = 8\n[apron]\nlift = "+lift+"\n")
		low, high := r.Len("apron.lift"), r.Len("apron.lift")+r.Len("apron.height")
		under := r.Kinds[0].Under[0]
		want := under < high && under+r.Len("slat.height") > low
		text := lettered(packet(t, r), "ladder-1")
		if got := strings.Contains(text, "behindtheloweraprons"); got != want {
			t.Errorf("lift %s, first slat at %s: said to pass behind the lower aprons: %v, want %v", lift, r.Format.Text(under), got, want)
		}
	}
}

// Two spacers are drawn to a column, between its legs and clear of every slat; the
// words beside the view say between which lengths they are good: never longer than a
// channel may be, where the fit bears less than the shop's tolerance.
func TestSpacersAreDrawn(t *testing.T) {
	for name, r := range demos(t) {
		for _, s := range packet(t, r) {
			if !strings.HasSuffix(s.Name, "-carcase") {
				continue
			}
			var got []drawing.Rect
			for _, m := range s.Marks {
				if p, ok := m.(drawing.Path); ok && p.Class == drawing.Phantom {
					got = append(got, p.Bounds())
				}
			}
			if len(got) != 2*len(r.Columns) {
				t.Errorf("%s: %d spacers, want two to each of %d columns", name, len(got), len(r.Columns))
				continue
			}
			across, most := got[0].W().MM()/r.Kinds[r.Columns[0].Kind].Channel.MM(), 0.0
			for i, c := range r.Columns {
				for _, e := range got[2*i : 2*i+2] {
					most = max(most, math.Abs(e.W().MM()/across-r.Kinds[c.Kind].Channel.MM()), math.Abs(e.H().MM()/across-r.Len("slat.height").MM()))
				}
			}
			if most > 0.1/across {
				t.Errorf("%s: spacers are out of scale by up to %.2f mm", name, most)
			}
		}
	}
	// A channel of 102 mm of which the lower aprons bear 102.4 at most: half of that, and of the other way, is the spacers'.
	if text := lettered(packet(t, demos(t)["tasting-metric.toml"]), "-carcase"); !strings.Contains(text, "101.4to102.2mm") {
		t.Errorf("no limit of the spacers in %s", text)
	}
}
