package design

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"slatwright/specs/unit"
)

// maxLength is the most that a design can state: nobody builds a rack of over
// twenty metres.
const maxLength = 20_000 * unit.Millimetre

// signs are the ways to begin a statement, longer ones before their own
// beginnings. A sign with a hint is not a way, but a likely slip.
var signs = []struct {
	text string
	kind Kind
	hint string
}{
	{"<=", AtMost, ""}, {"≤", AtMost, ""}, {">=", AtLeast, ""}, {"≥", AtLeast, ""}, {"~", Near, ""},
	{"<", 0, `write "<=" for at most`}, {">", 0, `write ">=" for at least`}, {"=", 0, "leave the sign out for exactly"},
}

// said is a statement's text cut into its sign and its one or two figures.
type said struct {
	kind       Kind
	lo, hi     string
	loAt, hiAt int // where they begin
}

// cut cuts a statement up. The error is a *unit.SyntaxError.
func cut(s string) (said, error) {
	rest := strings.TrimLeft(s, " \t")
	at := len(s) - len(rest)
	for _, sign := range signs {
		if !strings.HasPrefix(rest, sign.text) {
			continue
		}
		if sign.hint != "" {
			return said{}, &unit.SyntaxError{Offset: at, Msg: "`" + sign.text + "` says nothing here", Hint: sign.hint}
		}
		at += len(sign.text)
		return said{kind: sign.kind, lo: s[at:], hi: s[at:], loAt: at, hiAt: at}, nil
	}
	if i := strings.Index(s, ".."); i >= 0 {
		return said{kind: Between, lo: s[:i], hi: s[i+2:], hiAt: i + 2}, nil
	}
	return said{kind: Exact, lo: s, hi: s}, nil
}

// length reads a statement about a length. A length that makes no sense at
// zero is refused there unless zero is set.
func (r *reader) length(path string, n *node, zero bool) (Length, bool) {
	l := Length{Name: path, Text: statementText(path, n), Place: n.value}
	var err error
	switch n.shape {
	case number:
		l.Kind = Exact
		l.Lo, err = figure(n.literal, r.d.Units)
		l.Hi, l.Unit = l.Lo, r.d.Units
	case words:
		if _, ok := r.says(path, n); !ok {
			return l, false
		}
		err = l.parse(n.text, r.d.Units)
	default:
		r.fault(n.value, "write a length such as \"24 3/4\" or \"610 mm\"", "`%s` is a length, not %s", path, n.shape)
		return l, false
	}
	if err == nil {
		err = l.check(zero)
	}
	var syntax *unit.SyntaxError
	if errors.As(err, &syntax) {
		r.syntax(n, syntax.Offset, syntax.Hint, syntax.Msg)
		return l, false
	}
	return l, true
}

// figure reads a TOML number as a length: its text, never its float.
func figure(literal string, bare unit.System) (unit.Length, error) {
	plain := strings.ReplaceAll(strings.TrimPrefix(literal, "+"), "_", "")
	switch low := strings.ToLower(plain); {
	case strings.HasSuffix(low, "inf"), strings.HasSuffix(low, "nan"):
		return 0, &unit.SyntaxError{Msg: "`" + literal + "` is no length"}
	case strings.HasPrefix(low, "0x"), strings.HasPrefix(low, "0o"), strings.HasPrefix(low, "0b"):
		return 0, &unit.SyntaxError{Msg: "a length is written in decimal figures"}
	case strings.Contains(low, "e"):
		return 0, &unit.SyntaxError{Msg: "a length is written without an exponent", Hint: "write the figure out, such as 24.5"}
	}
	return unit.Parse(plain, bare)
}

// parse reads the statement. In a range the unit may stand at the end only.
func (l *Length) parse(s string, bare unit.System) error {
	c, err := cut(s)
	if err != nil {
		return err
	}
	l.Kind = c.kind
	hi, err := unit.Scan(c.hi, bare)
	if err != nil {
		return shift(err, c.hiAt)
	}
	if hi.Named {
		bare = hi.System
	}
	low := c.lo
	if c.kind == Between && hi.Named {
		low = borrow(low, c.hi, bare)
	}
	lo, err := unit.Scan(low, bare)
	if err != nil {
		return shift(err, c.loAt)
	}
	l.Lo, l.Hi, l.Unit = lo.Length, hi.Length, hi.System
	return nil
}

