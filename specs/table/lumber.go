package table

import (
	_ "embed"
	"slices"
	"strings"
	"sync"

	"slatwright/specs/unit"
)

// Kind is a sort of lumber.
type Kind string

// The kinds of lumber.
const (
	Board     Kind = "softwood board"     // PS 20, under 2 in nominal
	Dimension Kind = "softwood dimension" // PS 20, 2 in nominal and over
	Hardwood  Kind = "hardwood"           // by quarters, surfaced two sides, random widths
	Planed    Kind = "planed metric"      // named by their sizes in millimetres
)

// Nominal is a size that lumber is sold by, with its sizes when dry.
type Nominal struct {
	Name      string      // "1x2", "5/4x4", "4/4", "20x45"
	Thickness unit.Length // dressed
	Width     unit.Length // dressed; zero for hardwood, which comes in random widths
	Kind      Kind
	Origin    Origin
}

//go:embed lumber.toml
var lumberText []byte

// A lumberSize is a nominal size and the dressed size.
type lumberSize [2]string

func (s lumberSize) dressed() unit.Length { return unit.MustParse(s[1], unit.Imperial) }

type lumberFile struct {
	SoftwoodThickness []struct {
		origin
		Kind  Kind
		Sizes []lumberSize
	} `toml:"softwood_thickness"`
	SoftwoodWidth struct {
		origin
		Sizes []lumberSize
	} `toml:"softwood_width"`
	Hardwood struct {
		origin
		Sizes []lumberSize
	}
	Planed struct {
		origin
		Sizes []string
	}
	Lengths []struct {
		origin
		Kind   Kind
		Values []length
	}
}

type retail struct {
	kind    Kind
	lengths []unit.Length
	origin  Origin
}

type lumberTable struct {
	sizes  []Nominal
	retail []retail
}

var lumber = sync.OnceValue(func() lumberTable {
	var file lumberFile
	decode("lumber", lumberText, &file)
	t := lumberTable{sizes: file.nominals()}
	for _, l := range file.Lengths {
		r := retail{kind: l.Kind, origin: l.origin.value()}
		for _, v := range l.Values {
			r.lengths = append(r.lengths, unit.Length(v))
		}
		t.retail = append(t.retail, r)
	}
	return t
})

// nominals puts the names and sizes together.
func (f lumberFile) nominals() []Nominal {
	var list []Nominal
	for _, t := range f.SoftwoodThickness {
		for _, thick := range t.Sizes {
			for _, wide := range f.SoftwoodWidth.Sizes {
				list = append(list, Nominal{
					Name: thick[0] + "x" + wide[0], Thickness: thick.dressed(), Width: wide.dressed(),
					Kind: t.Kind, Origin: t.origin.value(),
				})
			}
		}
	}
	for _, s := range f.Hardwood.Sizes {
		list = append(list, Nominal{Name: s[0], Thickness: s.dressed(), Kind: Hardwood, Origin: f.Hardwood.origin.value()})
	}
	for _, name := range f.Planed.Sizes {
		thick, wide, _ := strings.Cut(name, "x")
		list = append(list, Nominal{
			Name: name, Thickness: unit.MustParse(thick, unit.Metric), Width: unit.MustParse(wide, unit.Metric),
			Kind: Planed, Origin: f.Planed.origin.value(),
		})
	}
	return list
}

// Nominals returns all nominal sizes, in the order of the table.
func Nominals() []Nominal { return slices.Clone(lumber().sizes) }

// FindNominal returns the nominal size with the name. Case and spaces do not
// matter, and "×" may stand for "x".
func FindNominal(name string) (Nominal, bool) {
	name = strings.NewReplacer(" ", "", "×", "x").Replace(strings.ToLower(name))
	for _, n := range lumber().sizes {
		if n.Name == name {
			return n, true
		}
	}
	return Nominal{}, false
}

// RetailLengths returns the lengths that lumber of the kind is usually sold
// in, shortest first.
func RetailLengths(k Kind) ([]unit.Length, Origin) {
	for _, r := range lumber().retail {
		if r.kind == k {
			return slices.Clone(r.lengths), r.origin
		}
	}
	return nil, Origin{}
}
