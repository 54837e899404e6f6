package table

import (
	_ "embed"
	"slices"
	"strconv"
	"sync"

	"slatwright/specs/unit"
)

// Rate is the example price of wood in boards up to a width.
type Rate struct {
	Widest     unit.Length
	Hundredths int64 // of the currency, for a litre of dressed plain softwood
	Origin     Origin
}

// Dearness is what kinds of wood cost beside plain softwood.
type Dearness struct {
	Species []string // ids that FindSpecies knows
	Percent int64
	Origin  Origin
}

//go:embed boards.toml
var boardsText []byte

type boardTable struct {
	rates  []Rate
	woods  []Dearness
	origin Origin
}

var boardPrices = sync.OnceValue(func() boardTable {
	var file struct {
		Prices origin
		Rate   []struct {
			Widest     length
			Hundredths int64
		}
		Wood []struct {
			Species []string
			Percent int64
		}
	}
	decode("boards", boardsText, &file)
	t := boardTable{origin: file.Prices.value()}
	for _, r := range file.Rate {
		t.rates = append(t.rates, Rate{unit.Length(r.Widest), r.Hundredths, t.origin})
	}
	for _, w := range file.Wood {
		t.woods = append(t.woods, Dearness{w.Species, w.Percent, t.origin})
	}
	return t
})

// ExamplePrice returns an invented price for a board of a species in whole
// hundredths, rounded up to five, and where it comes from. It is there so that
// plans can be compared before anybody has asked a yard.
func ExamplePrice(species string, thickness, width, length unit.Length) (int64, Origin) {
	t := boardPrices()
	rate := t.rates[len(t.rates)-1].Hundredths
	for _, r := range t.rates {
		if width <= r.Widest {
			rate = r.Hundredths
			break
		}
	}
	percent := int64(100)
	for _, w := range t.woods {
		if slices.Contains(w.Species, species) {
			percent = w.Percent
		}
	}
	// In tenths of a millimetre a litre is 10^9, and no product overflows.
	const tenth = unit.Millimetre / 10
	volume := int64(thickness/tenth) * int64(width/tenth) * int64(length/tenth) / 1_000_000 // millilitres
	price := volume * rate * percent / 100_000
	return max((price+4)/5*5, 5), t.origin
}

func listBoards() Listing {
	l := Listing{Name: "boards", Title: "boards: example prices where a design names no [[board]]; sizes are those of the lumber table"}
	for _, r := range boardPrices().rates {
		l.Rows = append(l.Rows, Row{Name: "up to " + r.Widest.String() + " wide", Text: "plain softwood, for a litre (61 cubic inches) of dressed wood",
			Cells: []Cell{{"price", hundredths(r.Hundredths), r.Origin}}})
	}
	for _, w := range boardPrices().woods {
		for _, id := range w.Species {
			l.Rows = append(l.Rows, Row{Name: id, Text: "beside plain softwood", Cells: []Cell{{"price", strconv.FormatInt(w.Percent, 10) + " %", w.Origin}}})
		}
	}
	return l
}

func hundredths(n int64) string {
	return strconv.FormatInt(n/100, 10) + "." + strconv.FormatInt(100+n%100, 10)[1:]
}
