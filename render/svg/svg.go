// Package svg writes a sheet as an SVG file. A drawing.Sheet goes in; the bytes
// of a file come out, the same for the same sheet. Nobody comes next: the file
// is what is shown and printed.
//
// A file keeps to what every viewer draws alike: paths, circles, groups, use,
// transforms, plain strokes and fills, dashes. Lettering is drawn as outlines,
// each glyph defined once, so that no font of the machine changes a width; the
// text itself stands in the group's aria-label. One unit of the file is one
// millimetre of paper.
//
// The elements are written with SVGo by Anthony Starks
// (github.com/ajstarks/svgo), which is licensed under the Creative Commons
// Attribution 4.0 International licence and used unchanged. It loses write
// errors and does not escape attributes; both are seen to here.
package svg

import (
	"bytes"
	"fmt"

	svgo "github.com/ajstarks/svgo/float"

	"slatwright/render/drawing"
)

// decimals is the precision of the file, in millimetres: a micrometre.
const decimals = 3

// Encode returns the sheet as an SVG file. It refuses a sheet that does not
// pass its own Check.
func Encode(s *drawing.Sheet) ([]byte, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	var file bytes.Buffer // cannot run out of room as a file can
	w := &writer{out: &file}
	p := &painter{svg: svgo.New(w)}
	p.svg.Decimals = decimals
	p.sheet(s)
	if w.err != nil {
		return nil, fmt.Errorf("sheet %s: %w", s.Name, w.err)
	}
	return file.Bytes(), nil
}

// painter walks the marks of one sheet.
type painter struct {
	svg *svgo.SVG
}

// sheet writes the whole file.
func (p *painter) sheet(s *drawing.Sheet) {
	w, h := s.W.MM(), s.H.MM()
	p.svg.StartviewUnit(w, h, "mm", 0, 0, w, h)
	p.svg.Title(s.Title)
	p.glyphs(s)
	p.svg.Group(`fill="none"`, `stroke="none"`, `stroke-linecap="butt"`, `stroke-linejoin="miter"`, `stroke-miterlimit="10"`)
	for _, m := range s.Marks {
		switch m := m.(type) {
		case drawing.Path:
			p.svg.Path(pathData(m), ink(m.Class, m.Fill)...)
		case drawing.Circle:
			p.svg.Circle(m.Centre.X.MM(), m.Centre.Y.MM(), m.R.MM(), ink(m.Class, m.Fill)...)
		case drawing.Text:
			p.text(m)
		}
	}
	p.svg.Gend()
	p.svg.End()
}

// ink returns the attributes that a class and a fill give.
func ink(c drawing.Class, f drawing.Fill) []string {
	var attrs []string
	in := c.Ink()
	if f != drawing.NoFill {
		attrs = append(attrs, `fill="`+grey(f.Grey())+`"`)
	}
	if in.Pen == 0 {
		return attrs
	}
	attrs = append(attrs, `stroke="`+grey(in.Grey)+`"`, `stroke-width="`+mm(in.Pen)+`"`)
	if len(in.Dash) > 0 {
		attrs = append(attrs, `stroke-dasharray="`+list(in.Dash)+`"`)
	}
	return attrs
}

// grey returns a shade as a colour of the file.
func grey(g uint8) string { return fmt.Sprintf("#%02x%02x%02x", g, g, g) }
