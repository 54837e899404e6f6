package design_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"slatwright/specs/design"
	"slatwright/specs/diag"
	"slatwright/specs/unit"
)

const (
	in = unit.Inch
	mm = unit.Millimetre
)

// read reads a text that is expected to be without fault.
func read(t *testing.T, text string) *design.Design {
	t.Helper()
	d, err := design.Read("test.toml", []byte(text))
	if err != nil {
		t.Fatalf("reading:\n%s\n%v", text, err)
	}
	return d
}

var noPlaces = cmpopts.IgnoreTypes(diag.Place{})

func TestLengthStatements(t *testing.T) {
	for _, c := range []struct {
		value  string
		kind   design.Kind
		lo, hi unit.Length
		unit   unit.System
	}{
		{`24`, design.Exact, 24 * in, 24 * in, unit.Imperial},
		{`1_0.5`, design.Exact, 10*in + in/2, 10*in + in/2, unit.Imperial},
		{`"24 3/4"`, design.Exact, 24*in + 3*in/4, 24*in + 3*in/4, unit.Imperial},
		{`"24\""`, design.Exact, 24 * in, 24 * in, unit.Imperial},
		{`'24"'`, design.Exact, 24 * in, 24 * in, unit.Imperial},
		{`"610 mm"`, design.Exact, 610 * mm, 610 * mm, unit.Metric},
		{`"<= 24"`, design.AtMost, 0, 24 * in, unit.Imperial},
		{`"≤24"`, design.AtMost, 0, 24 * in, unit.Imperial},
		{`">= 20 mm"`, design.AtLeast, 20 * mm, 0, unit.Metric},
		{`"20 .. 24"`, design.Between, 20 * in, 24 * in, unit.Imperial},
		{`"20..24 1/2"`, design.Between, 20 * in, 24*in + in/2, unit.Imperial},
		{`"61 .. 65 cm"`, design.Between, 610 * mm, 650 * mm, unit.Metric},
		{`"500 mm .. 2 ft"`, design.Between, 500 * mm, 24 * in, unit.Imperial},
		{`"~ 24"`, design.Near, 24 * in, 24 * in, unit.Imperial},
	} {
		d := read(t, "[rack]\nwidth = "+c.value)
		want := []design.Length{{
			Name: "rack.width", Kind: c.kind, Lo: c.lo, Hi: c.hi, Unit: c.unit, Text: "rack.width = " + c.value,
		}}
		if diff := cmp.Diff(want, d.Lengths, noPlaces); diff != "" {
			t.Errorf("%s: (-want +got)\n%s", c.value, diff)
		}
		if got := d.Source.Slice(d.Lengths[0].Place); got != c.value {
			t.Errorf("%s: the place holds %s", c.value, got)
		}
	}
}

func TestCountStatements(t *testing.T) {
	for _, c := range []struct {
		value  string
		kind   design.Kind
		lo, hi int
	}{
		{`5`, design.Exact, 5, 5}, {`"5"`, design.Exact, 5, 5}, {`"3 .. 6"`, design.Between, 3, 6},
		{`"<= 6"`, design.AtMost, 0, 6}, {`">= 2"`, design.AtLeast, 2, 0}, {`"~ 5"`, design.Near, 5, 5}, {`"most"`, design.Most, 0, 0},
	} {
		d := read(t, "[rack]\ncolumns = "+c.value)
		want := []design.Count{{Name: "rack.columns", Kind: c.kind, Lo: c.lo, Hi: c.hi, Text: "rack.columns = " + c.value}}
		if diff := cmp.Diff(want, d.Counts, noPlaces); diff != "" {
			t.Errorf("%s: (-want +got)\n%s", c.value, diff)
		}
	}
}

func TestRelations(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"rack.height <= 1.6 * rack.width", "1/1 rack.height -8/5 rack.width <= 0"},
		{"rack.width / 2 + 1 1/2 >= rack.depth - 3 in", "1/2 rack.width -1/1 rack.depth >= -9144000"},
		{"-(leg.width - 2 * slat.height) = 10 mm", "-1/1 leg.width 2/1 slat.height = 800000"},
		{"rack.width ~ 24 3/4", "1/1 rack.width ~ 50292000"},
		{"rack.width ≤ rack.width + 2 rack.depth", ""},
		{"rack.width ~ 24-3/4", ""}, // 24 3/4, or 24 less 3/4
		{"rack.width <= 24 - 3/4", "1/1 rack.width <= 47244000"},
		{"3/4 * rack.width == (1 + 2) * rack.depth", "3/4 rack.width -3/1 rack.depth = 0"},
		{"column.2.gap >= column.1.gap", "1/1 column.2.gap -1/1 column.1.gap >= 0"},
		{"rack.width >= 2' 1-1/2\"", "1/1 rack.width >= 51816000"},
	} {
		d, err := design.Read("test.toml", []byte("where = ['''"+c.text+"''']\n[[column]]\n[[column]]\n"))
		if c.want == "" {
			if err == nil {
				t.Errorf("%s: read as %+v; want an error", c.text, d.Where)
			}
			continue
		}
		if err != nil || len(d.Where) != 1 {
			t.Errorf("%s: %v, %d relations", c.text, err, len(d.Where))
			continue
		}
		w := d.Where[0]
		var got strings.Builder
		for _, term := range w.Terms {
			fmt.Fprintf(&got, "%d/%d %s ", term.Num, term.Den, term.Name)
		}
		fmt.Fprintf(&got, "%s %d", w.Op, w.Const)
		if got.String() != c.want || w.Text != c.text {
			t.Errorf("%s:\ngot  %s\nwant %s", c.text, got.String(), c.want)
		}
	}
}

