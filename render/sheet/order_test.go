package sheet_test

import (
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/render/drawing"
	"slatwright/render/sheet"
)

// The order sheets show every statement and every finding: a last line that was
// too long for its column once hid that the list of statements went on.
func TestOrderSheetsAreWhole(t *testing.T) {
	for name, r := range demos(t) {
		findings := check.All(r)
		sheets, err := sheet.Packet(sheet.Input{Rack: r, Findings: findings, Mark: "0123abcd"})
		if err != nil {
			t.Fatal(err)
		}
		var b strings.Builder
		for _, s := range sheets {
			if !strings.Contains(s.Name, "order") {
				continue
			}
			for _, m := range s.Marks {
				if text, ok := m.(drawing.Text); ok {
					b.WriteString(text.String() + " ")
				}
			}
		}
		all := strings.Join(strings.Fields(b.String()), "")
		shows := func(what string) {
			if !strings.Contains(all, strings.Join(strings.Fields(what), "")) {
				t.Errorf("%s: the order sheets do not show %s", name, what)
			}
		}
		for _, l := range r.Design.Lengths {
			shows(sheet.InWords(l.Text))
		}
		for _, c := range r.Design.Counts {
			shows(sheet.InWords(c.Text))
		}
		for _, f := range findings {
			shows(f.Where + ": " + f.Says)
		}
	}
}
