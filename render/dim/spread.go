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

// spreadBetween is spread with walls that no slot may lie across: each slot
// keeps to the room between two walls that its wish is in, or where that is
// full, to the next on the nearer side.
func spreadBetween(slots []slot, walls []drawing.Um) {
	slices.SortStableFunc(slots, func(a, b slot) int { return int(a.want - b.want) })
	walls = slices.Compact(slices.Sorted(slices.Values(walls)))
	rooms := make([][]slot, len(walls)+1)
	for _, s := range slots {
		i, _ := slices.BinarySearch(walls, s.want)
		rooms[i] = append(rooms[i], s)
	}
	overflow(rooms, walls)
	n := 0
	for i, room := range rooms {
		spread(room)
		lo, hi := -far, far
		if i > 0 {
			lo = walls[i-1]
		}
		if i < len(walls) {
			hi = walls[i]
		}
		keep(room, lo, hi)
		n += copy(slots[n:], room)
	}
}

// far is farther than any sheet reaches.
const far drawing.Um = 1 << 40

// overflow moves slots out of rooms between walls that do not hold them, those
// of the left half to the left and the others to the right; the outermost rooms
// have no end.
func overflow(rooms [][]slot, walls []drawing.Um) {
	full := func(i int) bool {
		var sum drawing.Um
		for _, s := range rooms[i] {
			sum += s.size
		}
		return i > 0 && i < len(walls) && sum > walls[i]-walls[i-1]
	}
	half := len(rooms) / 2
	for i := half; i < len(walls); i++ {
		for full(i) {
			n := len(rooms[i]) - 1
			rooms[i+1] = slices.Insert(rooms[i+1], 0, rooms[i][n])
			rooms[i] = rooms[i][:n]
		}
	}
	for i := half - 1; i > 0; i-- {
		for full(i) {
			rooms[i-1] = append(rooms[i-1], rooms[i][0])
			rooms[i] = rooms[i][1:]
		}
	}
}

// keep pushes slots into the room from lo to hi, which holds them all.
func keep(slots []slot, lo, hi drawing.Um) {
	for i := range slots {
		slots[i].at = max(slots[i].at, lo+slots[i].size/2)
		lo = slots[i].at + slots[i].size/2
	}
	for i := len(slots) - 1; i >= 0; i-- {
		slots[i].at = min(slots[i].at, hi-slots[i].size/2)
		hi = slots[i].at - slots[i].size/2
	}
}
