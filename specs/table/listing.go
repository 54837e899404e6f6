package table

import (
	"strconv"
	"strings"

	"slatwright/specs/unit"
)

// Listing is a table in words: what Print writes.
type Listing struct {
	Name    string // one of Names
	Title   string
	Rows    []Row
	Sources []Source // what the short keys in the origins stand for
}

// Row is one thing of a table with its figures.
type Row struct {
	Name  string // as a design names it
	Text  string // in words, or ""
	Cells []Cell // at least one
	Note  string // what is peculiar about it, or ""
}

// Cell is one figure with its origin.
type Cell struct {
	Label, Text string
	Origin      Origin
}

// Names returns the names of the tables, in the order in which Print writes
// them.
func Names() []string {
	return []string{
		"bottles", "lumber", "boards", "species", "nails", "moisture", "fastening", "loads", "saw", "site",
		"adhesives", "finishes", "sanding", "labour", "prices", "packing", "papers", "labels", "defaults",
	}
}

// List returns the listing of the table, with lengths in the system's unit.
// It reports false where there is no table of the name.
func List(name string, sys unit.System) (Listing, bool) {
	f := unit.Format{System: sys}
	switch name {
	case "bottles":
		return listBottles(f), true
	case "lumber":
		return listLumber(f), true
	case "boards":
		return listBoards(), true
	case "species":
		return listSpecies(), true
	case "nails":
		return listNails(f), true
	case "adhesives":
		return listAdhesives(), true
	case "finishes":
		return listFinishes(), true
	case "sanding":
		return listSanding(), true
	case "labour":
		return listLabour(), true
	case "prices":
		return listCharges(sys), true
	case "papers":
		return listPapers(f), true
	case "labels":
		return listLabelGrids(f), true
	case "defaults":
		return listDefaults(f), true
	}
	for _, t := range constantTables() {
		if t.name == name {
			return t.listing(), true
		}
	}
	return Listing{}, false
}

func listBottles(f unit.Format) Listing {
	l := Listing{Name: "bottles", Title: "bottles: no two makers agree; measure those that a rack is made for", Sources: bottles().sources}
	for _, b := range bottles().rows {
		row := Row{Name: b.ID, Text: b.Name + ", " + strconv.FormatInt(b.Millilitres, 10) + " ml", Note: b.Note}
		span := func(label string, r Range) {
			row.Cells = append(row.Cells,
				Cell{label, f.Unit(r.Nominal), r.Origin},
				Cell{label + " range", f.Text(r.Min) + " .. " + f.Unit(r.Max), r.Spread})
		}
		weigh := func(label string, m Mass) {
			row.Cells = append(row.Cells,
				Cell{label, grams(m.Nominal) + " g", m.Origin},
				Cell{label + " range", grams(m.Min) + " .. " + grams(m.Max) + " g", m.Spread})
		}
		span("diameter", b.Diameter)
		span("height", b.Height)
		span("body height", b.Body)
		weigh("filled", b.Mass)
		weigh("glass", b.Glass)
		row.Cells = append(row.Cells, Cell{"centre of gravity",
			strconv.FormatFloat(float64(b.Centre.Thousandths)/1000, 'f', 3, 64) + " of the height", b.Centre.Origin})
		l.Rows = append(l.Rows, row)
	}
	return l
}

func grams(g int64) string { return strconv.FormatInt(g, 10) }

func listLumber(f unit.Format) Listing {
	l := Listing{Name: "lumber", Title: "lumber: thickness x width when dry; measure what was bought"}
	for _, n := range lumber().sizes {
		text := f.Text(n.Thickness) + " x " + f.Unit(n.Width)
		if n.Width == 0 {
			text = f.Unit(n.Thickness) + " thick, random widths"
		}
		l.Rows = append(l.Rows, Row{Name: n.Name, Text: string(n.Kind), Cells: []Cell{{"dressed", text, n.Origin}}})
	}
	for _, r := range lumber().retail {
		var texts []string
		for _, v := range r.lengths {
			texts = append(texts, f.Text(v))
		}
		text := strings.Join(texts, ", ") + " " + f.System.String()
		l.Rows = append(l.Rows, Row{Name: "lengths", Text: string(r.kind), Cells: []Cell{{"sold in", text, r.origin}}})
	}
	return l
}

