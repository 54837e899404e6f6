package design

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"slatwright/specs/diag"
)

// Measured is a length of [measured]: its figure is taken from the wood, and
// parts whose length hangs on it are cut after that.
type Measured struct {
	Length      // Exact; its Name is that of the length, its Text begins with "measured."
	Later  bool // "later": not measured yet, and until then what the rest of the file makes it
}

// later is what [measured] says of a length that is still to be measured.
const later = "later"

// measurable are the lengths that can be measured at the bench before the parts
// that hang on them are cut: what the stock came out at, and what was glued.
// Overall sizes are none of them: they are sums, and a sum measured a little off
// could not be shared out among its terms exactly.
var measurable = []string{
	"leg.thickness", "leg.width", "leg.length", "slat.thickness", "slat.height", "slat.length", "slat.first",
	"apron.thickness", "apron.height", "apron.lift", "top.thickness", "cell.gap", "cell.channel", "cell.rise", "ladder.pitch",
}

// inColumn are the lengths that each [[column]] has of its own.
var inColumn = []string{"gap", "channel", "pitch", "rise"}

// measured reads the table [measured], whose keys are the names of lengths.
func measured(r *reader, path string, n *node) {
	if n.shape != tree {
		r.fault(n.value, `write [measured] and below it lengths by name, such as cell.channel = "4 1/16"`, "`%s` is a table, not %s", path, n.shape)
		return
	}
	var walk func(name string, n *node)
	walk = func(name string, n *node) {
		if n.shape == tree {
			for _, k := range n.kids {
				walk(join(name, k.key), k)
			}
			return
		}
		r.measure(name, n)
	}
	walk("", n)
}

// measure reads one length of [measured]. Whether its column is there is known
// when the whole file has been seen.
func (r *reader) measure(name string, n *node) {
	m := Measured{Later: n.shape == words && strings.TrimSpace(n.text) == later}
	text := statementText("measured."+name, n)
	if !m.Later {
		l, ok := r.length(name, n, name == "slat.first" || name == "apron.lift")
		if ok && l.Kind != Exact {
			r.fault(n.value, `write the figure, or "later" while it is to be measured`, "a measured length is one figure, not a limit or a range")
			ok = false
		}
		if !ok {
			return
		}
		m.Length = l
	}
	m.Name, m.Kind, m.Text, m.Place = name, Exact, text, n.value
	r.later = append(r.later, func() {
		known := r.d.measurableNames()
		switch {
		case !slices.Contains(known, name):
			text, hint := r.d.unmeasurable(name, known)
			r.fault(n.at, hint, "%s", text)
			if strings.HasPrefix(name, "column.") && len(r.d.Columns) == 0 {
				r.list[len(r.list)-1].Notes = columnLines(name, n.literal)
			}
		case slices.ContainsFunc(r.d.Measured, func(o Measured) bool { return o.Name == name }):
			r.fault(n.at, "leave one of them out", "`%s` is measured twice", name)
		default:
			r.d.Measured = append(r.d.Measured, m)
		}
	})
}

// measurableNames returns what can be measured on this design. Where columns
// differ, each has its own cells.
func (d *Design) measurableNames() []string {
	var names []string
	for _, name := range measurable {
		cell := strings.HasPrefix(name, "cell.") || name == "ladder.pitch"
		if cell && len(d.Columns) > 0 || name == "top.thickness" && !d.TopPresent {
			continue
		}
		names = append(names, name)
	}
	for i := range d.Columns {
		for _, what := range inColumn {
			names = append(names, "column."+strconv.Itoa(i+1)+"."+what)
		}
	}
	return names
}

// unmeasurable words the fault of a name that is none of the known.
func (d *Design) unmeasurable(name string, known []string) (text, hint string) {
	switch {
	case slices.Contains(measurable, name) && len(d.Columns) > 0:
		_, what, _ := strings.Cut(name, ".")
		return "columns differ here, and so do their cells: `" + name + "` is no one length", "name the column, such as column.1." + what
	case strings.HasPrefix(name, "column.") && len(d.Columns) == 0:
		return "unknown length `" + name + "`: this file has no [[column]]", columnsFirst(name)
	case name == "top.thickness":
		return "this rack has no top to measure", ""
	case slices.Contains(LengthNames(), name):
		return "`" + name + "` is not measured but worked out, or the room's", "measure what it hangs on: " + strings.Join(known, ", ")
	}
	return "unknown length `" + name + "`", cmp.Or(diag.DidYouMean(name, known), "measured can be "+strings.Join(known, ", "))
}

// columnsFirst says that columns measured apart are told apart in the file.
func columnsFirst(name string) string {
	_, what, _ := strings.Cut(strings.TrimPrefix(name, "column."), ".")
	if !slices.Contains(inColumn, what) {
		return "columns are numbered from the left, such as column.2.channel"
	}
	return "columns measured apart need [[column]] tables, one for each from the left; or measure " + measuredForAll[what] + ", of all columns alike"
}

// columnLines are the lines that make the length of a column measurable in a
// file that has no [[column]]; none where the columns are too many to show.
func columnLines(name, value string) []string {
	const shown = 6
	number, _, _ := strings.Cut(strings.TrimPrefix(name, "column."), ".")
	n, err := strconv.Atoi(number)
	if err != nil || n < 1 || n > shown {
		return nil
	}
	return slices.Concat(slices.Repeat([]string{"[[column]]"}, n), []string{"[measured]", name + " = " + value})
}

// measuredForAll names the length of all columns by that of one.
var measuredForAll = map[string]string{
	"gap": "cell.gap", "channel": "cell.channel", "rise": "cell.rise", "pitch": "ladder.pitch",
}
