package view

import (
	"fmt"
	"reflect"
	"testing"
	"time"

	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// wall is a rack of the given size: legs, slats, aprons, a top, and a bottle in
// each cell.
func wall(columns, rows int) Scene {
	const mm = unit.Millimetre
	var s Scene
	box := func(x0, y0, z0, x1, y1, z1 unit.Length) {
		s.Boxes = append(s.Boxes, Solid{len(s.Boxes), space.Box{
			Min: space.Point{X: x0 * mm, Y: y0 * mm, Z: z0 * mm}, Max: space.Point{X: x1 * mm, Y: y1 * mm, Z: z1 * mm}}})
	}
	const pitch, rise, leg, slat = 115, 105, 20, 20
	w, h := unit.Length(columns)*pitch+leg, unit.Length(rows)*rise+100
	for c := range columns + 1 {
		x := unit.Length(c) * pitch
		box(x, 0, 0, x+leg, 45, h)
		box(x, 195, 0, x+leg, 240, h)
		for r := range rows {
			z := 80 + unit.Length(r)*rise
			if c > 0 {
				box(x-slat, 0, z, x, 240, z+25)
			}
			if c < columns {
				box(x+leg, 0, z, x+leg+slat, 240, z+25)
			}
		}
	}
	for _, z := range []unit.Length{0, h - 65} {
		box(0, -20, z, w, 0, z+65)
		box(0, 240, z, w, 260, z+65)
	}
	box(-20, -40, h, w+20, 260, h+20)
	for c := range columns {
		for r := range rows {
			x := (unit.Length(c)*pitch + leg + (pitch-leg)/2) * mm
			z := (80+25+unit.Length(r)*rise)*mm + 24*mm
			s.Rounds = append(s.Rounds, Bottle(len(s.Boxes)+c*rows+r,
				space.Cylinder{X: x, Z: z, Y0: 50 * mm, Y1: 240 * mm, Radius: 37 * mm},
				space.Cylinder{X: x, Z: z, Y0: -60 * mm, Y1: 50 * mm, Radius: 14 * mm})...)
		}
	}
	return s
}

var walls = []struct{ columns, rows int }{{10, 5}, {50, 10}, {100, 50}}

func TestSameLinesEachTime(t *testing.T) {
	s := wall(12, 8)
	for _, d := range everyDirection[:8] {
		first := Lines(s, d)
		for range 3 {
			if !reflect.DeepEqual(first, Lines(s, d)) {
				t.Fatalf("%v: the lines of one scene differ from call to call", d)
			}
		}
	}
}

// A wall of 5,000 bottles must be drawn while one waits; the bound is some six
// times what it takes, so that a busy machine passes and a quadratic search does
// not.
func TestLargeWall(t *testing.T) {
	if testing.Short() {
		t.Skip("takes a second or two")
	}
	for _, d := range []Direction{Isometric, Front} {
		start := time.Now()
		lines := Lines(wall(100, 50), d)
		took := time.Since(start)
		t.Logf("%v: %d lines, %d visible, %v", d, len(lines), len(Visible(lines)), took)
		if took > 6*time.Second {
			t.Errorf("%v: 5,000 bottles took %v", d, took)
		}
	}
}

func BenchmarkLines(b *testing.B) {
	for _, w := range walls {
		s := wall(w.columns, w.rows)
		for _, d := range []Direction{Isometric, Front, Right} {
			b.Run(fmt.Sprintf("%d bottles %v", w.columns*w.rows, d), func(b *testing.B) {
				for b.Loop() {
					Lines(s, d)
				}
			})
		}
	}
}

// Half of a wall's pieces go past the other half.
func BenchmarkExplode(b *testing.B) {
	for _, w := range walls {
		s := wall(w.columns, w.rows)
		groups := []Group{{Parent: -1}, {Parent: 0, Axis: space.X, Sign: 1}}
		for i := range s.Boxes {
			groups[i%2].IDs = append(groups[i%2].IDs, i)
		}
		b.Run(fmt.Sprintf("%d bottles", w.columns*w.rows), func(b *testing.B) {
			for b.Loop() {
				offsets, err := Explode(s, groups, Isometric, unit.Inch)
				if err != nil {
					b.Fatal(err)
				}
				Trails(s, groups, offsets)
			}
		})
	}
}
