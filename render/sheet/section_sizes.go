package sheet

import (
	"math/big"
	"slices"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/render/dim"
	"slatwright/render/drawing"
)

// measure puts on sizes across and upwards, and beside the cut how the bottles
// lie and what is left round them.
func (c cut) measure(e *elevation) {
	if c.sizes {
		c.widths(e)
	}
	rows := len(c.r.Kinds[c.kind].Under)
	c.heights(e, rows)
	// From above down, as their figures stand beside the cut.
	if c.toTop() {
		c.upperApron(e, rows-1)
	}
	if c.rowShown(0) {
		if rows > 1 && c.rowShown(1) {
			c.above(e)
			c.corner(e)
		}
		c.side(e)
		c.sags(e)
		c.lowerApron(e)
	}
}

// widths puts on leg, slats and gap, the channel and the whole.
func (c cut) widths(e *elevation) {
	x := func(names ...string) dim.Stop { return e.x(coordOf(c.r, names...), dim.Below) }
	channel := kindName(c.r, c.kind, "channel")
	left, right := x("leg.thickness"), x("leg.thickness", channel)
	all := []dim.Stop{x(), left, x("leg.thickness", "slat.thickness"), x("leg.thickness", channel, "-slat.thickness"), right,
		x("leg.thickness", channel, "leg.thickness")}
	e.dim.Chain(dim.Below, all, dim.Options{})
	e.dim.Chain(dim.Below, []dim.Stop{left, right}, dim.Options{})
	e.dim.Overall(dim.Below, all[0], all[5], dim.Options{})
}

// heights puts on slats, rises and what is between the highest slats and the
// upper aprons.
func (c cut) heights(e *elevation, rows int) {
	under := undersides(c.r, c.kind)
	z := func(x coord) dim.Stop { return e.z(x, dim.LeftOf) }
	var rises []dim.Stop
	if c.lo == 0 {
		rises = append(rises, z(coord{}))
	}
	for row, u := range under {
		if c.rowShown(row) {
			rises = append(rises, z(u))
		}
	}
	if c.toTop() {
		top := under[rows-1].plus(c.r, "slat.height")
		leg := coordOf(c.r, "leg.length")
		rises = append(rises, z(top), z(leg.plus(c.r, "-apron.height")), z(leg), z(coordOf(c.r, "rack.height")))
	}
	if c.rowShown(0) && rows > 1 {
		one := []dim.Stop{z(under[0].plus(c.r, "slat.height")), z(under[0])}
		e.dim.Chain(dim.LeftOf, one, dim.Options{})
	}
	rises = ascending(rises...)
	slices.Reverse(rises) // from the top of the sheet down
	if len(rises) > 1 {
		e.dim.Chain(dim.LeftOf, rises, dim.Options{})
	}
}

// A lying is how a bottle of a diameter lies on the slats of a row: the heights
// of its lowest point, its axis and its highest point; ok is false where it falls
// through, as the check says.
type lying struct {
	low, axis, high length
	ok              bool
}

func (c cut) lies(row int, d length) lying {
	h, ok := rack.AxisAbove(d, c.r.Kinds[c.kind].Gap, c.r.Len("slat.eased"))
	axis := c.slatTop(row) + h
	return lying{axis - d/2, axis, axis + d/2, ok}
}

// extremes of a row of the cut.
func (c cut) extremes(row int) (large, small length) {
	return extremes(c.r.Kinds[c.kind].Fit[row])
}

// beside is a place in the gap, a number of hundredths of it from the middle.
func (c cut) beside(hundredths length) length {
	return c.centre() + c.r.Kinds[c.kind].Gap*hundredths/100
}

// upright calls out a distance straight up at x, where it is more than nought.
func (c cut) upright(e *elevation, word string, x, from, to length, leaves dim.Leaves) {
	if to <= from {
		return // the check says what is wrong
	}
	e.dim.Callout(dim.Callout{
		From: e.v.point(space.Point{X: x, Z: from}), To: e.v.point(space.Point{X: x, Z: to}), Value: to - from, Word: word, Leaves: leaves,
	})
}

