package assembly

import (
	"cmp"
	"fmt"
	"math"
	"math/big"
	"slices"

	"slatwright/geometry/finish"
	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Clamps is one set of clamps for one glue-up.
type Clamps struct {
	For     string
	Where   string
	Count   int         // in use at one time
	Times   int         // how many glue-ups take the set, one after another
	Opening unit.Length // of the jaws, with all that lies between them
	Between string      // what that is
	Force   Force       // at each clamp; none where it only holds
	Also    bool        // in use with the set before it

	Places []space.Point // none for a top that is glued up
	Face   *Face         // of a ladder, the first that takes the set; else nil
}

// Force is what a clamp has to press with, in pounds-force. It is for the
// choice of clamps, not for a gauge: nobody measures it at the bench.
type Force struct{ Least, Greatest float64 }

// Text prints the force in tens of pounds or in hundreds of newtons, rounded, as
// clamps are sold; "lightly" for none.
func (f Force) Text(sys unit.System) string {
	if f.Greatest == 0 {
		return "lightly"
	}
	whole := func(v, step float64) int { return int(math.Round(v/step) * step) }
	if sys == unit.Metric {
		return fmt.Sprintf("%d to %d N", whole(f.Least*unit.PoundForce, 100), whole(f.Greatest*unit.PoundForce, 100))
	}
	return fmt.Sprintf("%d to %d lb", whole(f.Least, 10), whole(f.Greatest, 10))
}

// force is what the pressure for the wood comes to over an area.
func force(r *rack.Rack, a unit.Area) Force {
	p := table.PressureFor(r.Design.Wood.Species.Gravity.Value)
	inches, _ := a.Over(unit.SquareInch).Float64()
	return Force{inches * float64(p.Least), inches * float64(p.Greatest)}
}

// Caul returns the thickness of the cauls under the jaws, and of the board of the
// jig, which is one (common practice, no source).
func Caul(r *rack.Rack) unit.Length {
	if r.Design.Units == unit.Metric {
		return 18 * unit.Millimetre
	}
	return 3 * unit.Inch / 4
}

// Sets returns the sets of clamps, in the order of the glue-ups. Sets are used one
// after the other: Own says what serves all of them.
func Sets(r *rack.Rack, top finish.Panel) []Clamps {
	var sets []Clamps
	if top.GluedUp() {
		sets = append(sets, panelClamps(r, top), battenClamps(r, top))
	}
	if r.Design.Joint.Glue { // what is left to nails needs none
		sets = append(sets, ladderClamps(r)...)
		sets = append(sets, apronClamps(r)...)
	}
	if r.HasTop() {
		sets = append(sets, topClamps(r))
	}
	return sets
}

// Stock is so many clamps that open to so much at least.
type Stock struct {
	Count   int
	Opening unit.Length
}

// Own returns the fewest clamps that serve all sets one after the other, those
// that open widest first.
func Own(sets []Clamps) []Stock {
	var own []unit.Length // openings, the widest first
	for i := 0; i < len(sets); {
		var open []unit.Length // of clamps that are in use together
		for k := i; i == k || i < len(sets) && sets[i].Also; i++ {
			open = append(open, slices.Repeat([]unit.Length{sets[i].Opening}, sets[i].Count)...)
		}
		slices.SortFunc(open, func(a, b unit.Length) int { return cmp.Compare(b, a) })
		own = append(own, make([]unit.Length, max(0, len(open)-len(own)))...)
		for k, o := range open {
			own[k] = max(own[k], o)
		}
	}
	var out []Stock
	for _, o := range own {
		if n := len(out); n > 0 && out[n-1].Opening == o {
			out[n-1].Count++
			continue
		}
		out = append(out, Stock{1, o})
	}
	return out
}

// panelClamps press the staves of the top on each other, across its width.
func panelClamps(r *rack.Rack, top finish.Panel) Clamps {
	n := along(top.Length)
	c := Clamps{
		For: "gluing up the top", Where: "across the staves, over and under by turns", Count: n, Times: top.Tops,
		Opening: unit.Length(top.Staves)*top.StaveWidth + 2*Caul(r), Between: "staves, 2 cauls", Force: force(r, unit.Rectangle(top.Length, r.Len("top.thickness"))),
	}
	c.Force.over(n)
	return c
}

// battenClamps hold a pair of battens over and under either end of the staves, so
// that these lie level: two clamps to a pair.
func battenClamps(r *rack.Rack, top finish.Panel) Clamps {
	return Clamps{
		For: "its battens, with the clamps above", Where: "a pair over and under either end, two clamps to a pair", Count: 4, Times: top.Tops,
		Opening: r.Len("top.thickness") + 4*Caul(r), Between: "staves, 2 battens on edge", Also: true,
	}
}

// along is how many clamps stand along a joint so long.
func along(long unit.Length) int {
	most := unit.Length(table.ClampsApart().Greatest) * unit.Inch
	return int((long+most-1)/most) + 1
}

// over shares a force among clamps.
func (f *Force) over(n int) {
	f.Least /= float64(n)
	f.Greatest /= float64(n)
}

// ladderClamps press the slats of one face of a ladder on its legs, over a caul
// along each leg and down to the board of the jig. Faces that take the same
// clamps at the same slats, counted from the foot, are one set.
func ladderClamps(r *rack.Rack) []Clamps {
	var sets []Clamps
	var ladders [][]int // of each set, from 1
	for _, f := range Faces(r) {
		c, at := faceClamps(r, f)
		k := slices.IndexFunc(sets, func(o Clamps) bool { return o.Where == c.Where && o.Opening == c.Opening && o.Force == c.Force })
		if k < 0 {
			c.Face = &f
			sets, ladders, k = append(sets, c), append(ladders, nil), len(sets)
		}
		sets[k].Times += at
		if sets[k].Face.Inner != f.Inner {
			sets[k].Face.mixed = true
		}
		ladders[k] = append(ladders[k], f.Ladders...)
	}
	for i := range sets {
		slices.Sort(ladders[i])
		sets[i].For = rack.Places("ladder", ladders[i]) + ", " + sets[i].Face.Turn()
	}
	return sets
}

// faceClamps are the clamps of one face, and how many ladders have it.
func faceClamps(r *rack.Rack, f Face) (Clamps, int) {
	at := fixing.Spread(f.Slats)
	area := unit.Rectangle(r.Len("leg.width"), r.Len("slat.height")).Times(len(f.Slats))
	c := Clamps{Count: 2 * len(at), Opening: 2*Caul(r) + r.Len("leg.thickness") + r.Len("slat.thickness"), Between: "board, leg, slat, caul", Force: force(r, area), Places: FacePlaces(r, f)}
	c.Force.over(len(at))
	if f.Second {
		c.Opening += r.Len("slat.thickness")
		c.Between = "board, packer, leg, slat, caul"
	}
	c.Where = fmt.Sprintf("on a caul along each leg, over %s of %d", rack.Places("slat", rack.FromOne(at)), len(f.Slats))
	return c, len(f.Ladders)
}

// FacePlaces returns where the clamps of a face stand, two to a slat from the
// foot up; none where crossings are left to nails.
func FacePlaces(r *rack.Rack, f Face) (out []space.Point) {
	if !r.Design.Joint.Glue {
		return nil
	}
	y, half := r.Len("apron.thickness"), r.Len("leg.width")/2
	for _, k := range fixing.Spread(f.Slats) {
		z := f.Slats[k] + r.Len("slat.height")/2
		out = append(out, space.Point{X: f.X, Y: y + half, Z: z}, space.Point{X: f.X, Y: y + r.Len("slat.length") - half, Z: z})
	}
	return out
}

// alongAprons is where clamps stand along an apron: the legs' middles, and which
// of them.
func alongAprons(r *rack.Rack) (mid []unit.Length, at []int) {
	for _, l := range r.Ladders {
		mid = append(mid, l.X+r.Len("leg.thickness")/2)
	}
	return mid, fixing.Spread(mid)
}

// ApronPlaces returns where clamps stand on the aprons of one side, the lower one
// first; none where crossings are left to nails.
func ApronPlaces(r *rack.Rack) (out []space.Point) {
	if !r.Design.Joint.Glue {
		return nil
	}
	half := r.Len("apron.height") / 2
	mid, at := alongAprons(r)
	for _, z := range []unit.Length{r.Len("apron.lift") + half, r.Len("leg.length") - half} {
		for _, i := range at {
			out = append(out, space.Point{X: mid[i], Z: z})
		}
	}
	return out
}

// apronClamps press the aprons on the ladders from front to back, at both
// heights, over stiff cauls: the front ones first, when the back has none yet.
func apronClamps(r *rack.Rack) []Clamps {
	leg, high := r.Len("leg.thickness"), r.Len("apron.height")
	mid, at := alongAprons(r)
	c := Clamps{
		For: "the front aprons", Count: 2 * len(at), Times: 1, Opening: r.Len("slat.length") + r.Len("apron.thickness") + 2*Caul(r),
		Where: "front to back over stiff cauls along both aprons, at " + rack.Places("ladder", rack.FromOne(at)), Between: "ladder, apron, 2 cauls",
		Places: ApronPlaces(r),
	}
	// A clamp serves the legs up to half way to its neighbours: all of an apron
	// over the clamps along it.
	c.Force = force(r, unit.Rectangle(leg, high).Times(len(mid)))
	c.Force.over(len(at))
	back := c
	back.For, back.Opening = "the back aprons", r.Len("carcase.depth")+2*Caul(r)
	back.Where, back.Between = "the same places, now over both aprons", "ladder, 2 aprons, 2 cauls"
	return []Clamps{c, back}
}

// ClampsOfTop is what the set of clamps is for that presses the top on its aprons.
const ClampsOfTop = "the top"

// topClamps press the top on the front upper apron, and on the back one where it
// is glued there too.
func topClamps(r *rack.Rack) Clamps {
	wide, high := r.Len("carcase.width"), r.Len("leg.length")
	n := along(wide)
	c := Clamps{
		For: ClampsOfTop, Where: "on the front upper apron, from end to end; cauls over the top and, flush with the apron's inner face, under the apron", Count: n, Times: 1,
		Opening: r.Len("apron.height") + r.Len("top.thickness") + 2*Caul(r), Between: "apron, top, 2 cauls",
		Force: force(r, unit.Rectangle(wide, r.Len("apron.thickness"))),
	}
	c.Force.over(n)
	rows := []unit.Length{0}
	if r.Design.Joint.TopGlued {
		c.Count, c.Where = 2*n, "on both upper aprons, from end to end; cauls over the top and, flush with their inner faces, under the aprons"
		rows = append(rows, r.Len("carcase.depth"))
	}
	for _, y := range rows {
		for i := range n {
			x := new(big.Int).Mul(big.NewInt(int64(wide)), big.NewInt(int64(i)))
			c.Places = append(c.Places, space.Point{X: unit.Length(x.Quo(x, big.NewInt(int64(n-1))).Int64()), Y: y, Z: high})
		}
	}
	return c
}
