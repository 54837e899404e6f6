package unit_test

import (
	"errors"
	"testing"

	"pgregory.net/rapid"

	"slatwright/specs/unit"
)

const (
	in = unit.Inch
	mm = unit.Millimetre
)

func TestParse(t *testing.T) {
	for _, c := range []struct {
		text string
		bare unit.System
		want unit.Length
	}{
		{"24", unit.Imperial, 24 * in},
		{"24", unit.Metric, 24 * mm},
		{"24.5", unit.Imperial, 24*in + in/2},
		{".5", unit.Imperial, in / 2},
		{"24 3/4", unit.Imperial, 24*in + 3*in/4},
		{"24-3/4", unit.Imperial, 24*in + 3*in/4},
		{"24\u20113/4", unit.Imperial, 24*in + 3*in/4},
		{"3/4", unit.Imperial, 3 * in / 4},
		{"3⁄4", unit.Imperial, 3 * in / 4},
		{"¾", unit.Imperial, 3 * in / 4},
		{"24¾", unit.Imperial, 24*in + 3*in/4},
		{"24 ¾", unit.Imperial, 24*in + 3*in/4},
		{"610 mm", unit.Imperial, 610 * mm},
		{"610mm", unit.Imperial, 610 * mm},
		{"61 cm", unit.Imperial, 610 * mm},
		{"0.61 m", unit.Imperial, 610 * mm},
		{"0.0000125 mm", unit.Imperial, 1},
		{"24 in", unit.Metric, 24 * in},
		{`24"`, unit.Metric, 24 * in},
		{"24″", unit.Metric, 24 * in},
		{"24”", unit.Metric, 24 * in},
		{"24''", unit.Metric, 24 * in},
		{"2 ft", unit.Metric, 24 * in},
		{"2 ft 1 1/2 in", unit.Metric, 25*in + in/2},
		{`2' 1-1/2"`, unit.Metric, 25*in + in/2},
		{`2'1½"`, unit.Metric, 25*in + in/2},
		{"2′ 1½″", unit.Metric, 25*in + in/2},
		{"2' 1-1/2", unit.Metric, 25*in + in/2},
		{"1/128", unit.Imperial, in / 128},
		{"  7 1/16\t", unit.Imperial, 7*in + in/16},
		{"7/4", unit.Imperial, 7 * in / 4},
		{"1000 m", unit.Metric, unit.Most},
		{"0", unit.Metric, 0},
	} {
		got, err := unit.Parse(c.text, c.bare)
		if err != nil || got != c.want {
			t.Errorf("Parse(%q, %v) = %v, %v; want %v", c.text, c.bare, got, err, c.want)
		}
	}
}

func TestParseErrors(t *testing.T) {
	for _, c := range []struct {
		text   string
		bare   unit.System
		offset int
		msg    string
		hint   string
	}{
		{"", unit.Imperial, 0, "a length is missing", `write a length such as "24 3/4" or "610 mm"`},
		{"24 7/0", unit.Imperial, 3, "the denominator is zero", ""},
		{"0/0", unit.Imperial, 0, "the denominator is zero", ""},
		{"24 5/4", unit.Imperial, 3, "the fraction of a mixed number must be less than 1", ""},
		{"3/", unit.Imperial, 0, "the fraction has no denominator", "such as 3/4"},
		{"1/2/3", unit.Imperial, 3, "a fraction needs two whole numbers", "such as 3/4"},
		{"1.5/2", unit.Imperial, 3, "a fraction needs two whole numbers", "such as 3/4"},
		{"24,5", unit.Metric, 2, "a comma in a length", "write decimals with a point: 24.5"},
		{"24.", unit.Metric, 2, "digits are missing after the decimal point", ""},
		{"-3", unit.Metric, 0, "a length must not be negative", ""},
		{"−3", unit.Metric, 0, "a length must not be negative", ""},
		{"24 yd", unit.Metric, 3, "unknown unit `yd`", "units are mm, cm, m, in and ft"},
		{"5 min", unit.Metric, 2, "unknown unit `min`", "units are mm, cm, m, in and ft"},
		{"1e300", unit.Metric, 1, "unknown unit `e`", "units are mm, cm, m, in and ft"},
		{"wide", unit.Metric, 0, "not a length", `write a length such as "24 3/4" or "610 mm"`},
		{"2 ft 13 in", unit.Metric, 5, "inches after feet must be fewer than 12", ""},
		{"2 ft 100 mm", unit.Metric, 5, "inches after feet must be fewer than 12", ""},
		{"2 ft 10 mm", unit.Metric, 8, "only inches can follow feet", ""},
		{"24 in 3", unit.Metric, 6, "the length should end here", `write one length, such as "24 3/4 in"`},
		{"24 3 in", unit.Metric, 3, "not part of a length", `write a length such as "24 3/4" or "610 mm"`},
		{"1001 m", unit.Metric, 0, "longer than a kilometre", ""},
		{"0.00001 mm", unit.Imperial, 0, `too fine: not a whole number of 0.0000125 mm`,
			"the nearest that can be measured is 0.0000125 mm"},
		{"1/3", unit.Imperial, 0, `too fine: not a whole number of 0.0000125 mm`,
			"the nearest that can be measured is 43/128 in"},
		{"4.33333", unit.Imperial, 0, `too fine: not a whole number of 0.0000125 mm`,
			"the nearest that can be measured is 4.333 in"},
	} {
		_, err := unit.Parse(c.text, c.bare)
		var got *unit.SyntaxError
		if !errors.As(err, &got) {
			t.Errorf("Parse(%q): got error %v; want a *SyntaxError", c.text, err)
			continue
		}
		if want := (unit.SyntaxError{Offset: c.offset, Msg: c.msg, Hint: c.hint}); *got != want {
			t.Errorf("Parse(%q):\ngot  %+v\nwant %+v", c.text, *got, want)
		}
	}
}

func TestScanReportsTheUnit(t *testing.T) {
	for _, c := range []struct {
		text   string
		system unit.System
		named  bool
	}{
		{"24", unit.Metric, false}, {"24 in", unit.Imperial, true}, {"24 mm", unit.Metric, true}, {"2 ft 3", unit.Imperial, true},
	} {
		got, err := unit.Scan(c.text, unit.Metric)
		if err != nil || got.System != c.system || got.Named != c.named {
			t.Errorf("Scan(%q) = %+v, %v; want %v, named %v", c.text, got, err, c.system, c.named)
		}
	}
}

// Whatever the text, an error's offset stands inside it.
func TestParseNeverPanics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringMatching(`[0-9./ '"¾½a-z⁄-]{0,12}`).Draw(t, "text")
		_, err := unit.Parse(s, unit.Imperial)
		var syntax *unit.SyntaxError
		if err != nil && (!errors.As(err, &syntax) || syntax.Offset < 0 || syntax.Offset > len(s)) {
			t.Fatalf("Parse(%q): %v", s, err)
		}
	})
}
