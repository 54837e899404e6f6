package drawing

// Sizes of the ends of lines. An arrowhead is three times as long as wide and
// 3 mm long (ASME Y14.5 and Y14.2 as taught; read in excerpts and lecture
// notes); an oblique stroke spans 3 mm (read in a drawing course); a dot that
// ends a leader, and the origin circle of running dimensions: our own.
const (
	ArrowLength = 3 * MM
	ArrowWidth  = 1 * MM
	DotRadius   = MM / 2
	OriginR     = 3 * MM / 2
)

// Arrow returns a filled arrowhead with its point at tip, on a line that comes
// from the point from, whatever the distance. It panics where both coincide.
func Arrow(group int, tip, from Point) Path {
	return Polygon(Solid, group, Black, tip,
		along(tip, from, ArrowLength, ArrowWidth/2),
		along(tip, from, ArrowLength, -ArrowWidth/2))
}

// Dot returns the dot that ends a leader on a surface, or takes the place of
// arrowheads where there is no room.
func Dot(group int, at Point) Circle { return Disc(Solid, group, Black, at, DotRadius) }

// OriginMark returns the circle at the origin of running dimensions.
func OriginMark(group int, at Point) Circle {
	return Disc(Dimension, group, White, at, OriginR)
}

// Cross returns a register cross: two strokes of the given length through at.
func Cross(c Class, group int, at Point, length Um) []Mark {
	h := length / 2
	return []Mark{
		Line(c, group, Pt(at.X-h, at.Y), Pt(at.X+h, at.Y)),
		Line(c, group, Pt(at.X, at.Y-h), Pt(at.X, at.Y+h)),
	}
}

// BreakLine returns the line with a zigzag in its middle that breaks off a
// view, from a to b. It panics where they coincide.
func BreakLine(group int, a, b Point) Path {
	const reach = 2 * MM // of the zigzag to either side, and half its length along
	d := b.Sub(a)
	mid := Pt(a.X+d.X/2, a.Y+d.Y/2)
	if d.X.Abs()+d.Y.Abs() <= 3*reach { // no room for the zigzag
		return Line(Break, group, a, b)
	}
	return Polyline(Break, group, a,
		along(mid, b, -reach/2, 0), along(mid, b, -reach/4, reach),
		along(mid, b, reach/4, -reach), along(mid, b, reach/2, 0), b)
}

// Hatching says how a cut surface is hatched.
type Hatching struct {
	Pitch   Um   // between lines, measured along the sheet's sides; 0 is 2 mm
	Falling bool // lines fall to the right instead of rising, to set off a neighbour
	Offset  Um   // moves the lines along, so that neighbours of one direction differ
}

// Hatch returns lines at 45 degrees across r. Where lines stand depends on the
// sheet and not on r, so that two boxes of one part are hatched as one.
func (h Hatching) Hatch(group int, r Rect) []Mark {
	pitch := h.Pitch
	if pitch <= 0 {
		pitch = 2 * MM
	}
	var marks []Mark
	// A rising line is x + y = k; a falling one is x - y = k.
	lo, hi := r.Min.X+r.Min.Y, r.Max.X+r.Max.Y
	if h.Falling {
		lo, hi = r.Min.X-r.Max.Y, r.Max.X-r.Min.Y
	}
	for k := ceilTo(lo-h.Offset, pitch) + h.Offset; k < hi; k += pitch {
		a, b := hatchLine(r, k, h.Falling)
		if a != b {
			marks = append(marks, Line(Hatch, group, a, b))
		}
	}
	return marks
}

// hatchLine returns the ends of the line k within r, exactly.
func hatchLine(r Rect, k Um, falling bool) (a, b Point) {
	if falling { // y = x - k
		x0, x1 := max(r.Min.X, r.Min.Y+k), min(r.Max.X, r.Max.Y+k)
		return Pt(x0, x0-k), Pt(x1, x1-k)
	}
	x0, x1 := max(r.Min.X, k-r.Max.Y), min(r.Max.X, k-r.Min.Y) // y = k - x
	return Pt(x0, k-x0), Pt(x1, k-x1)
}

// ceilTo returns the least multiple of step that is not below n.
func ceilTo(n, step Um) Um {
	q := n / step
	if n%step > 0 {
		q++
	}
	return q * step
}
