package assembly

import (
	"slices"

	"slatwright/geometry/rack"
	"slatwright/specs/unit"
)

// A Face is a face of ladders that is fitted with slats in one go. An end ladder
// has one, an inner ladder two: when its left face holds, the ladder is turned
// over on packers as thick as a slat and gets those of its right face.
type Face struct {
	Ladders []int         // that have it, from 1, ascending
	Right   bool          // the one towards the right end, else that towards the left
	Inner   bool          // of ladders that have slats on the other face too
	Second  bool          // when the other face is done
	Slats   []unit.Length // undersides above the foot, ascending
	X       unit.Length   // left face of the legs of the first of the ladders

	mixed bool // it stands for only faces and first ones
}

// Turn says in words which face of a ladder it is.
func (f Face) Turn() string {
	switch {
	case f.Second:
		return "right face, after turning"
	case f.mixed:
		return "the first or only face"
	case f.Inner:
		return "left face, first"
	}
	return "the only face"
}

// Faces returns the faces in the order of work: the first of every ladder, then
// the second ones; those of ladders of one shape together.
func Faces(r *rack.Rack) []Face {
	var first, second []Face
	for i, s := range r.Shapes {
		at := r.LaddersOf(i)
		f := Face{Ladders: at, Inner: s.Role == rack.Inner, X: r.Ladders[at[0]-1].X}
		if len(s.Left) > 0 {
			f.Slats = s.Left
			first = append(first, f)
		}
		if len(s.Right) > 0 {
			f.Slats, f.Right, f.Second = s.Right, true, len(s.Left) > 0
			if f.Second {
				second = append(second, f)
			} else {
				first = append(first, f)
			}
		}
	}
	return append(first, second...)
}

// glueUps is how many faces of ladders are glued up one after another: the first
// ones, and the second ones.
func glueUps(r *rack.Rack) (first, second int) {
	for _, f := range Faces(r) {
		if f.Second {
			second += len(f.Ladders)
		} else {
			first += len(f.Ladders)
		}
	}
	return first, second
}

// Packers is how many packers lie under a ladder whose second face is fitted, at
// most: a pair at each of PackerPlaces. 0 where no ladder is turned.
func Packers(r *rack.Rack) int {
	most := 0
	for i := range r.Shapes {
		most = max(most, 2*len(PackerPlaces(r, i)))
	}
	return most
}

// PackerPlaces returns where packers lie under the legs of a ladder of a shape
// while its second face is fitted: their edges nearer the foot, above it,
// ascending. They are as thick and as wide as a slat and lie as the slats do, so
// that the ladder lies level on them and on the slats of its first face: at the
// foot, at the top, and under every slat that has none below it, or beside the
// one that is half below it; none where slats of the first face leave no room.
// A ladder that is not turned has none.
func PackerPlaces(r *rack.Rack, shape int) (out []unit.Length) {
	s, wide := r.Shapes[shape], r.Len("slat.height")
	if s.Role != rack.Inner {
		return nil
	}
	near := func(list []unit.Length, z, apart unit.Length) int {
		return slices.IndexFunc(list, func(l unit.Length) bool { return (z - l).Abs() < apart })
	}
	put := func(z unit.Length) {
		if z >= 0 && z+wide <= r.Len("leg.length") && near(s.Left, z, wide) < 0 && near(out, z, wide) < 0 {
			out = append(out, z)
		}
	}
	put(0)
	put(r.Len("leg.length") - wide)
	for _, z := range s.Right {
		switch k := near(s.Left, z, wide); {
		case k < 0:
			put(z)
		case (z - s.Left[k]).Abs() <= wide/2: // that slat bears it
		case z < s.Left[k]:
			put(s.Left[k] - wide)
		default:
			put(s.Left[k] + wide)
		}
	}
	slices.Sort(out)
	return out
}
