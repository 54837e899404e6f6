package saw

import (
	"errors"
	"fmt"
	"slices"

	"slatwright/geometry/cutting"
	"slatwright/geometry/rack"
	"slatwright/specs/design"
	"slatwright/specs/diag"
	"slatwright/specs/unit"
)

// Fault says why orders cannot be cut from the boards, at a line of the design
// that is concerned.
type Fault struct {
	Source  *diag.Source
	Message diag.Message
}

// Error returns place and text.
func (f *Fault) Error() string { return diag.List{f.Message}.Error() }

// fault finds the line that a fault of the job is about and says it in the
// units of its design.
func (p *Plan) fault(err error) error {
	var e *cutting.Error
	if !errors.As(err, &e) {
		return err
	}
	o := p.Orders[0]
	for _, x := range p.Orders {
		if e.Part != nil && x.Name == e.Part.Order {
			o = x
		}
	}
	w := wording{p: p, e: e, r: o.Rack, d: o.Rack.Design, f: o.Rack.Format, what: "the parts"}
	if e.Part != nil {
		w.what = e.Part.Mark + " " + e.Part.Name
		if len(p.Orders) > 1 {
			w.what = o.Name + " " + w.what
		}
	}
	return w.fault()
}

// wording puts a fault in words.
type wording struct {
	p    *Plan
	e    *cutting.Error
	r    *rack.Rack
	d    *design.Design
	f    unit.Format
	what string // which part
}

func (w *wording) fault() *Fault {
	e, f := w.e, w.f
	switch {
	case errors.Is(e, cutting.ErrTooLong):
		need := e.Need + 2*w.p.Job.Shop.EndTrim
		return w.at(w.board(e.Part.Thickness), e.Part.Name+".length",
			fmt.Sprintf("no board is long enough for %s: it is %s long, and the longest board of its thickness has %s between the end trims", w.what, f.Unit(e.Need), f.Unit(e.Have)),
			fmt.Sprintf("%s of %s or more would do", w.add(), f.Unit(need)))
	case errors.Is(e, cutting.ErrNoThickness):
		return w.at(nil, e.Part.Name+".thickness",
			fmt.Sprintf("no board serves the thickness of %s: it is %s thick, and the thickest board has %s", w.what, f.Unit(e.Need), f.Unit(e.Have)),
			fmt.Sprintf("%s %s thick would do, or one up to %s thicker, which is planed", w.add(), f.Unit(e.Need), f.Unit(w.p.Job.Shop.PlaneMax)))
	case errors.Is(e, cutting.ErrTooWide):
		return w.at(w.board(e.Part.Thickness), e.Part.Name+".width",
			fmt.Sprintf("no board can be ripped or glued up to the width of %s, %s; the widest that is long enough has %s", w.what, f.Unit(e.Need), f.Unit(e.Have)),
			fmt.Sprintf("%s at least %s long that may be ripped would do", w.add(), f.Unit(e.Part.Length+w.p.Job.Shop.GlueLength+2*w.p.Job.Shop.EndTrim)))
	case errors.Is(e, cutting.ErrStockOut):
		return w.stockOut()
	case errors.Is(e, cutting.ErrNoBoards):
		for _, o := range w.p.Orders { // those that are stated are neither for sale nor there
			if list := o.Rack.Design.Boards; len(list) > 0 {
				return w.at(&list[0], "", "no board is there, and none can be bought", "state a price, or how many are on_hand")
			}
		}
	}
	return w.at(nil, "", e.Error(), "")
}

// stockOut says which boards on hand do not reach, and how many more would do.
func (w *wording) stockOut() *Fault {
	text := "the boards on hand run out: they do not reach for " + w.what
	hint := "list more boards on hand, or a price, so that they can be bought"
	short := w.p.short()
	if len(short) == 0 {
		return w.at(w.boardOf(w.e.Board), "", text, hint)
	}
	have := w.p.Job.Boards[short[0].board]
	text += fmt.Sprintf("; on hand: %d of %s, %s long", have.OnHand, boardName(have), w.f.Unit(have.Length))
	says := fmt.Sprintf("%d more of these", short[0].more)
	for _, x := range short[1:] {
		b := w.p.Job.Boards[x.board]
		says += fmt.Sprintf(" and %d more of %s, %s long,", x.more, boardName(b), w.f.Unit(b.Length))
	}
	return w.at(w.p.Offers[short[0].board].Board, "", text, says+" would do; or state their price, so that they can be bought")
}

