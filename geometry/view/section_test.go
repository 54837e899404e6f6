package view

import (
	"testing"

	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

func TestCutAcross(t *testing.T) {
	s := wall(3, 4)
	at := 100 * unit.Millimetre
	c := Cut(s, space.Y, at, Front)
	slats, discs, tops := 0, 0, 0
	for _, f := range c.Faces {
		switch size := f.Flat.Size(); {
		case size.Y != 0 || f.Flat.Min.Y != at:
			t.Errorf("face %+v is not in the plane", f)
		case f.Disc && f.Radius == 37*unit.Millimetre:
			discs++
		case size.X == 20*unit.Millimetre && size.Z == 25*unit.Millimetre:
			slats++
		default:
			tops++
		}
	}
	if slats != 24 || discs != 12 || tops != 1 {
		t.Errorf("cut %d slats, %d bottles, %d others, want 24, 12, 1", slats, discs, tops)
	}
	sawn := 0
	for _, l := range c.Lines() {
		if l.From.Y < at || l.To.Y < at {
			t.Errorf("%+v lies before the plane", l)
		}
		if l.Kind == Sawn {
			sawn++
			if l.Hidden {
				t.Errorf("%+v is hidden", l)
			}
		}
	}
	if sawn < 4*25+12 {
		t.Errorf("%d sawn lines, want at least %d", sawn, 4*25+12)
	}
	// From behind, the other part stays: with it the bottles' necks.
	back := Cut(s, space.Y, at, Back)
	if len(back.Faces) != len(c.Faces) {
		t.Errorf("%d faces from behind, %d from the front", len(back.Faces), len(c.Faces))
	}
	if b := back.Behind.Bounds(); b.Max.Y != at || b.Min.Y != -60*unit.Millimetre {
		t.Errorf("from behind stays %v", b)
	}
}

func TestCutAlong(t *testing.T) {
	s := wall(3, 4)
	mid := s.Rounds[0].X // the middle of the first column
	c := Cut(s, space.X, mid, Left)
	for _, f := range c.Faces {
		if f.Disc {
			t.Errorf("bottle %d is cut along its length", f.ID)
		}
	}
	if len(c.Faces) != 5 { // four aprons and the top
		t.Errorf("%d faces, want 5", len(c.Faces))
	}
	if len(c.Behind.Rounds) != len(s.Rounds) {
		t.Errorf("%d rounds stay, want all %d", len(c.Behind.Rounds), len(s.Rounds))
	}
	if got := len(Cut(s, space.X, mid, Right).Behind.Rounds); got != len(s.Rounds)/3 {
		t.Errorf("%d rounds stay seen from the right, want a third of %d", got, len(s.Rounds))
	}
}

func TestConeRadius(t *testing.T) {
	r := Round{Y0: 10, Y1: 20, R0: 100, R1: 50}
	for _, c := range []struct{ y, want unit.Length }{{10, 100}, {15, 75}, {20, 50}, {11, 95}} {
		if got := r.at(c.y); got != c.want {
			t.Errorf("radius at %d is %d, want %d", int64(c.y), int64(got), int64(c.want))
		}
	}
}
