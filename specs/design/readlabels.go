package design

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"slatwright/specs/diag"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Labels is the sheets that labels are printed on.
type Labels struct {
	Grid  table.LabelGrid // of the table, or the maker's own
	First int             // the first free label of the first sheet, from 1
}

// Room is what lettering takes of a label, without what is kept at its edges.
type Room struct{ Width, Height unit.Length }

// LabelRooms are the least rooms that hold a label's lettering in its least
// height, one for each way to set it: five lines; four long ones; eight short
// ones. The layouts of labels are measured against them by a test.
var LabelRooms = []Room{
	{56 * unit.Millimetre, 196 * unit.Millimetre / 10},
	{78 * unit.Millimetre, 156 * unit.Millimetre / 10},
	{38 * unit.Millimetre, 317 * unit.Millimetre / 10},
}

// The keys of a sheet of the maker's own: those that it needs, in the order in
// which they are asked for, and those that may be left out.
var (
	ownNeeds = []string{"columns", "rows", "width", "height"}
	ownSheet = append([]string{"paper_width", "paper_height", "left", "top", "across_gap", "down_gap"}, ownNeeds...)
)

// mostAcross is the most labels in a row or a column, and the greatest paper is
// as wide as the widest roll.
const (
	mostAcross = 50
	mostPaper  = 2000 * unit.Millimetre
)

// labels reads [labels]. What it means hangs on [paper], which may stand below
// it.
func labels(r *reader, path string, n *node) {
	faults := len(r.list)
	r.table(n, path, "labels")
	if len(r.list) > faults {
		return
	}
	var own *node // the first key of a sheet of the maker's own
	for _, k := range n.kids {
		if own == nil && slices.Contains(ownSheet, k.key) {
			own = k
		}
	}
	r.later = append(r.later, func() {
		grid := n.kid("grid")
		switch {
		case grid != nil && own != nil:
			r.fault(own.at, "keep `grid`, or leave it out and state your own sheet", "`%s` and a sheet of your own, of which there can be one", statementText("labels.grid", grid))
			return
		case grid != nil && !r.namedGrid(path+".grid", grid):
			return
		case own != nil && !r.ownGrid(path, n):
			return
		}
		r.firstLabel(path, n)
	})
}

// namedGrid takes a grid of the table.
func (r *reader) namedGrid(path string, n *node) bool {
	s, ok := r.says(path, n)
	if !ok {
		return false
	}
	g, ok := table.FindLabelGrid(s)
	if !ok {
		var names []string
		for _, g := range table.LabelGrids() {
			names = append(names, g.ID)
		}
		hint := "`slatwright tables labels` lists all"
		if near := diag.DidYouMean(s, names); near != "" {
			hint = near + " " + hint
		}
		r.fault(n.value, hint, "unknown grid of labels %s", n.literal)
		return false
	}
	if p := r.d.Paper; !p.LabelsPlace.None() && p.Labels != g.Paper {
		r.fault(n.value, "leave that line out: the grid says its paper", "`%s` is on %s paper, and paper.labels = %q", g.ID, g.Paper, p.Labels)
		return false
	}
	r.d.Labels.Grid = g
	return true
}

// ownGrid takes the maker's own sheet. Where it states no margin, the labels are
// in the middle of the paper.
func (r *reader) ownGrid(path string, n *node) bool {
	faults := len(r.list)
	g := table.LabelGrid{Paper: r.d.Paper.Labels}
	paper, _ := table.FindPaper(g.Paper)
	g.PaperWidth, g.PaperHeight = paper.Width, paper.Height
	r.ownPaper(n, &g)
	get := func(key string, into *unit.Length, zero bool) {
		k := n.kid(key)
		if k == nil {
			return
		}
		if strings.HasSuffix(key, "_gap") && strings.HasPrefix(strings.TrimSpace(cmp.Or(k.text, k.literal)), "-") {
			r.fault(k.value, "write 0 where they touch", "the labels overlap: a gap is not negative")
			return
		}
		*into, _ = r.exact(path+"."+key, k, zero)
	}
	get("paper_width", &g.PaperWidth, false)
	get("paper_height", &g.PaperHeight, false)
	get("width", &g.Width, false)
	get("height", &g.Height, false)
	get("left", &g.Left, true)
	get("top", &g.Top, true)
	get("across_gap", &g.AcrossGap, true)
	get("down_gap", &g.DownGap, true)
	for i, into := range []*int{&g.Columns, &g.Rows} {
		if k := n.kid(ownNeeds[i]); k != nil {
			*into, _ = r.wholeNumber(path+"."+ownNeeds[i], k, 1, mostAcross, "")
		}
	}
	for _, key := range ownNeeds {
		if n.kid(key) == nil {
			r.fault(n.at, "a sheet of your own needs columns, rows, width and height; or name a grid, such as grid = \""+r.d.Labels.Grid.ID+"\"", "the sheet of labels has no `%s`", key)
			break
		}
	}
	if len(r.list) > faults || !r.onPaper(path, n, &g) || !r.lettered(n, g) {
		return false
	}
	r.d.Labels.Grid = g
	return true
}

