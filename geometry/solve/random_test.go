package solve

import (
	"fmt"
	"math"
	"slices"

	"slatwright/specs/unit"
)

// chooser is what a random model is drawn from: rapid in the properties, a
// plain generator for the referee.
type chooser func(lo, hi int) int

// drawn is a model being drawn around a hidden point, so that many have a
// solution. Each part misses the point with a chance that is itself drawn.
type drawn struct {
	*Model
	pick    chooser
	lengths []int64
	counts  []int64
	misses  int // in ten
}

// randomModel draws a small model with all that models can have: grids that do
// not fit each other, counts times lengths, side rules, statements that lift
// grids, wishes beyond ranges. Lengths are tens of base units, so that every
// grid line matters.
func randomModel(pick chooser) *Model {
	d := &drawn{Model: &Model{}, pick: pick, misses: []int{0, 0, 1, 3}[pick(0, 3)]}
	for i := range pick(0, 2) {
		lo := pick(0, 2)
		hi := lo + pick(0, 4)
		d.AddCount(Count{fmt.Sprint("n", i), lo, hi})
		d.counts = append(d.counts, int64(pick(lo, hi)))
	}
	for i := range pick(2, 6) {
		step := []int{0, 1, 2, 3, 4, 6}[pick(0, 5)]
		hi := pick(6, 40)
		d.AddLength(Length{Name: fmt.Sprint("x", i), Hi: unit.Length(hi), Step: unit.Length(step)})
		d.lengths = append(d.lengths, int64(pick(0, hi/max(1, step))*max(1, step)))
	}
	for i := range pick(1, 6) {
		d.statement(fmt.Sprint("s", i))
	}
	for i := range pick(1, 5) {
		r := Relation{Name: fmt.Sprint("r", i), Op: Op(pick(0, 1)), Terms: d.terms(), Owners: d.owner()}
		r.Const = unit.Length(-d.sum(r.Terms))
		if r.Op == AtLeast {
			r.Const += unit.Length(pick(0, 6))
		}
		if d.miss() {
			r.Const += unit.Length(pick(-12, 12))
		}
		d.Relate(r)
	}
	for i := range pick(0, 2) {
		if on := pick(0, len(d.lengths)-1); d.Lengths[on].Step > 0 {
			d.rule(fmt.Sprint("b", i), on)
		}
	}
	d.levels()
	return d.Model
}

func (d *drawn) miss() bool { return d.pick(0, 9) < d.misses }

func (d *drawn) statement(name string) {
	pick := d.pick
	s := Statement{Name: name, Length: None, Count: None, RepairStep: unit.Length(pick(1, 3))}
	var at int64
	switch k := pick(0, 9); {
	case k == 0: // a name that relations hang on
		d.AddStatement(s)
		return
	case k <= 2 && len(d.counts) > 0:
		n := pick(0, len(d.counts)-1)
		s.Count, at, s.RepairStep = CountID(n), d.counts[n], 0
	default:
		n := pick(0, len(d.lengths)-1)
		s.Length, at = LengthID(n), d.lengths[n]
	}
	if d.miss() {
		at = max(0, at+int64(pick(-7, 7)))
	}
	s.Lo, s.Hi = unit.Length(at), unit.Length(at)
	switch pick(0, 3) {
	case 0:
		s.HasLo, s.Lo = true, s.Lo-unit.Length(pick(0, 3))
	case 1:
		s.HasHi, s.Hi = true, s.Hi+unit.Length(pick(0, 3))
	case 2:
		s.HasLo, s.HasHi = true, true
		s.Lo, s.Hi = s.Lo-unit.Length(pick(0, 2)), s.Hi+unit.Length(pick(0, 3))
		if d.miss() {
			s.Lo, s.Hi = s.Hi, s.Lo
		}
	default:
		s.HasLo, s.HasHi, s.LiftsGrid = true, true, s.Length != None && pick(0, 1) == 1
	}
	d.AddStatement(s)
}

func (d *drawn) terms() []Term {
	pick := d.pick
	var out []Term
	for range pick(1, 3) {
		t := Term{Coef: int64(pick(-3, 3)), Count: None, Length: LengthID(pick(0, len(d.lengths)-1))}
		if t.Coef == 0 {
			t.Coef = 1
		}
		if len(d.counts) > 0 && pick(0, 2) == 0 {
			t.Count, t.Plus = CountID(pick(0, len(d.counts)-1)), int64(pick(-1, 1))
		}
		out = append(out, t)
	}
	return out
}

// sum is the value of terms at the hidden point.
func (d *drawn) sum(terms []Term) (v int64) {
	for _, t := range terms {
		f := t.Coef
		if t.Count != None {
			f *= d.counts[t.Count] + t.Plus
		}
		v += f * d.lengths[t.Length]
	}
	return v
}

func (d *drawn) owner() []StatementID {
	if d.pick(0, 3) == 0 {
		return []StatementID{StatementID(d.pick(0, len(d.Statements)-1))}
	}
	return nil
}

// rule lists a bound for every base unit of the range, in case a statement
// lifts the grid, and moves the whole so that the hidden point just holds.
func (d *drawn) rule(name string, on int) {
	var bound []unit.Length
	b := unit.Length(0)
	for range d.Lengths[on].Hi + 1 {
		bound = append(bound, b)
		b += unit.Length(d.pick(0, 2))
	}
	falling := d.pick(0, 1) == 1
	if falling {
		slices.Reverse(bound)
	}
	r := Rule{Name: name, Terms: d.terms(), On: LengthID(on), Falling: falling, Owners: d.owner()}
	r.Const = bound[d.lengths[on]] - unit.Length(d.sum(r.Terms)) + unit.Length(d.pick(0, 4))
	if d.miss() {
		r.Const += unit.Length(d.pick(-8, 4))
	}
	if d.pick(0, 4) == 0 { // the hardest end is out of reach
		end := len(bound) - 1
		if falling {
			end = 0
		}
		bound[end] = math.MaxInt64
	}
	r.Bound = func(x unit.Length) unit.Length { return bound[x] }
	d.Rules = append(d.Rules, r)
}

func (d *drawn) levels() {
	m, pick := d.Model, d.pick
	for range pick(0, 2) {
		var l Level
		for range pick(1, 3) {
			l.Wishes = append(l.Wishes, Wish{LengthID(pick(0, len(m.Lengths)-1)), unit.Length(pick(-3, 45))})
		}
		l.InOrder = pick(0, 1) == 1
		m.Levels = append(m.Levels, l)
	}
	if len(m.Counts) > 0 && pick(0, 1) == 0 {
		p := Product{Coef: 1}
		for c := range m.Counts {
			p.Counts = append(p.Counts, CountID(c))
		}
		m.Levels = append(m.Levels, Level{Most: []Product{p}})
	}
	if len(m.Counts) > 0 && pick(0, 2) == 0 {
		m.Levels = append(m.Levels, Level{CountWishes: []CountWish{{CountID(pick(0, len(m.Counts)-1)), pick(0, 6)}}})
	}
	if pick(0, 1) == 0 {
		m.Levels = append(m.Levels, Level{Least: d.terms()})
	}
}
