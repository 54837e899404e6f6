package table

import (
	_ "embed"
	"slices"
	"sync"

	"slatwright/specs/unit"
)

// Operation is a kind of work and the example time it takes: Setup for each
// setting or start, Each for each piece, in hundredths of a minute.
type Operation struct {
	ID, Name         string
	Settings, Pieces string // what is counted, in the plural
	Setup, Each      int64
	Origin           Origin
}

// Charge is an example figure of a quote: an amount in hundredths of the
// currency for Per of the Unit, or hundredths of a percent.
type Charge struct {
	Key, Name  string // Key as a design names it under [price]
	Hundredths int64
	Unit       string
	Per        int64
	Origin     Origin
}

//go:embed labour.toml
var labourText []byte

//go:embed prices.toml
var pricesText []byte

//go:embed packing.toml
var packingText []byte

var operations = sync.OnceValue(func() []Operation {
	var file struct {
		Labour    origin
		Operation []struct {
			ID, Name, Settings, Pieces string
			Setup, Each                int64
		}
	}
	decode("labour", labourText, &file)
	var list []Operation
	for _, o := range file.Operation {
		list = append(list, Operation{o.ID, o.Name, o.Settings, o.Pieces, o.Setup, o.Each, file.Labour.value()})
	}
	return list
})

// charges holds those of inch designs first, then those of metric ones.
var charges = sync.OnceValue(func() [2][]Charge {
	var file struct {
		Prices origin
		Charge []struct {
			Key, Name  string
			Hundredths [2]int64
			Unit       [2]string
			Per        [2]int64
		}
	}
	decode("prices", pricesText, &file)
	var list [2][]Charge
	for _, c := range file.Charge {
		for i := range list {
			list[i] = append(list[i], Charge{c.Key, c.Name, c.Hundredths[i], c.Unit[i], c.Per[i], file.Prices.value()})
		}
	}
	return list
})

// Operations returns all kinds of work, in their order.
func Operations() []Operation { return slices.Clone(operations()) }

// FindCharge returns the charge of the key for designs of the system. It
// panics where there is none: the keys are the program's own.
func FindCharge(key string, sys unit.System) Charge {
	list := charges()[0]
	if sys == unit.Metric {
		list = charges()[1]
	}
	for _, c := range list {
		if c.Key == key {
			return c
		}
	}
	panic("table: no charge " + key)
}

func listLabour() Listing {
	l := Listing{Name: "labour", Title: "labour: example times in minutes, which [price.minutes] replaces"}
	for _, o := range operations() {
		l.Rows = append(l.Rows, Row{Name: o.ID, Text: o.Name, Cells: []Cell{
			{"setup", hundredths(o.Setup) + ", by " + o.Settings, o.Origin},
			{"each", hundredths(o.Each) + ", by " + o.Pieces, o.Origin},
		}})
	}
	return l
}

func listCharges(sys unit.System) Listing {
	l := Listing{Name: "prices", Title: "prices: examples that nobody sells at, which [price] replaces"}
	list := charges()[0]
	if sys == unit.Metric {
		list = charges()[1]
	}
	for _, c := range list {
		text := hundredths(c.Hundredths)
		if c.Unit == "%" {
			text += " %"
		}
		l.Rows = append(l.Rows, Row{Name: c.Key, Text: c.Name, Cells: []Cell{{"price", text, c.Origin}}})
	}
	return l
}
