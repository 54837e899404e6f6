package sheet

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/rack"
	"slatwright/specs/word"
)

// title says which faces these are.
func (b bareBlock) title() string {
	part := b.in.Rack.Parts[b.row.Part]
	text := fmt.Sprintf("%s  %s, %s", part.Mark, part.Name, b.row.Face)
	switch {
	case b.edgeToEnd():
		return text
	case b.shown < b.row.Count:
		return text + fmt.Sprintf("; scale 1:%d, %d of %d drawn", b.den, b.shown, b.row.Count)
	}
	return text + fmt.Sprintf("; scale 1:%d", b.den)
}

// says tells how many faces there are and what tape they take, and which end
// is the left one where that is no matter of course.
func (b bareBlock) says() string {
	text := b.tape()
	if b.row.From == "LEFT" && !b.edgeToEnd() {
		text += " LEFT is the left end seen from the rack's front."
		if !b.top() {
			text += " The front pair lies top edge down, the back pair top edge up."
		}
	}
	if b.edgeToEnd() {
		return text
	}
	switch above, below, thinned := b.running(); {
	case thinned:
		text += " Some figures left out: for all see " + sheetRef("ladder") + ", " + sheetRef("carcase") + "."
	case len(above)+len(below) < len(b.places(true)):
		text += " Figures are to where strips begin, the last to the part's end."
	case b.row.Whole() && len(b.row.Strips) > 1:
		text += " Figures are to where strips begin and end."
	}
	return text
}

// tape tells how many faces there are and what stays bare on each.
func (b bareBlock) tape() string {
	f := b.in.Rack.Format
	if b.edgeToEnd() {
		return "Bare from end to end: " + f.Unit(b.row.Length) + "."
	}
	if s := b.row.Strips[0]; len(b.row.Strips) == 1 && !b.row.Whole() {
		return fmt.Sprintf("Bare, hatched: %s × %s.", f.Text(s.To-s.From), f.Unit(s.High-s.Low))
	}
	strips := fmt.Sprintf("%d strips of tape", len(b.row.Strips))
	if len(b.row.Strips) == 1 {
		strips = "1 strip of tape"
	}
	if wide, same := b.stripWidth(); same {
		strips += ", " + f.Unit(wide) + " wide"
	}
	if b.row.Count == 1 || !b.row.Whole() {
		return fmt.Sprintf("%s: %s (hatched).", faceCount(b.row.Count), strips)
	}
	return fmt.Sprintf("%s: %s, across all (hatched).", b.lots(), strips)
}

// faceCount is a number of faces in words.
func faceCount(n int) string { return word.Count(n, "face") }

// lots says how the faces lie side by side. Of legs that have two such faces
// first one lies up, then the other.
func (b bareBlock) lots() string {
	r := b.row
	both := make([]int, 0, len(r.Left))
	for _, l := range r.Left {
		if slices.Contains(r.Right, l) {
			both = append(both, l)
		}
	}
	if len(r.Left)+len(r.Right) == 0 {
		return faceCount(r.Count) + b.abreast(r.Count)
	}
	rest := slices.DeleteFunc(slices.Clone(r.Left), func(l int) bool { return slices.Contains(both, l) })
	var sides []string
	for _, s := range []struct {
		side    string
		ladders []int
	}{{"right", r.Right}, {"left", rest}} {
		if len(s.ladders) > 0 {
			sides = append(sides, fmt.Sprintf("the %s face of %s", s.side, rack.Places("ladder", rack.FromOne(s.ladders))))
		}
	}
	text := fmt.Sprintf("%d legs%s, %s up (seen from the front)", len(r.Pieces), b.abreast(len(r.Pieces)), strings.Join(sides, ", "))
	if len(both) == 0 {
		return text
	}
	turned := r.Count - len(r.Pieces)
	return fmt.Sprintf("First %s; then turn the %d of %s over%s", text, turned, rack.Places("ladder", rack.FromOne(both)), b.abreast(turned))
}

// abreast says how wide so many parts are side by side, and in what rows where
// the bench does not take them all.
func (b bareBlock) abreast(n int) string {
	f := b.in.Rack.Format
	if most := b.row.Abreast(); n > most {
		return fmt.Sprintf(", in rows of %d, each %s wide", most, f.Unit(b.row.Across*length(most)))
	}
	return fmt.Sprintf(", side by side %s wide", f.Unit(b.row.Across*length(n)))
}
