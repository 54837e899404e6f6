package sheet

import (
	"fmt"
	"slices"

	"slatwright/geometry/rack"
	"slatwright/render/drawing"
)

// ladders returns the sheets of the ladders, one for each kind; one for each
// face where two do not fit one above the other; and more of a face that has to
// be broken.
func ladders(in Input) []*page {
	var pages []*page
	for i, s := range in.Rack.Shapes {
		faces := facesOf(in.Rack, i)
		name := fmt.Sprintf("ladder-%d", i+1)
		which := rack.Places("ladder", in.Rack.LaddersOf(i))
		title := fmt.Sprintf("L%s of %d, %s", which[1:], len(in.Rack.Ladders), s.Name)
		groups := grouped(in, faces)
		for k, g := range groups {
			n, t := name, title+g.title
			if len(groups) > 1 {
				n += suffix(k)
			}
			p := in.newPage(n, t)
			drawStrips(p, g.strips, ladderNotes(in, i, k, len(groups), g.title))
			pages = append(pages, p)
		}
	}
	return pages
}

// suffix tells the sheets of one ladder apart: a to z, and after them aa, ab.
func suffix(k int) string {
	if k >= 26 {
		return suffix(k/26-1) + suffix(k%26)
	}
	return string(rune('a' + k))
}

// stripGroup is what goes on one sheet, and what to add to its title.
type stripGroup struct {
	strips []strip
	title  string
}

// grouped divides the faces of a ladder into sheets.
func grouped(in Input, faces []ladderFace) []stripGroup {
	r := in.Rack
	blank := in.newPage("", "")
	v, both := ladderFits(blank, faces)
	if !slices.ContainsFunc(faces, func(f ladderFace) bool {
		alone, _ := ladderFits(blank, []ladderFace{f})
		return f.crowded(r, alone)
	}) {
		if both || len(faces) == 1 {
			var all []strip
			for _, f := range faces {
				all = append(all, f.whole(r, v))
			}
			return []stripGroup{{strips: all}}
		}
		var out []stripGroup
		for _, f := range faces {
			v, _ := ladderFits(blank, []ladderFace{f})
			out = append(out, stripGroup{[]strip{f.whole(r, v)}, f.suffix()})
		}
		return out
	}
	var out []stripGroup
	for _, f := range faces {
		out = append(out, f.pages(in, blank)...)
	}
	return out
}

// suffix is what the name of a face adds to a title.
func (f ladderFace) suffix() string {
	if f.name == "" {
		return ""
	}
	return ", " + f.name
}

// pages divides the stretches of a broken face into sheets, as many on each: at
// the largest scale that takes no more sheets than the least one.
func (f ladderFace) pages(in Input, blank *page) []stripGroup {
	room := ladderRoom(blank, []ladderFace{f})
	least := f.divisor(in, f.cuts(in.Rack), room)
	strips, n := f.spread(in, room, least)
	for _, den := range shopScales(in) {
		if den >= least {
			break
		}
		if larger, sheets := f.spread(in, room, den); sheets > 0 && sheets <= n {
			strips, n = larger, sheets
			break
		}
	}
	var out []stripGroup
	for i := range n {
		g := stripGroup{strips: strips[len(strips)*i/n : len(strips)*(i+1)/n], title: f.suffix()}
		if n > 1 {
			g.title += fmt.Sprintf(", %d of %d", i+1, n)
		}
		out = append(out, g)
	}
	return out
}

// spread returns the stretches of a broken face at a scale and how many sheets
// they take, none where the scale is too large for the room.
func (f ladderFace) spread(in Input, room drawing.Rect, den int64) (strips []strip, sheets int) {
	if !f.holds(in, room, den) {
		return nil, 0
	}
	strips = f.stretches(in, room, den)
	high := ladderTitle + ladderBroken + ladderFrom + strips[0].v.extent(f.scene(in.Rack)).H()
	most := max(1, int(room.H()/high))
	return strips, (len(strips) + most - 1) / most
}
