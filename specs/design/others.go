package design

import (
	"slices"
	"strconv"
)

// describeOthers adds one more kind of column where the file asks for more
// columns than its [[column]]s are: what they say overrides the first columns,
// and the others are as the rest of the file has them.
func (d *Design) describeOthers() {
	all, said := d.Count("rack.columns")
	if len(d.Columns) == 0 || !said {
		return
	}
	described := 0
	for i := range d.Columns {
		c, said := d.Count("column." + strconv.Itoa(i+1) + ".count")
		switch {
		case !said:
			described++
		case c.Kind != Exact:
			return // a column with an open count takes what is left
		default:
			described += c.Lo
		}
	}
	most := all.Hi
	if all.Kind == Most || all.Kind == AtLeast {
		most = MaxColumns
	}
	if most <= described {
		return
	}
	d.Columns = append(d.Columns, Column{Place: all.Place})
	rest := Count{Name: "column." + strconv.Itoa(len(d.Columns)) + ".count", Kind: Most, Text: all.Text, Place: all.Place}
	at := slices.IndexFunc(d.Counts, func(c Count) bool { return c.Name == all.Name })
	d.Counts = slices.Insert(d.Counts, at+1, rest)
}
