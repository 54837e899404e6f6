package rack

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"slatwright/specs/design"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// plan is what the brute force decides for a rack of equal columns with every
// default kept.
type plan struct {
	columns, rows          int
	gap, rise, first, legs unit.Length
}

// brute tries every gap on the grid and every number of columns and rows that
// goes into a site, with formulas of its own in floating point of 200 bits.
func brute(x table.Bottle, wide, high, grid unit.Length) (best plan) {
	const in = unit.Inch
	var (
		legT, slatT, slatH, apronH, topT = 3 * in / 4, 3 * in / 4, in, 5 * in / 2, 3 * in / 4
		side, over, apron, overhang      = in / 8, in / 4, in / 8, 3 * in / 4
		large, small, nominal            = x.Diameter.Max, x.Diameter.Min, x.Diameter.Nominal * 3 / 4
	)
	off := func(p plan) unit.Length { return (p.gap - nominal).Abs() }
	for gap := grid; gap < large; gap += grid {
		if 100*gap < 50*large || 100*gap > 90*small || gap+2*slatT < large+2*side {
			continue
		}
		h := axis(large, gap, 0)
		sag := minus(half(flt(small)), axis(small, gap, 0))
		stack := plus(plus(half(flt(large)), h), plus(sag, flt(over)))
		corner := plus(plus(h, flt(slatH)), cathetus(plus(half(flt(large)), flt(over)), half(flt(gap))))
		rise := max(ceil(stack), ceil(corner)).Up(grid)
		first := max(0, ceil(plus(sag, flt(apronH+apron-slatH)))).Up(grid)
		stand := ceil(plus(half(flt(large)), h))
		for rows := 1; rows <= 60; rows++ {
			legs := (first + unit.Length(rows-1)*rise + slatH + stand + apron + apronH).Up(grid)
			if legs+topT > high {
				break
			}
			for columns := 1; columns <= 60; columns++ {
				if unit.Length(columns)*(gap+2*slatT+legT)+legT+2*overhang > wide {
					break
				}
				p := plan{columns, rows, gap, rise, first, legs}
				if better(p, best, off) {
					best = p
				}
			}
		}
	}
	return best
}

// better ranks two plans: bottles, the gap, the rise, the reveals.
func better(a, b plan, off func(plan) unit.Length) bool {
	if d := a.columns*a.rows - b.columns*b.rows; d != 0 {
		return d > 0
	}
	for _, d := range []unit.Length{off(a) - off(b), a.rise - b.rise, a.first - b.first, a.legs - b.legs} {
		if d != 0 {
			return d < 0
		}
	}
	return false
}

func TestMostAgainstBruteForce(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 14))
	kinds := []string{"claret-750", "burgundy-750", "half-375", "magnum-1500", "sparkling-750", "longneck-355"}
	for i := range 60 {
		name := kinds[rng.IntN(len(kinds))]
		wide, high := 12+rng.IntN(60), 14+rng.IntN(50)
		text := fmt.Sprintf("[bottles]\nfit = [%q]\n[site]\nwidth = %d\nheight = %d\n", name, wide, high)
		d, err := design.Read("brute.toml", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		x, _ := table.FindBottle(name)
		want := brute(x, unit.Length(wide)*unit.Inch, unit.Length(high)*unit.Inch, unit.Inch/16)
		r, err := Build(d)
		if err != nil || want.rows == 0 {
			if err == nil && !gaveWay(r) || err != nil && want.rows > 0 {
				t.Errorf("design %d: %v, brute force found %+v\n%s", i, err, want, text)
			}
			continue
		}
		if gaveWay(r) {
			continue // a kind of bottle that no default gap suits
		}
		got := plan{r.Counts.Columns, r.Counts.Rows, r.Len("cell.gap"), r.Len("cell.rise"), r.Len("slat.first"), r.Len("leg.length")}
		if got != want {
			t.Errorf("design %d: got %+v, want %+v\n%s", i, got, want, text)
		}
	}
}

// gaveWay reports whether some standing default is not kept.
func gaveWay(r *Rack) bool {
	for _, l := range r.Lengths {
		if def, ok := table.FindDefault(l.Name); ok && l.From == Default && l.Value != def.Value(r.Design.Units) {
			return true
		}
	}
	return false
}
