package dim

import (
	"slices"

	"slatwright/render/drawing"
	"slatwright/render/typeface"
)

// slot is a figure that is to stand near want and takes size along a track.
type slot struct {
	want, size, at drawing.Um
	runs           []typeface.Run
}

// spread sets the slots in the order of want, none over another, with the least
// sum of squared shifts: runs of slots that touch are moved as one (pooling of
// adjacent violators).
func spread(slots []slot) {
	slices.SortStableFunc(slots, func(a, b slot) int { return int(a.want - b.want) })
	type block struct {
		first, n  int
		size, sum drawing.Um // sum of the wished left ends of the block, slot by slot
	}
	var blocks []block
	left := func(b block) drawing.Um { return b.sum / drawing.Um(b.n) }
	for i, s := range slots {
		blocks = append(blocks, block{i, 1, s.size, s.want - s.size/2})
		for len(blocks) > 1 {
			a, z := blocks[len(blocks)-2], blocks[len(blocks)-1]
			if left(a)+a.size <= left(z) {
				break
			}
			// Each slot of z wishes the whole block further left by a's size.
			merged := block{a.first, a.n + z.n, a.size + z.size, a.sum + z.sum - a.size*drawing.Um(z.n)}
			blocks = append(blocks[:len(blocks)-2], merged)
		}
	}
	for _, b := range blocks {
		at := left(b)
		for i := b.first; i < b.first+b.n; i++ {
			slots[i].at = at + slots[i].size/2
			at += slots[i].size
		}
	}
}
