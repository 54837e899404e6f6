package rack

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/specs/design"
	"slatwright/specs/unit"
)

// Measured is a length that is measured at the bench.
type Measured struct {
	Name     string
	Line     int
	Later    bool        // still to be measured: Value is Designed
	Value    unit.Length // as it is
	Designed unit.Length // as the file makes it without measuring
	Aside    []LineText  // the statements that the measured figure takes the place of
}

// buildMeasured solves a design with measured lengths: first as it was drawn
// before anything was measured, then again with each measured figure in the
// place of what was stated, and with all that can no longer change held where
// it was. A length that is still to be measured takes part with the value it
// has so far, so that what hangs on it is known beforehand.
//
// What can no longer change: the counts; and, where a length of the glued work
// was measured (a cell, a pitch, a rise, a length) and not only the stock, every
// section, height and length that went into it. Where only the stock was
// measured nothing is cut yet; then what is meant to be solved stays as near
// to what it was as the rest allows.
func buildMeasured(d *design.Design) (*Rack, error) {
	// What is still to be measured is taken from a rack of what was measured.
	drawn := *d
	drawn.Measured = slices.DeleteFunc(slices.Clone(d.Measured), func(m design.Measured) bool { return m.Later })
	if len(drawn.Measured) == len(d.Measured) {
		drawn.Measured = nil
	}
	before, err := Build(&drawn)
	if err != nil {
		return nil, err
	}
	h := holder{before: before, d: d, at: d.Measured[0].Length}
	again := h.design()
	r, err := buildOn(again, &bench{d, before, isGlued(d)})
	if err != nil {
		return nil, err
	}
	for i := range r.Parts {
		r.Parts[i].After = r.hangsOn(r.Parts[i])
	}
	for i, m := range h.measured {
		for _, known := range before.Measured {
			if known.Name == m.Name {
				h.measured[i].Designed, h.measured[i].Aside = known.Designed, known.Aside
			}
		}
	}
	r.Design, r.Measured = d, h.measured
	r.recall(before)
	if r.waits() {
		// A length that is still to be measured moves nothing: what would put the
		// rack right is what would have done so without it.
		r.Remedies = before.Remedies
	}
	return r, nil
}

// hangsOn lists the measured lengths that a part's length, or a
// top's width, follows from by the proof of the second solution.
func (r *Rack) hangsOn(p Part) []string {
	seen := map[string]bool{}
	var follow func(name string)
	follow = func(name string) {
		if l, ok := r.Find(name); ok && !seen[name] {
			seen[name] = true
			for _, need := range l.Needs {
				follow(need)
			}
		}
	}
	follow(p.Name + ".length")
	if p.Name == "top" {
		follow("top.width")
	}
	var out []string
	for _, m := range r.Design.Measured {
		if seen[m.Name] && m.Name != p.Name+".length" {
			out = append(out, m.Name)
		}
	}
	return out
}

// Awaits lists the lengths that are still to be measured before a part is cut,
// in the order of the file; nil where its size is the one to cut to.
func (r *Rack) Awaits(p Part) []string {
	var out []string
	for _, m := range r.Measured {
		if m.Later && slices.Contains(p.After, m.Name) {
			out = append(out, m.Name)
		}
	}
	return out
}

// Waits reports whether a part's size hangs on a length that is still to be
// measured, so that it is not to be cut yet.
func (r *Rack) Waits(p Part) bool { return len(r.Awaits(p)) > 0 }

// waits reports whether anything is still to be measured.
func (r *Rack) waits() bool {
	return slices.ContainsFunc(r.Measured, func(m Measured) bool { return m.Later })
}

// recall gives lengths that measuring did not change the proof they had before.
func (r *Rack) recall(before *Rack) {
	for i, l := range r.Lengths {
		figure := slices.ContainsFunc(r.Measured, func(m Measured) bool { return m.Name == l.Name && !m.Later })
		if was, ok := before.Find(l.Name); ok && was.Value == l.Value && !figure {
			r.Lengths[i] = was
		}
	}
}

// holder makes the design of the second solution.
type holder struct {
	before   *Rack
	d        *design.Design
	at       design.Length // a measured one, whose line stands for what is held
	out      design.Design
	measured []Measured
}

// design returns the design with its measured lengths as statements, the
// statements they take the place of left out, and the rest held.
func (h *holder) design() *design.Design {
	h.out = *h.d
	h.out.Lengths, h.out.Counts = nil, nil
	for _, m := range h.d.Measured {
		designed := h.before.Len(m.Name)
		if m.Later {
			m.Lo, m.Hi = designed, designed
		}
		h.out.Lengths = append(h.out.Lengths, m.Length)
		h.measured = append(h.measured, Measured{Name: m.Name, Line: m.Place.Line, Later: m.Later, Value: m.Lo, Designed: designed})
	}
	glued := slices.ContainsFunc(h.d.Measured, func(m design.Measured) bool { return !isSection(m.Name) })
	for _, l := range h.d.Lengths {
		if !h.setAside(l) {
			h.out.Lengths = append(h.out.Lengths, l)
		}
	}
	for _, l := range h.before.Lengths {
		switch {
		case h.isMeasured(l.Name), h.cellMeasured(l.Name) && isCellWidth(l.Name):
			// It is measured, or follows from what is.
		case glued && (isSection(l.Name) || isSolved(l.Name)):
			h.hold(l.Name, design.Exact)
		case isSolved(l.Name):
			h.hold(l.Name, design.Near)
		}
	}
	h.holdCounts()
	return &h.out
}

