package design

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"time"

	"slatwright/specs/diag"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// titleDate reads the date for the title block and the waits: a text, or a TOML
// date as it stands. It is a day of the calendar, or "".
func titleDate(r *reader, path string, n *node) {
	const hint = `write year-month-day, such as "2026-05-04"`
	day := n.literal
	if n.shape != date {
		var ok bool
		if day, ok = r.says(path, n); !ok {
			return
		}
		day = strings.TrimSpace(day)
	}
	if _, err := time.Parse(time.DateOnly, day); err == nil || day == "" {
		r.d.Date = day
		return
	}
	if len(day) == len(time.DateOnly) && strings.Trim(day, "0123456789-") == "" && day[4] == '-' && day[7] == '-' {
		r.fault(n.value, hint, "there is no such day as %s", n.literal)
		return
	}
	r.fault(n.value, hint, "not a date")
}

// units reads the unit of bare figures. It comes before everything else.
func (r *reader) units(n *node) {
	if n == nil {
		return
	}
	switch s, ok := r.says("units", n); {
	case !ok || s == "in":
	case s == "mm":
		r.d.Units = unit.Metric
	default: // no guess which: "cm" is not nearer to one of them
		r.fault(n.value, `write "in" or "mm"; a figure may have another unit of its own: "61 cm", "2 ft"`, "`units` can't be %s", n.literal)
	}
}

func grid(r *reader, path string, n *node) {
	l, ok := r.exactStatement(path, n, false)
	switch {
	case !ok:
	case l.Lo > 2*unit.Inch:
		r.fault(n.value, "the grid is the finest mark the shop sets by, such as 1/16", "too coarse for a grid")
	default:
		r.d.Grid, r.d.GridStmt = l.Lo, &l
	}
}

// exactStatement is exact with the whole statement returned.
func (r *reader) exactStatement(path string, n *node, zero bool) (Length, bool) {
	if _, ok := r.exact(path, n, zero); !ok {
		return Length{}, false
	}
	return r.length(path, n, zero)
}

// site reads a measure of the room, or a list of them: the least counts.
func site(r *reader, path string, n *node) {
	if n.shape != array {
		siteExact(r, path, n)
		return
	}
	measures := SiteMeasure{Name: path}
	for _, k := range n.kids {
		if l, ok := r.exactStatement(path, k, false); ok {
			measures.Values = append(measures.Values, l)
		}
	}
	if len(n.kids) == 0 {
		r.fault(n.value, "write one measure or more", "an empty list")
	}
	if len(measures.Values) == 0 {
		return
	}
	least := slices.MinFunc(measures.Values, func(a, b Length) int { return cmp.Compare(a.Lo, b.Lo) })
	r.d.Lengths = append(r.d.Lengths, least)
	r.d.SiteMeasures = append(r.d.SiteMeasures, measures)
}

func siteExact(r *reader, path string, n *node) {
	if l, ok := r.exactStatement(path, n, false); ok {
		r.d.Lengths = append(r.d.Lengths, l)
	}
}

func siteFit(r *reader, path string, n *node) {
	if l, ok := r.exactStatement(path, n, true); ok {
		r.d.Lengths = append(r.d.Lengths, l)
	}
}

// stock reads the nominal size a part is made from; path is "leg.stock".
func stock(r *reader, path string, n *node) {
	if size, ok := r.nominal(path, n); ok {
		part := path[:len(path)-len(".stock")]
		r.d.Stocks = append(r.d.Stocks, Stock{Part: part, Nominal: size, Text: statementText(path, n), Place: n.value})
	}
}

// nominal reads the name of a nominal size.
func (r *reader) nominal(path string, n *node) (table.Nominal, bool) {
	s, ok := r.says(path, n)
	if !ok {
		return table.Nominal{}, false
	}
	size, ok := table.FindNominal(s)
	if !ok {
		var names []string
		for _, size := range table.Nominals() {
			names = append(names, size.Name)
		}
		hint := diag.DidYouMean(s, names)
		r.fault(n.value, cmp.Or(hint, "`slatwright tables lumber` lists the sizes"), "unknown lumber size %s", n.literal)
	}
	return size, ok
}

func topPresent(r *reader, path string, n *node) {
	if v, ok := r.truth(path, n); ok {
		r.d.TopPresent, r.d.TopPlace = v, n.value
	}
}

func rackFit(r *reader, path string, n *node) {
	if f, ok := r.fit(path, n); ok {
		r.d.Fit = f
	}
}

// fit reads a list of bottles, or one. The names are looked up when the whole
// file has been seen.
func (r *reader) fit(path string, n *node) (Fit, bool) {
	f := Fit{Text: statementText(path, n), Place: n.value}
	names := []*node{n}
	if n.shape == array {
		names = n.kids
	}
	if len(names) == 0 {
		r.fault(n.value, "name at least one bottle", "an empty list")
		return f, false
	}
	for _, k := range names {
		s, ok := r.says(path, k)
		if !ok {
			return f, false
		}
		f.Bottles = append(f.Bottles, BottleRef{Name: s, Place: k.value})
		r.later = append(r.later, func() { r.findBottle(s, k) })
	}
	return f, true
}

func (r *reader) findBottle(name string, n *node) {
	for _, b := range r.d.Bottles {
		if b.Name == name {
			return
		}
	}
	if _, ok := table.FindBottle(name); ok {
		return
	}
	var names []string
	for _, b := range r.d.Bottles {
		names = append(names, b.Name)
	}
	for _, b := range table.Bottles() {
		names = append(names, b.ID)
	}
	r.fault(n.value, cmp.Or(likeBottle(name, names), "`slatwright tables bottles` lists them; or measure it, under [bottle.NAME]"), "unknown bottle %s", n.literal)
}

// columns reads the [[column]]s, left to right.
func columns(r *reader, path string, n *node) {
	r.tables(path, n, func(i int, n *node) {
		own := path + "." + strconv.Itoa(i)
		r.table(n, own, "column")
		c := Column{Place: n.value, Fit: r.optionalFit(own, n)}
		if k := n.kid("count"); k != nil {
			r.count(own+".count", k, MaxColumns)
		}
		if k := n.kid("rows"); k != nil {
			r.count(own+".rows", k, MaxRows)
		}
		for _, key := range []string{"gap", "rise"} {
			if k := n.kid(key); k != nil {
				r.state(own+"."+key, k, false)
			}
		}
		if k := n.kid("row"); k != nil {
			c.Rows = r.rows(own, k)
		}
		r.d.Columns = append(r.d.Columns, c)
	})
}

// rows reads the [[column.row]]s of a column, bottom up.
func (r *reader) rows(column string, n *node) []Row {
	var rows []Row
	r.tables("column.row", n, func(i int, n *node) {
		own := column + ".row." + strconv.Itoa(i)
		r.table(n, own, "column.row")
		if k := n.kid("rise"); k != nil {
			r.state(own+".rise", k, false)
		}
		rows = append(rows, Row{Place: n.value, Fit: r.optionalFit(own, n)})
	})
	if len(rows) > MaxRows {
		r.fault(n.kids[MaxRows].value, "", "more than %d rows", MaxRows)
	}
	return rows
}

func (r *reader) optionalFit(path string, n *node) *Fit {
	k := n.kid("fit")
	if k == nil {
		return nil
	}
	if f, ok := r.fit(path+".fit", k); ok {
		return &f
	}
	return nil
}
