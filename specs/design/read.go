package design

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"

	"slatwright/specs/diag"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Read reads the text of a design file. The error is a diag.List with all
// faults in the order of the file; the Design then holds nothing reliable but
// its Source, with which the list can be printed.
//
// Limits and text are looked over first; then the TOML decoder judges whether
// the file is TOML; then the tree of places is grown and read by the schema.
func Read(name string, text []byte) (*Design, error) {
	plain := strings.TrimPrefix(string(text), "\ufeff")
	src := diag.NewSource(name, plain)
	d := &Design{Source: src}
	if m := scan(src); m != nil {
		return d, diag.List{*m}
	}
	var valid map[string]any
	if _, err := toml.Decode(plain, &valid); err != nil {
		return d, diag.List{undecoded(src, err)}
	}
	root, err := grow(src)
	if err != nil { // the decoder took it, the tree did not
		m := diag.At(src, src.Place(0, 1), "this TOML is beyond what a design needs: "+err.Error())
		return d, diag.List{m}
	}
	r := &reader{src: src, d: d}
	r.read(root)
	if len(r.list) > 0 {
		r.list.Sort()
		return d, r.list
	}
	return d, nil
}

// undecoded puts the decoder's error in its place. Its columns can be wrong,
// its byte offsets are right.
func undecoded(src *diag.Source, err error) diag.Message {
	var parse toml.ParseError
	if !errors.As(err, &parse) {
		return diag.At(src, src.Place(0, 1), err.Error())
	}
	at := parse.Position.Start
	text := cmp.Or(strings.TrimSuffix(parse.Message, "."), "not TOML")
	m := diag.At(src, src.Place(at, at+max(parse.Position.Len, 1)), strings.ToLower(text[:1])+text[1:])
	switch line := strings.TrimSpace(src.Line(m.Place.Line)); {
	case strings.Contains(text, "'column' has already"), strings.Contains(text, "'board' has already"):
		m.Hint = "a table is written once; columns and boards, of which there are several, are written [[column]], [[board]]"
	case strings.Contains(text, "has already been defined") && strings.HasPrefix(line, "["):
		m.Hint = "a table is written once: put its keys together under the first"
	case strings.Contains(text, "has already been defined"):
		m.Hint = "a key stands once in its table: keep one of the lines"
	case strings.Contains(text, "strings cannot contain newlines"):
		m.Hint = "a closing quote is missing"
	case strings.Contains(text, "expected a top-level item to end") && strings.Contains(text, `got '"'`):
		m.Hint = `a quote is missing, or one too many; inches need no sign: "24 1/2"`
	case strings.Contains(line, "=") && !strings.ContainsAny(line, `"'`):
		m.Hint = "words, and figures with a fraction, a unit or a sign, stand in quotes: \"38 1/2\", \"<= 610 mm\", fit = [\"claret-750\"]"
	}
	return m
}

// read reads the whole tree into the design, defaults first.
func (r *reader) read(root *node) {
	r.units(root.kid("units"))
	r.d.setDefaults()
	r.table(root, "", "")
	r.d.Labels.Grid, _ = table.PlainLabels(r.d.Paper.Labels)
	r.d.Labels.First = 1
	for _, f := range r.later {
		f()
	}
	slices.SortStableFunc(r.d.Lengths, func(a, b Length) int { return cmp.Compare(a.Place.Start, b.Place.Start) })
	slices.SortStableFunc(r.d.Counts, func(a, b Count) int { return cmp.Compare(a.Place.Start, b.Place.Start) })
	slices.SortStableFunc(r.d.Measured, func(a, b Measured) int { return cmp.Compare(a.Place.Start, b.Place.Start) })
	r.bounded()
	if len(r.list) == 0 {
		r.d.describeOthers()
	}
}

// bounded sees that the columns together are not beyond all measure.
func (r *reader) bounded() {
	sum := 0
	for _, c := range r.d.Counts {
		if strings.HasPrefix(c.Name, "column.") && strings.HasSuffix(c.Name, ".count") && c.Lo > 0 {
			if sum += c.Lo; sum > MaxColumns {
				r.fault(c.Place, "", "more than %d columns in all", MaxColumns)
				return
			}
		}
	}
	if len(r.d.Columns) > MaxColumns {
		r.fault(r.d.Columns[MaxColumns].Place, "", "more than %d columns in all", MaxColumns)
	}
}

// setDefaults fills in what is not about lengths of the model; those are left
// to the solver, which asks table.FindDefault.
func (d *Design) setDefaults() {
	usual := func(name string) unit.Length {
		f, ok := table.FindDefault(name)
		if !ok {
			panic("design: no default for " + name)
		}
		return f.Value(d.Units)
	}
	d.Grid = usual("grid")
	d.TopPresent = true
	d.Wood.Species, _ = table.FindSpecies(DefaultSpecies)
	d.Wood.HumidityLo, d.Wood.HumidityHi = 30, 60
	d.Joint.Glue = true
	d.Shop = Shop{
		Kerf: usual("shop.kerf"), EndTrim: usual("shop.end_trim"), EdgeTrim: usual("shop.edge_trim"),
		MinRipLength: usual("shop.min_rip_length"), Tolerance: usual("shop.tolerance"),
	}
	for _, path := range []string{"joint.slat_nail", "joint.apron_nail", "joint.top_nail"} {
		n := Nail{Gauge: 18, Length: usual(path)}
		n.Text = n.text(d.Format())
		*d.Joint.named(path) = n
	}
	d.setFinish()
	home := "letter"
	if d.Units == unit.Metric {
		home = "a4"
	}
	d.Paper = Paper{Drawings: home, Template: home, Labels: home}
	ruler := rulerLength(d.Units)
	d.Printer = Printer{Across: ruler, Along: ruler, AcrossNominal: ruler, AlongNominal: ruler}
}

// Load reads the design file at the path. Besides the faults of Read it
// returns plain errors: no such file, not a file, larger than a design can be.
func Load(path string) (*Design, error) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, plainly(path, err)
	case info.IsDir():
		return nil, fmt.Errorf("%s is a folder, not a design file", path)
	case info.Size() > maxBytes:
		return nil, fmt.Errorf("%s is larger than a design can be: %d bytes, the most is %d", path, info.Size(), maxBytes)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, plainly(path, err)
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, maxBytes+1)) // a pipe tells no size
	if err != nil {
		return nil, plainly(path, err)
	}
	if len(text) > maxBytes {
		return nil, fmt.Errorf("%s is larger than a design can be: the most is %d bytes", path, maxBytes)
	}
	return Read(path, text)
}

// plainly words an error of the file system.
func plainly(path string, err error) error {
	switch {
	case errors.Is(err, os.ErrNotExist):
		return fmt.Errorf("there is no file %s", path)
	case errors.Is(err, os.ErrPermission):
		return fmt.Errorf("%s may not be read", path)
	}
	return err
}
