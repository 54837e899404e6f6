package typeface

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"slatwright/render/drawing/paper"
)

func TestCapHeight(t *testing.T) {
	// 0.7227 of the em was measured on the font by other means.
	for _, bold := range []bool{false, true} {
		f := Of(bold)
		if got := float64(f.Caps) / float64(f.Em); got < 0.722 || got > 0.724 {
			t.Errorf("bold %v: capitals are %.4f of the em, want 0.7227", bold, got)
		}
		// 3.5 mm capitals need 13.73 pt (measured likewise).
		if em := f.EmSize(3500).MM() * 72 / 25.4; em < 13.71 || em > 13.75 {
			t.Errorf("bold %v: em for 3.5 mm is %.3f pt, want 13.73", bold, em)
		}
	}
}

func TestFigureDigitsAreOfOneWidth(t *testing.T) {
	f := Of(false)
	for r := '0'; r <= '9'; r++ {
		if f.Glyph(r).Advance != f.Glyph('0').Advance {
			t.Errorf("digit %c is not as wide as 0", r)
		}
	}
}

func TestFigure(t *testing.T) {
	for _, tt := range []struct {
		in   string
		want []Run
		read string // in itself where empty
	}{
		{"38 7/16\"", []Run{{"38", "7", "16"}, {Text: "\""}}, ""},
		{"38-7/16\"", []Run{{"38", "7", "16"}, {Text: "\""}}, "38 7/16\""},
		{"3/4", []Run{{"", "3", "4"}}, ""},
		{"≈ 4 7/64", []Run{{"≈ 4", "7", "64"}}, ""},
		{"12 × 4 7/8\" = 58 1/2\"", []Run{{"12 × 4", "7", "8"}, {"\" = 58", "1", "2"}, {Text: "\""}}, ""},
		{"2'-7 1/2\"", []Run{{"2'-7", "1", "2"}, {Text: "\""}}, ""},
		{"(7/8)", []Run{{"(", "7", "8"}, {Text: ")"}}, ""},
		{"cut 3/4. Then", []Run{{"cut ", "3", "4"}, {Text: ". Then"}}, ""},
		{"24", []Run{{Text: "24"}}, ""},
		{"", []Run{{Text: ""}}, ""},
		{"1:4", []Run{{Text: "1:4"}}, ""},
		{"3/5", []Run{{Text: "3/5"}}, ""},           // no shop fraction
		{"9/8", []Run{{Text: "9/8"}}, ""},           // not under one
		{"1/2/2026", []Run{{Text: "1/2/2026"}}, ""}, // a date
		{"R1/2", []Run{{Text: "R1/2"}}, ""},
		{"1/2in", []Run{{Text: "1/2in"}}, ""},
		{"0.1/2", []Run{{Text: "0.1/2"}}, ""},
		{"1/2.5", []Run{{Text: "1/2.5"}}, ""},
		{"1/256", []Run{{Text: "1/256"}}, ""},
		{"é1/2", []Run{{Text: "é1/2"}}, ""},
		{"7/", []Run{{Text: "7/"}}, ""},
	} {
		got := Figure(tt.in)
		if d := cmp.Diff(tt.want, got); d != "" {
			t.Errorf("Figure(%q): %s", tt.in, d)
		}
		want := tt.read
		if want == "" {
			want = tt.in
		}
		if r := Readable(got); r != want {
			t.Errorf("Readable(Figure(%q)) = %q, want %q", tt.in, r, want)
		}
	}
}

