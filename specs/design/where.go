package design

import (
	"slatwright/specs/diag"
	"slatwright/specs/unit"
)

// Where is a linear relation between named lengths, brought into one form:
// the sum of Num/Den times the length Name, over all Terms, stands in the
// relation Op to Const.
type Where struct {
	Terms []Term      // at least one, each name once, in the order written
	Op    string      // "<=", ">=", "=", "~"
	Const unit.Length // may be negative
	Text  string      // the relation as written
	Place diag.Place
}

// Term is a length with its coefficient Num/Den, in lowest terms, Den > 0,
// Num not 0.
type Term struct {
	Num, Den int64
	Name     string
}
