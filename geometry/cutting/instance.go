package cutting

import (
	"math"
	"sort"

	"slatwright/specs/unit"
)

// A size is that of a finished part or of a stave.
type size struct{ thick, width, length unit.Length }

// A kind is everything that is cut to one size, whatever order it is for.
type kind struct {
	size
	need  int // pieces; those of glued-up parts come to it when their staves are chosen
	wants []want
	tops  []topUse // the glued-up parts that it can make up
}

// A want is what one part asks of a kind, in the order of the job.
type want struct {
	part          int
	count, spares int // pieces, or staves where staves > 0
	staves        int // staves in one part
	top           int // the size of the glued-up part, where staves > 0
}

// A topUse is one way to make up the glued-up parts of one size: so many
// staves of the kind in each of so many parts.
type topUse struct{ top, staves, parts int }

// A source is a board used in one way: as it is, planed, or resawn.
type source struct {
	board         int // index into Job.Boards
	process       Process
	leaves        int
	thick         unit.Length // of what is cut from it
	width, usable unit.Length // full width; length between the end trims
	cost          int64
	limit         int // pieces, or -1
	capL          int // length capacity on the grid, one kerf added
	capW          int // width capacity of a ripped section, likewise
	limitRow      int // index among the limited boards, or -1
}

// An instance is a job with exact sizes on grids: a length l becomes the
// whole number (l + kerf) / step, so that pieces in a row fit when their
// numbers add up to no more than the capacity, which has a kerf added too.
type instance struct {
	shop    Shop
	kinds   []kind
	sources []source
	l, w    []int // sizes of the kinds on the grids
	ids     []int // of the kinds, the same in every part of an instance
	ripMin  int   // least length of a ripped section on the grid
	tops    []top
	scale   int64 // turns a price into the whole numbers that the bound is computed in
	step    int64 // greatest common divisor of the prices
}

// A top is the glued-up parts of one size: one of the ways makes them up.
type top struct {
	id    int // as in topUse
	parts int
	ways  []way
}

// A way is a kind of stave, and how many make up one part.
type way struct{ kind, staves int }

// sourcesFor lists every way to use every board for parts of the thicknesses
// given, in the order of the boards.
func sourcesFor(job Job, thicks []unit.Length) []source {
	var out []source
	for i, b := range job.Boards {
		for _, t := range thicks {
			out = append(out, waysToUse(job.Shop, i, b, t)...)
		}
	}
	return out
}

// waysToUse lists the processes that turn board b into stock of thickness t.
func waysToUse(shop Shop, i int, b Board, t unit.Length) []source {
	s := source{board: i, thick: t, leaves: 1, width: b.Width, usable: usable(shop, b), cost: b.Price, limit: -1, limitRow: -1}
	if b.OnHand > 0 {
		s.limit = b.OnHand
	}
	if s.usable <= 0 || b.Thickness < t {
		return nil
	}
	if b.Thickness == t {
		return []source{s}
	}
	var out []source
	if shop.PlaneMax == 0 || b.Thickness-t <= shop.PlaneMax {
		s.process = Planed
		out = append(out, s)
	}
	if n := leavesOf(shop, b, t); n > 0 {
		s.process, s.leaves = Resawn, n
		out = append(out, s)
	}
	return out
}

// leavesOf returns how many leaves of thickness t board b gives when resawn,
// 0 where it is too wide for the saw or one leaf could as well be planed.
func leavesOf(shop Shop, b Board, t unit.Length) int {
	if b.Width > shop.ResawHeight {
		return 0
	}
	kerf := resawKerf(shop)
	leaf := t + shop.ResawAllowance + kerf
	n := int((b.Thickness + kerf) / leaf)
	if n == 1 && shop.PlaneMax > 0 && b.Thickness-t > shop.PlaneMax {
		return 1 // too much to plane off, but one leaf can be sawn
	}
	if n < 2 {
		return 0
	}
	return n
}

func resawKerf(shop Shop) unit.Length {
	if shop.ResawKerf > 0 {
		return shop.ResawKerf
	}
	return shop.Kerf
}

// usable is the length of a board between its end trims.
func usable(shop Shop, b Board) unit.Length {
	if b.CleanEnds {
		return b.Length
	}
	return b.Length - 2*shop.EndTrim
}

// fits reports whether a piece can be cut from a source, by itself.
func fits(shop Shop, s source, thick, width, length unit.Length) bool {
	return s.thick == thick && fitsLength(shop, s, width, length) && fitsWidth(shop, s, width)
}

func fitsWidth(shop Shop, s source, width unit.Length) bool {
	return width == s.width || width <= s.width-2*shop.EdgeTrim
}

// fitsLength also refuses a rip in a board too short to be ripped at all.
func fitsLength(shop Shop, s source, width, length unit.Length) bool {
	return length <= s.usable && (width == s.width || shop.MinRipLength <= s.usable)
}

