package assembly

import (
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

// A Joint is what clamps press together.
type Joint uint8

// The joints, in the order of the work.
const (
	Staves Joint = iota // of a top that is glued up
	Rungs               // of a ladder on its legs
	Aprons              // on the ladders
	Top                 // on the aprons
)

// Clamps is one set of clamps for one glue-up.
type Clamps struct {
	Joint   Joint
	For     string // the joint in words, which ladder or aprons included
	Where   string
	Count   int           // in use at one time
	Rounds  int           // times that they are set in one glue-up, one round after another
	Opening unit.Length   // of the jaws, cauls left out
	Places  []space.Point // of the first round; none for a top that is glued up
	Force   Force         // at each clamp
}

// Force is what a clamp has to press with, in pounds-force. It is for the
// choice of clamps, not for a gauge: nobody measures it at the bench.
type Force struct{ Least, Greatest float64 }

// Text prints the force in tens of pounds or in tenths of a kilonewton, rounded.
func (f Force) Text(sys unit.System) string {
	if sys == unit.Metric {
		kn := func(v float64) string { return fmt.Sprintf("%.1f", v*unit.PoundForce/1000) }
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

// Sets returns the sets of clamps, in the order of the glue-ups, the first with
// places being that of the ladder with the most rungs. Sets are used one after
// the other, so that a shop needs as many clamps as the largest has of a size.
func Sets(r *rack.Rack, top finish.Panel) []Clamps {
	var sets []Clamps
	if top.GluedUp() {
		sets = append(sets, panelClamps(r, top))
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

// panelClamps press the staves of the top on each other, across its width.
func panelClamps(r *rack.Rack, top finish.Panel) Clamps {
	n := along(top.Length)
	c := Clamps{
		Joint: Staves, For: "gluing up the top", Where: "across the staves, over and under by turns, battens across the ends", Count: n, Rounds: top.Tops,
		Opening: unit.Length(top.Staves) * top.StaveWidth, Force: force(r, unit.Rectangle(top.Length, r.Len("top.thickness"))),
	}
	c.Force.over(n)
	return c
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

// A ladder is clamped and nailed a few rungs at a time, since the nails hold
// what the clamps closed (common practice, no source): so many rungs at most,
// and no two so near that clamps on them get into each other's way.
const (
	rungsAtATime = 4
	rungsApart   = 2 * unit.Inch
)

// rounds sorts the heights of a ladder's rungs, ascending, into rounds from the
// foot up.
func rounds(heights []unit.Length) [][]unit.Length {
	var out [][]unit.Length
	for rest := heights; len(rest) > 0; {
		var now, later []unit.Length
		for _, z := range rest {
			if len(now) < rungsAtATime && (len(now) == 0 || z-now[len(now)-1] >= rungsApart) {
				now = append(now, z)
			} else {
				later = append(later, z)
			}
		}
		out, rest = append(out, now), later
	}
	return out
}

// ladderClamps are two at each rung of a round, on end ladders and on inner ones
// where there are any, each with the places of the ladder of its kind that has
// the most rungs; slats that face each other through a leg share one clamp. The
// kind with the most rungs comes first.
func ladderClamps(r *rack.Rack) []Clamps {
	var sets []Clamps
	most := 0
	for _, kind := range []struct {
		name  string
		inner bool
		slats unit.Length
	}{{"an end ladder", false, 1}, {"an inner ladder", true, 2}} {
		var best []unit.Length
		shape := -1
		for i, s := range r.Shapes {
			heights := append(slices.Clone(s.Left), s.Right...)
			slices.Sort(heights)
			if heights = slices.Compact(heights); (s.Role == rack.Inner) == kind.inner && len(heights) > len(best) {
				best, shape = heights, i
			}
		}
		if shape < 0 {
			continue
		}
		c := rungClamps(r, shape, rounds(best))
		c.For = kind.name
		c.Opening = r.Len("leg.thickness") + kind.slats*r.Len("slat.thickness")
		if c.Where = "across the leg at every rung, front and back"; c.Rounds > 1 {
			c.Where += fmt.Sprintf("; %d rungs, %d or fewer at a time: clamp, nail, move on", len(best), rungsAtATime)
		}
		if len(best) > most {
			most = len(best)
			sets = slices.Insert(sets, 0, c)
		} else {
			sets = append(sets, c)
		}
	}
	return sets
}

// rungClamps are the clamps of the largest round, with the places of the first.
func rungClamps(r *rack.Rack, shape int, rounds [][]unit.Length) Clamps {
	l := r.Ladders[slices.IndexFunc(r.Ladders, func(l rack.Ladder) bool { return l.Shape == shape })]
	leg, deep, high := r.Len("leg.width"), r.Len("slat.length"), r.Len("slat.height")
	c := Clamps{Joint: Rungs, Rounds: len(rounds), Force: force(r, unit.Rectangle(leg, high))}
	for _, now := range rounds {
		c.Count = max(c.Count, 2*len(now))
	}
	y := r.Len("apron.thickness")
	for _, z := range rounds[0] {
		c.Places = append(c.Places, space.Point{X: l.X, Y: y + leg/2, Z: z + high/2}, space.Point{X: l.X, Y: y + deep - leg/2, Z: z + high/2})
	}
	return c
}

// apronClamps press the aprons on the ladders from front to back, at both
// heights, over stiff cauls: the front ones first, when the back has none yet.
func apronClamps(r *rack.Rack) []Clamps {
	leg, high := r.Len("leg.thickness"), r.Len("apron.height")
	var mid []unit.Length
	for _, l := range r.Ladders {
		mid = append(mid, l.X+leg/2)
	}
	at := fixing.Spread(mid)
	ladders := slices.Clone(at)
	for i := range ladders {
		ladders[i]++ // counted from 1 in words
	}
	c := Clamps{
		Joint: Aprons, For: "the front aprons", Count: 2 * len(at), Rounds: 1, Opening: r.Len("slat.length") + r.Len("apron.thickness"),
		Where: "front to back over stiff cauls, at both aprons, at " + rack.Places("ladder", ladders),
	}
	for _, z := range []unit.Length{r.Len("apron.lift") + high/2, r.Len("leg.length") - high/2} {
		for _, i := range at {
			c.Places = append(c.Places, space.Point{X: mid[i], Z: z})
		}
	}
	// A clamp serves the legs up to half way to its neighbours: all of an apron
	// over the clamps along it.
	c.Force = force(r, unit.Rectangle(leg, high).Times(len(mid)))
	c.Force.over(len(at))
	back := c
	back.For, back.Opening, back.Where = "the back aprons", r.Len("carcase.depth"), "the same places, now over both aprons"
	return []Clamps{c, back}
}

// topClamps press the top on the front upper apron, and on the back one where it
// is glued there too.
func topClamps(r *rack.Rack) Clamps {
	wide, high := r.Len("carcase.width"), r.Len("leg.length")
	n := along(wide)
	c := Clamps{
		Joint: Top, For: "the top", Where: "on the front upper apron, over a caul, from end to end", Count: n, Rounds: 1,
		Opening: r.Len("apron.height") + r.Len("top.thickness"),
		Force:   force(r, unit.Rectangle(wide, r.Len("apron.thickness"))),
	}
	c.Force.over(n)
	rows := []unit.Length{0}
	if r.Design.Joint.TopGlued {
		c.Count, c.Where = 2*n, "on both upper aprons, over cauls, from end to end"
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
