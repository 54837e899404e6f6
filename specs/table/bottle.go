package table

import (
	_ "embed"
	"slices"
	"sync"

	"slatwright/specs/unit"
)

// Bottle is a kind of bottle.
type Bottle struct {
	ID          string // as a design names it, such as "claret-750"
	Name        string // in words
	Millilitres int64
	Closure     string // "cork", "sparkling", "crown", "bartop", "screw"; "" when not known
	Diameter    Range  // of the body, at its widest
	Height      Range  // from the base to the mouth
	Body        Range  // height up to which the body is cylindrical
	Mass        Mass   // filled
	Glass       Mass   // empty
	Centre      Share  // height of the centre of gravity, filled, over the height
	Note        string
}

//go:embed bottles.toml
var bottlesText []byte

type bottleRange struct {
	Min, Nominal, Max length
	origin
	Spread       Standing `toml:"spread"`
	SpreadSource string   `toml:"spread_source"`
}

func (r bottleRange) value() Range {
	return Range{
		unit.Length(r.Min), unit.Length(r.Nominal), unit.Length(r.Max),
		r.origin.value(), Origin{r.Spread, r.SpreadSource},
	}
}

type bottleMass struct {
	Min, Nominal, Max int64
	origin
	Spread       Standing `toml:"spread"`
	SpreadSource string   `toml:"spread_source"`
}

func (m bottleMass) value() Mass {
	return Mass{m.Min, m.Nominal, m.Max, m.origin.value(), Origin{m.Spread, m.SpreadSource}}
}

type bottleFile struct {
	Bottle []struct {
		ID, Name, Closure, Note string
		Millilitres             int64
		Diameter, Height, Body  bottleRange
		Mass, Glass             bottleMass
		Centre                  struct {
			Thousandths int64
			origin
		}
	}
	Called  map[string]string // what is said for the first part of an id
	Sources map[string]string
}

type bottleTable struct {
	rows    []Bottle
	called  map[string]string
	sources []Source
}

var bottles = sync.OnceValue(func() bottleTable {
	var file bottleFile
	meta := decode("bottles", bottlesText, &file)
	t := bottleTable{called: file.Called, sources: sourcesOf(meta, file.Sources)}
	for _, b := range file.Bottle {
		t.rows = append(t.rows, Bottle{
			ID: b.ID, Name: b.Name, Millilitres: b.Millilitres, Closure: b.Closure,
			Diameter: b.Diameter.value(), Height: b.Height.value(), Body: b.Body.value(),
			Mass: b.Mass.value(), Glass: b.Glass.value(),
			Centre: Share{b.Centre.Thousandths, b.Centre.origin.value()},
			Note:   b.Note,
		})
	}
	return t
})

// Bottles returns all kinds of bottle, in the order of the table.
func Bottles() []Bottle { return slices.Clone(bottles().rows) }

// BottleCalled returns the first part of the ids of what is spoken of by another
// word: "sparkling" for "champagne". "" where the table knows none.
func BottleCalled(word string) string { return bottles().called[word] }

// FindBottle returns the bottle with the id.
func FindBottle(id string) (Bottle, bool) {
	for _, b := range bottles().rows {
		if b.ID == id {
			return b, true
		}
	}
	return Bottle{}, false
}
