package design

import (
	"errors"
	"fmt"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"slatwright/specs/diag"
	"slatwright/specs/unit"
)

// relations reads the list of linear relations. They may name what is stated
// further down, so they are parsed when the whole file has been seen.
func relations(r *reader, path string, n *node) {
	list := []*node{n}
	if n.shape == array {
		list = n.kids
	}
	for _, k := range list {
		s, ok := r.says(path, k)
		if !ok {
			continue
		}
		r.later = append(r.later, func() {
			w, err := parseRelation(s, r.d.Units, r.d.lengthNames())
			var syntax *unit.SyntaxError
			if errors.As(err, &syntax) {
				r.syntax(k, syntax.Offset, syntax.Hint, syntax.Msg)
				return
			}
			w.Place = k.value
			r.d.Where = append(r.d.Where, w)
		})
	}
}

// lengthNames returns the names a relation can use in this design.
func (d *Design) lengthNames() []string {
	names := LengthNames()
	for i, c := range d.Columns {
		own := "column." + strconv.Itoa(i+1)
		names = append(names, own+".gap", own+".rise")
		for j := range c.Rows {
			names = append(names, own+".row."+strconv.Itoa(j+1)+".rise")
		}
	}
	return names
}

// form is a sum of lengths with coefficients and a constant. It is pure where
// no length and no unit is in it: then fixed is a number, else base units.
type form struct {
	names []string // in the order of first use
	coef  map[string]*big.Rat
	fixed *big.Rat
	pure  bool
}

// relation is the parser of one relation:
//
//	relation = sum ( "<=" | ">=" | "=" | "~" ) sum
//	sum      = [ "-" ] product { ( "+" | "-" ) product }
//	product  = factor { ( "*" | "/" ) factor }
//	factor   = number [ unit ] | name | "(" sum ")"
type relation struct {
	text  string
	at    int
	bare  unit.System
	known []string
	depth int
}

func parseRelation(s string, bare unit.System, known []string) (Where, error) {
	p := &relation{text: s, bare: bare, known: known}
	left, err := p.sum()
	if err != nil {
		return Where{}, err
	}
	op, err := p.operator()
	if err != nil {
		return Where{}, err
	}
	right, err := p.sum()
	if err != nil {
		return Where{}, err
	}
	if p.space(); p.at < len(s) {
		return Where{}, p.fail(p.at, "the relation should end here", "write one comparison, such as rack.height <= 1.6 * rack.width")
	}
	p.lengths(&left)
	p.lengths(&right)
	left.add(right, -1)
	return left.where(op, s)
}

// million is the most that a coefficient's numerator and denominator can be.
var million = big.NewInt(1_000_000)

// where brings the form, which stands in relation op to zero, into a Where.
func (f *form) where(op, text string) (Where, error) {
	w := Where{Op: op, Text: text}
	for _, name := range f.names {
		c := f.coef[name]
		if c.Sign() == 0 {
			continue
		}
		if c.Num().CmpAbs(million) > 0 || c.Denom().Cmp(million) > 0 {
			return w, &unit.SyntaxError{Msg: "the coefficient of `" + name + "` is too fine or too large", Hint: "keep numerator and denominator within a million"}
		}
		w.Terms = append(w.Terms, Term{Num: c.Num().Int64(), Den: c.Denom().Int64(), Name: name})
	}
	if len(w.Terms) == 0 {
		return w, &unit.SyntaxError{Msg: "no length is left in the relation", Hint: "name a length such as rack.width"}
	}
	fixed := new(big.Rat).Neg(f.fixed)
	if !fixed.IsInt() {
		return w, &unit.SyntaxError{Msg: "the constant is not a whole number of " + unit.Base.String(), Hint: "multiply the relation out, so that nothing is divided"}
	}
	limit := big.NewRat(int64(unit.Most), 1)
	if new(big.Rat).Abs(fixed).Cmp(limit) > 0 {
		return w, &unit.SyntaxError{Msg: "the constant is longer than a kilometre"}
	}
	w.Const = unit.Length(fixed.Num().Int64())
	return w, nil
}

// lengths makes a length of a pure number: so many units of the file.
func (p *relation) lengths(f *form) {
	if f.pure {
		f.fixed.Mul(f.fixed, big.NewRat(int64(p.bare.Unit()), 1))
		f.pure = false
	}
}

func (f *form) add(g form, sign int64) {
	s := big.NewRat(sign, 1)
	f.fixed.Add(f.fixed, new(big.Rat).Mul(g.fixed, s))
	for _, name := range g.names {
		if f.coef[name] == nil {
			f.names = append(f.names, name)
			f.coef[name] = new(big.Rat)
		}
		f.coef[name].Add(f.coef[name], new(big.Rat).Mul(g.coef[name], s))
	}
}

func (f *form) scale(by *big.Rat) {
	f.fixed.Mul(f.fixed, by)
	for _, name := range f.names {
		f.coef[name].Mul(f.coef[name], by)
	}
}

func (p *relation) fail(at int, msg, hint string) error {
	return &unit.SyntaxError{Offset: at, Msg: msg, Hint: hint}
}

func (p *relation) space() {
	for p.at < len(p.text) && (p.text[p.at] == ' ' || p.text[p.at] == '\t') {
		p.at++
	}
}

func (p *relation) take(s string) bool {
	p.space()
	if strings.HasPrefix(p.text[p.at:], s) {
		p.at += len(s)
		return true
	}
	return false
}

