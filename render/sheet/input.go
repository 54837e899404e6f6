// Package sheet composes the scaled sheets of a packet: each is a page with a
// frame, a title block and views of the rack with their dimensions. A solved
// rack with its findings goes in; sheets, each a flat list of marks, come out.
// The SVG and PDF writers draw them.
package sheet

import (
	"fmt"
	"sync"

	"slatwright/geometry/check"
	"slatwright/geometry/inspect"
	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
	"slatwright/geometry/view"
	"slatwright/render/drawing"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Input is what the sheets of one packet are composed from.
type Input struct {
	Rack     *rack.Rack
	Findings []check.Finding
	Mark     string // content mark of the design, on every sheet

	Cutting *saw.Plan // how the boards are cut; nil where there is no plan
	Uncut   string    // why not, "" where nobody asked for a plan

	oneUnit bool // figures stand in the design's unit alone, whatever it asks for
	upright bool // the paper stands on its short side

	measured func() []inspect.Dimension // of a whole packet, found once
	seen     func() []view.Line         // of the isometric view, likewise
}

// dimensions are what is measured on the finished rack.
func (in Input) dimensions() []inspect.Dimension {
	if in.measured == nil {
		return inspect.Dimensions(in.Rack)
	}
	return in.measured()
}

// page is a sheet while it is filled.
type page struct {
	sheet *drawing.Sheet
	in    Input
	area  drawing.Rect // free, inside the frame and above the title block
	scale string       // for the title block; "" where views bear their own
	about []string     // the parts that it is about, where other sheets of its kind are about others
}

// Borders of a sheet: the filing border at the left, the others (ISO 5457:1999,
// read in a secondary source).
const (
	filing = 20 * drawing.MM
	border = 10 * drawing.MM
	inner  = 4 * drawing.MM // kept free inside the frame
)

// newPage starts a sheet on the design's drawing paper, laid across unless it is
// to stand upright.
func (in Input) newPage(name, title string) *page {
	paper, ok := table.FindPaper(in.Rack.Design.Paper.Drawings)
	if !ok {
		panic("sheet: no paper named " + in.Rack.Design.Paper.Drawings)
	}
	w, h := drawing.Um(paper.Height.Micrometres()), drawing.Um(paper.Width.Micrometres())
	if in.upright {
		w, h = h, w
	}
	s := &drawing.Sheet{Name: name, Title: title, W: w, H: h, Units: in.Rack.Format.System, Second: in.second()}
	s.Frame = drawing.Rect{Min: drawing.Pt(filing, border), Max: drawing.Pt(w-border, h-border)}
	p := &page{sheet: s, in: in, area: s.Frame.Inset(inner)}
	p.area.Max.Y = s.Frame.Max.Y - blockHeight - inner
	if s.Frame.W() < blockWidth+noteWidth {
		p.area.Max.Y -= noteRow
	}
	return p
}

// turned returns the input with its paper upright where a picture, whose divisor of
// scale on a blank page is given, goes on it at a larger scale than across.
func (in Input) turned(den func(blank *page) int64) Input {
	across := den(in.newPage("", ""))
	up := in
	up.upright = true
	if den(up.newPage("", "")) < across {
		return up
	}
	return in
}

// inOneUnit keeps the second unit off sheets that somebody sets out or measures by:
// their figures stand close together, and two on one place invite the wrong one.
func inOneUnit(f func(Input) []*page) func(Input) []*page {
	return func(in Input) []*page {
		in.oneUnit = true
		return f(in)
	}
}

// second is how figures are printed once more where the design asks for it:
// whole millimetres, or inches to a sixteenth.
func (in Input) second() *unit.Format {
	switch d := in.Rack.Design; {
	case in.oneUnit || !d.Paper.SecondUnit:
		return nil
	case d.Units == unit.Metric:
		return &unit.Format{System: unit.Imperial, Finest: unit.Inch / 16}
	}
	return &unit.Format{System: unit.Metric, Finest: unit.Millimetre}
}

// Packet composes all scaled sheets in order and numbers them.
func Packet(in Input) ([]*drawing.Sheet, error) {
	one := func(f func(Input) *page) func(Input) []*page {
		return func(in Input) []*page { return []*page{f(in)} }
	}
	in.measured = sync.OnceValue(func() []inspect.Dimension { return inspect.Dimensions(in.Rack) })
	in.seen = sync.OnceValue(func() []view.Line { return isometric(in.Rack) })
	ahead := func(in Input) []*page { in.seen(); return nil }
	pages := together(in, ahead, one(front), one(sideView), one(plan), sections, one(exploded), inOneUnit(ladders), inOneUnit(carcase), parts,
		cuttings, inOneUnit(finishing), inOneUnit(assemblySheets), inspectionSheets)
	// The order sheets come first and bear the index: how many they are does not
	// hang on the numbers in it.
	n := len(order(in, indexOf(pages, 1)))
	head := make([]*page, n)
	for i := range head {
		head[i] = in.newPage("order", "Order")
	}
	head = order(in, indexOf(append(head, pages...), 1))
	return numbered(append(head, pages...))
}

// numbered finishes pages in their order and sees that each can be drawn.
func numbered(pages []*page) ([]*drawing.Sheet, error) {
	var out []*drawing.Sheet
	index := indexOf(pages, 1)
	for i, p := range pages {
		p.refer(index)
		p.sheet.Name = fmt.Sprintf("%02d-%s", i+1, p.sheet.Name)
		p.finish(i+1, len(pages))
		if err := p.sheet.Check(); err != nil {
			return nil, fmt.Errorf("sheet %s: %w", p.sheet.Name, err)
		}
		out = append(out, p.sheet)
	}
	return out, nil
}
