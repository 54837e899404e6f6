package saw

import (
	"cmp"
	"slices"

	"slatwright/geometry/cutting"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Small is a kind of small piece that is no part of the plan: it is cut from what
// the boards leave, or from a piece that is bought for it.
type Small struct {
	Thick, Wide, Long unit.Length
	Count             int
	Together          bool // all from one piece, which is worked before it is cut up
}

// Found says what the pieces of one kind are cut from.
type Found struct {
	Cuts   []EndCut    // where on the boards they lie
	Boards []int       // of Plan.Boards whose ends serve, ascending
	Lack   int         // pieces that no end serves
	Buy    unit.Length // of those with a kerf each, 0 where there are none; Bought says how long a piece they take
}

// An EndCut is where pieces of one kind are cut off an end, next to each other with
// a kerf between: of which board and leaf, and how far from the board's near end and
// its near edge.
type EndCut struct {
	Board, Copy, Leaf      int // into Plan.Boards; of its boards cut alike, from 0; leaf
	At, Across, Long, Wide unit.Length
	Count                  int
}

// An end is what is left of a board when its parts are cut.
type end struct {
	board, copy, leaf int
	at, across        unit.Length // of its near corner
	thick, wide, long unit.Length
	raw               bool // over the whole width of the board, its near edge not jointed
}

// holdable is the least length of a piece that is cut without a clamp of its own.
func holdable() unit.Length {
	return table.Length("saw.crosscut")
}

// Held is what is left of a bought piece behind its last cut, so that it can be
// held there: as long as an end must be to be cut.
func Held() unit.Length { return holdable() }

// Bought is how long a piece must be from which so much is cut: with the trim of the
// end that the first cut is measured from and what holds it at the last cut, and
// long enough to be ripped from a wider one.
func Bought(cuts, endTrim unit.Length) unit.Length {
	return max(endTrim+cuts+Held(), table.Length("saw.short"))
}

// ends lists what is left of every board, the shortest first: ends of leaves in
// full width, ends of strips, and what lies beside strips.
func (p *Plan) ends() []end {
	shop := p.Job.Shop
	var out []end
	for i, b := range p.Boards {
		add := func(e end) {
			if e.wide <= 0 || e.long < holdable() {
				return
			}
			e.board, e.thick = i, b.Thickness
			for e.copy = range b.Count {
				out = append(out, e)
			}
		}
		from := make([]unit.Length, b.Leaves) // where what comes next on each leaf begins
		for leaf := range b.Leaves {
			if !b.Board.CleanEnds {
				from[leaf] = shop.EndTrim
			}
			if left, ok := p.uncut(b, leaf); ok {
				at := from[leaf]
				for _, s := range b.Sections {
					if s.Leaf == leaf {
						at += s.Length + shop.Kerf
					}
				}
				add(end{leaf: leaf, at: at, wide: b.Board.Width, long: left, raw: true})
			}
		}
		for _, s := range b.Sections {
			at := from[s.Leaf]
			from[s.Leaf] += s.Length + shop.Kerf
			if !s.Ripped {
				continue
			}
			across := shop.EdgeTrim
			for _, t := range s.Strips {
				run := unit.Length(0)
				for _, x := range t.Parts {
					run += x.Length + shop.Kerf
				}
				add(end{leaf: s.Leaf, at: at + run, across: across, wide: t.Width, long: s.Length - run})
				across += t.Width + shop.Kerf
			}
			add(end{leaf: s.Leaf, at: at, across: across, wide: b.Board.Width - shop.EdgeTrim - across, long: s.Length})
		}
	}
	slices.SortStableFunc(out, func(a, b end) int { return cmp.Compare(a.long, b.long) })
	return out
}

// uncut is how long a leaf goes on past its last section; not ok where a section
// takes all of it.
func (p *Plan) uncut(b cutting.BoardPlan, leaf int) (left unit.Length, ok bool) {
	left = b.Board.Length
	if !b.Board.CleanEnds {
		left -= 2 * p.Job.Shop.EndTrim
	}
	for _, s := range b.Sections {
		if s.Leaf == leaf {
			if s.Whole {
				return 0, false
			}
			left -= s.Length + p.Job.Shop.Kerf
		}
	}
	return left, left > 0
}

// An endCutter knows the ends that are still whole, what the saw takes, and how
// long a piece must be to be ripped.
type endCutter struct {
	ends            []end
	kerf, edge, rip unit.Length
}

// FromEnds says for each kind of small pieces, in turn, which boards' ends they
// are cut from, the shortest that serve first. An end is as thick as the piece and
// as wide, or wider and long enough to be ripped; it is never cut when it is
// shorter than a piece that asks for a clamp. Without a plan all are bought.
func (p *Plan) FromEnds(list []Small, kerf unit.Length) []Found {
	c := endCutter{kerf: kerf, rip: table.Length("saw.short")}
	if p != nil {
		c.ends, c.edge, c.rip = p.ends(), p.Job.Shop.EdgeTrim, max(c.rip, p.Job.Shop.MinRipLength)
	}
	out := make([]Found, len(list))
	for i, s := range list {
		out[i] = c.find(s)
	}
	return out
}

// find cuts the pieces of one kind.
func (c *endCutter) find(s Small) (out Found) {
	need, times := s.Long+c.kerf, s.Count
	if s.Together {
		need, times = unit.Length(s.Count)*need+holdable(), 1
	}
	for range times {
		k := slices.IndexFunc(c.ends, func(e end) bool { return c.serves(e, s, need) })
		if k < 0 {
			break
		}
		out.Boards = append(out.Boards, c.ends[k].board)
		cut := c.cut(k, s, need)
		cut.Count, cut.Long = s.Count, unit.Length(s.Count)*(s.Long+c.kerf)-c.kerf
		if !s.Together {
			cut.Count, cut.Long = 1, s.Long
		}
		out.Cuts = append(out.Cuts, cut)
		times--
	}
	if times > 0 {
		if out.Lack = times; s.Together {
			out.Lack = s.Count
		}
		out.Buy = unit.Length(out.Lack) * (s.Long + c.kerf)
	}
	slices.Sort(out.Boards)
	out.Boards = slices.Compact(out.Boards)
	return out
}

// serves reports whether so much of a piece's section can be cut off an end.
func (c *endCutter) serves(e end, s Small, need unit.Length) bool {
	if e.thick != s.Thick || e.long < max(need, holdable()) {
		return false
	}
	return e.wide == s.Wide || e.long >= c.rip && e.wide >= s.Wide+c.kerf+c.edge
}

// cut takes so much off end k, ripped first where it is wider, and says where; the
// ends stay in order.
func (c *endCutter) cut(k int, s Small, need unit.Length) EndCut {
	e := c.ends[k]
	c.ends = slices.Delete(c.ends, k, k+1)
	put := func(e end) {
		if e.wide <= 0 || e.long < holdable() {
			return
		}
		at, _ := slices.BinarySearchFunc(c.ends, e, func(a, b end) int { return cmp.Compare(a.long, b.long) })
		c.ends = slices.Insert(c.ends, at, e)
	}
	strip := e
	if e.wide > s.Wide {
		if e.raw { // its edge is jointed first
			strip.across += c.edge
		}
		beside := strip
		beside.raw, beside.across, beside.wide = false, strip.across+s.Wide+c.kerf, e.wide-s.Wide-c.kerf
		put(beside)
	}
	strip.raw, strip.wide = false, s.Wide
	rest := strip
	rest.at, rest.long = e.at+need, e.long-need
	put(rest)
	return EndCut{Board: e.board, Copy: e.copy, Leaf: e.leaf, At: strip.at, Across: strip.across, Wide: s.Wide}
}
