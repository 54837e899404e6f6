package assembly

import (
	"fmt"
	"strings"
	"time"

	"slatwright/geometry/finish"
	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/specs/table"
	"slatwright/specs/word"
)

// filler is how long wood filler dries before it is sanded (common practice, no
// source; its label goes first).
var filler = Span{time.Hour, 2 * time.Hour}

// and adds a wait that follows another.
func (s Span) and(o Span) Span { return Span{s.Least + o.Least, s.Greatest + o.Greatest} }

// pressed is the wait of so many glue-ups of crossings, none where they are
// nailed only.
func (b *builder) pressed(times int) Span {
	if !b.r.Design.Joint.Glue {
		return Span{}
	}
	return span(b.r.Design.Finish.Glue.Clamp, times)
}

// glueUp is ladders, one face at a time, front aprons, back aprons.
func (b *builder) glueUp(after int) int {
	r := b.r
	first, second := glueUps(r)
	high := r.Len("leg.thickness") + r.Len("slat.thickness")
	n := b.add(stepJig, fmt.Sprintf("A flat board with a straight fence and a stop square to it, both as high as a leg and a slat together: %s (%s). Staple the template's strip of the face to be made to the board, beside where the leg at the fence lies, its FOOT end at the stop, its lines at the leg's edge.%s", r.Format.Unit(high), b.see(JigSheets), b.caulText()), Span{})
	n = b.add(stepFirst, fmt.Sprintf("Lay two legs %s in the jig, feet to the stop, one along the fence, and the slats %s on them by the figures of %s, to the slat's lower edge, the lowest one also by its card: on end ladders their only face, on inner ones the left. %s "+
		"%s, one after another.%s", b.mark("leg"), b.mark("slat"), b.see(LadderSheets), b.rungs(), word.Count(first, "face"), b.wroteEnds(second)), b.pressed(first), n, after)
	if second > 0 {
		n = b.add(stepSecond, fmt.Sprintf("When its first face holds, turn each inner ladder over about its length, feet to the stop again. Packers as thick as a slat, %s, under its legs at the foot%s (%s): "+
			"so it lies level. Set the slats to the lines marked before, try, bore, fix%s the right face as its own sheet shows it. %s. Compare both diagonals again, and now write them down (%s).",
			r.Format.Unit(r.Len("slat.thickness")), packed(r), b.see(JigSheets), b.orClamp(" and clamp"), word.Count(second, "face"), b.see(InspectSheets.Of(Squares))), b.pressed(second), n)
	}
	n = b.fillSlats(n)
	return b.aprons(n)
}

// packed says where packers lie besides the foot.
func packed(r *rack.Rack) string {
	ends, between := false, false
	for i := range r.Shapes {
		for _, at := range PackerPlaces(r, i) {
			end := at == r.Len("leg.length")-r.Len("slat.height")
			ends = ends || end
			between = between || !end && at > 0
		}
	}
	switch {
	case ends && between:
		return ", at the top and wherever a slat comes that has none below it"
	case ends:
		return " and at the top"
	case between:
		return " and wherever a slat comes that has none below it"
	}
	return ""
}

// caulText says that cauls are kept from sticking, where there are any.
func (b *builder) caulText() string {
	if !b.r.Design.Joint.Glue {
		return ""
	}
	return " Then wax board, strip, fence, stop and " + b.cauls() + ", so that glue does not hold them."
}

// orClamp is words about glued crossings, nothing where they are nailed only.
func (b *builder) orClamp(text string) string {
	if !b.r.Design.Joint.Glue {
		return ""
	}
	return text
}

