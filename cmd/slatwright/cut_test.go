package main

import (
	"bytes"
	"encoding/json"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
)

// The plan of every demo design, re-added from what cut prints: sections, strips
// and parts fit with their kerfs and trims, every part is there, and the boards
// cost what the plan says. It shares no code with the planner.
func TestCutJSONAddsUp(t *testing.T) {
	for _, path := range designs(t) {
		name := filepath.Base(path)
		var stdout, stderr bytes.Buffer
		if got := run([]string{"cut", path, "--json"}, &stdout, &stderr); got != statusDone {
			t.Errorf("%s: status %d\n%s", name, got, stderr.String())
			continue
		}
		var plan cutFile
		dec := json.NewDecoder(&stdout)
		dec.DisallowUnknownFields()
		if err := dec.Decode(&plan); err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		_, r, err := load(path)
		if err != nil {
			t.Fatal(err)
		}
		plan.check(t, name, r)
	}
}

type cutFile struct {
	Cost, Bound float64
	Proven      bool
	Boards      []struct {
		Nominal   string
		Length    float64 `json:"length_mm"`
		Width     float64 `json:"width_mm"`
		Thickness float64 `json:"thickness_mm"`
		Price     float64
		Count     int
		Sections  []struct {
			Length float64 `json:"length_mm"`
			Strips []struct {
				Width float64 `json:"width_mm"`
				Parts []struct {
					Order, Mark string
					Length      float64 `json:"length_mm"`
				}
			}
		}
	}
}

func (f cutFile) check(t *testing.T, name string, r *rack.Rack) {
	t.Helper()
	const hair = 1e-6
	shop := r.Design.Shop
	kerf, end, edge := shop.Kerf.MM(), shop.EndTrim.MM(), shop.EdgeTrim.MM()
	cost := 0.0
	cut := map[string]int{}
	for _, b := range f.Boards {
		cost += b.Price * float64(b.Count)
		along := -kerf
		for _, s := range b.Sections {
			along += s.Length + kerf
			across := -kerf
			for _, strip := range s.Strips {
				across += strip.Width + kerf
				run := -kerf
				for _, p := range strip.Parts {
					run += p.Length + kerf
					cut[p.Mark] += b.Count
					if p.Order != r.Design.Order {
						t.Errorf("%s: a part of order %q", name, p.Order)
					}
				}
				if run > s.Length+hair {
					t.Errorf("%s: %.3f mm of parts in a section of %.3f", name, run, s.Length)
				}
			}
			whole := len(s.Strips) == 1 && s.Strips[0].Width == b.Width
			if !whole && (across > b.Width-2*edge+hair || s.Length < shop.MinRipLength.MM()-hair) {
				t.Errorf("%s: %.3f mm of strips from a board of %.3f, in a section of %.3f", name, across, b.Width, s.Length)
			}
		}
		leaves := 1.0
		if part := r.Parts[0].Thickness.MM(); b.Thickness > 2*part {
			leaves = math.Floor(b.Thickness / part)
		}
		if along > leaves*(b.Length-2*end+kerf)-kerf+hair {
			t.Errorf("%s: %.3f mm of sections in a board of %.3f", name, along, b.Length)
		}
	}
	if math.Abs(cost-f.Cost) > 0.001 || f.Bound > f.Cost || f.Proven != (f.Bound == f.Cost) {
		t.Errorf("%s: the boards cost %.2f, the plan says %.2f, bound %.2f, proven %v", name, cost, f.Cost, f.Bound, f.Proven)
	}
	for _, p := range r.Parts {
		want := p.Count + saw.Spares(r, p.Name)
		if got := cut[p.Mark]; got != want && (p.Name != "top" || got < 2*want) { // a top is glued up from staves
			t.Errorf("%s: %d of %s are cut, want %d", name, got, p.Mark, want)
		}
	}
}

// A batch of orders of two units and two woods is one plan for other programs.
func TestCutJSONOfSeveral(t *testing.T) {
	dir := designsDir(t)
	var stdout, stderr bytes.Buffer
	args := []string{"cut", filepath.Join(dir, "shelf-leftovers.toml"), filepath.Join(dir, "counter-wide-gap.toml"), filepath.Join(dir, "tower-tall.toml"), "--json"}
	if got := run(args, &stdout, &stderr); got != statusDone {
		t.Fatalf("status %d\n%s", got, stderr.String())
	}
	for _, order := range []string{"L-107", "L-106", "L-105"} {
		if !strings.Contains(stdout.String(), `"order": "`+order+`"`) {
			t.Errorf("no part of order %s", order)
		}
	}
}