func (p *relation) operator() (string, error) {
	for _, op := range [][2]string{{"<=", "<="}, {"≤", "<="}, {">=", ">="}, {"≥", ">="}, {"==", "="}, {"=", "="}, {"~", "~"}} {
		if p.take(op[0]) {
			return op[1], nil
		}
	}
	hint := "write <=, >=, = or ~ between two sums"
	if strings.HasPrefix(p.text[p.at:], "<") || strings.HasPrefix(p.text[p.at:], ">") {
		hint = "write <= for at most, >= for at least"
	}
	return "", p.fail(p.at, "a comparison should stand here", hint)
}

func (p *relation) sum() (form, error) {
	negative := p.take("-")
	f, err := p.product()
	if err != nil {
		return f, err
	}
	if negative {
		f.scale(big.NewRat(-1, 1))
	}
	for {
		sign := int64(1)
		if p.take("-") {
			sign = -1
		} else if !p.take("+") {
			return f, nil
		}
		g, err := p.product()
		if err != nil {
			return f, err
		}
		if f.pure != g.pure {
			p.lengths(&f)
			p.lengths(&g)
		}
		f.add(g, sign)
	}
}

func (p *relation) product() (form, error) {
	f, err := p.factor()
	for err == nil {
		p.space()
		at := p.at
		divide := p.take("/")
		if !divide && !p.take("*") {
			return f, nil
		}
		var g form
		if g, err = p.factor(); err == nil {
			err = p.multiply(&f, g, divide, at)
		}
	}
	return f, err
}

func (p *relation) multiply(f *form, g form, divide bool, at int) error {
	switch {
	case divide && !g.pure:
		return p.fail(at, "a relation can't divide by a length", "bring it to the other side with *")
	case divide && g.fixed.Sign() == 0:
		return p.fail(at, "division by zero", "")
	case divide:
		f.scale(new(big.Rat).Inv(g.fixed))
	case g.pure:
		f.scale(g.fixed)
	case f.pure:
		g.scale(f.fixed)
		*f = g
	default:
		return p.fail(at, "a relation can't multiply two lengths", "relations are linear, such as rack.height <= 1.6 * rack.width")
	}
	return nil
}

func (p *relation) factor() (form, error) {
	if p.take("(") {
		if p.depth++; p.depth > maxDepth {
			return form{}, p.fail(p.at, fmt.Sprintf("brackets more than %d deep", maxDepth), "")
		}
		f, err := p.sum()
		if err == nil && !p.take(")") {
			err = p.fail(p.at, "a closing bracket is missing", "")
		}
		p.depth--
		return f, err
	}
	p.space()
	start := p.at
	if name := p.name(); name != "" {
		if !slices.Contains(p.known, name) {
			return form{}, p.fail(start, "unknown length `"+name+"`", p.nearest(name))
		}
		return form{names: []string{name}, coef: map[string]*big.Rat{name: big.NewRat(1, 1)}, fixed: new(big.Rat)}, nil
	}
	return p.figure()
}

// nearest returns the hint for a name that is no length.
func (p *relation) nearest(name string) string {
	if slices.Contains([]string{"rack.columns", "rack.rows"}, name) {
		return "it is a count; relations join lengths"
	}
	return diag.DidYouMean(name, p.known)
}

// name reads a dotted name: a letter, then letters, figures, "_" and ".".
func (p *relation) name() string {
	start := p.at
	for p.at < len(p.text) {
		c := p.text[p.at]
		small := c|0x20 >= 'a' && c|0x20 <= 'z'
		if !small && (p.at == start || c != '_' && c != '.' && (c < '0' || c > '9')) {
			break
		}
		p.at++
	}
	return p.text[start:p.at]
}

// figure reads a number, with its unit if it has one: the longest stretch from
// here that is a length, or a pure number.
func (p *relation) figure() (form, error) {
	start := p.at
	end := start
	for end < len(p.text) && !strings.ContainsRune("*+()<>=~", rune(p.text[end])) {
		end++
	}
	for ; end > start; end-- {
		stretch := p.text[start:end]
		whole, part, dash := strings.Cut(stretch, "-")
		if _, err := unit.Number(whole); err != nil {
			dash = false // behind feet it can but join: 2' 1-1/2"
		}
		if n, err := unit.Number(stretch); err == nil {
			if dash {
				return form{}, p.either(start, whole, part)
			}
			p.at = end
			return form{coef: map[string]*big.Rat{}, fixed: n, pure: true}, nil
		}
		if q, err := unit.Scan(stretch, p.bare); err == nil && q.Named {
			if dash {
				return form{}, p.either(start, whole, part)
			}
			p.at = end
			return form{coef: map[string]*big.Rat{}, fixed: big.NewRat(int64(q.Length), 1)}, nil
		}
	}
	return form{}, p.fail(start, "a length or a number should stand here", "such as rack.width, 1.6 or 24 in")
}

// either refuses a dash between figures: elsewhere in a file it joins a whole and a
// fraction, but a relation also takes away.
func (p *relation) either(start int, whole, part string) error {
	whole, part = strings.TrimSpace(whole), strings.TrimSpace(part)
	return p.fail(start, "a dash between figures may join them or take away", fmt.Sprintf("write %s %s, or %s - %s", whole, part, whole, part))
}
