package report_test

import (
	"testing"

	"slatwright/geometry/rack/racktest"
	"slatwright/render/report"
)

// Whatever changes a sheet changes the mark on it: also another finish, glue,
// wood or tolerance, which leave every length as it was. A default that is
// spelt out changes nothing.
func TestMarkTellsFinishesApart(t *testing.T) {
	mark := func(more string) string {
		return report.Mark(racktest.Build(t, "[rack]\ncolumns = 2\nrows = 2\n"+more))
	}
	plain := mark("")
	for _, more := range []string{
		"[finish]\nstain = \"oil_stain\"\n", "[finish]\ncoat = \"shellac\"\n", "[finish]\ncoats = 2\n", "[finish]\nglue = \"hide_liquid\"\n",
		"[wood]\nspecies = \"black_cherry\"\n", "[shop]\ntolerance = \"1/64\"\n",
	} {
		if mark(more) == plain {
			t.Errorf("%q leaves the mark as it was", more)
		}
	}
	const stained = "[finish]\nstain = \"oil_stain\"\n"
	if mark(stained+"colour = \"chestnut\"\n") == mark(stained) {
		t.Error("a colour leaves the mark as it was")
	}
	if mark("[finish]\nglue = \"pva\"\ncoats = 3\n") != plain {
		t.Error("a default spelt out changes the mark")
	}
}
