package finish

import (
	"math/big"
	"strconv"

	"slatwright/geometry/rack"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// A Kind is what a supply is for.
type Kind uint8

// The kinds of supplies, in the order of use.
const (
	Conditioner Kind = iota
	Stain
	Coat
	Glue
)

// Supply is how much of a material the rack takes.
type Supply struct {
	Kind        Kind
	Name        string
	Area        unit.Area // that is covered once
	Coats       int
	Coverage    table.Coverage
	Millilitres int64 // what is lost in brush and tin included, rounded up
}

// Supplies returns the materials in the order of use: conditioner, stain, coat
// and glue, each where the design has it. Glue is spread on one face of a
// joint, so on half of what stays bare, and on one edge between staves of the
// top.
func Supplies(r *rack.Rack, top Panel) []Supply {
	all := Sum(Areas(r))
	f := r.Design.Finish
	var list []Supply
	add := func(kind Kind, name string, area unit.Area, coats int, c table.Coverage) {
		list = append(list, Supply{kind, name, area, coats, c, millilitres(area, coats, c)})
	}
	if f.Conditioned() {
		add(Conditioner, f.Conditioner.Name, all.Coated, 1, f.Conditioner.Coverage)
	}
	if f.Stained() {
		add(Stain, f.Stain.Name, all.Coated, 1, f.Stain.Coverage)
	}
	if f.Coats > 0 {
		add(Coat, f.Coat.Name, all.Coated, f.Coats, f.Coat.Coverage)
	}
	add(Glue, f.Glue.Name, Joints(r).Plus(top.Joints(r)), 1, f.Glue.Coverage)
	return list
}

// Joints returns the area of all glued joints, each counted once.
func Joints(r *rack.Rack) unit.Area {
	var sum unit.Area
	for z := range Zones(r) {
		if z.Far { // of the two faces of a joint one is the far one
			sum = sum.Plus(z.Area())
		}
	}
	return sum
}

// The US gallon is 231 cubic inches, 3.785411784 litres exactly (NIST
// Handbook 44, appendix C; memory, the figure believed there).
var gallon = big.NewRat(3_785_411_784, 1_000_000) // in millilitres

// millilitres returns what covers the area so many times, rounded up.
func millilitres(area unit.Area, coats int, c table.Coverage) int64 {
	v := area.Times(coats).Over(unit.SquareFoot)
	v.Quo(v, big.NewRat(c.SquareFeet, 1)).Mul(v, gallon)
	v.Mul(v, big.NewRat(100, int64(100-table.FinishLost().Value)))
	return unit.RoundUp(v)
}

// Volume prints millilitres as they are bought, rounded up: in fluid ounces of
// the US in an inch design, and in quarts from four of them on; in tens of
// millilitres or tenths of a litre in a metric one.
func Volume(sys unit.System, ml int64) string {
	up := func(n, step int64) int64 { return (n + step - 1) / step }
	tenths := func(n int64, name string) string {
		return strconv.FormatInt(n/10, 10) + "." + strconv.FormatInt(n%10, 10) + name
	}
	if sys == unit.Metric {
		if ml > 1000 {
			return tenths(up(ml, 100), " l")
		}
		return strconv.FormatInt(10*up(ml, 10), 10) + " ml"
	}
	if n := Ounces(ml); n <= 4*32 {
		return strconv.FormatInt(n, 10) + " fl oz"
	}
	v := new(big.Rat).Quo(big.NewRat(40*ml, 1), gallon)
	return tenths(unit.RoundUp(v), " qt")
}

// Ounces returns millilitres in whole fluid ounces of the US, rounded up; a
// gallon is 128 of them.
func Ounces(ml int64) int64 { return unit.RoundUp(new(big.Rat).Quo(big.NewRat(128*ml, 1), gallon)) }

// Paper is the sandpaper of one grit.
type Paper struct {
	Grit    int
	Between bool // between coats, not before them
	Area    unit.Area
	Sheets  int // of 230 x 280 mm, rounded up
}

// Papers returns the sandpaper, in the order of use. All faces are sanded
// before the finish, the coated ones between coats.
func Papers(r *rack.Rack) []Paper {
	f := r.Design.Finish
	all := Sum(Areas(r))
	each, _ := table.SandedBySheet()
	sheets := func(a unit.Area) int {
		return int(unit.RoundUp(new(big.Rat).Quo(a.Over(unit.SquareFoot), big.NewRat(each, 1))))
	}
	var list []Paper
	for _, grit := range Sequence(r).Grits {
		list = append(list, Paper{grit, false, all.Surface, sheets(all.Surface)})
	}
	if f.Coats > 1 && f.Coat.Grit > 0 {
		a := all.Coated.Times(f.Coats - 1)
		list = append(list, Paper{f.Coat.Grit, true, a, sheets(a)})
	}
	return list
}

// Sequence returns the grits before the finish: those for stain and oil, which
// must soak in, or those for a film.
func Sequence(r *rack.Rack) table.Sanding {
	id := "film"
	if f := r.Design.Finish; f.Stained() || f.Coats == 0 || f.Coat.ID == "drying_oil" {
		id = "stain"
	}
	s, ok := table.FindSanding(id)
	if !ok {
		panic("finish: no sanding sequence " + id)
	}
	return s
}
