package table

import (
	_ "embed"
	"slices"
	"sync"

	"slatwright/specs/unit"
)

// Nail is a gauge of brad or finish nail.
type Nail struct {
	Gauge             int
	Diameter          unit.Length
	Shortest, Longest unit.Length // usual lengths
	Origin            Origin
}

//go:embed nails.toml
var nailsText []byte

var nails = sync.OnceValue(func() []Nail {
	var file struct {
		Nail []struct {
			Gauge    int
			Diameter length
			Lengths  [2]length
			origin
		}
	}
	decode("nails", nailsText, &file)
	var list []Nail
	for _, n := range file.Nail {
		list = append(list, Nail{
			Gauge: n.Gauge, Diameter: unit.Length(n.Diameter),
			Shortest: unit.Length(n.Lengths[0]), Longest: unit.Length(n.Lengths[1]),
			Origin: n.origin.value(),
		})
	}
	return list
})

// Nails returns all gauges, thickest first.
func Nails() []Nail { return slices.Clone(nails()) }

// FindNail returns the nail of the gauge.
func FindNail(gauge int) (Nail, bool) {
	for _, n := range nails() {
		if n.Gauge == gauge {
			return n, true
		}
	}
	return Nail{}, false
}
