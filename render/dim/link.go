package dim

import (
	"fmt"

	"slatwright/render/drawing"
	"slatwright/render/typeface"
	"slatwright/specs/unit"
)

// A link is what one figure of a chain stands for: the way between two stops,
// or a run of equal ways drawn as one.
type link struct {
	a, z  Stop
	times int         // of equal ways from a to z
	each  unit.Length // one of them, exact
	whole unit.Length // as printed: all links of a chain add up
	text  string
	wide  drawing.Um // of the text
	bare  string     // the text without the second unit
	skip  bool       // not dimensioned
}

// lo and hi are a link's ends on paper.
func (l link) lo() drawing.Um { return min(l.a.At, l.z.At) }
func (l link) hi() drawing.Um { return max(l.a.At, l.z.At) }
func (l link) mid() drawing.Um {
	return (l.a.At + l.z.At) / 2
}
func (l link) fits() bool   { return l.wide+2*pad <= l.hi()-l.lo() }
func (l link) arrows() bool { return l.hi()-l.lo() >= arrows }

// inOneUnit is the link with its figure in the first unit alone.
func (l link) inOneUnit() link {
	l.text, l.wide = l.bare, typeface.Width(drawing.Figure(l.bare), drawing.FigureHeight, false)
	return l
}

// links are the links of a track as they are drawn.
func (b *Board) links(t track) []link {
	rounded := b.printed(t.stops)
	all := make([]link, len(rounded))
	for i, r := range rounded {
		all[i] = b.link(t, i, i+1, r)
	}
	var out []link
	for i := 0; i < len(all); {
		j, fit := i, true
		for j < len(all) && all[j].each == all[i].each {
			fit = fit && all[j].fits()
			j++
		}
		if j-i == 1 || fit || len(t.options.Alike) > 0 {
			out = append(out, all[i:j]...)
		} else {
			sum := unit.Length(0)
			for _, r := range rounded[i:j] {
				sum += r
			}
			out = append(out, b.link(t, i, j, sum))
		}
		i = j
	}
	return out
}

// link returns the link from stop i to stop j of a track, between which all
// ways are equal.
func (b *Board) link(t track, i, j int, whole unit.Length) link {
	l := link{a: t.stops[i], z: t.stops[j], times: j - i, whole: whole}
	l.each = (t.stops[i+1].Value - t.stops[i].Value).Abs()
	if l.times == 1 {
		l.text = b.lettering(l.total(), whole, t.options.Brackets)
	} else {
		pattern := "%d × %s (= %s)"
		if t.options.Brackets {
			pattern = "(%d × %s = %s)"
		}
		one, _ := b.format.Round(l.each)
		l.text = fmt.Sprintf(pattern, l.times, b.figure(l.each, one, false), b.figure(l.total(), whole, false))
	}
	if l.bare = l.text; l.times == 1 {
		l.bare = b.figure(l.total(), whole, t.options.Brackets)
	}
	if i < len(t.options.Alike) {
		l.skip = t.options.Alike[i] == Skip
		if n := t.options.Alike[i]; n > 1 {
			l.text, l.bare = fmt.Sprintf("%d × %s", n, l.text), fmt.Sprintf("%d × %s", n, l.bare)
		}
	}
	l.wide = typeface.Width(drawing.Figure(l.text), drawing.FigureHeight, false)
	return l
}

// total is the exact length of a link.
func (l link) total() unit.Length { return (l.z.Value - l.a.Value).Abs() }

// printed are the figures of a chain: stops are rounded from the first on, and
// each link is the difference of two rounded stops, so that the links add up
// to the overall figure as printed.
func (b *Board) printed(stops []Stop) []unit.Length {
	base := stops[0].Value
	var out []unit.Length
	last := unit.Length(0)
	for _, s := range stops[1:] {
		at, _ := b.format.Round((s.Value - base).Abs())
		out = append(out, at-last)
		last = at
	}
	return out
}

// figure prints a length that is rounded to the second.
func (b *Board) figure(exact, rounded unit.Length, check bool) string {
	text := b.format.Text(rounded)
	if exact != rounded {
		text = unit.About + text
	}
	if check {
		text = "(" + text + ")"
	}
	return text
}

// lettering is a figure as it is lettered: with the second unit behind it.
func (b *Board) lettering(exact, rounded unit.Length, check bool) string {
	text := b.figure(exact, rounded, check)
	if second := b.second(exact); second != "" {
		text += " [" + second + "]"
	}
	return text
}

// second prints a length in the sheet's second unit. It is rounded without a
// word: only the first unit is worked by.
func (b *Board) second(exact unit.Length) string {
	f := b.sheet.Second
	if f == nil {
		return ""
	}
	rounded, _ := f.Round(exact)
	return f.Text(rounded)
}

// sumBetween says how the way from a to z is made, where both stops say how
// they are.
func sumBetween(a, z Stop) drawing.Sum {
	switch {
	case len(a.Sum) == 0 && a.Value != 0 || len(z.Sum) == 0 && z.Value != 0:
		return nil
	case z.Value < a.Value:
		return a.Sum.Plus(-1, z.Sum)
	}
	return z.Sum.Plus(-1, a.Sum)
}

// recordLink keeps what a link's figures say. Of a run of equal ways the one is
// the link where it prints exactly, since a reader multiplies it; else the whole
// is, and the one is told beside it.
func (b *Board) recordLink(chain int, t track, l link, at drawing.Um) {
	role, second := t.role, b.second(l.total())
	if l.times > 1 {
		second = "" // beside a product it would be read as one of its figures
	}
	if t.options.Brackets {
		role = drawing.Check
	}
	r := drawing.DimRecord{
		Chain: chain, Role: role, Times: 1, Value: l.total(), Printed: b.figure(l.total(), l.whole, t.options.Brackets), Second: second,
		Sum: sumBetween(l.a, l.z), From: place(t.side, l.a.At, at), To: place(t.side, l.z.At, at),
		ScaleNum: b.scale.Num, ScaleDen: b.scale.Den, Broken: t.options.Broken,
	}
	if l.times == 1 {
		b.sheet.Dims = append(b.sheet.Dims, r)
		return
	}
	one := r
	printed, exact := b.format.Round(l.each)
	one.Value, one.Printed, one.Times = l.each, b.figure(l.each, printed, false), l.times
	one.Sum = divided(r.Sum, int64(l.times))
	if exact {
		r.Role = drawing.Check
	} else {
		one.Role = drawing.Check
	}
	b.sheet.Dims = append(b.sheet.Dims, one, r)
}

// divided is a sum over n, or nothing where it does not go in whole terms.
func divided(s drawing.Sum, n int64) drawing.Sum {
	var out drawing.Sum
	for _, t := range s {
		if t.Times%n != 0 {
			return nil
		}
		out = append(out, drawing.Term{Times: t.Times / n, Name: t.Name})
	}
	return out
}
