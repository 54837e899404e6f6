package saw_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"slatwright/geometry/cutting"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/saw"
	"slatwright/golden"
	"slatwright/specs/design"
	"slatwright/specs/unit"
)

// demo solves the demo design of the name.
func demo(t *testing.T, name string) *rack.Rack {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(golden.Root(t), "testdata", "designs", name+".toml"))
	if err != nil {
		t.Fatal(err)
	}
	return racktest.Build(t, string(text))
}

func mustMake(t *testing.T, racks ...*rack.Rack) *saw.Plan {
	t.Helper()
	p, err := saw.Make(racks, saw.Quick/int64(10*len(racks)-9)) // little for a batch: a test waits
	if err != nil {
		t.Fatal(err)
	}
	return p
}

const small = "[rack]\ncolumns = 2\nrows = 2\n[bottles]\nfit = [\"claret-750\"]\n[top]\npresent = false\n"

// Every part of every order comes off the saw once, spares included, in the
// order of the steps.
func TestSequenceHasEveryPart(t *testing.T) {
	for _, racks := range [][]*rack.Rack{
		{demo(t, "harbour-small")}, {demo(t, "tasting-metric")}, {demo(t, "tower-tall")},
		{racktest.Build(t, small+"[shop]\nspares.slat = 1\n"), racktest.Build(t, "order = \"R-2\"\n"+small)},
	} {
		p := mustMake(t, racks...)
		got := map[[2]string][2]int{}
		last := -1
		for _, x := range p.Sequence() {
			c := got[[2]string{x.Order, x.Mark}]
			if c[0]++; x.Spare {
				c[1]++
			}
			got[[2]string{x.Order, x.Mark}] = c
			if x.Step < last || x.Step < 0 {
				t.Errorf("%s: %s comes off at step %d after %d", x.Order, x.Mark, x.Step, last)
			}
			last = x.Step
		}
		for _, o := range p.Orders {
			for _, part := range o.Rack.Parts {
				spares := saw.Spares(o.Rack, part.Name)
				if want := [2]int{part.Count + spares, spares}; got[[2]string{o.Name, part.Mark}] != want {
					t.Errorf("%s %s: %v; want %v", o.Name, part.Mark, got[[2]string{o.Name, part.Mark}], want)
				}
			}
		}
	}
}

// A design without boards is planned from the usual ones, at prices that are
// marked as examples; one with boards from those alone.
func TestOffers(t *testing.T) {
	p := mustMake(t, racktest.Build(t, small))
	if !p.Examples() || !p.Proven || p.Cost <= 0 {
		t.Errorf("examples %v, cost %d, bound %d", p.Examples(), p.Cost, p.Bound)
	}
	own := "[[board]]\nnominal = \"1x4\"\nlength = \"8 ft\"\nprice = 7.25\n[[board]]\nnominal = \"1x4\"\nlength = \"3 ft\"\non_hand = 2\n"
	p = mustMake(t, racktest.Build(t, small+own))
	if p.Examples() || len(p.Offers) != 2 {
		t.Errorf("examples %v, %d offers", p.Examples(), len(p.Offers))
	}
	for _, n := range p.Needs() {
		if n.Board.OnHand > 0 && (n.Board.Price != 0 || n.Count > 2) {
			t.Errorf("on hand: %+v", n)
		}
	}
	if used := p.Needs(); p.Cost%725 != 0 || len(used) == 0 || used[0].Yield < 30 || used[0].Yield > 100 {
		t.Errorf("cost %d, %+v", p.Cost, used)
	}
}

// Boards listed twice in one design are so many in all; those that several designs
// list are one heap, of which the least count holds, whatever the order.
func TestBoardsListedTwice(t *testing.T) {
	line := func(n int) string {
		return fmt.Sprintf("[[board]]\nnominal = \"1x3\"\nlength = \"8 ft\"\non_hand = %d\n", n)
	}
	one := racktest.Build(t, "order = \"R-1\"\n"+small+line(20)+line(30))
	two := racktest.Build(t, "order = \"R-2\"\n"+small+line(40))
	three := racktest.Build(t, "order = \"R-3\"\n"+small+line(40)+line(30))
	for _, c := range []struct {
		racks []*rack.Rack
		want  int
		noted bool
	}{
		{[]*rack.Rack{one}, 50, false}, {[]*rack.Rack{two}, 40, false},
		{[]*rack.Rack{one, two}, 40, true}, {[]*rack.Rack{two, one}, 40, true},
		{[]*rack.Rack{one, three}, 50, true}, {[]*rack.Rack{three, one, two}, 40, true},
	} {
		p := mustMake(t, c.racks...)
		if len(p.Job.Boards) != 1 || p.Job.Boards[0].OnHand != c.want {
			t.Errorf("%d orders: %+v; want %d on hand", len(c.racks), p.Job.Boards, c.want)
		}
		if noted := strings.Contains(strings.Join(p.Notes, "\n"), "taken to be the same boards"); noted != c.noted {
			t.Errorf("%d orders: notes %q", len(c.racks), p.Notes)
		}
	}
}

