package sheet_test

import (
	"math/big"
	"slices"
	"strings"
	"testing"

	"slatwright/geometry/assembly"
	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

type length = unit.Length

// Of the figures printed on the sheets of the demo designs, at least 95 in a
// hundred are checked: they say of which of the rack's lengths they are made,
// and are their sum, or they are clearances of a section, each of which
// TestClearances finds by another way.
func TestFiguresAreSolvedLengths(t *testing.T) {
	checked, all := 0, 0
	for name, r := range demos(t) {
		for _, s := range packet(t, r) {
			if strings.Contains(s.Name, "-bare-") || strings.Contains(s.Name, "-gauges-") || strings.Contains(s.Name, "-top") {
				continue // made of zones, of limits and of the top's blocks, each with a referee of its own
			}
			for _, d := range s.Dims {
				if d.Role == drawing.Note {
					continue
				}
				all++
				switch {
				case len(d.Sum) > 0:
					checked++
					if got := d.Sum.Value(r.Len); got != d.Value {
						t.Errorf("%s, %s: %s is printed for %v, but %v is %v", name, s.Name, d.Printed, d.Value, d.Sum, got)
					}
				case clearance(s, d), quarter(r, s, d), strings.Contains(s.Name, "-parts-") && (nailed(r, d) || screwed(r, d)):
					checked++
				case strings.Contains(s.Name, "-jig") && jigged(r, d):
					checked++
				case strings.HasSuffix(s.Name, "-side"):
					checked++
					if out, deep := longest(r); d.Value != out && d.Value != deep {
						t.Errorf("%s, %s: %s; the longest bottle stands out %v, and %v with the rack", name, s.Name, d.Printed, out, deep)
					}
				default:
					t.Logf("%s, %s: %s is made of no length", name, s.Name, d.Printed)
				}
			}
		}
	}
	t.Logf("%d of %d figures are checked", checked, all)
	if checked*100 < all*95 {
		t.Errorf("%d of %d figures are checked, want 95 %%", checked, all)
	}
}

// quarter reports whether a figure is one of a ladder's detail: nails stand a
// quarter of the leg's width and of the slat's height in, down to what a rule shows.
func quarter(r *rack.Rack, s *drawing.Sheet, d drawing.DimRecord) bool {
	of := func(wide length) bool {
		in := fourth(r, wide)
		return d.Value == in || d.Value == wide-2*in
	}
	return strings.Contains(s.Name, "-ladder-") && (of(r.Len("leg.width")) || of(r.Len("slat.height")))
}

// fourth is a fourth in whole millimetres or sixteenths, counted up to it.
func fourth(r *rack.Rack, wide length) (in length) {
	step := unit.Inch / 16
	if r.Design.Units == unit.Metric {
		step = unit.Millimetre
	}
	for 4*(in+step) <= wide {
		in += step
	}
	return in
}

// jigged reports whether a figure is one of the jig: as thick as a caul, a caul
// longer than a ladder or wider, or where a packer lies: at the top, or level with a
// slat or beside one.
func jigged(r *rack.Rack, d drawing.DimRecord) bool {
	caul, high := assembly.Caul(r), r.Len("slat.height")
	if v := d.Value - caul; v == 0 || v == r.Len("slat.length") || v == r.Len("leg.length") || d.Value == r.Len("leg.length")-high {
		return true
	}
	return slices.ContainsFunc(r.Kinds, func(k rack.Kind) bool {
		return slices.ContainsFunc(k.Under, func(z length) bool { return d.Value == z || d.Value == z-high || d.Value == z+high })
	})
}

// nailed reports whether a figure is one of a nail on the sheets of parts: on a
// slat a quarter or three of the leg's width from either end, on an apron on the
// middle of a leg, and across it a quarter in from either edge.
func nailed(r *rack.Rack, d drawing.DimRecord) bool {
	leg, slat, high := r.Len("leg.width"), r.Len("slat.length"), r.Len("apron.height")
	if d.Role == drawing.Link {
		return d.Value == fourth(r, high)
	}
	for _, v := range []length{d.Value, slat - d.Value} {
		if v == fourth(r, leg) || v == leg-fourth(r, leg) {
			return true
		}
	}
	return slices.ContainsFunc(r.Ladders, func(l rack.Ladder) bool { return 2*(d.Value-l.X) == r.Len("leg.thickness") })
}

// screwed reports whether a figure is one of a screw into the top or into one of
// its blocks: in the middle of a column or a quarter of a block beside it, or half
// a block under the apron's edge, or from the front edge over the front apron and all that is before
// the block and the screw.
func screwed(r *rack.Rack, d drawing.DimRecord) bool {
	t, _ := fixing.Of(r)
	back := r.Len("overhang.front") + r.Len("apron.thickness") + r.Len("slat.length")
	if 2*(back-d.Value) == t.Block.Y+t.Slot-2*t.Place {
		return true
	}
	if d.Role == drawing.Link {
		return 2*d.Value == t.Block.Z
	}
	for i := range r.Columns {
		left, right := r.Ladders[i].X+r.Len("leg.thickness"), r.Ladders[i+1].X
		if 2*(d.Value-r.Len("overhang.side")) == left+right || 4*d.Value-2*(left+right) == t.Block.X || 2*(left+right)-4*d.Value == t.Block.X {
			return true
		}
	}
	return false
}

// longest is how far the longest bottle stands out beyond the front aprons, and
// that with the depth behind: found from the bottle's base, at the back of the
// carcase.
func longest(r *rack.Rack) (out, deep length) {
	tall := length(0)
	for _, k := range r.Kinds {
		for _, row := range k.Fit {
			for _, b := range row {
				tall = max(tall, b.Height.Max)
			}
		}
	}
	out, deep = tall-r.Len("slat.length")-2*r.Len("apron.thickness"), tall
	if r.HasTop() {
		deep += r.Len("overhang.back")
	}
	return out, deep
}

// clearance reports whether a figure is one of a section's clearances.
func clearance(s *drawing.Sheet, d drawing.DimRecord) bool {
	return strings.Contains(s.Name, "section") && d.Role == drawing.Check && d.Chain == 0
}

// real is a length as a number for a computation in floating point of 200 bits.
func real(l length) *big.Float { return new(big.Float).SetPrec(200).SetInt64(int64(l)) }

// leg2 is sqrt(a² - b²), and hyp sqrt(a² + b²).
func leg2(a, b *big.Float) *big.Float { return root(a, b, -1) }
func hyp(a, b *big.Float) *big.Float  { return root(a, b, 1) }

func root(a, b *big.Float, sign int64) *big.Float {
	x, y := real(0).Mul(a, a), real(0).Mul(b, b)
	return x.Sqrt(x.Add(x, y.Mul(y, real(length(sign)))))
}

// lying is where the lowest and the highest point of a bottle of a diameter are
// over the slat tops, and its axis.
func lying(r *rack.Rack, gap, d length) (low, axis, high *big.Float) {
	e := real(r.Len("slat.eased"))
	half, g := real(0).Quo(real(d), real(2)), real(0).Quo(real(gap), real(2))
	axis = leg2(real(0).Add(half, e), g.Add(g, e))
	axis.Sub(axis, e)
	return real(0).Sub(axis, half), axis, real(0).Add(axis, half)
}

// spans are the least and the largest diameter of a row.
func spans(k rack.Kind, row int) (small, large length) {
	small = k.Fit[row][0].Diameter.Min
	for _, b := range k.Fit[row] {
		small, large = min(small, b.Diameter.Min), max(large, b.Diameter.Max)
	}
	return small, large
}

// wanted are the clearances that the sections of a kind of column must show.
func wanted(r *rack.Rack, k rack.Kind) map[string]*big.Float {
	small, large := spans(k, 0)
	lowSmall, _, _ := lying(r, k.Gap, small)
	lowLarge, axis, high := lying(r, k.Gap, large)
	first := real(k.Under[0] + r.Len("slat.height") - r.Len("apron.lift") - r.Len("apron.height"))
	out := map[string]*big.Float{
		"sag, smallest": real(0).Neg(lowSmall), "sag, largest": real(0).Neg(lowLarge),
		"lower apron": first.Add(first, lowSmall),
		"side":        real(0).Quo(real(k.Channel-large), real(2)),
	}
	_, last := spans(k, k.Rows-1)
	_, _, lastHigh := lying(r, k.Gap, last)
	room := real(r.Len("leg.length") - r.Len("apron.height") - k.Under[k.Rows-1] - r.Len("slat.height"))
	out["upper apron"] = room.Sub(room, lastHigh)
	if k.Rows > 1 {
		next, _ := spans(k, 1)
		nextLow, _, _ := lying(r, k.Gap, next)
		way := real(k.Rises[0])
		out["above"] = way.Add(way, nextLow).Sub(way, high)
		up := real(k.Rises[0] - r.Len("slat.height"))
		corner := hyp(real(0).Quo(real(k.Gap), real(2)), up.Sub(up, axis))
		out["corner"] = corner.Sub(corner, real(0).Quo(real(large), real(2)))
	}
	return out
}

// The sections show every clearance of every kind of column, each as a
// computation that shares nothing with the sheets has it, to two base units.
func TestClearances(t *testing.T) {
	for name, r := range demos(t) {
		var shown []drawing.DimRecord
		for _, s := range packet(t, r) {
			for _, d := range s.Dims {
				if clearance(s, d) {
					shown = append(shown, d)
				}
			}
		}
		total := 0
		for _, k := range r.Kinds {
			for what, v := range wanted(r, k) {
				total++
				want, _ := v.Int64()
				if !slices.ContainsFunc(shown, func(d drawing.DimRecord) bool { return (d.Value - length(want)).Abs() <= 2 }) {
					t.Errorf("%s: no section shows %s, %v", name, what, length(want))
				}
			}
		}
		if total != len(shown) {
			t.Errorf("%s: %d clearances shown, want %d", name, len(shown), total)
		}
	}
}

// A figure that is falsified no longer is the sum it says it is.
func TestFalsifiedFigureIsNoSum(t *testing.T) {
	r := demos(t)["harbour-small.toml"]
	for _, s := range packet(t, r) {
		for _, d := range s.Dims {
			if len(d.Sum) > 0 && d.Sum.Value(func(n string) length { return r.Len(n) + 1 }) == d.Value && len(d.Sum) == 1 {
				t.Errorf("%s: %s would pass with a wrong length", s.Name, d.Printed)
			}
		}
	}
}

// tape is the diagonal of a rectangle by another way: a binary floating-point
// root of 200 bits, rounded to what a tape shows.
func tape(f unit.Format, a, b length) (text string) {
	square := func(l length) *big.Float {
		x := new(big.Float).SetPrec(200).SetInt64(int64(l))
		return x.Mul(x, x)
	}
	root := new(big.Float).SetPrec(200)
	root.Sqrt(root.Add(square(a), square(b)))
	step := int64(unit.Inch / 32)
	if f.System == unit.Metric {
		step = int64(unit.Millimetre)
	}
	half := new(big.Float).SetPrec(200).Quo(root, new(big.Float).SetInt64(step))
	n, _ := half.Add(half, big.NewFloat(0.5)).Int64()
	text = unit.Format{System: f.System, Finest: length(step)}.Text(length(n * step))
	if new(big.Float).SetInt64(n*step).Cmp(root) != 0 {
		text = unit.About + text
	}
	return text
}

// The diagonals of carcase and ladders are those of their solved lengths.
func TestDiagonals(t *testing.T) {
	for name, r := range demos(t) {
		want := map[string]string{
			"carcase": tape(r.Format, r.Len("carcase.width"), r.Len("leg.length")),
			"ladder":  tape(r.Format, r.Len("slat.length"), r.Len("leg.length")),
		}
		for _, s := range packet(t, r) {
			for kind, text := range want {
				if !strings.Contains(s.Name, kind) {
					continue
				}
				found := false
				for _, d := range s.Dims {
					found = found || d.Role == drawing.Note && d.Printed == text
				}
				if !found || !strings.Contains(textOf(s), strings.ReplaceAll(text, " ", "")) {
					t.Errorf("%s, %s: no diagonal of %s", name, s.Name, text)
				}
			}
		}
	}
}

// textOf is all lettering of a sheet without its spaces.
func textOf(s *drawing.Sheet) string {
	var b strings.Builder
	for _, m := range s.Marks {
		if x, ok := m.(drawing.Text); ok {
			b.WriteString(strings.ReplaceAll(x.String(), " ", ""))
		}
	}
	return b.String()
}

// Nails from the two faces of an inner ladder do not meet in the leg: seen along
// them they are at least 5 mm apart, in every demo design.
func TestNailsOfTwoFacesKeepApart(t *testing.T) {
	for name, r := range demos(t) {
		met := 0
		for _, p := range r.Pieces {
			if r.Parts[p.Part].Name != "leg" || r.Shapes[r.Ladders[p.Ladder].Shape].Role != rack.Inner {
				continue
			}
			var near, far []space.Point // nails through the face at lower and at higher x
			for _, c := range p.Fixed {
				if c.Axis != space.X {
					continue
				}
				// As the ladder sheets have it: the right face takes the other diagonal.
				places := r.NailPlaces(c.Patch, c.Axis, c.Far)
				if c.Far {
					far = append(far, places...)
				} else {
					near = append(near, places...)
				}
			}
			for _, a := range near {
				for _, b := range far {
					met++
					dy, dz := (a.Y - b.Y).Abs(), (a.Z - b.Z).Abs()
					if max(dy, dz) < 5*unit.Millimetre {
						t.Errorf("%s, %s: nails %v and %v are less than 5 mm apart", name, p.Name, a, b)
					}
				}
			}
		}
		if met == 0 {
			t.Errorf("%s: no nails compared", name)
		}
	}
}
