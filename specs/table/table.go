// Package table holds the figures of the trade that come with the program:
// bottles, lumber, species, nails, equations and limits of wood, nails and loads,
// glues, finishes, papers and the project's own defaults. Each
// table is a TOML file beside this one; each figure in it says where it is
// from. The reader of design files looks names up here, the model and the
// checks take sizes and strengths from here, and Print shows all of it.
package table

import "slatwright/specs/unit"

// Standing says what kind of word stands behind a figure.
type Standing string

// The standings.
const (
	Published Standing = "published"         // a source named in the figure's note printed it
	Practice  Standing = "common practice"   // habit of the trade, no source
	Memory    Standing = "memory"            // recalled, not looked up: measure before relying on it
	Derived   Standing = "derived"           // computed from other figures
	Own       Standing = "the project's own" // chosen for this program
)

// Origin is where a figure comes from.
type Origin struct {
	Standing Standing
	Source   string // the source, or the source believed; what is peculiar about it
}

// Range is a length that varies: the least, the usual and the greatest.
type Range struct {
	Min, Nominal, Max unit.Length
	Origin            Origin // of Nominal
	Spread            Origin // of Min and Max
}

// Mass is a mass that varies, in grams.
type Mass struct {
	Min, Nominal, Max int64
	Origin            Origin // of Nominal
	Spread            Origin // of Min and Max
}

// Share is a part of a whole, in thousandths.
type Share struct {
	Thousandths int64
	Origin      Origin
}
