package drawing

import (
	"cmp"
	"fmt"
	"slices"
)

// FaultKind says what a person at the bench could misread.
type FaultKind uint8

// The kinds of fault.
const (
	TextOnText     FaultKind = iota // two texts meet, or nearly
	TextOnLine                      // a line runs through a text or too near it
	OutsideFrame                    // a mark leaves the frame
	TextTooSmall                    // lettering under its least height
	LeadersCross                    // two leaders cross or lie on each other
	ChainOpen                       // printed links do not add up to the printed whole
	FigureValue                     // a printed figure is not the value it stands for
	FigureGeometry                  // a value is not the length that its line spans
	ItemUnlisted                    // an item mark without a row in a parts list
	ItemUnshown                     // a row of a parts list without an item mark
	LineBroken                      // a filled shape hides part of an extension or dimension line
	faultKinds
)

var faultNames = [faultKinds]string{"text on text", "text on line", "outside frame", "text too small", "leaders cross",
	"chain open", "figure not value", "figure not geometry", "item unlisted", "item unshown", "line broken"}

// String returns the kind's name.
func (k FaultKind) String() string { return name(faultNames[:], int(k)) }

// A Fault is one thing on a sheet that could be misread.
type Fault struct {
	Sheet string // name of the sheet
	Kind  FaultKind
	Where Point  // on the sheet
	Marks [2]int // numbers of the marks that took part, or of the records; -1 for none
	Says  string // what meets what, in words
}

// String returns the fault as one line of a report.
func (f Fault) String() string {
	return fmt.Sprintf("%s: %s at %s: %s", f.Sheet, f.Kind, at(f.Where), f.Says)
}

// sortFaults puts faults in the order of kind, marks and place.
func sortFaults(faults []Fault) {
	slices.SortFunc(faults, func(a, b Fault) int {
		return cmp.Or(cmp.Compare(a.Sheet, b.Sheet), cmp.Compare(a.Kind, b.Kind),
			cmp.Compare(a.Marks[0], b.Marks[0]), cmp.Compare(a.Marks[1], b.Marks[1]),
			cmp.Compare(a.Where.Y, b.Where.Y), cmp.Compare(a.Where.X, b.Where.X), cmp.Compare(a.Says, b.Says))
	})
}

// Legible returns everything on a sheet that could be misread, sorted; none is
// what a sheet should have. The sheet must pass Check. Item marks are compared
// with a parts list where the sheet has one; Items does so for a whole packet.
func Legible(s *Sheet) []Fault {
	l := newLegibility(s)
	l.texts()
	l.lines()
	l.breaks()
	l.frame()
	l.heights()
	l.leaders()
	l.figures()
	l.chains()
	if hasList(s) {
		l.faults = append(l.faults, compareItems([]*Sheet{s})...)
	}
	sortFaults(l.faults)
	return l.faults
}

// Items compares the item marks of a packet with its parts lists and returns
// the marks that no list names and the rows that no sheet shows, sorted.
func Items(sheets []*Sheet) []Fault {
	faults := compareItems(sheets)
	sortFaults(faults)
	return faults
}

func hasList(s *Sheet) bool {
	return slices.ContainsFunc(s.Items, func(r ItemRecord) bool { return r.Kind == ListRow })
}

// compareItems finds the item marks that stand in one kind of place only.
func compareItems(sheets []*Sheet) []Fault {
	var seen [2]map[string]bool
	for k := range seen {
		seen[k] = map[string]bool{}
	}
	for _, s := range sheets {
		for _, r := range s.Items {
			seen[r.Kind][r.Mark] = true
		}
	}
	var faults []Fault
	for _, s := range sheets {
		for i, r := range s.Items {
			f := Fault{Sheet: s.Name, Where: r.Where, Marks: [2]int{i, -1}}
			switch {
			case r.Kind == Balloon && !seen[ListRow][r.Mark]:
				f.Kind, f.Says = ItemUnlisted, fmt.Sprintf("item %q has no row in a parts list", r.Mark)
			case r.Kind == ListRow && !seen[Balloon][r.Mark]:
				f.Kind, f.Says = ItemUnshown, fmt.Sprintf("part %q is listed but marked in no view", r.Mark)
			default:
				continue
			}
			faults = append(faults, f)
		}
	}
	return faults
}
