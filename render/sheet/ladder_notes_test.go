package sheet_test

import (
	"fmt"
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/space"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// Each ladder's sheets say which ladders of the row they are for; one of them,
// and no more, says to make them; an end ladder has no other face; and no face is
// called by a letter, as parts are.
func TestLadderSheetsSayWhich(t *testing.T) {
	all := demos(t)
	all["long wall"] = racktest.Build(t, longWall)
	for name, r := range all {
		sheets := packet(t, r)
		for i, shape := range r.Shapes {
			which := rack.Places("ladder", r.LaddersOf(i))
			made, pages := 0, 0
			for _, s := range sheets {
				_, rest, ok := strings.Cut(s.Name, "-ladder-")
				if !ok || strings.TrimRight(rest, "abcdefghijklmnopqrstuvwxyz") != fmt.Sprint(i+1) {
					continue
				}
				pages++
				text := lettered([]*drawing.Sheet{s}, "ladder")
				says := func(what string) bool { return strings.Contains(text, strings.ReplaceAll(what, " ", "")) }
				if says(fmt.Sprintf("Make %d: %s of %d from the left", shape.Count, which, len(r.Ladders))) {
					made++
				} else if !says("The other face of " + which) {
					t.Errorf("%s, %s: the sheet does not say that it is for %s", name, s.Name, which)
				}
				if got := s.Title; got != "L"+which[1:] && !strings.HasPrefix(got, "L"+which[1:]+", ") {
					t.Errorf("%s: title %q, want %s", name, got, which)
				}
				if inner := shape.Role == rack.Inner; says("other face") != inner {
					t.Errorf("%s, %s: speaks of another face: %v, is an inner ladder: %v", name, s.Name, !inner, inner)
				}
				for _, want := range []string{"to each slat's lower edge", "Slats flush", "Detail, scale 1:", "from the slat's outer face"} {
					if !says(want) {
						t.Errorf("%s, %s: does not say %q", name, s.Name, want)
					}
				}
				for _, bad := range []string{"face A", "face B", "Face A", "Face B", "quarter in", "inner 2", "inner ladder"} {
					if says(bad) {
						t.Errorf("%s, %s: says %q", name, s.Name, bad)
					}
				}
			}
			if made != 1 {
				t.Errorf("%s: %d of %d sheets say to make %s", name, made, pages, which)
			}
		}
	}
}

// Nails of two faces that come too near each other are ringed on both faces'
// sheets, and where the words say to set those of the right face they keep three
// diameters.
func TestNailsThatMeetAreRinged(t *testing.T) {
	r := racktest.Build(t, longWall)
	aside := check.NailAside(r)
	if aside != 3*unit.Inch/16 {
		t.Fatalf("nails go %v aside, want 3/16 in: three diameters of 0.0475 in, up to the next 1/16", aside)
	}
	crossings := map[string]int{} // ringed, by ladder and face
	for i, p := range r.Pieces {
		if r.Parts[p.Part].Name != "leg" || p.Ladder > 0 && r.Ladders[p.Ladder].Shape == r.Ladders[p.Ladder-1].Shape {
			continue
		}
		left, right := slatNails(r, i)
		for _, a := range left {
			for _, b := range right {
				if !near(a.at, b.at) {
					continue
				}
				crossings[fmt.Sprintf("%d left %d %d", p.Ladder, i, a.slat)] = p.Ladder
				crossings[fmt.Sprintf("%d right %d %d", p.Ladder, i, b.slat)] = p.Ladder
				for _, c := range left {
					if moved := towardsMiddle(p.Box, b.at, aside); near(c.at, moved) {
						t.Errorf("%s: a nail set aside still meets another at %v", p.Name, c.at)
					}
				}
			}
		}
	}
	want := 0
	for _, ladder := range crossings {
		if shape := r.Shapes[r.Ladders[ladder].Shape]; shape.Role == rack.Inner {
			want++
		}
	}
	got := 0
	for _, s := range packet(t, r) {
		if !strings.Contains(s.Name, "-ladder-") {
			continue
		}
		rings := 0
		for _, m := range s.Marks {
			if c, ok := m.(drawing.Circle); ok && c.Class == drawing.Thin {
				rings++
			}
		}
		if says := strings.Contains(lettered([]*drawing.Sheet{s}, "ladder"), "Ringed:"); says != (rings > 0) {
			t.Errorf("%s: %d rings, explained: %v", s.Name, rings, says)
		}
		got += rings
	}
	if want == 0 || got != want {
		t.Errorf("%d crossings ringed, want %d", got, want)
	}
	if x := check.Meets(racktest.Build(t, "[rack]\ncolumns = 3\nrows = 4\n")); len(x) > 0 {
		t.Errorf("nails meet in a rack whose rows are level: %v", x)
	}
}

// driven is a nail of a slat in a leg.
type driven struct {
	slat int
	at   space.Point
}

// slatNails lists the nails of slats through the left and the right face of a
// leg.
func slatNails(r *rack.Rack, leg int) (left, right []driven) {
	for _, c := range r.Pieces[leg].Fixed {
		if c.Axis != space.X {
			continue
		}
		for _, at := range r.NailPlaces(c.Patch, c.Axis, c.Far) {
			if c.Far {
				right = append(right, driven{c.Piece, at})
			} else {
				left = append(left, driven{c.Piece, at})
			}
		}
	}
	return left, right
}

// near reports whether nails seen along them are less than three diameters of
// 18 ga, 0.0475 in, apart (memory, believed makers' tables). Each goes half an inch into a leg
// of three quarters, so that they pass each other.
func near(a, b space.Point) bool {
	dy, dz := a.Y-b.Y, a.Z-b.Z
	const least = 3 * 475 * unit.Inch / 10000
	return dy.MM()*dy.MM()+dz.MM()*dz.MM() < least.MM()*least.MM()
}

// towardsMiddle moves a nail towards the middle of a leg's width.
func towardsMiddle(leg space.Box, at space.Point, by unit.Length) space.Point {
	if at.Y < (leg.Min.Y+leg.Max.Y)/2 {
		at.Y += by
	} else {
		at.Y -= by
	}
	return at
}
