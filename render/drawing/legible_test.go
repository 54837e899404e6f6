package drawing_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"slatwright/render/drawing"
	"slatwright/render/drawing/sample"
	"slatwright/specs/unit"
)

const mm = drawing.MM

func TestSampleIsLegible(t *testing.T) {
	s := sample.Sheet()
	if err := s.Check(); err != nil {
		t.Fatal(err)
	}
	for _, f := range drawing.Legible(s) {
		t.Error(f)
	}
}

// figure returns the number of the text that reads s.
func figure(t *testing.T, sheet *drawing.Sheet, s string) int {
	t.Helper()
	i := slices.IndexFunc(sheet.Marks, func(m drawing.Mark) bool {
		x, ok := m.(drawing.Text)
		return ok && x.String() == s
	})
	if i < 0 {
		t.Fatalf("the sample has no text %q", s)
	}
	return i
}

// dim returns the record of the dimension printed as s.
func dim(t *testing.T, sheet *drawing.Sheet, s string) *drawing.DimRecord {
	t.Helper()
	i := slices.IndexFunc(sheet.Dims, func(d drawing.DimRecord) bool { return d.Printed == s })
	if i < 0 {
		t.Fatalf("the sample has no dimension %q", s)
	}
	return &sheet.Dims[i]
}

