package design_test

import (
	"errors"
	"testing"

	"slatwright/specs/design"
	"slatwright/specs/diag"
)

func TestDates(t *testing.T) {
	const hint = `write year-month-day, such as "2026-05-04"`
	for _, c := range []struct{ value, day, fault string }{
		{`"2026-05-04"`, "2026-05-04", ""},
		{`2026-05-04`, "2026-05-04", ""},
		{`"2028-02-29"`, "2028-02-29", ""},
		{`""`, "", ""},
		{`"2026-13-04"`, "", `there is no such day as "2026-13-04"`},
		{`"2026-02-29"`, "", `there is no such day as "2026-02-29"`},
		{`"2026-5-4"`, "", "not a date"},
		{`"04-05-2026"`, "", "not a date"},
		{`"4 May 2026"`, "", "not a date"},
		{`2026-05-04T10:00:00Z`, "", "not a date"},
		{`10:00:00`, "", "not a date"},
		{`20260504`, "", "`date` is a text, not a number"},
	} {
		d, err := design.Read("test.toml", []byte("title = \"x\"\ndate = "+c.value+"\n"))
		var list diag.List
		if c.fault == "" {
			if err != nil || d.Date != c.day {
				t.Errorf("%s: %q, %v; want %q", c.value, d.Date, err, c.day)
			}
			continue
		}
		if !errors.As(err, &list) || len(list) != 1 {
			t.Errorf("%s: %v; want one fault", c.value, err)
			continue
		}
		m := list[0]
		if m.Text != c.fault || m.Place.Line != 2 || m.Place.Column != 8 || m.Width != len(c.value) || m.Text == "not a date" && m.Hint != hint {
			t.Errorf("%s: %d:%d, %d wide: %s (%s); want %s", c.value, m.Place.Line, m.Place.Column, m.Width, m.Text, m.Hint, c.fault)
		}
	}
}
