package assembly

import (
	"fmt"

	"slatwright/geometry/fixing"
	"slatwright/specs/word"
)

// bore is what is bored before any finish: the back upper apron for the blocks'
// screws, and the top for those in the slots, which no drill reaches when it is
// on. It returns the last step of the parts.
func (b *builder) bore(after int) int {
	t, ok := fixing.Of(b.r)
	if !ok || t.Glued {
		return after
	}
	f, bits := b.r.Format, fixing.BitsOf(b.r)
	n := b.add("Bore: apron", fmt.Sprintf("One apron %s, from now on the back upper one: %s for the blocks' screws, %s wide, through, as %s; on its outer face widen them with a countersink until a screw's head lies flush.",
		b.mark("apron"), word.Count(fixing.PerBlock*len(t.Middles), "hole"), f.Unit(bits.Clear), b.see(PartSheets.Of("apron"))), Span{}, after)
	b.bored = b.add("Bore: top", fmt.Sprintf("In the underside of the top %s bore %s for the screws in the slots, %s wide, %s deep: when it is on, no drill gets there. It is drawn %s thick: mind the depth, a stop on the bit. Places: the crosses of %s; from the front edge they hang on the wood's moisture today, so measure it first (%s).",
		b.mark("top"), word.Count(len(t.Middles), "hole"), f.Unit(bits.Pilot), f.Unit(t.Up.Into), f.Unit(b.r.Len("top.thickness")), b.see(PartSheets.Of("top")), b.see(TopSheet.Of(Places))), Span{}, b.topReady()...)
	return n
}
