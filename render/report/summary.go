package report

import (
	"fmt"

	"slatwright/geometry/rack"
	"slatwright/specs/word"
)

// Summary says in one line what a rack is.
func Summary(r *rack.Rack) string {
	rows := word.Count(r.Counts.Rows, "row")
	for _, k := range r.Kinds {
		if k.Rows < r.Counts.Rows {
			rows = fmt.Sprintf("up to %d rows", r.Counts.Rows)
		}
	}
	return fmt.Sprintf("%s in %s, %s; %s wide, %s deep, %s high",
		word.Count(r.Counts.Columns, "column"), rows, word.Count(r.Counts.Bottles, "bottle"),
		r.Format.Unit(r.Len("rack.width")), r.Format.Unit(r.Len("rack.depth")), r.Format.Unit(r.Len("rack.height")))
}
