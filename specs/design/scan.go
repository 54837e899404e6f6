package design

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"slatwright/specs/diag"
)

// The limits of a design file. They are far beyond any rack, and keep a
// hostile file from costing time or memory: the TOML decoder takes seconds
// over a key of ten thousand parts.
const (
	maxBytes = 1 << 20
	maxLine  = 4 << 10 // bytes
	maxDepth = 16      // brackets within brackets
	maxParts = 8       // names in a dotted key
	maxKeys  = 20_000
)

// scan looks over the text before it is decoded. It returns the first thing
// that makes it no design file, and nil where there is none. The text of src
// may be invalid UTF-8.
func scan(src *diag.Source) *diag.Message {
	text := src.Text
	if len(text) > maxBytes {
		return &diag.Message{Text: fmt.Sprintf("larger than a design can be: %d bytes, the most is %d", len(text), maxBytes)}
	}
	fault := func(at int, text, hint string) *diag.Message {
		m := diag.At(src, src.Place(at, at+1), text)
		m.Width, m.Hint = 1, hint
		return &m
	}
	for at := 0; at < len(text); {
		r, size := utf8.DecodeRuneInString(text[at:])
		switch {
		case r == utf8.RuneError && size == 1:
			return fault(at, "not UTF-8 text", "save the file as UTF-8")
		case r == '\r' && !strings.HasPrefix(text[at:], "\r\n"), r < ' ' && r != '\t' && r != '\n' && r != '\r', r == 0x7F:
			return fault(at, fmt.Sprintf("control character %U", r), "a design is plain text")
		}
		at += size
	}
	for at := 0; at < len(text); {
		end := strings.IndexByte(text[at:], '\n')
		if end < 0 {
			end = len(text) - at
		}
		if end > maxLine {
			return fault(at, fmt.Sprintf("a line of %d bytes; the most is %d", end, maxLine), "break the list over several lines")
		}
		at += end + 1
	}
	return scanShape(text, fault)
}

// scanShape counts keys, brackets and the parts of keys. Up to the first
// mistake in the file it sees strings and comments where the decoder does, and
// behind it the decoder does not get.
func scanShape(text string, fault func(int, string, string) *diag.Message) *diag.Message {
	depth, dots, keys := 0, 0, 0
	for at := 0; at < len(text); at++ {
		switch c := text[at]; c {
		case '#':
			at += lineLength(text[at:]) - 1
		case '"', '\'':
			at += stringLength(text[at:]) - 1
		case '[', '{':
			depth++
			dots = 0
			if depth > maxDepth {
				return fault(at, fmt.Sprintf("brackets more than %d deep", maxDepth), "")
			}
			keys++ // at the least, a table's header counts as a key
		case ']', '}':
			depth = max(depth-1, 0)
			dots = 0
		case '.':
			if dots++; dots >= maxParts {
				return fault(at, fmt.Sprintf("a key of more than %d parts", maxParts), "")
			}
		case '=':
			dots = 0
			keys++
		case ',', '\n':
			dots = 0
		}
		if keys > maxKeys {
			return fault(at, fmt.Sprintf("more than %d keys", maxKeys), "")
		}
	}
	return nil
}

// lineLength returns the length of text up to its first line end.
func lineLength(text string) int {
	if i := strings.IndexByte(text, '\n'); i >= 0 {
		return i
	}
	return len(text)
}

// stringLength returns the length of the TOML string at the beginning of text,
// quotes included; where it is not closed, that of its line, or all of text
// for one over several lines.
func stringLength(text string) int {
	quote := text[:1]
	escapes := quote == `"`
	if triple := strings.Repeat(quote, 3); strings.HasPrefix(text, triple) {
		for at := 3; at < len(text); at++ {
			switch {
			case escapes && text[at] == '\\':
				at++
			case strings.HasPrefix(text[at:], triple):
				at += 3
				for extra := 0; extra < 2 && at < len(text) && text[at] == quote[0]; extra++ {
					at++ // up to two quotes may stand before the closing three
				}
				return at
			}
		}
		return len(text)
	}
	for at := 1; at < len(text); at++ {
		switch {
		case text[at] == '\n':
			return at
		case escapes && text[at] == '\\':
			at++
		case text[at] == quote[0]:
			return at + 1
		}
	}
	return len(text)
}