// Each case spoils the sample in one way. The faults found must be of the one
// kind expected, with the words expected, and nothing else.
func TestSpoiltSheets(t *testing.T) {
	moveText := func(what string, d drawing.Point) func(*testing.T, *drawing.Sheet) {
		return func(t *testing.T, s *drawing.Sheet) {
			i := figure(t, s, what)
			s.Marks[i] = drawing.Translate(s.Marks[i:i+1], d)[0]
		}
	}
	setText := func(what string, f func(*drawing.Text)) func(*testing.T, *drawing.Sheet) {
		return func(t *testing.T, s *drawing.Sheet) {
			i := figure(t, s, what)
			x := s.Marks[i].(drawing.Text)
			f(&x)
			s.Marks[i] = x
		}
	}
	add := func(marks ...drawing.Mark) func(*testing.T, *drawing.Sheet) {
		return func(_ *testing.T, s *drawing.Sheet) { s.Add(marks...) }
	}
	setDim := func(what string, f func(*drawing.DimRecord)) func(*testing.T, *drawing.Sheet) {
		return func(t *testing.T, s *drawing.Sheet) { f(dim(t, s, what)) }
	}
	for _, tt := range []struct {
		name  string
		spoil func(*testing.T, *drawing.Sheet)
		kind  drawing.FaultKind
		says  string
	}{
		{"text moved onto text", moveText("hidden", drawing.Pt(0, 5*mm)), drawing.TextOnText, `"hidden" meets "centre"`},
		{"text moved near text", moveText("symbol", drawing.Pt(0, -2800)), drawing.TextOnText, `"register" meets "symbol"`},
		{"text lengthened into a line", setText("1\"", func(x *drawing.Text) { x.Runs = drawing.Figure("1\" wide") }), drawing.TextOnLine, `"1\" wide" meets a extension path`},
		{"text moved onto a line", moveText("thin", drawing.Pt(-20*mm, 0)), drawing.TextOnLine, `"thin" meets a thin path`},
		{"text a hair from a line", moveText("12 × 4 7/8\" = 58 1/2\"", drawing.Pt(0, 100)), drawing.TextOnLine, ""},
		{"own line through its figure", moveText("3 7/8\"", drawing.Pt(0, 4500)), drawing.TextOnLine, `"3 7/8\"" meets a dimension path`},
		{"line through a turned figure", add(drawing.Line(drawing.Centre, 0, drawing.Pt(95*mm, 174*mm), drawing.Pt(118*mm, 174*mm))), drawing.TextOnLine, `"1 3/8\"" meets a centre path`},
		{"long slanting line through a figure", add(drawing.Line(drawing.Thin, 0, drawing.Pt(150*mm, 60*mm), drawing.Pt(170*mm, 120*mm))), drawing.TextOnLine, `"  turn 15/16\"" meets a thin path`},
		{"circle through a text", add(drawing.Disc(drawing.Thin, 0, drawing.NoFill, drawing.Pt(185*mm, 36*mm), 6*mm)), drawing.TextOnLine, `"≈ 4 7/64 (104.4 mm) dia." meets a thin circle`},
		{"black disc on a text", add(drawing.Disc(drawing.Solid, 0, drawing.Black, drawing.Pt(84*mm, 24*mm), 12*mm)), drawing.TextOnLine, "solid circle"},
		{"black box over a text", add(drawing.Rectangle(drawing.Solid, 0, drawing.Black, drawing.Box(112*mm, 250*mm, 10*mm, 5*mm))), drawing.TextOnLine, `"A" meets a solid path`},
		{"curve through a text", add(drawing.Arc(drawing.Thin, 0, drawing.Pt(160*mm, 46*mm), 20*mm, 170, 20)), drawing.TextOnLine, ""},
		{"line through a balloon's letter", add(drawing.Line(drawing.Trail, 0, drawing.Pt(150*mm, 180*mm), drawing.Pt(150*mm, 200*mm))), drawing.TextOnLine, `"A" meets a trail path`},
		{"mark outside the frame", add(drawing.Line(drawing.Visible, 0, drawing.Pt(190*mm, 100*mm), drawing.Pt(201*mm, 100*mm))), drawing.OutsideFrame, "visible path reaches"},
		{"text outside the frame", add(drawing.Label(drawing.NoteText, 0, drawing.Pt(150*mm, 293*mm), 3500, drawing.Left, drawing.Plain("low"))), drawing.OutsideFrame, `"low" reaches`},
		{"small lettering", setText("phantom", func(x *drawing.Text) { x.Height = 3400 }), drawing.TextTooSmall, `"phantom" is 3.400 high, least is 3.500`},
		{"small lettering in a table", setText("slat", func(x *drawing.Text) { x.Height = 2400 }), drawing.TextTooSmall, `least is 2.500`},
		{"table lettering outside a table", setText("slat", func(x *drawing.Text) { x.Table = false }), drawing.TextTooSmall, `"slat" is 2.500 high, least is 3.500`},
		{"stack in a table", setText("slat", func(x *drawing.Text) { x.Runs = drawing.Figure("3/4") }), drawing.TextTooSmall, `"3/4" has a fraction 1.750 high`},
		{"leaders cross", add(drawing.Line(drawing.Leader, 0, drawing.Pt(140*mm, 200*mm), drawing.Pt(160*mm, 201*mm))), drawing.LeadersCross, "two leaders meet"},
		{"leaders on each other", add(drawing.Line(drawing.Leader, 0, drawing.Pt(146*mm, 200*mm), drawing.Pt(144*mm, 205*mm))), drawing.LeadersCross, "two leaders meet"},
		{"extension line under a plate", add(drawing.Rectangle(drawing.Solid, 0, drawing.White, drawing.Box(29*mm, 157*mm, 4*mm, 2*mm))), drawing.LineBroken, "a solid path hides part of a extension path"},
		{"figure printed wrong", setDim("1 3/8\"", func(d *drawing.DimRecord) { d.Printed = "1 1/4\"" }), drawing.FigureValue, `"1 1/4\"" is printed for 34.925 mm`},
		{"rounded link that opens its chain", setDim("1\"", func(d *drawing.DimRecord) { d.Printed = "≈ 1 1/64\"" }), drawing.ChainOpen, "add up to 124.221875 mm"},
		{"figure that is no length", setDim("1 3/8\"", func(d *drawing.DimRecord) { d.Printed = "wide" }), drawing.FigureValue, `"wide" cannot be read`},
		{"rounded figure without its sign", setDim("1 3/8\"", func(d *drawing.DimRecord) { d.Value += 80 }), drawing.FigureValue, `printed for 34.926 mm`},
		{"rounded figure too far off", setDim("1 3/8\"", func(d *drawing.DimRecord) { d.Printed = "≈ 1 7/16\"" }), drawing.FigureValue, `"≈ 1 7/16\"" is printed`},
		{"line too short for its value", setDim("4 7/8\"", func(d *drawing.DimRecord) { d.To.X -= 10 }), drawing.FigureGeometry, `"4 7/8\"" spans 123.806 mm of the model, its value is 123.825 mm`},
		{"wrong scale", setDim("1 3/8\"", func(d *drawing.DimRecord) { d.ScaleDen = 5 }), drawing.FigureGeometry, `"1 3/8\"" spans`},
		{"no scale", setDim("1 3/8\"", func(d *drawing.DimRecord) { d.ScaleDen = 0 }), drawing.FigureGeometry, "scale 1:0"},
		{"repeated link that spans one", setDim("1 3/8\"", func(d *drawing.DimRecord) { d.Times = 2 }), drawing.FigureGeometry, `"1 3/8\"" spans`},
		{"link missing from the chain", func(t *testing.T, s *drawing.Sheet) { dim(t, s, "1\"").Role = drawing.Check }, drawing.ChainOpen, "the links of chain 1 add up to 98.425 mm, the whole is printed \"4 7/8\\\"\""},
		{"balloon without a row", func(_ *testing.T, s *drawing.Sheet) { s.Items[0].Mark = "C"; s.Items[2].Mark = "B" }, drawing.ItemUnlisted, `item "C" has no row`},
		{"row without a balloon", func(_ *testing.T, s *drawing.Sheet) {
			s.Items = append(s.Items, drawing.ItemRecord{Mark: "D", Kind: drawing.ListRow})
		}, drawing.ItemUnshown, `part "D" is listed but marked in no view`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s := sample.Sheet()
			if tt.name == "text a hair from a line" {
				y := s.Marks[figure(t, s, "12 × 4 7/8\" = 58 1/2\"")].Bounds().Max.Y + 400
				s.Add(drawing.Line(drawing.Thin, 0, drawing.Pt(120*mm, y), drawing.Pt(190*mm, y)))
				if got := drawing.Legible(s); len(got) != 0 {
					t.Fatalf("before: %v", got)
				}
			}
			tt.spoil(t, s)
			faults := drawing.Legible(s)
			if len(faults) == 0 {
				t.Fatal("nothing found")
			}
			said := false
			for _, f := range faults {
				if f.Kind != tt.kind {
					t.Errorf("also found: %v", f)
				}
				said = said || strings.Contains(f.Says, tt.says)
			}
			if !said {
				t.Errorf("got %v, want %q", faults, tt.says)
			}
		})
	}
}

