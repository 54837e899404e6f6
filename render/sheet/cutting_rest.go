package sheet

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/saw"
	"slatwright/render/drawing"
	"slatwright/render/typeface"
	"slatwright/specs/word"
)

// restHigh is what the note of the shop aids under a bar takes.
const restHigh = 6 * drawing.MM

// cutsOf lists the places of a leaf where an aid is cut from what it leaves.
func cutsOf(a aidFound, board, leaf int) []saw.EndCut {
	return slices.DeleteFunc(slices.Clone(a.Cuts), func(x saw.EndCut) bool { return x.Board != board || x.Leaf != leaf })
}

// restText says which shop aids come from what a leaf leaves; "" where none do.
func (c *cutter) restText(board, leaf int) string {
	var all []string
	for _, a := range c.found {
		n := 0
		for _, x := range cutsOf(a, board, leaf) {
			n += x.Count
		}
		if n > 0 {
			name, _, _ := strings.Cut(a.Name, " ")
			all = append(all, word.Count(n, name))
		}
	}
	if len(all) == 0 {
		return ""
	}
	from := "Dashed, from the rest: "
	if n := c.p.Boards[board].Count; n > 1 {
		from = fmt.Sprintf("Dashed on the first of %d, from their rests: ", n)
	}
	return from + word.List(all) + ", " + sheetRef("hardware") + "."
}

func (c *cutter) restsHigh(board, leaf int) drawing.Um {
	if c.restText(board, leaf) == "" || c.besideTitle(board, leaf) {
		return 0
	}
	return restHigh
}

// cutBehind reports whether a shop aid comes from what a leaf leaves from a length on.
func (c *cutter) cutBehind(board, leaf int, from length) bool {
	return slices.ContainsFunc(c.found, func(a aidFound) bool {
		return slices.ContainsFunc(cutsOf(a, board, leaf), func(x saw.EndCut) bool { return x.Copy == 0 && x.At >= from })
	})
}

// besideTitle reports whether the shop aids of a leaf are named beside its title;
// where that is too long they stand under the bar.
func (c *cutter) besideTitle(board, leaf int) bool {
	text := c.restText(board, leaf)
	said := sheetRefs.ReplaceAllLiteralString(text+" "+c.usedText(board), widestRef)
	return text != "" && typeface.Width(drawing.Figure(c.barTitleText(board, leaf)), drawing.FigureHeight, true)+
		typeface.Width(drawing.Plain(said), drawing.FigureHeight, false)+4*drawing.MM <= c.box.W()
}

// restNote writes the note under a bar.
func (c *cutter) restNote(board, leaf int) {
	text := c.restText(board, leaf)
	if c.restsHigh(board, leaf) == 0 {
		return
	}
	w := newScribe(c.page.sheet, c.rest())
	w.note(text, 0)
	c.y = w.y
}

// rests draws the shop aids that come from what a leaf leaves, dashed, with their
// name where there is room. Of boards that are cut alike it is the first one's.
func (c *cutter) rests(bar drawing.Rect, board, leaf int) {
	s := c.page.sheet
	for _, a := range c.found {
		for _, x := range cutsOf(a, board, leaf) {
			if x.Copy > 0 {
				continue
			}
			box := drawing.Rect{
				Min: drawing.Pt(bar.Min.X+onPaper(x.At, c.long), bar.Min.Y+onPaper(x.Across, c.wide)),
				Max: drawing.Pt(bar.Min.X+onPaper(x.At+x.Long, c.long), bar.Min.Y+onPaper(x.Across+x.Wide, c.wide)),
			}
			s.Add(drawing.Rectangle(drawing.Hidden, 0, drawing.White, box))
			l := drawing.Label(drawing.NoteText, s.Group(), drawing.Point{}, drawing.FigureHeight, drawing.Middle, drawing.Plain(manyOf(a))).CentredOn(box.Centre())
			if box.Inset(drawing.MM).Holds(l.Bounds()) {
				s.Add(l)
			}
		}
	}
}
