// Package label lays out a label for every piece of a rack, or for every bundle
// of a ladder where pieces are many, on sheets of labels: its mark, what it is and where it goes, which of how many, its
// length, and an arrow to the end that comes first. A solved rack goes in;
// sheets come out, for the pdf writer.
package label

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

const mm = drawing.MM

// Sheets returns the labels of all pieces in the order of the rack: ladder by
// ladder, then aprons, then the top. Mark is the content mark of the packet,
// on every label. An error says that there is no grid for the paper.
func Sheets(r *rack.Rack, mark string) ([]*drawing.Sheet, error) {
	return sheets(r, inPlace(r, r.Design.Order, mark))
}

// InCuttingOrder returns the labels of a plan's orders in the order in which the
// parts come off the saw, those of spares included. Marks are the content marks
// of the orders' packets, in their order. The first order's paper holds for all.
func InCuttingOrder(plan *saw.Plan, marks []string) ([]*drawing.Sheet, error) {
	return sheets(plan.Orders[0].Rack, asCut(plan, marks))
}

func sheets(r *rack.Rack, entries []entry) ([]*drawing.Sheet, error) {
	entries = bundled(entries)
	g, paper, ok := gridFor(r.Design.Paper.Labels)
	if !ok {
		return nil, fmt.Errorf("no grid of labels for paper %q", r.Design.Paper.Labels)
	}
	var sheets []*drawing.Sheet
	for i, e := range entries {
		if i%g.each() == 0 {
			n := len(sheets) + 1
			w, h := um(paper.Width), um(paper.Height)
			sheets = append(sheets, &drawing.Sheet{
				Name: fmt.Sprintf("%02d-labels", n), Title: fmt.Sprintf("Labels %d", n),
				W: w, H: h, Frame: drawing.Box(0, 0, w, h), Units: r.Design.Units, FullSize: true,
			})
		}
		s := sheets[len(sheets)-1]
		box := g.box(i % g.each())
		l := face{sheet: s, room: g.room(box), units: e.rack.Format}
		l.draw(e)
		ticks(s, box)
		cuts(s, box)
	}
	return sheets, nil
}

// A face is one label being lettered.
type face struct {
	sheet *drawing.Sheet
	room  drawing.Rect
	units unit.Format
}

// The column for the mark, and the lines beside and below it, from the top of
// the room.
const (
	markHeight = 7 * mm
	markRoom   = 13 * mm
	line1      = 3900 * mm / 1000
	line2      = 9500 * mm / 1000
	line3      = 14500 * mm / 1000
	line4      = 19 * mm
	line5      = 23500 * mm / 1000 // in labels that have the height
)

// draw letters the label of an entry.
func (l *face) draw(e entry) {
	r := e.rack
	part := r.Parts[e.part]
	x, y, wide := l.room.Min.X, l.room.Min.Y, l.room.W()
	m := drawing.Label(drawing.ItemText, 0, drawing.Pt(x, y+line2-500), markHeight, drawing.Left, drawing.Plain(part.Mark))
	m.Bold = true
	for m.Width() > markRoom-1*mm && m.Height > drawing.TableHeight {
		m.Height -= mm / 2
	}
	l.sheet.Add(m)
	what, where, along := part.Name, "spare", false
	if e.piece >= 0 {
		p := r.Pieces[e.piece]
		if what, where = l.words(r, p); e.pieces > 0 {
			what, where = e.bundleWords(), l.ladder(r, p)
		}
		along = p.Ladder < 0 // an apron or the top: where it goes is plain
	}
	l.line(drawing.Pt(x+markRoom, y+line1), wide-markRoom, what, true)
	waits := r.Waits(part)
	if waits {
		where = after(where, along)
	}
	l.line(drawing.Pt(x+markRoom, y+line2), wide-markRoom, where, waits)
	printed := l.units.Unit(part.Length)
	count := l.text(drawing.Pt(x, y+line3), e.numbered())
	length := l.text(drawing.Pt(l.room.Max.X, y+line3), printed)
	length.Align = drawing.Right
	l.sheet.Add(count, length)
	l.sheet.Dims = append(l.sheet.Dims, drawing.DimRecord{Role: drawing.Note, Value: part.Length, Printed: printed,
		From: length.At, To: length.At, ScaleNum: 1, ScaleDen: 1})
	used := l.arrow(drawing.Pt(x, y+line4), end(part.Name))
	own := join(e.mark, e.order)
	if l.room.H() >= line5 {
		own = e.mark
		l.small(drawing.Pt(x, y+line5), wide, join(e.order, r.Design.Title))
	}
	l.small(drawing.Pt(x+used+3*mm, y+line4), wide-used-3*mm, own)
}

// words says what a piece is and where it goes.
func (l *face) words(r *rack.Rack, p rack.Piece) (what, where string) {
	what = r.Parts[p.Part].Name
	_, place, _ := strings.Cut(p.Name, ", ")
	switch what {
	case "leg":
		end := place[strings.LastIndexByte(place, ' ')+1:]
		what = end + " leg"
		where = l.ladder(r, p)
	case "slat":
		s := r.Shapes[r.Ladders[p.Ladder].Shape]
		side, under := "left", s.Left
		if onRight(r, p) {
			side, under = "right", s.Right
		}
		what = rowText(slices.Index(under, p.Box.Min.Z)+1, len(under))
		where = l.ladder(r, p) + ", " + side + " face"
	case "apron":
		what = place + " apron"
		where = "across all ladders"
	default:
		where = "over all"
	}
	return what, where
}

