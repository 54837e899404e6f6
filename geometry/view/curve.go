package view

import "math"

// form is what a curve is made of.
type form uint8

const (
	rule  form = iota // straight along an axis, with whole ends
	slant             // any other straight stretch
	arc               // a circle in a plane of one y
)

// turn is a whole circle, as the parameter of arcs counts it.
const turn = int64(1) << 48

// span is a stretch of a curve's parameter.
type span struct{ t0, t1 int64 }

// curve is a line of a solid before anything hides it. Its parameter runs from 0
// to whole: along a rule or a slant in units of 1/k base unit, around an arc in
// parts of a turn, from the mirrored x axis to the mirrored z axis.
type curve struct {
	id    int
	kind  Kind
	form  form
	axis  int   // of a rule or of a slant that runs along an axis
	self  int   // place of its solid, or -1
	at    vec   // a rule's lesser end, an arc's centre, of a cylinder's outline the axis beside its lesser end
	size  int64 // length along the axis, or an arc's radius
	ends  [2]vecf
	whole int64
	far   int64  // no point of the curve is farther from the eye
	own   []span // hidden by the curve's own solid
	key   key

	skipped bool // shows nowhere but on nearer curves
}

// key tells where a curve lies in the picture; curves on one line or one circle
// have equal keys.
type key [7]int64

// straight reports whether c runs along an axis of the room.
func (c *curve) straight() bool { return c.form == rule || (c.form == slant && c.size > 0) }

// build returns the solids and the curves of s in its order.
func (f *frame) build(s Scene) ([]solid, []curve) {
	solids := make([]solid, 0, len(s.Boxes)+len(s.Rounds))
	curves := make([]curve, 0, 12*len(s.Boxes)+4*len(s.Rounds)+len(s.Trails))
	for i, b := range s.Boxes {
		if b.Box.Empty() {
			continue
		}
		lo, hi := f.inBox(b.Box)
		solids = append(solids, f.boxSolid(i, lo, hi))
		curves = f.boxCurves(curves, b.ID, i, lo, hi)
	}
	for i, r := range s.Rounds {
		if r.empty() {
			continue
		}
		o, place := f.inRound(r), len(s.Boxes)+i
		solids = append(solids, f.roundSolid(place, o))
		if f.m == 1 {
			curves = f.discCurves(curves, r.ID, place, o)
		} else {
			curves = f.barCurves(curves, r.ID, place, o)
		}
	}
	for i, t := range s.Trails {
		curves = f.trailCurve(curves, i, t)
	}
	return solids, curves
}

// addRule appends the straight stretch from at, size long, along axis d. One
// that shows as a point is left out.
func (f *frame) addRule(to []curve, c curve, at vec, d int, size int64) []curve {
	if size == 0 || !f.showsAs(d) {
		return to
	}
	c.form, c.axis, c.at, c.size = rule, d, at, size
	c.whole, c.far = size*f.k, f.depth(at)
	gx, gy := f.heading(d)
	x, y := f.plane(at)
	c.key = key{0, gx, gy, gx*y - gy*x}
	return append(to, c)
}

// heading returns the least whole vector along which lines on axis d run in the
// picture plane, x or else y positive.
func (f *frame) heading(d int) (int64, int64) {
	x, y := f.plane(unitVec(d))
	g := gcd(x, y)
	if x < 0 || (x == 0 && y < 0) {
		g = -g
	}
	return x / g, y / g
}

func unitVec(d int) vec {
	var u vec
	u[d] = 1
	return u
}

// boxCurves appends the edges of the box lo..hi. An edge that shows on a nearer
// edge of its own box is left out: whatever hides that one hides it too.
func (f *frame) boxCurves(to []curve, id, place int, lo, hi vec) []curve {
	for d := range 3 {
		i, j := (d+1)%3, (d+2)%3
		for n := range 4 {
			at := lo
			atLo, ofLo := n&1 == 0, n&2 == 0
			if !atLo {
				at[i] = hi[i]
			}
			if !ofLo {
				at[j] = hi[j]
			}
			if (f.v[j] == 0 && f.v[i] != 0 && atLo) || (f.v[i] == 0 && f.v[j] != 0 && ofLo) {
				continue
			}
			size := hi[d] - lo[d]
			c := curve{id: id, kind: Edge, self: place}
			if f.v[i] != 0 && f.v[j] != 0 && atLo && ofLo {
				c.own = []span{{0, size * f.k}}
			}
			to = f.addRule(to, c, at, d, size)
		}
	}
	return to
}

// barCurves appends the lines of a round seen square to its axis: the ends as
// straight lines and the outline on both sides.
func (f *frame) barCurves(to []curve, id, place int, o *rounded) []curve {
	across := 2 // the axis on which the radius shows
	if f.m == 2 {
		across = 0
	}
	at := func(y, r int64) vec {
		p := vec{o.x, y, o.z}
		p[across] += r
		return p
	}
	c := curve{id: id, kind: Cap, self: place}
	to = f.addRule(to, c, at(o.y0, -o.r0), across, 2*o.r0)
	to = f.addRule(to, c, at(o.y1, -o.r1), across, 2*o.r1)
	c.kind = Outline
	for _, side := range [...]int64{-1, 1} {
		if o.r0 == o.r1 {
			to = f.addRule(to, c, at(o.y0, side*o.r0), 1, o.y1-o.y0)
			continue
		}
		to = f.addSlant(to, c, at(o.y0, side*o.r0).float(), at(o.y1, side*o.r1).float(), f.outlineKey(o, side))
	}
	return to
}

