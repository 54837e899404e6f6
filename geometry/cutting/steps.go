package cutting

import (
	"cmp"
	"slices"
	"sort"

	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// below returns a size of the table of the saw, below which a cut needs more than
// ordinary care. The saw maker's instructions come first.
func below(id string) unit.Length {
	return table.Length(id)
}

const makersWord = "the saw maker's instructions come first: guard and riving knife in place"

// A tally gathers the pieces of one setting.
type tally struct {
	at       unit.Length
	count    int
	gang     int
	boards   []int
	pieces   []Yield
	shortest unit.Length // shortest piece that is fed or held
}

type tallies struct{ list []*tally }

func (t *tallies) at(l unit.Length) *tally {
	for _, x := range t.list {
		if x.at == l {
			return x
		}
	}
	x := &tally{at: l, gang: 1}
	t.list = append(t.list, x)
	return x
}

func (t *tally) add(board, n int, piece Yield, shortest unit.Length) {
	t.count += n
	if k := len(t.boards); k == 0 || t.boards[k-1] != board {
		t.boards = append(t.boards, board)
	}
	if t.shortest == 0 || shortest < t.shortest {
		t.shortest = shortest
	}
	if !slices.Contains(t.pieces, piece) {
		t.pieces = append(t.pieces, piece)
	}
}

// longFirst returns the tallies with the largest setting first.
func (t *tallies) longFirst() []*tally {
	sort.SliceStable(t.list, func(i, j int) bool { return t.list[i].at > t.list[j].at })
	return t.list
}

// steps lists the cutting order: boards are planed or resawn whole, trimmed,
// cut across into sections, the sections ripped, the strips cut to length, the
// staves glued up. Within each stage every setting comes once, the longest or
// widest first.
func steps(job Job, plan *Plan) []Step {
	var out []Step
	out = append(out, resawSteps(job, plan)...)
	out = append(out, planeSteps(plan)...)
	out = append(out, trimSteps(job, plan)...)
	out = append(out, sectionSteps(plan)...)
	out = append(out, ripSteps(plan)...)
	out = append(out, lengthSteps(plan)...)
	out = append(out, glueSteps(plan)...)
	return out
}

func (t *tally) step(operation Operation, kind SettingKind) Step {
	slices.SortFunc(t.pieces, Yield.Compare)
	return Step{Operation: operation, Setting: Setting{kind, t.at}, HasStop: true, Count: t.count,
		Pieces: t.pieces, Boards: t.boards, Gang: t.gang}
}

func resawSteps(job Job, plan *Plan) []Step {
	var ts tallies
	for i, b := range plan.Boards {
		if b.Process == Resawn {
			ts.at(b.Thickness+job.Shop.ResawAllowance).add(i, b.Count*b.Leaves, Yield{Stage: "leaf"}, b.Board.Length)
		}
	}
	var out []Step
	for _, t := range ts.longFirst() {
		s := t.step(Resawing, ResawFence)
		s.Critical = true
		s.Cautions = []string{
			"resaw long stock, before it is cut up; stop before a board too short to be held at both ends",
			"tall fence, push block, featherboard before the blade only; on a table saw in two passes that meet, riving knife in place, never a through cut higher than the maker allows",
			"kiln-dried boards may spring open or close on the blade: wedge the kerf, stop the saw first",
			makersWord,
		}
		out = append(out, s)
	}
	return out
}

func planeSteps(plan *Plan) []Step {
	var ts tallies
	for i, b := range plan.Boards {
		if b.Process != AsIs {
			ts.at(b.Thickness).add(i, b.Count*b.Leaves, Yield{Stage: b.Process.String()}, b.Board.Length)
		}
	}
	var out []Step
	for _, t := range ts.longFirst() {
		s := t.step(Planing, Thickness)
		s.Critical = t.shortest < below("saw.short")
		s.Cautions = []string{"plane the whole board before it is cut up, in passes no deeper than the planer's maker allows, both faces in turn"}
		if s.Critical {
			s.Cautions = append(s.Cautions, "too short for most planers: check the least length the maker states, or plane by hand")
		}
		out = append(out, s)
	}
	return out
}

func trimSteps(job Job, plan *Plan) []Step {
	if job.Shop.EndTrim == 0 {
		return nil
	}
	t := tally{gang: 1}
	for i, b := range plan.Boards {
		if !b.Board.CleanEnds {
			t.add(i, b.Count*b.Leaves, Yield{Stage: "board"}, b.Board.Length)
		}
	}
	if t.count == 0 {
		return nil
	}
	s := t.step(TrimmingEnds, Stop)
	s.HasStop, s.Setting = false, Setting{}
	s.Cautions = []string{"one end square before the first section; the far end as the last cut, past splits and paint"}
	return []Step{s}
}

func sectionSteps(plan *Plan) []Step {
	var ts tallies
	for i, b := range plan.Boards {
		for _, s := range b.Sections {
			if !s.Whole {
				piece := Yield{Stage: "section"}
				if !s.Ripped {
					piece = pieceOf(s.Strips[0].Parts[0])
				}
				ts.at(s.Length).add(i, b.Count, piece, s.Length)
			}
		}
	}
	var out []Step
	for _, t := range ts.longFirst() {
		out = append(out, crosscut(t, Crosscutting))
	}
	return out
}

// crosscut is a step at the length stop with its cautions.
func crosscut(t *tally, operation Operation) Step {
	s := t.step(operation, Stop)
	s.Cautions = []string{"the stop ends before the blade, so that the piece is free when it is cut; the rip fence is never the stop"}
	if t.at < below("saw.crosscut") {
		s.Critical = true
		s.Cautions = append(s.Cautions, "short piece: clamp it or use a sled, hands out of the blade's line, cut it from the longest stock there is")
	}
	return s
}

func ripSteps(plan *Plan) []Step {
	var ts tallies
	for i, b := range plan.Boards {
		for _, s := range b.Sections {
			for _, t := range s.Strips {
				if s.Ripped {
					ts.at(t.Width).add(i, b.Count, Yield{Stage: "strip"}, s.Length)
				}
			}
		}
	}
	var out []Step
	for _, t := range ts.longFirst() {
		s := t.step(Ripping, Fence)
		s.Cautions = append(s.Cautions, "riving knife and guard in place, stand out of the blade's line, never pull from behind the blade")
		if t.at < below("saw.push_stick") {
			stick := "push stick for the last foot"
			if t.shortest <= 2*below("saw.short") {
				stick = "push stick for the whole of the shorter pieces"
			}
			s.Cautions = append(s.Cautions, stick)
		}
		if t.at < below("saw.push_block") {
			s.Critical = true
			s.Cautions = append(s.Cautions, "narrow rip: push block, featherboard before the blade only")
		}
		if t.at < below("saw.narrow") {
			s.Cautions = append(s.Cautions, "thin rip: leave the strip on the free side of the blade with the wide piece at the fence, or use a band saw")
		}
		if t.shortest <= below("saw.short") {
			s.Critical = true
			s.Cautions = append(s.Cautions, "short stock: a foot or less is not fed past a saw by hand: clamp it to a sled, or leave its section longer at the crosscut where the board goes on")
		}
		out = append(out, s)
	}
	return out
}

func lengthSteps(plan *Plan) []Step {
	var ts tallies
	for i, b := range plan.Boards {
		for _, s := range b.Sections {
			side := map[unit.Length]map[unit.Length]int{} // strips by width and part length
			for _, t := range s.Strips {
				for j, p := range t.Parts {
					if p.Length == s.Length {
						continue
					}
					x := ts.at(p.Length)
					x.add(i, b.Count, pieceOf(p), p.Length)
					if side[p.Length] == nil {
						side[p.Length] = map[unit.Length]int{}
					}
					if j == 0 || t.Parts[j-1].Length != p.Length {
						side[p.Length][t.Width]++
					}
					x.gang = max(x.gang, side[p.Length][t.Width])
				}
			}
		}
	}
	var out []Step
	for _, t := range ts.longFirst() {
		out = append(out, crosscut(t, CuttingToLength))
	}
	return out
}

func glueSteps(plan *Plan) []Step {
	var out []Step
	for _, g := range plan.GlueUps {
		out = append(out, Step{Operation: GluingUp, Count: g.Count, Pieces: []Yield{g.Yield()}, Gang: 1,
			Cautions: []string{
				"joint both edges of each stave, then glue and clamp as the glue's maker says, the growth rings turned about; trim to size when it has cured",
			}})
	}
	return out
}

func pieceOf(p Placed) Yield { return Yield{Order: p.Order, Mark: cmp.Or(p.Mark, p.Name)} }

// settingsOf lists the settings of the steps, each once, in cutting order.
func settingsOf(plan *Plan) []Setting {
	var out []Setting
	seen := map[Setting]bool{}
	for _, s := range plan.Steps {
		if s.HasStop && !seen[s.Setting] {
			seen[s.Setting] = true
			out = append(out, s.Setting)
		}
	}
	return out
}

// warnings lists the sections whose strips leave less than a kerf of the
// board's width, so that they fit only as long as no edge is jointed.
func warnings(job Job, plan *Plan) []Warning {
	var out []Warning
	for i, b := range plan.Boards {
		tight := false
		for _, s := range b.Sections {
			if !s.Ripped {
				continue
			}
			left := b.Board.Width - 2*job.Shop.EdgeTrim + job.Shop.Kerf
			for _, t := range s.Strips {
				left -= t.Width + job.Shop.Kerf
			}
			tight = tight || (left < job.Shop.Kerf && job.Shop.EdgeTrim == 0)
		}
		if tight {
			out = append(out, Warning{i, "its strips fit side by side only if no edge of the board is jointed"})
		}
	}
	return out
}
