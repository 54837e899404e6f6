// Package template lays out full-size templates: strips to lay along a leg or
// an apron and mark from. A solved rack goes in; sheets that must be printed at
// 100 % come out, for the pdf writer. Long strips are cut into tiles on home
// paper, with an overlap, register crosses at round distances from the datum
// and rulers both ways; on a roll they stay whole. Where the design says what
// the printer made of a ruler, all that is measured is corrected for it.
//
// Every mark is set from its exact distance to the strip's datum, rounded once
// to a micrometre, so that tiles and marks do not drift apart.
package template

import (
	"fmt"
	"strings"

	"slatwright/geometry/assembly"
	"slatwright/geometry/finish"
	"slatwright/geometry/rack"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
	"slatwright/specs/word"
)

// A group is the strips that share pages, one below the other.
type group struct {
	strips []strip
	tiles  int // pages that the longest takes
	first  int // number of its first page, from 1
}

// Sheets returns the templates of a rack of whose top no more is known.
func Sheets(r *rack.Rack, mark string) ([]*drawing.Sheet, error) {
	return WithTop(r, finish.Panel{}, mark)
}

// WithTop returns the templates of a rack, the page of instructions first. The top,
// as the cutting plan makes it, decides the numbers of the steps that they name. Mark
// is the content mark of the packet, printed on every page. An error says that
// the paper or the printer's measure leaves no room.
func WithTop(r *rack.Rack, top finish.Panel, mark string) ([]*drawing.Sheet, error) {
	all, err := strips(r)
	if err != nil {
		return nil, err
	}
	longest := unit.Length(0)
	for _, s := range all {
		longest = max(longest, s.length)
	}
	f, err := formatOf(r, longest)
	if err != nil {
		return nil, err
	}
	for i := range all {
		if f.inPart(all[i], r.Format) != "" {
			all[i].name += ", in part"
		}
	}
	p := packet{rack: r, f: f, mark: mark, groups: f.groups(all), steps: assembly.Steps(r, top, nil)}
	gauges := p.gaugePages()
	p.number(1 + len(gauges))
	text := p.instructions()
	for n := 1; n < len(text); { // they name pages, whose numbers hang on how many they are
		n = len(text)
		p.number(n + len(gauges))
		text = p.instructions()
	}
	sheets := p.compose(text)
	for k, g := range gauges {
		sheets = append(sheets, p.gaugeSheet(g, k, len(sheets)+1))
	}
	for i := range p.groups {
		for k := range p.groups[i].tiles {
			sheets = append(sheets, p.tile(i, k))
		}
	}
	return sheets, nil
}

// A packet is what all pages have in common.
type packet struct {
	rack   *rack.Rack
	f      format
	mark   string
	groups []group
	pages  int
	steps  []assembly.Step
}

// step names a step of the order of work: "step W7, Jig".
func (p *packet) step(name string) string {
	return "step " + assembly.Number(p.steps, name) + ", " + name
}

// groups stacks strips in their order as long as a page has room.
func (f format) groups(all []strip) []group {
	var out []group
	left := drawing.Um(0)
	for _, s := range all {
		high, _ := f.band(s)
		need := titleRow + high + laneGap
		if len(out) == 0 || need > left {
			out, left = append(out, group{}), f.bodyHeight
		}
		g := &out[len(out)-1]
		g.strips = append(g.strips, s)
		g.tiles = max(g.tiles, f.tiles(s.length))
		left -= need
	}
	return out
}

// number sets the first page of each group, after so many pages.
func (p *packet) number(before int) {
	n := before
	for i := range p.groups {
		p.groups[i].first = n + 1
		n += p.groups[i].tiles
	}
	p.pages = n
}

// tile composes the page of tile k of a group.
func (p *packet) tile(row, k int) *drawing.Sheet {
	g := p.groups[row]
	number := g.first + k
	title := tileTitle(row+1, k+1)
	s, origin := p.f.page(fmt.Sprintf("%02d-row%d-sheet%d", number, row+1, k+1), title)
	p.head(s, origin, title, number, joinWords(g, k))
	p.pageMap(s, origin, row, k)
	top := drawing.Um(headSpace)
	for i, st := range g.strips {
		t := tile{strip: st, f: p.f, k: k, n: p.f.tiles(st.length), top: top + titleRow}
		t.high, t.covered = p.f.band(st)
		top = t.top + t.high + laneGap
		if k >= t.n {
			continue
		}
		t.page, t.words = number, p.stripWords(st, stripName(row+1, i+1))
		t.draw(stripName(row+1, i+1), p.rack.Format)
		s.Add(p.f.correct(t.marks, origin)...)
		s.Dims = append(s.Dims, placed(t.dims, p.f, origin)...)
	}
	p.f.rulers(s, origin)
	return s
}

// joinWords says how the page of tile k joins those of its row and what is cut.
func joinWords(g group, k int) string {
	switch {
	case g.tiles == 1:
		return rulersWords + " Cut the strips out on all heavy lines."
	case k == 0:
		return rulersWords + fmt.Sprintf(" Tape on %s; then cut on all heavy lines.", pagesText(g.first+1, g.first+g.tiles-1))
	}
	return rulersWords + fmt.Sprintf(" Trim left at the dash-dot line, tape onto page %d; then cut on all heavy lines.", g.first+k-1)
}

// pagesText names pages: "page 5", "pages 5 and 6", "pages 5 to 7".
func pagesText(from, to int) string {
	switch to - from {
	case 0:
		return fmt.Sprintf("page %d", from)
	case 1:
		return fmt.Sprintf("pages %d and %d", from, to)
	}
	return fmt.Sprintf("pages %d to %d", from, to)
}

// stripWords are the words inside a strip.
func (p *packet) stripWords(s strip, code string) []string {
	steps := p.step(assembly.StepMark)
	if s.jig {
		steps = fmt.Sprintf("steps %s, %s; %s, %s", assembly.Number(p.steps, assembly.StepMark), assembly.StepMark,
			assembly.Number(p.steps, assembly.StepJig), assembly.StepJig)
	}
	return []string{word.Capital(whole(code)) + ": " + strings.ReplaceAll(s.name, "ladder ", "ladder"+joined), "For " + s.use + "; " + steps}
}

// tileTitle names a tile by its row and its place in it, both from 1, in words: a
// letter with a number is a part or a cut.
func tileTitle(row, k int) string { return fmt.Sprintf("Template row %d, sheet %d", row, k) }

// stripName names a strip by its row and its place below the row's upper edge.
func stripName(row, i int) string { return fmt.Sprintf("strip %d.%d", row, i) }

// placed moves dimension records with their figures.
func placed(dims []drawing.DimRecord, f format, origin drawing.Point) []drawing.DimRecord {
	out := make([]drawing.DimRecord, len(dims))
	for i, d := range dims {
		at := f.correct([]drawing.Mark{drawing.Disc(drawing.Solid, 0, drawing.Black, d.From, 1)}, origin)[0].Bounds().Centre()
		d.From, d.To = at, at
		out[i] = d
	}
	return out
}
