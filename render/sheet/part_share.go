package sheet

import (
	"slices"

	"slatwright/render/drawing"
)

// sharedOut divides the blocks, in their order, between as few sheets as show
// none of them smaller than at half its largest scale, or without figures that it
// has room for there; where a block needs that by itself, as small as it needs. Of
// the ways to do so, one that shows them largest and, of those, fills the sheets
// most alike.
func sharedOut(p *page, blocks []partBlock) [][]partBlock {
	var best [][]partBlock
	for n := 1; n <= len(blocks); n++ {
		least := int64(-1)
		splits(len(blocks), n, func(ends []int) {
			var groups [][]partBlock
			from, sum, fullest := 0, int64(0), drawing.Um(0)
			for _, to := range ends {
				g, cost := shrunk(p, slices.Clone(blocks[from:to]))
				if g == nil {
					return
				}
				groups, sum, from = append(groups, g), sum+cost, to
				fullest = max(fullest, stacked(p, g))
			}
			sum = sum*int64(p.area.H()) + int64(fullest)
			if least < 0 || sum < least {
				best, least = groups, sum
			}
		})
		if least >= 0 {
			return best
		}
	}
	for _, b := range blocks { // by themselves, whatever their size
		best = append(best, []partBlock{b})
	}
	return best
}

// stacked is the height of blocks one below the other.
func stacked(p *page, blocks []partBlock) drawing.Um {
	sum := -partGap
	for _, b := range blocks {
		sum += b.height(p) + partGap
	}
	return sum
}

// splits calls f with the ends of every way to cut n things in a row into k
// groups.
func splits(n, k int, f func(ends []int)) {
	ends := make([]int, k)
	ends[k-1] = n
	var place func(i, from int)
	place = func(i, from int) {
		if i == k-1 {
			f(ends)
			return
		}
		for to := from + 1; to <= n-(k-1-i); to++ {
			ends[i] = to
			place(i+1, to)
		}
	}
	place(0, 0)
}

// shrunk returns the blocks at scales at which they go on one sheet, the highest
// reduced first, and how many steps were taken; nil where one of several would
// come out at less than half its largest scale or lose figures, or one by itself
// out of all sense.
func shrunk(p *page, blocks []partBlock) (fitted []partBlock, steps int64) {
	largest := make([]int64, len(blocks))
	for i, b := range blocks {
		largest[i] = b.scale
	}
	for {
		high, which := drawing.Um(0), 0
		for i, b := range blocks {
			if v := b.picture(p).extent(b.scene).H(); v > high {
				high, which = v, i
			}
		}
		if stacked(p, blocks) <= p.area.H() {
			return blocks, steps
		}
		b := &blocks[which]
		before := b.figures(p)
		b.scale = nextScale(p.in, b.scale)
		steps++
		if len(blocks) > 1 && b.figures(p) < before {
			return nil, 0
		}
		most := 2*largest[which] + largest[which]/2
		if len(blocks) == 1 {
			most *= 20
		}
		if b.scale > most {
			return nil, 0
		}
	}
}

// figures counts the rows of figures along the part.
func (b partBlock) figures(p *page) (n int) {
	v := b.picture(p)
	if _, stops := b.stops(p, v, v.extent(b.scene)); len(stops) > 0 {
		n++
	}
	if b.nailed() && b.nailFigures(p) {
		n++
	}
	return n
}
