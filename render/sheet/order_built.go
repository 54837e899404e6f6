package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"slatwright/geometry/check"
	"slatwright/geometry/inspect"
	"slatwright/render/drawing"
	"slatwright/render/typeface"
	"slatwright/specs/unit"
)

// solved lists the sizes and counts that people ask for first.
func solved(in Input) list {
	r, f := in.Rack, in.Rack.Format
	c := r.Counts
	parts := fmt.Sprintf("%d ladders: %d legs, %d slats; %d aprons", c.Ladders, c.Legs, c.Slats, c.Aprons)
	if r.HasTop() {
		parts += "; a top"
	}
	rows := [][]string{{"bottles", bottlesText(r)}, {"parts", parts}}
	add := func(words, text string) { rows = append(rows, []string{words, text}) }
	add("full width", f.Both(r.Len("rack.width")))
	add("full depth", f.Both(r.Len("rack.depth")))
	if necks(in) > 0 {
		add("with bottles", fmt.Sprintf("%s deep: %s", f.Unit(withNecks(in)), sheetRef("side")))
	}
	add("full height", f.Both(r.Len("rack.height")))
	for k, kind := range r.Kinds {
		name := inspect.Columns(r, k)
		if name == "" {
			name = "cells"
		}
		apart := "ladders every"
		if kind.Count == 1 {
			apart = "ladder to ladder"
		}
		text := fmt.Sprintf("gap %s, %s %s", f.Unit(kind.Gap), apart, f.Text(kind.Pitch))
		if len(kind.Rises) > 0 && !slices.ContainsFunc(kind.Rises, func(l length) bool { return l != kind.Rises[0] }) {
			text += ", rows every " + f.Text(kind.Rises[0])
		}
		add(name, text)
	}
	return list{"What is built", []tableColumn{{title: "", width: 20 * drawing.MM}, {title: "figure"}}, rows}
}

// necks is how far the longest bottle that the rack may hold stands out beyond
// the front aprons, its base flush with the back of the carcase; nought where
// none does.
func necks(in Input) unit.Length {
	r, out := in.Rack, unit.Length(0)
	for _, k := range r.Kinds {
		for _, fit := range k.Fit {
			for _, b := range fit {
				out = max(out, b.Height.Max-r.Len("carcase.depth"))
			}
		}
	}
	return out
}

// withNecks is the depth of the rack with its longest bottles in it.
func withNecks(in Input) unit.Length {
	r := in.Rack
	front, back := unit.Length(0), unit.Length(0)
	if r.HasTop() {
		front, back = r.Len("overhang.front"), r.Len("overhang.back")
	}
	return max(front, necks(in)) + r.Len("carcase.depth") + back
}

// placeName is a dimension with the columns that it is of.
func placeName(d inspect.Dimension) string {
	if d.Where == "" {
		return d.Name
	}
	return d.Where + ", " + d.Name
}

// partsBrief lists the parts.
func partsBrief(in Input) list {
	f := in.Rack.Format
	l := list{"Parts, " + in.wood(), []tableColumn{
		{title: "mark", width: 10 * drawing.MM}, {title: "part", width: 12 * drawing.MM}, {title: "count", width: 13 * drawing.MM, right: true},
		{title: "T × W × L, " + f.System.String()},
	}, nil}
	for _, p := range in.Rack.Parts {
		l.rows = append(l.rows, []string{p.Mark, p.Name, strconv.Itoa(p.Count), sizeText(f, p)})
	}
	for _, row := range blockRow(in) {
		l.rows = append(l.rows, row[:4])
	}
	return l
}

// indexList is the packet's index in two columns, to be read down the left one
// first.
func indexList(index []indexed) list {
	wide := 12 * drawing.MM
	for _, x := range index {
		wide = max(wide, typeface.Width(drawing.Plain(x.numbers()), drawing.TableHeight, false)+betweenCells)
	}
	l := list{"Sheets of this packet", []tableColumn{
		{title: "no.", width: wide, right: true}, {title: "sheet", width: 34 * drawing.MM},
		{title: "no.", width: wide, right: true}, {title: "sheet"},
	}, nil}
	half := (len(index) + 1) / 2
	for i, x := range index[:half] {
		row := []string{x.numbers(), x.title, "", ""}
		if half+i < len(index) {
			row[2], row[3] = index[half+i].numbers(), index[half+i].title
		}
		l.rows = append(l.rows, row)
	}
	l.rows = append(l.rows, []string{"", "Apart: templates, labels", "", ""})
	return l
}

// closely says how close sizes are held, and lists what is to be held closer than
// the shop works: lengths whose limits are nearer than its tolerance, and room that
// is gone when all sizes are off to the worse side.
func closely(in Input) list {
	f, tol := in.Rack.Format, in.Rack.Design.Shop.Tolerance
	l := list{"How close sizes are held", []tableColumn{
		{title: "what", width: 40 * drawing.MM}, {title: "how close, and why"},
	}, nil}
	l.rows = append(l.rows, []string{"every size, if not below", "±" + f.Unit(tol) + " of its figure, as the shop works"})
	for _, d := range in.dimensions() {
		if !d.Tight(tol) {
			continue
		}
		text := f.Unit(d.Drawn) + " as drawn"
		for _, x := range []struct {
			limit, off unit.Length
			word, by   string
		}{{d.Least, d.Drawn - d.Least, "no less than", d.LeastBy}, {d.Greatest, d.Greatest - d.Drawn, "no more than", d.GreatestBy}} {
			if x.limit > 0 && x.off < tol {
				text += fmt.Sprintf("; %s %s: %s", x.word, f.Unit(x.limit), plainly(x.by))
			}
		}
		l.rows = append(l.rows, []string{placeName(d), text})
	}
	var short []string
	for _, x := range in.Findings {
		if x.Name == "shop.tolerance" && strings.Contains(x.Says, "too little") && x.Status != check.Fail && !slices.Contains(short, x.Where) {
			short = append(short, x.Where)
		}
	}
	if len(short) > 0 {
		text := "gone where every size is off to the worse side, unlikely as that is: see the check, " + plainly("shop.tolerance")
		if short[0] != "" {
			text = strings.Join(short, ", ") + ": " + text
		}
		l.rows = append(l.rows, []string{"room round the bottles", text})
	}
	return l
}
