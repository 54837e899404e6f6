// Package diag says things about a design file: where in the file, what, and
// what to do about it. The reader of design files and the solver put messages
// together; the program prints them, and the preview page shows them.
package diag

import (
	"sort"
	"strings"
	"unicode/utf8"
)

// Source is a design file as it was read.
type Source struct {
	Name string // as the user gave it
	Text string // valid UTF-8

	starts []int // byte offset at which each line begins
}

// NewSource returns the source with its lines indexed.
func NewSource(name, text string) *Source {
	s := &Source{Name: name, Text: text, starts: []int{0}}
	for i := 0; i < len(text); i++ {
		if text[i] == '\n' {
			s.starts = append(s.starts, i+1)
		}
	}
	return s
}

// Place is a stretch of a source. Line and Column count from 1, columns in
// characters, not bytes. Start and End are byte offsets, End behind the last
// byte. The zero Place is no place at all.
type Place struct {
	Line, Column int
	Start, End   int
}

// None reports whether p is no place, as for a default that no line states.
func (p Place) None() bool { return p.Line == 0 }

// Place returns the place of the bytes from start up to end. Offsets outside
// the text are brought to its nearest end, and a start within a character to
// its first byte.
func (s *Source) Place(start, end int) Place {
	start = min(max(start, 0), len(s.Text))
	end = min(max(end, start), len(s.Text))
	for first := start - 1; first >= 0 && first > start-utf8.UTFMax; first-- {
		if _, size := utf8.DecodeRuneInString(s.Text[first:]); first+size > start {
			start = first
			break
		}
	}
	line := sort.SearchInts(s.starts, start+1) // lines that begin at or before start
	from := s.starts[line-1]
	return Place{
		Line:   line,
		Column: utf8.RuneCountInString(s.Text[from:start]) + 1,
		Start:  start,
		End:    end,
	}
}

// Slice returns the text of the place.
func (s *Source) Slice(p Place) string { return s.Text[p.Start:p.End] }

// Line returns line n, counted from 1, without its line end; "" where there
// is no such line.
func (s *Source) Line(n int) string {
	if n < 1 || n > len(s.starts) {
		return ""
	}
	end := len(s.Text)
	if n < len(s.starts) {
		end = s.starts[n] - 1
	}
	return strings.TrimSuffix(s.Text[s.starts[n-1]:end], "\r")
}

// Width returns how many characters of the place stand on its first line, and
// at least 1: what a caret row underlines.
func (s *Source) Width(p Place) int {
	text := s.Slice(p)
	if i := strings.IndexByte(text, '\n'); i >= 0 {
		text = strings.TrimSuffix(text[:i], "\r")
	}
	return max(utf8.RuneCountInString(text), 1)
}
