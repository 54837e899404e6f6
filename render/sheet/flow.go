package sheet

import (
	"fmt"
	"slices"

	"slatwright/render/drawing"
	"slatwright/specs/word"
)

// A flow writes blocks one under the other, over as many pages as they need.
type flow struct {
	in          Input
	name, title string
	pages       []*page
	w           *scribe // nil before the first block
	all         []*scribe
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
	f.all = append(f.all, f.w)
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
		f.w.skip(flowApart) // notes may follow here, though the table goes on elsewhere
		if len(l.rows) == 0 {
			return
		}
		f.turn()
	}
}

// holds reports whether the page that is being filled has room for a ledger with its
// heading and for texts after it.
func (f *flow) holds(l ledger, list ...string) bool {
	wide := f.in.room().W()
	return f.w.room() >= flowHeading+l.height(wide)+flowApart+needed(list, wide, 5*drawing.MM)
}

// fits reports whether texts go on the page that is being filled.
func (f *flow) fits(list ...string) bool {
	return f.w != nil && f.w.room() >= needed(list, f.in.room().W(), 5*drawing.MM)
}

// anywhere writes each text on the first page that has room for it, else on a new
// one: for notes that may stand apart from what they are about.
func (f *flow) anywhere(list ...string) {
	for _, s := range list {
		high := needed([]string{s}, f.in.room().W(), 5*drawing.MM)
		i := slices.IndexFunc(f.all, func(w *scribe) bool { return w.room() >= high })
		if i < 0 {
			f.turn()
			i = len(f.all) - 1
		}
		f.all[i].note(s, 5*drawing.MM)
	}
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