func TestWhatIsNoFault(t *testing.T) {
	for _, tt := range []struct {
		name  string
		marks func(*drawing.Sheet)
	}{
		{"line hidden under a white box", func(s *drawing.Sheet) {
			s.Add(drawing.Line(drawing.Thin, 0, drawing.Pt(30*mm, 200*mm), drawing.Pt(90*mm, 200*mm)),
				drawing.Rectangle(drawing.Solid, 0, drawing.White, drawing.Box(40*mm, 195*mm, 30*mm, 8*mm)),
				drawing.Label(drawing.NoteText, 0, drawing.Pt(45*mm, 201*mm), 3500, drawing.Left, drawing.Plain("clear")))
		}},
		{"text on a light ground", func(s *drawing.Sheet) {
			s.Add(drawing.Rectangle(drawing.Solid, 0, drawing.Light, drawing.Box(40*mm, 195*mm, 30*mm, 8*mm)),
				drawing.Label(drawing.NoteText, 0, drawing.Pt(45*mm, 201*mm), 3500, drawing.Left, drawing.Plain("clear")))
		}},
		{"leaders from one dot", func(s *drawing.Sheet) {
			s.Add(drawing.Line(drawing.Leader, 0, drawing.Pt(40*mm, 200*mm), drawing.Pt(50*mm, 210*mm)),
				drawing.Line(drawing.Leader, 0, drawing.Pt(50*mm, 210*mm), drawing.Pt(60*mm, 200*mm)))
		}},
		{"arc whose control points leave the frame", func(s *drawing.Sheet) {
			s.Add(drawing.Arc(drawing.Thin, 0, drawing.Pt(190*mm, 100*mm), 10*mm, -30, 60))
		}},
		{"rounded figure with its sign", func(s *drawing.Sheet) {
			s.Dims = append(s.Dims, drawing.DimRecord{Role: drawing.Note, Printed: "(≈ 1 3/8 dia.)", Value: unit.MustParse("34.9", unit.Metric)})
		}},
		{"repeated link", func(s *drawing.Sheet) {
			s.Dims = append(s.Dims, drawing.DimRecord{Chain: 2, Role: drawing.Link, Printed: "2", Value: 2 * unit.Inch, Times: 3, To: drawing.Pt(152400, 0), ScaleNum: 1, ScaleDen: 1},
				drawing.DimRecord{Chain: 2, Role: drawing.Overall, Printed: "6", Value: 6 * unit.Inch, To: drawing.Pt(152400, 0), ScaleNum: 1, ScaleDen: 1})
		}},
		{"origin of running dimensions", func(s *drawing.Sheet) {
			s.Dims = append(s.Dims, drawing.DimRecord{Role: drawing.Running, Printed: "0", ScaleNum: 1, ScaleDen: 2})
		}},
		{"dimension in a broken view", func(s *drawing.Sheet) {
			s.Dims = append(s.Dims, drawing.DimRecord{Role: drawing.Check, Printed: "48", Value: 48 * unit.Inch, Broken: true})
		}},
	} {
		s := sample.Sheet()
		tt.marks(s)
		for _, f := range drawing.Legible(s) {
			t.Errorf("%s: %v", tt.name, f)
		}
	}
}

