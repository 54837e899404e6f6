package view

import (
	"math/rand"
	"reflect"
	"strings"
	"testing"

	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// meetInPicture reports whether two boxes show on one another: along none of the
// normals of their outlines do they keep apart. The normal that belongs to edges
// along an axis is the one that seen computes for it.
func meetInPicture(a, b space.Box, v pt) bool {
	for i := range v {
		if v[(i+1)%3] == 0 && v[(i+2)%3] == 0 {
			continue
		}
		var lo, hi [2]float64
		for k, box := range [...]space.Box{a, b} {
			for n := range 8 {
				p := ptOf(box.Min)
				for j, c := range ptOf(box.Max) {
					if n>>j&1 == 1 {
						p[j] = c
					}
				}
				s := seen(p, v)[i]
				if n == 0 {
					lo[k], hi[k] = s, s
				}
				lo[k], hi[k] = min(lo[k], s), max(hi[k], s)
			}
		}
		if hi[0] <= lo[1] || hi[1] <= lo[0] {
			return false
		}
	}
	return true
}

// randomGroups deals boxes out to groups that move along axes that show.
func randomGroups(rng *rand.Rand, boxes []Solid, d Direction) []Group {
	f := newFrame(d)
	groups := make([]Group, 2+rng.Intn(4))
	for i := range groups {
		groups[i] = Group{Parent: rng.Intn(i+1) - 1, Sign: 1 - 2*rng.Intn(2)}
		if i > 0 && rng.Intn(4) > 0 {
			groups[i].Parent = rng.Intn(i)
		}
		for groups[i].Axis = space.Axis(rng.Intn(3)); !f.showsAs(int(groups[i].Axis)); {
			groups[i].Axis = space.Axis(rng.Intn(3))
		}
	}
	groups[0].Sign = 0
	for _, b := range boxes {
		g := &groups[rng.Intn(len(groups))]
		g.IDs = append(g.IDs, b.ID)
	}
	return groups
}

func TestExplodeParts(t *testing.T) {
	rng := rand.New(rand.NewSource(5))
	for n := range 400 {
		s := Scene{Boxes: disjointBoxes(rng, 3+rng.Intn(10), 64)}
		d := everyDirection[n%len(everyDirection)]
		groups := randomGroups(rng, s.Boxes, d)
		gap := unit.Length(rng.Intn(2) * 40)
		offsets, err := Explode(s, groups, d, gap)
		if err != nil {
			t.Fatal(err)
		}
		boxes := boxesOf(s, groups)
		// meets reports whether group i, moved on by e along its axis, shows on
		// one placed before it.
		meets := func(i int, e unit.Length) bool {
			for j := range i {
				for _, p := range boxes[i] {
					for _, q := range boxes[j] {
						p := p.Moved(offsets[i].Add(step(groups[i], int64(e), 1)))
						if meetInPicture(p, q.Moved(offsets[j]), coords(d)) {
							return true
						}
					}
				}
			}
			return false
		}
		for i, g := range groups[1:] {
			i++
			for _, e := range []unit.Length{0, gap - 1, -gap + 1, gap / 2, -gap / 2} {
				if (gap > 0 || e == 0) && meets(i, e) {
					t.Fatalf("case %d, %v: group %d meets another at %d from its offset, gap %d", n, d, i, e, gap)
				}
			}
			from := Offset{}
			if g.Parent >= 0 {
				from = offsets[g.Parent]
			}
			way := offsets[i].Sub(from)
			far := way.On(g.Axis) * unit.Length(g.Sign)
			if far < 0 || way != step(g, int64(far), 1) {
				t.Fatalf("case %d, %v: group %d moved by %v against its axis", n, d, i, way)
			}
			if gap == 0 && far > 1 && !meets(i, -1) && newFrame(d).k == 1 {
				t.Fatalf("case %d, %v: group %d moved %d, farther than it must", n, d, i, far)
			}
		}
	}
}

func TestExplodeNothing(t *testing.T) {
	s := wall(3, 4)
	groups := []Group{{IDs: []int{0, 1, 2}, Parent: -1}, {IDs: []int{3, 4, 20}, Parent: 0}}
	still := s.Moved(Moves(groups, make([]Offset, 2)))
	if !reflect.DeepEqual(s, still) {
		t.Error("a scene moved by nothing differs")
	}
	offsets, err := Explode(s, groups, Isometric, unit.Inch)
	if err != nil || !reflect.DeepEqual(offsets, make([]Offset, 2)) {
		t.Errorf("groups that stay moved by %v, error %v", offsets, err)
	}
	if got := Trails(s, groups, offsets); got != nil {
		t.Errorf("groups that stay have trails %v", got)
	}
}

func TestExplodeFaults(t *testing.T) {
	s := wall(2, 2)
	for _, c := range []struct {
		groups []Group
		d      Direction
		want   string
	}{
		{[]Group{{IDs: []int{0}, Parent: 1}, {Parent: -1}}, Isometric, "group 0 of the exploded view has group 1 for a parent, which does not come before it"},
		{[]Group{{IDs: []int{0}, Parent: -1}, {IDs: []int{1}, Parent: 0, Axis: space.Y, Sign: -1}}, Front, "group 1 of the exploded view moves along y, straight at the eye"},
	} {
		if _, err := Explode(s, c.groups, c.d, 0); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("got error %v, want %q", err, c.want)
		}
	}
}

