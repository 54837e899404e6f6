package drawing

import (
	"strings"
	"testing"
)

func TestCheck(t *testing.T) {
	text := func(s string) Text { return Label(NoteText, 0, Pt(20*MM, 20*MM), 3500, Left, Plain(s)) }
	turned, low, half := text("a"), text("a"), text("a")
	turned.Turn = 4
	low.Height = 0
	half.Runs = []Run{{Num: "7"}}
	for _, tt := range []struct {
		mark Mark
		want string // part of the message; empty for none
	}{
		{Line(Visible, 0, Pt(0, 0), Pt(100*MM, 100*MM)), ""},
		{Line(Visible, 0, Pt(5, 5), Pt(5, 5)), "path without a segment at 0.005,0.005"},
		{Path{Segs: []Seg{{To: Pt(5, 0)}, {To: Pt(5, 0)}}}, "line of no length at 0.005,0.000"},
		{Path{Segs: []Seg{{To: Pt(5, 0)}}, Closed: true}, "outline of one line"},
		{Line(Visible, 0, Pt(0, 0), Pt(101*MM, 0)), "path off the sheet, at 0.000,0.000 .. 101.000,0.000"},
		{Line(Visible, 0, Pt(0, -1), Pt(5, 0)), "off the sheet, at 0.000,-0.001"},
		{Line(Solid, 0, Pt(0, 0), Pt(5, 0)), "path that leaves no ink"},
		{Disc(Solid, 0, NoFill, Pt(5*MM, 5*MM), MM), "circle that leaves no ink"},
		{Disc(Thin, 0, NoFill, Pt(5*MM, 5*MM), 0), "circle of radius 0.000"},
		{Disc(Thin, 0, NoFill, Pt(5*MM, 5*MM), 6*MM), "circle off the sheet"},
		{Disc(Thin, 0, 9, Pt(5*MM, 5*MM), MM), "fill 9 does not exist"},
		{Line(99, 0, Pt(0, 0), Pt(5, 0)), "class 99 does not exist"},
		{text("38 7/16\""), ""},
		{text(" "), "text without a character"},
		{text("漢"), "no glyph for [U+6F22]"},
		{text("a\u202eb"), "no glyph for [U+202E]"},
		{text("\U0001F600"), "no glyph for [U+1F600]"},
		{text("a\x00"), "no glyph for [U+0000]"},
		{text(strings.Repeat("long ", 30)), "text off the sheet"},
		{turned, "turned by 4 quarters"},
		{low, "of height 0.000"},
		{half, "half a fraction"},
		{nil, "no mark"},
	} {
		s := &Sheet{Name: "09-test", W: 100 * MM, H: 100 * MM, Frame: Box(0, 0, 100*MM, 100*MM)}
		s.Add(Line(Frame, 0, Pt(0, 0), Pt(1, 1)), tt.mark)
		err := s.Check()
		switch {
		case tt.want == "" && err != nil:
			t.Errorf("%v: unexpected %v", tt.mark, err)
		case tt.want != "" && (err == nil || !strings.Contains(err.Error(), tt.want) || !strings.HasPrefix(err.Error(), "sheet 09-test: mark 1: ")):
			t.Errorf("%v: got %v, want %q", tt.mark, err, tt.want)
		}
	}
	s := &Sheet{Name: "x", W: 10, H: 0, Frame: Box(0, 0, 11, 0)}
	if err := s.Check(); err == nil || strings.Count(err.Error(), "\n") != 1 {
		t.Errorf("a sheet of no height whose frame leaves it: %v", err)
	}
}

func TestFprint(t *testing.T) {
	s := &Sheet{Name: "02-front", Title: "Front \"elevation\"", W: 100 * MM, H: 50 * MM, Frame: Box(5*MM, 5*MM, 90*MM, 40*MM), FullSize: true}
	g := s.Group()
	edge := Line(Frame, 0, Pt(0, 25*MM), Pt(5*MM, 25*MM))
	edge.Margin = true
	figure := Label(FigureText, g, Pt(50*MM, 20*MM), 3500, Middle, Figure("38 7/16\""))
	figure.Turn, figure.Bold, figure.Table = 1, true, true
	s.Add(edge, Arrow(g, Pt(10*MM, 10*MM), Pt(20*MM, 10*MM)), Disc(Symbol, g, White, Pt(30*MM, 30*MM), 5*MM),
		Arc(Thin, 0, Pt(50*MM, 25*MM), 10*MM, 0, 90), figure)
	s.Dims = append(s.Dims, DimRecord{Chain: 1, Role: Overall, Sum: Of("rack.width"), Value: 80000, Printed: "1",
		From: Pt(0, 0), To: Pt(MM, 0), ScaleNum: 1, ScaleDen: 1, Broken: true})
	s.Items = append(s.Items, ItemRecord{Mark: "A", Where: Pt(0, 2), Kind: ListRow})
	const want = `sheet 02-front "Front \"elevation\"" 100.000 x 50.000 frame 5.000,5.000 .. 95.000,45.000 fullsize
path frame margin 0.000,25.000 L 5.000,25.000
path solid g1 black 10.000,10.000 L 13.000,9.500 L 13.000,10.500 Z
circle symbol g1 white 30.000,30.000 r 5.000
path thin 60.000,25.000 C 60.000,19.477 55.523,15.000 50.000,15.000
text figure g1 50.000,20.000 h 3.500 turn 1 middle bold table "38{7|16}\""
dim chain 1 overall "1" x 1 value 80000 0.000,0.000 .. 1.000,0.000 scale 1:1 broken = rack.width
item "A" list row 0.000,0.002
`
	var b strings.Builder
	if err := s.Fprint(&b); err != nil {
		t.Fatal(err)
	}
	if got := b.String(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestInks(t *testing.T) {
	seen := map[string]bool{}
	for c := Class(0); c < classes; c++ {
		in := c.Ink()
		if in.Name == "" || seen[in.Name] {
			t.Errorf("class %d has the name %q", c, in.Name)
		}
		seen[in.Name] = true
		if in.Pen != 0 && in.Pen < 180 {
			t.Errorf("%s: a pen of %d µm is too thin to print", in.Name, in.Pen)
		}
		if len(in.Dash)%2 != 0 {
			t.Errorf("%s: dashes and gaps do not alternate: %v", in.Name, in.Dash)
		}
		if c < Solid && in.Pen == 0 {
			t.Errorf("%s: a line without a pen", in.Name)
		}
	}
	if wide != 2*narrow {
		t.Error("wide lines are not twice the narrow ones")
	}
}
