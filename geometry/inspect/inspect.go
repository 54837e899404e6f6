// Package inspect works out what to measure on a finished rack: lengths that
// lie between faces, so that a rule or a gauge reaches them, each with the least
// and the greatest that the fit bears. A solved rack goes in; plain data comes
// out, which the inspection sheet shows.
//
// The limits are found by asking the checks themselves about the rack with that
// one length changed, in the finest steps that are printed. So they can't say
// anything else than the checks do.
package inspect

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/specs/design"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Dimension is one length to measure.
type Dimension struct {
	Name    string // "sideways gap"
	Where   string // "column 1", "columns 2-4"; "" where all are alike or it is of the whole rack
	Between string // the faces, and at which ends
	Count   int    // in how many places it is measured: each face of a cell, at the front and at the back
	Drawn   unit.Length

	// What the fit bears, multiples of the finest length printed unless Drawn
	// itself is a limit. Zero where nothing limits it within an inch of Drawn.
	Least, Greatest     unit.Length
	LeastBy, GreatestBy string // the check, or the statement, that limits it
	Fails               string // the check that fails as drawn; then there are no limits
}

// reach is how far from the drawn length limits are looked for.
const reach = unit.Inch

// Tight reports whether a limit is nearer to the drawn length than the shop's
// tolerance.
func (d Dimension) Tight(tolerance unit.Length) bool {
	return d.TightBelow(tolerance) || d.TightAbove(tolerance)
}

// TightBelow reports whether the least is that near.
func (d Dimension) TightBelow(tolerance unit.Length) bool {
	return d.Least > 0 && d.Drawn-d.Least < tolerance
}

// TightAbove reports whether the greatest is that near.
func (d Dimension) TightAbove(tolerance unit.Length) bool {
	return d.Greatest > 0 && d.Greatest-d.Drawn < tolerance
}

// Dimensions returns what to measure: each kind of column first, then the whole
// rack.
func Dimensions(r *rack.Rack) []Dimension {
	var list []Dimension
	for k := range r.Kinds {
		for _, p := range ofKind(r, k) {
			list = append(list, p.limit(r, k))
		}
	}
	list = append(list, depth(r))
	return append(list, overall(r)...)
}

// depth is between the aprons, all along the rack: every kind of column limits
// it.
func depth(r *rack.Rack) Dimension {
	all := Dimension{Name: "inside depth", Between: "aprons, low and high", Count: len(r.Columns) * lowAndHigh, Drawn: r.Len("slat.length")}
	p := probe{all, []func(*rack.Rack, unit.Length){func(r *rack.Rack, by unit.Length) { setLength(r, "slat.length", by) }}}
	for k := range r.Kinds {
		d := p.limit(r, k)
		if d.Fails != "" {
			return d
		}
		all.narrow(d)
	}
	return all
}

// narrow takes over the limits of o where they are narrower.
func (d *Dimension) narrow(o Dimension) {
	if o.LeastBy != "" && o.Least > d.Least {
		d.Least, d.LeastBy = o.Least, o.LeastBy
	}
	if o.GreatestBy != "" && (d.Greatest == 0 || o.Greatest < d.Greatest) {
		d.Greatest, d.GreatestBy = o.Greatest, o.GreatestBy
	}
}

// probe is a dimension of a kind of column with the ways to change it. Where it
// occurs in several places each has a way of its own, and the narrowest limits
// count.
type probe struct {
	Dimension
	change []func(r *rack.Rack, by unit.Length)
}

// Names that gauges are made for, and that of what is clear between facing legs.
const (
	SidewaysGap = "sideways gap"
	UprightGap  = "upright gap"
	Channel     = "channel"
)

// In how many places one length of a cell or column is measured.
const (
	frontAndBack = 2
	bothSlats    = 2 // those that face each other
	lowAndHigh   = 2
)

// widen moves the facing legs of the columns apart, each with its slats as drawn:
// the gap goes with the channel, so that either is limited by all that hangs on
// it.
func widen(r *rack.Rack, by unit.Length) {
	r.Kinds[0].Gap += by
	r.Kinds[0].Channel += by
}

