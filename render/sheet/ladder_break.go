package sheet

import (
	"slices"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// A ladder with more slats than figures go beside it is drawn in stretches, one
// after the other from the foot, each broken off between two slats and large
// enough for every figure to stand at its slat.

// A strip is one stretch of a face on a sheet: slats first up to before last,
// and the legs from lo to hi.
type strip struct {
	face        ladderFace
	first, last int
	lo, hi      length
	v           picture
}

// whole is a face drawn in one piece.
func (f ladderFace) whole(r *rack.Rack, v picture) strip {
	return strip{face: f, last: len(f.under), hi: r.Len("leg.length"), v: v}
}

// crowded reports whether a face's figures take more room than its picture and
// a little at either end.
func (f ladderFace) crowded(r *rack.Rack, v picture) bool {
	need := dim.RunningRow * drawing.Um(len(f.under)+2)
	return need > v.extent(f.scene(r)).W()+2*dim.RunningRow
}

// cuts are the places where a face may be broken off: its foot, the middles
// between slats, and its top.
func (f ladderFace) cuts(r *rack.Rack) []length {
	out := []length{0}
	for i := 1; i < len(f.under); i++ {
		top := f.under[i-1] + r.Len("slat.height")
		out = append(out, top+(f.under[i]-top)/2)
	}
	return append(out, r.Len("leg.length"))
}

// stretches divides a face into as few strips as a box's width allows at a scale
// at which the figures stand at their slats, all about equally long.
func (f ladderFace) stretches(in Input, box drawing.Rect, den int64) []strip {
	r, width := in.Rack, box.W()
	cuts := f.cuts(r)
	v := picture{proj: view.Projection{Direction: f.from(), Num: 1, Den: den}, lies: true}
	reach := length(v.proj.Den) * length(width) * unit.Micrometre
	most := int(width/dim.RunningRow) - 1
	fewest := len(divide(cuts, reach, most))
	for tight := cuts[len(cuts)-1] / length(fewest); tight < reach; tight += reach / 50 {
		if d := divide(cuts, tight, most); d != nil && len(d) == fewest {
			reach = tight
			break
		}
	}
	var out []strip
	from := 0
	for _, to := range divide(cuts, reach, most) {
		out = append(out, strip{face: f, first: from, last: min(to, len(f.under)), lo: cuts[from], hi: cuts[to], v: v})
		from = to
	}
	return out
}

// divisor returns the scale of a broken face: the smallest picture at which
// neighbouring slats leave room for their figures, or, where a single way
// between two cuts is longer than the box is wide then, or the ladder deeper than
// it is high, one that holds it.
func (f ladderFace) divisor(in Input, cuts []length, box drawing.Rect) int64 {
	rise := cuts[len(cuts)-1]
	for i := 1; i < len(f.under); i++ {
		rise = min(rise, f.under[i]-f.under[i-1])
	}
	den := smallestScale(in, func(den int64) bool { return rise >= length(dim.RunningRow)*unit.Micrometre*length(den) })
	return max(den, largestScale(in, func(den int64) bool { return f.holds(in, box, den) }))
}

// holds reports whether a box holds a strip of a broken face at a scale: its
// longest way between two cuts, and the ladder's depth.
func (f ladderFace) holds(in Input, box drawing.Rect, den int64) bool {
	way, cuts := length(0), f.cuts(in.Rack)
	for i := 1; i < len(cuts); i++ {
		way = max(way, cuts[i]-cuts[i-1])
	}
	high := length(box.H()-ladderTitle-ladderAbove-ladderFrom) * unit.Micrometre
	return in.Rack.Len("slat.length") <= high*length(den) && way <= length(box.W())*unit.Micrometre*length(den)
}

// divide returns the numbers of the cuts at which stretches end, each as far on
// as its reach and the most slats allow; nil where not even one slat goes in.
func divide(cuts []length, reach length, most int) []int {
	var out []int
	for from := 0; from < len(cuts)-1; {
		to := from
		for to < len(cuts)-1 && cuts[to+1]-cuts[from] <= reach && to-from < most {
			to++
		}
		if to == from {
			return nil
		}
		out = append(out, to)
		from = to
	}
	return out
}

// scene returns what the strip shows of its face.
func (s strip) scene(r *rack.Rack) view.Scene {
	all := s.face.scene(r)
	all.Boxes = slices.DeleteFunc(all.Boxes, func(b view.Solid) bool { return b.Box.Max.Z <= s.lo || b.Box.Min.Z >= s.hi })
	for i := range all.Boxes {
		b := &all.Boxes[i].Box
		b.Min.Z, b.Max.Z = max(b.Min.Z, s.lo), min(b.Max.Z, s.hi)
	}
	return all
}

// broken reports whether the strip is broken off at a height.
func (s strip) broken(r *rack.Rack, z length) bool {
	return z == s.lo && z > 0 || z == s.hi && z < r.Len("leg.length")
}

// breaks draws the lines along which a strip is broken off.
func (s strip) breaks(sheet *drawing.Sheet, r *rack.Rack, v picture, out drawing.Rect) {
	const over = 3 * drawing.MM
	for _, z := range []length{s.lo, s.hi} {
		if s.broken(r, z) {
			x := v.point(space.Point{Z: z}).X
			sheet.Add(drawing.BreakLine(0, drawing.Pt(x, out.Min.Y-over), drawing.Pt(x, out.Max.Y+over)))
		}
	}
}
