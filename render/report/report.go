// Package report writes what is read by other programs: the report of a solved
// rack or of a contradiction as JSON, the cut list and the shopping list as
// CSV; and what commands print of a quote, a cutting plan, a chart of sizes or
// two designs compared. A rack.Rack and its findings go in; the bytes of files
// come out, the same for the same rack. Lengths are exact decimals in
// millimetres.
package report

import (
	"bytes"
	"encoding/json"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/specs/design"
	"slatwright/specs/unit"
)

// formatNumber is the version of the report's form.
const formatNumber = 1

// The report as it is written. A json.Number holds an exact decimal.
type (
	file struct {
		Format   int       `json:"format"`
		Title    string    `json:"title"`
		Order    string    `json:"order"`
		Revision string    `json:"revision"`
		Mark     string    `json:"mark"`
		Units    string    `json:"units"`
		Status   string    `json:"status"`
		Counts   *counts   `json:"counts"`
		Lengths  lengths   `json:"lengths"`
		Columns  []column  `json:"columns"`
		Measured []measure `json:"measured,omitempty"`
		Parts    []part    `json:"parts"`
		Checks   []finding `json:"checks"`
		Next     []next    `json:"next"`
		Conflict *conflict `json:"conflict"`
	}
	counts struct {
		Columns int `json:"columns"`
		Rows    int `json:"rows"`
		Bottles int `json:"bottles"`
		Ladders int `json:"ladders"`
		Legs    int `json:"legs"`
		Slats   int `json:"slats"`
		Aprons  int `json:"aprons"`
	}
	length struct {
		MM      json.Number `json:"mm"`
		Text    string      `json:"text"`
		From    string      `json:"from"`
		Line    int         `json:"line,omitempty"`
		Because string      `json:"because"`
	}
	column struct {
		Gap   json.Number   `json:"gap_mm"`
		Rise  json.Number   `json:"rise_mm"`
		First json.Number   `json:"first_mm"`
		Rows  int           `json:"rows"`
		Rises []json.Number `json:"rises_mm,omitempty"` // bottom up, only where they differ
		Fit   []string      `json:"fit"`
	}
	part struct {
		Mark      string      `json:"mark"`
		Name      string      `json:"name"`
		Count     int         `json:"count"`
		Thickness json.Number `json:"thickness_mm"`
		Width     json.Number `json:"width_mm"`
		Length    json.Number `json:"length_mm"`
		Stock     string      `json:"stock,omitempty"`
		After     []string    `json:"cut_after_measuring,omitempty"`
	}
	measure struct {
		Name     string      `json:"name"`
		Line     int         `json:"line"`
		Later    bool        `json:"later"` // still to be measured
		MM       json.Number `json:"mm"`
		Designed json.Number `json:"designed_mm"`
		Aside    []lineText  `json:"in_place_of"`
	}
	finding struct {
		Name   string      `json:"name"`
		Where  string      `json:"where"`
		Status string      `json:"status"`
		Figure json.Number `json:"figure"`
		Limit  json.Number `json:"limit"`
		Unit   string      `json:"unit"`
		Says   string      `json:"says"`
		Change string      `json:"change,omitempty"`
		Source string      `json:"source,omitempty"`
	}
	next struct {
		Count     string `json:"count"`
		Value     int    `json:"value"`
		StoppedBy []stop `json:"stopped_by"`
	}
	stop struct {
		Line  int    `json:"line,omitempty"`
		Text  string `json:"text"`
		Needs string `json:"needs"`
	}
	conflict struct {
		Lines   []lineText `json:"lines"`
		Changes []lineText `json:"changes"`
	}
	lineText struct {
		Line int    `json:"line"`
		Text string `json:"text"`
	}
)

// lengths is an object whose keys keep the order of the model.
type lengths struct {
	names  []string
	values []length
}

