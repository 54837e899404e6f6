package assembly

import (
	"fmt"
	"math"
	"math/big"
	"slices"

	"slatwright/geometry/finish"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Clamps is one set of clamps for one glue-up.
type Clamps struct {
	For     string
	Where   string
	Count   int
	Opening unit.Length // of the jaws, cauls left out
	Places  []space.Point
	Force   Force // at each clamp
}

// Force is what a clamp has to press with, in pounds-force. It is for the
// choice of clamps, not for a gauge: nobody measures it at the bench.
type Force struct{ Least, Greatest float64 }

// newtons to the pound-force (exactly 4.4482216152605, from the pound of
// 0.45359237 kg and standard gravity of 9.80665 m/s²).
const newtons = 4.4482216152605

// Text prints the force in tens of pounds or in tenths of a kilonewton, rounded.
func (f Force) Text(sys unit.System) string {
	if sys == unit.Metric {
		kn := func(v float64) string { return fmt.Sprintf("%.1f", v*newtons/1000) }
		return kn(f.Least) + " to " + kn(f.Greatest) + " kN"
	}
	tens := func(v float64) int { return int(math.Round(v/10)) * 10 }
	return fmt.Sprintf("%d to %d lbf", tens(f.Least), tens(f.Greatest))
}

// force is what the pressure for the wood comes to over an area.
func force(r *rack.Rack, a unit.Area) Force {
	p := table.PressureFor(r.Design.Wood.Species.Gravity.Value)
	inches, _ := a.Over(unit.SquareInch).Float64()
	return Force{inches * float64(p.Least), inches * float64(p.Greatest)}
}

// Sets returns the sets of clamps, in the order of the glue-ups: none for what
// is left to nails. Sets are used one after the other, so that a shop needs as
// many clamps as the largest has of a size.
func Sets(r *rack.Rack) []Clamps {
	var sets []Clamps
	if r.Design.Joint.Glue {
		sets = append(sets, ladderClamps(r), carcaseClamps(r))
	}
	if r.HasTop() {
		sets = append(sets, topClamps(r))
	}
	return sets
}

// Fullest returns the ladder, counted from 0, that has the most crossings of
// slat and leg, and the undersides of its slats in ascending order; slats that
// face each other through a leg are one.
func Fullest(r *rack.Rack) (ladder int, under []unit.Length) {
	shape := 0
	for i, s := range r.Shapes {
		heights := append(slices.Clone(s.Left), s.Right...)
		slices.Sort(heights)
		if heights = slices.Compact(heights); len(heights) > len(under) {
			under, shape = heights, i
		}
	}
	return slices.IndexFunc(r.Ladders, func(l rack.Ladder) bool { return l.Shape == shape }), under
}

// ladderClamps are one at each crossing of the ladder that has the most; slats
// that face each other through a leg share one.
func ladderClamps(r *rack.Rack) Clamps {
	n, under := Fullest(r)
	x := r.Ladders[n].X
	leg, deep, high := r.Len("leg.width"), r.Len("slat.length"), r.Len("slat.height")
	c := Clamps{
		For: "a ladder", Where: "at every crossing of slat and leg, across the leg", Count: 2 * len(under),
		Opening: r.Len("leg.thickness") + 2*r.Len("slat.thickness"), Force: force(r, unit.Rectangle(leg, high)),
	}
	if len(r.Columns) == 1 { // both ladders carry slats on one face
		c.Opening -= r.Len("slat.thickness")
	}
	y := r.Len("apron.thickness")
	for _, z := range under {
		c.Places = append(c.Places, space.Point{X: x, Y: y + leg/2, Z: z + high/2}, space.Point{X: x, Y: y + deep - leg/2, Z: z + high/2})
	}
	return c
}

// spread returns which of the places, in ascending order, take a clamp: the
// first, the last, and between them the fewest that stand no further apart than
// the table says, or the next place where even that is further.
func spread(at []unit.Length) []int {
	most := unit.Length(table.ClampsApart().Greatest) * unit.Inch
	out := []int{0}
	for i := 0; i < len(at)-1; {
		n := i + 1
		for n+1 < len(at) && at[n+1]-at[i] <= most {
			n++
		}
		out = append(out, n)
		i = n
	}
	return out
}

// carcaseClamps press the aprons on the ladders from front to back, at both
// heights, over stiff cauls.
func carcaseClamps(r *rack.Rack) Clamps {
	leg, high := r.Len("leg.thickness"), r.Len("apron.height")
	var mid []unit.Length
	for _, l := range r.Ladders {
		mid = append(mid, l.X+leg/2)
	}
	at := spread(mid)
	c := Clamps{
		For: "the carcase", Count: 2 * len(at), Opening: r.Len("carcase.depth"),
		Where: "front to back over stiff cauls, at both aprons, at ladders " + numbers(at),
	}
	for _, z := range []unit.Length{r.Len("apron.lift") + high/2, r.Len("leg.length") - high/2} {
		for _, i := range at {
			c.Places = append(c.Places, space.Point{X: mid[i], Z: z})
		}
	}
	// A clamp serves the legs up to half way to its neighbours: all of an apron
	// over the clamps along it.
	joint := unit.Rectangle(leg, high).Times(len(mid))
	c.Force = force(r, joint)
	c.Force.Least /= float64(len(at))
	c.Force.Greatest /= float64(len(at))
	return c
}

// numbers lists what stands at the places, counted from 1.
func numbers(at []int) string {
	text := ""
	for k, i := range at {
		switch {
		case k > 0 && k == len(at)-1:
			text += " and "
		case k > 0:
			text += ", "
		}
		text += fmt.Sprint(i + 1)
	}
	return text
}

// topClamps press the top on the front upper apron, or on both upper aprons
// where it is glued all round.
func topClamps(r *rack.Rack) Clamps {
	wide, high, thick := r.Len("carcase.width"), r.Len("leg.length"), r.Len("apron.thickness")
	most := unit.Length(table.ClampsApart().Greatest) * unit.Inch
	n := int((wide+most-1)/most) + 1
	c := Clamps{
		For: "the top", Where: "on the front upper apron, over a caul, from end to end",
		Opening: r.Len("apron.height") + r.Len("top.thickness"),
	}
	along := []unit.Length{thick / 2}
	if r.Design.Joint.TopGlued {
		c.Where = "on both upper aprons, over cauls, from end to end"
		along = append(along, r.Len("carcase.depth")-thick/2)
	}
	c.Count = n * len(along)
	c.Force = force(r, topJoint(r))
	c.Force.Least /= float64(c.Count)
	c.Force.Greatest /= float64(c.Count)
	for _, y := range along {
		for i := range n {
			x := new(big.Int).Mul(big.NewInt(int64(wide)), big.NewInt(int64(i)))
			c.Places = append(c.Places, space.Point{X: unit.Length(x.Quo(x, big.NewInt(int64(n-1))).Int64()), Y: y, Z: high})
		}
	}
	return c
}

// topJoint is all of the top's underside that is glued.
func topJoint(r *rack.Rack) unit.Area {
	var sum unit.Area
	for _, z := range finish.Zones(r) {
		if r.Parts[r.Pieces[z.Piece].Part].Name == "top" {
			sum = sum.Plus(z.Area())
		}
	}
	return sum
}