func TestWholeFile(t *testing.T) {
	text, err := os.ReadFile("../../testdata/specs/whole.toml")
	if err != nil {
		t.Fatal(err)
	}
	d := read(t, string(text))
	if got := fmt.Sprint(d.Title, d.Order, d.Customer, d.Date, d.Revision); got != "Cellar wallR-014Mill House2031-04-02B" {
		t.Errorf("title block %q", got)
	}
	var names []string
	for _, l := range d.Lengths {
		names = append(names, l.Name)
	}
	want := []string{"site.width", "site.fit", "rack.width", "ladder.pitch", "column.1.gap", "column.2.row.1.rise"}
	if diff := cmp.Diff(want, names); diff != "" {
		t.Errorf("lengths (-want +got)\n%s", diff)
	}
	if d.Lengths[0].Lo != 1198*mm || len(d.SiteMeasures) != 1 || len(d.SiteMeasures[0].Values) != 3 {
		t.Errorf("the site is %+v of %+v; want the least, 1198 mm, of three", d.Lengths[0], d.SiteMeasures)
	}
	house, ok := d.Bottle("house")
	if !ok || house.Diameter.Min != 75*mm || house.Diameter.Nominal != 77*mm+mm/2 || house.Diameter.Max != 80*mm ||
		house.Mass.Nominal != 1361 || house.Height.Nominal != 300*mm {
		t.Errorf("house: %+v; want 75 .. 80 mm, 3 lb, the height of the spirits bottle, whose 78 mm are nearest", house)
	}
	if claret, ok := d.Bottle("claret-750"); !ok || claret.Diameter.Nominal != 75*mm {
		t.Errorf("claret-750: %+v, %v; want that of the table", claret, ok)
	}
	// Two are described; more are asked for, which makes a third kind of the others.
	if len(d.Columns) != 3 || d.Columns[0].Fit == nil || d.Columns[1].Fit != nil || len(d.Columns[1].Rows) != 2 || d.Columns[1].Rows[1].Fit == nil {
		t.Errorf("columns: %+v", d.Columns)
	}
	boards := []design.Board{{Length: 2400 * mm, Price: 1250, Priced: true}, {Length: 1800 * mm, OnHand: 3}}
	for i, b := range d.Boards {
		b.Nominal, b.Thickness, b.Width, b.Text = boards[i].Nominal, 0, 0, ""
		if diff := cmp.Diff(boards[i], b, noPlaces); diff != "" {
			t.Errorf("board %d (-want +got)\n%s", i+1, diff)
		}
	}
	if d.Boards[0].Thickness != 20*mm || d.Boards[1].Width != 94*mm {
		t.Errorf("boards %+v; want the first dressed, the second as measured", d.Boards)
	}
	if d.Shop.Kerf != 2*mm+mm/2 || d.Shop.EndTrim != 12*mm || len(d.Shop.Spares) != 2 || d.Shop.Spares[1].Count != 1 {
		t.Errorf("shop: %+v", d.Shop)
	}
	if d.Joint.SlatNail.Length != 35*mm || d.Joint.SlatNail.Gauge != 23 || d.Joint.TopNail.Text != "18 ga x 38 mm" {
		t.Errorf("nails: %+v", d.Joint)
	}
	if markup, ok := d.Price.Item("markup"); !ok || markup.Hundredths != 1250 || d.Price.Currency != "€" {
		t.Errorf("price: %+v", d.Price)
	}
	if d.Paper.Template != "roll" || d.Paper.TemplateRoll != 610*mm || d.Paper.Drawings != "a3" || d.Paper.Labels != "a4" {
		t.Errorf("paper: %+v", d.Paper)
	}
	if p := d.Printer; p.Across != 99*mm+mm/2 || p.AcrossNominal != 100*mm || p.Along != 100*mm {
		t.Errorf("printer: %+v", p)
	}
	if d.TopPresent || d.Wood.Species.ID != "white_ash" || d.Wood.HumidityLo != 35 || d.Units != unit.Metric || d.Grid != mm/2 {
		t.Errorf("top %v, wood %s from %d %%, units %v, grid %v", d.TopPresent, d.Wood.Species.ID, d.Wood.HumidityLo, d.Units, d.Grid)
	}
	if stock, ok := d.Stock("leg"); !ok || stock.Nominal.Name != "20x45" {
		t.Errorf("stock of the legs: %+v, %v", stock, ok)
	}
}