// Thickness and length that no board has, and boards on hand that run out, are
// told at the line that is at fault, with what would help.
func TestFaults(t *testing.T) {
	board := func(s string) string { return small + "[[board]]\n" + s }
	for _, c := range []struct {
		text       string
		line       int
		says, hint string
	}{
		{strings.Replace(board("nominal = \"1x4\"\nlength = \"18 in\"\nprice = 1\n"), "columns = 2", "columns = 4", 1), 8,
			"no board is long enough for C apron: it is 18 1/2 in long, and the longest board of its thickness has 17 in", "another [[board]] of 19 1/2 in or more would do"},
		{board("nominal = \"5/4x4\"\nlength = \"8 ft\"\nprice = 1\n[shop]\nkerf = \"1/8\"\n"), 0, "", ""},
		{board("thickness = \"1/2\"\nwidth = 5\nlength = \"8 ft\"\nprice = 1\n"), 1, "no board serves the thickness of A slat: it is 3/4 in thick, and the thickest board has 1/2 in", "another [[board]] 3/4 in thick would do"},
		{board("nominal = \"1x4\"\nlength = \"3 ft\"\non_hand = 1\n"), 8, "the boards on hand run out", "more of these would do"},
		{board("nominal = \"1x4\"\nlength = \"3 ft\"\non_hand = 0\n"), 8, "no board is there, and none can be bought", "state a price"},
		{small + "[leg]\nthickness = \"9 in\"\n", 9, "no board serves the thickness of B leg: it is 9 in thick", "a [[board]] 9 in thick would do"},
		{strings.Replace(small, "columns = 2", "columns = 100", 1), 2, "no board is long enough for C apron", "or more would do"},
	} {
		r := racktest.Build(t, c.text)
		_, err := saw.Make([]*rack.Rack{r}, saw.Quick)
		if c.says == "" {
			if err != nil {
				t.Errorf("%v\n%s", err, c.text)
			}
			continue
		}
		var f *saw.Fault
		if !errors.As(err, &f) {
			t.Errorf("error %v; want %s\n%s", err, c.says, c.text)
			continue
		}
		m := f.Message
		if m.Place.Line != c.line || !strings.Contains(m.Text, c.says) || !strings.Contains(m.Hint, c.hint) {
			t.Errorf("line %d: %s (%s); want line %d: %s (%s)", m.Place.Line, m.Text, m.Hint, c.line, c.says, c.hint)
		}
	}
}

// By hand: slats 1 in wide, two strips of 1 in in a 1x3 leave 1/8 in between
// the trims of its edges, three do not fit even with the edges kept (3 1/4 of 2 1/2).
// In a board 2 3/8 in wide two strips leave nothing; three strips of 5/8 in need
// 2 1/8, and 2 in is left between its edges: one more only if none is jointed.
func TestKnifeEdges(t *testing.T) {
	board := "[[board]]\nthickness = \"3/4\"\nwidth = %W\nlength = \"8 ft\"\nprice = 5\n"
	for _, c := range []struct{ width, slat, says string }{
		{`"2 3/8"`, `1`, "two strips of 1 in take all of a measured board's width between the trims of its edges, nothing to spare"},
		{`"2 1/4"`, `"5/8"`, "three strips of 5/8 in from a measured board only if no edge is jointed"},
	} {
		r := racktest.Build(t, small+"[slat]\nheight = "+c.slat+"\n[apron]\nheight = 1.5\n"+strings.ReplaceAll(board, "%W", c.width))
		p := mustMake(t, r)
		var all []string
		for _, w := range p.Cautions() {
			all = append(all, w.Text)
		}
		if !strings.Contains(strings.Join(all, "\n"), c.says) {
			t.Errorf("board %s, slat %s: warnings %q; want %s", c.width, c.slat, all, c.says)
		}
	}
}

// A step that gives parts as they come and sections still to rip counts both: the
// parts are those that no later step cuts off a strip.
func TestSectionsStillToRip(t *testing.T) {
	seen := 0
	for _, name := range []string{"tasting-metric", "harbour-small", "cellar-magnum"} {
		p := mustMake(t, demo(t, name))
		for _, s := range p.Steps {
			var parts, rips int
			text := p.Yields(s)
			_, after, ok := strings.Cut(text, "; ")
			if !ok {
				continue
			}
			fmt.Sscan(text, &parts)
			fmt.Sscan(after, &rips)
			whole := 0
			for _, b := range p.Boards {
				for _, x := range b.Sections {
					if !x.Whole && x.Length == s.Setting.At && len(x.Strips) == 1 && x.Strips[0].Width == b.Board.Width {
						whole += b.Count
					}
				}
			}
			if seen++; parts+rips != s.Count || parts != whole {
				t.Errorf("%s: %q of %d, with %d as wide as their boards", name, text, s.Count, whole)
			}
		}
	}
	if seen == 0 {
		t.Error("no step gives both")
	}
}

