// Package rack turns a design into a rack. It states the design as lengths,
// counts and relations (state.go), has package solve find the one best answer
// (build.go), and sets every piece in space (place.go). What comes out, a Rack,
// is plain data: the checks judge it, the views look at it, the sheets draw it.
//
// Words used here and everywhere after:
//
//	leg       an upright; two make a ladder
//	slat      a bar from front to back across a ladder, on which bottles lie
//	ladder    a front leg and a back leg with slats across one face or both
//	apron     a board along the front or the back that ties the ladders
//	top       the board over all
//	column    the cells between two neighbouring ladders
//	row       the cells at one height, counted from the bottom
//	cell      the place of one bottle
//	gap       clear between the two facing slats of a cell
//	channel   clear between the facing legs of a column: the gap and two slats
//	pitch     centre to centre of neighbouring legs
//	rise      from a slat to the one above it in the same column
//	reveal    what shows of a leg below its lowest or above its highest slat
//	overhang  how far the top stands out over the carcase
//	kerf      what a saw blade turns to dust
package rack

import (
	"slatwright/geometry/space"
	"slatwright/specs/design"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Rack is a solved design with every piece in its place.
type Rack struct {
	Design  *design.Design
	Format  unit.Format // how lengths are printed on its drawings
	Counts  Counts
	Lengths []Solved // every named length, in the order of the model
	Kinds   []Kind   // the kinds of column, in the order of the file
	Columns []Column // every column, left to right
	Ladders []Ladder // every ladder, left to right
	Shapes  []Shape  // the kinds of ladder, in order of first use
	Parts   []Part   // the kinds of part, by mark
	Pieces  []Piece  // every piece, ladders first, then aprons, then the top
	Bottles []Bottle // every bottle, column by column, bottom up
	Nexts   []Next   // why not one more, for each open count

	Remedies []Remedy   // what would put right the checks that stated figures fail
	Measured []Measured // what is measured at the bench, in the order of the file

	index map[string]int // into Lengths
}

// Counts is how many there are of what.
type Counts struct {
	Columns, Rows                int // Rows is the most of any column
	Bottles                      int
	Ladders, Legs, Slats, Aprons int
}

// Origin says where a solved length comes from.
type Origin string

// The origins, as they are written in reports.
const (
	Stated  Origin = "stated"
	Default Origin = "default"
	Follows Origin = "follows"
)

// Solved is one named length of the model with its proof.
type Solved struct {
	Name    string
	Value   unit.Length
	From    Origin
	Line    int      // of the statement, where From is Stated; else 0
	Because string   // one clause: the statement, the default or the relation
	Sum     string   // where Because is a limit: its two sides in words and figures
	Needs   []string // the lengths in the relation, where From is Follows
}

// Kind is a sort of column: columns of one kind are alike.
type Kind struct {
	Name    string // "" where all columns are alike, else "column 1", ...
	Count   int
	Rows    int
	Gap     unit.Length
	Channel unit.Length
	Pitch   unit.Length
	Under   []unit.Length    // underside of each slat above the floor, bottom up
	Rises   []unit.Length    // from slat k to slat k+1; one fewer than Under
	Fit     [][]table.Bottle // the bottles each row must hold, bottom up
	Shown   []table.Bottle   // the bottle drawn in each row, bottom up
}

// Column is one column of the rack.
type Column struct {
	Kind        int         // into Kinds
	Left, Right unit.Length // x of the facing leg faces
}

// Role tells a ladder's place in the row.
type Role uint8

// The roles.
const (
	LeftEnd Role = iota
	Inner
	RightEnd
)

// String returns the role in words.
func (r Role) String() string { return [...]string{"left end", "inner", "right end"}[r] }

// Ladder is one ladder of the rack.
type Ladder struct {
	Shape int         // into Shapes
	X     unit.Length // left face of its legs
}

// Shape is a kind of ladder: ladders of one shape are made alike. Left and
// Right hold the undersides of the slats on the face towards lower and higher
// x; an end ladder has none on its outer face.
type Shape struct {
	Role        Role
	Name        string // "left end", "inner", "inner 2", ...
	Count       int
	Left, Right []unit.Length
}

// Part is a kind of part: pieces of one part are cut alike. Width is the second
// size of its cross-section, such as a slat's height.
type Part struct {
	Mark      string // "A", "B", ...
	Name      string // "slat", "leg", "apron", "top"
	Count     int
	Thickness unit.Length
	Width     unit.Length
	Length    unit.Length // along the grain
	Stock     string      // nominal size, "" where the design names none
	After     []string    // the lengths of [measured] that its size hangs on; Rack.Awaits has those still to be measured
}

// Piece is one part in its place. Its grain runs along Grain.
type Piece struct {
	Part   int // into Parts
	Name   string
	Box    space.Box
	Grain  space.Axis
	Ladder int // into Ladders, -1 for aprons and the top
	Fixed  []Contact
}

// Contact is a face of a piece that is glued or nailed to another piece.
type Contact struct {
	Piece int        // the other piece, into Pieces
	Axis  space.Axis // normal of the face
	Far   bool       // the face at Max on that axis rather than at Min
	Patch space.Box  // what the two share; flat along Axis
}

// Bottle is one bottle lying in its cell, drawn at its nominal size.
type Bottle struct {
	Column, Row int // from 0
	Kind        table.Bottle
	Body, Neck  space.Cylinder
}

// Next says why an open count is not one more.
type Next struct {
	Count     string // "rack.columns"
	Value     int    // the one that does not fit
	StoppedBy []Stop
}

// Stop is one line that stops the next one, and what it would have to give.
type Stop struct {
	Line  int
	Text  string
	Needs string
}

// Len returns a named length, such as "slat.height". It panics where the rack
// has none of that name: the caller asks for a length that the model does not
// have, which is a bug.
func (r *Rack) Len(name string) unit.Length {
	i, ok := r.index[name]
	if !ok {
		panic("rack: no length named " + name)
	}
	return r.Lengths[i].Value
}

// Has reports whether the rack has a length of that name.
func (r *Rack) Has(name string) bool {
	_, ok := r.index[name]
	return ok
}

// Find returns a named length with its proof.
func (r *Rack) Find(name string) (Solved, bool) {
	i, ok := r.index[name]
	if !ok {
		return Solved{}, false
	}
	return r.Lengths[i], true
}

// HasTop reports whether the rack has a top.
func (r *Rack) HasTop() bool { return r.Has("top.length") }

// PartNamed returns the part of that name; ok is false where there is none.
func (r *Rack) PartNamed(name string) (Part, bool) {
	for _, p := range r.Parts {
		if p.Name == name {
			return p, true
		}
	}
	return Part{}, false
}

// Bounds returns the box around all pieces, bottles left out.
func (r *Rack) Bounds() space.Box {
	var all space.Box
	for _, p := range r.Pieces {
		all = all.Join(p.Box)
	}
	return all
}
