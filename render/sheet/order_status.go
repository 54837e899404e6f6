package sheet

import (
	"fmt"
	"slices"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/render/drawing"
	"slatwright/specs/word"
)

// statusLine says in large letters, before anything else, how the checks came
// out.
func statusLine(p *page, box drawing.Rect) drawing.Rect {
	w := newScribe(p.sheet, box)
	w.line(drawing.HeadingText, drawing.TitleHeight, 0, true, drawing.Plain(statusText(p.in.Findings)))
	box.Min.Y = w.y + 2*drawing.MM
	return box
}

// statusText is "FAIL" or "CAUTION" with the counts; that all is in order where
// neither is.
func statusText(list []check.Finding) string {
	fails, cautions := 0, 0
	for _, f := range list {
		switch f.Status {
		case check.Fail:
			fails++
		case check.Caution:
			cautions++
		}
	}
	switch {
	case fails > 0 && cautions > 0:
		return fmt.Sprintf("FAIL: %d of %d checks; CAUTION: %d", fails, len(list), cautions)
	case fails > 0:
		return fmt.Sprintf("FAIL: %d of %d checks", fails, len(list))
	case cautions > 0:
		return fmt.Sprintf("CAUTION: %d of %d checks, none fails", cautions, len(list))
	}
	return fmt.Sprintf("All %d checks are in order", len(list))
}

// bottlesText says how many bottles the rack holds: of columns that are alike by
// columns and rows, else by the kinds of bottle drawn in their rows.
func bottlesText(r *rack.Rack) string {
	c := r.Counts
	text := fmt.Sprintf("%d, in %s of %s", c.Bottles, word.Count(c.Columns, "column"), rowsText(r))
	var ids []string
	count := map[string]int{}
	for _, k := range r.Kinds {
		for _, b := range k.Shown {
			if !slices.Contains(ids, b.ID) {
				ids = append(ids, b.ID)
			}
			count[b.ID] += k.Count
		}
	}
	if len(ids) < 2 {
		return text
	}
	for i, id := range ids {
		sep := ", "
		if i == 0 {
			sep = ": "
		}
		text += fmt.Sprintf("%s%d %s", sep, count[id], id)
	}
	return text
}
