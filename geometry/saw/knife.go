package saw

import (
	"fmt"
	"slices"

	"slatwright/geometry/cutting"
	"slatwright/specs/unit"
)

// hair is how much a plan leaves over at least for the maker not to be warned:
// boards are not that exact. The project's own choice.
func hair(sys unit.System) unit.Length {
	if sys == unit.Metric {
		return 2 * unit.Millimetre
	}
	return unit.Inch / 16
}

// Caution is something that the maker should know before cutting.
type Caution struct {
	Boards []int // into Plan.Boards; none where it is about the whole plan
	Text   string
}

// Cautions returns what the plan warns of, and where it is on a knife's edge:
// strips or parts that take all of a board, so that a board a hair smaller holds
// fewer, and strips of which one more would come out if no edge were jointed.
func (p *Plan) Cautions() []Caution {
	var out []Caution
	say := func(i int, format string, args ...any) {
		text := fmt.Sprintf(format, args...)
		k := slices.IndexFunc(out, func(c Caution) bool { return c.Text == text })
		if k < 0 {
			k = len(out)
			out = append(out, Caution{Text: text})
		}
		if i >= 0 && !slices.Contains(out[k].Boards, i) {
			out[k].Boards = append(out[k].Boards, i)
		}
	}
	for _, w := range p.Warnings {
		say(w.Board, "%s", w.Text)
	}
	for i, b := range p.Boards {
		for _, s := range b.Sections {
			p.across(i, b, s, say)
		}
		for leaf := range b.Leaves {
			p.lengthwise(i, b, leaf, say)
		}
	}
	return out
}

// across warns of strips that fill a board's width, or that one more of would
// fill.
func (p *Plan) across(i int, b cutting.BoardPlan, s cutting.Section, say func(int, string, ...any)) {
	if !s.Ripped {
		return
	}
	shop := p.Job.Shop
	taken, n := -shop.Kerf, len(s.Strips)
	alike := true
	for _, t := range s.Strips {
		taken += t.Width + shop.Kerf
		alike = alike && t.Width == s.Strips[0].Width
	}
	spare := b.Board.Width - 2*shop.EdgeTrim - taken
	if spare < hair(p.Format.System) && shop.EdgeTrim > 0 {
		say(i, "%s take all of a %s's width between the trims of its edges, %s to spare: measure the board before it is cut", p.strips(n, s), boardName(b.Board), p.left(spare))
	}
	one := s.Strips[0].Width + shop.Kerf
	if alike && spare < one && taken+one <= b.Board.Width && shop.EdgeTrim > 0 {
		say(i, "%s from a %s only if no edge is jointed", p.strips(n+1, s), boardName(b.Board))
	}
}

func (p *Plan) strips(n int, s cutting.Section) string {
	word := func(n int) string {
		if n <= 12 {
			return [...]string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}[n]
		}
		return fmt.Sprint(n)
	}
	for _, t := range s.Strips {
		if t.Width != s.Strips[0].Width {
			return word(n) + " strips"
		}
	}
	if n == 1 {
		return "one strip of " + p.Unit(s.Strips[0].Width)
	}
	return word(n) + " strips of " + p.Unit(s.Strips[0].Width)
}

func (p *Plan) left(spare unit.Length) string {
	if spare <= 0 {
		return "nothing"
	}
	return p.Unit(spare)
}

// lengthwise warns of parts that fill a board's length.
func (p *Plan) lengthwise(i int, b cutting.BoardPlan, leaf int, say func(int, string, ...any)) {
	shop := p.Job.Shop
	spare := b.Board.Length + shop.Kerf
	if !b.Board.CleanEnds {
		spare -= 2 * shop.EndTrim
	}
	any := false
	for _, s := range b.Sections {
		if s.Leaf != leaf {
			continue
		}
		any = true
		need := s.Length
		if s.Whole {
			need = longestRun(s, shop.Kerf)
		}
		spare -= need + shop.Kerf
	}
	if any && spare < hair(p.Format.System) {
		say(i, "the parts take all of a %s's %s between the end trims, %s to spare: measure the board, and look for splits, before it is cut", boardName(b.Board), p.Unit(b.Board.Length), p.left(spare))
	}
}

// longestRun is the length of the parts of a section's fullest strip.
func longestRun(s cutting.Section, kerf unit.Length) unit.Length {
	var most unit.Length
	for _, t := range s.Strips {
		run := -kerf
		for _, x := range t.Parts {
			run += x.Length + kerf
		}
		most = max(most, run)
	}
	return most
}