// missing is how many more of a board on hand would do.
type missing struct{ board, more int }

// short returns the boards on hand of which there are too few, and how many
// more of all of them together would do: the job is planned again with more of
// each at a price, and all that is there for nothing. It returns none where even
// that has no plan.
func (p *Plan) short() []missing {
	job := p.Job
	job.Boards = nil
	for _, b := range p.Job.Boards {
		b.Price = 0
		job.Boards = append(job.Boards, b)
	}
	from := map[int]int{}
	for i, b := range p.Job.Boards {
		if b.OnHand > 0 {
			from[len(job.Boards)] = i
			b.OnHand, b.Price = 0, 1
			job.Boards = append(job.Boards, b)
		}
	}
	made, err := cutting.Make(job)
	if err != nil {
		return nil
	}
	var out []missing
	for _, b := range made.Boards {
		i, ok := from[b.Index]
		if !ok {
			continue
		}
		if at := slices.IndexFunc(out, func(m missing) bool { return m.board == i }); at >= 0 {
			out[at].more += b.Count
		} else {
			out = append(out, missing{i, b.Count})
		}
	}
	return out
}

// add begins the hint: a board of the design's own, or a first one.
func (w *wording) add() string {
	if len(w.d.Boards) > 0 {
		return "another [[board]]"
	}
	return "a [[board]]"
}

// board returns the line of the longest board of a thickness that the design
// names, nil where it names none.
func (w *wording) board(thick unit.Length) *design.Board {
	var best *design.Board
	for i := range w.d.Boards {
		b := &w.d.Boards[i]
		if b.Thickness == thick && (best == nil || b.Length > best.Length) {
			best = b
		}
	}
	if best == nil && len(w.d.Boards) > 0 {
		best = &w.d.Boards[0]
	}
	return best
}

// boardOf returns the line that offers a board of the job.
func (w *wording) boardOf(b *cutting.Board) *design.Board {
	for i := range w.p.Job.Boards {
		if b != nil && w.p.Job.Boards[i] == *b {
			return w.p.Offers[i].Board
		}
	}
	for _, o := range w.p.Offers {
		if o.Board != nil && o.Board.OnHand > 0 {
			return o.Board
		}
	}
	return nil
}

// at places a message: at the board's line, or else at the line that settles the
// length, or else at the first line of the file.
func (w *wording) at(b *design.Board, length, text, hint string) *Fault {
	src, place := w.d.Source, diag.Place{Line: 1, Column: 1}
	stated, line, said := w.cause(length)
	switch {
	case b != nil:
		src, place = w.sourceOf(b), b.Place
	case said:
		place = stated
	}
	m := diag.At(src, place, text)
	if place.End == place.Start {
		m = diag.Message{Place: place, Text: text}
	}
	if b != nil && said {
		m.Notes = []string{fmt.Sprintf("line %d: %s", stated.Line, line)}
	}
	m.Hint = hint
	return &Fault{src, m}
}

// sourceOf returns the file that a board's line stands in.
func (w *wording) sourceOf(b *design.Board) *diag.Source {
	for _, o := range w.p.Orders {
		for i := range o.Rack.Design.Boards {
			if &o.Rack.Design.Boards[i] == b {
				return o.Rack.Design.Source
			}
		}
	}
	return w.d.Source
}

// cause returns the line that a part's length comes from: a statement about a
// length, or else about the count that makes it long.
func (w *wording) cause(length string) (diag.Place, string, bool) {
	if s, ok := w.statedBy(length, map[string]bool{}); ok {
		return s.Place, s.Text, true
	}
	count := map[string]string{"apron.length": "rack.columns", "top.length": "rack.columns", "leg.length": "rack.rows"}[length]
	c, ok := w.d.Count(count)
	return c.Place, c.Text, ok
}

// statedBy returns the first statement that a length rests on, in the order in
// which its relations name lengths.
func (w *wording) statedBy(name string, seen map[string]bool) (design.Length, bool) {
	if s, ok := w.d.Length(name); ok {
		return s, true
	}
	l, ok := w.r.Find(name)
	if !ok || seen[name] {
		return design.Length{}, false
	}
	seen[name] = true
	for _, need := range l.Needs {
		if s, ok := w.statedBy(need, seen); ok {
			return s, true
		}
	}
	return design.Length{}, false
}