// rowText names a slat by its row; the first and the last say which way rows are
// counted.
func rowText(row, of int) string {
	text := fmt.Sprintf("slat, row %d", row)
	switch {
	case of > 1 && row == 1:
		text += ", lowest"
	case of > 1 && row == of:
		text += ", top"
	}
	return text
}

// after says that a piece is cut after measuring. Where an apron and the top go
// is plain from what they are; a ladder's parts still need telling.
func after(where string, along bool) string {
	const words = "cut after measuring"
	if along {
		return words
	}
	return where + ", " + words
}

// ladder says which ladder a piece belongs to, counted from the left.
func (l *face) ladder(r *rack.Rack, p rack.Piece) string {
	return fmt.Sprintf("ladder %d of %d from the left", p.Ladder+1, len(r.Ladders))
}

// end names the end of a part that the arrow points to.
func end(part string) string {
	switch part {
	case "leg":
		return "FOOT"
	case "apron":
		return "LEFT END"
	case "slat":
		return "FRONT END"
	}
	return "FRONT EDGE"
}

// join sets words side by side, leaving out what is empty.
func join(words ...string) string {
	return strings.Join(slices.DeleteFunc(words, func(s string) bool { return s == "" }), " · ")
}

// arrow draws an arrow to the left with the word for the end there, and
// returns how much room both take.
func (l *face) arrow(at drawing.Point, word string) drawing.Um {
	const long = 6 * mm
	mid := at.Y - drawing.TableHeight/2
	tip, tail := drawing.Pt(at.X, mid), drawing.Pt(at.X+long, mid)
	t := l.text(drawing.Pt(at.X+long+1*mm, at.Y), word)
	t.Bold = true
	l.sheet.Add(drawing.Line(drawing.Symbol, 0, tip, tail), drawing.Arrow(0, tip, tail), t)
	return long + 1*mm + t.Width()
}

// text returns the small lettering of a label.
func (l *face) text(at drawing.Point, s string) drawing.Text {
	t := drawing.Label(drawing.CellText, 0, at, drawing.TableHeight, drawing.Left, drawing.Plain(s))
	t.Table = true
	return t
}

// line letters a line in the room it has, an empty one not at all.
func (l *face) line(at drawing.Point, room drawing.Um, s string, bold bool) {
	if s == "" {
		return
	}
	t := l.text(at, s)
	t.Bold = bold
	l.sheet.Add(fit(t, room))
}

// small letters a line that stands close under another: never higher than the
// least lettering.
func (l *face) small(at drawing.Point, room drawing.Um, s string) {
	if t := l.text(at, s); t.Width() <= room && s != "" {
		l.sheet.Add(t)
		return
	}
	l.line(at, room, s, false)
}

// short gives words a shorter form, those tried first that lose least.
var short = [][2]string{
	{" from the left", ""}, {"across all ladders", "all ladders"},
	{"ladder", "ldr"}, {" of ", "/"}, {"lower", "lwr"}, {"upper", "upr"}, {"front", "frt"}, {" face", ""}, {"bundle ", ""},
}

// fit letters a text as high as its room allows, 3.5 mm or else 2.5 mm; where
// that is too long, words are shortened one after the other, and the last of it
// is left out.
func fit(t drawing.Text, room drawing.Um) drawing.Text {
	if t.Height = drawing.FigureHeight; t.Width() <= room {
		return t
	}
	t.Height = drawing.TableHeight
	s := t.String()
	for _, w := range short {
		if t.Width() <= room {
			return t
		}
		s = strings.ReplaceAll(s, w[0], w[1])
		t.Runs = drawing.Plain(s)
	}
	for text := []rune(s); t.Width() > room && len(text) > 1; {
		text = text[:len(text)-1]
		t.Runs = drawing.Plain(strings.TrimRight(string(text), " ,·") + "...")
	}
	return t
}

// cuts draws the lines to cut a label out along, where the printer reaches; those
// that it shares with a neighbour once.
func cuts(s *drawing.Sheet, box drawing.Rect) {
	reach := drawing.Box(0, 0, s.W, s.H).Inset(edgeKeep)
	const clear = 3 * mm // of the crosses at the corners
	add := func(a, b drawing.Point) {
		l := drawing.Line(drawing.FrameThin, 0, a, b)
		same := func(m drawing.Mark) bool {
			p, ok := m.(drawing.Path)
			return ok && p.Class == l.Class && p.Bounds() == l.Bounds()
		}
		if !slices.ContainsFunc(s.Marks, same) {
			s.Add(l)
		}
	}
	for _, x := range []drawing.Um{box.Min.X, box.Max.X} {
		if x >= reach.Min.X && x <= reach.Max.X {
			add(drawing.Pt(x, max(box.Min.Y, reach.Min.Y)+clear), drawing.Pt(x, min(box.Max.Y, reach.Max.Y)-clear))
		}
	}
	for _, y := range []drawing.Um{box.Min.Y, box.Max.Y} {
		if y >= reach.Min.Y && y <= reach.Max.Y {
			add(drawing.Pt(max(box.Min.X, reach.Min.X)+clear, y), drawing.Pt(min(box.Max.X, reach.Max.X)-clear, y))
		}
	}
}

// ticks marks the corners of a label that the printer reaches, to cut by.
func ticks(s *drawing.Sheet, box drawing.Rect) {
	reach := drawing.Box(0, 0, s.W, s.H).Inset(edgeKeep)
	for _, p := range []drawing.Point{box.Min, drawing.Pt(box.Max.X, box.Min.Y), box.Max, drawing.Pt(box.Min.X, box.Max.Y)} {
		if !p.In(reach) {
			continue
		}
		s.Add(drawing.Cross(drawing.Register, 0, p, 2*mm)...)
	}
}
