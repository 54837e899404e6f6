package cutting

import "slices"

// A box is the set of demand vectors of a few kinds, each count from 0 to its
// need. A table over the box holds, for every choice of counts of all kinds
// but one, the most of that one (the pivot) that comes with it, or -1. Tables
// are closed downwards: what gives more gives less too. That makes the test
// for dominated patterns a single look-up.
type box struct {
	kinds  []int // the instance's kinds, pivot last
	need   []int
	stride []int // of the kinds but the pivot
	size   int
	digits [][]int
	slab   []entry
	listed []int32 // by maximal
}

// A vec counts the pieces of each kind of a box, in the box's order.
type vec []int

// newBox returns the box of the kinds, or nil when its tables would have more
// than limit entries.
func newBox(kinds, need []int, limit int) *box {
	b := &box{}
	pivot := 0
	for i := range kinds {
		if need[i] > need[pivot] {
			pivot = i
		}
	}
	add := func(i int) {
		b.kinds = append(b.kinds, kinds[i])
		b.need = append(b.need, need[i])
	}
	b.size = 1
	for i := range kinds {
		if i != pivot {
			add(i)
			b.stride = append(b.stride, b.size)
			b.size *= need[i] + 1
			if b.size > limit {
				return nil
			}
		}
	}
	add(pivot)
	b.digits = make([][]int, b.size)
	flat := make([]int, b.size*len(b.stride))
	for j := range b.digits {
		d := flat[j*len(b.stride) : (j+1)*len(b.stride)]
		for i, rest := 0, j; i < len(d); i++ {
			d[i] = rest % (b.need[i] + 1)
			rest /= b.need[i] + 1
		}
		b.digits[j] = d
	}
	return b
}

func (b *box) pivot() int { return len(b.kinds) - 1 }

// shift returns where each entry goes when v is added, clipped at the needs.
func (b *box) shift(v vec) []int32 {
	out := make([]int32, b.size)
	for j, d := range b.digits {
		to := 0
		for i, s := range b.stride {
			to += s * min(d[i]+v[i], b.need[i])
		}
		out[j] = int32(to)
	}
	return out
}

// vector returns entry j with so many of the pivot.
func (b *box) vector(j, pivot int) vec {
	v := make(vec, len(b.kinds))
	copy(v, b.digits[j])
	v[b.pivot()] = pivot
	return v
}

// An entry of a table: the most of the pivot, and how it came about: the item
// last added and the entry it was added to. item < 0 says that the entry is
// that of the position before.
type entry struct {
	pivot int32
	item  int32
	prev  int32
}

// fresh returns a table that holds nothing but the empty choice.
func (b *box) fresh() []entry {
	t := make([]entry, b.size)
	for j := 1; j < b.size; j++ {
		t[j].pivot = -1
	}
	for j := range t {
		t[j].item = -1
		t[j].prev = int32(j)
	}
	return t
}

// inherit makes a table that starts as a copy of another position's. Tables
// are cut from larger slabs, which spares the allocator.
func (b *box) inherit(from []entry) []entry {
	if len(b.slab) < b.size {
		b.slab = make([]entry, max(b.size, 1<<13))
	}
	t := b.slab[:b.size:b.size]
	b.slab = b.slab[b.size:]
	for j := range t {
		t[j] = entry{from[j].pivot, -1, int32(j)}
	}
	return t
}

// A layer is a table and its entries that go on: those that no other
// dominates.
type layer struct {
	at   []entry
	live []int32
	same bool // the table is that of the layer before
}

func (l layer) asBefore() layer { return layer{l.at, l.live, true} }

// add improves table t with one more item put to the live choices of a layer.
// Table last is the one before, of which t becomes a copy when it is nil and
// something is gained.
func (b *box) add(t, last []entry, from layer, item int, shift []int32, pivot int) []entry {
	most := int32(b.need[b.pivot()])
	for _, j := range from.live {
		p := min(from.at[j].pivot+int32(pivot), most)
		to := shift[j]
		if p <= last[to].pivot {
			continue
		}
		if t == nil {
			t = b.inherit(last)
		}
		if p > t[to].pivot {
			t[to] = entry{p, int32(item), j}
		}
	}
	return t
}

// close makes the table closed downwards: kind by kind, from each count to the
// one below.
func (b *box) close(t []entry) {
	for i, s := range b.stride {
		span := s * (b.need[i] + 1)
		for end := b.size; end > 0; end -= span {
			low := t[end-span : end-s]
			high := t[end-span+s : end][:len(low)]
			for j := len(low) - 1; j >= 0; j-- {
				if high[j].pivot > low[j].pivot {
					low[j] = high[j]
				}
			}
		}
	}
}

// maximal lists the entries that no other dominates.
func (b *box) maximal(t []entry) []int32 {
	out := b.listed[:0]
	for j := range t {
		if t[j].pivot < 0 {
			continue
		}
		top := true
		for i, s := range b.stride {
			if b.digits[j][i] < b.need[i] && t[j+s].pivot >= t[j].pivot {
				top = false
				break
			}
		}
		if top {
			out = append(out, int32(j))
		}
	}
	b.listed = out
	return slices.Clone(out)
}

// worth returns what the digits of each entry are worth; the pivot comes to it.
func (b *box) worth(v []int64) (digits []int64, pivot int64) {
	digits = make([]int64, b.size)
	for j, d := range b.digits {
		for i, n := range d {
			digits[j] += v[b.kinds[i]] * int64(n)
		}
	}
	return digits, v[b.kinds[b.pivot()]]
}
