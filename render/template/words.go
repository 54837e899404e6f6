package template

import (
	"cmp"
	"math"
	"strings"

	"slatwright/render/drawing"
)

// Words inside the outline of a card, so that it still says what it is when it is
// cut out.
const (
	cardLine  = 5600    // from line to line
	cardInset = 1500    // from the outline to the words
	cardFirst = 5 * mm  // from the upper edge to the foot of the first line
	cardLast  = 2 * mm  // from the foot of the last line to the lower edge
	cardMost  = 40      // lines
	leastTab  = 36 * mm // width of the part of a nail card that bears words
	upright   = 40 * mm // least width of a bar whose words run across it
	arrowRoom = 5 * mm  // under the words of a bar, for the arrow over its width
	leastBar  = 20 * mm // height of a bar
	belowWide = 90 * mm // of words under a card that is too small for them
	centreRun = 3500    // of a half disc's middle, at its rim
)

// linesIn is how many lines a shape so high holds.
func linesIn(high drawing.Um) int {
	if high < cardFirst+cardLast {
		return 0
	}
	return 1 + int((high-cardFirst-cardLast)/cardLine)
}

// joined stands for a space at which flow breaks no line.
const joined = "\u00a0"

// whole keeps the parts of a figure on one line.
func whole(figure string) string { return strings.ReplaceAll(figure, " ", joined) }

// flow sets paragraphs, the first of them bold, in lines of the widths that room
// gives, each paragraph from a new line; nil where they do not fit.
func flow(paragraphs []string, lines int, room func(i int) drawing.Um) []drawing.Text {
	var out []drawing.Text
	set := func(s string, bold bool) drawing.Text {
		t := note(drawing.Point{}, strings.ReplaceAll(s, joined, " "))
		t.Bold = bold
		return t
	}
	for i, s := range paragraphs {
		line := ""
		for _, word := range strings.Split(s, " ") {
			longer := strings.TrimPrefix(line+" "+word, " ")
			if line != "" && set(longer, i == 0).Width() > room(len(out)) {
				out, longer = append(out, set(line, i == 0)), word
			}
			if len(out) >= lines || set(longer, i == 0).Width() > room(len(out)) {
				return nil
			}
			line = longer
		}
		out = append(out, set(line, i == 0))
	}
	return out
}

// width is a room that is the same for each line.
func width(w drawing.Um) func(int) drawing.Um { return func(int) drawing.Um { return w } }

// A shape is how a card lies on paper, the printer's correction included: its size,
// and the words within it, from its upper left corner. Where it is too small for all
// of them they stand below it, and within it no more than what it is.
type shape struct {
	w, h  drawing.Um
	zone  drawing.Um // of a nail card: where the two parts meet, left of its words
	words []drawing.Text
	below []string
}

// shapeOf lays out a card.
func (f format) shapeOf(g gauge) shape {
	lay := f.bar
	switch {
	case g.disc:
		lay = f.halfDisc
	case g.tall > 0:
		lay = f.nailCard
	}
	s := lay(g)
	if s.words != nil {
		return s
	}
	all := g.words
	g.words = []string{cmp.Or(g.short, all[0])}
	s = lay(g)
	for _, w := range all {
		s.below = append(s.below, wrap(strings.ReplaceAll(w, joined, " "), belowWide)...)
	}
	return s
}

// nailCard puts the words right of the nails, in a part as wide as they need.
func (f format) nailCard(g gauge) shape {
	s := shape{zone: f.along.Of(um(g.wide)), h: f.across.Of(um(g.tall))}
	s.w = s.zone
	for tab := drawing.Um(leastTab); tab < f.along.Of(f.net()); tab += mm {
		words := flow(g.words, linesIn(s.h), width(tab-2*cardInset))
		if words == nil {
			continue
		}
		s.w, s.words = s.zone+tab, words
		for i := range s.words {
			s.words[i].At = drawing.Pt(s.zone+cardInset, cardFirst+cardLine*drawing.Um(i))
		}
		break
	}
	return s
}

// bar makes a bar as high as its words need: across it, or along it where it is
// narrow.
func (f format) bar(g gauge) shape {
	s := shape{w: f.along.Of(um(g.wide)), h: leastBar}
	if s.w >= upright {
		s.words = flow(g.words, cardMost, width(s.w-2*cardInset))
		s.h = max(s.h, cardFirst+cardLine*drawing.Um(len(s.words)-1)+cardLast+arrowRoom)
		for i := range s.words {
			s.words[i].At = drawing.Pt(cardInset, cardFirst+cardLine*drawing.Um(i))
		}
		return s
	}
	for run := drawing.Um(leastBar); run < f.across.Of(f.bodyHeight)-arrowRoom-2*gaugeGap; run += mm {
		if s.words = flow(g.words, linesIn(s.w), width(run)); s.words == nil {
			continue
		}
		s.h = max(leastBar, run+2*cardInset+arrowRoom)
		for i := range s.words {
			s.words[i].Turn = 1
			s.words[i].At = drawing.Pt(cardFirst+cardLine*drawing.Um(i), run+cardInset)
		}
		break
	}
	return s
}

// halfDisc centres the words under the straight side.
func (f format) halfDisc(g gauge) shape {
	r := um(g.wide) / 2
	s := shape{w: f.along.Of(2 * r), h: f.across.Of(r)}
	least := float64(min(s.w/2, s.h))
	s.words = flow(g.words, linesIn(s.h-centreRun), func(i int) drawing.Um {
		y := float64(cardFirst + cardLine*drawing.Um(i) + 1*mm) // below its descenders
		if y >= least {
			return 0
		}
		return drawing.Um(2*math.Sqrt(least*least-y*y)) - 2*cardInset
	})
	for i := range s.words {
		s.words[i].Align = drawing.Middle
		s.words[i].At = drawing.Pt(s.w/2, cardFirst+cardLine*drawing.Um(i))
	}
	return s
}
