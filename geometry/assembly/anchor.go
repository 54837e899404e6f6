package assembly

import (
	"fmt"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/specs/table"
)

// onCounter reports whether a rack that needs no anchor is so low that it may stand
// on a counter.
func onCounter(r *rack.Rack) bool {
	n, _ := check.Anchors(r)
	return n == 0 && r.Len("rack.height") < table.Length("tip.height")
}

// Anchoring is what stand.anchor asks for, in a sentence or two: the steps and
// the cautions say it in the same words.
func Anchoring(r *rack.Rack) string {
	if n, each := check.Anchors(r); n > 0 {
		return fmt.Sprintf("Anchor it before loading: near the top, at %d places, by brackets from the back upper apron to studs or masonry, each to bear %s, as the anchors' maker and local codes say.", n, each)
	}
	if onCounter(r) {
		return "It needs no anchor on a firm, level floor; on a counter fix it there: angle brackets behind, screws shorter than bracket and wood together."
	}
	return "It needs no anchor on a firm, level floor; anchor it all the same where children climb or the floor gives."
}
