package assembly

import (
	"fmt"
	"strings"
	"time"

	"slatwright/geometry/finish"
	"slatwright/geometry/rack"
	"slatwright/specs/table"
)

// Steps returns the work after the saw, in order. The parts are finished before
// they are glued up; the top is finished beside them and goes on last.
func Steps(r *rack.Rack) []Step {
	b := &builder{r: r}
	last := b.prepare()
	last = b.colour(last)
	top := -1
	if r.HasTop() {
		top = b.coat("top", fmt.Sprintf("Finish the top %s the same way, both faces alike, so that it stays flat.", b.mark("top")), b.colouredTop(), false)
	}
	last = b.coat("parts", "Finish all the other parts.", last, true)
	last = b.glueUp(last)
	b.close(last, top)
	return b.steps
}

// builder gathers steps.
type builder struct {
	r      *rack.Rack
	steps  []Step
	sanded int
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

// prepare is what comes before any finish.
func (b *builder) prepare() int {
	grits := strings.Trim(strings.ReplaceAll(fmt.Sprint(finish.Sequence(b.r).Grits), " ", ", "), "[]")
	n := b.add("Sand", fmt.Sprintf("Sand all parts with grits %s, along the grain. Leave the ends and the glued faces square.", grits), Span{})
	b.sanded = n
	n = b.add("Dry fit", "Set one ladder and the aprons together dry. Try a bottle. Mark every crossing.", Span{}, n)
	if b.r.Design.Finish.Coats == 0 && !b.r.Design.Finish.Stained() {
		return n
	}
	return b.add("Tape", "Lay parts side by side against a straight edge, ends flush, and tape across all of them what stays bare for glue.", Span{}, n)
}

// colour is conditioner and stain, where the design has them.
func (b *builder) colour(after int) int {
	f := b.r.Design.Finish
	if f.Conditioned() {
		after = b.add("Condition", fmt.Sprintf("Brush on %s, wipe it off after %s, stain within %s: %s blotches.",
			f.Conditioner.Name, f.Conditioner.Recoat, table.Hours(f.Conditioner.Within.Value), b.r.Design.Wood.Species.Name),
			span(f.Conditioner.Recoat, 1), after)
	}
	if f.Stained() {
		after = b.add("Stain", fmt.Sprintf("Wipe on %s%s, wipe off what stands. Try it on waste first.", f.Stain.Name, aside(f.Stain.Note)), span(f.Stain.Recoat, 1), after)
	}
	return after
}

// colouredTop is the step after which the top can be coated: the stain, or the
// sanding.
func (b *builder) colouredTop() int {
	if f := b.r.Design.Finish; f.Stained() {
		return len(b.steps) - 1
	}
	return b.sanded
}

// coat is all the coats, with the waits between them and until the parts can
// be handled. Bare wood has none.
func (b *builder) coat(name, text string, after int, taped bool) int {
	f := b.r.Design.Finish
	if f.Coats == 0 {
		return after
	}
	coats := "One coat of " + f.Coat.Name + aside(f.Coat.Note)
	if f.Coats > 1 {
		coats = fmt.Sprintf("%d coats of %s%s, %s apart", f.Coats, f.Coat.Name, aside(f.Coat.Note), f.Coat.Recoat)
		if f.Coat.Grit > 0 {
			coats += fmt.Sprintf("; sand with %d between", f.Coat.Grit)
		}
	}
	if taped {
		coats += ". Pull the tape while the last coat is soft"
	}
	wait := span(f.Coat.Recoat, f.Coats-1)
	wait.Least += f.Coat.Handle.Value
	wait.Greatest += f.Coat.Handle.Value
	return b.add("Coat: "+name, text+" "+coats+".", wait, after)
}

// glueUp is ladders, front aprons, back aprons.
func (b *builder) glueUp(after int) int {
	r := b.r
	clamp := r.Design.Finish.Glue.Clamp
	n := b.add("Ladders", fmt.Sprintf("Glue and nail slats %s to legs %s, one ladder after another with one set of clamps: %d ladders. Check the diagonals of each.",
		b.mark("slat"), b.mark("leg"), r.Counts.Ladders), span(clamp, r.Counts.Ladders), after)
	n = b.add("Front aprons", fmt.Sprintf("Ladders on their backs: glue and nail the two front aprons %s.", b.mark("apron")), span(clamp, 1), n)
	return b.add("Back aprons", "Turn it over, set the back aprons alike. Check all diagonals before the glue sets.", span(clamp, 1), n)
}

// close is the top, the touching up and the last waits.
func (b *builder) close(after, top int) {
	f := b.r.Design.Finish
	if b.r.HasTop() {
		needs := []int{after}
		if f.Coats > 0 {
			needs = append(needs, top)
		}
		after = b.add("Fit the top", "Glue the top to the front upper apron only; fix it elsewhere so that it can move.", span(f.Glue.Clamp, 1), needs...)
	}
	cured := b.add("Let the glue cure", "No load on any joint.", Span{f.Glue.Cure.Value, f.Glue.Cure.Value}, after)
	touched := after
	if f.Coats > 0 {
		touched = b.add("Touch up", "Fill nail holes, sand them and coat them once.", Span{f.Coat.Handle.Value, f.Coat.Handle.Value}, after)
	}
	says := "Inspect, anchor, then load from the bottom up."
	if f.Coats > 0 {
		says = fmt.Sprintf("Inspect, anchor, then load from the bottom up. The finish is hard after %s.", table.Hours(f.Coat.Cure.Value))
	}
	b.add("Ready", says, Span{}, cured, touched)
}
