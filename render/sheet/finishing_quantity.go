package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"slatwright/geometry/finish"
	"slatwright/render/drawing"
	"slatwright/specs/table"
)

// finishCautions stand on the sheet of the operation.
var finishCautions = []string{
	"Dust: draw it off at the tool and wear a mask. Sparks and flames away from dust and vapour.",
	"Solvents: air the room, wear gloves, no flame and no switch that sparks, as the label says.",
	"Rags wet with oil or stain can catch fire by themselves within hours: dry them flat outdoors, or keep them in a closed metal can with water, until they are disposed of as local rules say.",
	"The label on the tin goes before this sheet: its times, coverage and cautions are those of the product at hand.",
}

// quantities returns the sheet of areas and materials: figures at the left,
// paper and cautions at the right. What has no room goes to a second sheet. Where
// the figures are from is for the desk: it stands with the checks.
func quantities(in Input) []*page {
	p := in.newPage("quantities", "Areas, quantities")
	pages := []*page{p}
	left, right := p.area, p.area
	left.Max.X = left.Min.X + left.W()/2 - 4*drawing.MM
	right.Min.X = left.Max.X + 8*drawing.MM

	w := newScribe(p.sheet, left)
	write := func(heading string, l ledger) {
		w.heading(heading)
		w.skip(drawing.MM)
		l.write(w)
		w.skip(4 * drawing.MM)
	}
	var over []said // what had no room
	say := func(s said) {
		if !s.write(w) {
			over = append(over, s)
		}
	}
	write("Areas", areaLedger(in))
	write("Materials, with what is lost", materialLedger(in))
	say(said{"Sanding", []string{sandingNote(in)}})
	w = newScribe(p.sheet, right)
	write("Sandpaper, sheets of 230 × 280 mm (9 × 11 in)", paperLedger(in))
	say(said{"Cautions", finishCautions})
	say(said{"", []string{"Where the figures are from: " + sheetRef("order") + "."}})
	if len(over) > 0 {
		p = in.newPage("quantities-2", "Areas, quantities")
		pages = append(pages, p)
		w = newScribe(p.sheet, p.area)
		for _, s := range over {
			s.write(w)
		}
	}
	return pages
}

// A said is notes under a heading, or without one.
type said struct {
	heading string
	notes   []string
}

// write writes all of it, or nothing where there is not room for all.
func (s said) write(w *scribe) bool {
	if w.room() < needed(append([]string{s.heading}, s.notes...), w.box.W(), 5*drawing.MM) {
		return false
	}
	if s.heading != "" {
		w.heading(s.heading)
	}
	for _, n := range s.notes {
		w.note(n, 5*drawing.MM)
	}
	w.skip(3 * drawing.MM)
	return true
}

// sandingNote says what sanding may take off, and where it takes nothing.
func sandingNote(in Input) string {
	text := "Sizes on all sheets are finished sizes: sand lightly, no more than takes the last scratches out. Ends that are seen a stroke or two; where parts meet, not at all: hidden ends; " +
		"slats against legs; legs under slats and aprons; aprons over legs"
	if in.Rack.HasTop() {
		text += "; the front upper apron's top edge and the strip over it"
	}
	return text + "."
}

// areaLedger lists the areas of each kind of part and of all.
func areaLedger(in Input) ledger {
	f := in.Rack.Format
	l := ledger{columns: []ledgerColumn{
		{title: "part"}, {title: "pieces", width: 16 * drawing.MM, right: true},
		{title: "all faces, " + f.System.AreaUnit(), width: 25 * drawing.MM, right: true},
		{title: "bare", width: 20 * drawing.MM, right: true}, {title: "to coat", width: 23 * drawing.MM, right: true, bold: true},
	}}
	all := finish.Areas(in.Rack)
	for _, a := range append(all, finish.Sum(all)) {
		name := "all"
		if a.Part >= 0 {
			name = in.Rack.Parts[a.Part].Mark + "  " + in.Rack.Parts[a.Part].Name
		}
		l.rows = append(l.rows, []string{name, strconv.Itoa(a.Count), f.AreaText(a.Surface), f.AreaText(a.Bare), f.AreaText(a.Coated)})
	}
	return l
}

// supplies are the materials that the rack takes any of: no glue where nothing
// is glued.
func supplies(in Input) []finish.Supply {
	return slices.DeleteFunc(finish.Supplies(in.Rack, in.Cutting.Panel()), func(s finish.Supply) bool { return s.Millilitres == 0 })
}

// materialLedger lists how much of what.
func materialLedger(in Input) ledger {
	f := in.Rack.Format
	l := ledger{columns: []ledgerColumn{
		{title: "material"}, {title: "coats", width: 13 * drawing.MM, right: true}, {title: "once, " + f.System.AreaUnit(), width: 22 * drawing.MM, right: true},
		{title: "take", width: 22 * drawing.MM, right: true, bold: true},
	}}
	for _, s := range supplies(in) {
		l.rows = append(l.rows, []string{s.Name, strconv.Itoa(s.Coats), f.AreaText(s.Area), finish.Volume(f.System, s.Millilitres)})
	}
	return l
}

// paperLedger lists sandpaper: the grits before the finish, which all go over
// the same area, on one line.
func paperLedger(in Input) ledger {
	f := in.Rack.Format
	l := ledger{columns: []ledgerColumn{
		{title: "grit"}, {title: "area each, " + f.System.AreaUnit(), width: 30 * drawing.MM, right: true}, {title: "sheets each", width: 22 * drawing.MM, right: true, bold: true},
	}}
	var first []string
	for _, s := range finish.Papers(in.Rack) {
		if !s.Between {
			first = append(first, strconv.Itoa(s.Grit))
			l.rows = [][]string{{strings.Join(first, ", "), f.AreaText(s.Area), strconv.Itoa(s.Sheets)}}
			continue
		}
		l.rows = append(l.rows, []string{fmt.Sprintf("%d between coats", s.Grit), f.AreaText(s.Area), strconv.Itoa(s.Sheets)})
	}
	return l
}

// origins says where the figures of finishing are from.
func origins(in Input) list {
	return list{"Figures of finishing", []tableColumn{
		{title: "figure", width: 40 * drawing.MM}, {title: "how much, and from where"},
	}, originRows(in)}
}

// originRows has what and a text each.
func originRows(in Input) [][]string {
	d := in.Rack.Design
	from := func(o table.Origin) string {
		switch o.Standing {
		case table.Memory:
			return "a figure from memory, verify: " + o.Source
		case table.Own:
			return "a rule of thumb: " + o.Source
		}
		return fmt.Sprintf("%s: %s", o.Standing, o.Source)
	}
	var out [][]string
	for _, s := range supplies(in) {
		out = append(out, []string{s.Name, finish.CoverageText(in.Rack.Format.System, s.Coverage) + "; " + from(s.Coverage.Origin)})
	}
	lost := table.FinishLost()
	out = append(out, []string{"lost in brush, tin, rag", fmt.Sprintf("%d %%; %s", lost.Value, from(lost.Origin))})
	if d.Finish.Stained() {
		blotches, o := table.Blotches(d.Wood.Species.ID)
		says := "takes stain evenly"
		if blotches {
			says = "takes stain unevenly unless conditioned"
		}
		out = append(out, []string{d.Wood.Species.Name, says + "; " + from(o)})
	}
	n, o := table.SandedBySheet()
	return append(out, []string{"sandpaper", fmt.Sprintf("%d sq ft to the sheet with one grit; %s", n, from(o))})
}
