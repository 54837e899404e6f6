package template

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/render/drawing"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// A gauge is a shape to cut from card: a bar as wide as the gap between two
// slats, or half a disc as wide as a bottle.
type gauge struct {
	says string
	wide unit.Length
	disc bool
}

// high returns a gauge's height on paper.
func (g gauge) high() drawing.Um {
	if g.disc {
		return um(g.wide) / 2
	}
	return 20 * mm
}

// gauges returns a bar for each gap of the rack and half discs for the thinnest
// and the thickest bottle that it must hold.
func (p *packet) gauges() []gauge {
	var out []gauge
	var least, most table.Bottle
	for _, k := range p.rack.Kinds {
		bar := gauge{says: "gap between slats", wide: k.Gap}
		if !slices.Contains(out, bar) {
			out = append(out, bar)
		}
		for _, row := range k.Fit {
			for _, b := range row {
				if least.Name == "" || b.Diameter.Min < least.Diameter.Min {
					least = b
				}
				if most.Name == "" || b.Diameter.Max > most.Diameter.Max {
					most = b
				}
			}
		}
	}
	if least.Name == "" {
		return out
	}
	return append(out, gauge{"thinnest bottle", least.Diameter.Min, true}, gauge{"thickest bottle", most.Diameter.Max, true})
}

// A placedGauge is a gauge with the top left corner of its place.
type placedGauge struct {
	gauge
	at drawing.Point
}

// The clear around gauges, and the least room for one's words.
const (
	gaugeGap  = 8 * mm
	gaugeText = 58 * mm
)

// roomFor reports whether a page has room for a gauge, and how much it takes.
func (p *packet) roomFor(g gauge) (wide, high drawing.Um, ok bool) {
	f := p.f.short()
	wide, high = max(um(g.wide), gaugeText), g.high()+8*mm
	return wide, high, wide <= f.net()-2*textInset && high <= f.bodyHeight-gaugeGap
}

// sticks says what to do for gauges that a page has no room for; none if all fit.
func (p *packet) sticks() []string {
	var names []string
	for _, g := range p.gauges() {
		if _, _, ok := p.roomFor(g); !ok {
			names = append(names, g.says+" "+p.rack.Format.Unit(g.wide))
		}
	}
	if len(names) == 0 {
		return nil
	}
	return []string{"Too wide for a gauge of card, cut a stick to the length: " + strings.Join(names, "; ") + "."}
}

// gaugePages sets the gauges row by row on as many pages as they take. For one
// that is wider than a page the first page asks for a stick instead.
func (p *packet) gaugePages() [][]placedGauge {
	f := p.f.short()
	var pages [][]placedGauge
	left, top := drawing.Um(textInset), headSpace+gaugeGap
	x, y, row := left, top, drawing.Um(0)
	for _, g := range p.gauges() {
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

// gaugeSheet draws a page of gauges.
func (p *packet) gaugeSheet(gauges []placedGauge, number int) *drawing.Sheet {
	f := p.f.short()
	const title = "Gauges to cut from card"
	s, origin := f.page(fmt.Sprintf("%02d-gauges", number), title)
	p.head(s, origin, title, number)
	for _, g := range gauges {
		s.Add(f.correct(g.marks(), origin)...)
		printed := p.rack.Format.Text(g.wide)
		at := origin.Add(drawing.Pt(f.along.Of(g.at.X), headSpace+f.across.Of(g.at.Y+g.high()-headSpace)+5*mm))
		s.Add(note(at, g.says+" "+p.rack.Format.Unit(g.wide)))
		s.Dims = append(s.Dims, drawing.DimRecord{Role: drawing.Note, Value: g.wide, Printed: printed, From: at, To: at, ScaleNum: 1, ScaleDen: 1})
	}
	f.rulers(s, origin)
	return s
}

// marks draws the outline of a gauge, a disc with its middle.
func (g placedGauge) marks() []drawing.Mark {
	if !g.disc {
		return []drawing.Mark{drawing.Rectangle(drawing.TemplateCut, 0, drawing.NoFill, drawing.Box(g.at.X, g.at.Y, um(g.wide), g.high()))}
	}
	r := um(g.wide) / 2
	centre := g.at.Add(drawing.Pt(r, 0))
	half := drawing.Arc(drawing.TemplateCut, 0, centre, r, 180, 180)
	half.Closed = true
	return []drawing.Mark{half, drawing.Line(drawing.Centre, 0, centre, centre.Add(drawing.Pt(0, r)))}
}
