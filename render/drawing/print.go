package drawing

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// Fprint writes the sheet as text, in millimetres to the micrometre: a line
// for the sheet, one for each mark in order, then one for each dimension and
// each item record. It returns the writer's first error.
func (s *Sheet) Fprint(w io.Writer) error {
	b := bufio.NewWriter(w) // keeps its first error for Flush
	fmt.Fprintf(b, "sheet %s %q %s x %s frame %s .. %s", s.Name, s.Title, mm(s.W), mm(s.H), at(s.Frame.Min), at(s.Frame.Max))
	if s.FullSize {
		b.WriteString(" fullsize")
	}
	b.WriteByte('\n')
	for _, m := range s.Marks {
		b.WriteString(describe(m))
		b.WriteByte('\n')
	}
	for _, d := range s.Dims {
		fmt.Fprintf(b, "dim chain %d %s %q x %d value %d %s .. %s scale %d:%d", d.Chain, d.Role, d.Printed,
			max(d.Times, 1), int64(d.Value), at(d.From), at(d.To), d.ScaleNum, d.ScaleDen)
		if d.Broken {
			b.WriteString(" broken")
		}
		if len(d.Sum) > 0 {
			b.WriteString(" = " + d.Sum.String())
		}
		b.WriteByte('\n')
	}
	for _, r := range s.Items {
		fmt.Fprintf(b, "item %q %s %s\n", r.Mark, r.Kind, at(r.Where))
	}
	return b.Flush()
}

// describe returns a mark as one line.
func describe(m Mark) string {
	var b strings.Builder
	c, group, margin := m.base()
	fmt.Fprintf(&b, "%s %s", kind(m), c)
	if group != 0 {
		fmt.Fprintf(&b, " g%d", group)
	}
	if margin {
		b.WriteString(" margin")
	}
	switch m := m.(type) {
	case Path:
		describePath(&b, m)
	case Circle:
		describeFill(&b, m.Fill)
		fmt.Fprintf(&b, " %s r %s", at(m.Centre), mm(m.R))
	case Text:
		fmt.Fprintf(&b, " %s h %s", at(m.At), mm(m.Height))
		if m.Turn != 0 {
			fmt.Fprintf(&b, " turn %d", m.Turn)
		}
		fmt.Fprintf(&b, " %s", m.Align)
		if m.Bold {
			b.WriteString(" bold")
		}
		if m.Table {
			b.WriteString(" table")
		}
		b.WriteByte(' ')
		describeRuns(&b, m.Runs)
	}
	return b.String()
}

// describeRuns writes runs so that a stacked fraction is seen to be one.
func describeRuns(b *strings.Builder, runs []Run) {
	var s strings.Builder
	for _, r := range runs {
		s.WriteString(r.Text)
		if r.Num != "" {
			s.WriteString("{" + r.Num + "|" + r.Den + "}")
		}
	}
	b.WriteString(strconv.Quote(s.String()))
}

func describePath(b *strings.Builder, p Path) {
	describeFill(b, p.Fill)
	b.WriteString(" " + at(p.Start))
	for _, s := range p.Segs {
		if s.Curve {
			b.WriteString(" C " + at(s.C1) + " " + at(s.C2) + " " + at(s.To))
			continue
		}
		b.WriteString(" L " + at(s.To))
	}
	if p.Closed {
		b.WriteString(" Z")
	}
}

func describeFill(b *strings.Builder, f Fill) {
	if f != NoFill {
		b.WriteString(" " + f.String())
	}
}

// mm returns a length in millimetres with three decimals, "-0.000" excluded.
func mm(u Um) string {
	sign := ""
	if u < 0 {
		sign, u = "-", -u
	}
	return fmt.Sprintf("%s%d.%03d", sign, u/MM, u%MM)
}

// at returns a point in millimetres.
func at(p Point) string { return mm(p.X) + "," + mm(p.Y) }
