// Package solve finds the one best set of exact lengths and small counts that
// meets linear relations, statements and monotone side rules, or proves that
// there is none and says which statements clash. It knows lengths, counts and
// relations, and nothing of racks: the rack model states itself in a Model,
// and the checks and drawings read the Solution.
//
// Every verdict rests on integer and rational arithmetic; the same model
// always gives the same answer.
package solve

import "slatwright/specs/unit"

// LengthID, CountID and StatementID number what a Model declares, in order.
type (
	LengthID    int
	CountID     int
	StatementID int
)

// Always marks a relation or rule that belongs to no statement: it holds in
// every question and is never blamed.
const Always StatementID = -1

// None marks the absence of a length or count in a Term.
const None = -1

// A Length is one unknown of the model. Its value is a whole multiple of Step
// between Lo and Hi, ends included. Step 0 allows any rational value; Step 1
// any whole base unit. With StepOwners, Step holds only while all of those
// statements do, and any rational value will do otherwise.
type Length struct {
	Name       string
	Lo, Hi     unit.Length
	Step       unit.Length
	StepOwners []StatementID
}

// A Count is a small whole number between Lo and Hi, ends included.
type Count struct {
	Name   string
	Lo, Hi int
}

// Term is Coef × (count + Plus) × length. Count None leaves Coef × length
// (Plus is not used then); Length None leaves Coef × (count + Plus) in base
// units, so that a relation can speak of counts alone.
type Term struct {
	Coef   int64
	Count  CountID
	Plus   int64
	Length LengthID
}

// Op compares the left side of a relation with nought.
type Op uint8

// The comparisons. Strict ones are not needed: on whole base units "less"
// is "at most one unit less".
const (
	Equal   Op = iota // = 0
	AtLeast           // >= 0
)

// A Relation says that the sum of its terms and Const is nought, or at least
// nought. Owners are the statements it hangs on: it holds only while all of
// them do. No owners: it always holds.
type Relation struct {
	Name   string // for explanations: "ladder.pitch = cell.channel + leg.thickness"
	Terms  []Term
	Const  unit.Length
	Op     Op
	Owners []StatementID
}

// A Rule is a side rule that is not linear: the sum of its terms and Const is
// at least Bound(x), where x is the value of the length On. Bound must be
// monotone over On's range, rising or falling as Falling says, and exact: the
// least whole base unit that will do (unit.Length's largest value where
// nothing does).
type Rule struct {
	Name    string
	Terms   []Term
	Const   unit.Length
	On      LengthID
	Falling bool
	Bound   func(x unit.Length) unit.Length
	Owners  []StatementID
}

// A Statement is one line of the user's: bounds on a length or on a count, or,
// with neither (both None), a name that relations and rules hang on, such as a
// choice of bottles. Only statements are ever named in a conflict.
type Statement struct {
	Name   string
	Length LengthID // None: not about a length
	Count  CountID  // None: not about a count
	// Lo and Hi bound the length, or as plain numbers the count.
	Lo, Hi     unit.Length
	HasLo      bool
	HasHi      bool
	LiftsGrid  bool        // an exact figure: while it holds the length's Step does not
	RepairStep unit.Length // repairs are whole multiples of this (the grid in the line's unit)
}

// Wish pulls a length towards Want.
type Wish struct {
	Length LengthID
	Want   unit.Length
}

// CountWish pulls a count towards Want.
type CountWish struct {
	Count CountID
	Want  int
}

// Product is Coef times the product of counts.
type Product struct {
	Coef   int64
	Counts []CountID
}

// A Level is one rank of the objective. Exactly one of its parts is used. Each
// level is brought to its exact optimum and kept there while the next is
// sought; after the last, counts and then lengths take their smallest values
// in the order of declaration, so that the answer is one point.
type Level struct {
	Name        string
	Wishes      []Wish      // least sum of distances
	CountWishes []CountWish // least sum of distances, before Wishes of the same level
	InOrder     bool        // then the least distance of each, in order
	Most        []Product   // greatest sum of products of counts
	Least       []Term      // least sum of terms
}

// Model is the whole question. Fill it with the Add methods, or build one by
// hand in a test.
type Model struct {
	Lengths    []Length
	Counts     []Count
	Relations  []Relation
	Rules      []Rule
	Statements []Statement
	Levels     []Level
}

// AddLength declares a length.
func (m *Model) AddLength(l Length) LengthID {
	m.Lengths = append(m.Lengths, l)
	return LengthID(len(m.Lengths) - 1)
}

// AddCount declares a count.
func (m *Model) AddCount(c Count) CountID {
	m.Counts = append(m.Counts, c)
	return CountID(len(m.Counts) - 1)
}

// AddStatement declares a statement.
func (m *Model) AddStatement(s Statement) StatementID {
	m.Statements = append(m.Statements, s)
	return StatementID(len(m.Statements) - 1)
}

// Relate adds a relation.
func (m *Model) Relate(r Relation) { m.Relations = append(m.Relations, r) }
