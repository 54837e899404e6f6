package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"slatwright/geometry/assembly"
	"slatwright/geometry/check"
	"slatwright/geometry/inspect"
	"slatwright/geometry/quote"
	"slatwright/geometry/wood"
	"slatwright/render/drawing"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// assemblyCautions stand on the sheet of the operation; what is said of an
// anchor is what stand.anchor asks for.
func assemblyCautions(in Input) []string {
	loaded := "The full rack is heavy: two people lift. "
	if n, _ := check.Anchors(in.Rack); n > 0 {
		loaded = "The full rack is heavy and can tip: two people lift, licensed people anchor it where local codes ask for them. "
	}
	out := []string{"Nails: eyes protected, hands out of the nail's way; a nailer as its maker says."}
	if assembly.Glued(in.Rack) {
		out = append(out, "Glue: gloves, and the label's word on time, cold and skin. Clamps pinch: tighten by turns, a caul under each jaw.")
	}
	return append(out, loaded+assembly.Anchoring(in.Rack))
}

// assemblySheets returns the order of work with its waits, what to have at hand,
// how the top is fitted, and the clamps and diagonals.
func assemblySheets(in Input) []*page {
	return slices.Concat(orderOfWork(in), hardwareSheets(in), jigSheets(in), topSheets(in), clampSheets(in))
}

// orderOfWork lists the steps. Waits are what the labels give from and to; a
// step can begin no sooner than the longest chain of waits before it.
func orderOfWork(in Input) []*page {
	steps := stepsOf(in)
	soon, late := assembly.Plan(steps, false), assembly.Plan(steps, true)
	l := ledger{columns: []ledgerColumn{
		{title: "step", width: 15 * drawing.MM, bold: true}, {title: "what", width: 28 * drawing.MM, bold: true}, {title: "how"},
		{title: "after step", width: 17 * drawing.MM}, {title: "soonest", width: 22 * drawing.MM}, {title: "then wait", width: 24 * drawing.MM},
	}}
	for i, s := range steps {
		l.rows = append(l.rows, []string{stepName(i), s.Name, s.Text, afterText(s.After), beginText(soon.Begin[i]), waitText(s.Wait)})
	}
	notes := readyTexts(in, soon, late)
	if chain := chainText(steps, late); chain != "" {
		notes = append(notes, chain)
	}
	if in.Cutting == nil && in.Rack.HasTop() {
		notes = append(notes, "No cutting plan stands behind this: where the top is glued up, its clamping and curing come on top.")
	}
	blocks := []noteBlock{{"Cautions", assemblyCautions(in)}, {"Waits", notes}}
	for back := 0; ; back++ { // the last steps go with notes that would else stand alone
		if pages, alone := workPages(in, l, blocks, back); !alone || back == mostBack {
			return pages
		}
	}
}

// mostBack is how many steps are held back at most for a sheet of notes.
const mostBack = 3

// workPages writes the steps, so many of the last on a sheet of their own, and blocks
// of notes where there is room; alone says that some have a sheet to themselves.
func workPages(in Input, l ledger, blocks []noteBlock, back int) (pages []*page, alone bool) {
	var written []*scribe // of every page
	start := func(n int) (*page, *scribe) {
		p := in.newPage(fmt.Sprintf("work-%d", n+1), "Order of work")
		w := newScribe(p.sheet, p.area)
		if n == 0 {
			w.note(numbersText(in), 5*drawing.MM)
			w.skip(2 * drawing.MM)
		}
		written = append(written, w)
		return p, w
	}
	back = min(back, len(l.rows)-1)
	last := l
	l.rows, last.rows = l.rows[:len(l.rows)-back], l.rows[len(l.rows)-back:]
	pages, _ = l.paged(start)
	if back > 0 {
		p, w := start(len(pages))
		pages = append(pages, p)
		last.write(w)
	}
	write := func(heading string, list ...string) bool {
		w := lastWithRoom(written, blockHigh(list, written[0].box.W()))
		if w != nil {
			w.skip(blockApart)
			w.heading(heading)
			for _, n := range list {
				w.note(n, 5*drawing.MM)
			}
		}
		return w != nil
	}
	for _, b := range blocks {
		if write(b.heading, b.list...) {
			continue
		}
		for _, n := range b.list { // apart, where no page has room for all
			if !write(b.heading, n) {
				p, _ := start(len(pages))
				pages, alone = append(pages, p), true
				write(b.heading, n)
			}
		}
	}
	return pages, alone
}

// A noteBlock is notes under a heading.
type noteBlock struct {
	heading string
	list    []string
}

// blockApart is over a block of notes under a table.
const blockApart = 4 * drawing.MM

