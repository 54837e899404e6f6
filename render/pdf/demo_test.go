package pdf

import (
	"os"
	"path/filepath"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
	"slatwright/golden"
	"slatwright/render/label"
	"slatwright/render/sheet"
	"slatwright/render/template"
	"slatwright/specs/design"
)

// Both writers show the same picture of every scaled sheet of every demo
// design, and of the first pages of their templates and labels.
func TestDemoSheetsLookTheSame(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(golden.Root(t), "testdata", "designs", "*.toml"))
	if err != nil || len(files) < 6 {
		t.Fatalf("%d demo designs, %v", len(files), err)
	}
	if os.Getenv("SLATWRIGHT_REFEREES") != "1" {
		files = files[:1] // the others take half a minute
	}
	for _, f := range files {
		t.Run(filepath.Base(f), func(t *testing.T) {
			text, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			d, err := design.Read(f, text)
			if err != nil {
				t.Fatal(err)
			}
			r, err := rack.Build(d)
			if err != nil {
				t.Fatal(err)
			}
			plan, err := saw.Make([]*rack.Rack{r}, saw.Quick)
			if err != nil {
				t.Fatal(err)
			}
			sheets, err := sheet.Packet(sheet.Input{Rack: r, Findings: check.All(r), Mark: "0123abcd", Cutting: plan})
			if err != nil {
				t.Fatal(err)
			}
			strips, err := template.Sheets(r, "0123abcd")
			if err != nil {
				t.Fatal(err)
			}
			labels, err := label.Sheets(r, "0123abcd")
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range append(append(sheets, strips[:3]...), labels[0]) {
				if sameInk(t, s, 100) < 1000 {
					t.Errorf("%s is nearly empty", s.Name)
				}
			}
		})
	}
}
