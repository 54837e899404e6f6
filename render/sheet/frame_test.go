package sheet

import (
	"slices"
	"testing"

	"slatwright/render/drawing"
	"slatwright/render/typeface"
)

// A long name is set smaller, then on two lines, and only then shortened.
func TestTitleBlockLettering(t *testing.T) {
	const room = 39 * drawing.MM // of the customer's field
	for _, c := range []struct {
		name   string
		text   string
		room   drawing.Um
		height drawing.Um
		lines  []string
		set    drawing.Um
	}{
		{"short", "Lantern Inn", room, drawing.TableHeight, []string{"Lantern Inn"}, drawing.TableHeight},
		{"two lines", "The Quill family, Upper Saltmere", room, drawing.TableHeight, []string{"The Quill family, Upper", "Saltmere"}, drawing.TableHeight},
		{"smaller heading", "Section, column 1, lowest row", 77 * drawing.MM, drawing.HeadingHeight, []string{"Section, column 1, lowest row"}, drawing.FigureHeight},
		{"nothing", "", room, drawing.TableHeight, nil, drawing.TableHeight},
		{"spaces", "  A \t B ", room, drawing.TableHeight, []string{"A B"}, drawing.TableHeight},
	} {
		lines, h := lettered(c.text, c.room, c.height, c.height > drawing.FigureHeight)
		if !slices.Equal(lines, c.lines) || h != c.set {
			t.Errorf("%s: %q at %v, want %q at %v", c.name, lines, h, c.lines, c.set)
		}
	}
	lines, h := lettered("The Brewers' and Growers' Cooperative of Saltmere, Upper Saltmere, Quillhaven and the Lantern Isles", room, drawing.TableHeight, false)
	if len(lines) != 2 || []rune(lines[1])[len([]rune(lines[1]))-1] != '…' {
		t.Errorf("a name too long for two lines is %q", lines)
	}
	for _, l := range lines {
		if typeface.Width(drawing.Plain(l), h, false) > room {
			t.Errorf("%q is wider than its field", l)
		}
	}
}
