package diag_test

import (
	"slices"
	"strings"
	"testing"

	"slatwright/specs/diag"
)

func TestPlace(t *testing.T) {
	src := diag.NewSource("rack.toml", "a = 1\r\nö = \"ü\"\n")
	for _, c := range []struct {
		start, end   int
		line, column int
		text         string
	}{
		{0, 1, 1, 1, "a"}, {4, 5, 1, 5, "1"}, {7, 9, 2, 1, "ö"}, {12, 16, 2, 5, `"ü"`}, {17, 17, 3, 1, ""}, {99, 120, 3, 1, ""}, {-4, -2, 1, 1, ""}, {8, 9, 2, 1, "ö"},
	} {
		p := src.Place(c.start, c.end)
		if p.Line != c.line || p.Column != c.column || src.Slice(p) != c.text {
			t.Errorf("Place(%d, %d) = %+v, %q; want %d:%d, %q", c.start, c.end, p, src.Slice(p), c.line, c.column, c.text)
		}
	}
	if got := src.Line(1) + "|" + src.Line(2) + "|" + src.Line(9); got != "a = 1|ö = \"ü\"|" {
		t.Errorf("lines %q", got)
	}
}

func TestFormat(t *testing.T) {
	long := strings.Repeat("x", 100)
	for _, c := range []struct {
		text string
		at   string // what the message is about
		want string
	}{
		{"[slat]\nwidht = 1\n", "widht", "rack.toml:2:1: odd\n  widht = 1\n  ^^^^^\n  a note\n  a hint\n"},
		{"\twidht = 1", "widht", "rack.toml:1:2: odd\n  \twidht = 1\n  \t^^^^^\n  a note\n  a hint\n"},
		{"日本 = 語", "語", "rack.toml:1:6: odd\n  日本 = 語\n         ^^\n  a note\n  a hint\n"},
		{"e\u0301 = 1", "1", "rack.toml:1:6: odd\n  e\u0301 = 1\n      ^\n  a note\n  a hint\n"},
		{"a\x1b = 1", "1", "rack.toml:1:6: odd\n  a\uFFFD = 1\n       ^\n  a note\n  a hint\n"},
		{long + "y" + long, "y", "rack.toml:1:101: odd\n  ..." + long[:60] + "y" + long[:59] + "...\n     " +
			strings.Repeat(" ", 60) + "^\n  a note\n  a hint\n"},
		{"a =", "", "rack.toml:1:4: odd\n  a =\n     ^\n  a note\n  a hint\n"},
	} {
		src := diag.NewSource("rack.toml", c.text)
		start := strings.Index(c.text, c.at)
		if c.at == "" {
			start = len(c.text)
		}
		m := diag.At(src, src.Place(start, start+len(c.at)), "odd")
		m.Notes, m.Hint = []string{"a note"}, "a hint"
		if got := m.Format(src); got != c.want {
			t.Errorf("%q:\ngot\n%s\nwant\n%s", c.text, got, c.want)
		}
	}
	nowhere := diag.Message{Text: "too large"}
	if got, want := nowhere.Format(diag.NewSource("a\x1bb.toml", "")), "a\uFFFDb.toml: too large\n"; got != want {
		t.Errorf("a message without a place: %q; want %q", got, want)
	}
}

func TestListFormatSaysHowManyMore(t *testing.T) {
	src := diag.NewSource("rack.toml", "x")
	list := make(diag.List, 23)
	for i := range list {
		list[i] = diag.At(src, src.Place(0, 1), "odd")
	}
	got := list.Format(src)
	if n := strings.Count(got, "odd"); n != 20 || !strings.HasSuffix(got, "\nand 3 more\n") {
		t.Errorf("%d of 23 messages, ending %q; want 20, and 3 more", n, got[len(got)-20:])
	}
}

func TestSort(t *testing.T) {
	src := diag.NewSource("rack.toml", "abc")
	list := diag.List{diag.At(src, src.Place(2, 3), "c"), diag.At(src, src.Place(0, 1), "b"), diag.At(src, src.Place(0, 1), "a")}
	list.Sort()
	if got, want := list.Error(), "1:1: a\n1:1: b\n1:3: c"; got != want {
		t.Errorf("sorted: %q; want %q", got, want)
	}
}

func TestNearest(t *testing.T) {
	known := []string{"width", "height", "thickness", "side_clearance", "length", "lift", "rise", "rows"}
	for _, c := range []struct {
		word string
		want []string
	}{
		{"widht", []string{"width"}}, // neighbours exchanged
		{"heigt", []string{"height"}},
		{"WIDTH", []string{"width"}},
		{"side-clearance", []string{"side_clearance"}},
		{"rist", []string{"rise"}},
		{"colour", nil},
		{"xy", nil},
		{"", nil},
		{"width", nil}, // it is known: nothing else is meant
	} {
		if got := diag.Nearest(c.word, known); !slices.Equal(got, c.want) {
			t.Errorf("Nearest(%q) = %q; want %q", c.word, got, c.want)
		}
	}
	if got, want := diag.DidYouMean("rose", []string{"rise", "ruse", "rote"}), "did you mean `rise` or `ruse`?"; got != want {
		t.Errorf("DidYouMean: %q; want %q", got, want)
	}
}
