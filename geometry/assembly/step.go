package assembly

import (
	"fmt"
	"strings"
	"time"

	"slatwright/geometry/finish"
	"slatwright/geometry/rack"
	"slatwright/specs/table"
)

// A Sheet is a kind of sheet that a step sends the reader to.
type Sheet string

// The kinds of sheets, by the beginning of their names in a packet.
const (
	LadderSheets  Sheet = "ladder"
	BareSheets    Sheet = "bare"
	ClampSheets   Sheet = "clamps"
	TopSheet      Sheet = "top"
	InspectSheets Sheet = "inspection"
	CarcaseSheet  Sheet = "carcase"
	GaugeSheets   Sheet = "gauges"
	JigSheets     Sheet = "jig"
	PartSheets    Sheet = "parts"
)

// Of narrows a kind to its sheets about a part, such as "top", or about one of the
// things that follow.
func (s Sheet) Of(part string) Sheet { return s + "." + Sheet(part) }

// What sheets of a kind are about, besides parts.
const (
	Squares   = "squares"   // inspection: the diagonals
	Crossings = "crossings" // clamps: where they stand on ladders and aprons
	Panel     = "panel"     // clamps: where they stand on the top and its staves
	Figures   = "figures"   // clamps: how many, and how far they open
	Screws    = "screws"    // top: how its screws go in
	Places    = "places"    // top: where blocks and screws are
	Blocks    = "blocks"    // top: how blocks are made
)

// Names of steps that other sheets name: the one that needs the blocks, those of a
// top from staves, and the first that needs the gap gauges.
const (
	StepBlocks  = "Blocks"
	StepGlueTop = "Glue up the top"
	StepTrimTop = "Trim the top"
	stepFirst   = "Ladders, first faces"
	StepGauges  = stepFirst
)

// Names of steps that the templates' strips and cards name.
const (
	StepMark   = "Mark out"
	StepJig    = stepJig
	StepDry    = stepDry
	StepLowest = stepFirst
	StepSecond = stepSecond
)

// StepPack is the last step, where it is known what the rack is sent in.
const StepPack = "Pack"

// Number returns how sheets number the step of a name, such as "W7"; "" where there
// is none.
func Number(steps []Step, name string) string {
	for i, s := range steps {
		if s.Name == name {
			return StepName(i)
		}
	}
	return ""
}

// StepName is how sheets number step i, from 0: "W1" and so on.
func StepName(i int) string { return fmt.Sprintf("W%d", i+1) }

// Names of the other steps that need what the shop makes itself.
const (
	stepJig    = "Jig"
	stepSecond = "Ladders, second faces"
	stepDry    = "Dry fit"
	stepFront  = "Front aprons"
	stepTop    = "Fit the top"
)

// Numbers returns the numbers of the sheets of a kind in words, such as "sheets
// 9 to 12"; "" where they are not known.
type Numbers func(Sheet) string

// A Gauge is a gap gauge that the steps use.
type Gauge struct {
	Upright bool   // from a slat up to the next, else between facing slats
	Where   string // the columns, such as "column 1"; "" for all
	Tight   bool   // it enters with nothing to spare
}

// A Job is a rack to build, with what the rest of its packet says of it.
type Job struct {
	Rack    *rack.Rack
	Top     finish.Panel
	Numbers Numbers // with nil sheets are named
	Sawn    bool    // a cutting plan gives the order of the labels
	Gauges  []Gauge
	Sent    string // the carton it goes in and its weight, in words; "" where nobody asked
}

// Steps returns the steps of a rack of which no more is known than its top.
func Steps(r *rack.Rack, top finish.Panel, numbers Numbers) []Step {
	return Job{Rack: r, Top: top, Numbers: numbers}.Steps()
}

// Steps returns the work after the saw, in order: the one order of work of the
// packet. The top is glued up first where it is made of staves, beside the other
// parts. The parts are finished before they are glued up; the top is finished
// beside them and goes on last.
func (j Job) Steps() []Step {
	r := j.Rack
	b := &builder{Job: j, r: r, numbers: j.Numbers, trimmed: -1, taped: -1, stained: -1, bored: -1}
	b.panel(j.Top)
	last := b.prepare()
	last = b.colour(last)
	coated := -1
	if r.HasTop() {
		coated = b.coat("top", fmt.Sprintf("Finish the top %s, as many coats above as below, so that it stays flat; the taped strip stays bare.", b.mark("top")), b.colouredTop()...)
	}
	last = b.coat("parts", "Finish all the other parts"+b.tapedWord()+". Each coat: the hidden face first, then turned onto points (nails through a board); or hang them.", last)
	last = b.glueUp(last)
	b.close(last, coated)
	return b.steps
}

