package assembly

import (
	"cmp"
	"fmt"
	"slices"

	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/specs/word"
)

// OutOfScale is what to do when the rulers of the templates do not measure true: the
// one answer of all papers that say something of it.
const OutOfScale = "where one is out by more than a pencil line, print again with the design's [printer] lines set to what the rulers measured; until then work by the printed figures, not by the paper"

// templateCheck is what comes before any line is marked by a template.
const templateCheck = "Templates (printed apart): first hold a steel rule to the rulers on their first page; " + OutOfScale + ". Join the strips, cut them and the cards out along the heavy lines."

// labels says when and how the labels go on.
func (b *builder) labels() string {
	order := "in which the saw's steps cut the parts"
	if !b.Sawn {
		order = "of the rack, ladder by ladder from the left"
	}
	text := "Stick its label on each part, or bundle of parts where the label counts several, as it comes off the saw. Labels are printed apart, in the order " + order + ". Parts of one size are alike: any of them may take any of their labels. The arrow points to the end or edge that it names."
	if t, ok := fixing.Of(b.r); ok && !t.Glued {
		text += fmt.Sprintf(" Keep the label %s until the blocks are made.", BlockMark(b.r))
	}
	return text + fmt.Sprintf(" Before sanding takes a label off, write in pencil what it says of its place (ladder and number, or mark) on %s: there it is hidden later. On legs add L or R, for the side of the rack that this face looks to.", b.bare())
}

// bare says which wood of a part is hidden later.
func (b *builder) bare() string {
	if !b.r.Design.Joint.Glue {
		return "a face that meets another part"
	}
	return fmt.Sprintf("a face that is glued (hatched on %s)", b.see(BareSheets))
}

// marking says how the places of ladders, slats and nails are marked.
func (b *builder) marking() string {
	strip := "lay the strip of its pair, LOWER EDGE to lower edge, LEFT to LEFT; on front aprons its lettering is then upside down"
	if evenly(b.r) {
		strip = "lay the one strip, LOWER EDGE to lower edge, either END first: legs stand alike from both ends"
	}
	return fmt.Sprintf("%s Aprons %s, inner faces up, lower edges towards you: mark LEFT on the left end of the back pair, on the right end of the front pair. For the ladders' places %s; or go by a stick marked once from %s. Mark every slat's place on the legs by the strip of that face (figures: %s), and prick every nail with an awl through its card: pricks show through a finish. Keep strips from sliding. Draw thin, and rub out before any finish what would be seen.",
		templateCheck, b.mark("apron"), strip, b.see(CarcaseSheet), b.see(LadderSheets))
}

// evenly reports whether the ladders stand alike from either end, so that the
// template has one strip for all aprons.
func evenly(r *rack.Rack) bool {
	end := r.Len("carcase.width")
	for i, l := range r.Ladders {
		if o := r.Ladders[len(r.Ladders)-1-i]; l.X != end-o.X-r.Len("leg.thickness") {
			return false
		}
	}
	return true
}

// cauls names cauls, the first time with what they are.
func (b *builder) cauls() string {
	if b.cauled {
		return "cauls"
	}
	b.cauled = true
	return "cauls (straight sticks under the jaws, which spread their pressure)"
}

// thinnest says how thin flattening may leave the top.
func (b *builder) thinnest() string {
	r, f := b.r, b.r.Format
	t, ok := fixing.Of(r)
	drawn := r.Len("top.thickness")
	switch {
	case !ok:
		return ""
	case t.Glued:
		return fmt.Sprintf(" The top is drawn %s thick; no check sets a least: take off only what flat needs, alike all over.", f.Unit(drawn))
	case t.Least() >= drawn:
		return fmt.Sprintf(" The top's screws are picked for all of its %s: where it comes out thinner, take screws shorter by as much.", f.Unit(drawn))
	}
	return fmt.Sprintf(" The top is drawn %s thick and may come out thinner, %s at the least over the blocks' screws.", f.Unit(drawn), f.Unit(t.Least()))
}

// tapedWord reminds, where parts are coated, of what was taped before.
func (b *builder) tapedWord() string {
	if !b.r.Design.Joint.Glue {
		return ""
	}
	return ", taped as above where they take glue"
}

// tried says what is tried while ladders stand dry between their aprons.
func (b *builder) tried() string {
	text := "; hold them " + b.heldDry() + ", spacers between the legs in front; try a bottle of every kind in the cells"
	if b.gauged(false) {
		text += ", the sideways gauges between facing slats" + b.tight(false)
	}
	return text + ". The template's cards show the same as drawn, and the gauges decide: gap cards pass between facing slats; half discs lie on them round side down, the thinnest on both slats, the thickest clear of the legs"
}

// heldDry says what keeps aprons on the legs while nothing is fixed.
func (b *builder) heldDry() string {
	if b.r.Design.Joint.Glue {
		return "at either end by two clamps from front to back, low and high"
	}
	return "by hand at either end, one person to each"
}

// gauged reports whether a gap gauge of the kind is cut.
func (b *builder) gauged(upright bool) bool {
	return slices.ContainsFunc(b.Gauges, func(g Gauge) bool { return g.Upright == upright })
}

// tight names the gauges of a kind that have nothing to spare.
func (b *builder) tight(upright bool) string {
	var where []string
	for _, g := range b.Gauges {
		if g.Upright == upright && g.Tight {
			where = append(where, cmp.Or(g.Where, "all columns"))
		}
	}
	if len(where) == 0 {
		return ""
	}
	return " (TIGHT, with nothing to spare, so first: " + word.List(where) + ")"
}

// tryGauge says what is tried before a slat is nailed.
func (b *builder) tryGauge() string {
	if !b.gauged(true) {
		return ""
	}
	return fmt.Sprintf(" Before the nails go home try the upright gauge (%s) from each slat to the next%s: GO enters; NO-GO, where it has one, does not.", b.see(GaugeSheets), b.tight(true))
}

// wrote asks for diagonals to be written down while they can be measured.
func (b *builder) wrote() string {
	return " Write the diagonals down (" + b.see(InspectSheets.Of(Squares)) + ")."
}

// wroteEnds asks for those of the ladders that have one face alone, where others
// get a second one.
func (b *builder) wroteEnds(second int) string {
	if second == 0 {
		return b.wrote()
	}
	return fmt.Sprintf(" Write the end ladders' diagonals down (%s); those of the inner ones only when their second face is on.", b.see(InspectSheets.Of(Squares)))
}
