package pdf

import (
	"encoding/hex"
	"slices"
	"strings"
	"unicode/utf16"

	"github.com/go-pdf/fpdf"

	"slatwright/render/drawing"
	"slatwright/render/typeface"
)

// family is the name under which the fonts are known within the file.
const family = "go"

func style(bold bool) string {
	if bold {
		return "B"
	}
	return ""
}

// painter walks the marks of one page and keeps the library's state, so that a
// setting is written only where it changes.
type painter struct {
	pdf    *fpdf.Fpdf
	pen    drawing.Um
	dash   []drawing.Um
	shades [3]int // stroke, fill and text, one more than the grey; 0 when not yet set
	bold   bool
	height drawing.Um
}

// page draws the marks of a sheet on the current page.
func (p *painter) page(s *drawing.Sheet) {
	p.pdf.SetLineCapStyle("butt")
	p.pdf.SetLineJoinStyle("miter")
	p.pdf.SetDashPattern(nil, 0)
	for _, m := range s.Marks {
		switch m := m.(type) {
		case drawing.Path:
			p.path(m)
		case drawing.Circle:
			p.path(drawing.Ellipse(m.Class, m.Group, m.Fill, m.Centre, drawing.Pt(m.R, 0), drawing.Pt(0, -m.R)))
		case drawing.Text:
			p.text(m)
		}
	}
}

// path draws a line, a filled shape, or both.
func (p *painter) path(m drawing.Path) {
	ink := m.Class.Ink()
	if m.Fill != drawing.NoFill {
		p.shade(1, m.Fill.Grey())
	}
	if ink.Pen > 0 {
		p.shade(0, ink.Grey)
		p.stroke(ink)
	}
	p.trace(m)
	switch {
	case m.Fill == drawing.NoFill:
		p.pdf.DrawPath("S")
	case ink.Pen == 0:
		p.pdf.DrawPath("f")
	default:
		p.pdf.DrawPath("B")
	}
}

// trace writes a path's outline.
func (p *painter) trace(m drawing.Path) {
	p.pdf.MoveTo(m.Start.X.MM(), m.Start.Y.MM())
	for _, s := range m.Segs {
		if s.Curve {
			p.pdf.CurveBezierCubicTo(s.C1.X.MM(), s.C1.Y.MM(), s.C2.X.MM(), s.C2.Y.MM(), s.To.X.MM(), s.To.Y.MM())
			continue
		}
		p.pdf.LineTo(s.To.X.MM(), s.To.Y.MM())
	}
	if m.Closed {
		p.pdf.ClosePath()
	}
}

// stroke sets the pen.
func (p *painter) stroke(ink drawing.Ink) {
	if ink.Pen != p.pen {
		p.pdf.SetLineWidth(ink.Pen.MM())
		p.pen = ink.Pen
	}
	if !slices.Equal(ink.Dash, p.dash) {
		pattern := make([]float64, len(ink.Dash))
		for i, d := range ink.Dash {
			pattern[i] = d.MM()
		}
		p.pdf.SetDashPattern(pattern, 0)
		p.dash = ink.Dash
	}
}

// shade sets the grey of strokes, of fills or of text.
func (p *painter) shade(what int, grey uint8) {
	g := int(grey)
	if p.shades[what] == g+1 {
		return
	}
	p.shades[what] = g + 1
	set := [...]func(r, g, b int){p.pdf.SetDrawColor, p.pdf.SetFillColor, p.pdf.SetTextColor}
	set[what](g, g, g)
}

// font sets the font with capitals of a given height.
func (p *painter) font(bold bool, height drawing.Um) {
	if p.height != 0 && p.bold == bold && p.height == height {
		return
	}
	const point = 25.4 / 72
	p.pdf.SetFont(family, style(bold), typeface.Of(bold).EmSize(height).MM()/point)
	p.bold, p.height = bold, height
}

// text draws one line of lettering.
func (p *painter) text(t drawing.Text) {
	line := t.Layout()
	o := t.Origin()
	// The library draws text in the colour of fills wherever it takes both for
	// equal, and after a turn it does not know what the colour of fills is.
	p.shade(1, t.Class.Ink().Grey)
	p.shade(2, t.Class.Ink().Grey)
	bold, height := p.bold, p.height
	if t.Turn != 0 {
		p.pdf.TransformBegin()
		p.pdf.TransformRotate(float64(90*t.Turn), o.X.MM(), o.Y.MM())
	}
	word := -1
	for _, piece := range line.Pieces {
		if piece.Word != word {
			p.span(word, piece.Word, line.Words)
			word = piece.Word
		}
		p.font(t.Bold, piece.Height)
		at := o.Add(piece.At)
		p.pdf.Text(at.X.MM(), at.Y.MM(), piece.Text)
	}
	p.span(word, -1, line.Words)
	for _, bar := range line.Bars {
		p.path(drawing.Rectangle(drawing.Solid, 0, drawing.Black, bar.Move(o)))
	}
	if t.Turn != 0 {
		// The end of the turn brings back the font and the shades of before,
		// which the library does not know. So the font is set back first, and
		// the shades are set anew when next needed.
		p.font(bold, height)
		p.pdf.TransformEnd()
		p.shades = [3]int{}
	}
}

// span ends one word with a fraction and begins another, -1 being none. The
// word's own text stands in the file in place of the pieces it is drawn from.
func (p *painter) span(from, to int, words []string) {
	if from >= 0 {
		p.pdf.RawWriteStr("EMC")
	}
	if to >= 0 {
		p.pdf.RawWriteStr("/Span <</ActualText <" + utf16Hex(words[to]) + ">>> BDC")
	}
}

// utf16Hex returns s as a hexadecimal string of big-endian UTF-16.
func utf16Hex(s string) string {
	b := []byte{0xFE, 0xFF}
	for _, u := range utf16.Encode([]rune(s)) {
		b = append(b, byte(u>>8), byte(u))
	}
	return strings.ToUpper(hex.EncodeToString(b))
}
