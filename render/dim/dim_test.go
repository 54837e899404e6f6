package dim

import (
	"strings"
	"testing"

	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// stops are places along a view at 1:1, from the left.
func stops(values ...unit.Length) []Stop {
	var out []Stop
	for _, v := range values {
		out = append(out, Stop{At: drawing.Um(60*drawing.MM) + drawing.Um(v.Micrometres()), Value: v, From: 100 * drawing.MM})
	}
	return out
}

// chained is a sheet with one chain, its overall figure over it.
func chained(f unit.Format, s []Stop) *drawing.Sheet {
	sheet := &drawing.Sheet{Name: "dim", W: 400 * drawing.MM, H: 200 * drawing.MM, Units: f.System}
	sheet.Frame = drawing.Box(10*drawing.MM, 10*drawing.MM, 380*drawing.MM, 180*drawing.MM)
	b := New(sheet, f, drawing.Ratio{Num: 1, Den: 1})
	b.Chain(Above, s, Options{})
	b.Overall(Above, s[0], s[len(s)-1], Options{})
	b.Draw(drawing.Box(s[0].At, 100*drawing.MM, s[len(s)-1].At-s[0].At, 20*drawing.MM))
	return sheet
}

// Links of a third of an inch are off every rule; printed, they still add up to
// the overall figure, which is in their chain.
func TestChainAddsUpAsPrinted(t *testing.T) {
	third := unit.Inch / 3
	s := chained(unit.Format{System: unit.Imperial}, stops(0, third, 2*third, 2*third+unit.Inch, 5*unit.Inch))
	if faults := drawing.Legible(s); len(faults) > 0 {
		t.Errorf("faults %v", faults)
	}
	var sum unit.Length
	whole, chain := unit.Length(-1), s.Dims[0].Chain
	for _, d := range s.Dims {
		d.Printed = strings.Trim(d.Printed, "()")
		if d.Chain != chain {
			t.Errorf("%s stands in chain %d, want %d", d.Printed, d.Chain, chain)
		}
		plain := d.Printed
		if len(plain) > len(unit.About) && plain[:len(unit.About)] == unit.About {
			plain = plain[len(unit.About):]
		}
		v := unit.MustParse(plain, unit.Imperial)
		if d.Role == drawing.Check { // one of a run whose whole is the link
			continue
		}
		if d.Role == drawing.Overall {
			whole = v
			continue
		}
		sum += v
	}
	if sum != whole {
		t.Errorf("links add up to %v, the overall figure says %v", sum, whole)
	}
}

// A falsified overall figure was once not seen: it had a chain of its own.
func TestFalsifiedOverallIsSeen(t *testing.T) {
	s := chained(unit.Format{System: unit.Imperial}, stops(0, 2*unit.Inch, 5*unit.Inch))
	for i := range s.Dims {
		if d := &s.Dims[i]; d.Role == drawing.Overall {
			d.Value, d.Printed = d.Value+unit.Inch/64, "5 1/64"
		}
	}
	seen := false
	for _, f := range drawing.Legible(s) {
		t.Log(f)
		seen = seen || f.Kind == drawing.ChainOpen
	}
	if !seen {
		t.Error("an overall figure 1/64 in too long was not seen")
	}
}

// Slots never overlap, keep their order, and stay put where there is room.
func TestSpread(t *testing.T) {
	for _, c := range []struct {
		name       string
		want, size []drawing.Um
		at         []drawing.Um // nil: only no overlap and least shift of the middle
	}{
		{"apart", []drawing.Um{0, 100, 200}, []drawing.Um{50, 50, 50}, []drawing.Um{0, 100, 200}},
		{"two on one place", []drawing.Um{100, 100}, []drawing.Um{40, 40}, []drawing.Um{80, 120}},
		{"a crowd", []drawing.Um{0, 1, 2, 3, 400}, []drawing.Um{10, 20, 30, 10, 10}, nil},
	} {
		var slots []slot
		for i, w := range c.want {
			slots = append(slots, slot{want: w, size: c.size[i]})
		}
		spread(slots)
		for i, s := range slots {
			if c.at != nil && s.at != c.at[i] {
				t.Errorf("%s: slot %d at %d, want %d", c.name, i, s.at, c.at[i])
			}
			if i > 0 && s.at-s.size/2 < slots[i-1].at+slots[i-1].size/2 {
				t.Errorf("%s: slot %d overlaps the one before", c.name, i)
			}
		}
	}
}
