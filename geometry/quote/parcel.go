package quote

import (
	"cmp"
	"math"
	"math/big"
	"slices"

	"slatwright/geometry/rack"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Parcel is a rack in its carton. Weights are in hundredths of a pound in an
// inch design and of a kilogram in a metric one, rounded up.
type Parcel struct {
	Name                  string
	Length, Width, Height unit.Length // outside, rounded up to 1/2 in or 10 mm
	Padding               unit.Length
	Shift                 unit.Length // of every other ladder, where they lie nested; else 0
	Nested                bool
	Gross                 int64 // with carton and padding's board; 0 where the wood's density is not known
	ByVolume              int64
	Divided               Source // of the divisor
	Divisor               int
	Chargeable            int64 // whole pounds or kilograms: the greater of the two, rounded up
}

// weigh returns the grams of all pieces at 12 % moisture, rounded up; fastenings
// and finish are left out. It is 0 where the density is not known.
func weigh(r *rack.Rack) int64 {
	sum := new(big.Int)
	for _, p := range r.Pieces {
		s := p.Box.Size()
		sum.Add(sum, unit.Volume(s.X, s.Y, s.Z))
	}
	density := int64(math.Round(100 * r.Design.Wood.Species.Density())) // grams a litre, in hundredths
	grams := new(big.Rat).SetFrac(sum.Mul(sum, big.NewInt(density)), new(big.Int).Mul(litre, big.NewInt(100)))
	return unit.RoundUp(grams)
}

// assembled is the rack as it stands, in one carton.
func assembled(r *rack.Rack, grams int64) Parcel {
	sides := []unit.Length{r.Len("rack.width"), r.Len("rack.depth"), r.Len("rack.height")}
	slices.Sort(sides)
	return pack(r, Parcel{Name: "assembled", Length: sides[2], Width: sides[1], Height: sides[0]}, grams)
}

// flat is the ladders one on the other, the aprons and the top over them:
// aprons and top are fixed on site.
func flat(r *rack.Rack, grams int64) Parcel {
	n := unit.Length(len(r.Ladders))
	leg, slat, apron := r.Len("leg.thickness"), r.Len("slat.thickness"), r.Len("apron.thickness")
	long, wide := max(r.Len("leg.length"), r.Len("apron.length")), r.Len("slat.length")
	over := unit.Length(0)
	if r.HasTop() {
		long, wide = max(long, r.Len("top.length")), max(wide, r.Len("top.width"))
		over = r.Len("top.thickness")
	}
	beside := max(1, min(int(wide/r.Len("apron.height")), r.Counts.Aprons))
	layers := (r.Counts.Aprons + beside - 1) / beside
	over += unit.Length(layers) * apron
	wide = max(wide, r.Len("apron.height"))

	plain := Parcel{Name: "flat", Length: long, Width: wide, Height: n*leg + 2*(n-1)*slat + over}
	nested := plain
	nested.Nested, nested.Shift = true, shift(r)
	nested.Length = max(long, r.Len("leg.length")+nested.Shift)
	nested.Height = n*leg + (n-1)*slat + over
	plain, nested = pack(r, plain, grams), pack(r, nested, grams)
	if nested.ByVolume <= plain.ByVolume {
		return nested
	}
	return plain
}

// shift returns the least by which every other ladder is pushed along its legs
// so that the slats of each lie between those of the next.
func shift(r *rack.Rack) unit.Length {
	type span struct{ lo, hi unit.Length } // between these, ends not included, slats meet
	var met []span
	high := r.Len("slat.height")
	seen := map[[3]int]bool{}
	for i := 0; i+1 < len(r.Ladders); i++ {
		a, b := r.Ladders[i].Shape, r.Ladders[i+1].Shape
		if seen[[3]int{i % 2, a, b}] {
			continue
		}
		seen[[3]int{i % 2, a, b}] = true
		for _, x := range r.Shapes[a].Right {
			for _, y := range r.Shapes[b].Left {
				apart := x - y
				if i%2 == 1 { // this one is pushed, not the next
					apart = -apart
				}
				met = append(met, span{apart - high, apart + high})
			}
		}
	}
	slices.SortFunc(met, func(a, b span) int { return cmp.Compare(a.lo, b.lo) })
	at := unit.Length(0)
	for _, s := range met {
		if s.lo < at && at < s.hi {
			at = s.hi
		}
	}
	return at
}

// pack puts a carton round the parcel and weighs it.
func pack(r *rack.Rack, p Parcel, grams int64) Parcel {
	sys, c := r.Design.Units, r.Design.Carton
	index, one, step := 0, unit.Inch, unit.Inch/2
	if sys == unit.Metric {
		index, one, step = 1, 10*unit.Millimetre, 10*unit.Millimetre
	}
	p.Padding = c.Padding
	if c.PaddingPlace.None() {
		p.Padding = unit.Length(table.FindConstant("pack.padding").Value[index]) * sys.Unit()
	}
	for _, side := range []*unit.Length{&p.Length, &p.Width, &p.Height} {
		*side = (*side + 2*p.Padding).Up(step)
	}
	d := table.FindConstant("pack.divisor")
	p.Divisor, p.Divided = int(d.Value[index]), Source{Tabled, d.Origin.Source, 0}
	if !c.DivisorPlace.None() {
		p.Divisor, p.Divided = c.Divisor, Source{Stated, "carton.divisor", c.DivisorPlace.Line}
	}
	// Cubic inches, or cubic centimetres, over the divisor.
	volume := new(big.Rat).SetFrac(unit.Volume(p.Length, p.Width, p.Height), unit.Volume(one, one, one))
	p.ByVolume = unit.RoundUp(volume.Mul(volume, big.NewRat(100, int64(p.Divisor))))
	if grams > 0 {
		p.Gross = masses(sys, grams+cardboard(p))
	}
	p.Chargeable = (max(p.Gross, p.ByVolume) + 99) / 100
	return p
}

// cardboard returns the grams of a carton's faces.
func cardboard(p Parcel) int64 {
	a := unit.Rectangle(p.Length, p.Width).Plus(unit.Rectangle(p.Width, p.Height)).Plus(unit.Rectangle(p.Height, p.Length)).Times(2)
	v := a.Over(unit.SquareMetre)
	return unit.RoundUp(v.Mul(v, big.NewRat(int64(table.Value("pack.board")), 1)))
}

// masses returns grams in hundredths of what parcels are weighed in, rounded
// up. A pound is 453.59237 g, exactly.
func masses(sys unit.System, grams int64) int64 {
	if sys == unit.Metric {
		return (grams + 9) / 10
	}
	return unit.RoundUp(big.NewRat(100*grams*100_000, 45_359_237))
}

// Weight returns what the rack weighs without packing, as parcels are weighed;
// 0 where it is not known.
func (q *Quote) Weight() int64 { return masses(q.Rack.Design.Units, q.Grams) }

// WeightUnit returns the unit of weights: "lb" or "kg".
func (q *Quote) WeightUnit() string { return massUnit(q.Rack.Design.Units) }