// Columns names the columns of a kind by their numbers from the left: "column 1",
// "columns 2-4"; "" where all are alike.
func Columns(r *rack.Rack, kind int) string {
	first := 1
	for _, k := range r.Kinds[:kind] {
		first += k.Count
	}
	switch n := r.Kinds[kind].Count; {
	case len(r.Kinds) == 1:
		return ""
	case n == 1:
		return fmt.Sprintf("column %d", first)
	default:
		return fmt.Sprintf("columns %d-%d", first, first+n-1)
	}
}

// ofKind returns the probes of a kind of column.
func ofKind(r *rack.Rack, kind int) []probe {
	k, where := r.Kinds[kind], Columns(r, kind)
	high := r.Len("slat.height")
	add := func(name, between string, count int, drawn unit.Length, change ...func(*rack.Rack, unit.Length)) probe {
		return probe{Dimension{Name: name, Where: where, Between: between, Count: count, Drawn: drawn}, change}
	}
	lift := func(r *rack.Rack, from int, by unit.Length) {
		for i := from; i < len(r.Kinds[0].Under); i++ {
			r.Kinds[0].Under[i] += by
		}
	}
	list := []probe{
		add(SidewaysGap, "facing slats, both ends", k.Count*k.Rows*frontAndBack, k.Gap, widen),
		add(Channel, "facing legs, both ends", k.Count*frontAndBack, k.Channel, widen),
		add("lowest slats", "foot to underside, both ends", k.Count*bothSlats*frontAndBack, k.Under[0], func(r *rack.Rack, by unit.Length) { lift(r, 0, by) }),
	}
	list = append(list, openings(r, kind, lift)...)
	over := r.Len("leg.length") - r.Len("apron.height") - k.Under[k.Rows-1] - high
	return append(list,
		add("headroom", "slat to upper apron, both ends", k.Count*bothSlats*frontAndBack, over, func(r *rack.Rack, by unit.Length) { setLength(r, "leg.length", by) }))
}

// openings are the clear heights between slats, one for each rise of the kind.
func openings(r *rack.Rack, kind int, lift func(*rack.Rack, int, unit.Length)) []probe {
	var list []probe
	k := r.Kinds[kind]
	seen := map[string]bool{} // only asked, never ranged over
	for row, rise := range k.Rises {
		n := slices.IndexFunc(list, func(p probe) bool { return p.Drawn == rise-r.Len("slat.height") })
		if n < 0 {
			n = len(list)
			list = append(list, probe{Dimension: Dimension{
				Name: UprightGap, Where: Columns(r, kind), Between: "slat to slat above, both ends", Drawn: rise - r.Len("slat.height"),
			}})
		}
		list[n].Count += k.Count * bothSlats * frontAndBack
		if key := fmt.Sprint(rise, ids(k.Fit[row]), ids(k.Fit[row+1])); !seen[key] {
			seen[key] = true
			list[n].change = append(list[n].change, func(r *rack.Rack, by unit.Length) {
				r.Kinds[0].Rises[row] += by
				lift(r, row+1, by)
			})
		}
	}
	return list
}

func ids(list []table.Bottle) string {
	var all []string
	for _, b := range list {
		all = append(all, b.ID)
	}
	return strings.Join(all, " ")
}

// setLength changes a named length of a rack made by alone.
func setLength(r *rack.Rack, name string, by unit.Length) {
	n := slices.IndexFunc(r.Lengths, func(s rack.Solved) bool { return s.Name == name })
	r.Lengths[n].Value += by
}

// alone returns a copy of the rack with columns of the one kind, sharing nothing
// that the changes touch.
func alone(r *rack.Rack, kind int) *rack.Rack {
	c := *r
	k := r.Kinds[kind]
	k.Under, k.Rises = slices.Clone(k.Under), slices.Clone(k.Rises)
	c.Kinds = []rack.Kind{k}
	c.Columns = []rack.Column{{}}
	c.Lengths = slices.Clone(r.Lengths)
	return &c
}

// failing returns the first check of the fit that fails on the rack, "" where
// none does.
func failing(r *rack.Rack) string {
	for _, c := range check.Checks() {
		if !strings.HasPrefix(c.Code, "fit.") {
			continue
		}
		if check.Worst(c.Run(r)) == check.Fail {
			return c.Code
		}
	}
	return ""
}