// rungs says how the slats of one face are fixed.
func (b *builder) rungs() string {
	r, f := b.r, b.r.Format
	d := Diagonals(r)[0]
	bore := fmt.Sprintf("Bore all slats of the face %s wide, through the slat alone", f.Unit(fixing.Bore(r, r.Design.Joint.SlatNail.Gauge)))
	if !r.Design.Joint.Glue {
		return fmt.Sprintf("%s.%s Slat by slat: nail it, heads set %s below the face. Before the last nails both diagonals %s %s.", bore, b.tryGauge(), f.Unit(fixing.Set(r)), d.Text(f.System), f.System)
	}
	hold := b.pressed(1)
	return fmt.Sprintf("%s, before any glue, and start the nails.%s One slat at a time: glue, lay, nail, heads set %s below the face. %s a caul along each leg, over the slats' ends, and clamps on it (%s). Before the glue sets both diagonals %s %s. Leave it in the jig for %s.",
		bore, b.tryGauge(), f.Unit(fixing.Set(r)), word.Capital(turnText(r)), b.clamps(Crossings), d.Text(f.System), f.System, table.HoursRange(hold.Least, hold.Greatest))
}

// fillSlats is the filling of the slats' nail holes, while they can be reached.
func (b *builder) fillSlats(after int) int {
	r, f := b.r, b.r.Design.Finish
	text := "Fill the slats' nail holes now"
	if all := Spacers(r); len(all) > 0 {
		apart := all[0].Long
		for _, c := range all {
			apart = min(apart, c.Long)
		}
		text += fmt.Sprintf(": between aprons the ladders' legs stand only %s apart", r.Format.Unit(apart))
	}
	text += ". " + b.filled()
	wait := filler
	if f.Coats > 0 {
		text += " Coat the spots once."
		wait = wait.and(span(f.Coat.Recoat, 1))
	}
	return b.add("Fill: slats", text, wait, after)
}

// filled says how filler is treated.
func (b *builder) filled() string {
	f := b.r.Design.Finish
	grits := finish.Sequence(b.r).Grits
	text := fmt.Sprintf("Let it dry as its label says, sand it flush with %d.", grits[len(grits)-1])
	if f.Stained() {
		text = "Filler takes stain badly: use one of the stained wood's colour, tried on waste. " + text
	}
	return text
}

// aprons are the front ones, then the back ones, each time squared while the glue
// is wet.
func (b *builder) aprons(n int) int {
	r, f := b.r, b.r.Format
	fix, before, clamp := "glue and nail", "the glue sets", fmt.Sprintf(" Then cauls and clamps (%s).", b.clamps(Crossings))
	apron := " One apron at a time, bored before any glue."
	if !r.Design.Joint.Glue {
		fix, before, clamp, apron = "nail", "the last nails are driven", "", " Bore first."
	}
	ladder, above := Diagonals(r)[1], Diagonals(r)[2]
	square := fmt.Sprintf(" Make it square before %s: both diagonals alike, %s %s; where one is longer, press its corners together.", before, ladder.Text(f.System), f.System)
	n = b.add(stepDry, fmt.Sprintf("Stand all ladders in the four aprons%s. Take the aprons off.", b.tried()), Span{}, n)
	n = b.add(stepFront, fmt.Sprintf("Ladders on their backs%s: %s the two front aprons %s, the upper one flush with the legs' tops, the lower one %s, ends flush with the end ladders' outer faces: to the end ladders first, then to the inner ones; %s.%s%s%s%s",
		b.orClamp(", on blocks so that jaws go under"), fix, b.mark("apron"), b.lift(), spacers(r), apron, clamp, square, b.wrote()), b.pressed(1), n)
	return b.add("Back aprons", fmt.Sprintf("Turn it over and set the back aprons the same way%s%s. Measure again before %s: both diagonals %s %s, and from above, while there is no top, %s %s.%s",
		b.boredUp(), b.orClamp(", clamps over front and back"), before, ladder.Text(f.System), f.System, above.Text(f.System), f.System, b.wrote()), b.pressed(1), n)
}

// lift says where the lower aprons sit.
func (b *builder) lift() string {
	if l := b.r.Len("apron.lift"); l > 0 {
		return b.r.Format.Unit(l) + " above the feet"
	}
	return "with their feet"
}

