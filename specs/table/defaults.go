package table

import (
	_ "embed"
	"slices"
	"sync"

	"slatwright/specs/unit"
)

// Default is the value of a length that a design leaves unsaid.
type Default struct {
	Name     string // dotted, as in a design: "slat.height", "shop.kerf"
	Imperial unit.Length
	Metric   unit.Length
	// The least and the most that it gives way to; 0 where nothing is said of that.
	LeastImperial, LeastMetric unit.Length
	MostImperial, MostMetric   unit.Length
	Note                       string
	Origin                     Origin
}

// Value returns the default for designs in the system's unit.
func (d Default) Value(sys unit.System) unit.Length {
	if sys == unit.Metric {
		return d.Metric
	}
	return d.Imperial
}

// Least returns the least that the default gives way to, 0 where nothing is said
// of that.
func (d Default) Least(sys unit.System) unit.Length {
	if sys == unit.Metric {
		return d.LeastMetric
	}
	return d.LeastImperial
}

// Most returns the most that the default gives way to, 0 where nothing is said
// of that.
func (d Default) Most(sys unit.System) unit.Length {
	if sys == unit.Metric {
		return d.MostMetric
	}
	return d.MostImperial
}

//go:embed defaults.toml
var defaultsText []byte

var defaults = sync.OnceValue(func() []Default {
	var file struct {
		Default []struct {
			Name, Note       string
			Imperial, Metric length
			LeastImperial    length `toml:"least_imperial"`
			LeastMetric      length `toml:"least_metric"`
			MostImperial     length `toml:"most_imperial"`
			MostMetric       length `toml:"most_metric"`
		}
	}
	decode("defaults", defaultsText, &file)
	var list []Default
	for _, d := range file.Default {
		list = append(list, Default{
			Name: d.Name, Imperial: unit.Length(d.Imperial), Metric: unit.Length(d.Metric), Note: d.Note,
			LeastImperial: unit.Length(d.LeastImperial), LeastMetric: unit.Length(d.LeastMetric),
			MostImperial: unit.Length(d.MostImperial), MostMetric: unit.Length(d.MostMetric),
			Origin: Origin{Standing: Own, Source: "chosen for this program"},
		})
	}
	return list
})

// Defaults returns all defaults, in the order of the table.
func Defaults() []Default { return slices.Clone(defaults()) }

// FindDefault returns the default of the length.
func FindDefault(name string) (Default, bool) {
	for _, d := range defaults() {
		if d.Name == name {
			return d, true
		}
	}
	return Default{}, false
}