// limit finds what the fit bears.
func (p probe) limit(r *rack.Rack, kind int) Dimension {
	d := p.Dimension
	if d.Fails = failing(alone(r, kind)); d.Fails != "" {
		return d
	}
	for _, change := range p.change {
		judge := func(v unit.Length) string {
			c := alone(r, kind)
			change(c, v-d.Drawn)
			return failing(c)
		}
		var one Dimension
		one.Least, one.LeastBy = edge(d.Drawn, -1, r.Format, judge)
		one.Greatest, one.GreatestBy = edge(d.Drawn, 1, r.Format, judge)
		d.narrow(one)
	}
	return d
}

// edge returns the last length on the way from the drawn one, in whole steps of
// the finest printed, at which judge finds nothing, and what fails one step
// further; by is "" where nothing fails within reach. Every check gets worse
// all the way, so that the edge can be found by halving.
func edge(drawn unit.Length, way int, f unit.Format, judge func(unit.Length) string) (last unit.Length, by string) {
	step := f.System.Finest()
	at := func(n int) unit.Length {
		if n == 0 {
			return drawn
		}
		if way < 0 {
			return (drawn - 1).Down(step) - unit.Length(n-1)*step
		}
		return (drawn + 1).Up(step) + unit.Length(n-1)*step
	}
	good, bad := 0, 1+int(reach/step)
	if way < 0 {
		bad = min(bad, int((drawn-1)/step)+1) // no length is less than nothing
	}
	if by = judge(at(bad)); by == "" {
		return 0, ""
	}
	for bad-good > 1 {
		mid := (good + bad) / 2
		if says := judge(at(mid)); says == "" {
			good = mid
		} else {
			bad, by = mid, says
		}
	}
	return at(good), by
}

// overall returns the sizes over all, limited by what the design states of them
// and of the site.
func overall(r *rack.Rack) []Dimension {
	fit := unit.Length(0)
	if l, ok := r.Find("site.fit"); ok {
		fit = l.Value
	}
	var list []Dimension
	for _, o := range []struct {
		name, site, between string
		fits                unit.Length
	}{
		{"width", "site.width", "at the widest", 2 * fit},
		{"depth", "site.depth", "at the deepest", fit},
		{"height", "site.height", "at the highest", fit},
	} {
		name := "rack." + o.name
		d := Dimension{Name: o.name + " over all", Between: o.between, Count: 1, Drawn: r.Len(name)}
		if l, ok := r.Design.Length(name); ok {
			d.take(l, 0)
		}
		if l, ok := r.Design.Length(o.site); ok {
			l.Kind, l.Hi = design.AtMost, max(l.Lo, l.Hi)
			d.take(l, o.fits)
		}
		list = append(list, d)
	}
	return list
}

// take lets a statement limit the dimension, less what is kept free.
func (d *Dimension) take(l design.Length, free unit.Length) {
	var said Dimension
	if l.Kind == design.AtMost || l.Kind == design.Between {
		said.Greatest, said.GreatestBy = l.Hi-free, l.Name
	}
	if l.Kind == design.AtLeast || l.Kind == design.Between {
		said.Least, said.LeastBy = l.Lo, l.Name
	}
	d.narrow(said)
}

// Gauge is a pair of widths to make from waste: the go one must enter wherever
// the dimension is, the no-go one nowhere.
type Gauge struct {
	Name, Where string
	Drawn       unit.Length
	Go, NoGo    unit.Length // zero where the fit sets no such limit
}

// Gauges returns the gauges for gaps, sideways and upright, in the order of the
// dimensions. A channel has none: its limits are those of the gap in it. Nor has
// a gap with both limits at one printed length: no two sticks tell them apart.
// Ungauged lists those.
func Gauges(list []Dimension) []Gauge {
	var out []Gauge
	for _, d := range list {
		if d.gap() && !d.pinned() && (d.Least > 0 || d.Greatest > 0) {
			out = append(out, Gauge{d.Name, d.Where, d.Drawn, d.Least, d.Greatest})
		}
	}
	return out
}

// Ungauged returns the gaps that have no gauge because both limits are one
// printed length.
func Ungauged(list []Dimension) []Dimension {
	return slices.DeleteFunc(slices.Clone(list), func(d Dimension) bool { return !d.gap() || !d.pinned() })
}

func (d Dimension) gap() bool { return d.Name == SidewaysGap || d.Name == UprightGap }

// pinned reports whether the limits leave nothing between them.
func (d Dimension) pinned() bool { return d.Least > 0 && d.Greatest > 0 && d.Least >= d.Greatest }
