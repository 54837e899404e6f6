package report

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"slatwright/geometry/cutting"
	"slatwright/geometry/quote"
	"slatwright/geometry/saw"
	"slatwright/specs/unit"
)

// CutText returns a cutting plan in words: what to buy, how each board is cut,
// the settings in their order, what is left over, and what to look out for.
func CutText(p *saw.Plan) []byte {
	var b bytes.Buffer
	w := sawWriter{&b, p}
	w.orders()
	w.needs()
	w.layouts()
	w.glueUps()
	w.steps()
	w.offcuts()
	w.cautions()
	w.weights()
	return b.Bytes()
}

// sawWriter writes the blocks of a plan.
type sawWriter struct {
	w io.Writer
	p *saw.Plan
}

func (w sawWriter) line(format string, args ...any) { fmt.Fprintf(w.w, format+"\n", args...) }

// text prints a length without its unit, since a block's title names it.
func (w sawWriter) text(l unit.Length) string { return w.p.Text(l) }

func (w sawWriter) size(t, wide, long unit.Length) string {
	return w.text(t) + " x " + w.text(wide) + " x " + w.text(long)
}

func (w sawWriter) orders() {
	for _, o := range w.p.Orders {
		name := strings.TrimSpace(o.Name + "  " + o.Rack.Design.Title)
		if o.Short != "" && o.Short != o.Name {
			name = o.Short + "  " + name
		}
		if name == "" {
			name = o.Rack.Design.Source.Name
		}
		w.line("%s", name)
	}
	for _, n := range w.p.Notes {
		w.line("  %s", n)
	}
}

// needs lists the boards to buy and those to take, with what they cost.
func (w sawWriter) needs() {
	w.line("\nboards, %s, sizes in %s", w.p.Species.Name, w.p.Format.System.Name())
	t := tabwriter.NewWriter(w.w, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "  count\tboard\tsize\teach\tprice\tyield")
	for _, n := range w.p.Needs() {
		each, sum := quote.Hundredths(n.Board.Price), quote.Hundredths(n.Board.Price*int64(n.Count))
		if n.Board.OnHand > 0 {
			each, sum = "on hand", ""
		}
		fmt.Fprintf(t, "  %d\t%s\t%s\t%s\t%s\t%d %%\n", n.Count, n.Board.Nominal, w.size(n.Board.Thickness, n.Board.Width, n.Board.Length), each, sum, n.Yield)
	}
	t.Flush()
	switch {
	case w.p.Proven:
		w.line("  total %s, proven: no plan costs less", quote.Hundredths(w.p.Cost))
	default:
		w.line("  total %s, %s", quote.Hundredths(w.p.Cost), quote.Gap(w.p))
	}
	if w.p.Examples() {
		w.line("  the prices are examples: state what your yard asks as price in [[board]]")
	}
	if saved := quote.Saved(w.p); saved != "" {
		w.line("  %s", saved)
	}
}

// layouts tells board by board how they are cut.
func (w sawWriter) layouts() {
	w.line("\nboard by board, in cutting order")
	for i, b := range w.p.Boards {
		alike := ""
		if b.Count > 1 {
			alike = fmt.Sprintf(", %d cut alike", b.Count)
		}
		first := ""
		switch b.Process {
		case cutting.Planed:
			first = fmt.Sprintf(", planed to %s first", w.p.Unit(b.Thickness))
		case cutting.Resawn:
			first = fmt.Sprintf(", resawn into %d leaves first, planed to %s", b.Leaves, w.p.Unit(b.Thickness))
		}
		w.line("%3d  %s, %s%s%s, yield %d %%", i+1, b.Board.Nominal, w.p.Unit(b.Board.Length), alike, first, w.p.Yield(i))
		w.sections(b)
	}
}

// sections tells a board's sections with their strips, equal neighbours counted.
func (w sawWriter) sections(b cutting.BoardPlan) {
	for i := 0; i < len(b.Sections); {
		say := w.section(b.Sections[i])
		n := 0
		for leaf := b.Sections[i].Leaf; i < len(b.Sections) && b.Sections[i].Leaf == leaf && w.section(b.Sections[i]) == say; {
			i, n = i+1, n+1
		}
		leaf := ""
		if b.Leaves > 1 {
			leaf = fmt.Sprintf("leaf %d: ", b.Sections[i-1].Leaf+1)
		}
		w.line("       %s%d x %s", leaf, n, say)
	}
}