// MarshalJSON writes the object.
func (l lengths) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, name := range l.names {
		if i > 0 {
			b.WriteByte(',')
		}
		if err := encode(&b, name, ""); err != nil {
			return nil, err
		}
		b.WriteByte(':')
		if err := encode(&b, l.values[i], ""); err != nil {
			return nil, err
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// encode writes a value without turning "<" into an escape: statements are
// full of them, and no browser reads the report.
func encode(b *bytes.Buffer, v any, indent string) error {
	e := json.NewEncoder(b)
	e.SetEscapeHTML(false)
	e.SetIndent("", indent)
	return e.Encode(v)
}

// JSON returns the report of a solved rack.
func JSON(r *rack.Rack, findings []check.Finding) ([]byte, error) {
	f := head(r.Design, string(check.Worst(findings)))
	f.Mark = Mark(r)
	c := counts(r.Counts)
	f.Counts = &c
	for _, l := range r.Lengths {
		f.Lengths.names = append(f.Lengths.names, l.Name)
		f.Lengths.values = append(f.Lengths.values, length{mm(l.Value), r.Format.Text(l.Value), string(l.From), l.Line, l.Because})
	}
	for _, c := range r.Columns {
		f.Columns = append(f.Columns, columnOf(r, r.Kinds[c.Kind]))
	}
	for _, m := range r.Measured {
		f.Measured = append(f.Measured, measure{m.Name, m.Line, m.Later, mm(m.Value), mm(m.Designed), lines(m.Aside)})
	}
	for _, p := range r.Parts {
		f.Parts = append(f.Parts, part{p.Mark, p.Name, p.Count, mm(p.Thickness), mm(p.Width), mm(p.Length), p.Stock, r.Awaits(p)})
	}
	for _, x := range findings {
		f.Checks = append(f.Checks, finding{x.Name, x.Where, string(x.Status), json.Number(x.Figure), json.Number(x.Limit), x.Unit, x.Says, x.Change, x.Source})
	}
	for _, n := range r.Nexts {
		one := next{Count: n.Count, Value: n.Value, StoppedBy: []stop{}}
		for _, s := range n.StoppedBy {
			one.StoppedBy = append(one.StoppedBy, stop(s))
		}
		f.Next = append(f.Next, one)
	}
	return f.bytes()
}

// Contradiction returns the report of a design whose lines cannot all hold.
func Contradiction(d *design.Design, c *rack.Clash) ([]byte, error) {
	f := head(d, "contradiction")
	f.Conflict = &conflict{Lines: lines(c.Lines), Changes: lines(c.Changes)}
	return f.bytes()
}

// head returns a report with what every one has, its lists empty, not null.
func head(d *design.Design, status string) *file {
	return &file{
		Format: formatNumber, Title: d.Title, Order: d.Order, Revision: d.Revision, Units: d.Units.String(), Status: status,
		Columns: []column{}, Parts: []part{}, Checks: []finding{}, Next: []next{},
	}
}

func (f *file) bytes() ([]byte, error) {
	var b bytes.Buffer
	if err := encode(&b, f, "  "); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

func lines(list []rack.LineText) []lineText {
	out := []lineText{}
	for _, l := range list {
		out = append(out, lineText(l))
	}
	return out
}

// columnOf describes a column. A column of one row has the rise that a second
// row would stand at.
func columnOf(r *rack.Rack, k rack.Kind) column {
	c := column{Gap: mm(k.Gap), First: mm(k.Under[0]), Rows: k.Rows, Fit: bottles(k)}
	rise := unit.Length(0)
	switch {
	case len(k.Rises) > 0:
		rise = k.Rises[0]
	case r.Has("cell.rise"):
		rise = r.Len("cell.rise")
	}
	c.Rise = mm(rise)
	for _, other := range k.Rises {
		if other != rise {
			for _, x := range k.Rises {
				c.Rises = append(c.Rises, mm(x))
			}
			break
		}
	}
	return c
}

// bottles names each bottle that some row of the column must hold, once.
func bottles(k rack.Kind) []string {
	names := []string{}
	seen := map[string]bool{}
	for _, row := range k.Fit {
		for _, b := range row {
			if !seen[b.ID] {
				seen[b.ID] = true
				names = append(names, b.ID)
			}
		}
	}
	return names
}

func mm(l unit.Length) json.Number { return json.Number(l.Decimal()) }
