package main

import (
	"encoding/json"
	"io"

	"slatwright/geometry/rack"
	"slatwright/geometry/revision"
	"slatwright/specs/design"
)

// The comparison as it is written for other programs. Lengths are exact
// decimals in millimetres with the text of a drawing beside them.
type (
	comparisonFile struct {
		Format      int              `json:"format"`
		Old         string           `json:"old"`
		New         string           `json:"new"`
		Status      string           `json:"status"` // of the new design
		Statements  []statementEntry `json:"statements"`
		Counts      []countEntry     `json:"counts"`
		Lengths     []lengthEntry    `json:"lengths"`
		Checks      []checkEntry     `json:"checks"`
		WoodChanged bool             `json:"wood_changed"`
		Parts       []partEntry      `json:"parts"`
		Sheets      []sheetEntry     `json:"sheets"`
	}
	lineEntry struct {
		Line int    `json:"line"`
		Text string `json:"text"`
	}
	statementEntry struct {
		Name string     `json:"name"`
		Old  *lineEntry `json:"old"`
		New  *lineEntry `json:"new"`
	}
	countEntry struct {
		Name string `json:"name"`
		Old  int    `json:"old"`
		New  int    `json:"new"`
	}
	figureEntry struct {
		MM   json.Number `json:"mm"`
		Text string      `json:"text"`
	}
	lengthEntry struct {
		Name string       `json:"name"`
		Old  *figureEntry `json:"old"`
		New  *figureEntry `json:"new"`
	}
	checkEntry struct {
		Name  string `json:"name"`
		Where string `json:"where"`
		Old   string `json:"old"` // "" where it was not judged
		New   string `json:"new"`
		Says  string `json:"says"`
	}
	partEntry struct {
		Use   string    `json:"use"`
		Count int       `json:"count"`
		Old   *lotEntry `json:"old"`
		New   *lotEntry `json:"new"`
		Cuts  []string  `json:"cuts,omitempty"`
	}
	lotEntry struct {
		Mark  string      `json:"mark"`
		Name  string      `json:"name"`
		Small json.Number `json:"small_mm"`
		Large json.Number `json:"large_mm"`
		Long  json.Number `json:"length_mm"`
		Eased json.Number `json:"eased_mm"`
	}
	sheetEntry struct {
		Verdict string `json:"verdict"`
		File    string `json:"file"`
		Old     int    `json:"old_page,omitempty"`
		New     int    `json:"new_page,omitempty"`
		Name    string `json:"name"`
		Title   string `json:"title"`
	}
)

// writeJSON writes the comparison for other programs.
func (c comparison) writeJSON(w io.Writer) error {
	f := comparisonFile{
		Format: 1, Old: c.oldPath, New: c.newPath, Status: string(c.status), WoodChanged: c.parts.WoodChanged,
		Statements: []statementEntry{}, Counts: []countEntry{}, Lengths: []lengthEntry{}, Checks: []checkEntry{}, Parts: []partEntry{}, Sheets: []sheetEntry{},
	}
	for _, s := range c.statements {
		name := s.New
		if name == nil {
			name = s.Old
		}
		f.Statements = append(f.Statements, statementEntry{name.Name, lineOf(s.Old), lineOf(s.New)})
	}
	for _, n := range c.counts {
		f.Counts = append(f.Counts, countEntry(n))
	}
	for _, l := range c.lengths {
		f.Lengths = append(f.Lengths, lengthEntry{l.Name, figureOf(c.old, l.Old), figureOf(c.new, l.New)})
	}
	for _, x := range c.checks {
		var e checkEntry
		if x.Old != nil {
			e = checkEntry{Name: x.Old.Name, Where: x.Old.Where, Old: string(x.Old.Status), Says: x.Old.Says}
		}
		if x.New != nil {
			e.Name, e.Where, e.New, e.Says = x.New.Name, x.New.Where, string(x.New.Status), x.New.Says
		}
		f.Checks = append(f.Checks, e)
	}
	for _, m := range c.parts.Moves {
		e := partEntry{Use: string(m.Use), Count: m.Count, Old: lotOf(m.Old), New: lotOf(m.New)}
		for _, cut := range m.Cuts {
			e.Cuts = append(e.Cuts, string(cut))
		}
		f.Parts = append(f.Parts, e)
	}
	for _, s := range c.sheets {
		f.Sheets = append(f.Sheets, sheetEntry{string(s.Verdict), s.File, s.Old, s.New, s.Name, s.Title})
	}
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	out.SetIndent("", "  ")
	return out.Encode(f)
}

func lineOf(s *design.Said) *lineEntry {
	if s == nil {
		return nil
	}
	return &lineEntry{s.Place.Line, s.Name + " = " + s.Value}
}

func figureOf(r *rack.Rack, l *rack.Solved) *figureEntry {
	if l == nil {
		return nil
	}
	return &figureEntry{json.Number(l.Value.Decimal()), r.Format.Text(l.Value)}
}

func lotOf(l *revision.Lot) *lotEntry {
	if l == nil {
		return nil
	}
	mm := func(v interface{ Decimal() string }) json.Number { return json.Number(v.Decimal()) }
	return &lotEntry{l.Mark, l.Name, mm(l.Size.Small), mm(l.Size.Large), mm(l.Size.Length), mm(l.Size.Eased)}
}
