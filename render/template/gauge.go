package template

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/assembly"
	"slatwright/geometry/rack"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
	"slatwright/specs/word"
)

// A gauge is a shape to cut from card: a bar as wide as the sideways gap between
// two slats or as the lowest slat is high above the foot, half a disc as wide as a
// bottle, or a card with nails.
type gauge struct {
	says  string   // what it is
	words []string // paragraphs inside it, what it is first
	short string   // what a small one has room for; "" for the first paragraph
	wide  unit.Length
	disc  bool

	tall  unit.Length // of a card with nails
	nails []nail      // along from the left, across from the lower edge
}

// gauges returns, for each kind of column, bars for its sideways gap and for how
// high its lowest slats lie above the foot, and half discs for the thinnest and the
// thickest bottle that it must hold; kinds alike in one of these share it.
func (p *packet) gauges() []gauge {
	type shared struct {
		gauge
		kinds []int
	}
	var all []shared
	add := func(kind int, g gauge) {
		i := slices.IndexFunc(all, func(s shared) bool { return s.says == g.says && s.wide == g.wide })
		if i < 0 {
			i, all = len(all), append(all, shared{gauge: g})
		}
		all[i].kinds = append(all[i].kinds, kind)
	}
	for i, k := range p.rack.Kinds {
		add(i, gauge{says: gapCard, wide: k.Gap})
		add(i, gauge{says: lowestCard, wide: k.Under[0]})
		if least, most, ok := spread(k); ok {
			add(i, gauge{says: thinnest, wide: least, disc: true})
			add(i, gauge{says: thickest, wide: most, disc: true})
		}
	}
	var out []gauge
	for _, s := range all {
		s.words = []string{s.says + " " + whole(p.rack.Format.Unit(s.wide)), word.Capital(p.columns(s.kinds)) + ": " + p.purpose(s.says)}
		out = append(out, s.gauge)
	}
	return out
}

// What cards without nails are.
const (
	gapCard    = "Gap card"
	lowestCard = "Lowest-slat card"
	thinnest   = "Thinnest bottle"
	thickest   = "Thickest bottle"
)

// purpose says what a card without nails is for and at which step.
func (p *packet) purpose(says string) string {
	switch says {
	case gapCard:
		return "passes sideways between facing slats, " + p.step(assembly.StepDry)
	case lowestCard:
		return "foot to the lowest slat's lower edge, " + p.lowest()
	case thinnest:
		return "round side down it rests on both slats, " + p.step(assembly.StepDry)
	}
	return "round side down on both slats it clears the legs, " + p.step(assembly.StepDry)
}

// lowest names the steps that set the lowest slats.
func (p *packet) lowest() string {
	text := p.step(assembly.StepLowest)
	if n := assembly.Number(p.steps, assembly.StepSecond); n != "" {
		text += ", and " + n
	}
	return text
}

// spread returns the least and the largest diameter that a kind of column holds.
func spread(k rack.Kind) (least, most unit.Length, ok bool) {
	for _, row := range k.Fit {
		for _, b := range row {
			if !ok || b.Diameter.Min < least {
				least = b.Diameter.Min
			}
			most, ok = max(most, b.Diameter.Max), true
		}
	}
	return least, most, ok
}

// columns names the columns of some kinds: "column 1", "all columns".
func (p *packet) columns(kinds []int) string {
	var list []int
	for i, c := range p.rack.Columns {
		if slices.Contains(kinds, c.Kind) {
			list = append(list, i+1)
		}
	}
	if len(list) == len(p.rack.Columns) {
		return "all columns"
	}
	return rack.Places("column", list)
}

// A placedGauge is a gauge with the top left corner of its place.
type placedGauge struct {
	gauge
	at drawing.Point
}

// The clear around gauges, and from line to line of words that one has no room for.
const (
	gaugeGap  = 8 * mm
	gaugeLine = 6 * mm
)

// roomFor reports whether a page has room for a gauge, and how much it takes, after
// the printer's correction.
func (p *packet) roomFor(g gauge) (wide, high drawing.Um, ok bool) {
	f := p.f.short()
	s := f.shapeOf(g)
	wide, high = s.w, s.h
	if len(s.below) > 0 {
		wide, high = max(wide, belowWide), high+2*mm+gaugeLine*drawing.Um(len(s.below))
	}
	return wide, high, wide <= f.along.Of(f.net())-2*textInset && high <= f.across.Of(f.bodyHeight)-gaugeGap
}

