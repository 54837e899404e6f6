package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"slatwright/geometry/assembly"
	"slatwright/geometry/inspect"
	"slatwright/geometry/saw"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
	"slatwright/specs/word"
)

// hardwareSheets list what holds the rack together, and what the shop makes
// itself.
func hardwareSheets(in Input) []*page {
	f := flow{in: in, name: "hardware", title: "Hardware, shop aids"}
	f.block("to have at hand", hardwareLedger(in))
	found := aidsFound(in)
	f.block("tools", toolLedger(in))
	f.block("made in the shop", aidLedger(in, found))
	if about := aidNotes(in, found); f.fits(about...) {
		f.notes(about...)
	} else {
		f.anywhere(about...)
	}
	f.anywhere(assembly.NailNote(in.Rack), "Liquids and sandpaper by amount: "+sheetRef("quantities")+". Boards: "+sheetRef("cutting")+".")
	return f.pages
}

// toolLedger lists the tools, and where the clamps are listed if there are any.
func toolLedger(in Input) ledger {
	l := ledger{columns: []ledgerColumn{{title: "what", width: 108 * drawing.MM, bold: true}, {title: "for"}}}
	for _, t := range assembly.Tools(in.Rack, in.Cutting.Panel()) {
		l.rows = append(l.rows, []string{t.What, t.For})
	}
	if len(assembly.Sets(in.Rack, in.Cutting.Panel())) > 0 {
		l.rows = append(l.rows, []string{"clamps", sheetRef("clamps")})
	}
	return l
}

// hardwareLedger lists what is to be had at hand.
func hardwareLedger(in Input) ledger {
	l := ledger{columns: []ledgerColumn{
		{title: "what", width: 98 * drawing.MM, bold: true}, {title: "for"},
		{title: "the rack takes", width: 34 * drawing.MM, right: true, bold: true}, {title: "spare", width: 15 * drawing.MM, right: true},
	}}
	for _, i := range assembly.Hardware(in.Rack, in.Cutting.Panel()) {
		count, more := i.Amount, ""
		if i.Count > 0 {
			count = strconv.Itoa(i.Count)
		}
		if i.Spare > 0 {
			more = strconv.Itoa(i.Spare)
		}
		l.rows = append(l.rows, []string{i.What, i.For, count, more})
	}
	if steps := stepsOf(in); assembly.Number(steps, assembly.StepPack) != "" {
		l.rows = append(l.rows, []string{"carton, padding, soft paper", "packing: step " + assembly.Number(steps, assembly.StepPack), "1", ""})
	}
	return l
}

// An aidFound is something the shop makes itself, and what it is cut from; that
// is nothing for what is of sheet stock.
type aidFound struct {
	assembly.Aid
	saw.Found
}

// aidsFound finds for every aid the ends of boards that it is cut from. A plan of
// several orders leaves its ends to all of them, and so to none.
func aidsFound(in Input) []aidFound {
	plan := in.Cutting
	if plan != nil && len(plan.Orders) > 1 {
		plan = nil
	}
	var out []aidFound
	var small []saw.Small
	for _, a := range assembly.Aids(in.Rack, in.Cutting.Panel()) {
		out = append(out, aidFound{Aid: a})
		if !a.Sheet {
			small = append(small, saw.Small{Thick: a.Thick, Wide: a.Wide, Long: a.Long, Count: a.Count, Together: a.Together})
		}
	}
	found := plan.FromEnds(small, in.Rack.Design.Shop.Kerf)
	for i := range out {
		if !out[i].Sheet {
			out[i].Found, found = found[0], found[1:]
		}
	}
	return out
}

// source says what an aid is cut from.
func (a aidFound) source() string {
	if a.Sheet {
		return "sheet stock"
	}
	var all []string
	switch len(a.Boards) {
	case 0:
	case 1:
		all = []string{"the end of " + saw.Named(a.Boards)}
	default:
		all = []string{"ends of " + saw.Named(a.Boards)}
	}
	switch {
	case a.Lack == 0:
	case len(all) > 0:
		all = append(all, fmt.Sprintf("%d of a bought piece", a.Lack))
	default:
		all = []string{"a bought piece"}
	}
	return strings.Join(all, "; ")
}

// aidLedger lists what the shop makes itself, and before which step.
func aidLedger(in Input, found []aidFound) ledger {
	steps := stepsOf(in)
	l := ledger{columns: []ledgerColumn{
		{title: "what", width: 26 * drawing.MM, bold: true}, {title: "how many", width: 18 * drawing.MM, right: true, bold: true},
		{title: "thick × wide × along the grain", width: 49 * drawing.MM, bold: true}, {title: "cut from", width: 44 * drawing.MM},
		{title: "for"}, {title: "made before", width: 20 * drawing.MM},
	}}
	for _, a := range found {
		step := slices.IndexFunc(steps, func(s assembly.Step) bool { return s.Name == a.By })
		why := a.For
		if a.Name == "spacer" {
			why += ", see " + sheetRef("carcase")
		}
		l.rows = append(l.rows, []string{a.Name, strconv.Itoa(a.Count), a.Size(in.Rack.Format), a.source(), why, stepName(step)})
	}
	if n := len(inspect.Gauges(in.dimensions())); n > 0 {
		step := slices.IndexFunc(steps, func(s assembly.Step) bool { return s.Name == assembly.StepGauges })
		l.rows = append(l.rows, []string{"gauge", strconv.Itoa(n), sheetRef("gauges"), "stiff waste", "gaps between slats", stepName(step)})
	}
	return l
}

