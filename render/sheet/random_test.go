package sheet_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"runtime"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack/racktest"
	"slatwright/render/drawing"
	"slatwright/render/sheet"
)

// randomDesign is a valid design of 1 to 20 columns and 1 to 24 rows, in either
// unit and on any paper.
func randomDesign(rng *rand.Rand) string {
	units := []string{"in", "mm"}[rng.IntN(2)]
	paper := []string{"letter", "tabloid", "a4", "a3"}[rng.IntN(4)]
	fit := []string{"claret-750", "burgundy-750", "half-375", "magnum-1500", "sparkling-750", "longneck-355"}[rng.IntN(6)]
	length := map[string]string{"magnum-1500": "[slat]\nlength = \"13 in\"\n"}[fit]
	return fmt.Sprintf("units = %q\n[bottles]\nfit = [%q]\n[rack]\ncolumns = %d\nrows = %d\n[paper]\ndrawings = %q\n[top]\npresent = %v\n%s",
		units, fit, 1+rng.IntN(20), 1+rng.IntN(24), paper, rng.IntN(4) > 0, length)
}

// Racks of every proportion get sheets that can be read: 60 of them, in the long
// run 2,000, shared out among as many goroutines as there are processors.
func TestRandomSheets(t *testing.T) {
	n := 60
	if os.Getenv("SLATWRIGHT_LONG") == "1" {
		n = 2000
	}
	rng := rand.New(rand.NewPCG(20, 24))
	texts := make([]string, n)
	for i := range texts {
		texts[i] = randomDesign(rng)
	}
	shares := runtime.GOMAXPROCS(0)
	for k := range shares {
		t.Run(fmt.Sprintf("share %d", k+1), func(t *testing.T) {
			t.Parallel()
			for i := k; i < n; i += shares {
				readsWell(t, texts[i])
			}
		})
	}
}

// readsWell composes all sheets of a design and looks for faults.
func readsWell(t *testing.T, text string) {
	t.Helper()
	r := racktest.Build(t, text)
	sheets, err := sheet.Packet(sheet.Input{Rack: r, Findings: check.All(r), Mark: "0123abcd"})
	if err != nil {
		t.Errorf("%v\n%s", err, text)
		return
	}
	for _, s := range sheets {
		for _, f := range drawing.Legible(s) {
			t.Errorf("%v\n%s", f, text)
		}
	}
	for _, f := range drawing.Items(sheets) {
		t.Errorf("%v\n%s", f, text)
	}
}
