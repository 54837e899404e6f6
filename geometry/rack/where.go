package rack

import (
	"strconv"

	"slatwright/geometry/solve"
	"slatwright/specs/unit"
)

// widest is how far apart the two sides of a relation may be: some 3,000 km.
const widest = unit.Length(1) << 48

// stateWhere states the file's own relations. What the two sides differ by is
// a length of its own, which the line bounds, so that the least change of the
// line can be told; a "~" relation wishes it to be nought.
func (b *stater) stateWhere() {
	for i, w := range b.d.Where {
		den := int64(1)
		for _, t := range w.Terms {
			den = lcm(den, t.Den)
		}
		var terms []solve.Term
		for _, t := range w.Terms {
			terms = append(terms, b.term(t.Num*(den/t.Den), t.Name))
		}
		name := "where." + strconv.Itoa(i+1)
		b.helper(name)
		differ := solve.Relation{Name: w.Text, Op: solve.Equal, Terms: append(terms, b.term(-den, name)), Const: -w.Const * unit.Length(den)}
		if w.Op == "~" {
			b.whereIDs = append(b.whereIDs, b.length[name])
			b.m.Relate(differ)
			continue
		}
		id := b.add(solve.Statement{
			Name: w.Text, Length: b.length[name], Count: solve.None,
			HasLo: w.Op != "<=", HasHi: w.Op != ">=", RepairStep: b.d.Grid,
		}, line{w.Text, w.Place, b.d.Units})
		b.wheres[id] = true
		differ.Owners = []solve.StatementID{id}
		b.m.Relate(differ)
	}
}

// helper declares a length that nobody reads. It may take any rational value.
func (b *stater) helper(name string) {
	id := b.m.AddLength(solve.Length{Name: name, Lo: -widest, Hi: widest})
	b.length[name] = id
	b.helpers[id] = true
}

func lcm(a, b int64) int64 { return a / gcd(a, b) * b }

// gcd is never negative.
func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return max(a, -a)
}
