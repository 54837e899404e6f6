package label

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/rack"
)

// A slot is one of the things that a label says.
type slot int

// The slots. A size stands in one line, or broken after the width; so does
// where a piece goes.
const (
	nothing slot = iota
	what         // "slat, row 2", "14 slats, left face"
	sized        // thickness × width × length
	order        // title, where there is no order
	where        // ladder, face, whether it is cut later
	count        // "2 of 40"
	section      // thickness × width
	length
	ladder
	side
	way     // the end that the arrow points to
	content // mark of the packet
	title   // after an order, where it has room
	slots   // how many there are
)

// words returns what a label says in each slot.
func (e entry) words() (w [slots]string) {
	r, f := e.rack, e.rack.Format
	w[what], w[ladder], w[side] = e.placed()
	waits := ""
	if r.Waits(e.part) {
		waits = "cut after measuring"
	}
	w[side] = join(", ", w[side], waits)
	w[where] = join(", ", w[ladder], w[side])
	w[count] = e.numbered()
	w[section] = f.Text(e.part.Thickness) + " × " + f.Text(e.part.Width)
	w[length] = f.Unit(e.part.Length)
	w[sized] = w[section] + " × " + w[length]
	w[section] += " ×"
	if w[order], w[title] = e.order, r.Design.Title; e.order == "" {
		w[order], w[title] = w[title], ""
	}
	w[way] = end(e.part.Name)
	w[content] = e.mark
	return w
}

// placed says what a piece is, which ladder or other parts it belongs to, and on
// which side.
func (e entry) placed() (what, at, side string) {
	r := e.rack
	switch {
	case e.part.Name == block:
		return e.bundleWords(), "back upper apron", "inner face"
	case e.piece < 0:
		return e.part.Name, "spare", ""
	}
	p := r.Pieces[e.piece]
	if e.pieces > 0 {
		return e.bundleWords(), ladderText(r, p), ""
	}
	_, place, _ := strings.Cut(p.Name, ", ")
	switch e.part.Name {
	case "leg":
		return place[strings.LastIndexByte(place, ' ')+1:] + " leg", ladderText(r, p), ""
	case "slat":
		s := r.Shapes[r.Ladders[p.Ladder].Shape]
		side, under := "left", s.Left
		if onRight(r, p) {
			side, under = "right", s.Right
		}
		return rowText(slices.Index(under, p.Box.Min.Z)+1, len(under)), ladderText(r, p), side + " face"
	case "apron":
		return place + " apron", "across all ladders", ""
	}
	return e.part.Name, "over all", ""
}

// rowText names a slat by its row; the first and the last say which way rows are
// counted.
func rowText(row, of int) string {
	text := fmt.Sprintf("slat, row %d", row)
	switch {
	case of > 1 && row == 1:
		text += ", lowest"
	case of > 1 && row == of:
		text += ", top"
	}
	return text
}

// ladderText says which ladder a piece belongs to, counted from the left.
func ladderText(r *rack.Rack, p rack.Piece) string {
	return fmt.Sprintf("ladder %d of %d from the left", p.Ladder+1, len(r.Ladders))
}

// end names the end of a part that the arrow points to, "" where either serves.
func end(part string) string {
	switch part {
	case "leg":
		return "FOOT"
	case "apron":
		return "LEFT END"
	case "slat":
		return "FRONT END"
	case block:
		return ""
	}
	return "FRONT EDGE"
}

// join sets words side by side, leaving out what is empty.
func join(between string, words ...string) string {
	return strings.Join(slices.DeleteFunc(words, func(s string) bool { return s == "" }), between)
}

// shorter gives words a shorter form, those tried first that lose least.
var shorter = [][2]string{
	{" from the left", ""}, {"across all", "all"}, {"bundle ", ""}, {" face", ""}, {"ladder", "ldr"}, {" of ", "/"},
	{"cut after measuring", "cut later"}, {"lower", "lwr"}, {"upper", "upr"}, {"front", "frt"},
}
