package table

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"
	"sync"
	"time"

	"slatwright/specs/word"
)

// Span is a time with a least and a greatest value.
type Span struct {
	Least, Greatest time.Duration
	Origin          Origin
}

// Wait is a single time, zero where the table has none.
type Wait struct {
	Value  time.Duration
	Origin Origin
}

// Coverage is how far a material goes: square feet to the US gallon, for one
// coat or one glued face.
type Coverage struct {
	SquareFeet int64
	Origin     Origin
}

// Adhesive is a kind of wood glue.
type Adhesive struct {
	ID, Name string
	Open     Span // from spreading to closing the joint
	Clamp    Span // of a joint that is not under stress
	Cure     Wait // until the joint may be loaded
	Coverage Coverage
	Coldest  int // °F, the least temperature of use
	Cold     Origin
	Note     string
}

// Pressure is how hard a glued joint is to be clamped, for woods up to a
// specific gravity.
type Pressure struct {
	Class, Woods    string
	Gravity         float64 // up to and with
	Least, Greatest int     // psi
	Origin          Origin
}

// Bounds is a figure with a least and a greatest value.
type Bounds struct {
	Least, Greatest int
	Origin          Origin
}

//go:embed adhesives.toml
var adhesivesText []byte

// pair is a least and a greatest figure of a row.
type pair struct {
	Value [2]int64
	origin
}

// span takes the figures as minutes.
func (p pair) span() Span {
	return Span{time.Duration(p.Value[0]) * time.Minute, time.Duration(p.Value[1]) * time.Minute, p.origin.value()}
}

func (p pair) bounds() Bounds { return Bounds{int(p.Value[0]), int(p.Value[1]), p.origin.value()} }

// single is one figure of a row.
type single struct {
	Value int64
	origin
}

// wait takes the figure as minutes.
func (s single) wait() Wait {
	return Wait{time.Duration(s.Value) * time.Minute, s.origin.value()}
}

func (s single) coverage() Coverage { return Coverage{s.Value, s.origin.value()} }

type adhesiveTable struct {
	rows      []Adhesive
	pressures []Pressure // by gravity
	spacing   Bounds     // inches
	moisture  Bounds     // percent
}

var adhesives = sync.OnceValue(func() adhesiveTable {
	var file struct {
		Adhesive []struct {
			ID, Name, Note string
			Open, Clamp    pair
			Cure           single
			Coverage       single
			Coldest        single
		}
		Pressure []struct {
			Class, Woods    string
			Gravity         float64
			Least, Greatest int
			origin
		}
		Spacing  struct{ Between pair }
		Moisture pair
	}
	decode("adhesives", adhesivesText, &file)
	var t adhesiveTable
	for _, a := range file.Adhesive {
		t.rows = append(t.rows, Adhesive{
			ID: a.ID, Name: a.Name, Note: a.Note, Open: a.Open.span(), Clamp: a.Clamp.span(), Cure: a.Cure.wait(),
			Coverage: a.Coverage.coverage(), Coldest: int(a.Coldest.Value), Cold: a.Coldest.origin.value(),
		})
	}
	for _, p := range file.Pressure {
		t.pressures = append(t.pressures, Pressure{p.Class, p.Woods, p.Gravity, p.Least, p.Greatest, p.origin.value()})
	}
	t.spacing, t.moisture = file.Spacing.Between.bounds(), file.Moisture.bounds()
	return t
})

// Adhesives returns all kinds of glue, in the order of the table.
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

// PressureFor returns how hard to clamp wood of the specific gravity.
func PressureFor(gravity float64) Pressure {
	list := adhesives().pressures
	for _, p := range list {
		if gravity <= p.Gravity {
			return p
		}
	}
	return list[len(list)-1]
}

// ClampsApart returns how far apart clamps stand along a joint, in inches.
func ClampsApart() Bounds { return adhesives().spacing }

func listAdhesives() Listing {
	t := adhesives()
	l := Listing{Name: "adhesives", Title: "adhesives: the label of the glue at hand goes before these figures"}
	for _, a := range t.rows {
		l.Rows = append(l.Rows, Row{Name: a.ID, Text: a.Name, Note: a.Note, Cells: []Cell{
			{"open", a.Open.String(), a.Open.Origin},
			{"clamp", a.Clamp.String(), a.Clamp.Origin},
			{"no load for", Hours(a.Cure.Value), a.Cure.Origin},
			{"coverage", a.Coverage.String(), a.Coverage.Origin},
			{"not colder than", fmt.Sprintf("%d °F (%d °C)", a.Coldest, (a.Coldest-32)*5/9), a.Cold},
		}})
	}
	for _, p := range t.pressures {
		l.Rows = append(l.Rows, Row{Name: "pressure", Text: p.Class + ", such as " + p.Woods, Cells: []Cell{
			{"clamp pressure", fmt.Sprintf("%d .. %d psi, gravity up to %g", p.Least, p.Greatest, p.Gravity), p.Origin},
		}})
	}
	l.Rows = append(l.Rows,
		Row{Name: "spacing", Text: "of clamps along a joint", Cells: []Cell{{"apart", fmt.Sprintf("%d .. %d in", t.spacing.Least, t.spacing.Greatest), t.spacing.Origin}}},
		Row{Name: "moisture", Text: "of wood to be glued", Cells: []Cell{{"moisture", fmt.Sprintf("%d .. %d %%", t.moisture.Least, t.moisture.Greatest), t.moisture.Origin}}})
	return l
}

// String returns the span as HoursRange prints it.
func (s Span) String() string { return HoursRange(s.Least, s.Greatest) }

// HoursRange prints two times, the lesser first: "30 to 60 min", "4 to 6 h",
// "24 to 48 h"; one where both are alike.
func HoursRange(least, greatest time.Duration) string {
	whole := least >= time.Hour && least%time.Hour == 0 && greatest%time.Hour == 0
	switch {
	case least == greatest:
		return Hours(greatest)
	case greatest < 2*time.Hour:
		return fmt.Sprintf("%d to %s", least/time.Minute, Hours(greatest))
	case whole && greatest <= 100*time.Hour:
		return fmt.Sprintf("%d to %d h", least/time.Hour, greatest/time.Hour)
	}
	return Hours(least) + " to " + Hours(greatest)
}

// String returns the coverage with its unit.
func (c Coverage) String() string { return fmt.Sprintf("%d sq ft to the US gallon", c.SquareFeet) }

// Hours prints a time as a shop says it: minutes below two hours, hours below
// two days, then days; whole ones alone, others with what is left over.
func Hours(d time.Duration) string {
	const day = 24 * time.Hour
	if d < 2*time.Hour {
		return fmt.Sprintf("%d min", d/time.Minute)
	}
	var out []string
	if d >= 2*day {
		out, d = append(out, word.Count(int(d/day), "day")), d%day
	}
	if d >= time.Hour {
		out, d = append(out, fmt.Sprintf("%d h", d/time.Hour)), d%time.Hour
	}
	if d > 0 {
		out = append(out, fmt.Sprintf("%d min", d/time.Minute))
	}
	return strings.Join(out, " ")
}
