package sheet_test

import (
	"fmt"
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/render/sheet"
)

// longWall fails a check, is cautious in several, and has magnums in two of its
// eight columns.
const longWall = `
[bottles]
fit = ["claret-750"]
[cell]
channel = "3 9/16"
[[column]]
count = 2
rows = 14
fit = ["magnum-1500"]
[[column]]
count = 6
rows = 17
`

// The first sheet says in large letters how the checks came out; whatever fails
// or asks for caution is written before the cautions of the trade.
func TestStatusComesFirst(t *testing.T) {
	all := demos(t)
	all["long wall"] = racktest.Build(t, longWall)
	seen := map[string]bool{}
	for name, r := range all {
		findings := check.All(r)
		sheets, err := sheet.Packet(sheet.Input{Rack: r, Findings: findings, Mark: "0123abcd"})
		if err != nil {
			t.Fatal(err)
		}
		word := map[check.Status]string{check.Fail: "FAIL", check.Caution: "CAUTION", check.OK: "All"}[check.Worst(findings)]
		seen[word] = true
		if got := largest(sheets[0], drawing.HeadingText); !strings.HasPrefix(got, word+": ") && (word != "All" || got != fmt.Sprintf("All %d checks are in order", len(findings))) {
			t.Errorf("%s: the largest words of the first sheet are %q, want %s", name, got, word)
		}
		checkCautionsLast(t, name, sheets)
	}
	if !seen["FAIL"] || !seen["CAUTION"] {
		t.Errorf("only %v looked at", seen)
	}
}

// checkCautionsLast wants a failed or cautious check on the first sheet, and no
// sheet with the cautions of the trade before one that begins to tell of them.
func checkCautionsLast(t *testing.T, name string, sheets []*drawing.Sheet) {
	t.Helper()
	trade, pressing := -1, -1
	for i, s := range sheets {
		if !strings.Contains(s.Name, "order") {
			break
		}
		for _, m := range s.Marks {
			switch x, _ := m.(drawing.Text); {
			case x.String() == "Cautions":
				trade = i
			case pressing < 0 && x.Class == drawing.CellText && (x.String() == "FAILS" || x.String() == "CAUTION"):
				pressing = i
			}
		}
	}
	if trade < 0 {
		t.Errorf("%s: no cautions of the trade", name)
	}
	if pressing > 0 {
		t.Errorf("%s: the first check that is not ok stands on sheet %d", name, pressing+1)
	}
}

// largest is the highest lettering of a class outside the title block.
func largest(s *drawing.Sheet, class drawing.Class) string {
	var best drawing.Text
	for _, m := range s.Marks {
		if x, ok := m.(drawing.Text); ok && x.Class == class && x.Height > best.Height {
			best = x
		}
	}
	return best.String()
}

// Bottles of several kinds are counted by kind.
func TestBottlesByKind(t *testing.T) {
	for _, c := range []struct {
		rack *rack.Rack
		want string
	}{
		{racktest.Build(t, longWall), "130,in8columnsof14to17:28magnum-1500,102claret-750"},
		{racktest.Build(t, "[rack]\ncolumns = 2\nrows = 3\n"), "bottles6,in2columnsof3parts"},
	} {
		if got := lettered(packet(t, c.rack), "order"); !strings.Contains(got, c.want) {
			t.Errorf("the order sheets do not say %q", c.want)
		}
	}
}

// The symbol of the method of projection keeps clear of the frame, in either
// method.
func TestProjectionSymbolKeepsClear(t *testing.T) {
	for _, units := range []string{"in", "mm"} {
		for _, s := range packet(t, racktest.Build(t, "units = \""+units+"\"\n[rack]\ncolumns = 2\nrows = 3\n"))[:1] {
			cell := drawing.Box(s.Frame.Max.X-13*drawing.MM, s.Frame.Max.Y-127*drawing.MM/10, 13*drawing.MM, 127*drawing.MM/10)
			n := 0
			for _, m := range s.Marks {
				var box drawing.Rect
				switch x := m.(type) {
				case drawing.Circle:
					box = drawing.Rect{Min: x.Centre, Max: x.Centre}.Inset(-x.R)
				case drawing.Path:
					if x.Class == drawing.Symbol {
						box = x.Bounds()
					}
				}
				if box == (drawing.Rect{}) || !cell.Inset(-drawing.MM).Holds(box) {
					continue
				}
				if n++; !cell.Inset(3 * drawing.MM / 2).Holds(box) {
					t.Errorf("%s: %v comes nearer than 1.5 mm to its field %v", units, box, cell)
				}
			}
			if n != 3 {
				t.Errorf("%s: %d lines of the symbol found, want 3", units, n)
			}
		}
	}
}
