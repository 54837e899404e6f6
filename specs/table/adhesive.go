package table

import (
	_ "embed"
	"slices"
	"sync"
)

// Span is a figure of a product that varies, from the least to the greatest.
type Span struct {
	Lo, Hi float64
	Origin Origin
}

// Adhesive is a kind of glue. Its times are at some 20 °C; the maker's label
// comes first.
type Adhesive struct {
	ID, Name string
	Open     Span // minutes from spreading until the parts must be closed
	Clamp    Span // minutes in clamps, a joint that is not under stress
	Stressed Span // hours in clamps, a joint under stress
	Cure     Span // hours before the joint is loaded
	Spread   Span // m² a litre, one face spread
	Coldest  Span // °C below which it must not be used
}

// Pressure is how hard a joint is clamped, by the weight of the wood.
type Pressure struct {
	Wood       string  // "light", "medium", "dense"
	From, Upto float64 // specific gravity: From <= G < Upto
	Lo, Hi     float64 // psi
	Origin     Origin
}

//go:embed adhesives.toml
var adhesivesText []byte

type spanRow struct {
	Value [2]float64
	origin
}

func (s spanRow) value() Span { return Span{s.Value[0], s.Value[1], s.origin.value()} }

type adhesiveTable struct {
	rows      []Adhesive
	pressures []Pressure
}

var adhesives = sync.OnceValue(func() adhesiveTable {
	var file struct {
		Adhesive []struct {
			ID, Name                                     string
			Open, Clamp, Stressed, Cure, Spread, Coldest spanRow
		}
		Pressure []struct {
			Wood    string
			Gravity [2]float64
			spanRow
		}
	}
	decode("adhesives", adhesivesText, &file)
	var t adhesiveTable
	for _, a := range file.Adhesive {
		t.rows = append(t.rows, Adhesive{
			ID: a.ID, Name: a.Name,
			Open: a.Open.value(), Clamp: a.Clamp.value(), Stressed: a.Stressed.value(),
			Cure: a.Cure.value(), Spread: a.Spread.value(), Coldest: a.Coldest.value(),
		})
	}
	for _, p := range file.Pressure {
		t.pressures = append(t.pressures, Pressure{
			Wood: p.Wood, From: p.Gravity[0], Upto: p.Gravity[1], Lo: p.Value[0], Hi: p.Value[1], Origin: p.origin.value(),
		})
	}
	return t
})

// Adhesives returns all glues, the usual one first.
func Adhesives() []Adhesive { return slices.Clone(adhesives().rows) }

// FindAdhesive returns the glue with the id.
func FindAdhesive(id string) (Adhesive, bool) {
	for _, a := range adhesives().rows {
		if a.ID == id {
			return a, true
		}
	}
	return Adhesive{}, false
}

// ClampPressure returns the pressure for wood of the specific gravity at 12 %.
func ClampPressure(gravity float64) Pressure {
	list := adhesives().pressures
	for _, p := range list {
		if gravity < p.Upto {
			return p
		}
	}
	return list[len(list)-1]
}

func listAdhesives() Listing {
	l := Listing{Name: "adhesives", Title: "adhesives: glues by kind; the label of the glue at hand comes first"}
	for _, a := range adhesives().rows {
		l.Rows = append(l.Rows, Row{Name: a.ID, Text: a.Name, Cells: []Cell{
			a.Open.cell("open time", "min"), a.Clamp.cell("in clamps, no stress", "min"),
			a.Stressed.cell("in clamps, stressed", "h"), a.Cure.cell("before loading", "h"),
			a.Spread.cell("spread, one face", "m²/l"), a.Coldest.cell("not colder than", "°C"),
		}})
	}
	for _, p := range adhesives().pressures {
		gravity := "of specific gravity " + number(p.From) + " and more"
		if p.From == 0 {
			gravity = "of specific gravity under " + number(p.Upto)
		}
		l.Rows = append(l.Rows, Row{Name: p.Wood + " wood", Text: gravity, Cells: []Cell{
			Span{p.Lo, p.Hi, p.Origin}.cell("clamp pressure", "psi"),
		}})
	}
	return l
}
