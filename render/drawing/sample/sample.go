// Package sample draws sheets that hold one of everything: each class of line,
// each kind of mark, lettering in every size and turn. The tests of the writers
// and of the legibility checks take sheets from here; no program does.
package sample

import (
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

const mm = drawing.MM

// Sheet returns an A4 sheet that reads well: Legible finds nothing on it.
func Sheet() *drawing.Sheet {
	s := &drawing.Sheet{
		Name: "01-sample", Title: "Sample sheet", W: 210 * mm, H: 297 * mm,
		Frame: drawing.Box(20*mm, 10*mm, 180*mm, 277*mm),
	}
	s.Add(drawing.Rectangle(drawing.Frame, 0, drawing.NoFill, s.Frame))
	centring := drawing.Line(drawing.Frame, 0, drawing.Pt(105*mm, 5*mm), drawing.Pt(105*mm, 15*mm))
	centring.Margin = true
	s.Add(centring)
	lines(s)
	view(s)
	balloons(s)
	lettering(s)
	table(s)
	return s
}

// lines draws a line of each class down the left, each with its name.
func lines(s *drawing.Sheet) {
	y := 24 * mm
	for c := drawing.Visible; c <= drawing.Symbol; c++ {
		s.Add(drawing.Line(c, 0, drawing.Pt(26*mm, y), drawing.Pt(76*mm, y)))
		s.Add(drawing.Label(drawing.NoteText, 0, drawing.Pt(80*mm, y+1250), 3500, drawing.Left, drawing.Plain(c.String())))
		y += 6 * mm
	}
}

// view draws a box 4 7/8 in by 1 3/8 in at 1 : 2, hatched in part, with its
// dimensions and a circle.
func view(s *drawing.Sheet) {
	r := drawing.Box(30*mm, 165*mm, 61913, 17463) // 4 7/8 and 1 3/8 in at 1 : 2
	s.Add(drawing.Rectangle(drawing.Visible, 0, drawing.Light, r))
	left := drawing.Box(r.Min.X, r.Min.Y, 12700, r.H())
	s.Add(drawing.Hatching{}.Hatch(0, left)...)
	s.Add(drawing.Hatching{Falling: true}.Hatch(0, drawing.Box(r.Max.X-6350, r.Min.Y, 6350, r.H()))...)
	c := r.Centre()
	s.Add(drawing.Disc(drawing.Thin, 0, drawing.White, c, 6*mm))
	s.Add(drawing.Arc(drawing.Phantom, 0, c, 7500, 30, 120))
	s.Add(drawing.Line(drawing.Centre, 0, drawing.Pt(c.X, c.Y-10*mm), drawing.Pt(c.X, c.Y+10*mm)))
	s.Add(drawing.BreakLine(0, drawing.Pt(r.Max.X+8*mm, r.Min.Y), drawing.Pt(r.Max.X+8*mm, r.Max.Y)))
	y := r.Min.Y - 14*mm
	links := []drawing.Um{r.Min.X, r.Min.X + 12700, r.Max.X}
	level(s, y, links, []string{"1\"", "3 7/8\""}, drawing.Link)
	level(s, y-12*mm, []drawing.Um{r.Min.X, r.Max.X}, []string{"4 7/8\""}, drawing.Overall)
	upright(s, r)
}

// level draws level dimensions at height y between neighbouring xs.
func level(s *drawing.Sheet, y drawing.Um, xs []drawing.Um, figures []string, role drawing.Role) {
	for i, f := range figures {
		a, b := drawing.Pt(xs[i], y), drawing.Pt(xs[i+1], y)
		g := s.Group()
		s.Add(drawing.Line(drawing.Dimension, g, a, b), drawing.Arrow(g, a, b), drawing.Arrow(g, b, a))
		mid := drawing.Pt((a.X+b.X)/2, y-4500)
		t := drawing.Label(drawing.FigureText, g, drawing.Point{}, 3500, drawing.Middle, drawing.Figure(f)).CentredOn(mid)
		s.Add(t)
		s.Dims = append(s.Dims, drawing.DimRecord{Chain: 1, Role: role, Sum: drawing.Of("sample.length"), Value: unit.MustParse(f, unit.Imperial),
			Printed: f, From: a, To: b, ScaleNum: 1, ScaleDen: 2})
	}
	for _, x := range xs {
		s.Add(drawing.Line(drawing.Extension, 0, drawing.Pt(x, 163*mm), drawing.Pt(x, y-2*mm)))
	}
}

// upright draws a dimension that reads from the right.
func upright(s *drawing.Sheet, r drawing.Rect) {
	x := r.Max.X + 20*mm
	a, b := drawing.Pt(x, r.Max.Y), drawing.Pt(x, r.Min.Y)
	g := s.Group()
	s.Add(drawing.Line(drawing.Dimension, g, a, b), drawing.Arrow(g, a, b), drawing.Arrow(g, b, a), drawing.OriginMark(g, a))
	for _, p := range []drawing.Point{a, b} {
		s.Add(drawing.Line(drawing.Extension, g, drawing.Pt(r.Max.X+13*mm, p.Y), drawing.Pt(x+2*mm, p.Y)))
	}
	t := drawing.Label(drawing.FigureText, g, drawing.Point{}, 3500, drawing.Middle, drawing.Figure("1 3/8\""))
	t.Turn = 1
	s.Add(t.CentredOn(drawing.Pt(x-4500, (a.Y+b.Y)/2)))
	s.Dims = append(s.Dims, drawing.DimRecord{Role: drawing.Check, Value: unit.MustParse("1 3/8", unit.Imperial),
		Printed: "1 3/8\"", From: a, To: b, ScaleNum: 1, ScaleDen: 2})
}

// balloons draws two item marks with leaders, and an ellipse.
func balloons(s *drawing.Sheet) {
	for i, mark := range []string{"A", "B"} {
		at := drawing.Pt(150*mm+drawing.Um(i)*20*mm, 190*mm)
		tip := at.Add(drawing.Pt(-8*mm, 20*mm))
		g := s.Group()
		s.Add(drawing.Line(drawing.Leader, g, at, tip), drawing.Dot(g, tip),
			drawing.Disc(drawing.Symbol, g, drawing.White, at, 5*mm),
			drawing.Label(drawing.ItemText, g, drawing.Point{}, 5*mm, drawing.Middle, drawing.Plain(mark)).CentredOn(at))
		s.Items = append(s.Items, drawing.ItemRecord{Mark: mark, Where: at, Kind: drawing.Balloon})
	}
	s.Add(drawing.Ellipse(drawing.Thin, 0, drawing.Mid, drawing.Pt(152*mm, 222*mm), drawing.Pt(12*mm, 7*mm), drawing.Pt(12*mm, -7*mm)))
	s.Add(drawing.Cross(drawing.Register, 0, drawing.Pt(185*mm, 222*mm), 10*mm)...)
}

// lettering writes in each turn, size and weight, and what a figure may hold.
func lettering(s *drawing.Sheet) {
	texts := []drawing.Text{
		drawing.Label(drawing.HeadingText, 0, drawing.Pt(120*mm, 26*mm), 7*mm, drawing.Left, drawing.Plain("Sample ½ Žßñ")),
		drawing.Label(drawing.NoteText, 0, drawing.Pt(196*mm, 36*mm), 3500, drawing.Right, drawing.Figure("≈ 4 7/64 (104.4 mm) dia.")),
		drawing.Label(drawing.NoteText, 0, drawing.Pt(120*mm, 46*mm), 3500, drawing.Left, drawing.Figure("12 × 4 7/8\" = 58 1/2\"")),
		drawing.Label(drawing.NoteText, 0, drawing.Pt(120*mm, 58*mm), 5*mm, drawing.Left, drawing.Figure("[38 7/16\"] 2'-7 1/2\"")),
	}
	texts[0].Bold = true
	for turn := range 4 {
		t := drawing.Label(drawing.NoteText, 0, drawing.Pt(150*mm, 90*mm), 3500, drawing.Left, drawing.Figure("  turn 15/16\""))
		t.Turn = turn
		texts = append(texts, t)
	}
	for _, t := range texts {
		s.Add(t)
	}
}

// table draws a parts list of two rows.
func table(s *drawing.Sheet) {
	box := drawing.Box(110*mm, 240*mm, 84*mm, 24*mm)
	s.Add(drawing.Rectangle(drawing.Frame, 0, drawing.NoFill, box))
	for i, row := range [][]string{{"mark", "part", "T × W × L"}, {"A", "slat", "3/4 × 1 × 9 1/2"}, {"B", "leg", "3/4 × 1 1/2 × 48"}} {
		y := box.Min.Y + 8*mm*drawing.Um(i+1)
		if i < 2 {
			s.Add(drawing.Line(drawing.FrameThin, 0, drawing.Pt(box.Min.X, y), drawing.Pt(box.Max.X, y)))
		}
		for k, cell := range row {
			x := box.Min.X + 3*mm + drawing.Um(k)*20*mm
			t := drawing.Label(drawing.CellText, 0, drawing.Pt(x, y-2750), 2500, drawing.Left, drawing.Plain(cell))
			t.Table, t.Bold = true, i == 0
			s.Add(t)
		}
		if i > 0 {
			s.Items = append(s.Items, drawing.ItemRecord{Mark: row[0], Where: drawing.Pt(box.Min.X, y), Kind: drawing.ListRow})
		}
	}
}

// FullSize returns a sheet of the given size with upright strokes 0.25 mm wide
// across its middle, at the given distances from its left edge.
func FullSize(w, h drawing.Um, strokes ...drawing.Um) *drawing.Sheet {
	s := &drawing.Sheet{Name: "01-ruler", Title: "Ruler", W: w, H: h, Frame: drawing.Box(0, 0, w, h), FullSize: true}
	for _, x := range strokes {
		s.Add(drawing.Line(drawing.TemplateCut, 0, drawing.Pt(x, h/2-4*mm), drawing.Pt(x, h/2+4*mm)))
	}
	return s
}
