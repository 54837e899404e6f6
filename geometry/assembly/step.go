package assembly

import (
	"fmt"
	"strings"
	"time"

	"slatwright/geometry/check"
	"slatwright/geometry/finish"
	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/specs/table"
)

// Steps returns the work after the saw, in order: the one order of work of the
// packet. The top is glued up first where it is made of staves, beside the other
// parts. The parts are finished before they are glued up; the top is finished
// beside them and goes on last.
func Steps(r *rack.Rack, top finish.Panel) []Step {
	b := &builder{r: r, trimmed: -1, stained: -1}
	b.panel(top)
	last := b.prepare()
	last = b.colour(last)
	coated := -1
	if r.HasTop() {
		coated = b.coat("top", fmt.Sprintf("Finish the top %s the same way, both faces alike, so that it stays flat.", b.mark("top")), false, b.colouredTop()...)
	}
	last = b.coat("parts", "Finish all the other parts.", true, last)
	last = b.glueUp(last)
	b.close(last, coated)
	return b.steps
}

// builder gathers steps.
type builder struct {
	r       *rack.Rack
	steps   []Step
	trimmed int // the step after which a glued-up top is at size, -1 for a top from one board
	sanded  int
	stained int // -1 where there is no stain
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
	n := b.add("Glue up the top", fmt.Sprintf("Joint the edges of the %d staves of %s, lay them with growth rings turned about. Glue one edge of each joint, clamp over and under by turns%s.",
		top.Staves, b.mark("top"), one), span(glue.Clamp, top.Tops))
	n = b.add("Let the top cure", "Out of the clamps, on edge or on battens, air at both faces.", Span{glue.Cure.Value, glue.Cure.Value}, n)
	b.trimmed = b.add("Trim the top", fmt.Sprintf("Scrape off glue, plane or sand it flat, saw it to %s × %s.", f.Text(r.Len("top.length")), f.Unit(r.Len("top.width"))), Span{}, n)
}

// prepare is what comes before any finish.
func (b *builder) prepare() int {
	grits := strings.Trim(strings.ReplaceAll(fmt.Sprint(finish.Sequence(b.r).Grits), " ", ", "), "[]")
	when := ""
	if b.trimmed >= 0 {
		when = ", the top when it is trimmed"
	}
	faces := "glued faces"
	if !b.r.Design.Joint.Glue {
		faces = "faces that meet"
	}
	n := b.add("Sand", fmt.Sprintf("Sand all parts with grits %s, along the grain%s. Leave the ends and the %s square.", grits, when, faces), Span{})
	b.sanded = n
	n = b.add("Mark out", fmt.Sprintf("Mark the ladders' places on all four aprons %s together, from one end, and every slat's on the legs. Set up one ladder dry and try a bottle.", b.mark("apron")), Span{}, n)
	if b.r.Design.Finish.Coats == 0 && !b.r.Design.Finish.Stained() || len(finish.Zones(b.r)) == 0 {
		return n
	}
	return b.add("Tape", "Lay parts side by side against a straight edge, ends flush, and tape across all of them what stays bare for glue (bare for glue sheets).", Span{}, n)
}

// colour is conditioner and stain, where the design has them, of all parts at
// once: so that they match, it waits for the top.
func (b *builder) colour(after int) int {
	f := b.r.Design.Finish
	needs := []int{after}
	if b.trimmed >= 0 {
		needs = []int{b.trimmed, after}
	}
	if f.Conditioned() {
		after = b.add("Condition", fmt.Sprintf("Brush on %s, wipe it off after %s, stain within %s: %s blotches.",
			f.Conditioner.Name, f.Conditioner.Recoat, table.Hours(f.Conditioner.Within.Value), b.r.Design.Wood.Species.Name),
			span(f.Conditioner.Recoat, 1), needs...)
		needs = []int{after}
	}
	if f.Stained() {
		after = b.add("Stain", fmt.Sprintf("Wipe on %s%s, wipe off what stands. Try it on waste first.", f.Stain.Name, aside(f.Stain.Note)), span(f.Stain.Recoat, 1), needs...)
		b.stained = after
	}
	return after
}

// colouredTop is the steps after which the top can be coated: the stain, or the
// sanding of a top that is at size.
func (b *builder) colouredTop() []int {
	switch {
	case b.stained >= 0:
		return []int{b.stained}
	case b.trimmed >= 0:
		return []int{b.trimmed, b.sanded}
	}
	return []int{b.sanded}
}

// coat is all the coats, with the waits between them and until the parts can
// be handled. Bare wood has none: the last of what comes before is returned.
func (b *builder) coat(name, text string, taped bool, after ...int) int {
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
	if taped && Glued(b.r) {
		coats += ". Pull the tape while the last coat is soft"
	}
	wait := span(f.Coat.Recoat, f.Coats-1)
	wait.Least += f.Coat.Handle.Value
	wait.Greatest += f.Coat.Handle.Value
	return b.add("Coat: "+name, text+" "+coats+".", wait, after...)
}

