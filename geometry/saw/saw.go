package saw

import (
	"cmp"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"unicode/utf8"

	"slatwright/geometry/cutting"
	"slatwright/geometry/rack"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Quick is an effort (see cutting.Job) for those who wait at the screen: one
// order is mostly proven long before it is used up, and where not, as for walls
// of many hundred bottles, the plan says how far it may be from the best; fifteen
// times as much found none cheaper.
const Quick = 400_000_000

// Thorough is an effort for those who plan a batch: some twenty seconds.
const Thorough = 6_000_000_000

// EffortFor returns the effort for so many orders that are cut together. It is
// that of every command, so that the quote, the cutting sheets and the packet of
// a rack are of one plan, proven or not.
func EffortFor(orders int) int64 {
	if orders > 1 {
		return Thorough
	}
	return Quick
}

// An Order is one rack in a plan and the name its pieces bear.
type Order struct {
	Name  string // the design's order, made distinct; may be "" where there is only one
	Short string // what goes before its marks: the name, "#2" where names are long, "" where there is only one order
	Rack  *rack.Rack
}

// mostShort is how many characters a name may have to stand before marks.
const mostShort = 10

// Plan is a cutting plan for orders of one wood.
type Plan struct {
	*cutting.Plan
	Job     cutting.Job
	Orders  []Order
	Offers  []Offer       // what stands behind each of Job.Boards
	Species table.Species // of all orders
	Format  unit.Format   // of the first order

	// Apart is what the orders cost when each is planned by itself; 0 where
	// there is one order only, or where one by itself has no plan.
	Apart   int64
	Doubled bool // and then boards on hand would be taken by several of them, so that Apart is too little

	Untold string     // why the orders are not planned each by itself as well; "" where they are
	lists  [][]listed // which designs list each of Job.Boards as on hand
	Notes  []string   // what the maker should know about how the orders were put together
}

// Batches sorts racks into those that are cut together: a board is of one wood,
// and a saw is set in one unit. They come in the order in which each kind first
// appears.
func Batches(racks []*rack.Rack) [][]*rack.Rack {
	var out [][]*rack.Rack
next:
	for _, r := range racks {
		for i, b := range out {
			if b[0].Design.Wood.Species.ID == r.Design.Wood.Species.ID && b[0].Design.Units == r.Design.Units {
				out[i] = append(b, r)
				continue next
			}
		}
		out = append(out, []*rack.Rack{r})
	}
	return out
}

// Make plans the cutting of racks of one wood together: never dearer than each
// by itself, which is planned as EffortFor says and with no more effort than all.
// Effort is as in cutting.Job. The error is a *Fault that stands at the line of a
// design.
func Make(racks []*rack.Rack, effort int64) (*Plan, error) {
	orders := named(racks)
	p, err := plan(orders, effort)
	if err != nil || len(racks) < 2 {
		return p, err
	}
	var alone []*Plan
	apart := int64(0)
	for i := range orders {
		one, err := plan(orders[i:i+1], min(effort, EffortFor(1)))
		switch {
		case err != nil:
			p.Untold = orders[i].Name + " by itself cannot be cut from the boards that it lists"
			return p, nil
		case !p.offers(one):
			p.Untold = orders[i].Name + " by itself would be cut from boards that are not on offer to all"
			return p, nil
		}
		alone = append(alone, one)
		apart += one.Cost
	}
	p.Apart, p.Doubled = apart, p.doubled(alone)
	if p.Apart < p.Cost {
		p.takeApart(alone)
	}
	return p, nil
}

func plan(orders []Order, effort int64) (*Plan, error) {
	first := orders[0].Rack
	p := &Plan{Orders: orders, Species: first.Design.Wood.Species, Format: first.Format}
	p.shop()
	for _, o := range p.Orders {
		for _, part := range o.Rack.Parts {
			p.Job.Parts = append(p.Job.Parts, cutting.Part{
				Order: o.Name, Mark: part.Mark, Name: part.Name, Thickness: part.Thickness, Width: part.Width, Length: part.Length,
				Count: part.Count, Spares: Spares(o.Rack, part.Name),
			})
		}
	}
	p.offer()
	p.Job.Effort = effort
	made, err := cutting.Make(p.Job)
	if err != nil {
		return nil, p.fault(err)
	}
	p.Plan = made
	p.tell()
	return p, nil
}

// named names the orders of racks: as their designs do, or after title or file
// where several orders must be told apart.
func named(racks []*rack.Rack) []Order {
	if len(racks) == 1 {
		return []Order{{Name: racks[0].Design.Order, Rack: racks[0]}}
	}
	var out []Order
	for _, r := range racks {
		file := strings.TrimSuffix(filepath.Base(r.Design.Source.Name), ".toml")
		plain := cmp.Or(r.Design.Order, r.Design.Title, file)
		name := plain
		for n := 2; slices.ContainsFunc(out, func(o Order) bool { return o.Name == name }); n++ {
			name = fmt.Sprintf("%s (%d)", plain, n)
		}
		out = append(out, Order{name, name, r})
	}
	if slices.ContainsFunc(out, func(o Order) bool { return utf8.RuneCountInString(o.Name) > mostShort }) {
		for i := range out {
			out[i].Short = fmt.Sprintf("#%d", i+1)
		}
	}
	return out
}

// Spares returns how many of a part the design has cut over and above.
func Spares(r *rack.Rack, part string) int {
	n := 0
	for _, s := range r.Design.Shop.Spares {
		if s.Part == part {
			n = s.Count
		}
	}
	return n
}

// What a shop takes for granted where no key of the design says otherwise:
// common practice, no source.
func usualShop(sys unit.System) cutting.Shop {
	if sys == unit.Metric {
		const mm = unit.Millimetre
		return cutting.Shop{PlaneMax: 12 * mm, ResawHeight: 150 * mm, ResawKerf: 2 * mm, ResawAllowance: 2 * mm, JointAllowance: 2 * mm, GlueLength: 20 * mm}
	}
	const sixteenth = unit.Inch / 16
	return cutting.Shop{PlaneMax: unit.Inch / 2, ResawHeight: 6 * unit.Inch, ResawKerf: sixteenth, ResawAllowance: sixteenth, JointAllowance: sixteenth, GlueLength: unit.Inch}
}

// shop takes the figures of the orders' shops. It is one shop: where they
// differ the larger loss holds, with which every order's parts come out.
func (p *Plan) shop() {
	s := usualShop(p.Format.System)
	differ := map[string]bool{}
	for i, o := range p.Orders {
		d := o.Rack.Design.Shop
		for _, f := range []struct {
			name string
			into *unit.Length
			say  unit.Length
		}{
			{"kerf", &s.Kerf, d.Kerf}, {"end_trim", &s.EndTrim, d.EndTrim}, {"edge_trim", &s.EdgeTrim, d.EdgeTrim},
			{"min_rip_length", &s.MinRipLength, d.MinRipLength}, {"grid", &s.StaveGrid, o.Rack.Design.Grid},
		} {
			if i > 0 && *f.into != f.say && f.name != "grid" && !differ[f.name] {
				differ[f.name] = true
				p.Notes = append(p.Notes, "the orders state different figures for shop."+f.name+": the largest holds for all")
			}
			*f.into = max(*f.into, f.say)
		}
	}
	s.KeepOffcut = s.MinRipLength
	p.Job.Shop = s
}
