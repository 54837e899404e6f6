package sheet

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/assembly"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
	"slatwright/render/typeface"
	"slatwright/specs/unit"
)

// carcase returns the sheet for putting ladders and aprons together: spacing
// between faces, where each leg's left face is, the diagonals, and the places of
// the ladders in words. Where these are too many to go beside the view they have
// sheets of their own after it.
func carcase(in Input) []*page {
	s := sceneOf(in.Rack, func(q rack.Piece) bool {
		return in.Rack.Parts[q.Part].Name == "leg" || in.Rack.Parts[q.Part].Name == "apron"
	})
	notes := carcaseNotes(in)
	in = in.turned(func(blank *page) int64 {
		v, _, _ := carcaseLayout(blank, s, notes)
		return v.proj.Den
	})
	p := in.newPage("carcase", "Carcase assembly")
	v, box, whole := carcaseLayout(p, s, notes)
	pages := []*page{p}
	if box == (drawing.Rect{}) {
		pages = append(pages, placePages(in, notes)...)
	} else {
		places(p, box, notes)
	}
	from := len(p.sheet.Marks)
	v.draw(p.sheet, view.Lines(s, view.Front), func(l view.Line) (drawing.Class, bool) {
		if l.Hidden {
			return drawing.Hidden, true
		}
		return drawing.Visible, true
	})
	out := v.extent(s)
	drawSpacers(p, v)
	diagonals(p, v)
	apronWords(p, v, out)
	spacing(p, v, out, box, whole)
	p.caption(drawing.Pt(out.Centre().X, p.inked(from).Max.Y+captionOff), carcaseTitle(in.Rack)+", "+scaleText(v))
	p.scale = ratioText(v)
	return pages
}

// carcaseTitle says what the view shows and leaves out.
func carcaseTitle(r *rack.Rack) string {
	if r.HasTop() {
		return "From the front, no slats, no top"
	}
	return "From the front, no slats"
}

// carcaseTitleWidth is the width of the view's title with any scale.
func carcaseTitleWidth(r *rack.Rack) drawing.Um {
	return typeface.Width(drawing.Plain(carcaseTitle(r)+", scale 1:100"), drawing.FigureHeight, false)
}

// apronWords names the aprons at the right of the view.
func apronWords(p *page, v picture, out drawing.Rect) {
	r := p.in.Rack
	half := r.Len("apron.height") / 2
	if apart := v.proj.Length(r.Len("leg.length")-r.Len("apron.lift")-2*half, space.Z); apart < (2 * drawing.FigureHeight).MM() {
		return // no room for both
	}
	for _, a := range []struct {
		word string
		z    length
	}{{"upper", r.Len("leg.length") - half}, {"lower", r.Len("apron.lift") + half}} {
		y := v.point(space.Point{Z: a.z}).Y + drawing.FigureHeight/2
		note(p, a.word, drawing.Pt(out.Max.X+4*drawing.MM, y))
	}
}

// places writes where the ladders go into a box.
func places(p *page, box drawing.Rect, notes []string) {
	w := newScribe(p.sheet, box)
	w.heading("Places of the ladders")
	for _, n := range notes {
		w.note(n, 5*drawing.MM)
	}
}

// placePages are sheets with the places of the ladders alone.
func placePages(in Input, notes []string) []*page {
	var pages []*page
	for len(notes) > 0 {
		p := in.newPage(fmt.Sprintf("carcase-%d", len(pages)+2), "Carcase assembly, places of the ladders")
		n := 1
		for n < len(notes) && placesHeight(notes[:n+1], p.area.W()) <= p.area.H() {
			n++
		}
		places(p, p.area, notes[:n])
		pages, notes = append(pages, p), notes[n:]
	}
	return pages
}

// placesHeight is the room that the places of the ladders take.
func placesHeight(notes []string, width drawing.Um) drawing.Um {
	return needed(notes, width, 5*drawing.MM) + 8*drawing.MM
}

// Room around the carcase's view.
const (
	carcaseLeft  = 43 * drawing.MM
	carcaseRight = 18 * drawing.MM
	carcaseBelow = 42 * drawing.MM
	carcaseAbove = 43 * drawing.MM
)

