package template_test

import (
	"os"
	"path/filepath"
	"testing"

	"slatwright/geometry/rack"
	"slatwright/render/drawing"
	"slatwright/render/pdf"
	"slatwright/render/template"
	"slatwright/specs/design"
)

const inchDesign = `
title = "Kitchen rack"
order = "R-021"
[bottles]
fit = ["claret-750"]
[rack]
columns = 4
rows = 8
`

const metricDesign = `
title = "Cellar wall"
order = "R-022"
units = "mm"
[bottles]
fit = ["claret-750", "burgundy-750"]
[[column]]
count = 2
rows = 6
fit = ["claret-750"]
[[column]]
count = 3
rows = 5
fit = ["burgundy-750"]
[printer]
along = "99.6 mm"
across = "100.3 mm"
`

const rollDesign = `
title = "Hall rack"
units = "mm"
[bottles]
fit = ["claret-750"]
[rack]
columns = 9
rows = 12
[paper]
template = "roll 610 mm"
`

func build(t *testing.T, text string) *rack.Rack {
	t.Helper()
	d, err := design.Read("test.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	r, err := rack.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestSheetsReadWell(t *testing.T) {
	for name, text := range map[string]string{"inch": inchDesign, "metric": metricDesign, "roll": rollDesign} {
		sheets, err := template.Sheets(build(t, text), "3F9A-77C1")
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for _, s := range sheets {
			if err := s.Check(); err != nil {
				t.Errorf("%s: %v", name, err)
			}
			for i, f := range drawing.Legible(s) {
				if i < 5 {
					t.Errorf("%s: %v", name, f)
				}
			}
		}
		if dir := os.Getenv("SLATWRIGHT_LOOK"); dir != "" {
			file, err := pdf.Encode(pdf.Document{Sheets: sheets, FullSize: true})
			if err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(filepath.Join(dir, name+".pdf"), file, 0o666); err != nil {
				t.Fatal(err)
			}
		}
	}
}