// builder gathers steps.
type builder struct {
	Job
	r       *rack.Rack
	numbers Numbers
	steps   []Step
	trimmed int // the step after which a glued-up top is at size, -1 for a top from one board
	sanded  int
	taped   int  // the step after which the top's bare strip is taped, -1 where nothing is
	stained int  // -1 where there is no stain
	bored   int  // the step after which the top has its pilots, -1 where it has none
	cauled  bool // it is said what a caul is
}

// see sends the reader to sheets.
func (b *builder) see(s Sheet) string {
	if b.numbers != nil {
		if text := b.numbers(s); text != "" {
			return text
		}
	}
	kind, _, _ := strings.Cut(string(s), ".")
	return kind + " sheets"
}

// clamps sends the reader to where clamps stand and to how many it takes.
func (b *builder) clamps(on string) string {
	where, figures := b.see(ClampSheets.Of(on)), b.see(ClampSheets.Of(Figures))
	if where == figures { // no sheet has a number
		return where
	}
	return where + "; how many: " + figures
}

// add adds a step after another and returns its number.
func (b *builder) add(name, text string, wait Span, after ...int) int {
	b.steps = append(b.steps, Step{Name: name, Text: text, After: after, Wait: wait})
	return len(b.steps) - 1
}

func (b *builder) mark(part string) string {
	p, _ := b.r.PartNamed(part)
	return p.Mark
}

// aside puts what is peculiar about a material in brackets.
func aside(note string) string {
	if note == "" {
		return ""
	}
	return " (" + note + ")"
}

// span is a wait from the tables, times over.
func span(s table.Span, times int) Span {
	return Span{time.Duration(times) * s.Least, time.Duration(times) * s.Greatest}
}

// panel is the gluing up of the top: it may be loaded by plane and saw only when
// the glue has cured.
func (b *builder) panel(top finish.Panel) {
	if !top.GluedUp() {
		return
	}
	r, f := b.r, b.r.Format
	glue := r.Design.Finish.Glue
	one := ""
	if top.Tops > 1 {
		one = fmt.Sprintf(", %d tops one after another", top.Tops)
	}
	n := b.add(StepGlueTop, fmt.Sprintf("Lay the %d staves of %s, their edges jointed as the saw's steps say, with the rings at their ends arched up and down by turns. Glue one edge of each joint. Clamp waxed battens lightly over and under both ends, to keep them level; then clamps across, over and under by turns (%s)%s.",
		top.Staves, b.mark("top"), b.clamps(Panel), one), span(glue.Clamp, top.Tops))
	n = b.add("Let the top cure", "Out of the clamps, on edge or on battens, air at both faces.", Span{glue.Cure.Value, glue.Cure.Value}, n)
	b.trimmed = b.add(StepTrimTop, fmt.Sprintf("Scrape off glue, plane or sand it flat, saw it to %s × %s.%s", f.Text(r.Len("top.length")), f.Unit(r.Len("top.width")), b.thinnest()), Span{}, n)
}

// prepare is what comes before any finish.
func (b *builder) prepare() int {
	r, when := b.r, ""
	if b.trimmed >= 0 {
		when = ", the top when it is trimmed"
	}
	bare := "where parts meet"
	if Glued(r) {
		bare = fmt.Sprintf("what is glued (hatched on %s)", b.see(BareSheets))
	}
	n := b.add("Label", b.labels(), Span{})
	thin := ""
	if r.HasTop() && b.trimmed < 0 {
		thin = b.thinnest()
	}
	n = b.add("Sand", fmt.Sprintf("Sizes on the sheets are finished sizes: sand lightly, along the grain, grits %s%s. Not %s: that fits as sawn, and so do the lengths: of ends, sand only those that are seen, a stroke or two with the finest grit.%s",
		strings.Trim(strings.ReplaceAll(fmt.Sprint(finish.Sequence(r).Grits), " ", ", "), "[]"), when, bare, thin), Span{}, n)
	b.sanded = n
	n = b.add(StepMark, b.marking(), Span{}, n)
	n = b.bore(n)
	if r.Design.Finish.Coats == 0 && !r.Design.Finish.Stained() || !Glued(r) {
		return n
	}
	whole := ""
	if r.HasTop() && b.trimmed < 0 {
		whole = " The top's strip too."
	}
	n = b.add("Tape: parts", fmt.Sprintf("Lay parts side by side against a straight edge, ends flush; tape across all of them what stays bare for glue (%s), then cut the tape between them with a knife.%s", b.see(BareSheets), whole), Span{}, n)
	switch {
	case whole != "":
		b.taped = n
	case r.HasTop():
		b.taped = b.add("Tape: top", fmt.Sprintf("On the underside of the top %s tape the strip that stays bare for glue (%s: underside).", b.mark("top"), b.see(BareSheets.Of("top"))), Span{}, b.topReady()...)
	}
	return n
}

