package sheet

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/drawing"
)

// mostPoints is how many places on a part are tried for the end of a leader.
const mostPoints = 48

// mostCrossed is how many lines of parts the leader of some words may cross: those
// of the leg and the slat of an end ladder before an inner one.
const mostCrossed = 4

// tagged returns a tag for each kind of part and, where the row is shortened,
// words for each ladder shown, all in their places. Leaders end on lines that
// are in sight, of pieces that stand apart rather than of others.
func (p *page) tagged(show row, v picture, lines []view.Line, loose map[int]bool, box drawing.Rect) []tag {
	r := show.rack
	var strokes []stroke
	for _, l := range lines {
		strokes = append(strokes, stroke{v.point(l.From), v.point(l.To), r.Pieces[l.ID].Part, l.Kind == view.Way})
	}
	var tags, blocks []tag
	for k, part := range r.Parts {
		own := linesOf(lines, func(l view.Line) bool { return r.Pieces[l.ID].Part == k && !show.torn(l) })
		if apart := linesOf(own, func(l view.Line) bool { return loose[l.ID] }); len(apart) > 0 {
			own = apart
		}
		if len(own) == 0 {
			continue // hidden altogether, as only blocks can be
		}
		t := tag{mark: part.Mark, owner: k, points: v.pointsOn(own)}
		if show.blocks(t) {
			blocks = append(blocks, t)
			continue
		}
		tags = append(tags, t)
	}
	marks := len(tags)
	if len(show.breaks) > 0 {
		named := map[int]bool{}
		for _, i := range show.shown {
			shape := r.Ladders[i].Shape
			own := linesOf(lines, func(l view.Line) bool {
				q := r.Pieces[l.ID]
				return q.Ladder >= 0 && r.Ladders[q.Ladder].Shape == shape && r.Parts[q.Part].Name == "leg"
			})
			if len(own) > 0 && !named[shape] {
				tags = append(tags, tag{words: howMany(r, shape), owner: r.Pieces[own[0].ID].Part, points: v.pointsOn(own)})
			}
			named[shape] = true
		}
	}
	tags = append(tags, p.named(show, v, lines)...)
	return p.settled(show, tags, marks, blocks, strokes, box)
}

// settled places the tags, of which the first are marks and the rest words, and
// returns those that stay: words that have no good place are left out, and so is
// the blocks' mark. That comes first, before the words, last or not at all,
// whichever leaves the fewest other marks in bad places and then most tags.
func (p *page) settled(show row, tags []tag, marks int, blocks []tag, strokes []stroke, box drawing.Rect) (best []tag) {
	least := -1
	for _, all := range [][]tag{
		slices.Concat(blocks, tags), slices.Insert(slices.Clone(tags), marks, blocks...), slices.Concat(tags, blocks), slices.Clone(tags),
	} {
		place(all, strokes, box)
		var out []tag
		bad := 0
		for i, t := range all {
			good := p.stands(t, all[:i], strokes)
			if t.mark != "" && !show.blocks(t) {
				if !good {
					bad++
				}
				good = true
			}
			if good {
				out = append(out, t)
			}
		}
		if least < 0 || bad < least || bad == least && len(out) > len(best) {
			best, least = out, bad
		}
	}
	return best
}

// stands reports whether a tag's place is good enough.
func (p *page) stands(t tag, before []tag, strokes []stroke) bool {
	if t.mark != "" {
		return t.crossed(strokes) < mostCrossed && !t.meets(before)
	}
	return t.crossed(strokes) <= mostCrossed && p.area.Holds(t.label(0).Bounds()) && !t.meets(before)
}

// blocks reports whether a tag is the mark of the blocks under the top.
func (w row) blocks(t tag) bool { return t.mark != "" && w.rack.Parts[t.owner].Name == "block" }

// named returns words for each apron and, where all ladders are shown, for the
// first and the last of them, from which the others are counted.
func (p *page) named(show row, v picture, lines []view.Line) []tag {
	r := show.rack
	var tags []tag
	add := func(words string, which func(l view.Line) bool) {
		if own := linesOf(lines, which); len(own) > 0 {
			tags = append(tags, tag{words: words, owner: r.Pieces[own[0].ID].Part, points: v.pointsOn(own)})
		}
	}
	for i, q := range r.Pieces {
		if r.Parts[q.Part].Name != "apron" {
			continue
		}
		_, where, _ := strings.Cut(q.Name, ", ")
		add(where+" apron", func(l view.Line) bool { return l.ID == i && !show.torn(l) })
	}
	last := len(r.Ladders) - 1
	if len(show.breaks) > 0 || last < 1 {
		return tags
	}
	for _, n := range []int{0, last} {
		add(fmt.Sprintf("ladder %d", n+1), func(l view.Line) bool {
			q := r.Pieces[l.ID]
			return q.Ladder == n && r.Parts[q.Part].Name == "leg"
		})
	}
	return tags
}

// linesOf returns the lines of pieces that which says yes to.
func linesOf(lines []view.Line, which func(view.Line) bool) []view.Line {
	var out []view.Line
	for _, l := range lines {
		if l.Kind != view.Way && !l.Arc && which(l) {
			out = append(out, l)
		}
	}
	return out
}

// pointsOn returns places on the longer ones of some lines: their middles and
// the middles of their halves.
func (v picture) pointsOn(lines []view.Line) []drawing.Point {
	reach := func(l view.Line) length {
		d := l.To.Sub(l.From)
		return max(d.X.Abs(), d.Y.Abs(), d.Z.Abs())
	}
	var longest length
	for _, l := range lines {
		longest = max(longest, reach(l))
	}
	var points []drawing.Point
	for _, l := range lines {
		if reach(l) < longest/2 {
			continue
		}
		for n := length(1); n <= 3; n++ {
			points = append(points, v.point(quartered(l.From, l.To, n)))
		}
	}
	return few(points, mostPoints)
}

// quartered returns the place so many quarters of the way from a to b.
func quartered(a, b space.Point, n length) space.Point {
	d := b.Sub(a)
	return a.Add(space.Point{X: d.X * n / 4, Y: d.Y * n / 4, Z: d.Z * n / 4})
}
