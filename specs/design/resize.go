package design

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Resized returns the design with the given numbers of columns and rows in the
// place of its own, as if it stated them under [rack]. Columns are taken from
// the left: those of the [[column]]s first, and none of them that is too many;
// then, unless a [[column]] leaves its count open and takes what is left,
// columns as the rest of the file has them. A column that states its rows keeps
// them; of one that only describes them, row by row, the lowest are taken. What
// the file says of columns and rows left out is left out with them, and so is a
// relation that names one of their lengths.
func (d *Design) Resized(columns, rows int) *Design {
	s := resizing{old: d, columns: columns, rows: rows}
	again := *d
	again.Columns, again.Counts = nil, []Count{exactly("rack.columns", columns), exactly("rack.rows", rows)}
	s.take(&again)
	again.Lengths = slices.DeleteFunc(slices.Clone(d.Lengths), func(l Length) bool { return s.gone(l.Name) })
	again.Measured = slices.DeleteFunc(slices.Clone(d.Measured), func(m Measured) bool { return s.gone(m.Name) })
	again.Where = slices.DeleteFunc(slices.Clone(d.Where), func(w Where) bool {
		return slices.ContainsFunc(w.Terms, func(t Term) bool { return s.gone(t.Name) })
	})
	return &again
}

// OwnRows returns the lines with which every column states its rows; nil where
// the rows of some column are those of the rack.
func (d *Design) OwnRows() []Count {
	var out []Count
	for i := range d.Columns {
		c, said := d.Count(columnName(i, "rows"))
		if !said {
			return nil
		}
		out = append(out, c)
	}
	return out
}

// resizing is what becomes of the [[column]]s.
type resizing struct {
	old           *Design
	columns, rows int
	kept          []int // for each column that is kept, how many of its described rows are
}

// take gives the new design its columns and their counts.
func (s *resizing) take(again *Design) {
	left, open := s.columns, false
	for i, c := range s.described() {
		if left == 0 {
			return
		}
		count, said := s.old.Count(columnName(i, "count"))
		if !said {
			count = exactly(columnName(i, "count"), 1)
		}
		least := max(1, count.Lo)
		if count.Kind == Near {
			least = 1
		}
		if least > left {
			count, least, said = exactly(count.Name, left), left, true
		}
		if left -= least; said {
			again.Counts = append(again.Counts, count)
		}
		open = open || count.Kind != Exact
		if own, stated := s.old.Count(columnName(i, "rows")); stated {
			again.Counts = append(again.Counts, own)
		} else {
			c.Rows = c.Rows[:min(len(c.Rows), s.rows)]
		}
		again.Columns = append(again.Columns, c)
		s.kept = append(s.kept, len(c.Rows))
	}
	if left > 0 && !open && len(again.Columns) > 0 {
		again.Counts = append(again.Counts, exactly(columnName(len(again.Columns), "count"), left))
		again.Columns = append(again.Columns, Column{})
		s.kept = append(s.kept, 0)
	}
}

// described returns the columns that the file describes: without the one that
// stands for all others.
func (s *resizing) described() []Column {
	list := s.old.Columns
	all, said := s.old.Count("rack.columns")
	if n := len(list); said && n > 0 && list[n-1].Place == all.Place {
		return list[:n-1]
	}
	return list
}

// gone reports whether a length is of a column or a row that is left out.
func (s *resizing) gone(name string) bool {
	path := strings.Split(name, ".")
	if path[0] != "column" || len(path) < 3 {
		return false
	}
	column, err := strconv.Atoi(path[1])
	if err != nil {
		return false
	}
	if column > len(s.kept) {
		return true
	}
	row, err := strconv.Atoi(path[min(3, len(path)-1)])
	return path[2] == "row" && err == nil && row > s.kept[column-1]
}

// exactly is a count that no line of the file states.
func exactly(name string, n int) Count {
	return Count{Name: name, Kind: Exact, Lo: n, Hi: n, Text: fmt.Sprintf("%s = %d", name, n)}
}

// columnName names what the file says of its column i, which counts from 0.
func columnName(i int, what string) string { return "column." + strconv.Itoa(i+1) + "." + what }
