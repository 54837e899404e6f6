package dim

import (
	"slices"
	"testing"

	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// board draws dimensions over a box on a sheet of millimetres at 1:1, the box
// from nought to the last stop.
func board(t *testing.T, last unit.Length, put func(b *Board, at func(mm int64) Stop)) *drawing.Sheet {
	t.Helper()
	s := &drawing.Sheet{Name: "dim", W: 400 * drawing.MM, H: 200 * drawing.MM, Units: unit.Metric}
	s.Frame = drawing.Box(10*drawing.MM, 10*drawing.MM, 380*drawing.MM, 180*drawing.MM)
	b := New(s, unit.Format{System: unit.Metric}, drawing.Ratio{Num: 1, Den: 1})
	put(b, func(mm int64) Stop {
		return Stop{At: drawing.Um(60+mm) * drawing.MM, Value: unit.Length(mm) * unit.Millimetre, From: 100 * drawing.MM}
	})
	b.Draw(drawing.Box(60*drawing.MM, 100*drawing.MM, drawing.Um(last.Micrometres()), 20*drawing.MM))
	if err := s.Check(); err != nil {
		t.Fatal(err)
	}
	for _, f := range drawing.Legible(s) {
		t.Error(f)
	}
	return s
}

// words are the texts of a sheet in the order drawn.
func words(s *drawing.Sheet) (texts []string, at map[string]drawing.Rect) {
	at = map[string]drawing.Rect{}
	for _, m := range s.Marks {
		if x, ok := m.(drawing.Text); ok {
			texts = append(texts, x.String())
			at[x.String()] = x.Bounds()
		}
	}
	return texts, at
}

// Many equal links whose figures do not fit are one figure; the links of its
// record still add up to the overall figure, which Legible sees.
func TestEqualLinksAreOne(t *testing.T) {
	s := board(t, 100*unit.Millimetre, func(b *Board, at func(int64) Stop) {
		stops := []Stop{at(0), at(30)}
		for k := int64(1); k <= 12; k++ {
			stops = append(stops, at(30+4*k))
		}
		b.Chain(Above, append(stops, at(100)), Options{})
		b.Overall(Above, at(0), at(100), Options{})
	})
	texts, _ := words(s)
	if want := []string{"30", "12 × 4 (= 48)", "22", "100"}; !slices.Equal(texts, want) {
		t.Errorf("figures %q, want %q", texts, want)
	}
	i := slices.IndexFunc(s.Dims, func(d drawing.DimRecord) bool { return d.Times == 12 })
	if i < 0 || s.Dims[i].Role != drawing.Link || s.Dims[i].Printed != "4" {
		t.Errorf("no link of 12 times 4 in %+v", s.Dims)
	}
}

// Equal links whose figures fit stay apart.
func TestEqualLinksThatFit(t *testing.T) {
	s := board(t, 60*unit.Millimetre, func(b *Board, at func(int64) Stop) {
		b.Chain(Above, []Stop{at(0), at(20), at(40), at(60)}, Options{})
	})
	if texts, _ := words(s); !slices.Equal(texts, []string{"20", "20", "20"}) {
		t.Errorf("figures %q", texts)
	}
}

// A short link at the end of a chain has its figure beyond the end; one between
// two others is pulled out, with a leader, and on no line of the outer tracks.
func TestFiguresOutOfPlace(t *testing.T) {
	for _, side := range []Side{Above, Below} {
		s := board(t, 100*unit.Millimetre, func(b *Board, at func(int64) Stop) {
			b.Chain(side, []Stop{at(0), at(3), at(50), at(54), at(100)}, Options{})
			b.Chain(side, []Stop{at(0), at(52), at(100)}, Options{Brackets: true})
		})
		_, at := words(s)
		if r := at["3"]; r.Max.X > 60*drawing.MM {
			t.Errorf("3 stands at %v, want it left of the chain", r)
		}
		if r := at["4"]; r.Min.X < 110*drawing.MM && r.Max.X > 114*drawing.MM {
			t.Errorf("4 stands at %v, across the outer extension line at 112", r)
		}
		leaders := 0
		for _, m := range s.Marks {
			if p, ok := m.(drawing.Path); ok && p.Class == drawing.Leader {
				leaders++
			}
		}
		if leaders != 1 {
			t.Errorf("%d leaders, want one", leaders)
		}
	}
}

// No filled ground is drawn under a figure: every extension line is whole.
func TestNoPlates(t *testing.T) {
	s := board(t, 100*unit.Millimetre, func(b *Board, at func(int64) Stop) {
		b.Chain(LeftOf, []Stop{{At: 100 * drawing.MM, Value: 20 * unit.Millimetre, From: 60 * drawing.MM}, {At: 120 * drawing.MM, From: 60 * drawing.MM}}, Options{})
		b.Running(Below, "FOOT", []Stop{at(0), at(2), at(4), at(90)}, Options{})
		b.Chain(Above, []Stop{at(0), at(2), at(4), at(6), at(100)}, Options{})
	})
	for _, m := range s.Marks {
		if p, ok := m.(drawing.Path); ok && p.Fill == drawing.White {
			t.Errorf("a white ground at %v", p.Bounds())
		}
	}
}

// Arrowheads of a short link at an end come from outside, and between two short
// links stands a dot; a long link keeps its own inside.
func TestTerminators(t *testing.T) {
	s := board(t, 100*unit.Millimetre, func(b *Board, at func(int64) Stop) {
		b.Chain(Above, []Stop{at(0), at(4), at(7), at(100)}, Options{})
	})
	tips, dots := map[drawing.Um]int{}, map[drawing.Um]int{}
	for _, m := range s.Marks {
		switch m := m.(type) {
		case drawing.Path:
			if m.Fill == drawing.Black {
				r := m.Bounds()
				back := r.Min.X + r.Max.X - m.Start.X // the far end of the head from its tip
				tips[m.Start.X/drawing.MM] += map[bool]int{true: 1, false: -1}[back > m.Start.X]
			}
		case drawing.Circle:
			dots[m.Centre.X/drawing.MM]++
		}
	}
	// From outside at 60, inside at 67 and 160; a dot at 64.
	if tips[60] != -1 || tips[67] != 1 || tips[160] != -1 || len(tips) != 3 || dots[64] != 1 || len(dots) != 1 {
		t.Errorf("arrowheads %v, dots %v", tips, dots)
	}
}

// A running dimension over a break prints from the named end, though the paper
// lacks what is between.
func TestRunningOverABreak(t *testing.T) {
	s := board(t, 100*unit.Millimetre, func(b *Board, at func(int64) Stop) {
		first, far := at(-12), at(40)
		first.Value, far.Value = 0, 3040*unit.Millimetre
		b.Running(Below, "from FOOT", []Stop{first, far}, Options{Broken: true})
	})
	texts, _ := words(s)
	if !slices.Equal(texts, []string{"from FOOT", "3040"}) || !s.Dims[0].Broken || s.Dims[0].Value != 3040*unit.Millimetre {
		t.Errorf("figures %q, records %+v", texts, s.Dims)
	}
}

// Distances inside a view have their figures beside it, on leaders that do not
// cross.
func TestCallouts(t *testing.T) {
	s := board(t, 60*unit.Millimetre, func(b *Board, at func(int64) Stop) {
		pt := func(x, y drawing.Um) drawing.Point { return drawing.Pt((60+x)*drawing.MM, (100+y)*drawing.MM) }
		b.Callout(Callout{pt(50, 2), pt(50, 4), 2 * unit.Millimetre, "low", Straight})
		b.Callout(Callout{pt(10, 3), pt(10, 5), 2 * unit.Millimetre, "far", Straight})
		b.Callout(Callout{pt(20, 1), pt(32, 1), 12 * unit.Millimetre, "wide", Straight})
		b.Callout(Callout{pt(30, 9), pt(33, 13), 5 * unit.Millimetre, "aslant", Straight})
	})
	texts, at := words(s)
	slices.Sort(texts)
	if want := []string{"aslant 5", "far 2", "low 2", "wide 12"}; !slices.Equal(texts, want) {
		t.Errorf("figures %q, want %q", texts, want)
	}
	for text, r := range at {
		if r.Min.X < 120*drawing.MM {
			t.Errorf("%s stands in the view", text)
		}
	}
}

// Slots stay between the walls that their wishes are between, and a room that is
// full gives to the next.
func TestSpreadBetween(t *testing.T) {
	slots := []slot{{want: 10, size: 8}, {want: 11, size: 8}, {want: 12, size: 8}, {want: 40, size: 8}}
	walls := []drawing.Um{0, 20}
	spreadBetween(slots, walls)
	for i, s := range slots {
		lo, hi := s.at-s.size/2, s.at+s.size/2
		for _, w := range walls {
			if lo < w && w < hi {
				t.Errorf("slot %d from %d to %d lies across the wall at %d", i, lo, hi, w)
			}
		}
		if i > 0 && lo < slots[i-1].at+slots[i-1].size/2 {
			t.Errorf("slot %d overlaps the one before", i)
		}
	}
}
