package sheet

import (
	"fmt"
	"slices"

	"slatwright/geometry/assembly"
	"slatwright/geometry/finish"
	"slatwright/render/drawing"
	"slatwright/render/typeface"
)

// The sheet of the top's clamps shows how its staves are pressed on each other, from
// above and from their ends, and how it is pressed on an upper apron.

// Room on that sheet.
const (
	panelSide  = 12 * drawing.MM // of clamps that stand out at its left
	panelOut   = 5 * drawing.MM  // how far clamps stand out beyond the cauls
	panelTitle = 10 * drawing.MM // under a picture
	panelBar   = 3 * drawing.MM  // how wide a clamp's bar is drawn at most
)

// panelPage returns that sheet; ok is false of a rack whose top is clamped nowhere.
func panelPage(in Input, name, title string) (p *page, ok bool) {
	top := in.Cutting.Panel()
	pressed := slices.ContainsFunc(assembly.Sets(in.Rack, top), func(c assembly.Clamps) bool { return c.For == assembly.ClampsOfTop })
	if !pressed && !top.GluedUp() {
		return nil, false
	}
	p = in.newPage(name, title)
	upper, lower := p.area, p.area
	upper.Max.Y = upper.Min.Y + p.area.H()/2
	lower.Min.Y = upper.Max.Y + 2*drawing.MM
	left, right := lower, lower
	left.Max.X = lower.Centre().X - 2*drawing.MM
	right.Min.X = left.Max.X + 4*drawing.MM
	switch {
	case !pressed:
		stavesFromAbove(p, top, upper)
		stavesFromEnd(p, top, lower)
	case !top.GluedUp():
		pressedTop(p, p.area)
	default:
		stavesFromAbove(p, top, upper)
		stavesFromEnd(p, top, left)
		pressedTop(p, right)
	}
	return p, true
}

// stavesFromAbove draws the staves in their clamps, those over and those under them by
// turns, with the battens that keep the ends level.
func stavesFromAbove(p *page, top finish.Panel, box drawing.Rect) {
	r, s := p.in.Rack, p.sheet
	caul, wide, long := assembly.Caul(r), length(top.Staves)*top.StaveWidth, top.Length
	const under = "batten, another under it"
	beside := namesRoom(under)
	den := largestScale(p.in, func(den int64) bool {
		return onPaper(long, den) <= box.W()-panelSide-beside && onPaper(wide+2*caul, den)+3*panelOut+panelTitle <= box.H()
	})
	um := func(l length) drawing.Um { return onPaper(l, den) }
	corner := drawing.Pt(box.Min.X+panelSide+(box.W()-panelSide-beside-um(long))/2, box.Min.Y+2*panelOut+um(caul))
	at := func(x0, y0, x1, y1 length) drawing.Rect {
		return drawing.Rect{Min: corner.Add(drawing.Pt(um(x0), um(y0))), Max: corner.Add(drawing.Pt(um(x1), um(y1)))}
	}
	solid := func(c drawing.Class, b drawing.Rect) { s.Add(drawing.Rectangle(c, 0, drawing.White, b)) }
	for i := range length(top.Staves) {
		solid(drawing.Visible, at(0, i*top.StaveWidth, long, (i+1)*top.StaveWidth))
	}
	solid(drawing.Thin, at(0, -caul, long, 0))
	solid(drawing.Thin, at(0, wide, long, wide+caul))
	names := []jigName{{"caul", drawing.Pt(at(0, -caul, long, 0).Max.X, at(0, -caul, long, 0).Centre().Y)}, {"stave", drawing.Pt(at(0, 0, long, 0).Max.X, at(0, 0, long, top.StaveWidth).Centre().Y)}}
	clampAt := func(x length, over bool) drawing.Rect {
		b := at(x, -caul, x, wide+caul)
		half := min(panelBar, um(caul)) / 2
		b.Min, b.Max = b.Min.Sub(drawing.Pt(half, panelOut)), b.Max.Add(drawing.Pt(half, panelOut))
		if over {
			solid(drawing.Visible, b)
		} else {
			s.Add(drawing.Rectangle(drawing.Hidden, 0, drawing.NoFill, b))
		}
		return b
	}
	n := length(panelClampCount(p.in, top))
	first, last := 4*caul, long-4*caul // clear of the battens
	if last <= first {
		first, last = long/4, long-long/4
	}
	for i := range n {
		clampAt(first+(last-first)*i/max(1, n-1), i%2 == 0)
	}
	for _, x := range []length{caul, long - 2*caul} {
		b := at(x, 0, x+caul, wide)
		solid(drawing.Visible, b)
		r := min(clampR, b.W()*2/5)
		mid := b.Centre().X // its own clamps reach in over the cauls
		clampMark(s, drawing.Pt(mid, b.Min.Y+2*r), drawing.Pt(mid, b.Min.Y-um(caul)-2*r), r)
		clampMark(s, drawing.Pt(mid, b.Max.Y-2*r), drawing.Pt(mid, b.Max.Y+um(caul)+2*r), r)
	}
	end := at(long-2*caul, 0, long-caul, wide)
	names = append(names, jigName{under, drawing.Pt(end.Max.X, end.Min.Y+end.H()*3/4)})
	nameAll(p, names, at(0, 0, long, wide))
	p.caption(drawing.Pt(at(0, 0, long, 0).Centre().X, at(0, wide, 0, wide+caul).Max.Y+panelOut+drawing.MM),
		fmt.Sprintf("The top's staves from above: clamps over them, and under them (dashed), scale 1:%d", den))
}

