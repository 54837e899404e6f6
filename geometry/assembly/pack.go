package assembly

import "fmt"

// laid says where the top goes on the standing rack.
func (b *builder) laid() string {
	over := func(name, where string) string {
		if l := b.r.Len(name); l > 0 { // an overhang is never negative
			return b.r.Format.Unit(l) + " over " + where
		}
		return "flush with " + where
	}
	return fmt.Sprintf("Stand the rack on its feet, lay the top on: %s, %s, %s.", over("overhang.side", "either side"), over("overhang.front", "the front"), over("overhang.back", "the back"))
}

// pack is how the rack leaves the shop, in the carton that the quote counts on.
func (b *builder) pack(after int) {
	if b.Sent == "" {
		return
	}
	text := "Padding on every side, nothing stuck to the wood; where the finish is not hard yet, soft paper under the padding. Sent " + b.Sent + ". Along with it: the cautions of the order sheet, spare labels."
	if b.r.Design.Price.Flat {
		text += " It goes out when it has stood dry (\"" + stepDry + "\"); what comes after that is done on site: send spacers, fastenings and glue along."
	}
	b.add(StepPack, text, Span{}, after)
}