// level draws a thin line across at a height, from one x to another, for a
// distance to end on.
func (c cut) level(e *elevation, z, from, to length) {
	e.p.sheet.Add(drawing.Line(drawing.Extension, 0, e.v.point(space.Point{X: from, Z: z}), e.v.point(space.Point{X: to, Z: z})))
}

// sags calls out how far the largest and the smallest bottle hang below the
// slat tops.
func (c cut) sags(e *elevation) {
	large, small := c.extremes(0)
	top := c.slatTop(0)
	c.level(e, top, c.beside(-50), c.beside(50))
	one := func(word string, d, at length, leaves dim.Leaves) {
		if b := c.lies(0, d); b.ok && b.low < top {
			c.level(e, b.low, c.centre(), c.beside(at+7))
			c.upright(e, word, c.beside(at), b.low, top, leaves)
		}
	}
	if large == small {
		one("sag", large, 30, dim.Upwards)
		return
	}
	// From the right: each leader then passes clear of the distances beside it.
	one("sag, largest", large, 34, dim.Upwards)
	one("sag, smallest", small, 10, dim.Downwards)
}

// lowerApron calls out what is between the lowest bottle and the lower aprons.
func (c cut) lowerApron(e *elevation) {
	_, small := c.extremes(0)
	if b := c.lies(0, small); b.ok {
		c.level(e, b.low, c.beside(-25), c.centre())
		c.upright(e, "lower apron", c.beside(-18), c.r.Len("apron.lift")+c.r.Len("apron.height"), b.low, dim.Downwards)
	}
}

// upperApron calls out what is between the highest bottle and the upper aprons.
func (c cut) upperApron(e *elevation, row int) {
	large, _ := c.extremes(row)
	if b := c.lies(row, large); b.ok {
		c.upright(e, "upper apron", c.centre(), b.high, c.r.Len("leg.length")-c.r.Len("apron.height"), dim.Upwards)
	}
}

// side calls out what is between the largest bottle and the leg.
func (c cut) side(e *elevation) {
	large, _ := c.extremes(0)
	b := c.lies(0, large)
	if x := c.centre() + large/2; b.ok && x < c.right() {
		e.dim.Callout(dim.Callout{
			From: e.v.point(space.Point{X: x, Z: b.axis}), To: e.v.point(space.Point{X: c.right(), Z: b.axis}),
			Value: c.right() - x, Word: "side",
		})
	}
}

// above calls out what is between the largest bottle of the lowest row and the
// smallest above it, which hangs lowest.
func (c cut) above(e *elevation) {
	large, _ := c.extremes(0)
	_, small := c.extremes(1)
	if lower, upper := c.lies(0, large), c.lies(1, small); lower.ok && upper.ok {
		c.upright(e, "above", c.centre(), lower.high, upper.low, dim.Upwards)
	}
}

// corner calls out what is between the largest bottle and the inner lower corner
// of a slat above it.
func (c cut) corner(e *elevation) {
	large, _ := c.extremes(0)
	b := c.lies(0, large)
	dx, dz := c.r.Kinds[c.kind].Gap/2, c.r.Kinds[c.kind].Under[1]-b.axis
	far := hypotenuse(dx, dz)
	if !b.ok || far <= large/2 {
		return
	}
	// The bottle's point towards the corner divides the way as r does far.
	near := func(d length) length { return scaled(d, large/2, far) }
	e.dim.Callout(dim.Callout{
		From:  e.v.point(space.Point{X: c.centre() + near(dx), Z: b.axis + near(dz)}),
		To:    e.v.point(space.Point{X: c.centre() + dx, Z: b.axis + dz}),
		Value: far - large/2, Word: "corner",
	})
}

// hypotenuse returns sqrt(a² + b²), rounded down.
func hypotenuse(a, b length) length {
	x, y := big.NewInt(int64(a)), big.NewInt(int64(b))
	sum := x.Mul(x, x).Add(x, y.Mul(y, y))
	return length(sum.Sqrt(sum).Int64())
}

// scaled returns l times num over den, rounded towards nought.
func scaled(l, num, den length) length {
	x := big.NewInt(int64(l))
	x.Mul(x, big.NewInt(int64(num)))
	return length(x.Quo(x, big.NewInt(int64(den))).Int64())
}
