package template

import (
	"fmt"

	"slatwright/geometry/rack"
	"slatwright/render/drawing"
	"slatwright/specs/design"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

const mm = drawing.MM

// The layout of a page, down from the top of its net area. One net area serves
// A4 and letter paper lying on their sides, with half an inch and more to every
// edge: what printers cannot reach is 4 to 7 mm (printers' manuals).
const (
	margin    = 12700 // least distance of ink from the edge
	netWidth  = 254 * mm
	netHeight = 180 * mm
	headSpace = 21 * mm // title, rulers' fields, page map
	footSpace = 19 * mm // ruler along
	titleRow  = 6 * mm  // above each strip, its name
	laneGap   = 1500    // below each strip

	// The longest page is that of PDF readers, 200 in (memory, believed PDF
	// reference 1.7, annex C), less a little.
	longestPage = 5000 * mm
)

// A format is how strips are cut into pages.
type format struct {
	units      unit.System
	w, h       drawing.Um // of the paper; w is zero for a roll
	step       unit.Length
	half       unit.Length // of the overlap of two tiles
	across     drawing.Ratio
	along      drawing.Ratio
	bodyHeight drawing.Um // for strips, between head and foot, before correction
}

// leastPage is the least height that a page must have for a strip.
const leastPage = 45 * mm

// A printer whose paper needs more than this is out of order, or was measured
// on a page that had been scaled.
const leastStep = 100 * unit.Millimetre

// formatOf reads the template's paper and the printer's measure. The step is a
// round length, so that register crosses stand at round distances; half the
// overlap holds the rulers across, outside the seam.
func formatOf(r *rack.Rack, longest unit.Length) (format, error) {
	d := r.Design
	f := format{
		units: d.Units, along: ratio(d.Printer.AlongNominal, d.Printer.Along),
		across: ratio(d.Printer.AcrossNominal, d.Printer.Across),
	}
	quantum := 10 * unit.Millimetre
	f.step, f.half = 230*unit.Millimetre, 12*unit.Millimetre
	if f.units == unit.Imperial {
		quantum = unit.Inch / 2
		f.step, f.half = 9*unit.Inch, unit.Inch/2
	}
	room := netWidth
	if d.Paper.Template == "roll" {
		f.h = um(d.Paper.TemplateRoll)
		f.bodyHeight = f.h - 2*margin - headSpace - footSpace
		f.step, room = max(longest.Up(quantum), f.step), longestPage-2*margin
	} else {
		p, ok := table.FindPaper(d.Paper.Template)
		if !ok {
			return f, fmt.Errorf("no paper %q for templates", d.Paper.Template)
		}
		f.w, f.h = um(p.Height), um(p.Width)
		f.bodyHeight = netHeight - headSpace - footSpace
	}
	for f.along.Of(um(f.step+2*f.half)) > room {
		if f.step -= quantum; f.step < leastStep {
			return f, fmt.Errorf("printer.along asks for a correction beyond what a page holds")
		}
	}
	if f.across.Num > f.across.Den { // what is drawn longer must still fit
		short := drawing.Ratio{Num: f.across.Den, Den: f.across.Num}
		f.bodyHeight = short.Of(f.bodyHeight+footSpace) - footSpace
	}
	if f.bodyHeight < titleRow+leastPage+laneGap+crossArm {
		return f, fmt.Errorf("paper %s high is too narrow for a template with the printer's correction", r.Format.Unit(unit.Length(f.h)*unit.Micrometre))
	}
	return f, nil
}

// ratio returns nominal over measured in lowest terms; one where nothing was
// measured.
func ratio(nominal, measured unit.Length) drawing.Ratio {
	if nominal <= 0 || measured <= 0 {
		return drawing.Ratio{Num: 1, Den: 1}
	}
	a, b := nominal, measured
	for b != 0 {
		a, b = b, a%b
	}
	return drawing.Ratio{Num: int64(nominal / a), Den: int64(measured / a)}
}

// um takes a length to paper. Each mark is taken from its exact distance to the
// datum, so that no two roundings add up.
func um(l unit.Length) drawing.Um { return drawing.Um(l.Micrometres()) }

// tiles returns how many pages a strip of the length takes.
func (f format) tiles(l unit.Length) int {
	return max(1, int((l+f.step-unit.Base)/f.step))
}

// at returns how far a place on a strip lies from the left of the net area of
// tile k, before the printer's correction.
func (f format) at(l unit.Length, k int) drawing.Um {
	return um(l) - um(unit.Length(k)*f.step-f.half)
}

// short returns the format for pages that hold no strip: as wide as home paper
// also on a roll.
func (f format) short() format {
	f.step = min(f.step, 230*unit.Millimetre)
	return f
}

// net returns the width of the net area before correction.
func (f format) net() drawing.Um { return um(f.step + 2*f.half) }

// page returns an empty page and the top left corner of its net area. On a roll
// the page is as long as its content, on home paper the net area is centred.
func (f format) page(name, title string) (*drawing.Sheet, drawing.Point) {
	w, height := f.w, netHeight
	wide := netWidth
	if w == 0 {
		wide = max(f.along.Of(f.net()), netWidth)
		w, height = wide+2*margin, f.h-2*margin
	}
	s := &drawing.Sheet{
		Name: name, Title: title, W: w, H: f.h, Units: f.units, FullSize: true,
		Frame: drawing.Box(margin, margin, w-2*margin, f.h-2*margin),
	}
	spare := max(f.h-2*margin-height, 0) / 2
	return s, drawing.Pt((w-wide)/2, margin+spare)
}

// correct returns body marks, measured from the corner of the net area, with
// the printer's correction, at their place on the page.
func (f format) correct(marks []drawing.Mark, origin drawing.Point) []drawing.Mark {
	head := drawing.Pt(0, headSpace)
	marks = drawing.Translate(marks, drawing.Point{}.Sub(head))
	return drawing.Translate(drawing.Stretch(marks, f.along, f.across), origin.Add(head))
}

// corrected says what correction is printed, "" for none.
func corrected(d *design.Design) string {
	p := d.Printer
	if ratio(p.AlongNominal, p.Along) == (drawing.Ratio{Num: 1, Den: 1}) &&
		ratio(p.AcrossNominal, p.Across) == (drawing.Ratio{Num: 1, Den: 1}) {
		return ""
	}
	return fmt.Sprintf("along %s for %s, across %s for %s",
		measured(p.Along), measured(p.AlongNominal), measured(p.Across), measured(p.AcrossNominal))
}

// measured prints what a ruler measured: in inches where they are short to
// write, else in millimetres.
func measured(l unit.Length) string {
	if l.On(unit.Inch / 64) {
		return unit.Format{System: unit.Imperial}.Unit(l)
	}
	return l.Decimal() + " mm"
}