func listSpecies() Listing {
	l := Listing{Name: "species", Title: "species: clear wood at 12 % moisture; no design values", Sources: species().sources}
	for _, s := range species().rows {
		row := Row{Name: s.ID, Text: s.Name, Note: s.Note}
		add := func(label string, fig Figure, unit string) {
			text := strings.TrimSpace(strconv.FormatFloat(fig.Value, 'f', -1, 64) + " " + unit)
			if fig.Value == 0 {
				text = "not listed"
			}
			row.Cells = append(row.Cells, Cell{label, text, fig.Origin})
		}
		add("movement, radial", s.Radial, "per percent moisture")
		add("movement, tangential", s.Tangential, "per percent moisture")
		add("shrinkage, radial", s.RadialShrink, "%")
		add("shrinkage, tangential", s.TangShrink, "%")
		add("fibre saturation", s.Saturation, "% moisture")
		add("specific gravity", s.Gravity, "")
		add("specific gravity, NDS", s.GravityNDS, "")
		row.Cells = append(row.Cells, Cell{"density", strconv.FormatFloat(s.Density(), 'f', 0, 64) + " kg/m3",
			Origin{Derived, "1000 x 1.12 x specific gravity; Wood Handbook, chapter 4. Gravity: " + string(s.Gravity.Origin.Standing)}})
		add("modulus of rupture", s.Rupture, "psi")
		add("modulus of elasticity", s.Elasticity, "million psi")
		add("crushing across grain", s.Crush, "psi")
		add("shear along grain", s.Shear, "psi")
		l.Rows = append(l.Rows, row)
	}
	return l
}

func listNails(f unit.Format) Listing {
	l := Listing{Name: "nails", Title: "nails: brads and finish nails by gauge"}
	for _, n := range nails() {
		diameter := n.Diameter.Decimal() + " mm"
		if f.System == unit.Imperial { // wire is measured in decimals of an inch
			diameter = strconv.FormatFloat(float64(n.Diameter)/float64(unit.Inch), 'f', 4, 64) + " in"
		}
		l.Rows = append(l.Rows, Row{Name: strconv.Itoa(n.Gauge) + " ga", Cells: []Cell{
			{"diameter", diameter, n.Origin},
			{"usual lengths", f.Text(n.Shortest) + " .. " + f.Unit(n.Longest), n.Origin},
		}})
	}
	return l
}

func listPapers(f unit.Format) Listing {
	l := Listing{Name: "papers", Title: "papers: width x height, upright"}
	for _, p := range papers() {
		l.Rows = append(l.Rows, Row{Name: p.ID, Text: p.Name, Cells: []Cell{
			{"size", f.Text(p.Width) + " x " + f.Unit(p.Height), p.Origin},
		}})
	}
	return l
}

func listDefaults(f unit.Format) Listing {
	l := Listing{Name: "defaults", Title: "defaults: what a design gets where it leaves a length unsaid"}
	for _, d := range defaults() {
		cells := []Cell{{"default", f.Unit(d.Value(f.System)), d.Origin}}
		switch least, most := d.Least(f.System), d.Most(f.System); {
		case least > 0 && most > 0:
			cells = append(cells, Cell{"gives way to", f.Text(least) + " .. " + f.Unit(most), d.Origin})
		case least > 0:
			cells = append(cells, Cell{"gives way to", f.Unit(least) + " or more", d.Origin})
		case most > 0:
			cells = append(cells, Cell{"gives way to", f.Unit(most) + " or less", d.Origin})
		}
		l.Rows = append(l.Rows, Row{Name: d.Name, Text: d.Note, Cells: cells})
	}
	return l
}
