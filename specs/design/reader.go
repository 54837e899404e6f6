package design

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"slatwright/specs/diag"
	"slatwright/specs/unit"
)

// reader walks the tree of a file by the schema and fills in a Design. Faults
// gather in list; it goes on past each, so that all are told at once.
type reader struct {
	src   *diag.Source
	d     *Design
	list  diag.List
	later []func() // what needs the whole file to have been seen
}

// fault reports a fault at the place. The hint may be "".
func (r *reader) fault(p diag.Place, hint, format string, args ...any) {
	m := diag.At(r.src, p, fmt.Sprintf(format, args...))
	m.Hint = hint
	r.list = append(r.list, m)
}

// syntax reports what is wrong within a value: offset counts bytes of what the
// value says.
func (r *reader) syntax(n *node, offset int, hint, text string) {
	start := n.value.Start + offset
	if n.shape == words {
		start = n.value.Start + sourceOffset(n.literal, offset)
	}
	end := n.value.End
	if n.shape == words {
		end--
	}
	r.fault(r.src.Place(start, max(end, start+1)), hint, "%s", text)
}

// table reads the node as the section, under the path that names it.
func (r *reader) table(n *node, path, section string) {
	if n.shape != tree {
		r.fault(n.value, "write ["+path+"] and its keys below it", "`%s` is a table, not %s", path, n.shape)
		return
	}
	entries := entriesOf(section)
	for _, k := range n.kids {
		known := false
		for _, e := range entries {
			if e.name == k.key {
				known = true
				e.read(r, join(path, k.key), k)
			}
		}
		if !known {
			r.unknown(k, path, section, entries)
		}
	}
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// unknown reports a key that nobody knows, with the nearest that is known
// here, or with the table where it belongs.
func (r *reader) unknown(n *node, path, section string, entries []entry) {
	var here []string
	for _, e := range entries {
		here = append(here, e.name)
	}
	where := " in [" + path + "]"
	if path == "" {
		where = ""
	}
	what := "key"
	if n.shape == tree || n.shape == array && len(n.kids) > 0 && n.kids[0].shape == tree {
		what = "table"
	}
	hint := cmp.Or(meant(n.key, section), diag.DidYouMean(n.key, here), belongs(n.key, section, what == "table"))
	m := diag.At(r.src, n.at, fmt.Sprintf("unknown %s `%s`%s", what, n.key, where))
	if m.Hint = hint; hint == "" && path != "" {
		m.Notes = []string{"keys here: " + strings.Join(here, ", ")}
	}
	r.list = append(r.list, m)
}

// belongs returns the hint that the key belongs elsewhere, "" where it is
// unknown everywhere. What was written as a table, and is a key of one, is told
// as such.
func belongs(key, section string, table bool) string {
	var homes []string
	for _, s := range sections() {
		for _, e := range s.entries {
			if s.name == section || e.name != key || s.name == "labels" && len(homes) > 0 {
				continue // sheets of labels have words that the rack's lengths have too
			}
			if s.name == "" {
				return "`" + key + "` belongs at the top of the file, before the first [table]"
			}
			homes = append(homes, "["+s.title()+"]")
		}
	}
	switch {
	case len(homes) == 0:
		return ""
	case table && section == "":
		return "there is no table [" + key + "]: `" + key + "` is a key under " + strings.Join(homes, " or ")
	}
	return "`" + key + "` belongs under " + strings.Join(homes, " or ")
}

// otherWords are what people write for a key, by section and word.
var otherWords = map[string]string{
	"price.rate": "labour", "price.labor": "labour", "price.hourly": "labour", "price.wage": "labour",
	"price.profit": "markup", "price.vat": "tax", "price.shipping": "delivery",
	"rack.cols": "columns", "rack.shelves": "rows", "column.columns": "count",
}

// meant returns the hint to a word that is no key here and stands for one, ""
// for every other.
func meant(key, section string) string {
	if section == "" && key == "species" {
		return "there is no table [species]: name the wood under [wood], species = \"" + DefaultSpecies + "\"; " +
			"for one that `slatwright tables species` lacks name that of nearest density and movement"
	}
	if section == "labels" && key == "paper" {
		return "name the paper under [paper], labels = \"a4\"; a size of your own is paper_width and paper_height"
	}
	if word, ok := otherWords[section+"."+key]; ok {
		return "did you mean `" + word + "`?"
	}
	return ""
}

// maxText is the most characters that a text can have.
const maxText = 200

// says returns what a text says. Texts go on drawings: characters that can't
// be printed there are refused.
func (r *reader) says(path string, n *node) (string, bool) {
	if n.shape != words {
		r.fault(n.value, "put it in quotes", "`%s` is a text, not %s", path, n.shape)
		return "", false
	}
	if count := utf8.RuneCountInString(n.text); count > maxText {
		r.fault(n.value, "", "a text of %d characters; the most is %d", count, maxText)
		return "", false
	}
	for i, c := range n.text {
		if unicode.IsControl(c) || unicode.Is(unicode.Bidi_Control, c) {
			r.syntax(n, i, "", fmt.Sprintf("character %U can't be printed", c))
			return "", false
		}
		if c > 0xFFFF {
			r.syntax(n, i, "", fmt.Sprintf("character %U is not in the typefaces of the drawings", c))
			return "", false
		}
	}
	return n.text, true
}

// choice returns which of the words a text is.
func (r *reader) choice(path string, n *node, words ...string) (string, bool) {
	s, ok := r.says(path, n)
	if !ok {
		return "", false
	}
	for _, w := range words {
		if s == w {
			return s, true
		}
	}
	hint := diag.DidYouMean(s, words)
	if hint == "" {
		hint = "it can be \"" + strings.Join(words, "\", \"") + "\""
	}
	r.fault(n.value, hint, "`%s` can't be %s", path, n.literal)
	return "", false
}

// statementText returns the value with its name in front, on one line.
func statementText(path string, n *node) string {
	return path + " = " + strings.Join(strings.Fields(n.literal), " ")
}

// exact returns a length that must be one figure, such as the kerf.
func (r *reader) exact(path string, n *node, zero bool) (unit.Length, bool) {
	l, ok := r.length(path, n, zero)
	if ok && l.Kind != Exact {
		r.fault(n.value, "write one figure, such as \"1/8 in\"", "`%s` must be one length, not a limit or a range", path)
		return 0, false
	}
	return l.Lo, ok
}

// truth reads true or false.
func (r *reader) truth(path string, n *node) (v, ok bool) {
	if n.shape != boolean {
		r.fault(n.value, "write true or false", "`%s` is true or false, not %s", path, n.shape)
		return false, false
	}
	return n.literal == "true", true
}

// wholeNumber reads a whole number from least to most; the hint says more of what
// it can be.
func (r *reader) wholeNumber(path string, n *node, least, most int, hint string) (v int, ok bool) {
	v, err := strconv.Atoi(strings.ReplaceAll(n.literal, "_", ""))
	if n.shape != number || err != nil || v < least || v > most {
		r.fault(n.value, hint, "`%s` must be a whole number from %d to %d", path, least, most)
		return 0, false
	}
	return v, true
}
