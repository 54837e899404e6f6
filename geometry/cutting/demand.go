package cutting

import (
	"fmt"
	"slices"
	"sort"

	"slatwright/specs/unit"
)

// mostPrice is the highest price of a board, in cents: sums of prices must not
// overflow.
const mostPrice = 1_000_000_000

// validate reports the first part, board or figure that cannot be meant.
func validate(job Job) error {
	for i := range job.Parts {
		p := &job.Parts[i]
		if p.Thickness <= 0 || p.Width <= 0 || p.Length <= 0 || p.Count < 0 || p.Spares < 0 {
			return &Error{Kind: ErrBadPart, Part: p, detail: "a size is not above zero or a count is negative", Help: "state three sizes above zero and counts of 0 or more"}
		}
	}
	for i := range job.Boards {
		b := &job.Boards[i]
		if b.Price < 0 {
			return &Error{Kind: ErrPrice, Board: b, Help: "state a price of 0 or more"}
		}
		if b.Price > mostPrice {
			return &Error{Kind: ErrBadBoard, Board: b, detail: "a price above 10 million", Help: "state the price of one board in cents"}
		}
		if b.Thickness <= 0 || b.Width <= 0 || b.Length <= 0 || b.OnHand < 0 {
			return &Error{Kind: ErrBadBoard, Board: b, detail: "a size is not above zero or on hand is negative", Help: "state three sizes above zero, on hand 0 or more"}
		}
	}
	s := job.Shop
	for _, l := range []unit.Length{s.Kerf, s.EndTrim, s.EdgeTrim, s.MinRipLength, s.PlaneMax, s.ResawHeight, s.ResawKerf,
		s.ResawAllowance, s.JointAllowance, s.GlueLength, s.StaveGrid, s.KeepOffcut} {
		if l < 0 {
			return &Error{Kind: ErrBadShop, Have: l, detail: "negative", Help: "state 0 or more"}
		}
	}
	if len(job.Boards) == 0 && wanted(job) {
		return &Error{Kind: ErrNoBoards, Help: "list a board that may be bought, or one on hand"}
	}
	return nil
}

func wanted(job Job) bool {
	for _, p := range job.Parts {
		if p.Count+p.Spares > 0 {
			return true
		}
	}
	return false
}

// thicknesses lists those of the parts wanted, ascending.
func thicknesses(job Job) []unit.Length {
	var out []unit.Length
	seen := map[unit.Length]bool{}
	for _, p := range job.Parts {
		if p.Count+p.Spares > 0 && !seen[p.Thickness] {
			seen[p.Thickness] = true
			out = append(out, p.Thickness)
		}
	}
	sort.Slice(out, func(i, j int) bool { return out[i] < out[j] })
	return out
}

// A stave is one way to make up a part in width: n staves of so much width.
type stave struct {
	n     int
	width unit.Length
}

// staveOptions returns the ways to glue up each part that no board is wide
// enough for; nil for the parts cut from one piece. A part that cannot be cut
// at all is reported.
func staveOptions(job Job, sources []source) ([][]stave, error) {
	out := make([][]stave, len(job.Parts))
	for i := range job.Parts {
		p := &job.Parts[i]
		if p.Count+p.Spares == 0 || cuttable(job.Shop, sources, p.Thickness, p.Width, p.Length) {
			continue
		}
		if err := tooThickOrLong(job, sources, p); err != nil {
			return nil, err
		}
		out[i] = staves(job.Shop, sources, *p)
		if len(out[i]) == 0 {
			widest := unit.Length(0)
			for _, s := range sources {
				if s.thick == p.Thickness && p.Length <= s.usable {
					widest = max(widest, s.width)
				}
			}
			return nil, &Error{Kind: ErrTooWide, Part: p, Have: widest, Need: p.Width,
				detail: fmt.Sprintf("%s wide, and no board long enough can be ripped or glued up to it", mm(p.Width)),
				Help:   fmt.Sprintf("add a board at least %s long (ends included) that may be ripped, or one just %s wide", mm(p.Length+job.Shop.GlueLength+2*job.Shop.EndTrim), mm(p.Width))}
		}
	}
	return out, nil
}

func cuttable(shop Shop, sources []source, thick, width, length unit.Length) bool {
	for _, s := range sources {
		if fits(shop, s, thick, width, length) {
			return true
		}
	}
	return false
}

