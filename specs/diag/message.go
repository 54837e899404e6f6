package diag

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
)

// Message is one thing to say about a source.
type Message struct {
	Place Place
	Width int      // characters to underline; 0 underlines one
	Text  string   // lower case, no full stop
	Notes []string // further lines, such as the other lines that took part
	Hint  string   // what to do about it
}

// At returns a message about a place of src.
func At(src *Source, p Place, text string) Message {
	return Message{Place: p, Width: src.Width(p), Text: text}
}

// List is the messages of one run. It is an error, so that a reader can
// return it as one.
type List []Message

// Error returns the messages' places and texts, one a line.
func (l List) Error() string {
	var lines []string
	for _, m := range l {
		lines = append(lines, strconv.Itoa(m.Place.Line)+":"+strconv.Itoa(m.Place.Column)+": "+m.Text)
	}
	return strings.Join(lines, "\n")
}

// Sort puts the messages in the order of the file; those of one place keep
// alphabetical order, so that a run always reports in the same order.
func (l List) Sort() {
	slices.SortStableFunc(l, func(a, b Message) int {
		return cmp.Or(
			cmp.Compare(a.Place.Start, b.Place.Start),
			cmp.Compare(a.Place.End, b.Place.End),
			cmp.Compare(a.Text, b.Text),
		)
	})
}

// shown is how many messages Format prints in full.
const shown = 20

// Format returns the first twenty messages in full, and after them how many
// more there are.
func (l List) Format(src *Source) string {
	var b strings.Builder
	for i, m := range l {
		if i == shown {
			b.WriteString("and " + strconv.Itoa(len(l)-shown) + " more\n")
			break
		}
		b.WriteString(m.Format(src))
	}
	return b.String()
}
