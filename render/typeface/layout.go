package typeface

import (
	"strings"

	"slatwright/render/drawing/paper"
)

// The proportions of a stacked fraction, in thousandths of the height of the
// capitals. The bar lies level at mid height, as a rule for draughtsmen has it
// (Modern Shop Practice, vol. 2, at chestofbooks.com). Digits of 0.7 h keep
// 2.45 mm at the 3.5 mm of a dimension figure; the US Navy's Engineering Aid
// course gives 3/4 h with 1/4 h clear of the bar, which stacks too high for
// dimension lines 10 mm apart. The gaps and the bar's weight are our own.
const (
	stackDigit  = 700
	stackClear  = 170 // between the bar and the digits
	stackBar    = 72  // thickness of the bar
	stackBefore = 180 // from the whole number to the stack
	stackAfter  = 120 // from the stack to what follows
	stackOver   = 70  // how far the bar reaches past the digits
)

// A Line is a line of lettering laid out from the left end of its base line,
// at 0, 0 and reading to the right, Y down.
type Line struct {
	Face    *Face
	Pieces  []Piece    // in reading order
	Bars    []Bar      // of the fractions, to be filled
	Words   []string   // the words that hold a fraction, as a person would type them
	Ink     paper.Rect // least box around glyphs and bars; empty where there are none
	Advance paper.Um   // where a next run would begin
}

// A Piece is text of one size on one base line.
type Piece struct {
	Text   string
	At     paper.Point // left end of its base line
	Height paper.Um    // of the capitals
	Word   int         // index of the word it belongs to in Line.Words, or -1
}

// A Bar is the bar of a fraction.
type Bar struct {
	paper.Rect
	Word int
}

// setter lays runs out one after the other.
type setter struct {
	line   Line
	height paper.Um
	inked  bool
}

// Layout lays runs out with capitals of the given height.
func Layout(runs []Run, height paper.Um, bold bool) Line {
	s := setter{line: Line{Face: Of(bold)}, height: height}
	word := -1 // the word that the last fraction belongs to, while it goes on
	for i, r := range runs {
		text := r.Text
		if word >= 0 { // the rest of the word after a fraction
			end := strings.IndexByte(text, ' ')
			if end < 0 {
				end = len(text)
			}
			s.line.Words[word] += text[:end]
			s.piece(text[:end], word)
			if text = text[end:]; text != "" {
				word = -1
			}
		}
		if r.Num == "" {
			s.piece(text, -1)
			continue
		}
		cut := strings.LastIndexByte(text, ' ') + 1
		s.piece(text[:cut], -1)
		if word < 0 {
			s.line.Words = append(s.line.Words, "")
			word = len(s.line.Words) - 1
		}
		s.piece(text[cut:], word)
		s.line.Words[word] += text[cut:] + stack(r)
		s.stack(r, word, i+1 < len(runs))
	}
	return s.line
}

// piece sets plain text and moves on by its advance.
func (s *setter) piece(text string, word int) {
	if text == "" {
		return
	}
	s.put(Piece{Text: text, At: paper.Pt(s.line.Advance, 0), Height: s.height, Word: word})
	s.line.Advance += s.line.Face.width(text, s.height)
}

// stack sets a fraction and moves on past it.
func (s *setter) stack(r Run, word int, more bool) {
	h, face := s.height, s.line.Face
	part := func(n paper.Um) paper.Um { return n * h / 1000 }
	digit, over := part(stackDigit), part(stackOver)
	bar := max(part(stackBar), 1)
	wn, wd := face.width(r.Num, digit), face.width(r.Den, digit)
	wide := max(wn, wd) + 2*over
	x := s.line.Advance
	if len(s.line.Pieces) > 0 {
		x += part(stackBefore)
	}
	top := -h/2 - bar/2
	s.put(Piece{Text: r.Num, At: paper.Pt(x+(wide-wn)/2, top-part(stackClear)), Height: digit, Word: word})
	box := paper.Box(x, top, wide, bar)
	s.line.Bars = append(s.line.Bars, Bar{box, word})
	s.ink(box)
	foot := top + bar + part(stackClear) + digit
	s.put(Piece{Text: r.Den, At: paper.Pt(x+(wide-wd)/2, foot), Height: digit, Word: word})
	s.line.Advance = x + wide
	if more {
		s.line.Advance += part(stackAfter)
	}
}

// put adds a piece and its ink.
func (s *setter) put(p Piece) {
	s.line.Pieces = append(s.line.Pieces, p)
	face := s.line.Face
	var x int64
	for _, r := range p.Text {
		g := face.Glyph(r)
		if len(g.Outline) > 0 {
			lo := paper.Pt(face.Scale(x+g.Min.X, p.Height), face.Scale(g.Min.Y, p.Height))
			hi := paper.Pt(face.Scale(x+g.Max.X, p.Height), face.Scale(g.Max.Y, p.Height))
			s.ink(paper.Rect{Min: p.At.Add(lo), Max: p.At.Add(hi)})
		}
		x += g.Advance
	}
}

func (s *setter) ink(r paper.Rect) {
	if !s.inked {
		s.line.Ink, s.inked = r, true
		return
	}
	s.line.Ink = s.line.Ink.Join(r)
}

// width returns the advance of text with capitals of the given height.
func (f *Face) width(text string, height paper.Um) paper.Um {
	var n int64
	for _, r := range text {
		n += f.Glyph(r).Advance
	}
	return f.Scale(n, height)
}

// Width returns the advance of runs with capitals of the given height: what
// Layout would give, for those who only need room.
func Width(runs []Run, height paper.Um, bold bool) paper.Um {
	return Layout(runs, height, bold).Advance
}