// newInstance puts kinds and sources on their grids; sources that serve no
// kind are left out. Kinds and sources keep their order.
func newInstance(shop Shop, kinds []kind, sources []source) *instance {
	in := &instance{shop: shop, kinds: kinds}
	var stepL, stepW unit.Length
	for _, k := range kinds {
		stepL = gcd(stepL, k.length+shop.Kerf)
		stepW = gcd(stepW, k.width+shop.Kerf)
		if k.length < shop.MinRipLength { // a section may be just as long as a rip asks for
			stepL = gcd(stepL, shop.MinRipLength+shop.Kerf)
		}
	}
	for _, k := range kinds {
		in.l = append(in.l, int((k.length+shop.Kerf)/stepL))
		in.w = append(in.w, int((k.width+shop.Kerf)/stepW))
		in.ids = append(in.ids, len(in.ids))
	}
	in.ripMin = int((shop.MinRipLength + shop.Kerf + stepL - 1) / stepL)
	in.gatherTops()
	total := 0
	for _, k := range kinds {
		total += k.most()
	}
	rows := map[int]int{}
	for _, s := range sources {
		if !servesAny(shop, s, kinds) {
			continue
		}
		s.capL = int((s.usable + shop.Kerf) / stepL)
		s.capW = int(max(0, s.width-2*shop.EdgeTrim+shop.Kerf) / stepW)
		if s.limit >= 0 {
			s.limit = min(s.limit, total)
			if _, ok := rows[s.board]; !ok {
				rows[s.board] = len(rows)
			}
			s.limitRow = rows[s.board]
		}
		in.sources = append(in.sources, s)
	}
	_, in.step = in.prices()
	in.setScale(total)
	return in
}

// finestScale is the scale of prices that are not out of all proportion.
const finestScale = 1 << 20

// unmet is how many times the dearest board a part costs that is not cut, in
// the linear program.
const unmet = 1000

// setScale chooses the scale so that no sum of prices overflows: not that of
// all parts wanted, nor that of all parts a board could hold.
func (in *instance) setScale(total int) {
	most := max(1, total)
	for _, s := range in.sources {
		for k := range in.kinds {
			most = max(most, s.leaves*(s.capL/in.l[k]+1)*(s.capW/in.w[k]+1))
		}
	}
	most = min(most, 1<<40)
	in.scale = finestScale
	for in.scale > 1 && in.dearest() > math.MaxInt64/2/unmet/int64(most)/in.scale {
		in.scale /= 2
	}
}

// dearest is the highest price, at least 1.
func (in *instance) dearest() int64 {
	out := int64(1)
	for _, s := range in.sources {
		out = max(out, s.cost)
	}
	return out
}

// most is how many pieces of the kind any plan needs.
func (k *kind) most() int {
	n := k.need
	for _, u := range k.tops {
		n += u.staves * u.parts
	}
	return n
}

func servesAny(shop Shop, s source, kinds []kind) bool {
	for _, k := range kinds {
		if fits(shop, s, k.thick, k.width, k.length) {
			return true
		}
	}
	return false
}

// gcd is the greatest common divisor; gcd(0, b) is b.
func gcd(a, b unit.Length) unit.Length {
	for a != 0 {
		a, b = b%a, a
	}
	return b
}

// split divides an instance into parts that share no board: thicknesses stand
// alone unless a board on hand could serve several of them.
func split(shop Shop, kinds []kind, sources []source) []*instance {
	group := map[unit.Length]unit.Length{}
	var thicks []unit.Length
	for _, k := range kinds {
		if _, ok := group[k.thick]; !ok {
			group[k.thick] = k.thick
			thicks = append(thicks, k.thick)
		}
	}
	first := map[int]unit.Length{} // the first thickness a limited board serves
	for _, s := range sources {
		if _, ok := group[s.thick]; !ok || s.limit < 0 || !servesAny(shop, s, kinds) {
			continue
		}
		if t, ok := first[s.board]; ok {
			merge(group, thicks, group[t], group[s.thick])
		} else {
			first[s.board] = s.thick
		}
	}
	sort.Slice(thicks, func(i, j int) bool { return thicks[i] < thicks[j] })
	var out []*instance
	for _, root := range thicks {
		if group[root] != root {
			continue
		}
		var ks []kind
		for _, k := range kinds {
			if group[k.thick] == root {
				ks = append(ks, k)
			}
		}
		var ss []source
		for _, s := range sources {
			if g, ok := group[s.thick]; ok && g == root {
				ss = append(ss, s)
			}
		}
		out = append(out, newInstance(shop, ks, ss))
	}
	return out
}

// merge joins two groups of thicknesses under the smaller name.
func merge(group map[unit.Length]unit.Length, thicks []unit.Length, a, b unit.Length) {
	if a > b {
		a, b = b, a
	}
	for _, t := range thicks {
		if group[t] == b {
			group[t] = a
		}
	}
}