// carcaseLayout sets the view beside the notes or over them, whichever shows
// it larger, and returns it with the notes' box and whether there is room for
// the dimensions of every column. Where the notes go neither way the view has
// the sheet to itself and their box is empty.
func carcaseLayout(p *page, s view.Scene, notes []string) (best picture, text drawing.Rect, whole bool) {
	beside, left := p.area, p.area
	share := drawing.Um(45)
	if p.in.upright { // narrower, which leaves the view's title its room
		share = 36
	}
	left.Max.X -= p.area.W() * share / 100
	beside.Min.X = left.Max.X + 5*drawing.MM
	under, over := p.area, p.area
	under.Min.Y = under.Max.Y - placesHeight(notes, under.W())
	over.Max.Y = under.Min.Y - 3*drawing.MM
	var layouts [][2]drawing.Rect
	titled := left.Min.X + carcaseLeft + (left.W()-carcaseLeft-carcaseRight+carcaseTitleWidth(p.in.Rack))/2
	if titled < beside.Min.X && placesHeight(notes, beside.W()) <= beside.H() {
		layouts = append(layouts, [2]drawing.Rect{left, beside})
	}
	if over.H() > carcaseAbove+carcaseBelow+15*drawing.MM {
		layouts = append(layouts, [2]drawing.Rect{over, under})
	}
	if len(layouts) == 0 {
		layouts = [][2]drawing.Rect{{p.area, {}}}
	}
	for i, l := range layouts {
		box := l[0]
		box.Min.X += carcaseLeft
		box.Max.X -= carcaseRight
		box.Min.Y += carcaseAbove
		box.Max.Y -= carcaseBelow
		v := pictured(p.in, s, view.Front, false, box)
		all := spacious(p.in.Rack, v)
		if i == 0 || v.proj.Den < best.proj.Den || v.proj.Den == best.proj.Den && all && !whole {
			best, text, whole = v, l[1], all
		}
	}
	return best, text, whole
}

// spacious reports whether the figures of every column fit side by side.
func spacious(r *rack.Rack, v picture) bool {
	const figure = 9 * drawing.MM
	return v.proj.Length(r.Len("carcase.width"), space.X) >= (figure * drawing.Um(2*len(r.Columns)+1)).MM()
}

// spacing puts on the dimensions: over the view the ways between faces and the
// whole, under it where each leg's left face is, at the left where the aprons sit.
// No figure stands in the notes' box.
func spacing(p *page, v picture, out, notes drawing.Rect, whole bool) {
	r := p.in.Rack
	e := p.elevation(v, out)
	b := e.dim
	b.Keep(notes)
	ladders := ladderFaces(r)
	faces := func(i int) (left, right dim.Stop) {
		return e.x(ladders[i], dim.Above), e.x(ladders[i].plus(r, "leg.thickness"), dim.Above)
	}
	if whole {
		var all []dim.Stop
		for i := range ladders {
			left, right := faces(i)
			all = append(all, left, right)
		}
		b.Chain(dim.Above, all, dim.Options{})
	} else {
		between(b, r, out, faces)
	}
	first, _ := faces(0)
	_, last := faces(len(ladders) - 1)
	b.Overall(dim.Above, first, last, dim.Options{})

	left := make([]dim.Stop, len(ladders)) // faces
	for i, c := range ladders {
		left[i] = e.x(c, dim.Below)
	}
	const figure = 25 * drawing.MM
	switch {
	case dim.RunningRow*drawing.Um(len(left)+1) <= out.W():
		b.Running(dim.Below, "LEFT", left, dim.Options{})
	case steps(left) <= max(1, int(out.W()/figure)):
		b.Chain(dim.Below, left, dim.Options{})
	}

	up := func(names ...string) dim.Stop { return e.z(coordOf(r, names...), dim.LeftOf) }
	stops := ascending(up(), up("apron.lift"), up("apron.lift", "apron.height"), up("leg.length", "-apron.height"), up("leg.length"))
	slices.Reverse(stops) // from the top of the sheet down
	b.Chain(dim.LeftOf, stops, dim.Options{})
	b.Overall(dim.LeftOf, stops[0], stops[len(stops)-1], dim.Options{})
	b.Draw(out)
}

// between puts on the way between facing legs once for each length that it has, at
// the first column of it, with how many there are; of many lengths as many as there
// is room for, since the words beside the view list them all.
func between(b *dim.Board, r *rack.Rack, out drawing.Rect, faces func(int) (left, right dim.Stop)) {
	const figure = 24 * drawing.MM
	var stops []dim.Stop
	var alike []int
	for i, s := range assembly.Spacers(r) {
		if i >= max(1, int(out.W()/figure)) {
			break
		}
		first := s.Columns[0] - 1
		_, from := faces(first)
		to, _ := faces(first + 1)
		if i > 0 {
			alike = append(alike, dim.Skip)
		}
		stops, alike = append(stops, from, to), append(alike, len(s.Columns))
	}
	b.Chain(dim.Above, stops, dim.Options{Alike: alike})
}

// twoHeaded draws a line with an arrowhead at either end.
func twoHeaded(s *drawing.Sheet, c drawing.Class, group int, a, b drawing.Point) {
	s.Add(drawing.Line(c, group, a, b), drawing.Arrow(group, a, b), drawing.Arrow(group, b, a))
}

