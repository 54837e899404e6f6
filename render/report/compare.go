package report

import (
	"bytes"
	"encoding/json"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/revision"
	"slatwright/render/reprint"
	"slatwright/specs/design"
)

// Comparison is all that is told about an old design and a new one.
type Comparison struct {
	OldPath, NewPath string
	Old, New         *rack.Rack
	Status           check.Status // of the new one
	Statements       []revision.Statement
	Counts           []revision.Count
	Lengths          []revision.Length
	Checks           []revision.Check
	Parts            revision.Parts
	Sheets           []reprint.Sheet
}

// The comparison as it is written for other programs. Lengths are exact
// decimals in millimetres with the text of a drawing beside them.
type (
	comparisonFile struct {
		Format      int                 `json:"format"`
		Old         string              `json:"old"`
		New         string              `json:"new"`
		Status      string              `json:"status"` // of the new design
		Statements  []comparedStatement `json:"statements"`
		Counts      []comparedCount     `json:"counts"`
		Lengths     []comparedLength    `json:"lengths"`
		Checks      []comparedCheck     `json:"checks"`
		WoodChanged bool                `json:"wood_changed"`
		Parts       []comparedPart      `json:"parts"`
		Sheets      []comparedSheet     `json:"sheets"`
	}
	comparedLine struct {
		Line int    `json:"line"`
		Text string `json:"text"`
	}
	comparedStatement struct {
		Name string        `json:"name"`
		Old  *comparedLine `json:"old"`
		New  *comparedLine `json:"new"`
	}
	comparedCount struct {
		Name string `json:"name"`
		Old  int    `json:"old"`
		New  int    `json:"new"`
	}
	comparedFigure struct {
		MM   json.Number `json:"mm"`
		Text string      `json:"text"`
	}
	comparedLength struct {
		Name string          `json:"name"`
		Old  *comparedFigure `json:"old"`
		New  *comparedFigure `json:"new"`
	}
	comparedCheck struct {
		Name  string `json:"name"`
		Where string `json:"where"`
		Old   string `json:"old"` // "" where it was not judged
		New   string `json:"new"`
		Says  string `json:"says"`
	}
	comparedPart struct {
		Use   string       `json:"use"`
		Count int          `json:"count"`
		Old   *comparedLot `json:"old"`
		New   *comparedLot `json:"new"`
		Cuts  []string     `json:"cuts,omitempty"`
	}
	comparedLot struct {
		Mark  string      `json:"mark"`
		Name  string      `json:"name"`
		Small json.Number `json:"small_mm"`
		Large json.Number `json:"large_mm"`
		Long  json.Number `json:"length_mm"`
		Eased json.Number `json:"eased_mm"`
	}
	comparedSheet struct {
		Verdict string `json:"verdict"`
		File    string `json:"file"`
		Old     int    `json:"old_page,omitempty"`
		New     int    `json:"new_page,omitempty"`
		Name    string `json:"name"`
		Title   string `json:"title"`
	}
)

// JSON returns the comparison for other programs.
func (c Comparison) JSON() ([]byte, error) {
	f := comparisonFile{
		Format: 1, Old: c.OldPath, New: c.NewPath, Status: string(c.Status), WoodChanged: c.Parts.WoodChanged,
		Statements: []comparedStatement{}, Counts: []comparedCount{}, Lengths: []comparedLength{}, Checks: []comparedCheck{}, Parts: []comparedPart{}, Sheets: []comparedSheet{},
	}
	for _, s := range c.Statements {
		name := s.New
		if name == nil {
			name = s.Old
		}
		f.Statements = append(f.Statements, comparedStatement{name.Name, saidOn(s.Old), saidOn(s.New)})
	}
	for _, n := range c.Counts {
		f.Counts = append(f.Counts, comparedCount(n))
	}
	for _, l := range c.Lengths {
		f.Lengths = append(f.Lengths, comparedLength{l.Name, figureOf(c.Old, l.Old), figureOf(c.New, l.New)})
	}
	for _, x := range c.Checks {
		var e comparedCheck
		if x.Old != nil {
			e = comparedCheck{Name: x.Old.Name, Where: x.Old.Where, Old: string(x.Old.Status), Says: x.Old.Says}
		}
		if x.New != nil {
			e.Name, e.Where, e.New, e.Says = x.New.Name, x.New.Where, string(x.New.Status), x.New.Says
		}
		f.Checks = append(f.Checks, e)
	}
	for _, m := range c.Parts.Moves {
		e := comparedPart{Use: string(m.Use), Count: m.Count, Old: lotOf(m.Old), New: lotOf(m.New)}
		for _, cut := range m.Cuts {
			e.Cuts = append(e.Cuts, string(cut))
		}
		f.Parts = append(f.Parts, e)
	}
	for _, s := range c.Sheets {
		f.Sheets = append(f.Sheets, comparedSheet{string(s.Verdict), s.File, s.Old, s.New, s.Name, s.Title})
	}
	var b bytes.Buffer
	err := encode(&b, f, "  ")
	return b.Bytes(), err
}

func saidOn(s *design.Said) *comparedLine {
	if s == nil {
		return nil
	}
	return &comparedLine{s.Place.Line, s.Name + " = " + s.Value}
}

func figureOf(r *rack.Rack, l *rack.Solved) *comparedFigure {
	if l == nil {
		return nil
	}
	return &comparedFigure{mm(l.Value), r.Format.Text(l.Value)}
}

func lotOf(l *revision.Lot) *comparedLot {
	if l == nil {
		return nil
	}
	return &comparedLot{l.Mark, l.Name, mm(l.Size.Small), mm(l.Size.Large), mm(l.Size.Length), mm(l.Size.Eased)}
}
