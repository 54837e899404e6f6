package table

import (
	_ "embed"
	"math"
	"strconv"
	"strings"
	"sync"

	"slatwright/specs/unit"
)

// Constant is a figure of an equation or a limit of a check, for physics and
// advice: none decides a dimension of the rack.
type Constant struct {
	ID     string    // such as "tip.push"
	Name   string    // in words
	Value  []float64 // one figure, or several where Name says so
	Unit   string    // "" for a bare number
	Origin Origin
}

//go:embed moisture.toml
var moistureText []byte

//go:embed fastening.toml
var fasteningText []byte

//go:embed loads.toml
var loadsText []byte

//go:embed saw.toml
var sawText []byte

//go:embed site.toml
var siteText []byte

// constantTable is a table of constants with its heading.
type constantTable struct {
	name, title string
	rows        []Constant
}

var constantTables = sync.OnceValue(func() []constantTable {
	var list []constantTable
	for _, f := range []struct {
		name string
		text []byte
	}{{"moisture", moistureText}, {"fastening", fasteningText}, {"loads", loadsText}, {"saw", sawText}, {"site", siteText}, {"packing", packingText}} {
		var file struct {
			Title    string
			Constant []struct {
				ID, Name, Unit string
				Value          []float64
				origin
			}
		}
		decode(f.name, f.text, &file)
		t := constantTable{name: f.name, title: file.Title}
		for _, c := range file.Constant {
			t.rows = append(t.rows, Constant{ID: c.ID, Name: c.Name, Value: c.Value, Unit: c.Unit, Origin: c.origin.value()})
		}
		list = append(list, t)
	}
	return list
})

// FindConstant returns the constant with the id. It panics where there is none:
// the ids are the program's own.
func FindConstant(id string) Constant {
	for _, t := range constantTables() {
		for _, c := range t.rows {
			if c.ID == id {
				return c
			}
		}
	}
	panic("table: no constant " + id)
}

// Value returns the first figure of the constant with the id.
func Value(id string) float64 { return FindConstant(id).Value[0] }

// Length returns the constant with the id, which is in millimetres, to the nearest
// base unit.
func Length(id string) unit.Length {
	return unit.Length(math.Round(Value(id) * float64(unit.Millimetre)))
}

// text returns the figures of c with the unit.
func (c Constant) text() string {
	var list []string
	for _, v := range c.Value {
		list = append(list, strconv.FormatFloat(v, 'f', -1, 64))
	}
	return strings.TrimSpace(strings.Join(list, ", ") + " " + c.Unit)
}

// listing returns the table in words.
func (t constantTable) listing() Listing {
	l := Listing{Name: t.name, Title: t.title}
	for _, c := range t.rows {
		l.Rows = append(l.Rows, Row{Name: c.ID, Text: c.Name, Cells: []Cell{{"value", c.text(), c.Origin}}})
	}
	return l
}