// Orders that are pooled keep their names and cost no more than apart; boards of
// two woods are not pooled.
func TestPooling(t *testing.T) {
	a, b := demo(t, "counter-wide-gap"), racktest.Build(t, small)
	p := mustMake(t, a, b)
	if p.Apart < p.Cost || p.Apart == 0 {
		t.Errorf("pooled %d, apart %d", p.Cost, p.Apart)
	}
	if p.Orders[0].Name != "L-106" || p.Orders[1].Name != "test" {
		t.Errorf("orders %q, %q", p.Orders[0].Name, p.Orders[1].Name)
	}
	twice := mustMake(t, a, a)
	if twice.Orders[1].Name != "L-106 (2)" {
		t.Errorf("the second is called %q", twice.Orders[1].Name)
	}
	long := mustMake(t, racktest.Build(t, "order = \"An order of many words\"\n"+small), b)
	if got := long.Label(long.Boards[0].Sections[0].Strips[0].Parts[0]); !strings.HasPrefix(got, "#1 ") && !strings.HasPrefix(got, "#2 ") {
		t.Errorf("a part is called %q", got)
	}
	for _, s := range long.Steps {
		if strings.Contains(long.Yields(s), "words") {
			t.Errorf("a step gives %q", long.Yields(s))
		}
	}
	ash := racktest.Build(t, small+"[wood]\nspecies = \"white ash\"\n")
	if got := saw.Batches([]*rack.Rack{a, ash, b}); len(got) != 2 || len(got[0]) != 2 || got[1][0] != ash {
		t.Errorf("batches %v", got)
	}
}

// What a shop loses is the largest that any order states.
func TestShopsThatDiffer(t *testing.T) {
	a, b := racktest.Build(t, small+"[shop]\nkerf = \"3/16\"\n"), racktest.Build(t, small)
	for _, racks := range [][]*rack.Rack{{a, b}, {b, a}} {
		p := mustMake(t, racks...)
		if p.Job.Shop.Kerf != 3*unit.Inch/16 || !strings.Contains(strings.Join(p.Notes, "\n"), "shop.kerf") {
			t.Errorf("kerf %v, notes %q", p.Job.Shop.Kerf, p.Notes)
		}
	}
}

// The dearest board that a design may state can be planned with, and no dearer
// one can be stated.
func TestDearestBoard(t *testing.T) {
	board := func(price string) string {
		return small + "[[board]]\nnominal = \"1x4\"\nlength = \"8 ft\"\nprice = " + price + "\n"
	}
	if p := mustMake(t, racktest.Build(t, board("10000000"))); p.Cost < design.MostBoardPrice {
		t.Errorf("boards cost %d", p.Cost)
	}
	if _, err := design.Read("test.toml", []byte(board("10000000.01"))); err == nil || !strings.Contains(err.Error(), "at most 10000000") {
		t.Errorf("a dearer one: %v", err)
	}
}

// A litre of ponderosa pine weighs 448 g: its specific gravity of 0.40 (Wood
// Handbook FPL-GTR-282, table 5-3b) times 1.12.
func TestWeight(t *testing.T) {
	p := mustMake(t, racktest.Build(t, small))
	if got := p.Grams(100*unit.Millimetre, 100*unit.Millimetre, 100*unit.Millimetre); got < 447.9 || got > 448.1 {
		t.Errorf("a litre weighs %v g", got)
	}
	if boards, parts := p.BoardGrams(), p.PartGrams(""); parts <= 0 || boards <= parts || 10*parts < 3*boards {
		t.Errorf("boards %v g, parts %v g", boards, parts)
	}
}

// By hand, without kerf or trims: of a board 5 in wide and 50 in long a strip of
// 2 1/2 in gives two aprons of 18 1/2 in, which leaves 13 in of it, and 2 1/2 in
// beside it, as long as the section.
func TestLeftovers(t *testing.T) {
	const in = unit.Inch
	p := saw.Plan{Plan: &cutting.Plan{Boards: []cutting.BoardPlan{{
		Board: cutting.Board{Nominal: "own", Thickness: in, Width: 5 * in, Length: 50 * in}, Count: 2, Thickness: in, Leaves: 1,
		Sections: []cutting.Section{{Length: 50 * in, Ripped: true, Whole: true, Strips: []cutting.Strip{{Width: 5 * in / 2, Parts: []cutting.Placed{
			{Width: 5 * in / 2, Length: 37 * in / 2}, {Width: 5 * in / 2, Length: 37 * in / 2}}}}}},
	}}}}
	p.Job.Parts = []cutting.Part{{Width: 5 * in / 2}}
	p.Job.Shop.KeepOffcut = 12 * in
	want := []cutting.Offcut{
		{Nominal: "own", Thickness: in, Width: 5 * in / 2, Length: 50 * in, Count: 2},
		{Nominal: "own", Thickness: in, Width: 5 * in / 2, Length: 13 * in, Count: 2},
	}
	if got := p.Leftovers(); !slices.Equal(got, want) {
		t.Errorf("%v; want %v", got, want)
	}
}
