package svg

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"slatwright/render/drawing"
	"slatwright/render/typeface"
)

// glyphs defines every glyph that the sheet's lettering uses, once. A glyph is
// drawn in font units.
func (p *painter) glyphs(s *drawing.Sheet) {
	used := [2]map[rune]bool{{}, {}}
	for _, m := range s.Marks {
		t, ok := m.(drawing.Text)
		if !ok {
			continue
		}
		for _, piece := range t.Layout().Pieces {
			for _, r := range piece.Text {
				used[weight(t.Bold)][r] = true
			}
		}
	}
	p.svg.Def()
	for _, bold := range []bool{false, true} {
		var runes []rune
		for r := range used[weight(bold)] {
			runes = append(runes, r)
		}
		slices.Sort(runes)
		for _, r := range runes {
			if g := typeface.Of(bold).Glyph(r); len(g.Outline) > 0 {
				p.svg.Path(outline(g), `id="`+glyphID(r, bold)+`"`)
			}
		}
	}
	p.svg.DefEnd()
}

func weight(bold bool) int {
	if bold {
		return 1
	}
	return 0
}

// glyphID names a glyph within the file.
func glyphID(r rune, bold bool) string {
	if bold {
		return fmt.Sprintf("b%x", r)
	}
	return fmt.Sprintf("r%x", r)
}

// outline returns a glyph as the d of a path element, in font units.
func outline(g *typeface.Glyph) string {
	var b []byte
	open := false
	for _, s := range g.Outline {
		switch s.Op {
		case typeface.MoveTo:
			if open {
				b = append(b, 'Z')
			}
			open = true
			b = appendVec(append(b, 'M'), s.To)
		case typeface.LineTo:
			b = appendVec(append(b, 'L'), s.To)
		case typeface.QuadTo:
			b = appendVec(append(b, 'Q'), s.Ctrl)
			b = appendVec(append(b, ' '), s.To)
		}
	}
	return string(append(b, 'Z'))
}

// appendVec appends a point in font units. 1/64 has six decimals, but these
// outlines have no points but whole and half units, so that these are few.
func appendVec(b []byte, v typeface.Vec) []byte {
	return appendUnits(append(appendUnits(b, v.X), ' '), v.Y)
}

func appendUnits(b []byte, n int64) []byte {
	return strconv.AppendFloat(b, float64(n)/typeface.PerUnit, 'f', -1, 64)
}

// text writes one line of lettering.
func (p *painter) text(t drawing.Text) {
	line := t.Layout()
	o := t.Origin()
	transform := "translate(" + mm(o.X) + " " + mm(o.Y) + ")"
	if t.Turn != 0 {
		transform += fmt.Sprintf(" rotate(%d)", -90*t.Turn)
	}
	p.svg.Group(`role="img"`, `aria-label="`+escape(t.String())+`"`,
		`transform="`+transform+`"`, `fill="`+grey(t.Class.Ink().Grey)+`"`)
	for _, piece := range line.Pieces {
		p.piece(line.Face, piece, t.Bold)
	}
	for _, bar := range line.Bars {
		p.svg.Path(pathData(drawing.Rectangle(drawing.Solid, 0, drawing.Black, bar.Rect)))
	}
	p.svg.Gend()
}

// piece writes text of one size: a group in font units, a use for each glyph.
func (p *painter) piece(face *typeface.Face, piece typeface.Piece, bold bool) {
	if strings.TrimSpace(piece.Text) == "" {
		return
	}
	scale := piece.Height.MM() * typeface.PerUnit / float64(face.Caps)
	p.svg.Gtransform("translate(" + mm(piece.At.X) + " " + mm(piece.At.Y) + ") scale(" +
		strconv.FormatFloat(scale, 'f', 9, 64) + ")")
	var x int64
	for _, r := range piece.Text {
		g := face.Glyph(r)
		if len(g.Outline) > 0 {
			p.svg.Use(float64(x)/typeface.PerUnit, 0, "#"+glyphID(r, bold))
		}
		x += g.Advance
	}
	p.svg.Gend()
}
