// Package typeface sets lettering. A line of runs goes in, with the height of
// its capitals; the places of its glyphs, the bars of its fractions and an
// exact box around the ink come out. The writers of SVG and of PDF and the
// legibility checks all ask here, so that what was checked is what is printed.
//
// The lettering is Go Regular and Go Bold, which the golang.org/x/image module
// carries under a BSD licence of its own. Nothing depends on the fonts of the
// machine. Their zero has a stroke through it, so diameters are written "dia.".
package typeface

import (
	"sync"
	"sync/atomic"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"slatwright/render/drawing/paper"
)

// PerUnit is how many of a face's coordinates make one font unit. Everything
// in a face is measured in these 1/64 font units, in whole numbers, because
// the points of its outlines fall between font units.
const PerUnit = 64

// A Face is one of the two fonts. It is safe for concurrent use.
type Face struct {
	TTF  []byte // the font file, not to be changed
	Em   int64  // the em
	Caps int64  // height of the capital H

	font   *sfnt.Font
	latin  [0x180]atomic.Pointer[Glyph] // by character, without the lock
	mu     sync.Mutex
	buf    sfnt.Buffer
	glyphs map[rune]*Glyph
}

// A Glyph is the outline of one character. Its coordinates start at the left
// end of the base line, Y down.
type Glyph struct {
	Advance  int64  // to the next glyph
	Outline  []Step // closed contours, each begun by a Move; none for a space
	Min, Max Vec    // least box around the outline's points; zero for a space
}

// Vec is a point or a step in 1/64 font units.
type Vec struct{ X, Y int64 }

// A Step is one step along an outline.
type Step struct {
	Op   Op
	Ctrl Vec // control point of a Quad
	To   Vec
}

// Op says what a step does.
type Op uint8

// The steps of an outline; TrueType fonts have no other curve than the
// quadratic.
const (
	MoveTo Op = iota
	LineTo
	QuadTo
)

var faces = [2]func() *Face{
	sync.OnceValue(func() *Face { return mustParse(goregular.TTF) }),
	sync.OnceValue(func() *Face { return mustParse(gobold.TTF) }),
}

// Of returns the bold or the regular face, parsed once for the whole program.
func Of(bold bool) *Face {
	if bold {
		return faces[1]()
	}
	return faces[0]()
}

// mustParse reads a font that is part of the program; that it cannot be read
// is a bug.
func mustParse(ttf []byte) *Face {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic("typeface: " + err.Error())
	}
	face := &Face{
		TTF:    ttf,
		Em:     int64(f.UnitsPerEm()) * PerUnit,
		font:   f,
		glyphs: map[rune]*Glyph{},
	}
	h := face.Glyph('H')
	face.Caps = h.Max.Y - h.Min.Y
	return face
}

// Has reports whether the face has a glyph of its own for r. Characters beyond
// U+FFFF count as missing, since the PDF writer's library cannot hold them.
func (f *Face) Has(r rune) bool {
	if r < ' ' || r > 0xFFFF {
		return false
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	i, err := f.font.GlyphIndex(&f.buf, r)
	return err == nil && i != 0
}

// Glyph returns the glyph of r, or the font's box for a missing character. The
// result is shared and must not be changed.
func (f *Face) Glyph(r rune) *Glyph {
	if r < 0 || int(r) >= len(f.latin) {
		return f.glyph(r)
	}
	g := f.latin[r].Load()
	if g == nil {
		g = f.glyph(r)
		f.latin[r].Store(g)
	}
	return g
}

func (f *Face) glyph(r rune) *Glyph {
	f.mu.Lock()
	defer f.mu.Unlock()
	if g, ok := f.glyphs[r]; ok {
		return g
	}
	g, err := f.load(r)
	if err != nil {
		panic("typeface: " + err.Error())
	}
	f.glyphs[r] = g
	return g
}

// load reads a glyph at one pixel to the font unit, where nothing is rounded.
func (f *Face) load(r rune) (*Glyph, error) {
	ppem := fixed.Int26_6(f.Em)
	i, err := f.font.GlyphIndex(&f.buf, r)
	if err != nil {
		return nil, err
	}
	advance, err := f.font.GlyphAdvance(&f.buf, i, ppem, font.HintingNone)
	if err != nil {
		return nil, err
	}
	segs, err := f.font.LoadGlyph(&f.buf, i, ppem, nil)
	if err != nil {
		return nil, err
	}
	g := &Glyph{Advance: int64(advance)}
	for k, s := range segs {
		step, err := stepOf(s)
		if err != nil {
			return nil, err
		}
		g.Outline = append(g.Outline, step)
		if k == 0 {
			g.Min, g.Max = step.To, step.To
		}
		g.grow(step)
	}
	return g, nil
}

// grow widens the glyph's box by a step. A control point of these fonts lies
// at the corner of its curve's box, or near enough that the box is the better
// for it.
func (g *Glyph) grow(s Step) {
	pts := []Vec{s.To}
	if s.Op == QuadTo {
		pts = append(pts, s.Ctrl)
	}
	for _, p := range pts {
		g.Min = Vec{min(g.Min.X, p.X), min(g.Min.Y, p.Y)}
		g.Max = Vec{max(g.Max.X, p.X), max(g.Max.Y, p.Y)}
	}
}

// Scale returns n face coordinates in micrometres, where the capitals are
// height high, rounded half up.
func (f *Face) Scale(n int64, height paper.Um) paper.Um {
	return paper.Um(divRound(n*int64(height), f.Caps))
}

// EmSize returns the size of the em in micrometres, where the capitals are
// height high.
func (f *Face) EmSize(height paper.Um) paper.Um { return f.Scale(f.Em, height) }

// divRound divides by d > 0 and rounds half up.
func divRound(n, d int64) int64 {
	n += d / 2
	q := n / d
	if n%d < 0 {
		q--
	}
	return q
}
