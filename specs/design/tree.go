package design

import (
	"fmt"
	"strings"

	"slatwright/specs/diag"
)

// shape is the sort of a node.
type shape uint8

const (
	tree shape = iota
	array
	words
	number
	boolean
	date
)

// String returns the shape with its article.
func (s shape) String() string {
	return [...]string{"a table", "a list", "a text", "a number", "true or false", "a date"}[s]
}

// node is a value of a TOML file with its place. The decoder that judges the
// file keeps no places; this tree keeps them for every key and value.
type node struct {
	shape   shape
	key     string     // unquoted; "" for an element of a list
	at      diag.Place // of the key's last part, or of the element
	value   diag.Place // of the value; for a table, of its header or of its first key
	literal string     // the value as written, of everything but tables
	text    string     // of a text: what it says
	kids    []*node    // of tables and lists, in the order of the file

	index map[string]*node // of tables
}

// kid returns the value under the key, nil where there is none.
func (n *node) kid(key string) *node { return n.index[key] }

func (n *node) add(k *node) *node {
	if n.index == nil {
		n.index = map[string]*node{}
	}
	n.kids = append(n.kids, k)
	if k.key != "" || n.shape == tree {
		n.index[k.key] = k
	}
	return k
}

// grow builds the tree of a text that the TOML decoder has found valid. On a
// text that is not, it returns an error and never panics.
func grow(src *diag.Source) (*node, error) {
	g := &grower{src: src, text: src.Text, root: &node{shape: tree}}
	g.table = g.root
	for {
		g.blank(true)
		if g.at >= len(g.text) {
			return g.root, nil
		}
		var err error
		if g.text[g.at] == '[' {
			err = g.header()
		} else {
			err = g.pair(g.table)
		}
		if err != nil {
			return nil, err
		}
	}
}

type grower struct {
	src   *diag.Source
	text  string
	at    int
	root  *node
	table *node // that of the last header
}

func (g *grower) fail(what string) error { return fmt.Errorf("%s at byte %d", what, g.at) }

func (g *grower) has(s string) bool { return strings.HasPrefix(g.text[g.at:], s) }

// take moves past s if it stands here.
func (g *grower) take(s string) bool {
	if g.has(s) {
		g.at += len(s)
		return true
	}
	return false
}

// blank moves past spaces, and past line ends and comments too if lines is
// set.
func (g *grower) blank(lines bool) {
	for g.at < len(g.text) {
		switch c := g.text[g.at]; {
		case c == ' ' || c == '\t':
			g.at++
		case lines && (c == '\n' || c == '\r'):
			g.at++
		case lines && c == '#':
			g.at += lineLength(g.text[g.at:])
		default:
			return
		}
	}
}

// part is one name of a dotted key.
type part struct {
	name string
	at   diag.Place
}

// key reads a dotted key: bare and quoted names, with spaces around the dots.
func (g *grower) key() ([]part, error) {
	var parts []part
	for {
		g.blank(false)
		start := g.at
		name, err := g.name()
		if err != nil {
			return nil, err
		}
		parts = append(parts, part{name, g.src.Place(start, g.at)})
		g.blank(false)
		if !g.take(".") {
			return parts, nil
		}
	}
}

func (g *grower) name() (string, error) {
	start := g.at
	if g.has(`"`) || g.has("'") {
		g.at += stringLength(g.text[g.at:])
		return unquote(g.text[start:g.at])
	}
	for g.at < len(g.text) && !strings.ContainsRune(" \t\r\n.=[]{},#\"'", rune(g.text[g.at])) {
		g.at++
	}
	if g.at == start {
		return "", g.fail("no key")
	}
	return g.text[start:g.at], nil
}

