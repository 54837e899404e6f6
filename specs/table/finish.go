package table

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"
	"sync"
)

// FinishKind says what a finishing material does.
type FinishKind string

// The kinds of finishing material.
const (
	Conditioner FinishKind = "conditioner" // evens out how the wood drinks
	Stain       FinishKind = "stain"
	Coat        FinishKind = "coat" // what protects
)

// Finish is a kind of finishing material.
type Finish struct {
	ID, Name     string
	Kind         FinishKind
	Coverage     Coverage
	Least, Usual int // coats
	Coats        Origin
	Recoat       Span // until the next coat of it, or the next material
	Within       Wait // the next material must follow within this; zero for any time
	Handle       Wait // until a coated part may be handled and glued up; zero where Kind is not Coat
	Cure         Wait // until it is hard throughout; zero where Kind is not Coat
	Grit         int  // to sand with between coats, 0 for none
	Between      Origin
	Spirit       bool // thinned with spirit, whose vapour burns
	Rags         bool // rags wet with it can catch fire by themselves
	Note         string
}

// Percentage is a share in hundredths.
type Percentage struct {
	Value  int
	Origin Origin
}

//go:embed finishes.toml
var finishesText []byte

type finishRow struct {
	ID, Name, Kind, Thinner, Note string
	Coverage                      single
	Coats                         pair
	Recoat                        pair
	Within, Handle, Cure, Between single
	Rags                          bool
}

func (f finishRow) value() Finish {
	return Finish{
		ID: f.ID, Name: f.Name, Kind: FinishKind(f.Kind), Coverage: f.Coverage.coverage(),
		Least: int(f.Coats.Value[0]), Usual: int(f.Coats.Value[1]), Coats: f.Coats.origin.value(),
		Recoat: f.Recoat.span(), Within: f.Within.wait(), Handle: f.Handle.wait(), Cure: f.Cure.wait(),
		Grit: int(f.Between.Value), Between: f.Between.origin.value(),
		Spirit: f.Thinner == "spirit", Rags: f.Rags, Note: f.Note,
	}
}

type blotchingRow struct {
	Species  []string
	Blotches bool
	origin
}

type finishTable struct {
	rows      []Finish
	lost      Percentage
	blotching []blotchingRow
}

var finishes = sync.OnceValue(func() finishTable {
	var file struct {
		Finish    []finishRow
		Lost      single
		Blotching []blotchingRow
	}
	decode("finishes", finishesText, &file)
	t := finishTable{lost: Percentage{int(file.Lost.Value), file.Lost.origin.value()}, blotching: file.Blotching}
	for _, f := range file.Finish {
		t.rows = append(t.rows, f.value())
	}
	return t
})

// Finishes returns all finishing materials of the kind, in the order of the
// table.
func Finishes(k FinishKind) []Finish {
	return slices.DeleteFunc(slices.Clone(finishes().rows), func(f Finish) bool { return f.Kind != k })
}

// FindFinish returns the finishing material of the kind with the id.
func FindFinish(k FinishKind, id string) (Finish, bool) {
	for _, f := range finishes().rows {
		if f.Kind == k && f.ID == id {
			return f, true
		}
	}
	return Finish{}, false
}

// FinishLost returns how much stays in brush, tin and rag.
func FinishLost() Percentage { return finishes().lost }

// Blotches reports whether a species takes stain unevenly, and how that is
// known. A species that the table does not list is taken to blotch.
func Blotches(species string) (bool, Origin) {
	for _, b := range finishes().blotching {
		if slices.Contains(b.Species, species) {
			return b.Blotches, b.origin.value()
		}
	}
	return true, Origin{Own, "not in the table; taken as blotching, to be on the safe side"}
}

func listFinishes() Listing {
	t := finishes()
	l := Listing{Name: "finishes", Title: "finishes: the label of the tin at hand goes before these figures"}
	for _, f := range t.rows {
		row := Row{Name: f.ID, Text: f.Name, Note: f.Note}
		add := func(label, text string, o Origin) {
			if o.Standing != "" {
				row.Cells = append(row.Cells, Cell{label, text, o})
			}
		}
		coats := fmt.Sprint(f.Usual)
		if f.Least != f.Usual {
			coats = fmt.Sprintf("%d to %d", f.Least, f.Usual)
		}
		add("coverage", f.Coverage.String(), f.Coverage.Origin)
		add("coats", coats, f.Coats)
		add("next coat after", f.Recoat.String(), f.Recoat.Origin)
		add("next coat within", Hours(f.Within.Value), f.Within.Origin)
		add("light use after", Hours(f.Handle.Value), f.Handle.Origin)
		add("hard after", Hours(f.Cure.Value), f.Cure.Origin)
		add("grit between coats", fmt.Sprint(f.Grit), f.Between)
		l.Rows = append(l.Rows, row)
	}
	l.Rows = append(l.Rows, Row{Name: "lost", Text: "in brush, tin and rag", Cells: []Cell{{"lost", fmt.Sprintf("%d %%", t.lost.Value), t.lost.Origin}}})
	for _, b := range t.blotching {
		says := "takes stain evenly"
		if b.Blotches {
			says = "blotches: condition before stain"
		}
		l.Rows = append(l.Rows, Row{Name: "stain on", Text: strings.Join(b.Species, ", "), Cells: []Cell{{"stain", says, b.origin.value()}}})
	}
	return l
}
