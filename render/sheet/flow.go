package sheet

import (
	"fmt"

	"slatwright/render/drawing"
	"slatwright/specs/word"
)

// A flow writes blocks one under the other, over as many pages as they need.
type flow struct {
	in          Input
	name, title string
	pages       []*page
	w           *scribe // nil before the first block
}

// turn starts a page.
func (f *flow) turn() *scribe {
	name := f.name
	if len(f.pages) > 0 {
		name = fmt.Sprintf("%s-%d", f.name, len(f.pages)+1)
	}
	p := f.in.newPage(name, f.title)
	f.pages = append(f.pages, p)
	f.w = newScribe(p.sheet, p.area)
	return f.w
}

// Distances of a flow.
const (
	flowHeading = 8 * drawing.MM // what a block's heading takes
	flowApart   = 4 * drawing.MM // between blocks
)

// block writes a ledger under its heading: whole on one page where a page can
// hold it, else over several, under the heading on each.
func (f *flow) block(heading string, l ledger) {
	high := flowHeading + l.height(f.in.room().W())
	if f.w == nil || f.w.room() < high {
		f.turn()
	}
	for {
		f.w.heading(word.Capital(heading))
		f.w.skip(drawing.MM)
		l.rows = l.rows[l.write(f.w):]
		if len(l.rows) == 0 {
			break
		}
		f.turn()
	}
	f.w.skip(flowApart)
}

// fits reports whether texts go on the page that is being filled.
func (f *flow) fits(list ...string) bool {
	return f.w != nil && f.w.room() >= needed(list, f.in.room().W(), 5*drawing.MM)
}

// notes writes texts, each on a line of its own or broken into several.
func (f *flow) notes(list ...string) {
	if !f.fits(list...) {
		f.turn()
	}
	for _, s := range list {
		f.w.note(s, 5*drawing.MM)
	}
	f.w.skip(drawing.MM)
}