// header reads [table] or [[table]] and goes there.
func (g *grower) header() error {
	start := g.at
	double := g.take("[[")
	if !double {
		g.take("[")
	}
	parts, err := g.key()
	if err != nil {
		return err
	}
	if !g.take("]") || double && !g.take("]") {
		return g.fail("no ]")
	}
	place := g.src.Place(start, g.at)
	last := parts[len(parts)-1]
	parent, err := g.descend(g.root, parts[:len(parts)-1], place)
	if err != nil {
		return err
	}
	if !double {
		g.table, err = g.descend(parent, parts[len(parts)-1:], place)
		return err
	}
	list := parent.kid(last.name)
	if list == nil {
		list = parent.add(&node{shape: array, key: last.name, at: last.at, value: place})
	}
	if list.shape != array {
		return g.fail("a table where a list of tables should be")
	}
	g.table = list.add(&node{shape: tree, at: last.at, value: place})
	return nil
}

// descend follows the parts down from n, making tables as needed; in a list
// it goes to the last table.
func (g *grower) descend(n *node, parts []part, place diag.Place) (*node, error) {
	for _, p := range parts {
		k := n.kid(p.name)
		if k == nil {
			k = n.add(&node{shape: tree, key: p.name, at: p.at, value: place})
		}
		if k.shape == array && len(k.kids) > 0 {
			k = k.kids[len(k.kids)-1]
		}
		if k.shape != tree {
			return nil, g.fail("a value where a table should be")
		}
		n = k
	}
	return n, nil
}

// pair reads key = value into the table.
func (g *grower) pair(into *node) error {
	parts, err := g.key()
	if err != nil {
		return err
	}
	last := parts[len(parts)-1]
	parent, err := g.descend(into, parts[:len(parts)-1], last.at)
	if err != nil {
		return err
	}
	if !g.take("=") {
		return g.fail("no =")
	}
	if parent.kid(last.name) != nil {
		return g.fail("a key twice")
	}
	n, err := g.value()
	if err != nil {
		return err
	}
	n.key, n.at = last.name, last.at
	parent.add(n)
	return nil
}

// value reads a value and gives it its place.
func (g *grower) value() (*node, error) {
	g.blank(false)
	start := g.at
	n, err := g.bare()
	if err != nil {
		return nil, err
	}
	n.value = g.src.Place(start, g.at)
	n.at = n.value
	n.literal = g.text[start:g.at]
	return n, nil
}

func (g *grower) bare() (*node, error) {
	start := g.at
	switch {
	case g.has(`"`), g.has("'"):
		g.at += stringLength(g.text[g.at:])
		s, err := unquote(g.text[start:g.at])
		return &node{shape: words, text: s}, err
	case g.take("["):
		return g.list()
	case g.take("{"):
		return g.inline()
	}
	for g.at < len(g.text) && !strings.ContainsRune("\r\n,]}#", rune(g.text[g.at])) {
		g.at++
	}
	for g.at > start && (g.text[g.at-1] == ' ' || g.text[g.at-1] == '\t') {
		g.at--
	}
	switch word := g.text[start:g.at]; {
	case word == "":
		return nil, g.fail("no value")
	case word == "true", word == "false":
		return &node{shape: boolean}, nil
	case strings.Contains(word, ":"), strings.Count(word, "-") == 2 && !strings.ContainsAny(word, "eE"):
		return &node{shape: date}, nil
	}
	return &node{shape: number}, nil
}

func (g *grower) list() (*node, error) {
	n := &node{shape: array}
	for {
		g.blank(true)
		if g.take("]") {
			return n, nil
		}
		k, err := g.value()
		if err != nil {
			return nil, err
		}
		n.add(k)
		g.blank(true)
		if !g.take(",") && !g.has("]") {
			return nil, g.fail("no , or ]")
		}
	}
}

func (g *grower) inline() (*node, error) {
	n := &node{shape: tree}
	for {
		g.blank(true)
		if g.take("}") {
			return n, nil
		}
		if err := g.pair(n); err != nil {
			return nil, err
		}
		g.blank(true)
		if !g.take(",") && !g.has("}") {
			return nil, g.fail("no , or }")
		}
	}
}