// pressed is the wait of so many glue-ups of crossings, none where they are
// nailed only.
func (b *builder) pressed(times int) Span {
	if !b.r.Design.Joint.Glue {
		return Span{}
	}
	return span(b.r.Design.Finish.Glue.Clamp, times)
}

// glueUp is ladders, front aprons, back aprons.
func (b *builder) glueUp(after int) int {
	r, f := b.r, b.r.Format
	glue, rungs, rest := "glue and nail", "glue and nail, clamped a few rungs at a time", " Leave it in the jig until the glue holds."
	if !r.Design.Joint.Glue {
		glue, rungs, rest = "nail", "nail", ""
	}
	n := b.add("Ladders", fmt.Sprintf("A jig: a flat board with a straight fence and a stop square to it. Lay two legs %s in it, feet to the stop, slats %s by the ladder sheets' heights, to the slat's lower edge. "+
		"Bore the slats %s wide; %s, heads set %s below the surface. Check the diagonals.%s %d ladders, one after another.",
		b.mark("leg"), b.mark("slat"), f.Unit(fixing.Bore(r, r.Design.Joint.SlatNail.Gauge)), rungs, f.Unit(fixing.Set(r)), rest, r.Counts.Ladders), b.pressed(r.Counts.Ladders), after)
	n = b.add("Front aprons", fmt.Sprintf("Dry-fit all ladders in the aprons. Ladders on their backs: %s the two front aprons %s to the end ladders, flush with their outer faces, then to the inner ones; %s.",
		glue, b.mark("apron"), spacers(r)), b.pressed(1), n)
	d, before := Diagonals(r)[1], "the glue sets"
	if !r.Design.Joint.Glue {
		before = "the last nails are driven"
	}
	return b.add("Back aprons", fmt.Sprintf("Rack it square: both diagonals alike, %s %s. Turn it over, set the back aprons alike, and measure again before %s.", d.Text(f.System), f.System, before), b.pressed(1), n)
}

// spacers says what to set between facing legs.
func spacers(r *rack.Rack) string {
	all := Spacers(r)
	if len(all) == 1 {
		return "a spacer between facing legs, " + r.Format.Unit(all[0].Long)
	}
	var list []string
	for _, s := range all {
		list = append(list, fmt.Sprintf("%s in %s", r.Format.Unit(s.Long), rack.Places("column", s.Columns)))
	}
	return "spacers between facing legs, " + strings.Join(list, ", ")
}

// close is the top, the touching up and the last waits.
func (b *builder) close(after, top int) {
	f := b.r.Design.Finish
	wet := b.r.Design.Joint.Glue
	if b.r.HasTop() {
		after, wet = b.fitTop(after, top), true
	}
	needs := []int{after}
	if wet {
		needs = []int{b.add("Let the glue cure", "No load on any joint.", Span{f.Glue.Cure.Value, f.Glue.Cure.Value}, after)}
	}
	if f.Coats > 0 {
		needs = append(needs, b.add("Touch up", "Fill nail holes, sand them and coat them once.", Span{f.Coat.Handle.Value, f.Coat.Handle.Value}, after))
	}
	says := "Inspect, then load from the bottom up."
	if n, _ := check.Anchors(b.r); n > 0 {
		says = "Inspect, anchor, then load from the bottom up."
	}
	if f.Coats > 0 {
		says += fmt.Sprintf(" The finish is hard after %s.", table.Hours(f.Coat.Cure.Value))
	}
	b.add("Ready", says, Span{}, needs...)
}

// fitTop is the fixing of the top, as the design has it.
func (b *builder) fitTop(after, coated int) int {
	r := b.r
	needs := []int{after}
	switch {
	case r.Design.Finish.Coats > 0:
		needs = append(needs, coated)
	case b.trimmed >= 0:
		needs = append(needs, b.trimmed)
	}
	t, _ := fixing.Of(r)
	nails := ""
	if t.Nails > 0 {
		nails = fmt.Sprintf(" Nail it there from above, %d nails to an apron.", t.Nails/t.Rows)
	}
	clamp := span(r.Design.Finish.Glue.Clamp, 1)
	if t.Glued {
		return b.add("Fit the top", "Glue the top to both upper aprons, front and back, and clamp it over cauls."+nails, clamp, needs...)
	}
	blocks := b.add("Blocks", fmt.Sprintf("Make %d slotted blocks (sheet on fitting the top) and screw them to the inner face of the back upper apron, flush with its top edge.", len(t.Middles)), Span{}, after)
	needs[0] = blocks
	return b.add("Fit the top", "Glue the top to the front upper apron alone and clamp it."+nails+
		" Behind, no glue and no nail: one screw with a washer from below through each block's slot, drawn so that it still slides.", clamp, needs...)
}

// Glued reports whether anything of the rack is glued: its crossings, or its top.
func Glued(r *rack.Rack) bool { return len(finish.Zones(r)) > 0 }
