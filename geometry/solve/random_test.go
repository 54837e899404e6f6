package solve

import (
	"fmt"

	"slatwright/specs/unit"
)

// chooser is what a random model is drawn from: rapid in the properties, a
// plain generator for the referee.
type chooser func(lo, hi int) int

// tableBound is a monotone side rule given as a list, so that a referee can be
// told of it: the bound at the k-th grid line.
type tableBound struct {
	step  unit.Length
	bound []unit.Length
}

func (t tableBound) at(x unit.Length) unit.Length { return t.bound[x/t.step] }

// randomModel draws a small model with all that models can have: grids that do
// not fit each other, counts times lengths, side rules, statements that lift
// grids, wishes beyond ranges. Lengths are tens of base units, so that every
// grid line matters.
func randomModel(pick chooser) (*Model, []tableBound) {
	m := &Model{}
	counts := pick(0, 2)
	for i := range counts {
		lo := pick(0, 2)
		m.AddCount(Count{fmt.Sprint("n", i), lo, lo + pick(0, 4)})
	}
	lengths := pick(2, 6)
	for i := range lengths {
		step := []unit.Length{0, 1, 2, 3, 4, 6}[pick(0, 5)]
		m.AddLength(Length{Name: fmt.Sprint("x", i), Hi: unit.Length(pick(4, 40)), Step: step})
	}
	for i := range pick(1, 6) {
		s := Statement{Name: fmt.Sprint("s", i), Length: None, Count: None, RepairStep: unit.Length(pick(1, 3))}
		top := 40
		switch k := pick(0, 9); {
		case k == 0: // a name that relations hang on
			m.AddStatement(s)
			continue
		case k <= 2 && counts > 0:
			s.Count, top, s.RepairStep = CountID(pick(0, counts-1)), 6, 0
		default:
			s.Length = LengthID(pick(0, lengths-1))
		}
		s.Lo = unit.Length(pick(0, top))
		s.Hi = s.Lo
		switch pick(0, 3) {
		case 0:
			s.HasLo = true
		case 1:
			s.HasHi = true
		case 2:
			s.HasLo, s.HasHi, s.Hi = true, true, s.Lo+unit.Length(pick(-1, 6))
		default:
			s.HasLo, s.HasHi, s.LiftsGrid = true, true, s.Length != None && pick(0, 1) == 1
		}
		m.AddStatement(s)
	}
	for i := range pick(1, 5) {
		r := Relation{Name: fmt.Sprint("r", i), Terms: randomTerms(m, pick), Const: unit.Length(pick(-30, 30)), Op: Op(pick(0, 1)), Owners: randomOwner(m, pick)}
		m.Relate(r)
	}
	var tables []tableBound
	for i := range pick(0, 2) {
		on := LengthID(pick(0, lengths-1))
		if m.Lengths[on].Step == 0 {
			continue
		}
		tables = append(tables, randomRule(m, pick, fmt.Sprint("b", i), on))
	}
	randomLevels(m, pick)
	return m, tables
}

func randomTerms(m *Model, pick chooser) []Term {
	var out []Term
	for range pick(1, 3) {
		t := Term{Coef: int64(pick(-3, 3)), Count: None, Length: LengthID(pick(0, len(m.Lengths)-1))}
		if t.Coef == 0 {
			t.Coef = 1
		}
		if len(m.Counts) > 0 && pick(0, 2) == 0 {
			t.Count, t.Plus = CountID(pick(0, len(m.Counts)-1)), int64(pick(-1, 1))
		}
		out = append(out, t)
	}
	return out
}

func randomOwner(m *Model, pick chooser) []StatementID {
	if pick(0, 3) == 0 {
		return []StatementID{StatementID(pick(0, len(m.Statements)-1))}
	}
	return nil
}

// randomRule lists a bound for every base unit of the range, in case a
// statement lifts the grid.
func randomRule(m *Model, pick chooser, name string, on LengthID) tableBound {
	t := tableBound{step: 1}
	b := unit.Length(pick(-20, 10))
	for range int(m.Lengths[on].Hi) + 1 {
		t.bound = append(t.bound, b)
		b += unit.Length(pick(0, 2))
	}
	falling := pick(0, 1) == 1
	if falling {
		for i, j := 0, len(t.bound)-1; i < j; i, j = i+1, j-1 {
			t.bound[i], t.bound[j] = t.bound[j], t.bound[i]
		}
	}
	if pick(0, 4) == 0 { // the hardest end is out of reach
		end := len(t.bound) - 1
		if falling {
			end = 0
		}
		t.bound[end] = 1<<63 - 1
	}
	m.Rules = append(m.Rules, Rule{Name: name, Terms: randomTerms(m, pick), On: on, Falling: falling, Bound: t.at, Owners: randomOwner(m, pick)})
	return t
}

func randomLevels(m *Model, pick chooser) {
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
		m.Levels = append(m.Levels, Level{Least: randomTerms(m, pick)})
	}
}
