package revision_test

import (
	"testing"

	"pgregory.net/rapid"

	"slatwright/geometry/revision"
	"slatwright/specs/unit"
)

const mm = unit.Millimetre

// minRip is the shortest part that is ripped in these tests.
const minRip = 3 * mm

// worth is how good a matching is, the first figure counting most: new parts
// with an old one, of these as they are, of these marked out anew; cuts and
// waste, less being better.
type worth [5]int64

func (w worth) better(v worth) bool {
	for i := range w {
		if w[i] != v[i] {
			return w[i] > v[i]
		}
	}
	return false
}

// pair returns what one old part adds as one new one; ok is false where it will
// not do. The rules are written down afresh.
func pair(a, b revision.Lot) (w worth, ok bool) {
	x, y := a.Size, b.Size
	switch {
	case x == y && a.Seats == b.Seats:
		return worth{1, 1, 0, 0, 0}, true
	case x == y:
		return worth{1, 0, 1, 0, 0}, true
	case x.Length < y.Length || x.Small < y.Small || x.Large < y.Large || x.Eased > y.Eased:
		return w, false
	case x.Length < minRip && (x.Small > y.Small || x.Large > y.Large):
		return w, false
	}
	w[0] = 1
	for _, differs := range []bool{x.Small != y.Small, x.Large != y.Large, x.Length != y.Length, x.Eased != y.Eased} {
		if differs {
			w[3]--
		}
	}
	cubic := func(s revision.Size) int64 { return int64(s.Small/mm) * int64(s.Large/mm) * int64(s.Length/mm) }
	w[4] = cubic(y) - cubic(x)
	return w, true
}

// best tries every way to use the old parts, one by one.
func best(old, new []revision.Lot) worth {
	if len(old) == 0 {
		return worth{}
	}
	top := best(old[1:], new)
	for j, b := range new {
		w, ok := pair(old[0], b)
		if !ok {
			continue
		}
		rest := append(append([]revision.Lot{}, new[:j]...), new[j+1:]...)
		sum := best(old[1:], rest)
		for i := range sum {
			sum[i] += w[i]
		}
		if sum.better(top) {
			top = sum
		}
	}
	return top
}

// single spreads lots out into single parts.
func single(lots []revision.Lot) []revision.Lot {
	var out []revision.Lot
	for _, l := range lots {
		for range l.Count {
			out = append(out, l)
		}
	}
	return out
}

// The matching is as good as the best of all, and its moves add up.
func TestMatchAgainstBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lots := func(what, first string) []revision.Lot {
			var out []revision.Lot
			left := 6
			for i := range rapid.IntRange(0, 5).Draw(t, what) {
				n := rapid.IntRange(1, 3).Draw(t, "count")
				if n > left {
					break
				}
				left -= n
				side := func(most int) unit.Length { return unit.Length(rapid.IntRange(1, most).Draw(t, "size")) * mm }
				small, large := side(2), side(3)
				out = append(out, revision.Lot{
					Mark: string(rune('A' + i)), Name: rapid.SampledFrom([]string{"slat", "leg"}).Draw(t, "name"), Count: n,
					Size:  revision.Size{Small: min(small, large), Large: max(small, large), Length: side(5), Eased: side(2)},
					Seats: rapid.SampledFrom([]string{"a", "b"}).Draw(t, "seats"),
				})
			}
			return out
		}
		old, new := lots("old", "A"), lots("new", "A")
		var got worth
		made, spare, used := 0, 0, 0
		for _, m := range revision.Match(old, new, minRip) {
			n := int64(m.Count)
			switch m.Use {
			case revision.Serves:
				got[1] += n
			case revision.Remark:
				got[2] += n
			case revision.Recut:
				w, ok := pair(*m.Old, *m.New)
				if !ok {
					t.Fatalf("%v cannot be cut to %v", m.Old.Size, m.New.Size)
				}
				if len(m.Cuts) != int(-w[3]) {
					t.Fatalf("cuts %v from %v to %v", m.Cuts, m.Old.Size, m.New.Size)
				}
				got[3] += n * w[3]
				got[4] += n * w[4]
			case revision.Make:
				made += m.Count
				continue
			case revision.Spare:
				spare += m.Count
				continue
			}
			used += m.Count
			got[0] += n
		}
		if want := best(single(old), single(new)); got != want {
			t.Fatalf("worth %v; want %v", got, want)
		}
		if used+made != len(single(new)) || used+spare != len(single(old)) {
			t.Fatalf("%d used, %d made, %d left over; %d were there, %d are needed", used, made, spare, len(single(old)), len(single(new)))
		}
	})
}

// A path that takes back an earlier choice: the long one is cheapest for the
// short need, but only it serves the long need.
func TestRecutTakesBack(t *testing.T) {
	lot := func(mark string, length unit.Length) revision.Lot {
		return revision.Lot{Mark: mark, Name: "leg", Count: 1, Size: revision.Size{Small: mm, Large: mm, Length: length}}
	}
	moves := revision.Match([]revision.Lot{lot("A", 10*mm), lot("B", 30*mm)}, []revision.Lot{lot("A", 9*mm), lot("B", 8*mm)}, minRip)
	if len(moves) != 2 || moves[0].Use != revision.Recut || moves[1].Use != revision.Recut {
		t.Errorf("moves %+v; want two recuts", moves)
	}
}
