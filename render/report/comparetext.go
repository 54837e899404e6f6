package report

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/revision"
	"slatwright/render/reprint"
	"slatwright/specs/unit"
	"slatwright/specs/word"
)

// Text returns the comparison for people.
func (c Comparison) Text() []byte {
	var w bytes.Buffer
	fmt.Fprintf(&w, "old  %s: %s\nnew  %s: %s\n", c.OldPath, Summary(c.Old), c.NewPath, Summary(c.New))
	section(&w, "Lines that changed", c.statementLines(), "none")
	section(&w, "Counts", c.countLines(), "as before")
	section(&w, "Solved lengths", c.lengthLines(), "as before")
	section(&w, "Checks", c.checkLines(), "as before")
	section(&w, "Parts already cut for the old rack", c.partLines(), "none")
	section(&w, "Sheets", c.sheetLines(), "none")
	return w.Bytes()
}

// section prints a heading with its lines, or with a word where there are none.
func section(w io.Writer, heading string, lines []string, none string) {
	if len(lines) == 0 {
		fmt.Fprintf(w, "\n%s: %s\n", heading, none)
		return
	}
	fmt.Fprintf(w, "\n%s\n", heading)
	for _, l := range lines {
		fmt.Fprintf(w, "  %s\n", l)
	}
}

func (c Comparison) statementLines() []string {
	var out []string
	for _, s := range c.Statements {
		switch {
		case s.Old == nil:
			out = append(out, fmt.Sprintf("line %d, new: %s = %s", s.New.Place.Line, s.New.Name, s.New.Value))
		case s.New == nil:
			out = append(out, fmt.Sprintf("line %d of the old file, gone: %s = %s", s.Old.Place.Line, s.Old.Name, s.Old.Value))
		default:
			out = append(out, fmt.Sprintf("line %d: %s = %s, was %s (line %d)", s.New.Place.Line, s.New.Name, s.New.Value, s.Old.Value, s.Old.Place.Line))
		}
	}
	return out
}

func (c Comparison) countLines() []string {
	var out []string
	for _, n := range c.Counts {
		out = append(out, fmt.Sprintf("%s %d -> %d", n.Name, n.Old, n.New))
	}
	return out
}

func (c Comparison) lengthLines() []string {
	var out []string
	for _, l := range c.Lengths {
		out = append(out, fmt.Sprintf("%s  %s -> %s", l.Name, figure(c.Old.Format, l.Old), figure(c.New.Format, l.New)))
	}
	return out
}

// figure prints a solved length, a dash where there is none.
func figure(f unit.Format, l *rack.Solved) string {
	if l == nil {
		return "-"
	}
	return f.Unit(l.Value)
}

func (c Comparison) checkLines() []string {
	var out []string
	for _, x := range c.Checks {
		was, is := "not judged", "no longer judged"
		if x.Old != nil {
			was = string(x.Old.Status)
		}
		about := x.Old
		if x.New != nil {
			is, about = string(x.New.Status), x.New
		}
		text := fmt.Sprintf("%s, %s: %s -> %s", about.Name, about.Where, was, is)
		if x.New != nil && x.New.Status != check.OK {
			text += ": " + x.New.Says
		}
		out = append(out, text)
	}
	return out
}

func (c Comparison) partLines() []string {
	var out []string
	if c.Parts.WoodChanged {
		out = append(out, fmt.Sprintf("the wood is %s, was %s: no old part serves", c.New.Design.Wood.Species.Name, c.Old.Design.Wood.Species.Name))
	}
	for _, m := range c.Parts.Moves {
		out = append(out, c.moveLine(m))
	}
	return out
}

