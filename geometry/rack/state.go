package rack

import (
	"slices"
	"strconv"
	"strings"

	"slatwright/geometry/solve"
	"slatwright/specs/design"
	"slatwright/specs/diag"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// The greatest lengths the model allows itself: of what goes along or up a whole
// rack, and of anything else. Both are far beyond what a rack has, and grow with
// what a file states, so that they never decide anything.
const (
	longest = 60_000 * unit.Millimetre
	largest = 2_000 * unit.Millimetre
)

// most is the greatest value the model allows a length.
func (b *stater) most(name string) unit.Length {
	part, size, _ := strings.Cut(name, ".")
	if part == "site" || part == "rack" || part == "carcase" || size == "length" || name == "top.width" {
		return longest
	}
	most := largest
	for _, l := range b.d.Lengths {
		most = max(most, 2*l.Lo, 2*l.Hi)
	}
	return min(most, longest)
}

// line is a statement of the file, as the solver's statements refer to it.
type line struct {
	text  string
	place diag.Place
	unit  unit.System
}

// group is a kind of column while it is being stated.
type group struct {
	number int // 1 for the first [[column]]; 0 where all columns are alike
	count  solve.CountID
	rows   solve.CountID
	extra  solve.CountID // 1 where there are more rows than own describes, else 0; None without own
	own    int           // rows that the file describes one by one
	fits   [][]bottle    // of each described row, and last of the others
}

// bottle is a bottle that cells must hold, with the lines that ask for it.
type bottle struct {
	name   string
	kind   table.Bottle
	owners []solve.StatementID
}

// name returns what a length of the group's cells is called.
func (g group) name(what string) string {
	switch {
	case g.number > 0:
		return "column." + strconv.Itoa(g.number) + "." + what
	case what == "pitch":
		return "ladder.pitch"
	}
	return "cell." + what
}

// stater states a design as a model for the solver.
type stater struct {
	d      *design.Design
	m      solve.Model
	length map[string]solve.LengthID
	count  map[string]solve.CountID
	lines  []line // by StatementID
	groups []group

	stocks   map[int]solve.StatementID        // relations that a stock's sizes make
	soft     map[solve.LengthID]bool          // unsaid clearances, which no requirement waits for
	own      []choiceMade                     // requirements left to the checks
	forced   *demanded                        // those of them that are demanded all the same
	formulas map[int]string                   // of rules, by their number
	settled  settings                         // what the bounds of rules stand on
	named    map[diag.Place]solve.StatementID // lines that only name something
	helpers  map[solve.LengthID]bool          // lengths that nobody reads: what a relation of the file comes to
	whereIDs []solve.LengthID                 // what the sides of "~" relations differ by, in the order of the file
	wheres   map[solve.StatementID]bool       // relations of the file, as statements about a helper
}

// state states the design with the given settings.
func state(d *design.Design, with settings) *stater { return stateForced(d, with, nil) }

// stateForced states the design with all that one check asks of one kind of
// column, whoever chose otherwise, and with unsaid clearances for good.
func stateForced(d *design.Design, with settings, forced *demanded) *stater {
	b := &stater{
		d: d, settled: with, forced: forced,
		length: map[string]solve.LengthID{}, count: map[string]solve.CountID{},
		formulas: map[int]string{},
		stocks:   map[int]solve.StatementID{}, soft: map[solve.LengthID]bool{},
		named: map[diag.Place]solve.StatementID{}, helpers: map[solve.LengthID]bool{},
		wheres: map[solve.StatementID]bool{},
	}
	b.declareLengths()
	b.declareCounts()
	b.stateLengths()
	b.stateCounts()
	b.stateStocks()
	b.relate()
	b.relateSite()
	b.stateWhere()
	b.require()
	b.rank()
	return b
}

// gridded are the lengths that someone sets or marks.
var gridded = []string{
	"cell.gap", "cell.rise", "slat.first", "slat.length", "leg.length", "apron.height",
	"overhang.side", "overhang.front", "overhang.back", "leg.width", "slat.height",
}

// step returns the grid that a length lands on, or one base unit where the
// file or the stock gives its figure. A default that has to give way does so
// in steps of the grid too: nobody mills a board by a hundredth.
func (b *stater) step(name string) unit.Length {
	if offGrid(b.d, name) {
		return 1
	}
	last := name[strings.LastIndexByte(name, '.')+1:]
	own := strings.HasPrefix(name, "column.") && (last == "gap" || last == "rise")
	if def, ok := table.FindDefault(name); ok {
		own = own || def.Value(b.d.Units).On(b.d.Grid)
	}
	if !own && !slices.Contains(gridded, name) {
		return 1
	}
	if part, size, _ := strings.Cut(name, "."); size == "width" || size == "height" || size == "thickness" {
		if _, ok := b.d.Stock(part); ok {
			return 1
		}
	}
	return b.d.Grid
}

// declareLengths declares the lengths of the model in the order of the
// documentation, those of single columns after those of all cells.
func (b *stater) declareLengths() {
	for _, name := range design.LengthNames() {
		switch {
		case strings.HasPrefix(name, "site.") && !b.hasSite(name),
			!b.d.TopPresent && (strings.HasPrefix(name, "top.") || strings.HasPrefix(name, "overhang.")),
			len(b.d.Columns) > 0 && isCellSize(name) && !b.mentions(name):
			continue
		}
		b.declare(name)
		if name == "cell.apron_clearance" {
			b.declareColumns()
		}
	}
}

// declareColumns declares the lengths of each [[column]].
func (b *stater) declareColumns() {
	for i, c := range b.d.Columns {
		g := group{number: i + 1}
		for _, what := range []string{"gap", "channel", "pitch", "rise"} {
			b.declare(g.name(what))
		}
		for j := range c.Rows {
			b.declare(g.name("row." + strconv.Itoa(j+1) + ".rise"))
		}
	}
}

func isCellSize(name string) bool {
	return name == "ladder.pitch" || name == "cell.gap" || name == "cell.channel" || name == "cell.rise"
}

// hasSite reports whether the design has a use for a length of the site.
func (b *stater) hasSite(name string) bool {
	if name == "site.fit" {
		return b.mentions("site.width") || b.mentions("site.depth") || b.mentions("site.height") || b.mentions(name)
	}
	return b.mentions(name)
}

// states reports whether the file says something about the length.
func (b *stater) states(name string) bool {
	_, ok := b.d.Length(name)
	return ok
}

// mentions reports whether a line of the file speaks of the length.
func (b *stater) mentions(name string) bool {
	if b.states(name) {
		return true
	}
	for _, w := range b.d.Where {
		for _, t := range w.Terms {
			if t.Name == name {
				return true
			}
		}
	}
	return false
}

// declare declares one length. The two that stand inside the rules' bounds get
// their one value here.
func (b *stater) declare(name string) {
	l := solve.Length{Name: name, Hi: b.most(name), Step: b.step(name)}
	switch name {
	case topClearance:
		l.Lo, l.Hi, l.Step = b.settled.topClear, b.settled.topClear, 1
	case slatEased:
		l.Lo, l.Hi, l.Step = b.settled.eased, b.settled.eased, 1
	}
	if def, ok := table.FindDefault(name); ok && b.forced != nil && strings.HasSuffix(name, "_clearance") && !b.states(name) {
		l.Lo, l.Hi = def.Value(b.d.Units), def.Value(b.d.Units)
	}
	if isPartSize(name) {
		l.Lo = max(1, l.Step) // there is no board without it
	}
	if def, ok := table.FindDefault(name); ok && l.Lo < l.Hi && !b.states(name) && !b.stocked(name) {
		l.Lo = max(l.Lo, def.Least(b.d.Units))
		if most := def.Most(b.d.Units); most > 0 {
			l.Hi = min(l.Hi, most)
		}
	}
	id := b.m.AddLength(l)
	b.length[name] = id
	if !b.states(name) && (strings.HasSuffix(name, "_clearance") || name == "slat.eased") {
		b.soft[id] = true
	}
}

// stocked reports whether a part's stock gives the length.
func (b *stater) stocked(name string) bool {
	part, _, _ := strings.Cut(name, ".")
	_, ok := b.d.Stock(part)
	return ok
}

// isPartSize reports whether a length is a size of a board.
func isPartSize(name string) bool {
	part, size, _ := strings.Cut(name, ".")
	return slices.Contains([]string{"leg", "slat", "apron", "top"}, part) &&
		slices.Contains([]string{"thickness", "width", "height", "length"}, size)
}

// standing returns the default of a length in the design's units.
func standing(d *design.Design, name string) unit.Length {
	def, ok := table.FindDefault(name)
	if !ok {
		panic("rack: no default for " + name)
	}
	return def.Value(d.Units)
}

// stateLengths hands every statement about a length to the solver. A wish is
// no statement; it is ranked later.
func (b *stater) stateLengths() {
	for _, l := range b.d.Lengths {
		id, ok := b.length[l.Name]
		if !ok || l.Kind == design.Near {
			continue
		}
		s := solve.Statement{
			Name: l.Text, Length: id, Count: solve.None,
			HasLo: l.Kind != design.AtMost, HasHi: l.Kind != design.AtLeast, Lo: l.Lo, Hi: l.Hi,
			LiftsGrid: l.Kind == design.Exact, RepairStep: b.repairStep(l.Unit),
		}
		b.add(s, line{l.Text, l.Place, l.Unit})
	}
}

// repairStep is the finest figure to suggest to somebody who wrote in a unit.
func (b *stater) repairStep(u unit.System) unit.Length {
	if u == b.d.Units {
		return b.d.Grid
	}
	return standing(&design.Design{Units: u}, "grid")
}

// add adds a statement with its line.
func (b *stater) add(s solve.Statement, l line) solve.StatementID {
	b.lines = append(b.lines, l)
	return b.m.AddStatement(s)
}

// name adds a statement that only names a line for relations to hang on, once
// for each line.
func (b *stater) name(l line) solve.StatementID {
	id, ok := b.named[l.place]
	if !ok {
		id = b.add(solve.Statement{Name: l.text, Length: solve.None, Count: solve.None}, l)
		b.named[l.place] = id
	}
	return id
}

// statementOf returns the statements about a length, for rules that hang on
// its value.
func (b *stater) statementOf(name string) []solve.StatementID {
	l, ok := b.d.Length(name)
	if !ok {
		return nil
	}
	for i, known := range b.lines {
		if known.place == l.Place {
			return []solve.StatementID{solve.StatementID(i)}
		}
	}
	return nil
}

// stateStocks gives parts the sizes of their stock, unless the boards were
// measured.
func (b *stater) stateStocks() {
	for _, s := range b.d.Stocks {
		if s.Part == "top" && !b.d.TopPresent {
			continue
		}
		second := s.Part + ".width"
		if s.Part == "slat" || s.Part == "apron" {
			second = s.Part + ".height"
		}
		owner := b.name(line{s.Text, s.Place, b.d.Units})
		for _, size := range []struct {
			name string
			to   unit.Length
		}{{s.Part + ".thickness", s.Nominal.Thickness}, {second, s.Nominal.Width}} {
			if _, measured := b.d.Length(size.name); measured || size.to == 0 || size.name == "top.width" {
				continue
			}
			b.stocks[len(b.m.Relations)] = owner
			b.m.Relate(solve.Relation{
				Name: s.Text, Op: solve.Equal, Owners: []solve.StatementID{owner},
				Terms: []solve.Term{b.term(1, size.name)}, Const: -size.to,
			})
		}
	}
}

// term is coef times a length.
func (b *stater) term(coef int64, name string) solve.Term {
	id, ok := b.length[name]
	if !ok {
		panic("rack: no length named " + name)
	}
	return solve.Term{Coef: coef, Count: solve.None, Length: id}
}
