package sheet_test

import (
	"regexp"
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/saw"
	"slatwright/render/drawing"
	"slatwright/render/sheet"
	"slatwright/specs/unit"
)

// The cutting sheets send the glue-up to the order of work, have boxes for what is
// sawn after it and for the shop aids, and ask for the same bought pieces as the
// sheet of shop aids.
func TestSettingsGoOnToTheLastCut(t *testing.T) {
	const slat = "[shop]\nspares.slat = 1\n"
	r := racktest.Build(t, "[rack]\ncolumns = 4\nrows = 5\n"+slat)
	plan := planned(t, r)
	sheets, err := sheet.Packet(sheet.Input{Rack: r, Findings: check.All(r), Mark: "0123abcd", Cutting: plan})
	if err != nil {
		t.Fatal(err)
	}
	cut, aids := lettered(sheets, "cutting"), lettered(sheets, "hardware")
	squeezed := func(s string) string { return strings.ReplaceAll(s, " ", "") }
	for _, want := range []string{
		"thenglueup:stepW1oftheorderofwork", "Trimthetop:stepW3,afterstepW2", "toitswidth", "toitslength",
		"Shopaids,rip:fencetoblade", "strips,forblocksE", "Shopaids,cuttolength:stoptoblade", "pieces:blocksE", "pieces:spacers", "pieces:packers",
		",forslatsA", "40and1spare", "theotherfallsoffatthelastrip",
	} {
		if !strings.Contains(cut, want) {
			t.Errorf("cutting sheets lack %q", want)
		}
	}
	for _, not := range []string{"40off", "growthrings", "otheroffthelastrip", "jointededges"} {
		if strings.Contains(cut, not) || strings.Contains(lettered(sheets, "part"), not) {
			t.Errorf("sheets say %q", not)
		}
	}
	if n := len(plan.GlueUps); n != 1 {
		t.Fatalf("%d glue-ups", n)
	}
	held := squeezed("The last " + r.Format.Unit(6*unit.Inch) + " of each piece are not cut")
	_, said, ok := strings.Cut(cut, "Tobuybesidestheboards:")
	_, again, both := strings.Cut(aids, "Tobuybesidestheboards:")
	if !ok || !both || !strings.Contains(said, held) {
		t.Fatalf("pieces to buy: %t, %t", ok, both)
	}
	said, _, _ = strings.Cut(said, "orawiderpiece")
	again, _, _ = strings.Cut(again, "orawiderpiece")
	if said != again {
		t.Errorf("to buy: the cutting sheet says %q, that of shop aids %q", said, again)
	}
	if last := saw.StepName(len(plan.Steps)); !strings.Contains(cut, last) {
		t.Errorf("no step %s after those of the plan", last)
	}
}

var fromRests = regexp.MustCompile(`Dashed,fromtherest:|Dashedonthefirstof\d+,fromtheirrests:`)

// What the shop aids take from the boards' rests is drawn on the bars and named
// there, as often as the sheet of shop aids has it from boards.
func TestRestsAreNamedOnTheBars(t *testing.T) {
	seen := 0
	for name, r := range demos(t) {
		plan := planned(t, r)
		sheets, err := sheet.Packet(sheet.Input{Rack: r, Findings: check.All(r), Mark: "0123abcd", Cutting: plan})
		if err != nil {
			t.Fatal(err)
		}
		fromEnds := strings.Contains(lettered(sheets, "hardware"), "Ends:whattheboards")
		dashed, said := 0, fromRests.MatchString(lettered(sheets, "cutting"))
		for _, s := range sheets {
			if strings.Contains(s.Name, "-cutting") {
				for _, m := range s.Marks {
					if p, ok := m.(drawing.Path); ok && p.Class == drawing.Hidden {
						dashed++
					}
				}
			}
		}
		if said != fromEnds || (dashed > 0) != fromEnds {
			t.Errorf("%s: aids from ends %t, named on the bars %t, %d drawn", name, fromEnds, said, dashed)
		}
		if fromEnds {
			seen++
		}
	}
	if seen == 0 {
		t.Error("no demo has shop aids from ends")
	}
}