// blockHigh is what a block of notes takes, with its heading.
func blockHigh(list []string, width drawing.Um) drawing.Um {
	return blockApart + flowHeading + needed(list, width, 5*drawing.MM)
}

// lastWithRoom is the last page that has so much room; nil where none has.
func lastWithRoom(all []*scribe, high drawing.Um) *scribe {
	for _, w := range slices.Backward(all) {
		if w.room() >= high {
			return w
		}
	}
	return nil
}

// numbersText says before the first step how to read the numbers.
func numbersText(in Input) string {
	beside := ""
	if in.Rack.HasTop() {
		beside = ", so the top and the other parts go on side by side"
	}
	return "W1, W2, ... are the steps of this order of work; S1, S2, ... those at the saw. Numbers are no timetable: a step begins when those in \"after step\" are over" + beside + ". \"Soonest\" counts the waits alone, rounded up, not the work."
}

// stepsOf are the steps of the order of work, with the numbers of sheets left to
// be filled in.
func stepsOf(in Input) []assembly.Step {
	job := assembly.Job{
		Rack: in.Rack, Top: in.Cutting.Panel(), Sawn: in.Cutting != nil, Sent: quote.Weighed(in.Rack).Sent(),
		Numbers: func(s assembly.Sheet) string { return sheetRef(string(s)) },
	}
	for _, g := range inspect.Gauges(in.dimensions()) {
		job.Gauges = append(job.Gauges, assembly.Gauge{Upright: g.Name == inspect.UprightGap, Where: g.Where, Tight: snug(g)})
	}
	return job.Steps()
}

// stepName is what a step, counted from 0, is called: apart from the steps of the
// cutting sheets.
func stepName(i int) string { return assembly.StepName(i) }

// afterText lists the steps that must be over.
func afterText(after []int) string {
	if len(after) == 0 {
		return "saw"
	}
	var all []string
	for _, k := range after {
		all = append(all, stepName(k))
	}
	return strings.Join(all, ", ")
}

// waitText prints a wait, nothing where there is none.
func waitText(s assembly.Span) string {
	if s.Greatest == 0 {
		return ""
	}
	return table.HoursRange(s.Least, s.Greatest)
}

// beginText prints when a step can begin: to the minute on the first two days, else
// rounded up to the hour.
func beginText(d time.Duration) string {
	switch {
	case d == 0:
		return "at once"
	case d >= 48*time.Hour:
		d = (d + time.Hour - 1).Truncate(time.Hour)
	}
	return table.Hours(d)
}

// dayText prints a day such as 2031-03-04 as people at the bench do, 4 March 2031,
// whatever the country.
func dayText(day string) string {
	t, err := time.Parse(time.DateOnly, day)
	if err != nil {
		return day
	}
	return t.Format("2 January 2006")
}

// readyTexts say how long all waits together are, what day that makes, and when
// the finish is hard.
func readyTexts(in Input, soon, late assembly.Schedule) []string {
	date := in.Rack.Design.Date
	text := "Waits alone: " + beginText(soon.Ready) + " to " + beginText(late.Ready) + "; the work itself, and nights when nobody goes on, come on top."
	first, ok := assembly.Day(date, soon.Ready)
	if !ok {
		return []string{text}
	}
	text += fmt.Sprintf(" Begun on %s it is ready on %s at the earliest", dayText(date[:len(first)]), dayText(first))
	if last, _ := assembly.Day(date, late.Ready); last != first {
		text += ", and with the longer waits on " + dayText(last)
	}
	out := []string{text + ": waits alone, rounded up to whole days."}
	if f := in.Rack.Design.Finish; f.Coats > 0 {
		hard, _ := assembly.Day(date, soon.Ready-f.Coat.Handle.Value+f.Coat.Cure.Value)
		out = append(out, fmt.Sprintf("Its finish is hard %s after the last coat, so on %s or later: until then nothing heavy or damp is left standing on the top; bottles may lie on the slats.", table.Hours(f.Coat.Cure.Value), dayText(hard)))
	}
	return out
}

// chainText names the steps whose waits decide.
func chainText(steps []assembly.Step, s assembly.Schedule) string {
	var all []string
	for _, i := range s.Chain {
		if steps[i].Wait.Greatest > 0 {
			all = append(all, stepName(i))
		}
	}
	if len(all) < 2 {
		return ""
	}
	return "The waits after steps " + strings.Join(all, ", ") + " decide; every other one runs beside them."
}

