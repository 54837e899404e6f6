package table

import (
	_ "embed"
	"slices"
	"strconv"
	"strings"
	"sync"
)

// Finish is a kind of what is spread on wood. The maker's label comes first.
type Finish struct {
	ID, Name string
	Stage    string // "condition", "stain", "seal" or "topcoat", in this order
	Coverage Span   // m² a litre, one coat
	Coats    Span   // how many
	Recoat   Span   // hours before the next coat or the next stage
	Cure     Span   // hours before use
	Oily     bool   // its rags can heat up by themselves and catch fire
}

// Sanding is a row of grits, coarse to fine.
type Sanding struct {
	ID, Name string
	Grits    []int
	Origin   Origin
}

//go:embed finishes.toml
var finishesText []byte

//go:embed sanding.toml
var sandingText []byte

type finishTable struct {
	rows     []Finish
	blotches []string // ids of species
	origin   Origin   // of blotches
}

var finishes = sync.OnceValue(func() finishTable {
	var file struct {
		Finish []struct {
			ID, Name, Stage               string
			Coverage, Coats, Recoat, Cure spanRow
			Oily                          bool
		}
		Blotching []struct {
			Species []string
			origin
		}
	}
	decode("finishes", finishesText, &file)
	var t finishTable
	for _, f := range file.Finish {
		t.rows = append(t.rows, Finish{
			ID: f.ID, Name: f.Name, Stage: f.Stage, Coverage: f.Coverage.value(), Coats: f.Coats.value(),
			Recoat: f.Recoat.value(), Cure: f.Cure.value(), Oily: f.Oily,
		})
	}
	for _, b := range file.Blotching {
		t.blotches, t.origin = append(t.blotches, b.Species...), b.origin.value()
	}
	return t
})

// Finishes returns all finishes, in the order of their stages.
func Finishes() []Finish { return slices.Clone(finishes().rows) }

// FindFinish returns the finish with the id.
func FindFinish(id string) (Finish, bool) {
	for _, f := range finishes().rows {
		if f.ID == id {
			return f, true
		}
	}
	return Finish{}, false
}

// Blotches reports whether the species takes stain in blotches, so that it is
// conditioned first, and who says so.
func Blotches(species string) (bool, Origin) {
	t := finishes()
	return slices.Contains(t.blotches, species), t.origin
}

var sandings = sync.OnceValue(func() []Sanding {
	var file struct {
		Sanding []struct {
			ID, Name string
			Grits    []int
			origin
		}
	}
	decode("sanding", sandingText, &file)
	var list []Sanding
	for _, s := range file.Sanding {
		list = append(list, Sanding{s.ID, s.Name, s.Grits, s.origin.value()})
	}
	return list
})

// Sandings returns all rows of grits.
func Sandings() []Sanding { return slices.Clone(sandings()) }

// FindSanding returns the row of grits with the id.
func FindSanding(id string) (Sanding, bool) {
	for _, s := range sandings() {
		if s.ID == id {
			return s, true
		}
	}
	return Sanding{}, false
}

func listFinishes() Listing {
	l := Listing{Name: "finishes", Title: "finishes: by kind; the label of the product at hand comes first"}
	for _, f := range finishes().rows {
		row := Row{Name: f.ID, Text: f.Name + " (" + f.Stage + ")", Cells: []Cell{
			f.Coverage.cell("coverage", "m²/l"), f.Coats.cell("coats", ""), f.Recoat.cell("next coat after", "h"), f.Cure.cell("cured after", "h"),
		}}
		if f.Oily {
			row.Note = "rags can catch fire by themselves: dry them flat outdoors, or keep them in a lidded metal can with water"
		}
		l.Rows = append(l.Rows, row)
	}
	l.Rows = append(l.Rows, Row{Name: "blotching", Text: "species that are conditioned before stain", Cells: []Cell{
		{"species", strings.Join(finishes().blotches, ", "), finishes().origin},
	}})
	return l
}

func listSanding() Listing {
	l := Listing{Name: "sanding", Title: "sanding: grits in order"}
	for _, s := range sandings() {
		var grits []string
		for _, g := range s.Grits {
			grits = append(grits, strconv.Itoa(g))
		}
		l.Rows = append(l.Rows, Row{Name: s.ID, Text: s.Name, Cells: []Cell{{"grits", strings.Join(grits, ", "), s.Origin}}})
	}
	return l
}

// cell returns the span in words under the label.
func (s Span) cell(label, unit string) Cell {
	text := number(s.Lo)
	if s.Hi != s.Lo {
		text += " .. " + number(s.Hi)
	}
	return Cell{label, strings.TrimSpace(text + " " + unit), s.Origin}
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
