package template

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/rack"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// A gauge is a shape to cut from card: a bar as wide as the sideways gap between
// two slats or as the lowest slat is high above the foot, half a disc as wide as a
// bottle, or a card with nails.
type gauge struct {
	says string
	name string   // inside it, for when it is cut out
	more []string // further lines under it
	wide unit.Length
	disc bool

	tall  unit.Length // of a card with nails
	nails []nail      // along from the left, across from the lower edge
	down  string      // what its lower edge points to
}

// high returns a gauge's height on paper.
func (g gauge) high() drawing.Um {
	if g.disc {
		return um(g.wide) / 2
	}
	return tallOf(g.tall)
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
		add(i, gauge{says: "Sideways gap between slats", name: "gap", wide: k.Gap})
		add(i, gauge{says: "Foot to lowest slat's underside", name: "foot to slat", wide: k.Under[0]})
		if least, most, ok := spread(k); ok {
			add(i, gauge{says: "Thinnest bottle", name: "thinnest", wide: least, disc: true})
			add(i, gauge{says: "Thickest bottle", name: "thickest", wide: most, disc: true})
		}
	}
	var out []gauge
	for _, s := range all {
		s.more = []string{p.columns(s.kinds)}
		out = append(out, s.gauge)
	}
	return out
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

// The clear around gauges, and the least room for one's words.
const (
	gaugeGap  = 8 * mm
	gaugeLine = 6 * mm
)

// roomFor reports whether a page has room for a gauge, and how much it takes.
func (p *packet) roomFor(g gauge) (wide, high drawing.Um, ok bool) {
	f := p.f.short()
	wide, high = um(g.wide), g.high()+8*mm+gaugeLine*drawing.Um(len(g.more))
	for _, line := range p.lines(g) {
		wide = max(wide, note(drawing.Point{}, line).Width())
	}
	return wide, high, wide <= f.net()-2*textInset && high <= f.bodyHeight-gaugeGap
}

// lines are the words under a gauge, which bears its width, or a card.
func (p *packet) lines(g gauge) []string {
	if g.tall > 0 {
		return append([]string{g.says}, g.more...)
	}
	return append([]string{g.says + " " + p.rack.Format.Unit(g.wide)}, g.more...)
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
// that is wider than a page the first page asks for a stick instead.
func (p *packet) gaugePages() [][]placedGauge {
	f := p.f.short()
	var pages [][]placedGauge
	left, top := drawing.Um(textInset), headSpace+gaugeGap
	x, y, row := left, top, drawing.Um(0)
	for _, g := range append(p.cards(), p.gauges()...) {
		wide, high, ok := p.roomFor(g)
		if !ok {
			continue
		}
		if x+wide > f.net()-textInset {
			x, y, row = left, y+row+gaugeGap, 0
		}
		if len(pages) == 0 || y+high > headSpace+f.bodyHeight {
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
	p.head(s, origin, title, number)
	for _, g := range gauges {
		s.Add(f.correct(g.marks(), origin)...)
		printed := p.rack.Format.Text(g.wide)
		at := origin.Add(drawing.Pt(f.along.Of(g.at.X), headSpace+f.across.Of(g.at.Y+g.high()-headSpace)+5*mm))
		for i, line := range p.lines(g.gauge) {
			s.Add(note(at.Add(drawing.Pt(0, gaugeLine*drawing.Um(i))), line))
		}
		s.Add(g.named(p, func(q drawing.Point) drawing.Point {
			return origin.Add(drawing.Pt(f.along.Of(q.X), headSpace+f.across.Of(q.Y-headSpace)))
		})...)
		if g.tall > 0 {
			continue
		}
		s.Dims = append(s.Dims, drawing.DimRecord{Role: drawing.Note, Value: g.wide, Printed: printed, From: at, To: at, ScaleNum: 1, ScaleDen: 1})
	}
	f.rulers(s, origin)
	return s
}

// named letters a gauge inside its outline, with its columns and its width: what a
// card that is cut out would else no longer say. paper is where a place of the page
// comes to lie on it.
func (g placedGauge) named(p *packet, paper func(drawing.Point) drawing.Point) []drawing.Mark {
	w, h := um(g.wide), g.high()
	own := p.rack.Format.Unit(g.wide)
	type words struct {
		text string
		at   drawing.Point // the middle, from the outline's upper left corner
		room drawing.Um    // across
	}
	var all []words
	switch {
	case g.disc: // on either side of its middle line, where the arc leaves most room
		all = []words{{g.name, drawing.Pt(w*3/10, h/4), w * 4 / 10}, {own, drawing.Pt(w*7/10, h/4), w * 4 / 10}, {g.more[0], drawing.Pt(w*28/100, h/2), w * 42 / 100}}
	case g.tall == 0:
		all = []words{{g.name + " " + own, drawing.Pt(w/2, h/3), w}, {g.more[0], drawing.Pt(w/2, h*2/3), w}}
	case g.down != "": // in the other quarter that has no nail
		all = []words{{g.name, drawing.Pt(w*3/4, h/4), w / 2}}
	default: // between the nails
		all = []words{{g.name, drawing.Pt(w/2, h/2), w}}
	}
	var out []drawing.Mark
	for _, x := range all {
		t := note(drawing.Point{}, x.text)
		if t.Width() <= x.room-2*mm && h >= 12*mm {
			out = append(out, t.CentredOn(paper(g.at.Add(x.at))))
		}
	}
	return out
}

// marks draws the outline of a gauge, a disc with its middle.
func (g placedGauge) marks() []drawing.Mark {
	if g.tall > 0 {
		return g.card()
	}
	if !g.disc {
		return []drawing.Mark{drawing.Rectangle(drawing.TemplateCut, 0, drawing.NoFill, drawing.Box(g.at.X, g.at.Y, um(g.wide), g.high()))}
	}
	r := um(g.wide) / 2
	centre := g.at.Add(drawing.Pt(r, 0))
	half := drawing.Arc(drawing.TemplateCut, 0, centre, r, 180, 180)
	// Its straight side is drawn by itself, dead level: the arc's ends are rounded.
	level := drawing.Line(drawing.TemplateCut, 0, g.at, g.at.Add(drawing.Pt(2*r, 0)))
	return []drawing.Mark{half, level, drawing.Line(drawing.Centre, 0, centre, centre.Add(drawing.Pt(0, r)))}
}
