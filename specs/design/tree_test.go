package design

import (
	"strconv"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/google/go-cmp/cmp"

	"slatwright/specs/diag"
)

// forms holds every way that TOML allows to write keys and values.
const forms = `
bare = 1
bare-key_2 = +2
1234 = 1_000
"quoted key" = "a \"b\" \u00e9 \\"
'literal.key' = 'c:\n'
"" = "empty key"
a.b.c = 1.5
a . "b" . 'd' = -0.5 # spaces around dots
"\u0061".e = true
dotted."x.y".z = false
multi = """
one \
   two
three""""
raw = '''
it's
'''
quotes = """a ""quoted"" word"""
list = [1, 2, # comment ]
  [ "]", '#' ],
  { x = 1, y.z = "}" },
]
inline = { a = 1, "b c" = [1], d.e = { f = "g" } }
empty = []
none = {}
date = 1979-05-27
stamp = 1979-05-27 07:32:00Z
hex = 0xFF
exp = 1e-3
	tab	=	1

[table]
x = 1
[table.sub."deep er"]
y = 2
[ spaced . 'out' ]
z = 3
[[rows]]
n = 1
[[rows.cells]]
c = 1
[[rows.cells]]
c = 2
[[rows]]
n = 2
[rows.extra]
e = 1
[table.other]
k = "after"
`

// The tree says what the decoder says, whatever the form.
func TestTreeAgreesWithDecoder(t *testing.T) {
	for _, text := range []string{forms, strings.ReplaceAll(forms, "\n", "\r\n"), ""} {
		var want map[string]any
		if _, err := toml.Decode(text, &want); err != nil {
			t.Fatal(err)
		}
		root, err := grow(diag.NewSource("forms.toml", text))
		if err != nil {
			t.Fatal(err)
		}
		got := plain(t, root)
		if diff := cmp.Diff(simplify(want), got); diff != "" {
			t.Errorf("(-decoder +tree)\n%s", diff)
		}
	}
}

// plain returns what a node says, as the decoder would have it.
func plain(t *testing.T, n *node) any {
	switch n.shape {
	case tree:
		m := map[string]any{}
		for _, k := range n.kids {
			m[k.key] = plain(t, k)
		}
		return m
	case array:
		list := []any{}
		for _, k := range n.kids {
			list = append(list, plain(t, k))
		}
		return list
	case words:
		return n.text
	case boolean:
		return n.literal == "true"
	case date:
		return "date"
	}
	digits := strings.ReplaceAll(n.literal, "_", "")
	if i, err := strconv.ParseInt(digits, 0, 64); err == nil {
		return i
	}
	f, err := strconv.ParseFloat(digits, 64)
	if err != nil {
		t.Errorf("%q is no number", n.literal)
	}
	return f
}

// simplify brings the decoder's result into the same few types.
func simplify(v any) any {
	switch v := v.(type) {
	case map[string]any:
		m := map[string]any{}
		for k, e := range v {
			m[k] = simplify(e)
		}
		return m
	case []map[string]any:
		list := []any{}
		for _, e := range v {
			list = append(list, simplify(e))
		}
		return list
	case []any:
		list := []any{}
		for _, e := range v {
			list = append(list, simplify(e))
		}
		return list
	case string, int64, float64, bool:
		return v
	}
	return "date"
}

// Places of keys and values hold just the keys and values.
func TestTreePlaces(t *testing.T) {
	src := diag.NewSource("forms.toml", forms)
	root, err := grow(src)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		path       string
		key, value string
		line       int
	}{
		{"bare", "bare", "1", 2},
		{"quoted key", `"quoted key"`, `"a \"b\" \u00e9 \\"`, 5},
		{"a/b/d", "'d'", "-0.5", 9},
		{"a/e", "e", "true", 10},
		{"list/3/y/z", "z", `"}"`, 22},
		{"inline/d/e/f", "f", `"g"`, 24},
		{"rows/1/n", "n", "2", 46},
		{"rows/0/cells/1/c", "c", "2", 44},
		{"table/other/k", "k", `"after"`, 50},
		{"spaced/out/z", "z", "3", 38},
	} {
		n := root
		for _, step := range strings.Split(c.path, "/") {
			if i, err := strconv.Atoi(step); err == nil && n.shape == array {
				n = n.kids[i]
			} else {
				n = n.kid(step)
			}
		}
		if key, value := src.Slice(n.at), src.Slice(n.value); key != c.key || value != c.value || n.value.Line != c.line {
			t.Errorf("%s: key %s, value %s in line %d; want %s, %s, %d", c.path, key, value, n.value.Line, c.key, c.value, c.line)
		}
	}
}

// A text that is no TOML gives an error or a tree, never a panic.
func TestTreeOfAnything(t *testing.T) {
	for at := range forms {
		for _, text := range []string{forms[:at], forms[at:], forms[:at] + "[" + forms[at:], forms[:at] + "\"" + forms[at:]} {
			grow(diag.NewSource("cut.toml", text))
		}
	}
}

func TestSourceOffset(t *testing.T) {
	for _, c := range []struct {
		literal string
		i, want int
	}{
		{`"24 7/0"`, 3, 4}, {`"a\"b"`, 1, 2}, {`"a\"b"`, 2, 4}, {`'''x'''`, 0, 3}, {"\"\"\"\nx\"\"\"", 0, 4},
		{`"é\u00e9x"`, 4, 9}, {`"abc"`, 3, 4}, {`""`, 0, 1},
	} {
		if got := sourceOffset(c.literal, c.i); got != c.want {
			t.Errorf("sourceOffset(%s, %d) = %d; want %d", c.literal, c.i, got, c.want)
		}
	}
}
