package drawing

import (
	"math"
	"strings"

	"slatwright/specs/unit"
)

// readFigure reads a printed figure back: its length, and whether it says that
// it was rounded. Brackets, an equals sign and the word for a diameter around
// it are passed over.
func readFigure(printed string, bare unit.System) (l unit.Length, about bool, err error) {
	s := strings.TrimSpace(printed)
	for s != "" {
		switch {
		case strings.HasPrefix(s, unit.About):
			about = true
			s = s[len(unit.About):]
		case strings.ContainsRune("([= ", rune(s[0])):
			s = s[1:]
		default:
			s = strings.TrimSpace(strings.TrimSuffix(strings.TrimRight(s, ")] "), "dia."))
			l, err = unit.Parse(s, bare)
			return l, about, err
		}
	}
	l, err = unit.Parse(s, bare)
	return l, about, err
}

// figures compares each printed figure with its value, and each value with the
// length of its line.
func (l *legibility) figures() {
	for i, d := range l.sheet.Dims {
		got, about, err := readFigure(d.Printed, l.sheet.Units)
		switch {
		case err != nil:
			l.report(FigureValue, d.From, i, -1, "%q cannot be read as a length: %v", d.Printed, err)
		case (got - d.Value).Abs() > l.rounding(about):
			l.report(FigureValue, d.From, i, -1, "%q is printed for %s", d.Printed, d.Value)
		}
		l.second(i, d)
		l.geometry(i, d)
	}
}

// second compares the figure in the second unit with the value: it is rounded to
// the nearest step.
func (l *legibility) second(i int, d DimRecord) {
	f := l.sheet.Second
	if f == nil || d.Second == "" {
		return
	}
	got, _, err := readFigure(d.Second, f.System)
	if want, _ := f.Round(d.Value); err != nil || got != want {
		l.report(FigureValue, d.From, i, -1, "[%s] is printed for %s", d.Second, d.Value)
	}
}

// rounding returns how far a printed figure may be from its value: not at all,
// or the finest step where it says that it was rounded. That is more than half
// a step, since the links of a chain are rounded so that they add up.
func (l *legibility) rounding(about bool) unit.Length {
	if about {
		return l.sheet.Units.Finest()
	}
	return 0
}

// geometry compares a value with the length that its line spans. Each end is
// rounded to a micrometre of paper.
func (l *legibility) geometry(i int, d DimRecord) {
	if d.Role == Note || d.Broken {
		return
	}
	if d.ScaleNum <= 0 || d.ScaleDen <= 0 {
		l.report(FigureGeometry, d.From, i, -1, "scale %d:%d", d.ScaleNum, d.ScaleDen)
		return
	}
	scale := float64(d.ScaleDen) / float64(d.ScaleNum)
	step := d.To.Sub(d.From)
	spans := math.Hypot(float64(step.X), float64(step.Y)) * scale
	want := float64(d.Value) * float64(max(d.Times, 1)) / float64(unit.Micrometre)
	if math.Abs(spans-want) > 1.5*scale {
		l.report(FigureGeometry, d.From, i, -1, "%q spans %.3f mm of the model, its value is %.3f mm", d.Printed, spans/1000, want/1000)
	}
}

// chains compares the printed links of each chain with its printed whole. It
// adds what is printed, since a person at the bench adds nothing else.
func (l *legibility) chains() {
	for i, whole := range l.sheet.Dims {
		if whole.Role != Overall || whole.Chain == 0 {
			continue
		}
		var sum unit.Length
		links, readable := 0, true
		for _, d := range l.sheet.Dims {
			if d.Chain != whole.Chain || d.Role != Link {
				continue
			}
			v, _, err := readFigure(d.Printed, l.sheet.Units)
			readable = readable && err == nil
			sum += v * unit.Length(max(d.Times, 1))
			links++
		}
		total, _, err := readFigure(whole.Printed, l.sheet.Units)
		if links == 0 || !readable || err != nil { // told by figures
			continue
		}
		if total *= unit.Length(max(whole.Times, 1)); sum != total {
			l.report(ChainOpen, whole.From, i, -1, "the links of chain %d add up to %s, the whole is printed %q", whole.Chain, sum, whole.Printed)
		}
	}
}
