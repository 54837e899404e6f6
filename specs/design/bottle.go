package design

import (
	"slatwright/specs/diag"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Bottle is a bottle of the customer's own. What was not measured is taken
// from the bottle in the table that has the same name, or else from the one
// whose nominal diameter is nearest.
type Bottle struct {
	Name  string
	Kind  table.Bottle // with the measured figures in place
	Like  string       // id of the bottle in the table that lent the rest
	Text  string       // the statement of its diameter
	Unit  unit.System  // in which that is written
	Place diag.Place   // of its diameter
}

// Bottle returns the bottle that the name means: the customer's own first,
// else the one in the table.
func (d *Design) Bottle(name string) (table.Bottle, bool) {
	for _, b := range d.Bottles {
		if b.Name == name {
			return b.Kind, true
		}
	}
	return table.FindBottle(name)
}