// outlineKey tells apart outlines of frusta that do not show on one another.
// Those of two frusta that are not the same but lie in one line, as only chance
// can put them, may overlap in part and are then both drawn.
func (f *frame) outlineKey(o *rounded, side int64) key {
	x0, y0 := f.plane(vec{o.x, o.y0, o.z})
	x1, y1 := f.plane(vec{o.x, o.y1, o.z})
	return key{1 + (side+1)/2, x0, y0, x1, y1, o.r0, o.r1}
}

// discCurves appends the lines of a round whose ends show as circles: the near
// rim, the far rim, of which the part between the outlines on the near side is
// behind the round itself, and the two outlines.
func (f *frame) discCurves(to []curve, id, place int, o *rounded) []curve {
	c := curve{id: id, kind: Cap, self: place}
	to = f.addArc(to, c, vec{o.x, o.y1, o.z}, o.r1)
	switch {
	case len(o.tangents) == 2:
		c.own = between(turnOf(o.tangents[1]), turnOf(o.tangents[0]))
	case o.r1 > o.r0:
		c.own = []span{{0, turn}}
	}
	to = f.addArc(to, c, vec{o.x, o.y0, o.z}, o.r0)
	c.kind, c.own = Outline, nil
	for i, n := range o.tangents {
		if o.r0 == o.r1 && (f.v[0] == 0 || f.v[2] == 0) {
			at := vec{o.x + int64(math.Round(n.x))*o.r0, o.y0, o.z + int64(math.Round(n.y))*o.r0}
			to = f.addRule(to, c, at, 1, o.y1-o.y0)
			continue
		}
		p, q, k := rim(o.x, o.y0, o.z, o.r0, n), rim(o.x, o.y1, o.z, o.r1, n), f.outlineKey(o, int64(2*i-1))
		if o.r0 == o.r1 {
			to = f.addParallel(to, c, o, p, q, k[0])
			continue
		}
		to = f.addSlant(to, c, p, q, k)
	}
	return to
}

// rim returns the point of a circle in the plane of y in the direction n.
func rim(x, y, z, r int64, n spot) vecf {
	return vecf{float64(x) + float64(float64(r)*n.x), float64(y), float64(z) + float64(float64(r)*n.y)}
}

// turnOf returns the parameter of an arc at the direction n.
func turnOf(n spot) int64 {
	t := math.Atan2(n.y, n.x) / (2 * math.Pi)
	return int64(math.Round(t*float64(turn))) & (turn - 1)
}

// between returns the stretch of an arc counterclockwise from t0 to t1, in two
// parts if it passes the end of the turn.
func between(t0, t1 int64) []span {
	if t0 <= t1 {
		return []span{{t0, t1}}
	}
	return []span{{0, t1}, {t0, turn}}
}

func (f *frame) addArc(to []curve, c curve, centre vec, radius int64) []curve {
	if radius == 0 {
		return to
	}
	c.form, c.at, c.size, c.whole = arc, centre, radius, turn
	c.far = f.depth(centre) - radius*(f.v[0]+f.v[2])
	x, y := f.plane(centre)
	c.key = key{3, x, y, radius}
	return append(to, c)
}

func (f *frame) addSlant(to []curve, c curve, from, end vecf, k key) []curve {
	long := math.Sqrt(squared(end[0]-from[0]) + squared(end[1]-from[1]) + squared(end[2]-from[2]))
	c.form, c.ends, c.key = slant, [2]vecf{from, end}, k
	c.whole = int64(math.Ceil(long * float64(f.k)))
	c.far = min(f.floor(from), f.floor(end))
	return append(to, c)
}

// addParallel appends an outline of a cylinder. Outlines of equal cylinders lie
// on one line in the picture where the axes do, which whole numbers tell.
func (f *frame) addParallel(to []curve, c curve, o *rounded, from, end vecf, side int64) []curve {
	to = f.addSlant(to, c, from, end, key{})
	p := &to[len(to)-1]
	p.axis, p.at, p.size, p.whole = 1, vec{o.x, o.y0, o.z}, o.y1-o.y0, (o.y1-o.y0)*f.k
	gx, gy := f.heading(1)
	x, y := f.plane(p.at)
	p.key = key{4 + side, gx*y - gy*x, o.r0}
	return to
}

func squared(x float64) float64 { return float64(x * x) }

// floor returns a whole depth no greater than p's.
func (f *frame) floor(p vecf) int64 {
	return f.depth(vec{int64(math.Floor(p[0])), int64(math.Floor(p[1])), int64(math.Floor(p[2]))})
}

// trailCurve appends a trail; one that shows as a point is left out.
func (f *frame) trailCurve(to []curve, i int, t Trail) []curve {
	p, q := f.in(t.From), f.in(t.To)
	c := curve{id: t.ID, kind: Way, self: -1}
	differ := -1
	for d := range 3 {
		if p[d] == q[d] {
			continue
		}
		if differ >= 0 {
			px, py := f.plane(p)
			qx, qy := f.plane(q)
			if px == qx && py == qy {
				return to
			}
			return f.addSlant(to, c, p.float(), q.float(), key{4, int64(i)})
		}
		differ = d
	}
	if differ < 0 {
		return to
	}
	if p[differ] > q[differ] {
		p, q = q, p
	}
	return f.addRule(to, c, p, differ, q[differ]-p[differ])
}

// place returns the point of c at the fraction t of its parameter.
func (c *curve) place(t float64) vecf {
	switch c.form {
	case rule:
		p := c.at.float()
		p[c.axis] += float64(t * float64(c.size))
		return p
	case slant:
		var p vecf
		for i := range p {
			p[i] = c.ends[0][i] + float64(t*(c.ends[1][i]-c.ends[0][i]))
		}
		return p
	default:
		sin, cos := math.Sincos(2 * math.Pi * t)
		return rim(c.at[0], c.at[1], c.at[2], c.size, spot{cos, sin})
	}
}
