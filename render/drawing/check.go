package drawing

import (
	"errors"
	"fmt"
	"strings"

	"slatwright/render/typeface"
)

// Check returns what makes a sheet impossible to draw as it is meant: marks
// without extent or off the sheet, characters without a glyph, classes that do
// not exist. Both writers refuse such a sheet, since their output would be
// wrong without a sign of it. All faults are told, joined, each with the
// number of its mark. Whether a sheet reads well is asked of Legible.
func (s *Sheet) Check() error {
	var errs []error
	if s.W <= 0 || s.H <= 0 {
		errs = append(errs, fmt.Errorf("sheet %s: size %s x %s", s.Name, mm(s.W), mm(s.H)))
	}
	paper := Box(0, 0, s.W, s.H)
	if !paper.Holds(s.Frame) {
		errs = append(errs, fmt.Errorf("sheet %s: the frame leaves the sheet", s.Name))
	}
	for i, m := range s.Marks {
		if err := checkMark(m, paper); err != nil {
			errs = append(errs, fmt.Errorf("sheet %s: mark %d: %w", s.Name, i, err))
		}
	}
	return errors.Join(errs...)
}

// checkMark returns the first fault of a mark.
func checkMark(m Mark, paper Rect) error {
	if m == nil {
		return errors.New("no mark")
	}
	if c, _, _ := m.base(); c >= classes {
		return fmt.Errorf("class %d does not exist", c)
	}
	var err error
	switch m := m.(type) {
	case Path:
		err = checkPath(m)
	case Circle:
		err = checkCircle(m)
	case Text:
		err = checkText(m)
	}
	if err != nil {
		return err
	}
	if r := m.Bounds(); !paper.Holds(r) {
		return fmt.Errorf("%s off the sheet, at %s .. %s", kind(m), at(r.Min), at(r.Max))
	}
	return nil
}

func checkPath(p Path) error {
	if p.Fill >= fills {
		return fmt.Errorf("fill %d does not exist", p.Fill)
	}
	if p.Class.Ink().Pen == 0 && p.Fill == NoFill {
		return errors.New("path that leaves no ink")
	}
	if len(p.Segs) == 0 {
		return fmt.Errorf("path without a segment at %s", at(p.Start))
	}
	last := p.Start
	for _, s := range p.Segs {
		if s.To == last && (!s.Curve || s.C1 == last && s.C2 == last) {
			return fmt.Errorf("line of no length at %s", at(last))
		}
		last = s.To
	}
	if p.Closed && len(p.Segs) == 1 && !p.Segs[0].Curve {
		return fmt.Errorf("outline of one line at %s", at(p.Start))
	}
	return nil
}

func checkCircle(c Circle) error {
	if c.Fill >= fills {
		return fmt.Errorf("fill %d does not exist", c.Fill)
	}
	if c.Class.Ink().Pen == 0 && c.Fill == NoFill {
		return errors.New("circle that leaves no ink")
	}
	if c.R <= 0 {
		return fmt.Errorf("circle of radius %s at %s", mm(c.R), at(c.Centre))
	}
	return nil
}

func checkText(t Text) error {
	s := t.String()
	switch {
	case t.Height <= 0:
		return fmt.Errorf("text %q of height %s", s, mm(t.Height))
	case t.Turn < 0 || t.Turn > 3:
		return fmt.Errorf("text %q turned by %d quarters", s, t.Turn)
	case t.Align > Right:
		return fmt.Errorf("text %q with alignment %d", s, t.Align)
	case strings.TrimSpace(s) == "":
		return fmt.Errorf("text without a character at %s", at(t.At))
	}
	for _, r := range t.Runs {
		if (r.Num == "") != (r.Den == "") {
			return fmt.Errorf("text %q with half a fraction", s)
		}
	}
	if bad := typeface.Unprintable(s); len(bad) > 0 {
		return fmt.Errorf("text %q has no glyph for %U", s, bad)
	}
	return nil
}

// kind names a mark's kind.
func kind(m Mark) string {
	switch m.(type) {
	case Path:
		return "path"
	case Circle:
		return "circle"
	case Text:
		return "text"
	}
	return "mark"
}
