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
// they are put together; the top is finished beside them and goes on last. Glue
// is spoken of where the design has it: at the crossings, and under the top.
func Steps(r *rack.Rack) []Step {
	b := &builder{r: r}
	last := b.prepare()
	last = b.colour(last)
	top := -1
	if r.HasTop() {
		top = b.coat("top", fmt.Sprintf("Finish the top %s the same way, both faces alike, so that it stays flat.", b.mark("top")), b.colouredTop(), false)
	}
	last = b.coat("parts", "Finish all the other parts.", last, b.taped)
	last = b.carcase(last)
	b.close(last, top)
	return b.steps
}

// builder gathers steps.
type builder struct {
	r      *rack.Rack
	steps  []Step
	sanded int
	taped  bool // something stays bare for glue
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
	faces := "glued faces"
	if !b.r.Design.Joint.Glue {
		faces = "faces that meet"
	}
	n := b.add("Sand", fmt.Sprintf("Sand all parts with grits %s, along the grain. Leave the ends and the %s square.", grits, faces), Span{})
	b.sanded = n
	n = b.add("Dry fit", "Set one ladder and the aprons together dry. Try a bottle. Mark every crossing.", Span{}, n)
	if b.r.Design.Finish.Coats == 0 && !b.r.Design.Finish.Stained() || !Glued(b.r) {
		return n
	}
	b.taped = true
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

// carcase is ladders, front aprons, back aprons. What is nailed alone need not
// wait in clamps.
func (b *builder) carcase(after int) int {
	r := b.r
	clamp := r.Design.Finish.Glue.Clamp
	nail, set, before, one := "Glue and nail", "glue and nail", "the glue sets", span(clamp, 1)
	ladders := fmt.Sprintf("one ladder after another with one set of clamps: %d ladders", r.Counts.Ladders)
	each := span(clamp, r.Counts.Ladders)
	if !r.Design.Joint.Glue {
		nail, set, before, one = "Nail", "nail", "the last nails are driven", Span{}
		ladders, each = fmt.Sprintf("one ladder after another: %d ladders", r.Counts.Ladders), Span{}
	}
	n := b.add("Ladders", fmt.Sprintf("%s slats %s to legs %s, %s. Check the diagonals of each.", nail, b.mark("slat"), b.mark("leg"), ladders), each, after)
	n = b.add("Front aprons", fmt.Sprintf("Ladders on their backs: %s the two front aprons %s.", set, b.mark("apron")), one, n)
	return b.add("Back aprons", fmt.Sprintf("Turn it over, %s the back aprons alike. Check all diagonals before %s.", set, before), one, n)
}

// close is the top, the touching up and the last waits.
func (b *builder) close(after, top int) {
	f := b.r.Design.Finish
	if b.r.HasTop() {
		needs := []int{after}
		if f.Coats > 0 {
			needs = append(needs, top)
		}
		says := "Glue the top to the front upper apron only; fix it elsewhere so that it can move."
		if b.r.Design.Joint.TopGlued {
			says = "Glue the top all round: to both upper aprons and to the legs' ends between them."
		}
		after = b.add("Fit the top", says, span(f.Glue.Clamp, 1), needs...)
	}
	ready := []int{after}
	if Glued(b.r) {
		ready[0] = b.add("Let the glue cure", "No load on any joint.", Span{f.Glue.Cure.Value, f.Glue.Cure.Value}, after)
	}
	says := "Inspect, anchor, then load from the bottom up."
	if f.Coats > 0 {
		touched := b.add("Touch up", "Fill nail holes, sand them and coat them once.", Span{f.Coat.Handle.Value, f.Coat.Handle.Value}, after)
		ready = append(ready, touched)
		says += fmt.Sprintf(" The finish is hard after %s.", table.Hours(f.Coat.Cure.Value))
	}
	b.add("Ready", says, Span{}, ready...)
}

// Glued reports whether anything of the rack is glued: the crossings, unless
// the design leaves them to nails, or the top.
func Glued(r *rack.Rack) bool { return r.Design.Joint.Glue || r.HasTop() }