// A group that stands clear in a gap of its parent's still goes on past it.
func TestExplodePastParent(t *testing.T) {
	box := func(id int, x0, x1 unit.Length) Solid {
		return Solid{id, space.Box{Min: space.Point{X: x0}, Max: space.Point{X: x1, Y: 100, Z: 100}}}
	}
	s := Scene{Boxes: []Solid{box(0, 0, 100), box(1, 300, 400), box(2, 150, 250)}}
	for _, c := range []struct {
		sign int
		want unit.Length
	}{{1, 270}, {-1, -270}} {
		groups := []Group{{IDs: []int{0, 1}, Parent: -1}, {IDs: []int{2}, Parent: 0, Axis: space.X, Sign: c.sign}}
		offsets, err := Explode(s, groups, Front, 20)
		if err != nil || offsets[1] != (Offset{X: c.want}) {
			t.Errorf("sign %d: moved by %v, error %v, want x %v", c.sign, offsets[1], err, c.want)
		}
	}
}

// A stool: a seat on two legs, a rail before the legs.
func TestTrails(t *testing.T) {
	box := func(id int, x0, y0, z0, x1, y1, z1 unit.Length) Solid {
		return Solid{id, space.Box{Min: space.Point{X: x0, Y: y0, Z: z0}, Max: space.Point{X: x1, Y: y1, Z: z1}}}
	}
	s := Scene{Boxes: []Solid{box(0, 0, 0, 0, 10, 40, 100), box(1, 90, 0, 0, 100, 40, 100), box(2, 0, 0, 100, 100, 40, 110), box(3, 0, -10, 80, 100, 0, 100)}}
	groups := []Group{
		{IDs: []int{0, 1}, Parent: -1},
		{IDs: []int{2}, Parent: 0, Axis: space.Z, Sign: 1},
		{IDs: []int{3}, Parent: 0, Axis: space.Y, Sign: -1},
	}
	offsets, err := Explode(s, groups, Isometric, 20)
	if err != nil {
		t.Fatal(err)
	}
	at := func(x, y, z unit.Length) space.Point { return space.Point{X: x, Y: y, Z: z} }
	up, out := offsets[1].Z, offsets[2].Y
	want := []Trail{
		{2, at(5, 20, 100), at(5, 20, 100+up)}, {2, at(95, 20, 100), at(95, 20, 100+up)},
		{3, at(5, 0, 90), at(5, out, 90)}, {3, at(95, 0, 90), at(95, out, 90)},
	}
	trails := Trails(s, groups, offsets)
	if !reflect.DeepEqual(trails, want) {
		t.Errorf("trails\n got %v\nwant %v", trails, want)
	}
	moved := s.Moved(Moves(groups, offsets))
	moved.Trails = trails
	ways := 0
	for _, l := range Visible(Lines(moved, Isometric)) {
		if l.Kind == Way {
			ways++
			if blocked(moved.Boxes, along(l, 1)[0], coords(Isometric)) {
				t.Errorf("%+v is not in sight", l)
			}
		}
	}
	if ways != 4 {
		t.Errorf("%d stretches of trail in sight, want 4", ways)
	}
}
