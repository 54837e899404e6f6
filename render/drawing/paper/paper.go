// Package paper holds lengths, points and boxes on a sheet of paper, in whole
// micrometres. Nothing goes in from elsewhere; the packages that draw, and the
// one that lays out lettering, build on it. A micrometre on paper is not a
// length of the model: that one is unit.Length, and the step from one to the
// other is taken once, by whoever sets a view on its sheet.
package paper

// Um is a length on paper in whole micrometres.
type Um int64

// MM is one millimetre on paper.
const MM Um = 1000

// MM returns the length in millimetres, for the writers and for trigonometry.
func (u Um) MM() float64 { return float64(u) / float64(MM) }

// Abs returns the length without its sign.
func (u Um) Abs() Um {
	if u < 0 {
		return -u
	}
	return u
}

// Point is a place on a sheet: X to the right and Y down from the top left
// corner of the trimmed sheet.
type Point struct{ X, Y Um }

// Pt returns the point at x, y.
func Pt(x, y Um) Point { return Point{X: x, Y: y} }

// Add returns p moved by q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns the step from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// In reports whether p lies in r, its edges included.
func (p Point) In(r Rect) bool {
	return r.Min.X <= p.X && p.X <= r.Max.X && r.Min.Y <= p.Y && p.Y <= r.Max.Y
}

// Rect is a box with its sides along the sheet's: Min is its top left corner,
// Max its bottom right one. A box may be empty of width or height or both.
type Rect struct{ Min, Max Point }

// Box returns the box with its top left corner at x, y, w wide and h high.
func Box(x, y, w, h Um) Rect { return Rect{Pt(x, y), Pt(x+w, y+h)} }

// Around returns the least box that holds every given point. It panics
// without a point, since no box holds nothing.
func Around(pts ...Point) Rect {
	r := Rect{pts[0], pts[0]}
	for _, p := range pts[1:] {
		r = r.Join(Rect{p, p})
	}
	return r
}

// W returns the width of the box, H its height.
func (r Rect) W() Um { return r.Max.X - r.Min.X }

// H returns the height of the box.
func (r Rect) H() Um { return r.Max.Y - r.Min.Y }

// Centre returns the middle of the box, rounded toward its top left.
func (r Rect) Centre() Point { return Pt(r.Min.X+r.W()/2, r.Min.Y+r.H()/2) }

// Move returns the box moved by d.
func (r Rect) Move(d Point) Rect { return Rect{r.Min.Add(d), r.Max.Add(d)} }

// Inset returns the box with every side moved inward by d, or outward where d
// is negative.
func (r Rect) Inset(d Um) Rect {
	return Rect{Pt(r.Min.X+d, r.Min.Y+d), Pt(r.Max.X-d, r.Max.Y-d)}
}

// Join returns the least box that holds both boxes.
func (r Rect) Join(s Rect) Rect {
	return Rect{
		Pt(min(r.Min.X, s.Min.X), min(r.Min.Y, s.Min.Y)),
		Pt(max(r.Max.X, s.Max.X), max(r.Max.Y, s.Max.Y)),
	}
}

// Holds reports whether s lies wholly in r, edges included.
func (r Rect) Holds(s Rect) bool { return s.Min.In(r) && s.Max.In(r) }

// Meets reports whether the insides of the two boxes share a point; boxes that
// only touch along an edge do not meet.
func (r Rect) Meets(s Rect) bool {
	return r.Min.X < s.Max.X && s.Min.X < r.Max.X && r.Min.Y < s.Max.Y && s.Min.Y < r.Max.Y
}
