package design

import (
	"strconv"
	"strings"

	"slatwright/specs/diag"
)

// Said is one key of a design file with its value, whatever it is about.
type Said struct {
	Name  string // dotted; tables of a list are numbered from 1: "column.2.gap"
	Value string // as written, on one line, comments left out
	Place diag.Place
}

// Said returns every key of the file that has a value, in the order of the
// file. A list is one value. The design must have been read without faults.
func (d *Design) Said() []Said {
	root, err := grow(d.Source)
	if err != nil {
		panic("design: " + err.Error()) // Read has grown the same tree
	}
	var out []Said
	var walk func(path string, n *node)
	walk = func(path string, n *node) {
		switch {
		case n.shape == tree:
			for _, k := range n.kids {
				walk(join(path, k.key), k)
			}
		case isTables(n):
			for i, k := range n.kids {
				walk(path+"."+strconv.Itoa(i+1), k)
			}
		default:
			out = append(out, Said{Name: path, Value: plainValue(n), Place: n.value})
		}
	}
	walk("", root)
	return out
}

// isTables reports whether a value is a list of tables.
func isTables(n *node) bool {
	return n.shape == array && len(n.kids) > 0 && n.kids[0].shape == tree
}

// plainValue returns a value on one line.
func plainValue(n *node) string {
	if n.shape != array {
		return strings.Join(strings.Fields(n.literal), " ")
	}
	var list []string
	for _, k := range n.kids {
		list = append(list, plainValue(k))
	}
	return "[" + strings.Join(list, ", ") + "]"
}
