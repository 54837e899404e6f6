package rack_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"slatwright/geometry/rack"
	"slatwright/specs/design"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// drawnDesign is a design being drawn: its lines by table.
type drawnDesign struct {
	t      *rapid.T
	metric bool
	lines  map[string][]string
	where  []string
}

// tables is the order in which tables are written.
var tables = []string{"bottles", "site", "rack", "cell", "leg", "slat", "apron", "overhang", "ladder"}

func (d *drawnDesign) chance(of int, what string) bool {
	return rapid.IntRange(1, of).Draw(d.t, what) == 1
}

// figure draws a length between two numbers of sixteenths, or of millimetres
// that are about as much.
func (d *drawnDesign) figure(lo, hi int, what string) string {
	n := rapid.IntRange(lo, hi).Draw(d.t, what)
	if d.metric {
		return fmt.Sprintf("%d mm", n*8/5)
	}
	return fmt.Sprintf("%d %d/16 in", n/16, n%16)
}

func (d *drawnDesign) say(tab, key, value string) {
	d.lines[tab] = append(d.lines[tab], key+" = "+value)
}

func (d *drawnDesign) text() string {
	var b strings.Builder
	if d.metric {
		b.WriteString("units = \"mm\"\n")
	}
	if len(d.where) > 0 {
		fmt.Fprintf(&b, "where = [%s]\n", strings.Join(d.where, ", "))
	}
	for _, tab := range tables {
		if lines := d.lines[tab]; len(lines) > 0 {
			fmt.Fprintf(&b, "[%s]\n%s\n", tab, strings.Join(lines, "\n"))
		}
	}
	return b.String()
}

// drawDesign draws a design as somebody might write it, solvable or not.
func drawDesign(t *rapid.T) *drawnDesign {
	d := &drawnDesign{t: t, metric: rapid.Bool().Draw(t, "metric"), lines: map[string][]string{}}
	fits := []string{`["claret-750"]`, `["half-375"]`, `["claret-750", "burgundy-750"]`, `["magnum-1500"]`, `["sparkling-750"]`}
	d.say("bottles", "fit", rapid.SampledFrom(fits).Draw(t, "fit"))
	d.say("rack", "columns", rapid.SampledFrom([]string{"1", "3", "5", `"2 .. 4"`, `"<= 4"`, `"~ 4"`}).Draw(t, "columns"))
	d.say("rack", "rows", rapid.SampledFrom([]string{"1", "2", "5", `"2 .. 4"`, `"<= 5"`, `"~ 3"`}).Draw(t, "rows"))
	for _, s := range []struct {
		tab, key string
		lo, hi   int
	}{
		{"rack", "width", 7 * 16, 30 * 16}, {"rack", "height", 9 * 16, 36 * 16}, {"site", "width", 8 * 16, 40 * 16},
		{"cell", "rise", 48, 90}, {"cell", "gap", 24, 44}, {"slat", "height", 8, 28}, {"leg", "thickness", 9, 20},
		{"apron", "height", 16, 60}, {"overhang", "side", 0, 30}, {"ladder", "pitch", 56, 90}, {"cell", "top_clearance", 1, 16},
	} {
		if !d.chance(4, s.key) {
			continue
		}
		value := d.figure(s.lo, s.hi, s.tab+"."+s.key)
		how := rapid.IntRange(0, 4).Draw(t, "how")
		if s.tab == "site" {
			how = 4 // a room is as it is
		}
		switch how {
		case 0:
			value = "<= " + value
		case 1:
			value = ">= " + value
		case 2:
			value = "~ " + value
		case 3:
			value += " .. " + d.figure(s.hi, s.hi+32, "to")
		}
		d.say(s.tab, s.key, `"`+value+`"`)
	}
	if d.chance(4, "where") {
		op := rapid.SampledFrom([]string{"<=", ">=", "~"}).Draw(t, "op")
		d.where = append(d.where, fmt.Sprintf(`"rack.height %s 1.3 * rack.width"`, op))
	}
	return d
}

// solved reads and solves a text; nil where its lines contradict each other.
func solved(t *rapid.T, text string) *rack.Rack {
	r, _ := build(t, text)
	return r
}

// Every rack returned is what its relations say, lies on the grid where it is
// set or marked, and honours each line of its design.
func TestEveryRackHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := drawDesign(t).text()
		r := solved(t, text)
		if r == nil {
			return
		}
		for _, fault := range slices.Concat(unrelated(r), offGrid(r), unheeded(r)) {
			t.Errorf("%s\n%s", fault, text)
		}
	})
}

// unrelated lists the relations that the lengths do not meet, added up anew.
func unrelated(r *rack.Rack) (out []string) {
	n, l := unit.Length(r.Counts.Columns), r.Len
	for _, s := range []struct {
		text       string
		left, have unit.Length
	}{
		{"channel", l("cell.channel"), l("cell.gap") + 2*l("slat.thickness")},
		{"pitch", l("ladder.pitch"), l("cell.channel") + l("leg.thickness")},
		{"carcase width", l("carcase.width"), n*l("ladder.pitch") + l("leg.thickness")},
		{"carcase depth", l("carcase.depth"), l("slat.length") + 2*l("apron.thickness")},
		{"top length", l("top.length"), l("carcase.width") + 2*l("overhang.side")},
		{"rack width", l("rack.width"), max(l("top.length"), l("carcase.width"))},
		{"rack height", l("rack.height"), l("leg.length") + l("top.thickness")},
		{"apron length", l("apron.length"), l("carcase.width")},
	} {
		if s.left != s.have {
			out = append(out, fmt.Sprintf("%s is %v, not %v", s.text, s.left, s.have))
		}
	}
	return out
}

