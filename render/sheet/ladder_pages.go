package sheet

import (
	"fmt"

	"slatwright/geometry/rack"
	"slatwright/render/drawing"
)

// ladders returns the sheets of the ladders, one for each kind; one for each
// face where two do not fit one above the other; and more of a face that has to
// be broken.
func ladders(in Input) []*page {
	var pages []*page
	for i := range in.Rack.Shapes {
		faces := facesOf(in.Rack, i)
		name := fmt.Sprintf("ladder-%d", i+1)
		which := rack.Places("ladder", in.Rack.LaddersOf(i))
		title := "L" + which[1:]
		in, groups := in, grouped(in, faces)
		up := in
		up.upright = true
		if g := grouped(up, faces); len(g) <= len(groups) && g[0].scale() < groups[0].scale() {
			in, groups = up, g
		}
		for k, g := range groups {
			n, t := name, title+g.title
			if len(groups) > 1 {
				n += suffix(k)
			}
			p := in.newPage(n, t)
			drawStrips(p, g, ladderNotes(in, i, k, len(groups)))
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

// stripGroup is what goes on one sheet and where, and what to add to its title.
type stripGroup struct {
	ladderLayout
	strips []strip
	title  string
}

// scale is the divisor of the scale of a sheet's strips.
func (g stripGroup) scale() int64 { return g.strips[0].v.proj.Den }

// grouped divides the faces of a ladder into sheets.
func grouped(in Input, faces []ladderFace) []stripGroup {
	r := in.Rack
	blank := in.newPage("", "")
	layouts := ladderLayouts(blank, faces[0].shape)
	var out []stripGroup
	if anyCrowded(blank, r, layouts, faces) {
		for _, f := range faces {
			out = append(out, f.pages(in, layouts)...)
		}
		return out
	}
	for _, f := range faces {
		fit := ladderFits(blank, layouts, []ladderFace{f})
		out = append(out, stripGroup{fit.ladderLayout, []strip{f.whole(r, fit.v)}, f.suffix()})
	}
	// Two go on one sheet where each is as large there as by itself.
	if both := ladderFits(blank, layouts, faces); len(faces) == 2 && both.fits && both.v.proj.Den == out[0].scale() {
		return []stripGroup{{both.ladderLayout, []strip{faces[0].whole(r, both.v), faces[1].whole(r, both.v)}, ""}}
	}
	return out
}

// suffix is what the name of a face adds to a title.
func (f ladderFace) suffix() string {
	if f.name == "" {
		return ""
	}
	return ", " + handed(f.right)
}

// pages divides the stretches of a broken face into sheets, as many on each: at
// the largest scale that takes no more sheets than the least one, in the layout
// that takes the fewest.
func (f ladderFace) pages(in Input, layouts []ladderLayout) []stripGroup {
	var best []stripGroup
	for _, l := range layouts {
		g := f.pagesIn(in, l)
		if best == nil || len(g) < len(best) || len(g) == len(best) && g[0].scale() < best[0].scale() {
			best = g
		}
	}
	return best
}

// pagesIn divides a broken face into sheets of one layout.
func (f ladderFace) pagesIn(in Input, l ladderLayout) []stripGroup {
	least := f.divisor(in, f.cuts(in.Rack), l.room)
	strips, n := f.spread(in, l.room, least)
	for _, den := range shopScales(in) {
		if den >= least {
			break
		}
		if larger, sheets := f.spread(in, l.room, den); sheets > 0 && sheets <= n {
			strips, n = larger, sheets
			break
		}
	}
	var out []stripGroup
	for i := range n {
		g := stripGroup{l, strips[len(strips)*i/n : len(strips)*(i+1)/n], f.suffix()}
		if n > 1 {
			g.title += fmt.Sprintf(", stretch %d of %d", i+1, n)
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
	high := ladderTitle + ladderAbove + ladderFrom + strips[0].v.extent(f.scene(in.Rack)).H()
	most := max(1, int(room.H()/high))
	return strips, (len(strips) + most - 1) / most
}