// diagonals draws both diagonals and letters them once, in a channel.
func diagonals(p *page, v picture) {
	r := p.in.Rack
	w, h := r.Len("carcase.width"), r.Len("leg.length")
	a, b := v.point(space.Point{}), v.point(space.Point{X: w, Z: h})
	c, d := v.point(space.Point{Z: h}), v.point(space.Point{X: w})
	g := p.sheet.Group()
	twoHeaded(p.sheet, drawing.Dimension, g, a, b)
	twoHeaded(p.sheet, drawing.Dimension, g, c, d)
	square := assembly.Diagonals(r)[1]
	text := square.Text(r.Format.System)
	// In a channel, so that it hides no leg. Where none is wide enough the words
	// beside the view have to do.
	if at, wide := middleChannel(r, v); wide >= 10*drawing.MM || wide >= 7*drawing.MM && r.Format.System == unit.Metric {
		label := drawing.Label(drawing.FigureText, g, drawing.Point{}, drawing.FigureHeight, drawing.Middle, drawing.Figure(text+" both ways"))
		if label.Width() > wide-4*drawing.MM {
			label.Turn = 1
		}
		if room := v.proj.Length(h-2*r.Len("apron.height"), space.Z); label.Turn == 1 && label.Width().MM() > room-4 {
			label.Runs = drawing.Figure(text)
		}
		label = label.CentredOn(drawing.Pt(at, (a.Y+b.Y)/2))
		p.sheet.Add(drawing.Rectangle(drawing.Solid, label.Group, drawing.White, label.Bounds().Inset(-drawing.MM/2)), label)
	}
	noted(p.sheet, a, square.Length, text)
}

// middleChannel returns the middle and the width, on paper, of the channel nearest
// to the middle of the carcase.
func middleChannel(r *rack.Rack, v picture) (at, wide drawing.Um) {
	col := r.Columns[len(r.Columns)/2]
	from, to := v.point(space.Point{X: col.Left}).X, v.point(space.Point{X: col.Right}).X
	return (from + to) / 2, to - from
}

// carcaseNotes say where the ladders and the top go, and when all is square.
func carcaseNotes(in Input) []string {
	r, f := in.Rack, in.Rack.Format
	diagonal := assembly.Diagonals(r)[1].Text(f.System)
	notes := []string{
		channelText(r),
		spacerText(in),
		apronText(r),
		fmt.Sprintf("Square when both diagonals are equal, and %s %s.", diagonal, f.System),
	}
	if r.HasTop() {
		notes = append(notes, fmt.Sprintf("The top: %s at either side, %s at the front, %s at the back.",
			outText(f, r.Len("overhang.side")), outText(f, r.Len("overhang.front")), outText(f, r.Len("overhang.back"))))
	}
	notes = append(notes, "In which order: the order of work, "+sheetRef("work")+".")
	if places := faceList(r); len(places) > fewPlaces {
		for i := fewPlaces; i < len(places); i += manyPlaces {
			notes = append(notes, "Left faces, continued: "+strings.Join(places[i:min(i+manyPlaces, len(places))], "; ")+".")
		}
	}
	return notes
}

// A list of places longer than fewPlaces goes on at the end, manyPlaces to
// a paragraph.
const (
	fewPlaces  = 12
	manyPlaces = 60
)

// outText says how far the top stands out.
func outText(f unit.Format, l length) string {
	if l == 0 {
		return "flush"
	}
	return f.Unit(l) + " out"
}

// channelText says what is clear between facing legs, and where they stand.
func channelText(r *rack.Rack) string {
	places := faceList(r)
	list := strings.Join(places[:min(fewPlaces, len(places))], "; ")
	if len(places) > fewPlaces {
		list += "; the others below"
	}
	var each []string
	for _, s := range assembly.Spacers(r) {
		where := ""
		if len(s.Columns) < len(r.Columns) {
			where = " (" + rack.Places("column", s.Columns) + ")"
		}
		each = append(each, r.Format.Unit(s.Long)+where)
	}
	return fmt.Sprintf("Clear between facing legs: %s. Left faces of the legs, as under the view, from the left end: %s.", strings.Join(each, "; "), list)
}

// apronText says which aprons the view shows and where to find their nails.
func apronText(r *rack.Rack) string {
	apron, _ := r.PartNamed("apron")
	return fmt.Sprintf("Aprons %s: the front ones are seen, the back ones stand behind them at the same heights. Each leg takes two nails, %s, through each: part %s, %s.",
		apron.Mark, r.Design.Joint.ApronNail.Text, apron.Mark, partRef("parts", "apron"))
}

// faceList gives where each ladder's left face is on an apron, in order; where
// there are many, a kind of column by its step and its last.
func faceList(r *rack.Rack) []string {
	var parts []string
	n := len(r.Ladders)
	if n <= 8 {
		for _, l := range r.Ladders {
			parts = append(parts, r.Format.Text(l.X))
		}
		return parts
	}
	at := 0
	parts = append(parts, r.Format.Text(r.Ladders[0].X))
	for _, k := range r.Kinds {
		at += k.Count
		each := ""
		if k.Count > 1 {
			each = fmt.Sprintf("%d steps of %s to ", k.Count, r.Format.Text(k.Pitch))
		}
		parts = append(parts, each+r.Format.Text(r.Ladders[at].X))
	}
	return parts
}