// boredUp says where the apron goes that is bored for the blocks.
func (b *builder) boredUp() string {
	if b.bored < 0 {
		return ""
	}
	return ", the bored one above, its countersinks outside"
}

// spacers says what to set between facing legs.
func spacers(r *rack.Rack) string {
	all := Spacers(r)
	if len(all) == 1 {
		return "spacers of " + r.Format.Unit(all[0].Long) + " between facing legs, at both aprons"
	}
	var list []string
	for _, s := range all {
		list = append(list, fmt.Sprintf("%s in %s", r.Format.Unit(s.Long), rack.Places("column", s.Columns)))
	}
	return "spacers between facing legs, at both aprons, " + strings.Join(list, ", ")
}

// close is the top, the touching up and the last waits.
func (b *builder) close(after, top int) {
	f := b.r.Design.Finish
	wet := b.r.Design.Joint.Glue
	holes := "the aprons' nail holes"
	if b.r.HasTop() {
		after, wet = b.fitTop(after, top), true
		if t, _ := fixing.Of(b.r); t.Nails > 0 {
			holes = "the nail holes of aprons and top"
		}
	}
	needs := []int{after}
	if wet {
		needs = []int{b.add("Let the glue cure", "No load on any joint.", Span{f.Glue.Cure.Value, f.Glue.Cure.Value}, after)}
	}
	text, wait := fmt.Sprintf("Fill %s. %s", holes, b.filled()), filler
	if f.Coats > 0 {
		text += " Coat these, and what else can be reached and needs it, once."
		wait = wait.and(Span{f.Coat.Handle.Value, f.Coat.Handle.Value})
	}
	needs = append(needs, b.add("Touch up", text, wait, after))
	says := fmt.Sprintf("Inspect (%s). %s Load from the bottom up.", b.see(InspectSheets), Anchoring(b.r))
	if f.Coats > 0 {
		says += fmt.Sprintf(" The finish is hard only after %s.", table.Hours(f.Coat.Cure.Value))
	}
	b.pack(b.add("Ready", says, Span{}, needs...))
}

// fitTop is the fixing of the top, as the design has it.
func (b *builder) fitTop(after, coated int) int {
	r := b.r
	needs := []int{after}
	switch {
	case r.Design.Finish.Coats > 0:
		needs = append(needs, coated)
	default:
		needs = append(needs, b.topReady()...)
	}
	t, _ := fixing.Of(r)
	nails := ""
	if t.Nails > 0 {
		nails = fmt.Sprintf(" Nail it there from above, %d nails to an apron, heads set and before the caul goes on.", t.Nails/t.Rows)
	}
	clamp := span(r.Design.Finish.Glue.Clamp, 1)
	if t.Glued {
		return b.add(stepTop, fmt.Sprintf("%s Glue it to both upper aprons, front and back, and clamp it over %s (%s).%s", b.laid(), b.cauls(), b.clamps(Panel), nails), clamp, needs...)
	}
	blocks := b.add(StepBlocks, fmt.Sprintf("Make %d slotted blocks %s (%s), bored %s for the apron's screws, sand them as the parts; they stay bare, the aprons hide them. Screw them from behind to the inner face of the back upper apron, flush with its top edge, where %s has them.", len(t.Middles), BlockMark(r), b.see(TopSheet.Of(Blocks)), r.Format.Unit(fixing.BitsOf(r).Pilot), b.see(TopSheet.Of(Places))), Span{}, after)
	needs[0] = blocks
	return b.add(stepTop, fmt.Sprintf("%s Glue it to the front upper apron alone and clamp it over %s (%s).%s Behind, no glue and no nail: one screw with a washer from below through each block's slot (%s), drawn so that it still slides; reach in from behind, below the apron, with a stubby or right-angle driver.",
		b.laid(), b.cauls(), b.clamps(Panel), nails, b.see(TopSheet.Of(Screws))), clamp, needs...)
}

// BlockMark is the mark of the slotted blocks: the letter after those of the
// parts.
func BlockMark(r *rack.Rack) string { return string(rune('A' + len(r.Parts))) }
