package unit_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"slatwright/specs/unit"
)

var (
	inches      = unit.Format{}
	millimetres = unit.Format{System: unit.Metric}
)

func TestText(t *testing.T) {
	for _, c := range []struct {
		format unit.Format
		l      unit.Length
		want   string
	}{
		{inches, 4*in + 7*in/8, "4 7/8"},
		{inches, 3 * in / 4, "3/4"},
		{inches, 24 * in, "24"},
		{inches, 0, "0"},
		{inches, -3 * in / 4, "-3/4"},
		{inches, 390 * mm, "≈15 23/64"},
		{inches, in / 128, "≈1/64"}, // halves away from zero
		{inches, -in / 128, "≈-1/64"},
		{inches, 1, "≈0"},
		{unit.Format{Finest: in / 16}, 3*in + in/32, "≈3 1/16"},
		{millimetres, 390 * mm, "390"},
		{millimetres, 123*mm + 8*mm/10, "123.8"},
		{millimetres, 4*in + 7*in/8, "≈123.8"},
		{millimetres, 8 * mm / 10, "0.8"},
		{millimetres, 19*mm + 97*mm/100, "≈20"},
		{unit.Format{System: unit.Metric, Finest: mm / 100}, 5*mm + mm/20, "5.05"},
	} {
		if got := c.format.Text(c.l); got != c.want {
			t.Errorf("%+v.Text(%d) = %q; want %q", c.format, c.l, got, c.want)
		}
	}
}

func TestSplit(t *testing.T) {
	for _, c := range []struct {
		format unit.Format
		l      unit.Length
		want   unit.Mixed
	}{
		{inches, 4*in + 7*in/8, unit.Mixed{Whole: 4, Num: 7, Den: 8}},
		{inches, -24 * in, unit.Mixed{Neg: true, Whole: 24, Den: 1}},
		{inches, 390 * mm, unit.Mixed{Approx: true, Whole: 15, Num: 23, Den: 64}},
		{millimetres, 123*mm + 8*mm/10, unit.Mixed{Whole: 123, Num: 8, Den: 10}},
	} {
		if got := c.format.Split(c.l); got != c.want {
			t.Errorf("%+v.Split(%d) = %+v; want %+v", c.format, c.l, got, c.want)
		}
	}
}

func TestDecimal(t *testing.T) {
	for _, c := range []struct {
		l    unit.Length
		want string
	}{
		{4*in + 7*in/8, "123.825"}, {1000, "0.0125"}, {1, "0.0000125"}, {390 * mm, "390"}, {-in, "-25.4"}, {0, "0"},
		{in / 128, "0.1984375"},
	} {
		if got := c.l.Decimal(); got != c.want {
			t.Errorf("(%d).Decimal() = %q; want %q", int64(c.l), got, c.want)
		}
	}
}

func TestBoth(t *testing.T) {
	for _, c := range []struct {
		format unit.Format
		l      unit.Length
		want   string
	}{
		{inches, 4*in + 7*in/8, "4 7/8 in (123.8 mm)"},
		{millimetres, 390 * mm, "390 mm (15 23/64 in)"},
		{inches, 390 * mm, "≈15 23/64 in (390 mm)"},
	} {
		if got := c.format.Both(c.l); got != c.want {
			t.Errorf("Both(%d) = %q; want %q", c.l, got, c.want)
		}
	}
}

// What is printed parses back to what was printed, which is exact unless the
// sign says otherwise and never further off than half the finest step.
func TestTextParsesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom([]unit.Format{
			inches, millimetres, {Finest: in / 16}, {Finest: in / 128}, {System: unit.Metric, Finest: mm},
			{System: unit.Metric, Finest: unit.Base},
		}).Draw(t, "format")
		l := unit.Length(rapid.Int64Range(0, int64(20_000*mm)).Draw(t, "length"))
		text := f.Text(l)
		figure, rounded := strings.CutPrefix(text, unit.About)
		got, err := unit.Parse(figure, f.System)
		want, exact := f.Round(l)
		if err != nil || got != want || exact == rounded {
			t.Fatalf("Text(%d) = %q, parsed as %d, %v; want %d, exact %v", l, text, got, err, want, exact)
		}
		finest := f.Finest
		if finest == 0 {
			finest = f.System.Finest()
		}
		if off := (got - l).Abs(); 2*off > finest {
			t.Fatalf("Text(%d) = %q is %d off, more than half of %d", l, text, off, finest)
		}
	})
}

func TestRounding(t *testing.T) {
	for _, c := range []struct{ l, down, up, nearest unit.Length }{
		{7, 5, 10, 5}, {8, 5, 10, 10}, {10, 10, 10, 10}, {-7, -10, -5, -5}, {-8, -10, -5, -10}, {0, 0, 0, 0},
	} {
		if got := [3]unit.Length{c.l.Down(5), c.l.Up(5), c.l.Nearest(5)}; got != [3]unit.Length{c.down, c.up, c.nearest} {
			t.Errorf("%d: down, up, nearest are %d; want %d, %d, %d", c.l, got, c.down, c.up, c.nearest)
		}
	}
	if got := unit.Length(5).Nearest(10); got != 10 {
		t.Errorf("a half rounds to %d; want 10, away from zero", got)
	}
}
