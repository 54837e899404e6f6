package saw

import (
	"fmt"
	"slices"
	"strings"
)

// listed is how many of a board one design says are on hand.
type listed struct {
	by    Offer // the first line of the design that says so
	count int
}

// list notes that a line lists a board on hand. Within one design the lines
// add up; where several designs list it they speak of the same boards, and the
// least count holds: what is not there cannot be cut.
func (p *Plan) list(board, count int, by Offer) {
	if count == 0 {
		return
	}
	all := p.lists[board]
	if i := slices.IndexFunc(all, func(l listed) bool { return l.by.Order == by.Order }); i >= 0 {
		all[i].count += count
	} else {
		all = append(all, listed{by, count})
	}
	p.lists[board] = all
	least := slices.MinFunc(all, func(a, b listed) int { return a.count - b.count })
	p.Job.Boards[board].OnHand, p.Offers[board] = least.count, least.by
}

// noteShared tells of boards on hand that several designs list, and where they
// differ about how many there are.
func (p *Plan) noteShared() {
	for i, all := range p.lists {
		if len(all) < 2 {
			continue
		}
		if !slices.ContainsFunc(all, func(l listed) bool { return l.count != all[0].count }) {
			p.note("boards on hand that several designs list are taken to be the same boards")
			continue
		}
		var says []string
		for _, l := range all {
			o := p.Orders[l.by.Order]
			says = append(says, fmt.Sprintf("%s says %d (%s, line %d)", o.Name, l.count, o.Rack.Design.Source.Name, l.by.Board.Place.Line))
		}
		b := p.Job.Boards[i]
		p.note(fmt.Sprintf("caution: %s, %s long, on hand: %s; they are taken to be the same boards, and %d to be there: count them",
			boardName(b), p.Unit(b.Length), strings.Join(says, ", "), b.OnHand))
	}
}

// doubled reports whether plans of single orders take more of a board on hand,
// all together, than are there.
func (p *Plan) doubled(alone []*Plan) bool {
	used := make([]int, len(p.Job.Boards))
	for _, one := range alone {
		for _, b := range one.Boards {
			used[p.offered(b.Board)] += b.Count
		}
	}
	for i, b := range p.Job.Boards {
		if b.OnHand > 0 && used[i] > b.OnHand {
			return true
		}
	}
	return false
}
