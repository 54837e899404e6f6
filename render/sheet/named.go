package sheet

import (
	"fmt"

	"slatwright/geometry/rack"
	"slatwright/render/dim"
	"slatwright/render/drawing"
)

// A coord is a coordinate in the room with how it is made of the rack's
// lengths, so that a figure between two of them can be checked.
type coord struct {
	l   length
	sum drawing.Sum
}

// coordOf adds lengths up from nought; a name after a minus is taken away.
func coordOf(r *rack.Rack, names ...string) coord { return coord{}.plus(r, names...) }

// plus adds lengths to a coordinate.
func (c coord) plus(r *rack.Rack, names ...string) coord {
	for _, n := range names {
		times := int64(1)
		if n[0] == '-' {
			n, times = n[1:], -1
		}
		c.l += length(times) * r.Len(n)
		c.sum = c.sum.Plus(times, drawing.Of(n))
	}
	return c
}

// stop is a dimension's stop at a coordinate.
func (c coord) stop(at, from drawing.Um) dim.Stop {
	return dim.Stop{At: at, Value: c.l, From: from, Sum: c.sum}
}

// kindName returns what a length of a kind of column is called.
func kindName(r *rack.Rack, kind int, what string) string {
	switch {
	case r.Kinds[kind].Name != "":
		return fmt.Sprintf("column.%d.%s", kind+1, what)
	case what == "pitch":
		return "ladder.pitch"
	}
	return "cell." + what
}

// ladderFaces are the left faces of all ladders, each on the pitches of the
// columns before it.
func ladderFaces(r *rack.Rack) []coord {
	out := []coord{{}}
	for i, col := range r.Columns {
		c := out[i].plus(r, kindName(r, col.Kind, "pitch"))
		c.l = r.Ladders[i+1].X
		out = append(out, c)
	}
	return out
}

// undersides are those of the slats of a kind of column, each on the first
// one's height and the rises below it.
func undersides(r *rack.Rack, kind int) []coord {
	c := coordOf(r, "slat.first")
	var out []coord
	for row, z := range r.Kinds[kind].Under {
		if row > 0 {
			c = c.plus(r, riseName(r, kind, row))
		}
		c.l = z
		out = append(out, c)
	}
	return out
}

// riseName returns what the rise above a row is called, rows counted from 1:
// that of the row where the file describes it, else that of all.
func riseName(r *rack.Rack, kind, row int) string {
	if own := kindName(r, kind, fmt.Sprintf("row.%d.rise", row)); r.Has(own) {
		return own
	}
	return kindName(r, kind, "rise")
}
