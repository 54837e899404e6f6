package table

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"
	"sync"
)

// Sanding is a sequence of grits.
type Sanding struct {
	ID, Name string
	Grits    []int // coarse to fine
	Origin   Origin
}

//go:embed sanding.toml
var sandingText []byte

type sandingTable struct {
	rows  []Sanding
	sheet Coverage
}

var sanding = sync.OnceValue(func() sandingTable {
	var file struct {
		Sanding []struct {
			ID, Name string
			Grits    []int
			origin
		}
		Sheet single
	}
	decode("sanding", sandingText, &file)
	t := sandingTable{sheet: file.Sheet.coverage()}
	for _, s := range file.Sanding {
		t.rows = append(t.rows, Sanding{s.ID, s.Name, s.Grits, s.origin.value()})
	}
	return t
})

// FindSanding returns the sequence with the id: "stain" or "film".
func FindSanding(id string) (Sanding, bool) {
	for _, s := range sanding().rows {
		if s.ID == id {
			s.Grits = slices.Clone(s.Grits)
			return s, true
		}
	}
	return Sanding{}, false
}

// SandedBySheet returns how many square feet a sheet of 230 x 280 mm sands
// with one grit.
func SandedBySheet() (squareFeet int64, o Origin) {
	s := sanding().sheet
	return s.SquareFeet, s.Origin
}

func listSanding() Listing {
	l := Listing{Name: "sanding", Title: "sanding: grits in order"}
	for _, s := range sanding().rows {
		grits := strings.Trim(strings.ReplaceAll(fmt.Sprint(s.Grits), " ", ", "), "[]")
		l.Rows = append(l.Rows, Row{Name: s.ID, Text: s.Name, Cells: []Cell{{"grits", grits, s.Origin}}})
	}
	n, o := SandedBySheet()
	l.Rows = append(l.Rows, Row{Name: "sheet", Text: "of 230 x 280 mm (9 x 11 in)", Cells: []Cell{{"sands", fmt.Sprintf("%d sq ft with one grit", n), o}}})
	return l
}
