package design

import (
	"errors"
	"strconv"
	"strings"
)

var errQuote = errors.New("not a TOML string")

// unquote returns what a TOML string of any of the four kinds says.
func unquote(literal string) (string, error) {
	s, _, err := decodeString(literal)
	return s, err
}

// sourceOffset returns the byte of the literal at which byte i of what it says
// comes from; for i at or behind the end, the closing quote.
func sourceOffset(literal string, i int) int {
	s, from, err := decodeString(literal)
	if err != nil || i < 0 {
		return 0
	}
	if i >= len(s) {
		if len(from) == 0 {
			return min(1, len(literal)-1)
		}
		return max(len(literal)-1, 0)
	}
	return from[i]
}

// decodeString returns what the string says, and for each of its bytes the
// byte of the literal it comes from.
func decodeString(literal string) (said string, from []int, err error) {
	if len(literal) < 2 || literal[0] != literal[len(literal)-1] {
		return "", nil, errQuote
	}
	quote, width := literal[:1], 1
	if triple := strings.Repeat(quote, 3); len(literal) >= 6 && strings.HasPrefix(literal, triple) {
		width = 3
		if !strings.HasSuffix(literal, triple) {
			return "", nil, errQuote
		}
	}
	body, start := literal[width:len(literal)-width], width
	if width == 3 { // a line end right behind the opening quotes is not part of it
		trimmed := strings.TrimPrefix(strings.TrimPrefix(body, "\r"), "\n")
		if strings.HasPrefix(body, "\n") || strings.HasPrefix(body, "\r\n") {
			start += len(body) - len(trimmed)
			body = trimmed
		}
	}
	var b strings.Builder
	put := func(s string, at int) {
		b.WriteString(s)
		for range len(s) {
			from = append(from, start+at)
		}
	}
	for i := 0; i < len(body); {
		if quote != `"` || body[i] != '\\' {
			put(body[i:i+1], i)
			i++
			continue
		}
		s, size, ok := escape(body[i:])
		if !ok {
			return "", nil, errQuote
		}
		put(s, i)
		i += size
	}
	return b.String(), from, nil
}

// escape returns what the escape at the beginning of s stands for, and its
// length.
func escape(s string) (said string, size int, ok bool) {
	if len(s) < 2 {
		return "", 0, false
	}
	if i := strings.IndexByte(`btnfre"\`, s[1]); i >= 0 {
		return string("\b\t\n\f\r\x1b\"\\"[i]), 2, true
	}
	digits := map[byte]int{'x': 2, 'u': 4, 'U': 8}[s[1]]
	if digits == 0 { // a backslash at the end of a line swallows the blanks behind it
		rest := strings.TrimLeft(s[1:], " \t\r\n")
		swallowed := s[1 : len(s)-len(rest)]
		return "", 1 + len(swallowed), strings.Contains(swallowed, "\n")
	}
	if len(s) < 2+digits {
		return "", 0, false
	}
	r, err := strconv.ParseUint(s[2:2+digits], 16, 32)
	if err != nil {
		return "", 0, false
	}
	return string(rune(r)), 2 + digits, true
}