func (w sawWriter) section(s cutting.Section) string {
	if !s.Ripped {
		return fmt.Sprintf("%s, both edges kept: %s", w.text(s.Length), w.p.Content(s.Strips[0]))
	}
	var strips []string
	for i := 0; i < len(s.Strips); {
		say := w.text(s.Strips[i].Width) + ": " + w.p.Content(s.Strips[i])
		n := 0
		for i < len(s.Strips) && w.text(s.Strips[i].Width)+": "+w.p.Content(s.Strips[i]) == say {
			i, n = i+1, n+1
		}
		strips = append(strips, fmt.Sprintf("%d x %s", n, say))
	}
	length := w.text(s.Length)
	if s.Whole {
		length = "the rest, " + length
	}
	return fmt.Sprintf("%s, ripped to %s", length, strings.Join(strips, "; "))
}

func (w sawWriter) glueUps() {
	if len(w.p.GlueUps) == 0 {
		return
	}
	w.line("\nglued up")
	for _, g := range w.p.GlueUps {
		x := cutting.Placed{Order: g.Order, Mark: g.Mark}
		w.line("  %d x %s %s: %d staves of %s x %s, jointed, glued, then trimmed to %s x %s", g.Count, w.p.Label(x), g.Name, g.Staves,
			w.text(g.StaveWidth), w.text(g.StaveLength), w.text(g.Width), w.text(g.Length))
	}
}

// steps lists the settings. A caution that was said at an operation is not said
// again at its next setting.
func (w sawWriter) steps() {
	w.line("\nsaw settings, one at a time, in this order")
	w.line("  %s", strings.ToLower(w.p.Losses()[:1])+w.p.Losses()[1:])
	said := map[string]bool{}
	for i, s := range w.p.Steps {
		care := ""
		if s.Critical {
			care = "CARE  "
		}
		at := ""
		if s.HasStop {
			at = " " + w.p.Unit(s.Setting.At)
		}
		from := ""
		if len(s.Boards) > 0 {
			from = ", from " + saw.Named(s.Boards)
		}
		if s.Gang > 1 {
			from += fmt.Sprintf(", up to %d side by side", s.Gang)
		}
		w.line("%4s  %s%s%s: %s%s", saw.StepName(i), care, saw.Action(s), at, w.p.Yields(s), from)
		for _, c := range s.Cautions {
			if key := string(s.Operation) + c; !said[key] {
				said[key] = true
				w.line("       %s", c)
			}
		}
	}
	w.line("  the instructions of the saw's maker go before all of this")
}

func (w sawWriter) offcuts() {
	list := w.p.Leftovers()
	if len(list) == 0 {
		return
	}
	w.line("\noffcuts worth keeping")
	for _, o := range list {
		w.line("  %d x %s, %s", o.Count, o.Nominal, w.size(o.Thickness, o.Width, o.Length))
	}
}

func (w sawWriter) cautions() {
	list := w.p.Cautions()
	if len(list) == 0 {
		return
	}
	w.line("\nlook out")
	for _, c := range list {
		if len(c.Boards) == 0 {
			w.line("  %s", c.Text)
			continue
		}
		w.line("  %s: %s", saw.Named(c.Boards), c.Text)
	}
}

// weights tells what has to be carried, where the wood's density is known.
func (w sawWriter) weights() {
	boards := w.p.BoardGrams()
	if boards == 0 {
		return
	}
	w.line("\nweights, %s at 12 %% moisture", w.p.Species.Name)
	w.line("  all boards %s", w.p.Mass(boards))
	for _, o := range w.p.Orders {
		name := o.Name
		if name == "" {
			name = "the rack"
		}
		w.line("  the parts of %s %s", name, w.p.Mass(w.p.PartGrams(o.Name)))
	}
}
