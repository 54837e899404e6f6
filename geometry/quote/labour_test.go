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

func TestQuantityText(t *testing.T) {
	for _, c := range []struct {
		quantity int64
		unit     string
		want     string
	}{{100, "board feet", "1 board foot"}, {200, "board feet", "2 board feet"}, {100, "boards", "1 board"}, {100, "litres", "1 litre"}} {
		if got := (Line{Quantity: c.quantity, Unit: c.unit}).QuantityText(); got != c.want {
			t.Errorf("%d %s: %q; want %q", c.quantity, c.unit, got, c.want)
		}
	}
}
