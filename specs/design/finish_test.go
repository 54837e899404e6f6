package design_test

import (
	"strings"
	"testing"

	"slatwright/specs/design"
)

func TestFinish(t *testing.T) {
	for _, c := range []struct {
		text, coat, stain, conditioner, glue string
		coats                                int
	}{
		{"", "oil_poly", "", "", "pva", 3},
		{"[finish]\nstain = \"oil_stain\"", "oil_poly", "oil_stain", "conditioner", "pva", 3},
		{"[finish]\nstain = \"oil_stain\"\n[wood]\nspecies = \"black_walnut\"", "oil_poly", "oil_stain", "", "pva", 3},
		{"[finish]\nstain = \"oil_stain\"\nconditioner = true\n[wood]\nspecies = \"black_walnut\"", "oil_poly", "oil_stain", "conditioner", "pva", 3},
		{"[finish]\nstain = \"water_stain\"\nconditioner = false", "oil_poly", "water_stain", "", "pva", 3},
		{"[finish]\ncoats = 4\ncoat = \"shellac\"\nglue = \"hide_liquid\"", "shellac", "", "", "hide_liquid", 4},
		{"[finish]\ncoat = \"none\"", "", "", "", "pva", 0},
	} {
		d, err := design.Read("test.toml", []byte(c.text))
		if err != nil {
			t.Errorf("%v\n%s", err, c.text)
			continue
		}
		f := d.Finish
		if f.Coat.ID != c.coat || f.Coats != c.coats || f.Stain.ID != c.stain || f.Conditioner.ID != c.conditioner || f.Glue.ID != c.glue {
			t.Errorf("%q: coat %q x %d, stain %q, conditioner %q, glue %q", c.text, f.Coat.ID, f.Coats, f.Stain.ID, f.Conditioner.ID, f.Glue.ID)
		}
	}
}

// A colour is kept as the customer said it; an empty one is none.
func TestColour(t *testing.T) {
	for text, want := range map[string]string{
		"[finish]\nstain = \"oil_stain\"\ncolour = \" dark walnut \"": "dark walnut",
		"[finish]\nstain = \"oil_stain\"":                             "",
		"[finish]\ncolour = \"\"":                                     "",
	} {
		d, err := design.Read("test.toml", []byte(text))
		if err != nil || d.Finish.Colour != want {
			t.Errorf("%q: colour %q, %v; want %q", text, d.Finish.Colour, err, want)
		}
	}
	for _, text := range []string{"colour = 3", "colour = \"a\\u0007b\"", "colour = \"" + strings.Repeat("x", 201) + "\""} {
		if _, err := design.Read("test.toml", []byte("[finish]\nstain = \"oil_stain\"\n"+text)); err == nil {
			t.Errorf("%q is taken", text)
		}
	}
}