func TestLayoutOfStack(t *testing.T) {
	const h = 3500
	line := Layout(Figure("38 7/16\" long"), h, false)
	if d := cmp.Diff([]string{"38 7/16\""}, line.Words); d != "" {
		t.Errorf("words: %s", d)
	}
	var texts []string
	for _, p := range line.Pieces {
		texts = append(texts, p.Text)
	}
	if d := cmp.Diff([]string{"38", "7", "16", "\"", " long"}, texts); d != "" {
		t.Fatalf("pieces: %s", d)
	}
	num, den, bar := line.Pieces[1], line.Pieces[2], line.Bars[0]
	if num.Height != 2450 || den.Height != 2450 {
		t.Errorf("digits %d and %d high, want 2450", num.Height, den.Height)
	}
	if mid := bar.Min.Y + bar.H()/2; (mid + h/2).Abs() > 1 {
		t.Errorf("bar at %d, want at mid height %d", mid, -h/2)
	}
	above, below := bar.Min.Y-num.At.Y, den.At.Y-den.Height-bar.Max.Y
	if above != below || above < 500 {
		t.Errorf("digits clear the bar by %d and %d, want the same and at least 0.5 mm", above, below)
	}
	numW, denW := line.Face.width(num.Text, num.Height), line.Face.width(den.Text, den.Height)
	numMid, denMid := 2*num.At.X+numW, 2*den.At.X+denW
	if (numMid-denMid).Abs() > 4 || (numMid-2*bar.Centre().X).Abs() > 4 {
		t.Errorf("middles of 7, 16 and the bar differ: %d %d %d", numMid/2, denMid/2, bar.Centre().X)
	}
	if bar.W() < denW {
		t.Errorf("bar %d wide is shorter than its denominator, %d", bar.W(), denW)
	}
	// A stack is about twice as high as its whole number.
	if up := num.At.Y - num.Height; line.Ink.Min.Y > up || line.Ink.H() < 6000 || line.Ink.H() > 7200 {
		t.Errorf("ink is %v", line.Ink)
	}
}

func TestAdvanceIsWhereTheNextRunBegins(t *testing.T) {
	a, b := Figure("4 7/8\""), Plain(" dia.")
	whole := Layout(append(slices.Clone(a), b...), 2500, true)
	if got, want := whole.Advance, Width(a, 2500, true)+Width(b, 2500, true); (got - want).Abs() > 2 {
		t.Errorf("advance %d, parts sum to %d", got, want)
	}
}

func TestInkIsTight(t *testing.T) {
	// H stands on the base line and is as high as the capitals, by definition.
	ink := Layout(Plain("H"), 10000, false).Ink
	if ink.Min.Y != -10000 || ink.Max.Y != 0 {
		t.Errorf("H reaches from %d to %d, want -10000 to 0", ink.Min.Y, ink.Max.Y)
	}
	if ink.Min.X <= 0 || ink.Max.X >= Width(Plain("H"), 10000, false) {
		t.Errorf("H reaches from %d to %d, want within its advance", ink.Min.X, ink.Max.X)
	}
	if got := Layout(Plain("  "), 10000, false); got.Ink != (paper.Rect{}) || got.Advance == 0 {
		t.Errorf("blanks leave ink %v and advance %d", got.Ink, got.Advance)
	}
	if g := Layout(Plain("g"), 10000, false).Ink; g.Max.Y < 2000 || g.Max.Y > 4000 {
		t.Errorf("g reaches %d below the line", g.Max.Y)
	}
}

func TestUnprintable(t *testing.T) {
	for _, tt := range []struct {
		in   string
		want string
	}{
		{"Ž½⅜×Ø±≈″ 38 7/16\" «ok» Ωж", ""},
		{"a\x00b\x1bc\nd", "\x00\x1b\n"},
		{"\u202eabc\u2066", "\u202e\u2066"}, // marks that turn the writing
		{"slat \U0001F600\U0001F600", "\U0001F600"},
		{"漢字", "漢字"},
		{"⌀ ∥", "⌀∥"},
		{"a\xffb", "\uFFFD"},
		{"\ue000", "\ue000"},
	} {
		if got := string(Unprintable(tt.in)); got != tt.want {
			t.Errorf("Unprintable(%q) = %q, want %q", tt.in, got, tt.want)
		}
	}
}

func TestScaleRoundsHalfUp(t *testing.T) {
	for _, tt := range []struct{ n, d, want int64 }{
		{7, 2, 4}, {-7, 2, -3}, {5, 4, 1}, {-5, 4, -1}, {6, 4, 2}, {-6, 4, -1}, {0, 3, 0}, {-8, 4, -2},
	} {
		if got := divRound(tt.n, tt.d); got != tt.want {
			t.Errorf("divRound(%d, %d) = %d, want %d", tt.n, tt.d, got, tt.want)
		}
	}
}

func TestConcurrentUse(t *testing.T) {
	want := Width(Figure("Front elevation 38 7/16\""), 5000, true)
	done := make(chan paper.Um)
	for range 8 {
		go func() { done <- Width(Figure("Front elevation 38 7/16\""), 5000, true) }()
	}
	for range 8 {
		if got := <-done; got != want {
			t.Errorf("width %d, want %d", got, want)
		}
	}
}
