// Package word sets counts in words and words in sentences, for every text that
// people read: sheets, labels, lists and messages. In go a number and a thing, out
// comes English.
package word

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Capital returns a text with its first letter, of whatever script, large: for words that begin a sentence in one place and stand in one elsewhere.
func Capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 || first == utf8.RuneError {
		return text
	}
	return string(unicode.ToUpper(first)) + text[size:]
}

// Count says how many of a thing there are, its name given in the singular:
// "1 slat", "5 slats". The name must take a plain s.
func Count(n int, thing string) string { return Number(n, thing, thing+"s") }

// Number sets a count before the word that goes with one or with another number:
// "1 leaf", "2 leaves".
func Number(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, more)
}

// List joins words: "A", "A and B", "A, B and C"; of none it is "".
func List(words []string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:last], ", ") + " and " + words[last]
}
