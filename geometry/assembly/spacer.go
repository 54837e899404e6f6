package assembly

import (
	"slices"

	"slatwright/geometry/rack"
	"slatwright/specs/unit"
)

// Spacer is what is clear between facing legs, with the columns, from 1, that
// are so wide.
type Spacer struct {
	Long    unit.Length
	Columns []int
}

// Spacers lists each length of a spacer once, in the order of the columns.
func Spacers(r *rack.Rack) []Spacer {
	var out []Spacer
	for i, c := range r.Columns {
		long := r.Kinds[c.Kind].Channel
		k := slices.IndexFunc(out, func(s Spacer) bool { return s.Long == long })
		if k < 0 {
			k = len(out)
			out = append(out, Spacer{Long: long})
		}
		out[k].Columns = append(out[k].Columns, i+1)
	}
	return out
}
