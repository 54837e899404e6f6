package drawing

// Class says what a mark is. Everything about its ink follows from it.
type Class uint8

// The classes of lines, named after their use in ISO 128-2.
const (
	Visible     Class = iota // visible edges and outlines
	Hidden                   // hidden edges
	Centre                   // centre lines and lines of symmetry
	CutPlane                 // where a section is taken
	Thin                     // outlines that stand back, as a bottle's in a section
	Phantom                  // adjacent parts, other positions of a part
	Extension                // from the outline to a dimension line
	Dimension                // dimension lines and their terminators
	Leader                   // from a note or an item mark to what it is about
	Hatch                    // cut surfaces
	Break                    // where a view is broken off
	Frame                    // the frame of the sheet and the outer lines of its blocks
	FrameThin                // lines inside the title block and the tables
	Trail                    // the path of a part in an exploded view
	TemplateCut              // an edge to cut or mark by, at full size
	Register                 // crosses, rulers, fold and trim marks
	Symbol                   // graphical symbols, item circles
	Solid                    // filled areas without an outline

	// The classes of lettering.
	FigureText  // dimension figures
	NoteText    // notes, and the text of the title block
	HeadingText // view and block titles
	ItemText    // item marks
	CellText    // text in the rows of a table

	classes
)

// Ink is how a class is drawn.
type Ink struct {
	Name string
	Pen  Um    // width of the line; 0 draws no line
	Dash []Um  // lengths of dash, gap, dash, gap ...; none for a continuous line
	Grey uint8 // 0 black .. 255 white; never needed to tell two marks apart
}

// The line group is 0.5 of ISO 128-2: wide 0.5 mm, narrow 0.25 mm, lettering
// and symbols 0.35 mm, for sheets up to A2 (read in a textbook that reproduces
// the tables of ÖNORM EN ISO 128-2: Westermann, ISBN 978-3-7100-2824-3, p. 30).
// The frame is 0.7 mm after ISO 5457:1999 (read in a public data file that
// cites it).
const (
	wide   = 500
	narrow = 250
	symbol = 350
	heavy  = 700
)

// The elements of broken lines are multiples of the pen's width d: long dash
// 24 d, dash 12 d, gap 3 d, dot not over 0.5 d (long dash, gap and dot: read
// in a public script that cites DIN EN ISO 128-20; dash 12 d: memory, believed
// ISO 128-20:1996, table 3).
var (
	dashed     = []Um{12 * narrow, 3 * narrow}
	longDot    = []Um{24 * narrow, 3 * narrow, narrow / 2, 3 * narrow}
	longDotTwo = []Um{24 * narrow, 3 * narrow, narrow / 2, 3 * narrow, narrow / 2, 3 * narrow}
	wideDot    = []Um{24 * wide, 3 * wide, wide / 2, 3 * wide}
)

// inks is the one table from class to ink. Which line type serves which use
// is read in the same textbook and, for the chain lines, memory, believed
// ISO 128-2, annex A. Trails, template edges and register marks: our own.
var inks = [classes]Ink{
	Visible:     {Name: "visible", Pen: wide},
	Hidden:      {Name: "hidden", Pen: narrow, Dash: dashed},
	Centre:      {Name: "centre", Pen: narrow, Dash: longDot},
	CutPlane:    {Name: "cutplane", Pen: wide, Dash: wideDot},
	Thin:        {Name: "thin", Pen: narrow},
	Phantom:     {Name: "phantom", Pen: narrow, Dash: longDotTwo},
	Extension:   {Name: "extension", Pen: narrow},
	Dimension:   {Name: "dimension", Pen: narrow},
	Leader:      {Name: "leader", Pen: narrow},
	Hatch:       {Name: "hatch", Pen: 180},
	Break:       {Name: "break", Pen: narrow},
	Frame:       {Name: "frame", Pen: heavy},
	FrameThin:   {Name: "framethin", Pen: narrow},
	Trail:       {Name: "trail", Pen: narrow, Dash: longDot},
	TemplateCut: {Name: "templatecut", Pen: narrow},
	Register:    {Name: "register", Pen: 180},
	Symbol:      {Name: "symbol", Pen: symbol},
	Solid:       {Name: "solid"},
	FigureText:  {Name: "figure"},
	NoteText:    {Name: "note"},
	HeadingText: {Name: "heading"},
	ItemText:    {Name: "item"},
	CellText:    {Name: "cell"},
}

// Ink returns how the class is drawn. It panics for a class that is none.
func (c Class) Ink() Ink { return inks[c] }

// String returns the class's name.
func (c Class) String() string {
	if c >= classes {
		return "unknown"
	}
	return inks[c].Name
}

// Fill is what the inside of a closed path or a circle is filled with.
type Fill uint8

// The fills. White covers what was drawn before.
const (
	NoFill Fill = iota
	White
	Light // a grey that lettering stays readable on
	Mid   // a grey to set one surface off against another
	Black
	fills
)

var fillNames = [fills]string{"none", "white", "light", "mid", "black"}
var fillGreys = [fills]uint8{255, 255, 232, 200, 0}

// String returns the fill's name.
func (f Fill) String() string { return name(fillNames[:], int(f)) }

// Grey returns the fill's shade, 0 black .. 255 white. It panics for a fill
// that is none of the above.
func (f Fill) Grey() uint8 { return fillGreys[f] }