// aidNotes say what ends are, and what is bought for the aids.
func aidNotes(in Input, found []aidFound) []string {
	var out []string
	if slices.ContainsFunc(found, func(a aidFound) bool { return len(a.Boards) > 0 }) {
		out = append(out, "Ends: what the boards ("+sheetRef("cutting")+") leave beside and behind the parts: keep them.")
	}
	if text := bought(in, found); text != "" {
		out = append(out, text)
	}
	return append(out, sheetStock(in, found))
}

// bought says which pieces are bought for aids, those of one section as one length
// that can still be held at its last cut; "" where the boards' ends serve. The
// cutting sheets and the sheet of shop aids print these words.
func bought(in Input, found []aidFound) string {
	f := in.Rack.Format
	type piece struct {
		thick, wide, long length
		names             []string
	}
	var all []piece
	for _, a := range found {
		if a.Buy == 0 {
			continue
		}
		i := slices.IndexFunc(all, func(p piece) bool { return p.thick == a.Thick && p.wide == a.Wide })
		if i < 0 {
			i, all = len(all), append(all, piece{thick: a.Thick, wide: a.Wide})
		}
		all[i].long += a.Buy
		if name := kindOf(a); !slices.Contains(all[i].names, name) {
			all[i].names = append(all[i].names, name)
		}
	}
	var list []string
	for _, p := range all {
		list = append(list, fmt.Sprintf("%s × %s × %s for the %s", f.Text(p.thick), f.Text(p.wide), f.Unit(roundly(in, saw.Bought(p.long, in.Rack.Design.Shop.EndTrim))), word.List(p.names)))
	}
	if len(list) == 0 {
		return ""
	}
	return fmt.Sprintf("To buy besides the boards: %s, or a wider piece to rip it from. The last %s of each piece are not cut: they hold it at the last cut.",
		strings.Join(list, "; "), f.Unit(saw.Held().Down(roundStep(in))))
}

// roundly is a length to ask for in a shop, no less than that given.
func roundly(in Input, l length) length { return l.Up(roundStep(in)) }

// roundStep is what such lengths are whole in.
func roundStep(in Input) length {
	if in.Rack.Design.Units == unit.Metric {
		return 10 * unit.Millimetre
	}
	return unit.Inch
}

// sheetStock says how much sheet stock the aids take, a fifth more than their own
// faces (common practice, no source).
func sheetStock(in Input, found []aidFound) string {
	var faces unit.Area
	longest := length(0)
	for _, a := range found {
		if a.Sheet {
			faces = faces.Plus(unit.Rectangle(a.Wide, a.Long).Times(a.Count))
			longest = max(longest, a.Long)
		}
	}
	f := in.Rack.Format
	return fmt.Sprintf("Sheet stock: %s thick, %s and a fifth more for waste, the longest piece %s.", f.Unit(assembly.Caul(in.Rack)), f.Area(faces), f.Unit(longest))
}

// besidesPlan says on the cutting sheet what its list of boards leaves out; ""
// where that is nothing but sheet stock.
func besidesPlan(in Input) string {
	found := aidsFound(in)
	var names []string
	for _, a := range found {
		if name := kindOf(a); !a.Sheet && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	if len(names) == 0 {
		return ""
	}
	text := word.Capital(word.List(names)) + " are no parts of this plan: "
	switch b := bought(in, found); {
	case len(in.Cutting.Orders) > 1:
		return text + "see the sheets of each order."
	case !slices.ContainsFunc(found, func(a aidFound) bool { return len(a.Boards) > 0 }):
		return text + "see " + sheetRef("hardware") + ". " + b
	default:
		from := "they come from the ends of these boards"
		if b != "" {
			from += " and from pieces that are bought, which the cost leaves out"
		}
		return strings.TrimSpace(text + from + ", see " + sheetRef("hardware") + ". " + b)
	}
}

// blockMark returns the mark of blocks, which stay in the rack as parts do; not ok
// for other aids.
func blockMark(a aidFound) (mark string, ok bool) {
	return strings.CutPrefix(a.Name, "block ")
}

// kindOf names aids of a kind, "blocks"; the pieces of the jig make up one.
func kindOf(a aidFound) string {
	name, _, _ := strings.Cut(a.Name, " ")
	if name == "jig" {
		return name
	}
	return name + "s"
}
