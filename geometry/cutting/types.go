package cutting

import (
	"cmp"

	"slatwright/specs/unit"
)

// Part is a kind of part that is wanted: finished sizes, the grain along
// Length. Equal sizes of several orders are pooled in the plan and keep the
// order and mark given here.
type Part struct {
	Order, Mark, Name        string
	Thickness, Width, Length unit.Length
	Count                    int // pieces the order needs
	Spares                   int // pieces cut besides
}

// Board is a kind of board that can be bought or lies in the rack, in the
// sizes it really has.
type Board struct {
	Nominal                  string
	Thickness, Width, Length unit.Length
	Price                    int64 // cents for one, 0 or more; own boards usually 0
	OnHand                   int   // 0: any number can be bought; more: so many pieces and not one more
	CleanEnds                bool  // both ends are square and sound, so that EndTrim is not lost
}

// Shop holds the shop's allowances. The zero value is a saw without kerf.
type Shop struct {
	Kerf         unit.Length // lost between neighbours at each stage
	EndTrim      unit.Length // lost at each end of a board, its cut included
	EdgeTrim     unit.Length // lost at each edge of a section that is ripped, its cut included
	MinRipLength unit.Length // no section shorter than this is ripped

	PlaneMax       unit.Length // most that may be planed off a face-to-face thickness; 0: any amount
	ResawHeight    unit.Length // widest board that can be resawn; 0: nothing is resawn
	ResawKerf      unit.Length // kerf of the resawing cut; 0: as Kerf
	ResawAllowance unit.Length // planed off each leaf after resawing

	JointAllowance unit.Length // jointed off each stave's width before a glue-up
	GlueLength     unit.Length // extra length of a stave, cut off after the glue-up
	StaveGrid      unit.Length // stave widths are rounded up to it; 0: not rounded
	KeepOffcut     unit.Length // shortest offcut worth listing; 0: every one
}

// Job is what Plan works on.
type Job struct {
	Parts  []Part
	Boards []Board
	Shop   Shop
	// Effort bounds the search, in elementary steps (some 5*10^8 of them a
	// second); 0 takes DefaultEffort. It replaces a clock, so that the same job
	// gives the same plan everywhere.
	Effort int64
}

// Process says what is done to a whole board before it is cut.
type Process int

// The processes, in the order in which they are preferred.
const (
	AsIs   Process = iota // its thickness is the parts' thickness
	Planed                // planed down to the parts' thickness
	Resawn                // sawn on edge into leaves, each planed to the parts' thickness
)

func (p Process) String() string {
	switch p {
	case Planed:
		return "planed"
	case Resawn:
		return "resawn"
	}
	return "as is"
}

// Plan is a cutting plan. Boards stand in cutting order.
type Plan struct {
	Cost   int64 // cents for all boards used
	Bound  int64 // no plan costs less (cents); exact, never a floating-point figure
	Proven bool  // Cost == Bound

	Boards   []BoardPlan
	GlueUps  []GlueUp
	Settings []Setting // every setting of the machines, each once
	Steps    []Step    // the cutting order, one setting a step
	Offcuts  []Offcut  // longest first
	Warnings []Warning
}

// BoardPlan is one layout and the number of boards cut that way.
type BoardPlan struct {
	Board     Board
	Index     int         // of the board in Job.Boards
	Count     int         // boards cut to this layout
	Process   Process     // what is done to the board first
	Thickness unit.Length // of the parts in it
	Leaves    int         // 1, or the leaves a resawn board gives
	Sections  []Section   // along the board; a resawn board's leaf by leaf
}

// Section is a piece of a board between two crosscuts.
type Section struct {
	Leaf   int // 0, or the leaf of a resawn board it is cut from
	Length unit.Length
	Ripped bool // false: it keeps both edges of the board and holds one part
	Whole  bool // it takes the full usable length: no crosscut besides the end trims
	Strips []Strip
}

// Strip is a piece of a section between two rips.
type Strip struct {
	Width unit.Length
	Parts []Placed
}

// Placed is a part, or a stave of one, in its place.
type Placed struct {
	Order, Mark, Name string
	Width, Length     unit.Length
	Spare             bool
	Stave, Staves     int // stave n of m of a glued-up part; 0, 0 for a part from one piece
}

// GlueUp is a part made up in width from several staves.
type GlueUp struct {
	Order, Mark, Name string
	Count             int // parts, spares included
	Staves            int // staves in one part
	StaveWidth        unit.Length
	StaveLength       unit.Length
	Width, Length     unit.Length // finished

	part int // index in Job.Parts
}

// SettingKind is the machine's stop or gauge that is set.
type SettingKind int

// The settings, in the order in which a board meets them.
const (
	ResawFence SettingKind = iota // fence for a cut through the thickness
	Thickness                     // planer's thickness
	Stop                          // length stop of the crosscut
	Fence                         // rip fence
)

func (k SettingKind) String() string {
	return [...]string{"resaw fence", "planer", "stop", "fence"}[k]
}

// Setting is one position of a fence, stop or planer.
type Setting struct {
	Kind SettingKind
	At   unit.Length
}

// Offcut is what is left of a board in its full width at the end of its last
// section, its last kerf already taken off.
type Offcut struct {
	Nominal                  string
	Thickness, Width, Length unit.Length
	Count                    int
}

// Compare puts long offcuts first, then wide and thick ones.
func (o Offcut) Compare(p Offcut) int {
	return cmp.Or(cmp.Compare(p.Length, o.Length), cmp.Compare(p.Width, o.Width), cmp.Compare(p.Thickness, o.Thickness), cmp.Compare(o.Nominal, p.Nominal))
}

// Operation is what is done at a step, in the words of the shop.
type Operation string

// The operations, in the order in which a board meets them.
const (
	Resawing        Operation = "resaw"
	Planing         Operation = "plane"
	TrimmingEnds    Operation = "trim ends"
	Crosscutting    Operation = "crosscut"
	Ripping         Operation = "rip"
	CuttingToLength Operation = "cut to length"
	GluingUp        Operation = "glue up"
)

// Operations lists all operations, in their order.
func Operations() []Operation {
	return []Operation{Resawing, Planing, TrimmingEnds, Crosscutting, Ripping, CuttingToLength, GluingUp}
}

// Step is one setting and all the cuts made with it before the next one.
type Step struct {
	Operation Operation
	Setting   Setting
	HasStop   bool    // false: nothing is set (an end trim by eye, a glue-up)
	Count     int     // pieces that come from the step
	Pieces    []Yield // what they are, each once
	Boards    []int   // indices into Plan.Boards of the boards worked on
	Gang      int     // how many equal pieces can be cut at once; 1: one by one
	Critical  bool    // the cut needs more than ordinary care
	Cautions  []string
}

// Yield is what a step gives: boards on the way, or a part of an order.
type Yield struct {
	Stage       string // "leaf", "resawn", "planed", "board", "section", "strip"; "" for a part
	Order, Mark string // of a part; its name where it has no mark
}

// Yield returns the part as steps name it.
func (g GlueUp) Yield() Yield { return Yield{Order: g.Order, Mark: cmp.Or(g.Mark, g.Name)} }

// Compare puts stages behind parts, parts by order and mark.
func (y Yield) Compare(z Yield) int {
	return cmp.Or(cmp.Compare(y.Stage, z.Stage), cmp.Compare(y.Order, z.Order), cmp.Compare(y.Mark, z.Mark))
}

// Warning is something that the maker should know and that is no error.
type Warning struct {
	Board int // index into Plan.Boards, or -1
	Text  string
}