// sticks says what to do for gauges and cards that a page has no room for; none if
// all fit.
func (p *packet) sticks() (out []string) {
	var names, cards []string
	for _, g := range p.gauges() {
		if _, _, ok := p.roomFor(g); !ok {
			names = append(names, strings.ToLower(g.says[:1])+g.says[1:]+" "+p.rack.Format.Unit(g.wide))
		}
	}
	for _, g := range p.cards() {
		if _, _, ok := p.roomFor(g); !ok {
			cards = append(cards, strings.ToLower(g.says[:1])+g.says[1:])
		}
	}
	if len(names) > 0 {
		out = append(out, "Too wide for a gauge of card, cut a stick to the length: "+strings.Join(names, "; ")+".")
	}
	if len(cards) > 0 {
		out = append(out, "Too large for a card, measure from the parts sheet: "+strings.Join(cards, "; ")+".")
	}
	return out
}

// gaugePages sets the gauges row by row on as many pages as they take. For one
// that is wider than a page the first page asks for a stick instead. Places are those
// after the printer's correction, from the corner of the net area.
func (p *packet) gaugePages() [][]placedGauge {
	f := p.f.short()
	var pages [][]placedGauge
	left, top := drawing.Um(textInset), headSpace+gaugeGap/2
	x, y, row := left, top, drawing.Um(0)
	for _, g := range append(p.cards(), p.gauges()...) {
		wide, high, ok := p.roomFor(g)
		if !ok {
			continue
		}
		if x+wide > f.along.Of(f.net())-textInset {
			x, y, row = left, y+row+gaugeGap, 0
		}
		if len(pages) == 0 || y+high > headSpace+f.across.Of(f.bodyHeight) {
			pages = append(pages, nil)
			x, y, row = left, top, 0
		}
		last := &pages[len(pages)-1]
		*last = append(*last, placedGauge{g, drawing.Pt(x, y)})
		x, row = x+wide+gaugeGap, max(row, high)
	}
	return pages
}

// gaugeSheet draws page k, from 0, of the gauges.
func (p *packet) gaugeSheet(gauges []placedGauge, k, number int) *drawing.Sheet {
	f := p.f.short()
	const title = "Cards to cut out"
	name := fmt.Sprintf("%02d-gauges", number)
	if k > 0 { // sheets of two packets are compared by their names
		name += fmt.Sprintf("-%d", k+1)
	}
	s, origin := f.page(name, title)
	p.head(s, origin, title, number, rulersWords+" Cut every card out on all its heavy lines.")
	for _, g := range gauges {
		at := origin.Add(g.at)
		shape := f.shapeOf(g.gauge)
		s.Add(drawing.Translate(f.cardMarks(g.gauge, shape), at)...)
		for _, t := range shape.words {
			t.At = t.At.Add(at)
			s.Add(t)
		}
		for i, line := range shape.below {
			s.Add(note(at.Add(drawing.Pt(0, shape.h+5500+gaugeLine*drawing.Um(i))), line))
		}
		for _, l := range []unit.Length{g.wide, g.tall} {
			if l > 0 {
				s.Dims = append(s.Dims, drawing.DimRecord{Role: drawing.Note, Value: l, Printed: p.rack.Format.Text(l), From: at, To: at, ScaleNum: 1, ScaleDen: 1})
			}
		}
	}
	f.rulers(s, origin)
	return s
}

// cardMarks draws the outline of a card, which is what is cut, from its upper left
// corner: a bar with an arrow over its width, a half disc with its middle.
func (f format) cardMarks(g gauge, s shape) []drawing.Mark {
	if !g.disc {
		out := []drawing.Mark{drawing.Rectangle(drawing.Visible, 0, drawing.NoFill, drawing.Box(0, 0, s.w, s.h))}
		if g.tall > 0 {
			return append(out, f.nailMarks(g, s)...)
		}
		if s.w < 3*drawing.ArrowLength {
			return out
		}
		from, to := drawing.Pt(0, s.h-arrowRoom/2), drawing.Pt(s.w, s.h-arrowRoom/2)
		return append(out, drawing.Line(drawing.Dimension, 0, from, to), drawing.Arrow(0, from, to), drawing.Arrow(0, to, from))
	}
	r := um(g.wide) / 2
	centre := drawing.Pt(r, 0)
	half := drawing.Arc(drawing.Visible, 0, centre, r, 180, 180)
	// Its straight side is drawn by itself, dead level: the arc's ends are rounded.
	level := drawing.Line(drawing.Visible, 0, drawing.Pt(0, 0), drawing.Pt(2*r, 0))
	middle := drawing.Line(drawing.Register, 0, drawing.Pt(r, r-centreRun), drawing.Pt(r, r))
	return drawing.Stretch([]drawing.Mark{half, level, middle}, f.along, f.across)
}