// namesRoom is what names take at the right of a picture, of which this is the longest.
func namesRoom(longest string) drawing.Um {
	return jigColumn + typeface.Width(drawing.Plain(longest), drawing.FigureHeight, false) + 3*drawing.MM
}

// panelClampCount is how many clamps press the staves.
func panelClampCount(in Input, top finish.Panel) int {
	return assembly.Sets(in.Rack, top)[0].Count
}

// stavesFromEnd draws the ends of the staves, their rings arched up and down by turns.
func stavesFromEnd(p *page, top finish.Panel, box drawing.Rect) {
	r, s := p.in.Rack, p.sheet
	wide, thick := length(top.Staves)*top.StaveWidth, r.Len("top.thickness")
	den := largestScale(p.in, func(den int64) bool {
		return onPaper(wide, den) <= box.W()-4*drawing.MM && onPaper(thick, den)+2*panelTitle <= box.H()
	})
	um := func(l length) drawing.Um { return onPaper(l, den) }
	corner := drawing.Pt(box.Min.X+(box.W()-um(wide))/2, box.Min.Y+(box.H()-um(thick)-panelTitle)/2)
	for i := range length(top.Staves) {
		b := drawing.Box(corner.X+um(i*top.StaveWidth), corner.Y, um(top.StaveWidth), um(thick))
		heart, from := drawing.Pt(b.Centre().X, b.Max.Y), 0.0 // arched up: the heart below
		if i%2 == 1 {
			heart.Y, from = b.Min.Y, 180
		}
		for _, share := range []drawing.Um{30, 55, 80} {
			s.Add(drawing.Arc(drawing.Thin, 0, heart, min(b.H(), b.W()/2)*share/100, from, 180))
		}
		s.Add(drawing.Rectangle(drawing.Visible, 0, drawing.NoFill, b))
	}
	p.caption(drawing.Pt(box.Centre().X, corner.Y+um(thick)+drawing.MM), fmt.Sprintf("The staves' ends: rings by turns, scale 1:%d", den))
}