// tooThickOrLong says which size of a part is out of reach, if one is.
func tooThickOrLong(job Job, sources []source, p *Part) error {
	var thickest, longest unit.Length
	for _, b := range job.Boards {
		thickest = max(thickest, b.Thickness)
	}
	served := false
	for _, s := range sources {
		if s.thick == p.Thickness {
			served = true
			longest = max(longest, s.usable)
		}
	}
	if !served {
		help := fmt.Sprintf("add a board %s thick, or thicker and planed", mm(p.Thickness))
		if thickest > p.Thickness {
			help = fmt.Sprintf("add a board %s thick, or allow planing or resawing of the thicker ones", mm(p.Thickness))
		}
		return &Error{Kind: ErrNoThickness, Part: p, Have: thickest, Need: p.Thickness,
			detail: fmt.Sprintf("%s thick, the thickest board offered has %s", mm(p.Thickness), mm(thickest)), Help: help}
	}
	if p.Length > longest {
		return &Error{Kind: ErrTooLong, Part: p, Have: longest, Need: p.Length,
			detail: fmt.Sprintf("%s long, the longest board of its thickness has %s between its end trims", mm(p.Length), mm(longest)),
			Help:   fmt.Sprintf("add a board at least %s long", mm(p.Length+2*job.Shop.EndTrim))}
	}
	return nil
}

// mostStaves is how many more than the fewest staves are tried.
const mostStaves = 2

// staves lists the ways to glue up a part: the fewest equal staves that can be
// ripped, one and two more, and staves in the full width of each board, as
// long as they are no more.
func staves(shop Shop, sources []source, p Part) []stave {
	length := p.Length + shop.GlueLength
	var out []stave
	add := func(n int, width unit.Length) {
		if n < 2 || !cuttable(shop, sources, p.Thickness, width, length) {
			return
		}
		for _, o := range out {
			if o.n == n && o.width == width {
				return
			}
		}
		out = append(out, stave{n, width})
	}
	fewest := 0
	for _, s := range sources {
		for _, w := range []unit.Length{s.width, s.width - 2*shop.EdgeTrim} {
			per := w - shop.JointAllowance
			if per > 0 && cuttable(shop, []source{s}, p.Thickness, w, length) {
				if n := max(2, int((p.Width+per-1)/per)); fewest == 0 || n < fewest {
					fewest = n
				}
			}
		}
	}
	if fewest == 0 {
		return nil
	}
	for n := fewest; n <= fewest+mostStaves; n++ {
		add(n, roundUp((p.Width+unit.Length(n)-1)/unit.Length(n)+shop.JointAllowance, shop.StaveGrid))
	}
	for _, s := range sources {
		if per := s.width - shop.JointAllowance; per > 0 {
			if n := int((p.Width + per - 1) / per); n <= fewest+mostStaves {
				add(n, s.width)
			}
		}
	}
	sort.Slice(out, func(i, j int) bool {
		if out[i].n != out[j].n {
			return out[i].n < out[j].n
		}
		return out[i].width < out[j].width
	})
	return out
}

func roundUp(l, grid unit.Length) unit.Length {
	if grid <= 0 {
		return l
	}
	return (l + grid - 1) / grid * grid
}

// pool gathers equal sizes into kinds, longest first. A glued-up part asks for
// the staves of each way to make it, of which one is chosen later.
func pool(job Job, options [][]stave) []kind {
	p := pooler{at: map[size]int{}}
	var tops []madeOf
	for i, part := range job.Parts {
		n := part.Count + part.Spares
		if n == 0 {
			continue
		}
		whole := size{part.Thickness, part.Width, part.Length}
		if options[i] == nil {
			k := p.kind(whole)
			k.need += n
			k.wants = append(k.wants, want{part: i, count: part.Count, spares: part.Spares})
			continue
		}
		made := madeOf{part.Order, whole}
		top := slices.Index(tops, made)
		if top < 0 {
			top = len(tops)
			tops = append(tops, made)
		}
		for _, o := range options[i] {
			k := p.kind(size{part.Thickness, o.width, part.Length + job.Shop.GlueLength})
			k.staves(top, o.n, n)
			k.wants = append(k.wants, want{part: i, count: part.Count * o.n, spares: part.Spares * o.n, staves: o.n, top: top})
		}
	}
	sort.SliceStable(p.kinds, func(i, j int) bool {
		a, b := p.kinds[i].size, p.kinds[j].size
		if a.length != b.length {
			return a.length > b.length
		}
		if a.width != b.width {
			return a.width > b.width
		}
		return a.thick < b.thick
	})
	return p.kinds
}

// Glued-up parts of one size in one order are made alike.
type madeOf struct {
	order string
	size
}

type pooler struct {
	at    map[size]int
	kinds []kind
}

// kind returns the kind of a size.
func (p *pooler) kind(s size) *kind {
	k, ok := p.at[s]
	if !ok {
		k = len(p.kinds)
		p.at[s] = k
		p.kinds = append(p.kinds, kind{size: s})
	}
	return &p.kinds[k]
}

// staves notes that n more parts of a size may be made of so many staves each.
func (k *kind) staves(top, staves, n int) {
	for i := range k.tops {
		if k.tops[i].top == top && k.tops[i].staves == staves {
			k.tops[i].parts += n
			return
		}
	}
	k.tops = append(k.tops, topUse{top, staves, n})
}
