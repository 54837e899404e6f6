package report_test

import (
	"encoding/csv"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/golden"
	"slatwright/render/report"
	"slatwright/specs/design"
)

// build solves a demo design, with one text in it exchanged for another.
func build(t *testing.T, name, old, new string) *rack.Rack {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(golden.Root(t), "testdata", "designs", name+".toml"))
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(text), old) {
		t.Fatalf("%s does not say %q", name, old)
	}
	return racktest.Build(t, strings.Replace(string(text), old, new, 1))
}

func TestReportHoldsTheRack(t *testing.T) {
	r := build(t, "harbour-small", "", "")
	text, err := report.JSON(r, check.All(r))
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Format  int
		Status  string
		Counts  map[string]int
		Lengths map[string]struct {
			MM   json.Number
			Text string
		}
		Columns  []struct{ Rows int }
		Parts    []struct{ Count int }
		Checks   []struct{ Figure, Limit json.Number }
		Conflict *struct{}
	}
	if err := json.Unmarshal(text, &got); err != nil {
		t.Fatal(err)
	}
	if got.Format != 1 || got.Status != "ok" || got.Counts["bottles"] != 20 || got.Counts["slats"] != 40 || len(got.Columns) != 4 ||
		got.Parts[0].Count != 40 || len(got.Checks) == 0 || got.Conflict != nil {
		t.Errorf("report\n%s", text)
	}
	for _, l := range r.Lengths {
		if x := got.Lengths[l.Name]; x.MM.String() != l.Value.Decimal() || x.Text != r.Format.Text(l.Value) {
			t.Errorf("%s: %v; want %s and %s", l.Name, x, l.Value.Decimal(), r.Format.Text(l.Value))
		}
	}
}

func TestReportOfContradiction(t *testing.T) {
	d, err := design.Read("d.toml", []byte("[rack]\ncolumns = 4\nrows = 2\nwidth = \"<= 12\"\n[bottles]\nfit = [\"claret-750\"]\n"))
	if err != nil {
		t.Fatal(err)
	}
	_, err = rack.Build(d)
	var clash *rack.Clash
	if !errors.As(err, &clash) {
		t.Fatalf("error %v; want a clash", err)
	}
	text, err := report.Contradiction(d, clash)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"status": "contradiction"`, `"text": "rack.width = \"<= 12\""`, `"lengths": {}`, `"checks": []`} {
		if !strings.Contains(string(text), want) {
			t.Errorf("no %s in\n%s", want, text)
		}
	}
}

func TestListsAreCSV(t *testing.T) {
	r := build(t, "tower-tall", "", "")
	for _, list := range []func(*rack.Rack) ([]byte, error){report.Parts, report.Boards} {
		text, err := list(r)
		if err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(strings.NewReader(string(text))).ReadAll()
		if err != nil || len(rows) != 1+len(r.Parts) || !strings.HasSuffix(string(text), "\r\n") {
			t.Errorf("%d rows, %v\n%s", len(rows), err, text)
		}
	}
}

// By hand: 40 slats of 9 1/2 in, 1 in wide. A board of 8 ft less two end trims
// holds 9 of them along; the shopping list must hold at least that many boards
// times that many pieces. Boards on hand are taken before any are bought.
func TestShoppingByHand(t *testing.T) {
	boards := "rows    = 5\n[[board]]\nnominal = \"1x2\"\nlength = \"8 ft\"\nprice = 4\n[[board]]\nnominal = \"1x2\"\nlength = \"8 ft\"\non_hand = 5\n"
	r := build(t, "harbour-small", "rows    = 5\n", boards)
	text, err := report.Boards(r)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(string(text))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(rows[1][:2], " ") + " " + rows[1][8]; got != "1x2 5 on hand" {
		t.Errorf("slats are cut from %s; want 1x2 5 on hand\n%s", got, text)
	}
	if got := rows[3][12]; got != "glued up from 2 strips" {
		t.Errorf("aprons: %q; want them glued up from 2 strips, for no board is wide enough\n%s", got, text)
	}
}

func TestMark(t *testing.T) {
	plain := report.Mark(build(t, "harbour-small", "", ""))
	for _, c := range []struct {
		old, new string
		same     bool
	}{
		{"# The small rack", "# A rack", true},
		{"rows    = 5", `rows    = "5 .. 5"`, true},
		{"rows    = 5", "rows    = 4", false},
		{`"A"`, `"B"`, false},
	} {
		if got := report.Mark(build(t, "harbour-small", c.old, c.new)); (got == plain) != c.same || len(got) != 8 {
			t.Errorf("mark %s with %s for %s, plain %s; same: want %v", got, c.new, c.old, plain, c.same)
		}
	}
}