// offGrid lists lengths that should be on the grid and are not.
func offGrid(r *rack.Rack) (out []string) {
	for _, name := range []string{"cell.gap", "cell.rise", "slat.first", "slat.length", "leg.length", "apron.height", "overhang.side", "overhang.front", "slat.height", "leg.width"} {
		stated, said := r.Design.Length(name)
		if exact := said && stated.Kind == design.Exact; !exact && r.Len(name)%r.Design.Grid != 0 {
			out = append(out, fmt.Sprintf("%s = %v is off the grid", name, r.Len(name)))
		}
	}
	return out
}

// unheeded lists the lines that the rack does not keep.
func unheeded(r *rack.Rack) (out []string) {
	for _, s := range r.Design.Lengths {
		v, kept := r.Len(s.Name), true
		switch s.Kind {
		case design.Exact, design.Between:
			kept = s.Lo <= v && v <= s.Hi
		case design.AtMost:
			kept = v <= s.Hi
		case design.AtLeast:
			kept = v >= s.Lo
		}
		if !kept {
			out = append(out, fmt.Sprintf("%s is %v", s.Text, v))
		}
	}
	for _, c := range r.Design.Counts {
		n := map[string]int{"rack.columns": r.Counts.Columns, "rack.rows": r.Counts.Rows}[c.Name]
		if c.Kind != design.Near && (c.Kind != design.AtMost && n < c.Lo || c.Kind != design.AtLeast && n > c.Hi) {
			out = append(out, fmt.Sprintf("%s is %d", c.Text, n))
		}
	}
	for _, w := range r.Design.Where {
		var sum unit.Length
		for _, t := range w.Terms {
			sum += unit.Length(t.Num) * r.Len(t.Name) * 10 / unit.Length(t.Den)
		}
		if off := sum - 10*w.Const; w.Op == "<=" && off > 0 || w.Op == ">=" && off < 0 {
			out = append(out, w.Text)
		}
	}
	if w, ok := r.Design.Length("site.width"); ok && r.Len("rack.width") > w.Hi {
		out = append(out, "the site is too narrow")
	}
	return out
}

// Where no default has to bend, a wider range never holds fewer bottles. (A
// default that bends may do so by making room for one more: defaults rank
// before bottles, so the wider range can then mean the default and a bottle
// less.)
func TestWiderRangesHoldNoFewer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDesign(t)
		limits := []string{"width", "height"}
		key := rapid.SampledFrom(limits).Draw(t, "limit")
		lines := d.lines["rack"]
		d.lines["rack"] = slices.DeleteFunc(lines, func(s string) bool { return strings.HasPrefix(s, key+" ") })
		least := rapid.IntRange(9*16, 36*16).Draw(t, "least")
		more := rapid.IntRange(1, 10*16).Draw(t, "more")
		within := func(n int) string {
			saved := slices.Clone(d.lines["rack"])
			d.say("rack", key, fmt.Sprintf("\"<= %d/16 in\"", n))
			text := d.text()
			d.lines["rack"] = saved
			return text
		}
		narrow, wide := solved(t, within(least)), solved(t, within(least+more))
		switch {
		case narrow == nil:
			return
		case wide == nil:
			t.Fatalf("a wider range contradicts what a narrow one allows\n%s", within(least+more))
		}
		if !bends(narrow) && wide.Counts.Bottles < narrow.Counts.Bottles && !sought(narrow.Design) {
			t.Fatalf("%d bottles, then %d\n%s", narrow.Counts.Bottles, wide.Counts.Bottles, within(least+more))
		}
	})
}

// bends reports whether some standing default is not kept.
func bends(r *rack.Rack) bool {
	return slices.ContainsFunc(r.Lengths, func(l rack.Solved) bool {
		def, ok := table.FindDefault(l.Name)
		return ok && l.From == rack.Default && l.Value != def.Value(r.Design.Units)
	})
}

// sought reports whether a count is wished for rather than sought the most of.
func sought(d *design.Design) bool {
	return slices.ContainsFunc(d.Counts, func(c design.Count) bool { return c.Kind == design.Near })
}

// A length means the same in either unit: 24 in is 609.6 mm.
func TestUnitsOfFiguresDoNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDesign(t)
		d.metric = false
		n, m := rapid.IntRange(8*16, 40*16).Draw(t, "width"), rapid.IntRange(9*16, 40*16).Draw(t, "height")
		d.lines["rack"] = d.lines["rack"][:2] // the counts
		with := func(width, height string) *rack.Rack {
			saved := slices.Clone(d.lines["rack"])
			d.say("rack", "width", fmt.Sprintf("%q", "<= "+width))
			d.say("rack", "height", fmt.Sprintf("%q", "<= "+height))
			text := d.text()
			d.lines["rack"] = saved
			return solved(t, text)
		}
		inches := with(fmt.Sprintf("%d/16 in", n), fmt.Sprintf("%d/16 in", m))
		other := with(unit.Length(n*127000).Decimal()+" mm", unit.Length(m*127000).Decimal()+" mm")
		if (inches == nil) != (other == nil) {
			t.Fatal("one unit contradicts what the other allows")
		}
		if inches == nil {
			return
		}
		for i, l := range inches.Lengths {
			if other.Lengths[i].Value != l.Value {
				t.Fatalf("%s is %v and %v", l.Name, l.Value, other.Lengths[i].Value)
			}
		}
	})
}