// pressedTop draws a clamp of the top on the front upper apron, cut from front to
// back, seen from the left.
func pressedTop(p *page, box drawing.Rect) {
	r, s := p.in.Rack, p.sheet
	caul, thick, high := assembly.Caul(r), r.Len("top.thickness"), r.Len("apron.height")
	front, apron := max(0, r.Len("overhang.front")), r.Len("apron.thickness")
	apronWord := "front upper apron"
	if r.Design.Joint.TopGlued {
		apronWord = "upper apron"
	}
	beside := namesRoom(apronWord)
	behind := 2 * apron // of the top, before it is broken off
	all := 2*caul + thick + high
	den := largestScale(p.in, func(den int64) bool {
		return onPaper(front+apron+behind, den) <= box.W()-beside-2*panelSide && onPaper(all, den)+4*panelOut+panelTitle <= box.H()
	})
	um := func(l length) drawing.Um { return onPaper(l, den) }
	size := drawing.Pt(um(front+apron+behind), um(all))
	corner := drawing.Pt(box.Min.X+2*panelSide+(box.W()-2*panelSide-beside-size.X)/2, box.Min.Y+2*panelOut+(box.H()-4*panelOut-panelTitle-size.Y)/2)
	at := func(y0, z0, y1, z1 length) drawing.Rect { // y from the top's front edge, z down from the upper caul
		return drawing.Rect{Min: corner.Add(drawing.Pt(um(y0), um(z0))), Max: corner.Add(drawing.Pt(um(y1), um(z1)))}
	}
	cut := func(c drawing.Class, b drawing.Rect, h drawing.Hatching) {
		s.Add(h.Hatch(0, b)...)
		s.Add(drawing.Rectangle(c, 0, drawing.NoFill, b))
	}
	half := assembly.CaulWide(r, high) / 2 // cauls lie flat along the apron, the lower one clear of the legs
	mid := front + apron/2
	boardTop, leg := at(0, caul, front+apron+behind, caul+thick), at(front, caul+thick, front+apron, caul+thick+high)
	cut(drawing.Visible, boardTop, drawing.Hatching{Pitch: 3 * drawing.MM})
	cut(drawing.Visible, leg, drawing.Hatching{Pitch: 2 * drawing.MM, Falling: true})
	s.Add(drawing.Rectangle(drawing.Solid, 0, drawing.White, drawing.Box(boardTop.Max.X-drawing.MM/2, boardTop.Min.Y, drawing.MM, boardTop.H())))
	s.Add(drawing.BreakLine(0, boardTop.Max.Add(drawing.Pt(0, drawing.MM)), drawing.Pt(boardTop.Max.X, boardTop.Min.Y-drawing.MM)))
	upper := at(mid-half, 0, mid+half, caul)
	lower := at(front+apron-2*half, all-caul, front+apron, all) // flush: legs stand behind it
	cut(drawing.Thin, upper, drawing.Hatching{Pitch: 14 * drawing.MM / 10})
	cut(drawing.Thin, lower, drawing.Hatching{Pitch: 14 * drawing.MM / 10})
	// The clamp: a bar before the rack, its jaws over and under the cauls.
	x := at(min(0, mid-half, front+apron-2*half), 0, 0, 0).Min.X - panelSide
	jaw := upper.Centre().X
	bar := drawing.Rect{Min: drawing.Pt(x, upper.Min.Y-2*panelOut), Max: drawing.Pt(x+panelBar, lower.Max.Y+2*panelOut)}
	s.Add(drawing.Rectangle(drawing.Visible, 0, drawing.NoFill, bar))
	for _, y := range []drawing.Um{upper.Min.Y, lower.Max.Y} {
		away := drawing.Um(-1)
		if y == lower.Max.Y {
			away = 1
		}
		s.Add(drawing.Line(drawing.Visible, 0, drawing.Pt(bar.Max.X, y+away*panelOut), drawing.Pt(jaw, y+away*panelOut)))
		g := s.Group()
		s.Add(drawing.Line(drawing.Visible, g, drawing.Pt(jaw, y+away*panelOut), drawing.Pt(jaw, y)), drawing.Arrow(g, drawing.Pt(jaw, y), drawing.Pt(jaw, y+away*panelOut)))
	}
	nameAll(p, []jigName{
		{"caul", drawing.Pt(upper.Max.X, upper.Centre().Y)}, {"top", drawing.Pt(boardTop.Max.X, boardTop.Centre().Y)},
		{apronWord, drawing.Pt(leg.Max.X, leg.Centre().Y)}, {"caul", drawing.Pt(lower.Max.X, lower.Centre().Y)},
	}, boardTop)
	p.caption(drawing.Pt(box.Centre().X, lower.Max.Y+2*panelOut+drawing.MM), fmt.Sprintf("The top on an apron, front at the left, scale 1:%d", den))
}