// colour is conditioner and stain, where the design has them, of all parts at
// once: so that they match, it waits for the top.
func (b *builder) colour(after int) int {
	f := b.r.Design.Finish
	needs := []int{after}
	switch {
	case b.taped >= 0 && b.taped != after:
		needs = []int{after, b.taped}
	case b.trimmed >= 0:
		needs = append(b.topReady(), after)
	case b.bored >= 0:
		needs = []int{b.bored, after}
	}
	if f.Conditioned() {
		after = b.add("Condition", fmt.Sprintf("Brush on %s, wipe it off after %s, stain within %s: %s blotches.",
			f.Conditioner.Name, f.Conditioner.Recoat, table.Hours(f.Conditioner.Within.Value), b.r.Design.Wood.Species.Name),
			span(f.Conditioner.Recoat, 1), needs...)
		needs = []int{after}
	}
	if f.Stained() {
		after = b.add("Stain", fmt.Sprintf("Wipe on %s%s, wipe off what stands. Colour%s. Try it on waste first.", f.Stain.Name, aside(f.Stain.Note), agreed(f.Colour)), span(f.Stain.Recoat, 1), needs...)
		b.stained = after
	}
	return after
}

// agreed is the colour that was agreed with the customer, or a line for it.
func agreed(colour string) string {
	if colour == "" {
		return " as agreed with the customer: ____________"
	}
	return ": " + colour + ", as agreed"
}

// colouredTop is the steps after which the top can be coated: the stain, or the
// taping of a top that is at size.
func (b *builder) colouredTop() []int {
	switch {
	case b.stained >= 0:
		return []int{b.stained}
	case b.taped >= 0 && b.trimmed < 0 && b.bored >= 0:
		return []int{b.taped, b.bored}
	case b.taped >= 0:
		return []int{b.taped}
	}
	return b.topReady()
}

// topReady is the steps after which the top is at size, sanded and bored.
func (b *builder) topReady() []int {
	switch {
	case b.bored >= 0:
		return []int{b.bored}
	case b.trimmed >= 0:
		return []int{b.trimmed, b.sanded}
	}
	return []int{b.sanded}
}

// coat is all the coats, with the waits between them and until the parts can
// be handled. Bare wood has none: the last of what comes before is returned.
func (b *builder) coat(name, text string, after ...int) int {
	f := b.r.Design.Finish
	if f.Coats == 0 {
		return after[0]
	}
	coats := "One coat of " + f.Coat.Name + aside(f.Coat.Note)
	if f.Coats > 1 {
		coats = fmt.Sprintf("%d coats of %s%s, %s apart", f.Coats, f.Coat.Name, aside(f.Coat.Note), f.Coat.Recoat)
		if f.Coat.Grit > 0 {
			coats += fmt.Sprintf("; sand with %d between", f.Coat.Grit)
		}
	}
	if Glued(b.r) && (name == "top" || b.r.Design.Joint.Glue) {
		coats += ". Pull the tape while the last coat is soft"
	}
	wait := span(f.Coat.Recoat, f.Coats-1)
	wait.Least += f.Coat.Handle.Value
	wait.Greatest += f.Coat.Handle.Value
	return b.add("Coat: "+name, text+" "+coats+".", wait, after...)
}

// Glued reports whether anything of the rack is glued: its crossings, or its top.
func Glued(r *rack.Rack) bool {
	for range finish.Zones(r) {
		return true
	}
	return false
}