// moveLine says what becomes of some parts. Parts are named with their marks;
// those of the old rack are told apart by "old".
func (c Comparison) moveLine(m revision.Move) string {
	switch m.Use {
	case revision.Serves:
		return fmt.Sprintf("%s: %s still%s", named(m.New), word.Number(m.Count, "serves", "serve"), fromOther(m)+measuredText(m))
	case revision.Remark:
		return fmt.Sprintf("%s: %s the size, to be marked out anew%s; %s", named(m.New), word.Number(m.Count, "has", "have"), fromOther(m)+measuredText(m), undrilled)
	case revision.Recut:
		var todo []string
		for _, cut := range m.Cuts {
			todo = append(todo, c.cutText(cut, m.New.Size))
		}
		return fmt.Sprintf("%s: %d from old %s (%s): %s; %s", named(m.New), m.Count, named(m.Old), c.size(c.Old, m.Old.Size), strings.Join(todo, ", "), undrilled)
	case revision.Make:
		return fmt.Sprintf("%s: %d to make, %s", named(m.New), m.Count, c.size(c.New, m.New.Size))
	}
	return fmt.Sprintf("left over: %d old %s, %s", m.Count, named(m.Old), c.size(c.Old, m.Old.Size))
}

// undrilled goes with every use of a part that is fixed at other places.
const undrilled = "only what is not drilled, nailed or glued yet"

func named(l *revision.Lot) string { return l.Mark + " " + l.Name }

// measuredText says where the old part was drawn of another size than it has.
func measuredText(m revision.Move) string {
	if m.Old.Measured {
		return ", as measured"
	}
	return ""
}

// fromOther names the old part, where it was another one.
func fromOther(m revision.Move) string {
	if named(m.Old) == named(m.New) {
		return ""
	}
	return ", from old " + named(m.Old)
}

// cutText says how an old part is brought to its new size.
func (c Comparison) cutText(cut revision.Cut, to revision.Size) string {
	print := c.New.Format.Unit
	switch cut {
	case revision.ToThickness:
		return "plane to " + print(to.Small)
	case revision.ToWidth:
		return "rip to " + print(to.Large)
	case revision.ToLength:
		return "crosscut to " + print(to.Length)
	}
	return "ease the edges to " + print(to.Eased)
}

// size prints a part's size in its own rack's unit.
func (c Comparison) size(r *rack.Rack, s revision.Size) string {
	return fmt.Sprintf("%s x %s x %s", r.Format.Text(s.Small), r.Format.Text(s.Large), r.Format.Unit(s.Length))
}

// sheetLines tells runs of pages with one verdict, file by file: "reprint  6-13
// Section; Exploded view".
func (c Comparison) sheetLines() []string {
	var out []string
	file := ""
	for i := 0; i < len(c.Sheets); {
		j := i + 1
		for j < len(c.Sheets) && follows(c.Sheets[j-1], c.Sheets[j]) {
			j++
		}
		if c.Sheets[i].File != file {
			file = c.Sheets[i].File
			out = append(out, file)
		}
		out = append(out, runLine(c.Sheets[i:j]))
		i = j
	}
	return out
}

// follows reports whether sheet b goes on a run that a ends.
func follows(a, b reprint.Sheet) bool {
	if a.File != b.File || a.Verdict != b.Verdict {
		return false
	}
	switch a.Verdict {
	case reprint.Void:
		return b.Old == a.Old+1
	case reprint.Add:
		return b.New == a.New+1
	}
	return b.New == a.New+1 && b.Old == a.Old+1
}

func runLine(run []reprint.Sheet) string {
	a, z := run[0], run[len(run)-1]
	pages := pageRun(a.New, z.New)
	old := pageRun(a.Old, z.Old)
	switch {
	case a.Verdict == reprint.Void:
		pages = "old " + old
	case a.Old != 0 && a.Old != a.New:
		pages += " (was " + old + ")"
	}
	var titles []string
	for _, s := range run {
		title, _, _ := strings.Cut(s.Title, ":")
		if !slices.Contains(titles, title) {
			titles = append(titles, title)
		}
	}
	return fmt.Sprintf("  %-7s  %-17s  %s", a.Verdict, pages, strings.Join(titles, "; "))
}

func pageRun(from, to int) string {
	if from == to {
		return strconv.Itoa(from)
	}
	return fmt.Sprintf("%d-%d", from, to)
}
