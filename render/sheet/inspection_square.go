package sheet

import (
	"fmt"
	"strconv"

	"slatwright/geometry/assembly"
	"slatwright/render/drawing"
)

// squareSheets writes the diagonals as drawn and below them a pair of boxes for
// every rectangle of the rack, so that no ladder goes unmeasured. It goes on
// from the scribe of the last page, on as many further pages as it needs, and
// leaves room to sign.
func squareSheets(in Input, after int, pages []*page, w *scribe) ([]*page, *scribe) {
	turn := func() {
		p := in.newPage(fmt.Sprintf("inspection-%d", len(pages)+1), "Inspection")
		pages = append(pages, p)
		w = newScribe(p.sheet, p.area)
	}
	about := func() {
		last := pages[len(pages)-1]
		last.about = append(last.about, assembly.Squares)
	}
	drawn, boxes := measureSquares(in, after), squareBoxes(in, w.box.W())
	if need := 5*drawing.MM + drawn.height(w.box.W()) + ledgerTitle + inspectionRow + signHigh; w.room() < need {
		turn()
	} else {
		w.skip(3 * drawing.MM)
	}
	drawn.write(w)
	w.skip(2 * drawing.MM)
	about()
	for {
		done := boxes.write(w)
		if boxes.rows = boxes.rows[done:]; len(boxes.rows) == 0 {
			break
		}
		turn()
		about()
	}
	if w.room() < signHigh {
		turn()
	}
	return pages, w
}

// measureSquares lists the diagonals as drawn, numbered on from the dimensions.
func measureSquares(in Input, after int) ledger {
	f := in.Rack.Format
	l := ledger{columns: []ledgerColumn{
		{title: "no.", width: 11 * drawing.MM}, {title: "both diagonals, between"},
		{title: "drawn, " + f.System.String(), width: 26 * drawing.MM, right: true}, {title: "alike within", width: 24 * drawing.MM, right: true},
	}}
	for i, d := range assembly.Diagonals(in.Rack) {
		name := d.Name
		if i == 0 && len(in.Rack.Ladders) > 1 {
			name = "every " + name
		}
		l.rows = append(l.rows, []string{strconv.Itoa(after + i + 1), name + ": " + d.Between, d.Text(f.System), f.Text(d.Apart)})
	}
	return l
}

// Widths of the pairs of boxes.
const (
	squareName = 33 * drawing.MM
	squareBox  = 21 * drawing.MM
	squareGap  = 5 * drawing.MM
)

// squareBoxes has a blank for either diagonal of each ladder, of the front, of
// the back and of the rack from above, several beside each other, to be read
// row by row.
func squareBoxes(in Input, width drawing.Um) ledger {
	var names []string
	for i := range in.Rack.Ladders {
		names = append(names, fmt.Sprintf("ladder %d", i+1))
	}
	names = append(names, "carcase front", "carcase back", "from above")
	across := max(1, int((width+squareGap)/(squareName+2*squareBox+squareGap)))
	across = min(across, len(names))
	l := ledger{least: inspectionRow}
	for i := range across {
		if i > 0 {
			l.columns = append(l.columns, ledgerColumn{width: squareGap})
		}
		l.columns = append(l.columns, ledgerColumn{title: "square of", width: squareName},
			ledgerColumn{title: "one way", width: squareBox, blank: true}, ledgerColumn{title: "other way", width: squareBox, blank: true})
	}
	for i := 0; i < len(names); i += across {
		var row []string
		for k := range across {
			name := ""
			if i+k < len(names) {
				name = names[i+k]
			}
			if k > 0 {
				row = append(row, "")
			}
			row = append(row, name, "", "")
		}
		l.rows = append(l.rows, row)
	}
	return l
}
