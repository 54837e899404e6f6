package saw

import (
	"fmt"
	"slices"

	"slatwright/geometry/cutting"
	"slatwright/specs/word"
)

// Yields says what a step gives, and how many: "12 strips, for slats A", "40 pieces
// and 1 spare: A", "10 pieces: B; 2 sections still to rip".
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
			return p.counted(s, s.Count-n) + ": " + word.List(names) + "; " + word.Count(n, "section") + " still to rip"
		}
	}
	if words = append(names, words...); len(words) > 1 || len(names) > 0 {
		if len(names) > fewNames {
			return fmt.Sprintf("%s of %d marks", p.counted(s, s.Count), len(names))
		}
		return p.counted(s, s.Count) + ": " + word.List(words)
	}
	one := map[string]string{"leaves": "leaf", "boards": "board", "sections": "section", "strips": "strip"}
	return word.Number(s.Count, one[words[0]], words[0]) + p.become(s)
}

// counted counts the pieces of a step, spares apart: "40 pieces and 1 spare".
func (p *Plan) counted(s cutting.Step, n int) string {
	return Counted(n, p.spare(s), "piece")
}

// Counted counts things of which some are spares: "40 pieces and 1 spare". A part
// that has no word of its own for one goes without: "40 and 1 spare".
func Counted(all, spares int, thing string) string {
	text := fmt.Sprint(all - spares)
	switch {
	case spares == all && all > 0:
		return word.Count(spares, "spare")
	case thing != "":
		text = word.Count(all-spares, thing)
	}
	if spares > 0 {
		text += " and " + word.Count(spares, "spare")
	}
	return text
}

// spare counts the spares among the parts that a step cuts or glues, staves of spare
// parts among them.
func (p *Plan) spare(s cutting.Step) int {
	n := 0
	for _, i := range s.Boards {
		for _, x := range p.Boards[i].Sections {
			for _, t := range x.Strips {
				for _, part := range t.Parts {
					if part.Spare && part.Length == s.Setting.At && p.cutBy(s.Operation, x, part) {
						n += p.Boards[i].Count
					}
				}
			}
		}
	}
	if s.Operation != cutting.GluingUp {
		return n
	}
	for _, g := range p.GlueUps {
		if slices.Contains(s.Pieces, g.Yield()) {
			n += g.Count - p.wanted(g)
		}
	}
	return n
}

// cutBy reports whether an operation cuts a part of a section to its length.
func (p *Plan) cutBy(o cutting.Operation, x cutting.Section, part cutting.Placed) bool {
	switch o {
	case cutting.Crosscutting:
		return !x.Whole && !x.Ripped
	case cutting.CuttingToLength:
		return part.Length != x.Length
	}
	return false
}

// become says what the strips of a step become, ", for slats A"; "" at other steps
// and where that is many things.
func (p *Plan) become(s cutting.Step) string {
	if s.Operation != cutting.Ripping {
		return ""
	}
	var names []string
	for _, i := range s.Boards {
		for _, x := range p.Boards[i].Sections {
			for _, t := range x.Strips {
				if !x.Ripped || t.Width != s.Setting.At {
					continue
				}
				for _, part := range t.Parts {
					if name := part.Name + "s " + p.Label(part); !slices.Contains(names, name) {
						names = append(names, name)
					}
				}
			}
		}
	}
	if len(names) == 0 || len(names) > fewNames {
		return ""
	}
	slices.Sort(names)
	return ", for " + word.List(names)
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