func TestMetricFigures(t *testing.T) {
	s := &drawing.Sheet{Name: "m", W: 100 * mm, H: 100 * mm, Units: unit.Metric}
	s.Dims = []drawing.DimRecord{{Role: drawing.Check, Printed: "610", Value: 610 * unit.Millimetre, To: drawing.Pt(61*mm, 0), ScaleNum: 1, ScaleDen: 10}}
	if got := drawing.Legible(s); len(got) != 0 {
		t.Errorf("got %v", got)
	}
	s.Units = unit.Imperial
	if got := drawing.Legible(s); len(got) != 1 || got[0].Kind != drawing.FigureValue {
		t.Errorf("610 read as inches: got %v, want one figure that is not its value", got)
	}
}

func TestItemsOfAPacket(t *testing.T) {
	view := &drawing.Sheet{Name: "02", W: mm, H: mm, Items: []drawing.ItemRecord{{Mark: "A"}, {Mark: "C"}}}
	list := &drawing.Sheet{Name: "06", W: mm, H: mm, Items: []drawing.ItemRecord{{Mark: "A", Kind: drawing.ListRow}, {Mark: "B", Kind: drawing.ListRow}}}
	if got := drawing.Legible(view); len(got) != 0 {
		t.Errorf("a sheet without a list: %v", got)
	}
	got := fmt.Sprint(drawing.Items([]*drawing.Sheet{view, list}))
	want := `[02: item unlisted at 0.000,0.000: item "C" has no row in a parts list 06: item unshown at 0.000,0.000: part "B" is listed but marked in no view]`
	if got != want {
		t.Errorf("got %s\nwant %s", got, want)
	}
}

// A sheet with thousands of marks is looked through in a moment.
func TestLegibleIsFast(t *testing.T) {
	s := &drawing.Sheet{Name: "big", W: 420 * mm, H: 297 * mm}
	s.Frame = drawing.Box(0, 0, s.W, s.H)
	for y := 10 * mm; y < 290*mm; y += 7 * mm {
		for x := 5 * mm; x < 400*mm; x += 12 * mm {
			s.Add(drawing.Label(drawing.NoteText, 0, drawing.Pt(x, y), 3500, drawing.Left, drawing.Figure("88")))
		}
		for k := range 200 {
			s.Add(drawing.Line(drawing.Thin, 0, drawing.Pt(drawing.Um(k)*2*mm, y+1500), drawing.Pt(drawing.Um(k)*2*mm+mm, y+1500)))
		}
	}
	start := time.Now()
	if got := drawing.Legible(s); len(got) != 0 {
		t.Errorf("%d faults, the first %v", len(got), got[0])
	}
	if took := time.Since(start); took > time.Second {
		t.Errorf("%d marks took %v", len(s.Marks), took)
	}
}