// isSection reports whether a length is one of the stock's.
func isSection(name string) bool {
	part, size, _ := strings.Cut(name, ".")
	switch part {
	case "leg", "slat", "apron", "top":
		return size == "thickness" || size == "height" || size == "width" && part != "top"
	}
	return false
}

// isSolved reports whether a length is one that is meant to be solved and then
// set at the bench; the others are sums, or what is cut last.
func isSolved(name string) bool {
	switch name {
	case "slat.first", "slat.length", "leg.length", "cell.gap", "cell.rise", "apron.lift":
		return true
	}
	return strings.HasPrefix(name, "column.") && (strings.HasSuffix(name, ".gap") || strings.HasSuffix(name, ".rise"))
}

// isCellWidth reports whether a length is a gap, a channel or a pitch: one of
// them settles the other two once slats and legs are there.
func isCellWidth(name string) bool {
	last := name[strings.LastIndexByte(name, '.')+1:]
	return last == "gap" || last == "channel" || last == "pitch"
}

// column returns what the cell widths of a column have in common: "column.2",
// "" where all columns are alike.
func column(name string) string {
	if !strings.HasPrefix(name, "column.") {
		return ""
	}
	return name[:strings.LastIndexByte(name, '.')]
}

func (h *holder) isMeasured(name string) bool {
	return slices.ContainsFunc(h.d.Measured, func(m design.Measured) bool { return m.Name == name })
}

// cellMeasured reports whether a cell width of the same column is measured.
func (h *holder) cellMeasured(name string) bool {
	return slices.ContainsFunc(h.d.Measured, func(m design.Measured) bool { return isCellWidth(m.Name) && column(m.Name) == column(name) })
}

// setAside reports whether a measured figure takes the place of a statement,
// and notes it there: a statement about the same length, or about another width
// of the same cells; where columns differ, also one about the cells of all.
func (h *holder) setAside(l design.Length) bool {
	for i, m := range h.measured {
		if m.Name == l.Name || isCellWidth(l.Name) && isCellWidth(m.Name) && (column(l.Name) == "" || column(l.Name) == column(m.Name)) {
			h.measured[i].Aside = append(m.Aside, LineText{l.Place.Line, l.Text})
			return true
		}
	}
	return false
}

// hold keeps a length at the value it had, or near to it. What is stated
// exactly, or was wished, holds by itself.
func (h *holder) hold(name string, kind design.Kind) {
	was := h.before.Len(name)
	held := design.Length{
		Name: name, Kind: kind, Lo: was, Hi: was, Unit: h.d.Units, Place: h.at.Place,
		Text: fmt.Sprintf("%s = %s"+asBefore, name, h.before.Format.Unit(was)),
	}
	for i, l := range h.out.Lengths {
		switch {
		case l.Name != name:
			continue
		case l.Kind == design.Exact, kind == design.Near && l.Kind == design.Near:
			return
		case kind == design.Exact:
			held.Place = l.Place
			h.out.Lengths[i] = held
			return
		}
	}
	h.out.Lengths = append(h.out.Lengths, held)
}

// asBefore ends the text of a statement that no line of the file makes.
const asBefore = ", as before measuring"

// holdCounts keeps every count as it was: what is glued has its columns.
func (h *holder) holdCounts() {
	add := func(name string, n int) {
		c := design.Count{Name: name, Kind: design.Exact, Lo: n, Hi: n, Place: h.at.Place, Text: fmt.Sprintf("%s = %d"+asBefore, name, n)}
		if said, ok := h.d.Count(name); ok {
			c.Place = said.Place
			if said.Kind == design.Exact {
				c = said
			}
		}
		h.out.Counts = append(h.out.Counts, c)
	}
	if len(h.d.Columns) == 0 {
		add("rack.columns", h.before.Counts.Columns)
		add("rack.rows", h.before.Counts.Rows)
		return
	}
	for i, k := range h.before.Kinds {
		add(fmt.Sprintf("column.%d.count", i+1), k.Count)
		add(fmt.Sprintf("column.%d.rows", i+1), k.Rows)
	}
}

// offGrid reports whether a length of a design with measured ones need not land
// on the grid, since exact figures about it and about what was measured leave
// it no choice: the gap takes up what a pitch leaves, an overhang what a width.
func offGrid(d *design.Design, name string) bool {
	if len(d.Measured) == 0 {
		return false
	}
	exact := func(names ...string) bool {
		return slices.ContainsFunc(d.Lengths, func(l design.Length) bool { return l.Kind == design.Exact && slices.Contains(names, l.Name) })
	}
	switch name {
	case "overhang.side":
		return exact("rack.width", "top.length")
	case "overhang.front", "overhang.back":
		return exact("rack.depth", "top.width")
	case "slat.length":
		return exact("rack.depth", "carcase.depth", "top.width")
	case "leg.length":
		return exact("rack.height", "carcase.height")
	}
	if !strings.HasSuffix(name, ".gap") {
		return false
	}
	own := strings.TrimSuffix(name, "gap")
	return exact(own+"channel", own+"pitch", "cell.channel", "ladder.pitch", "carcase.width", "apron.length", "rack.width", "top.length")
}
