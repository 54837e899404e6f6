package sheet

import (
	"slices"

	"slatwright/geometry/assembly"
	"slatwright/geometry/rack"
	"slatwright/render/drawing"
)

// A ladderLayout is where the strips of a ladder's sheet go, one above the other,
// and where its words and the detail of a crossing.
type ladderLayout struct {
	room   drawing.Rect // the strips
	text   drawing.Rect
	detail drawing.Rect
	den    int64 // divisor of the detail's scale
}

// Distances between the pieces of a layout.
const (
	layoutGap = 3 * drawing.MM
	besideGap = 6 * drawing.MM
	leastRoom = 60 * drawing.MM // for strips, across and along
)

// ladderLayouts lists the layouts that hold the words of a shape's sheets: words
// and detail in a band under the strips; in a column beside them; or the words
// under them and the detail beside them.
func ladderLayouts(p *page, shape int) []ladderLayout {
	sheets := 9 // no sheet's words are longer, unless there are a great many slats
	if s := p.in.Rack.Shapes[shape]; len(s.Left)+len(s.Right) > 50 {
		sheets = 999
	}
	notes := ladderNotes(p.in, shape, 0, sheets)
	var out []ladderLayout
	for _, den := range shopScales(p.in) {
		size := detailSize(p.in, shape, den)
		if l := underStrips(p, notes, size, den); l.room.H() >= leastRoom {
			out = append(out, l)
		}
		if l := aroundStrips(p, notes, size, den); l.room.H() >= max(leastRoom, size.Y) && l.room.W() >= leastRoom {
			out = append(out, l)
		}
		for share := drawing.Um(25); share <= 50; share += 5 {
			wide := max(p.area.W()*share/100, size.X)
			if size.Y+layoutGap+needed(notes, wide, 5*drawing.MM) > p.area.H() || p.area.W()-wide < 2*leastRoom {
				continue
			}
			out = append(out, besideStrips(p, wide, size, den))
			break // a wider column leaves the strips less
		}
		if len(out) > 0 && den > 2 {
			break
		}
	}
	return out
}

// underStrips is the layout with a band under the strips.
func underStrips(p *page, notes []string, size drawing.Point, den int64) ladderLayout {
	l := ladderLayout{room: p.area, text: p.area, detail: p.area, den: den}
	l.detail.Min.X = l.detail.Max.X - size.X
	l.text.Max.X = l.detail.Min.X - besideGap
	high := max(size.Y, needed(notes, l.text.W(), 5*drawing.MM))
	l.text.Min.Y, l.detail.Min.Y = p.area.Max.Y-high, p.area.Max.Y-high
	l.room.Max.Y -= high + layoutGap
	return l.inset()
}

// besideStrips is the layout with a column beside the strips.
func besideStrips(p *page, wide drawing.Um, size drawing.Point, den int64) ladderLayout {
	l := ladderLayout{room: p.area, text: p.area, detail: p.area, den: den}
	l.text.Min.X = p.area.Max.X - wide
	l.detail.Min.X = l.text.Min.X
	l.room.Max.X = l.text.Min.X - besideGap
	l.detail.Max.Y = l.detail.Min.Y + size.Y
	l.text.Min.Y = l.detail.Max.Y + layoutGap
	return l.inset()
}

// aroundStrips is the layout with the words under the strips and the detail beside
// them.
func aroundStrips(p *page, notes []string, size drawing.Point, den int64) ladderLayout {
	l := ladderLayout{room: p.area, text: p.area, detail: p.area, den: den}
	l.text.Min.Y = p.area.Max.Y - needed(notes, p.area.W(), 5*drawing.MM)
	l.detail.Min.X = p.area.Max.X - size.X
	l.room.Max = drawing.Pt(l.detail.Min.X-besideGap/3, l.text.Min.Y-layoutGap)
	l.detail.Min.Y += (l.room.H() - size.Y) / 2
	l.detail.Max.Y = l.detail.Min.Y + size.Y
	return l.inset()
}

// inset leaves the strips their room at either end.
func (l ladderLayout) inset() ladderLayout {
	l.room.Min.X += ladderLeft
	l.room.Max.X -= ladderRight
	return l
}

// A ladderFit is a layout with the picture that the faces on a sheet have in it.
type ladderFit struct {
	ladderLayout
	v    picture
	fits bool // all of the faces, one above the other
}

// ladderFits returns the layout that shows the faces largest, one above the
// other, and of those the one with the largest detail.
func ladderFits(p *page, layouts []ladderLayout, faces []ladderFace) ladderFit {
	var best ladderFit
	for _, l := range layouts {
		fit := l.fit(p.in, faces)
		switch {
		case best.den == 0, fit.fits && !best.fits,
			fit.fits == best.fits && fit.v.proj.Den < best.v.proj.Den,
			fit.fits == best.fits && fit.v.proj.Den == best.v.proj.Den && fit.den < best.den:
			best = fit
		}
	}
	return best
}

// fit returns the largest picture of the faces in a layout, the words at their top
// turned where that makes it larger.
func (l ladderLayout) fit(in Input, faces []ladderFace) ladderFit {
	each := l.room
	each.Max.Y = each.Min.Y + each.H()/drawing.Um(len(faces)) - ladderTitle - ladderBelow
	each.Min.Y += ladderAbove
	fit := ladderFit{ladderLayout: l, fits: each.H() >= 10*drawing.MM}
	if !fit.fits {
		each.Max.Y = l.room.Max.Y - ladderTitle - ladderBelow // one by itself always has some
	}
	scene, from := faces[0].scene(in.Rack), faces[0].from()
	fit.v = pictured(in, scene, from, true, each)
	each.Max.X += ladderRight - ladderTurn
	if v := pictured(in, scene, from, true, each); v.proj.Den < fit.v.proj.Den && v.extent(scene).H() >= ladderWords {
		fit.v, fit.room.Max.X = v, each.Max.X
	}
	return fit
}

// drawStrips draws strips of a ladder's faces one above the other, the detail of
// a crossing, and the notes.
func drawStrips(p *page, g stripGroup, notes []string) {
	each := g.room.H() / drawing.Um(len(g.strips))
	for i, s := range g.strips {
		box := g.room
		box.Min.Y += each * drawing.Um(i)
		box.Max.Y = box.Min.Y + each
		s.draw(p, box)
	}
	g.strips[0].face.detail(p, g.ladderLayout)
	w := newScribe(p.sheet, g.text)
	for _, n := range notes {
		w.note(n, 5*drawing.MM)
	}
	r := p.in.Rack
	square := assembly.Diagonals(r)[0]
	noted(p.sheet, g.text.Min, square.Length, square.Text(r.Format.System))
}

// anyCrowded reports whether a face's figures want it broken, drawn by itself.
func anyCrowded(p *page, r *rack.Rack, layouts []ladderLayout, faces []ladderFace) bool {
	return slices.ContainsFunc(faces, func(f ladderFace) bool {
		return f.crowded(r, ladderFits(p, layouts, []ladderFace{f}).v)
	})
}