// borrow gives the unit at the end of hi to lo, where lo names none, so that
// "61 .. 65 cm" is in centimetres throughout.
func borrow(lo, hi string, bare unit.System) string {
	q, err := unit.Scan(lo, bare)
	if err != nil || q.Named {
		return lo
	}
	for _, name := range []string{"cm", "mm", "m", "ft"} {
		if strings.HasSuffix(strings.TrimRight(hi, " "), name) {
			return lo + name
		}
	}
	return lo // inches, or feet and inches: bare figures are inches by now
}

func shift(err error, by int) error {
	var syntax *unit.SyntaxError
	if errors.As(err, &syntax) {
		return &unit.SyntaxError{Offset: syntax.Offset + by, Msg: syntax.Msg, Hint: syntax.Hint}
	}
	return err
}

// check sees that the statement can be meant.
func (l *Length) check(zero bool) error {
	f := unit.Format{System: l.Unit}
	switch {
	case max(l.Lo, l.Hi) > maxLength:
		return &unit.SyntaxError{Msg: "more than " + f.Unit(maxLength.Down(l.Unit.Unit())) + " is no rack"}
	case l.Kind == Between && l.Lo > l.Hi:
		return &unit.SyntaxError{Msg: "the range is upside down", Hint: "write the lesser end first"}
	case !zero && l.Hi == 0 && l.Kind != AtLeast:
		return &unit.SyntaxError{Msg: "`" + l.Name + "` must be more than zero"}
	}
	if l.Kind == AtMost {
		l.Lo = 0
	}
	if l.Kind == AtLeast {
		l.Hi = 0
	}
	return nil
}

// countHint shows the ways to state a count.
const countHint = `write 5, "3 .. 6", "<= 6", "~ 5" or "most"`

// count reads a statement about a count from 1 to most.
func (r *reader) count(path string, n *node, most int) {
	c := Count{Name: path, Text: statementText(path, n), Place: n.value}
	var err error
	switch n.shape {
	case number:
		c.Kind = Exact
		c.Lo, err = whole(n.literal, most)
		c.Hi = c.Lo
	case words:
		if _, ok := r.says(path, n); !ok {
			return
		}
		err = c.parse(n.text, most)
	default:
		r.fault(n.value, countHint, "`%s` is a count, not %s", path, n.shape)
		return
	}
	var syntax *unit.SyntaxError
	if errors.As(err, &syntax) {
		r.syntax(n, syntax.Offset, syntax.Hint, syntax.Msg)
		return
	}
	r.d.Counts = append(r.d.Counts, c)
}

func (c *Count) parse(s string, most int) error {
	if strings.TrimSpace(s) == "most" {
		c.Kind = Most
		return nil
	}
	p, err := cut(s)
	if err != nil {
		return err
	}
	c.Kind = p.kind
	if c.Hi, err = whole(p.hi, most); err != nil {
		return shift(err, p.hiAt)
	}
	if c.Lo, err = whole(p.lo, most); err != nil {
		return shift(err, p.loAt)
	}
	switch {
	case c.Lo > c.Hi:
		return &unit.SyntaxError{Msg: "the range is upside down", Hint: "write the lesser end first"}
	case c.Kind == AtMost:
		c.Lo = 0
	case c.Kind == AtLeast:
		c.Hi = 0
	}
	return nil
}

// whole reads a whole number from 1 to most.
func whole(s string, most int) (int, error) {
	plain := strings.ReplaceAll(strings.TrimSpace(s), "_", "")
	at := len(s) - len(strings.TrimLeft(s, " \t"))
	n, err := strconv.Atoi(plain)
	if errors.Is(err, strconv.ErrRange) {
		n = most + 1
	} else if err != nil {
		return 0, &unit.SyntaxError{Offset: at, Msg: "not a whole number", Hint: countHint}
	}
	if n < 1 || n > most {
		return 0, &unit.SyntaxError{Offset: at, Msg: fmt.Sprintf("must be from 1 to %d", most)}
	}
	return n, nil
}
