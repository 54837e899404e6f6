package report_test

import (
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/saw"
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
	plan := planned(t, r)
	for _, list := range []struct {
		make func() ([]byte, error)
		rows int
	}{
		{func() ([]byte, error) { return report.Parts(r) }, len(r.Parts)},
		{func() ([]byte, error) { return report.Boards(plan) }, len(plan.Needs())},
		{func() ([]byte, error) { return report.NoBoards(r, "no board") }, len(r.Parts)},
	} {
		text, err := list.make()
		if err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(strings.NewReader(string(text))).ReadAll()
		if err != nil || len(rows) != 1+list.rows || !strings.HasSuffix(string(text), "\r\n") {
			t.Errorf("%d rows, %v\n%s", len(rows), err, text)
		}
	}
}

func planned(t *testing.T, racks ...*rack.Rack) *saw.Plan {
	t.Helper()
	p, err := saw.Make(racks, saw.Quick)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// What is on hand comes first, at no price, and what is bought adds up to the
// plan's cost.
func TestShoppingByHand(t *testing.T) {
	boards := "rows    = 5\n[[board]]\nnominal = \"1x3\"\nlength = \"8 ft\"\nprice = 4.25\n[[board]]\nnominal = \"1x3\"\nlength = \"4 ft\"\non_hand = 2\n"
	plan := planned(t, build(t, "harbour-small", "rows    = 5\n", boards))
	text, err := report.Boards(plan)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(string(text))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if got := rows[1][0] + " " + rows[1][9] + " " + rows[1][10]; got != "1x3 on hand " {
		t.Errorf("the first row is %q; want 1x3 on hand\n%s", got, text)
	}
	n, _ := strconv.Atoi(rows[2][2])
	if want := strconv.Itoa(n*425/100) + "." + fmt.Sprintf("%02d", n*425%100); len(rows) != 3 || rows[2][11] != want || int64(n)*425 != plan.Cost || rows[2][12] != "stated" {
		t.Errorf("%d boards cost %s, the plan %d; want %s\n%s", n, rows[2][11], plan.Cost, want, text)
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
