package saw

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"slatwright/geometry/cutting"
	"slatwright/specs/unit"
	"slatwright/specs/word"
)

// Text prints a length in the unit of the first order; one of another order's
// that is exact in the other system alone is printed in that, with its unit.
func (p *Plan) Text(l unit.Length) string {
	if other, ok := p.foreign(l); ok {
		return other.Unit(l)
	}
	return p.Format.Text(l)
}

// Unit is Text with the unit after it.
func (p *Plan) Unit(l unit.Length) string {
	if other, ok := p.foreign(l); ok {
		return other.Unit(l)
	}
	return p.Format.Unit(l)
}

// foreign returns the other system where a length is exact in that alone.
func (p *Plan) foreign(l unit.Length) (unit.Format, bool) {
	other := unit.Format{System: unit.Imperial}
	if p.Format.System == unit.Imperial {
		other.System = unit.Metric
	}
	_, own := p.Format.Round(l)
	_, its := other.Round(l)
	return other, !own && its
}

// Label is what is written on a piece: its mark, with its order before it where
// there are several. Staves of one part are alike and bear no number.
func (p *Plan) Label(x cutting.Placed) string {
	s := x.Mark
	for _, o := range p.Orders {
		if o.Name == x.Order && o.Short != "" {
			s = o.Short + " " + s
		}
	}
	if x.Staves > 0 {
		s += " stave"
	}
	return s
}

// Content says what parts stand in a strip, equal neighbours counted: "3 A, B".
func (p *Plan) Content(t cutting.Strip) string {
	var out []string
	for i := 0; i < len(t.Parts); {
		label := p.Label(t.Parts[i])
		n := 0
		for i < len(t.Parts) && p.Label(t.Parts[i]) == label {
			i, n = i+1, n+1
		}
		if n > 1 {
			label = fmt.Sprintf("%d %s", n, label)
		}
		out = append(out, label)
	}
	return strings.Join(out, ", ")
}

// Action says in words what is done at a step: "crosscut, stop at".
func Action(s cutting.Step) string {
	if !s.HasStop {
		return string(s.Operation)
	}
	at := map[cutting.SettingKind]string{cutting.ResawFence: "fence at", cutting.Thickness: "planer at", cutting.Stop: "stop at", cutting.Fence: "fence at"}
	return string(s.Operation) + ", " + at[s.Setting.Kind]
}

// fewNames is how many marks a step lists; where there are more the boards'
// layouts tell which.
const fewNames = 8

// Yields says what a step gives, and how many: "12 strips", "40 pieces: A",
// "10 pieces: B; 2 sections still to rip", "12 strips for A".
func (p *Plan) Yields(s cutting.Step) string {
	var names, words []string
	for _, x := range s.Pieces {
		switch x.Stage {
		case "leaf", "resawn":
			words = append(words, "leaves")
		case "planed", "board":
			words = append(words, "boards")
		case "section", "strip":
			words = append(words, x.Stage+"s")
		default:
			name := p.Label(cutting.Placed{Order: x.Order, Mark: x.Mark})
			if s.Operation != cutting.GluingUp && p.glued(x) {
				name += " staves"
			}
			names = append(names, name)
		}
	}
	if len(names) > 0 && len(names) <= fewNames && slices.Equal(words, []string{"sections"}) {
		if n := p.toRip(s); n > 0 && n < s.Count {
			return word.Count(s.Count-n, "piece") + ": " + word.List(names) + "; " + word.Count(n, "section") + " still to rip"
		}
	}
	if words = append(names, words...); len(words) > 1 || len(names) > 0 {
		if len(names) > fewNames {
			return fmt.Sprintf("%s of %d marks", word.Count(s.Count, "piece"), len(names))
		}
		return word.Count(s.Count, "piece") + ": " + word.List(words)
	}
	one := map[string]string{"leaves": "leaf", "boards": "board", "sections": "section", "strips": "strip"}
	text := word.Number(s.Count, one[words[0]], words[0])
	if names := p.inStrips(s); len(names) > 0 && len(names) <= fewNames {
		text += " for " + word.List(names)
	}
	return text
}

// inStrips names the parts that the strips of a rip hold, in the order of the boards.
func (p *Plan) inStrips(s cutting.Step) []string {
	var out []string
	if s.Operation != cutting.Ripping {
		return nil
	}
	for _, i := range s.Boards {
		for _, x := range p.Boards[i].Sections {
			for _, t := range x.Strips {
				for _, part := range t.Parts {
					if name := p.Label(part); x.Ripped && t.Width == s.Setting.At && !slices.Contains(out, name) {
						out = append(out, name)
					}
				}
			}
		}
	}
	return out
}

// toRip counts, of what a step cuts off its boards, the sections that are ripped
// after it; the others are parts as they come.
func (p *Plan) toRip(s cutting.Step) int {
	n := 0
	for _, i := range s.Boards {
		for _, x := range p.Boards[i].Sections {
			if !x.Whole && x.Ripped && x.Length == s.Setting.At {
				n += p.Boards[i].Count
			}
		}
	}
	return n
}

// glued reports whether a part, as steps name it, is glued up.
func (p *Plan) glued(x cutting.Yield) bool {
	return slices.ContainsFunc(p.GlueUps, func(g cutting.GlueUp) bool { return g.Yield() == x })
}

// Numbers lists boards of a plan by the numbers that people call them, from 1:
// "2, 3, 5".
func Numbers(boards []int) string {
	var out []string
	for _, n := range boards {
		out = append(out, strconv.Itoa(n+1))
	}
	return strings.Join(out, ", ")
}

// Named names boards of a plan by their numbers: "board 2", "boards 2, 3".
func Named(boards []int) string {
	if len(boards) == 1 {
		return "board " + Numbers(boards)
	}
	return "boards " + Numbers(boards)
}

// StepName is what a step at the saw, counted from 0, is called: S is the mark of no
// part and of no step of the order of work.
func StepName(i int) string { return fmt.Sprintf("S%d", i+1) }
