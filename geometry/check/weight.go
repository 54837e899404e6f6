package check

import (
	"math"

	"slatwright/geometry/rack"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// load is a mass with its moments about the left front foot corner of the
// carcase: kg, and kg mm along x, y and z.
type load struct{ kg, x, y, z float64 }

func (l load) plus(kg, x, y, z float64) load {
	return load{l.kg + kg, l.x + kg*x, l.y + kg*y, l.z + kg*z}
}

func (l load) and(m load) load { return load{l.kg + m.kg, l.x + m.x, l.y + m.y, l.z + m.z} }

// newton returns the weight.
func (l load) newton() float64 { return l.kg * gravity }

// at returns the centre of gravity in mm.
func (l load) at() (x, y, z float64) { return l.x / l.kg, l.y / l.kg, l.z / l.kg }

// woodLoad is the rack without bottles.
func woodLoad(r *rack.Rack) load {
	var sum load
	density := r.Design.Wood.Species.Density() / 1e9 // kg/mm³
	for _, p := range r.Pieces {
		s := p.Box.Size()
		mid := func(lo, hi unit.Length) float64 { return (lo.MM() + hi.MM()) / 2 }
		sum = sum.plus(density*s.X.MM()*s.Y.MM()*s.Z.MM(),
			mid(p.Box.Min.X, p.Box.Max.X), mid(p.Box.Min.Y, p.Box.Max.Y), mid(p.Box.Min.Z, p.Box.Max.Z))
	}
	return sum
}

// bottleLoads is what lies in each row, counted from 0: in each cell the bottle
// that is drawn there, or the heaviest it may hold.
func bottleLoads(r *rack.Rack, heaviest bool) []load {
	rows := make([]load, r.Counts.Rows)
	back := r.Len("carcase.depth").MM()
	for _, c := range r.Columns {
		k := r.Kinds[c.Kind]
		for row := range k.Rows {
			b := k.Shown[row]
			grams := b.Mass.Nominal
			if heaviest {
				for _, one := range k.Fit[row] {
					grams = max(grams, one.Mass.Max)
				}
			}
			z := k.Under[row].MM() + r.Len("slat.height").MM() + axis(b.Diameter.Nominal, k.Gap, r.Len("slat.eased"))
			rows[row] = rows[row].plus(float64(grams)/1000, (c.Left.MM()+c.Right.MM())/2, back-share(b)*b.Height.Nominal.MM(), z)
		}
	}
	return rows
}

// fullLoad is the rack with every cell full of its heaviest bottle.
func fullLoad(r *rack.Rack) load {
	sum := woodLoad(r)
	for _, row := range bottleLoads(r, true) {
		sum = sum.and(row)
	}
	return sum
}

// share is the height of a bottle's centre of gravity over its height.
func share(b table.Bottle) float64 { return float64(b.Centre.Thousandths) / 1000 }

// axis returns how high in mm a bottle's axis stands over the slat tops; 0
// where it hangs between the slats by its middle.
func axis(diameter, gap, eased unit.Length) float64 {
	d, g, e := diameter.MM(), gap.MM(), eased.MM()
	q := (d+2*e)*(d+2*e) - (g+2*e)*(g+2*e)
	if q <= 0 {
		return 0
	}
	return math.Sqrt(q)/2 - e
}

// spread returns the tangent of the angle from the vertical at which a bottle
// presses on a slat's corner; ok is false where it falls through.
func spread(diameter, gap, eased unit.Length) (tangent float64, ok bool) {
	sine := (gap + 2*eased).MM() / (diameter + 2*eased).MM()
	if sine >= 1 {
		return 0, false
	}
	return sine / math.Sqrt(1-sine*sine), true
}

// press is what a bottle does to one slat: half its weight down, and the push
// sideways that goes with it where nothing rubs.
type press struct {
	down, side float64 // N
	tangent    float64
	bottle     table.Bottle
	row        int
}

// presses lists what the bottles of a kind of column do, each as thin and as
// thick as it may be: the thin one pushes harder, the thick one peels more. None
// where a bottle would fall through.
func presses(r *rack.Rack, k rack.Kind) []press {
	var list []press
	for row, fit := range k.Fit {
		for _, b := range fit {
			down := float64(b.Mass.Max) / 1000 * gravity / 2
			thin, rests := spread(b.Diameter.Min, k.Gap, r.Len("slat.eased"))
			if !rests {
				continue
			}
			list = append(list, press{down, down * thin, thin, b, row})
			if thick, rests := spread(b.Diameter.Max, k.Gap, r.Len("slat.eased")); rests && thick != thin {
				list = append(list, press{down, down * thick, thick, b, row})
			}
		}
	}
	return list
}

// hardest returns the first press of those for which the measure is greatest; ok
// is false where there are none.
func hardest(list []press, measure func(press) float64) (worst press, ok bool) {
	for _, p := range list {
		if !ok || measure(p) > measure(worst) {
			worst, ok = p, true
		}
	}
	return worst, ok
}

// sideways is the measure of a press by which legs bow and gaps widen.
func sideways(p press) float64 { return p.side }
