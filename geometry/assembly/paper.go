package assembly

import (
	"fmt"

	"slatwright/geometry/fixing"
)

// templateCheck is what comes before any line is marked by a template.
const templateCheck = "Templates (printed apart): first hold a steel rule to the rulers on their first page; where these are out, mark by the figures instead. Cut out the strips and the cards."

// labels says when and how the labels go on.
func (b *builder) labels() string {
	return "Stick its label on each part, or bundle of parts where the label counts several, as it comes off the saw (printed apart, in this order: legs, ladder by ladder from the left; aprons; slats, ladder by ladder and row by row; top). " +
		"Parts of one size are alike: any of them may take any of their labels. The arrow points to the end or edge that it names. Before sanding takes a label off, write its ladder and number in pencil on an end."
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
		return fmt.Sprintf(" The top's screws reckon with all of its %s: where it comes out thinner, take screws shorter by as much.", f.Unit(drawn))
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
	text := ", spacers between them; try a bottle of every kind in the cells"
	if b.numbers == nil || b.numbers(GaugeSheets) != "" {
		text += ", and the gap gauges in the gaps, cut as on " + b.see(GaugeSheets)
	}
	return text
}

// wrote asks for diagonals to be written down while they can be measured.
func (b *builder) wrote() string { return " Write the diagonals down (" + b.see(InspectSheets) + ")." }
