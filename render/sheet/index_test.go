package sheet_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/inspect"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/render/sheet"
)

// withTall adds to the demo designs a rack that is to be anchored.
func withTall(t *testing.T) map[string]*rack.Rack {
	all := demos(t)
	all["tall"] = racktest.Build(t, "[rack]\ncolumns = 4\nrows = \"most\"\nheight = \"<= 62\"\n")
	all["many kinds"] = racktest.Build(t, longWall)
	return all
}

// composed is a packet with its findings, cutting sheets included.
func composed(t *testing.T, r *rack.Rack) ([]*drawing.Sheet, []check.Finding) {
	t.Helper()
	findings := check.All(r)
	sheets, err := sheet.Packet(sheet.Input{Rack: r, Findings: findings, Mark: "0123abcd", Cutting: planned(t, r)})
	if err != nil {
		t.Fatal(err)
	}
	return sheets, findings
}

// The index has every sheet once, under its number: read back from the order
// sheets' ink, a number and the words to the right of it.
func TestIndexIsWhole(t *testing.T) {
	numbers := regexp.MustCompile(`^(\d+)(?:–(\d+))?$`)
	for name, r := range withTall(t) {
		sheets, _ := composed(t, r)
		titles := map[int]string{}
		for _, s := range sheets {
			if !strings.Contains(s.Name, "-order") {
				continue
			}
			asked := statementRows(s)
			var before drawing.Text
			for _, m := range s.Marks {
				x, ok := m.(drawing.Text)
				if !ok {
					continue
				}
				n := numbers.FindStringSubmatch(before.String())
				if n != nil && before.Align == drawing.Right && x.At.Y == before.At.Y && x.Align == drawing.Left && !asked[before.At] && !strings.Contains(x.String(), "×") {
					var first, last int
					fmt.Sscan(n[1], &first)
					last = first
					if n[2] != "" {
						fmt.Sscan(n[2], &last)
					}
					for i := first; i <= last; i++ {
						titles[i] += x.String()
					}
				}
				before = x
			}
		}
		for i, s := range sheets {
			want := s.Title
			for kind, all := range map[string]string{"ladder": "Ladders", "section": "Sections", "carcase": "Carcase assembly", "order": "Order", "parts": "Parts", "bare": "Bare for glue", "jig": "Jig"} {
				if strings.Contains(s.Name, "-"+kind) {
					want = all
				}
			}
			if got := titles[i+1]; got != want {
				t.Errorf("%s: the index has %q at %d, want %q (%s)", name, got, i+1, want, s.Name)
			}
		}
	}
}

// statementRows are the places of the line numbers of what was asked: a number
// and words too, right-aligned at one x below the column's title.
func statementRows(s *drawing.Sheet) map[drawing.Point]bool {
	rows := map[drawing.Point]bool{}
	var title drawing.Text
	for _, m := range s.Marks {
		x, ok := m.(drawing.Text)
		switch {
		case ok && x.String() == "line":
			title = x
		case ok && title.String() != "" && x.Align == drawing.Right && x.At.X == title.At.X && x.At.Y > title.At.Y:
			rows[x.At] = true
		}
	}
	return rows
}

// Notes that name sheets have numbers, none is left open.
func TestNoReferenceIsOpen(t *testing.T) {
	named := 0
	for name, r := range withTall(t) {
		sheets, _ := composed(t, r)
		for i, s := range sheets {
			for _, m := range s.Marks {
				x, ok := m.(drawing.Text)
				if !ok {
					continue
				}
				if strings.ContainsAny(x.String(), "{}") {
					t.Errorf("%s: %s says %q", name, s.Name, x.String())
				}
				if want := "deep: sheet "; strings.Contains(x.String(), want) {
					var n int
					fmt.Sscan(x.String()[strings.Index(x.String(), want)+len(want):], &n)
					if named++; n < 1 || n > len(sheets) || !strings.Contains(sheets[n-1].Name, "-side") {
						t.Errorf("%s: sheet %d says %q", name, i+1, x.String())
					}
				}
			}
		}
	}
	if named == 0 {
		t.Error("no note names a sheet")
	}
}

// Each check has words for the bench, and on the order sheets of a rack whose
// checks are all in order no code stands in their place.
func TestChecksInPlainWords(t *testing.T) {
	for _, c := range check.Checks() {
		if sheet.Plainly(c.Code) == c.Code {
			t.Errorf("%s has no words for the bench", c.Code)
		}
	}
	for name, r := range demos(t) {
		sheets, findings := composed(t, r)
		if check.Worst(findings) != check.OK {
			continue
		}
		text := lettered(sheets, "order") + lettered(sheets, "section") + lettered(sheets, "inspection")
		for _, c := range check.Checks() {
			if strings.Contains(text, c.Code) {
				t.Errorf("%s: %s stands on a sheet", name, c.Code)
			}
		}
	}
}

// The cautions say of anchors what the check says, and nothing against it.
func TestOneVerdictOnAnchors(t *testing.T) {
	anchored := 0
	for name, r := range withTall(t) {
		sheets, findings := composed(t, r)
		text := lettered(sheets, "order")
		for _, f := range findings {
			if f.Name != "stand.anchor" {
				continue
			}
			if f.Status != check.OK {
				anchored++
			}
			says := strings.Join(strings.Fields("Tipping: "+strings.ToUpper(f.Says[:1])+f.Says[1:]), "")
			if !strings.Contains(text, says) {
				t.Errorf("%s: the cautions do not say %q", name, f.Says)
			}
			if all := strings.Contains(text, "Anchoritallthesame"); all == (f.Status != check.OK) {
				t.Errorf("%s: anchored %v, and beside it the general word %v", name, f.Status, all)
			}
		}
	}
	if anchored == 0 {
		t.Error("no rack is to be anchored")
	}
}

// Every tight length is on the order sheets with its place.
func TestTightPlacesAreTold(t *testing.T) {
	told := 0
	for name, r := range withTall(t) {
		sheets, _ := composed(t, r)
		text := lettered(sheets, "order")
		for _, d := range inspect.Dimensions(r) {
			if !d.Tight(r.Design.Shop.Tolerance) {
				continue
			}
			told++
			for _, want := range []string{d.Name, r.Format.Unit(d.Drawn) + " as drawn", d.Where} {
				if !strings.Contains(text, strings.Join(strings.Fields(want), "")) {
					t.Errorf("%s: the order sheets do not tell of %s, %q", name, d.Name, want)
				}
			}
		}
	}
	if told == 0 {
		t.Error("nothing is tight")
	}
}