func TestStarter(t *testing.T) {
	for _, sys := range []unit.System{unit.Imperial, unit.Metric} {
		text := design.Starter(sys)
		if d := read(t, text); d.Units != sys || len(d.Counts) != 2 || len(d.Lengths) != 0 || len(d.Fit.Bottles) != 1 {
			t.Errorf("%v: the starter states %+v, %+v, %+v", sys, d.Counts, d.Lengths, d.Fit)
		}
		// With every commented key taken in, it still reads.
		var all []string
		for _, line := range strings.Split(text, "\n") {
			if bare, ok := strings.CutPrefix(line, "# "); ok && (strings.HasPrefix(bare, "[") || strings.Contains(bare, " = ")) {
				line = bare
			}
			all = append(all, line)
		}
		if d := read(t, strings.Join(all, "\n")); len(d.Lengths) < 8 || len(d.Boards) != 1 {
			t.Errorf("%v: with all of it taken in, the starter states %+v", sys, d.Lengths)
		}
	}
}

// A file made to cost time or memory is refused, and at once.
func TestHostile(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"long key", strings.Repeat("a.", 10_000) + "a = 1", "1:1: a line of 20005 bytes; the most is 4096"},
		{"dotted key", strings.Repeat("a.", 1_000) + "a = 1", "1:16: a key of more than 8 parts"},
		{"inline tables", "x = " + strings.Repeat("{a=", 1_300), "1:53: brackets more than 16 deep"},
		{"inline tables, long", "x = " + strings.Repeat("{a=", 13_000), "1:1: a line of 39004 bytes; the most is 4096"},
		{"deep lists", "x = " + strings.Repeat("[\n", 100_000), "17:1: brackets more than 16 deep"},
		{"many tables", strings.Repeat("[[a]]\n", 50_000), "10001:1: more than 20000 keys"},
		{"large", strings.Repeat("#\n", 1<<20), "0:0: larger than a design can be: 2097152 bytes, the most is 1048576"},
		{"not UTF-8", "title = \"\xff\"", "1:10: not UTF-8 text"},
		{"NUL", "title = \"a\x00\"", "1:11: control character U+0000"},
		{"escape", "# \x1b[31m", "1:3: control character U+001B"},
		{"carriage return", "a = 1\rb = 2", "1:6: control character U+000D"},
	} {
		start := time.Now()
		_, err := design.Read("hostile.toml", []byte(c.text))
		if err == nil || err.Error() != c.want {
			t.Errorf("%s: %v; want %s", c.name, err, c.want)
		}
		if took := time.Since(start); took > time.Second {
			t.Errorf("%s: took %v", c.name, took)
		}
	}
}

func TestLoad(t *testing.T) {
	dir := t.TempDir()
	write := func(name string, size int64) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte("[rack]\nrows = 3\n"), 0o600); err != nil {
			t.Fatal(err)
		}
		if size > 0 {
			if err := os.Truncate(path, size); err != nil {
				t.Fatal(err)
			}
		}
		return path
	}
	good, large, missing := write("good.toml", 0), write("large.toml", 40<<20), filepath.Join(dir, "missing.toml")
	if d, err := design.Load(good); err != nil || d.Source.Name != good || len(d.Counts) != 1 {
		t.Errorf("a good file: %v", err)
	}
	for _, c := range []struct{ path, want string }{
		{missing, "there is no file " + missing},
		{dir, dir + " is a folder, not a design file"},
		{large, large + " is larger than a design can be: 41943040 bytes, the most is 1048576"},
	} {
		_, err := design.Load(c.path)
		var list diag.List
		if err == nil || err.Error() != c.want || errors.As(err, &list) {
			t.Errorf("Load(%s): %v; want the plain error %s", c.path, err, c.want)
		}
	}
}

// Whatever the file, reading it ends, does not panic, and every message points
// into it.
func FuzzRead(f *testing.F) {
	f.Add(design.Starter(unit.Imperial))
	files, _ := filepath.Glob("../../testdata/errors/*.toml")
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text))
	}
	f.Add("'\uf025") // the decoder's place is within a character
	f.Add("\r\n\x80")
	f.Add("a.'b'.\"c\\u0041\" = [{x = 1,}, \"\"\"\n\\\n  z\"\"\"]")
	f.Fuzz(func(t *testing.T, text string) {
		d, err := design.Read("fuzz.toml", []byte(text))
		var list diag.List
		if err != nil && !errors.As(err, &list) {
			t.Fatalf("a plain error: %v", err)
		}
		for _, m := range list {
			if !m.Place.None() {
				checkPlace(t, d.Source, m)
			}
			m.Format(d.Source)
		}
	})
}
