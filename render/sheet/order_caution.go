package sheet

import (
	"strings"

	"slatwright/geometry/check"
	"slatwright/render/drawing"
)

// cautions stand on the order sheet. They are the usual ones of the trade and
// leave the word to whoever knows the tool, the building or the law. Whether the
// rack is to be anchored is said in the words of the check, so that the packet
// has one verdict.
func cautions(in Input) []string {
	return []string{
		"Sawing, planing: guards on, push sticks, eyes and ears protected, as the machine's maker says; rip no blank shorter than he allows.",
		"Fastening: bore for nails near ends, protect the eyes, keep hands out of the nail's way. Dust: draw it off and wear a mask.",
		"Finish: air the room as the tin says. Rags wet with oil can catch fire by themselves: dry them flat outdoors or keep them in a closed metal can with water.",
		"Tipping: " + tipping(in),
		"Makers' instructions and local codes go before this sheet. The figures are computed, not tested; no standard is claimed to be met.",
	}
}

// tipping is the check's verdict, and what no figure knows.
func tipping(in Input) string {
	const who = "Licensed people judge floor, wall and fixings where local codes ask for it."
	for _, f := range in.Findings {
		if f.Name == "stand.anchor" && f.Status != check.OK {
			return verdict(in.Findings, f.Name) + " " + who
		}
	}
	return strings.TrimSpace(verdict(in.Findings, "stand.anchor") +
		" Anchor it all the same where children may climb it or the floor gives, and load it from the bottom up. " + who)
}

// tradeCautions writes the cautions of the trade at the foot of a box and
// returns what is left over them.
func tradeCautions(p *page, box drawing.Rect) drawing.Rect {
	const gap = 5 * drawing.MM
	foot := box
	list := cautions(p.in)
	box.Max.Y -= needed(list, box.W(), gap) + 8*drawing.MM
	foot.Min.Y = box.Max.Y + 2*drawing.MM
	w := newScribe(p.sheet, foot)
	w.heading("Cautions")
	for _, c := range list {
		w.note(c, gap)
	}
	return box
}
