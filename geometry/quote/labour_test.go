package quote

import (
	"slices"
	"testing"

	"slatwright/geometry/cutting"
	"slatwright/specs/table"
)

// Every operation of a cutting plan is paid for: the table of labour has a row
// for it, and one that nobody knows is no work for nothing.
func TestEveryOperationIsPaid(t *testing.T) {
	for _, o := range cutting.Operations() {
		id := sawn(o)
		if o == cutting.GluingUp {
			id = "panel"
		}
		if !slices.ContainsFunc(table.Operations(), func(row table.Operation) bool { return row.ID == id }) {
			t.Errorf("%s: no row %q in the table of labour", o, id)
		}
	}
	defer func() {
		if recover() == nil {
			t.Error("an unknown operation costs nothing")
		}
	}()
	sawn("whittle")
}
