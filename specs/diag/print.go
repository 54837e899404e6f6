package diag

import (
	"strconv"
	"strings"
	"unicode"
)

// reach is how many columns of a long line are shown on either side of the
// place.
const reach = 60

// Format returns the message for a terminal: file:line:column and the text,
// the line itself, a caret under the place, then notes and hint, each on its
// own line and the last one ended. Tabs before the caret are copied, so that
// it stands right whatever the terminal makes of them.
func (m Message) Format(src *Source) string {
	var b strings.Builder
	b.WriteString(printable(src.Name))
	if !m.Place.None() {
		b.WriteString(":" + strconv.Itoa(m.Place.Line) + ":" + strconv.Itoa(m.Place.Column))
	}
	b.WriteString(": " + printable(m.Text) + "\n")
	if !m.Place.None() {
		line, caret := window(src.Line(m.Place.Line), m.Place.Column, max(m.Width, 1))
		b.WriteString("  " + line + "\n  " + caret + "\n")
	}
	for _, note := range m.Notes {
		b.WriteString("  " + printable(note) + "\n")
	}
	if m.Hint != "" {
		b.WriteString("  " + printable(m.Hint) + "\n")
	}
	return b.String()
}

// window returns the part of a line around the column, with the caret row
// below it. Both are clipped to reach columns before the column and behind.
func window(line string, column, width int) (shown, caret string) {
	runes := []rune(line)
	at := min(column-1, len(runes))
	from := max(at-reach, 0)
	to := min(at+reach, len(runes))
	var text, under strings.Builder
	if from > 0 {
		text.WriteString("...")
		under.WriteString("   ")
	}
	for i := from; i < to; i++ {
		r := runes[i]
		if r != '\t' {
			r = visible(r)
		}
		text.WriteRune(r)
		switch {
		case i >= at+width: // behind the carets
		case i >= at:
			under.WriteString(strings.Repeat("^", columns(r)))
		case r == '\t':
			under.WriteByte('\t')
		default:
			under.WriteString(strings.Repeat(" ", columns(r)))
		}
	}
	if to < len(runes) {
		text.WriteString("...")
	}
	if at == len(runes) {
		under.WriteByte('^')
	}
	return text.String(), under.String()
}

// printable returns s with every character that could act on a terminal
// replaced.
func printable(s string) string { return strings.Map(visible, s) }

// visible replaces control characters and those that turn the direction of
// writing by U+FFFD.
func visible(r rune) rune {
	if unicode.IsControl(r) || unicode.Is(unicode.Cf, r) {
		return unicode.ReplacementChar
	}
	return r
}

// wide holds the East Asian wide and full-width blocks, after Unicode Standard
// Annex 11 (from memory, whole blocks, which is near enough for a caret).
var wide = [][2]rune{
	{0x1100, 0x115F}, {0x2E80, 0x303E}, {0x3041, 0xA4CF}, {0xAC00, 0xD7A3},
	{0xF900, 0xFAFF}, {0xFE30, 0xFE6F}, {0xFF00, 0xFF60}, {0xFFE0, 0xFFE6},
	{0x1F300, 0x1F64F}, {0x1F900, 0x1FAFF}, {0x20000, 0x3FFFD},
}

// columns returns how many columns a terminal gives to r: none to a combining
// mark, two to a wide character. A tab counts as one; callers copy it.
func columns(r rune) int {
	if unicode.In(r, unicode.Mn, unicode.Me) {
		return 0
	}
	for _, block := range wide {
		if r >= block[0] && r <= block[1] {
			return 2
		}
	}
	return 1
}