// ownPaper sees that a paper of the maker's own has both sizes, and is the only
// one.
func (r *reader) ownPaper(n *node, g *table.LabelGrid) {
	w, h := n.kid("paper_width"), n.kid("paper_height")
	switch {
	case w == nil && h == nil:
		return
	case w == nil:
		r.fault(h.at, "add paper_width", "the sheet's paper has a height and no width")
	case h == nil:
		r.fault(w.at, "add paper_height", "the sheet's paper has a width and no height")
	case !r.d.Paper.LabelsPlace.None():
		r.fault(w.at, "leave out that line, or paper_width and paper_height", "paper.labels = %q is the sheet's paper already", g.Paper)
	}
	g.Paper = ""
}

// An extent is a sheet of labels in one direction.
type extent struct {
	paper, label, gap      unit.Length
	count                  int
	margin                 *unit.Length
	paperKey, key, countAs string // as the section has them
	marginKey, long        string
}

// onPaper sees that the labels lie on the paper, and sets those in its middle
// for which the file states no margin.
func (r *reader) onPaper(path string, n *node, g *table.LabelGrid) bool {
	f := r.d.Format()
	faults := len(r.list)
	for _, e := range []extent{
		{g.PaperWidth, g.Width, g.AcrossGap, g.Columns, &g.Left, "paper_width", "width", "columns", "left", "wide"},
		{g.PaperHeight, g.Height, g.DownGap, g.Rows, &g.Top, "paper_height", "height", "rows", "top", "high"},
	} {
		if e.paper > mostPaper {
			r.fault(n.kid(e.paperKey).value, "", "`%s.%s` is at most 2 m", path, e.paperKey)
			continue
		}
		gaps := unit.Length(e.count-1) * e.gap
		used := unit.Length(e.count)*e.label + gaps
		if n.kid(e.marginKey) == nil {
			*e.margin = max(e.paper-used, 0) / 2
		}
		if *e.margin+used <= e.paper {
			continue
		}
		text := fmt.Sprintf("the labels run off the paper: %d of %s", e.count, f.Unit(e.label))
		if gaps > 0 {
			text += ", gaps of " + f.Unit(e.gap)
		}
		if *e.margin > 0 {
			text += ", margin of " + f.Unit(*e.margin)
		}
		hint := "fewer " + e.countAs + ", a smaller margin or gap, or paper_width and paper_height of the sheet"
		if free := e.paper - *e.margin - gaps; free > 0 {
			step := unit.Millimetre / 10
			if f.System == unit.Imperial {
				step = unit.Inch / 32
			}
			if most := (free / unit.Length(e.count)).Down(step); most > 0 {
				hint = fmt.Sprintf("%s = %q at most; or fewer %s", e.key, f.Text(most), e.countAs)
			}
		}
		r.fault(n.kid(e.key).value, hint, "%s make %s; the paper is %s %s", text, f.Unit(*e.margin+used), f.Unit(e.paper), e.long)
	}
	return len(r.list) == faults
}

// lettered sees that a label has room for its lettering.
func (r *reader) lettered(n *node, g table.LabelGrid) bool {
	wide, high := g.Room()
	x, y := g.Keep()
	f := r.d.Format()
	var sizes []string
	for _, room := range LabelRooms {
		if wide >= room.Width && high >= room.Height {
			return true
		}
		sizes = append(sizes, upText(f, room.Width+2*x)+" x "+upText(f, room.Height+2*y))
	}
	hint := fmt.Sprintf("the least on this sheet is %s, each width x height in %s", strings.Join(sizes, " or "), f.System.Name())
	key := "height"
	if wide < LabelRooms[0].Width {
		key = "width"
	}
	r.fault(n.kid(key).value, hint, "a label of %s x %s can't hold its lettering at the least height", f.Text(g.Width), f.Unit(g.Height))
	return false
}

// upText returns a length rounded up to what a rule shows.
func upText(f unit.Format, l unit.Length) string {
	if f.System == unit.Metric {
		return f.Text(l.Up(unit.Millimetre / 2))
	}
	return f.Text(l.Up(unit.Inch / 16))
}

// firstLabel takes the first free label of a sheet already begun, and whether
// the labels are cut apart.
func (r *reader) firstLabel(path string, n *node) {
	l := &r.d.Labels
	if k := n.kid("cut"); k != nil {
		l.Grid.Cut = k.literal == "true"
	}
	k := n.kid("first")
	if k == nil {
		return
	}
	first, ok := r.wholeNumber(path+".first", k, 1, mostAcross*mostAcross, "")
	switch each := l.Grid.Each(); {
	case !ok:
	case first > each:
		r.fault(k.value, "labels are counted row by row from the top left, from 1", "there is no label %d: the sheet holds %d", first, each)
	default:
		l.First = first
	}
}

// labelsCut sees that labels.cut is a word of the two that it can be.
func labelsCut(r *reader, path string, n *node) { r.truth(path, n) }