// clampNotes say how to clamp, with the figures of the glue and the wood.
func clampNotes(in Input) []string {
	const square = "Equal diagonals are square: where one is longer, press its corners together before "
	sets := assembly.Sets(in.Rack, in.Cutting.Panel())
	if !assembly.Glued(in.Rack) {
		return []string{square + "the last nails are driven."}
	}
	notes := append(glueNotes(in), ownText(in, sets))
	if !in.Rack.Design.Joint.Glue {
		return append(notes, "Only the top is glued. "+square+"the last nails are driven.")
	}
	return append(notes, fmt.Sprintf("Slats count from the foot. Ladder clamps reach in %s from the board's edge, past the fence to the middle of a leg. Nails first, heads set; then the caul, clamps on it. %sthe glue sets.",
		in.Rack.Format.Unit(assembly.Caul(in.Rack)+in.Rack.Len("leg.width")/2), square))
}

// ownText says how many clamps serve all sets.
func ownText(in Input, sets []assembly.Clamps) string {
	f := in.Rack.Format
	var all []string
	sum := 0
	for _, o := range assembly.Own(sets) {
		all = append(all, fmt.Sprintf("%d that open to %s at least", o.Count, f.Unit(o.Opening)))
		sum += o.Count
	}
	return fmt.Sprintf("Clamps to own: %d (%s). Sets serve one after the other; openings count %s under each jaw for caul or board. What each presses with is for the choice of clamps: nobody measures it.", sum, strings.Join(all, ", "), f.Unit(assembly.Caul(in.Rack)))
}

// moistureText prints a moisture of wood in percent, to a tenth.
func moistureText(v float64) string { return strings.TrimSuffix(fmt.Sprintf("%.1f", v), ".0") }

// glueNotes give the figures of the glue and the pressure for the wood.
func glueNotes(in Input) []string {
	d := in.Rack.Design
	g := d.Finish.Glue
	p := table.PressureFor(d.Wood.Species.Gravity.Value)
	pressure := fmt.Sprintf("%d to %d psi", p.Least, p.Greatest)
	cold := fmt.Sprintf("%d °F", g.Coldest)
	if in.Rack.Format.System == unit.Metric {
		pressure = fmt.Sprintf("%.1f to %.1f MPa", unit.PSI*float64(p.Least), unit.PSI*float64(p.Greatest))
		cold = fmt.Sprintf("%d °C", (g.Coldest-32)*5/9)
	}
	noted := ""
	if g.Note != "" {
		noted = " (" + g.Note + ")"
	}
	air := wood.AirOf(d.Wood)
	return []string{
		fmt.Sprintf("Glue: %s%s, on one face. Close a joint within %s of spreading: one slat or one apron at a time, all of it bored before; its nails hold it until the clamps go on, when the order of work says. Keep it clamped %s, no load for %s, not colder than %s.",
			g.Name, noted, g.Open, g.Clamp, table.Hours(g.Cure.Value), cold),
		fmt.Sprintf("Pressure for %s: %s (%s). Glue at the moisture the wood will have in its room, %s to %s %% over the year. Nails hold a joint too, but do not close it: use the clamps of the table.",
			d.Wood.Species.Name, pressure, p.Origin.Standing, moistureText(air.Dry), moistureText(air.Moist)),
	}
}

// clampLedger lists the sets of clamps.
func clampLedger(in Input) ledger {
	f := in.Rack.Format
	l := ledger{columns: []ledgerColumn{
		{title: "clamps for", width: 45 * drawing.MM, bold: true}, {title: "at a time", width: 17 * drawing.MM, right: true, bold: true}, {title: "glue-ups", width: 17 * drawing.MM, right: true}, {title: "where"},
		{title: "open to, " + f.System.String(), width: 21 * drawing.MM, right: true, bold: true}, {title: "that is", width: 38 * drawing.MM}, {title: "press with, each", width: 36 * drawing.MM, right: true},
	}}
	for _, s := range assembly.Sets(in.Rack, in.Cutting.Panel()) {
		l.rows = append(l.rows, []string{s.For, strconv.Itoa(s.Count), strconv.Itoa(s.Times), s.Where, f.Text(s.Opening), s.Between, s.Force.Text(f.System)})
	}
	return l
}

// squareLedger lists the diagonals.
func squareLedger(in Input) ledger {
	f := in.Rack.Format
	l := ledger{columns: []ledgerColumn{
		{title: "check square", width: 60 * drawing.MM, bold: true}, {title: "between"},
		{title: "diagonal, " + f.System.String(), width: 28 * drawing.MM, right: true}, {title: "alike within", width: 24 * drawing.MM, right: true},
	}}
	for _, d := range assembly.Diagonals(in.Rack) {
		l.rows = append(l.rows, []string{d.Name, d.Between, d.Text(f.System), f.Text(d.Apart)})
	}
	return l
}
