// Package design reads a design file: what somebody asked for, in their own
// words and units, before anything is solved. What comes out, a Design, is a
// list of statements about lengths and counts with their places in the file,
// and what is to be known about bottles, wood, shop and paper. Faults in the
// file come out all at once, each with its place. The solver comes next.
package design

import (
	"slatwright/specs/diag"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Design is a design file as it was read.
type Design struct {
	Source *diag.Source

	Title, Order, Customer, Date, Revision string // for the title block, "" where absent

	Units    unit.System // of bare figures and of the drawings
	Grid     unit.Length // the finest mark that the shop sets by
	GridStmt *Length     // nil where Grid is the default: 1/16 in or 1 mm

	Lengths []Length // in the order of the file
	Counts  []Count  // in the order of the file
	Where   []Where  // in the order of the file

	Measured []Measured // in the order of the file; Lengths is as it was before measuring

	SiteMeasures []SiteMeasure // site.width, depth, height measured at several places
	Stocks       []Stock       // in the order of the file
	TopPresent   bool          // true unless the file says otherwise
	TopPlace     diag.Place    // where it says so; the zero Place where it does not

	Fit     Fit      // what every cell must hold
	Bottles []Bottle // the customer's own, in the order of the file
	Columns []Column // left to right

	Wood    Wood
	Boards  []Board // in the order of the file
	Shop    Shop
	Joint   Joint
	Finish  Finish
	Price   Price
	Carton  Carton
	Paper   Paper
	Labels  Labels
	Printer Printer
}

// Kind is what a statement says about a length or a count.
type Kind uint8

// The kinds of statement.
const (
	Exact   Kind = iota // Lo and Hi are the value
	AtMost              // Hi is the limit
	AtLeast             // Lo is the limit
	Between             // Lo to Hi, ends included
	Near                // Lo and Hi are the value sought
	Most                // of a count only: as many as the rest allows
)

// String returns the kind in words.
func (k Kind) String() string {
	return [...]string{"exactly", "at most", "at least", "between", "near", "most"}[k]
}

// Length is a statement about a length of the model.
type Length struct {
	Name   string // dotted, such as "ladder.pitch" or "column.2.gap"
	Kind   Kind
	Lo, Hi unit.Length
	Unit   unit.System // as written
	Text   string      // such as `rack.width = "<= 24"`
	Place  diag.Place  // of the value
}

// Count is a statement about a count: "rack.columns", "rack.rows",
// "column.2.count", "column.2.rows".
type Count struct {
	Name   string
	Kind   Kind
	Lo, Hi int
	Text   string
	Place  diag.Place
}

// SiteMeasure is a length of the site measured at several places. The least
// of them is also in Design.Lengths.
type SiteMeasure struct {
	Name   string
	Values []Length // each Exact, in the order of the file
}

// Stock says that a part is made from a nominal size.
type Stock struct {
	Part    string // "leg", "slat", "apron", "top"
	Nominal table.Nominal
	Text    string
	Place   diag.Place
}

// Fit is a list of bottles that cells must hold.
type Fit struct {
	Bottles []BottleRef
	Text    string
	Place   diag.Place // the zero Place where the file has no such list
}

// BottleRef is a bottle's name in a list. Design.Bottle finds it.
type BottleRef struct {
	Name  string
	Place diag.Place
}

// Column is one [[column]] of the file: Count columns alike. Its gap and rise
// are in Design.Lengths and its count and rows in Design.Counts, under the
// names "column.N.gap" and so on, N counting from 1.
type Column struct {
	Fit   *Fit // nil where the whole rack's list holds
	Rows  []Row
	Place diag.Place
}

// Row is one [[column.row]], bottom up. Its rise is in Design.Lengths, as
// "column.N.row.M.rise".
type Row struct {
	Fit   *Fit // nil where the column's list holds
	Place diag.Place
}

// Length returns the statement about the length, if the file makes one.
func (d *Design) Length(name string) (Length, bool) {
	for _, l := range d.Lengths {
		if l.Name == name {
			return l, true
		}
	}
	return Length{}, false
}

// Count returns the statement about the count, if the file makes one.
func (d *Design) Count(name string) (Count, bool) {
	for _, c := range d.Counts {
		if c.Name == name {
			return c, true
		}
	}
	return Count{}, false
}

// Stock returns the stock of the part, if the file names one.
func (d *Design) Stock(part string) (Stock, bool) {
	for _, s := range d.Stocks {
		if s.Part == part {
			return s, true
		}
	}
	return Stock{}, false
}

// Format returns how the design's drawings print lengths.
func (d *Design) Format() unit.Format { return unit.Format{System: d.Units} }
