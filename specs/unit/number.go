package unit

import (
	"math/big"
	"strings"
	"unicode/utf8"
)

// number is what stands before a unit.
type number struct {
	value   *big.Rat
	decimal bool // written with a decimal point
}

const slashes = "/\u2044\u2215" // solidus, fraction slash, division slash

// number reads a whole number, a decimal, a fraction or a mixed number.
func (p *parser) number() (number, error) {
	start := p.at
	switch rest := p.rest(); {
	case rest == "":
		return number{}, p.fail(start, "a length is missing", "write a length such as \"24 3/4\" or \"610 mm\"")
	case strings.HasPrefix(rest, "-"), strings.HasPrefix(rest, "−"):
		return number{}, p.fail(start, "a length must not be negative", "")
	}
	if f, ok := p.vulgar(); ok {
		return number{value: f}, nil
	}
	whole := p.digits()
	if strings.HasPrefix(p.rest(), ".") && !strings.HasPrefix(p.rest(), "..") {
		return p.decimals(start, whole)
	}
	if whole == "" {
		return number{}, p.fail(start, "not a length", "write a length such as \"24 3/4\" or \"610 mm\"")
	}
	if ok, err := p.slash(start); err != nil || ok {
		if err != nil {
			return number{}, err
		}
		f, err := p.fraction(start, whole)
		return number{value: f}, err
	}
	value := rational(whole)
	f, err := p.afterWhole()
	if err != nil {
		return number{}, err
	}
	if f != nil {
		value.Add(value, f)
	}
	return number{value: value}, nil
}

// decimals reads the point and the digits behind it.
func (p *parser) decimals(start int, whole string) (number, error) {
	p.at++
	part := p.digits()
	if part == "" {
		return number{}, p.fail(p.at-1, "digits are missing after the decimal point", "")
	}
	value, ok := new(big.Rat).SetString("0" + whole + "." + part)
	if !ok {
		return number{}, p.fail(start, "not a length", "")
	}
	return number{value: value, decimal: true}, nil
}

// afterWhole reads the fraction of a mixed number, if one stands here: after a
// space or a hyphen, or one character such as ¾. It returns nil and leaves the
// place as it was where there is none.
func (p *parser) afterWhole() (*big.Rat, error) {
	before := p.at
	if f, ok := p.vulgar(); ok {
		return f, nil
	}
	p.space()
	spaced := p.at > before
	if !spaced {
		for _, hyphen := range []string{"-", "\u2010", "\u2011"} {
			if strings.HasPrefix(p.rest(), hyphen) {
				p.at += len(hyphen)
				spaced = true
				break
			}
		}
	}
	if f, ok := p.vulgar(); ok {
		return f, nil
	}
	start := p.at
	if num := p.digits(); spaced && num != "" {
		ok, err := p.slash(start)
		if err != nil {
			return nil, err
		}
		if ok {
			f, err := p.fraction(start, num)
			if err == nil && f.Cmp(big.NewRat(1, 1)) >= 0 {
				return nil, p.fail(start, "the fraction of a mixed number must be less than 1", "")
			}
			return f, err
		}
	}
	p.at = before
	return nil, nil
}

// slash reads a fraction slash with digits behind it; start is where the
// fraction began. A slash with nothing behind it is an error.
func (p *parser) slash(start int) (bool, error) {
	r, size := utf8.DecodeRuneInString(p.rest())
	if p.rest() == "" || !strings.ContainsRune(slashes, r) {
		return false, nil
	}
	next := p.text[p.at+size:]
	if next == "" || next[0] < '0' || next[0] > '9' {
		return false, p.fail(start, "the fraction has no denominator", "such as 3/4")
	}
	p.at += size
	return true, nil
}

// fraction reads the denominator under the numerator given.
func (p *parser) fraction(start int, num string) (*big.Rat, error) {
	den := rational(p.digits())
	if den.Sign() == 0 {
		return nil, p.fail(start, "the denominator is zero", "")
	}
	return den.Quo(rational(num), den), nil
}

func (p *parser) vulgar() (*big.Rat, bool) {
	r, size := utf8.DecodeRuneInString(p.rest())
	f, ok := vulgar[r]
	if !ok {
		return nil, false
	}
	p.at += size
	return big.NewRat(f[0], f[1]), true
}

func (p *parser) digits() string {
	from := p.at
	for p.at < len(p.text) && p.text[p.at] >= '0' && p.text[p.at] <= '9' {
		p.at++
	}
	return p.text[from:p.at]
}

// rational returns the value of a run of decimal digits.
func rational(digits string) *big.Rat {
	n, _ := new(big.Int).SetString("0"+digits, 10)
	return new(big.Rat).SetInt(n)
}

// exactly returns sum, in base units, as a Length. at is where the length
// stands in the text.
func exactly(sum *big.Rat, system System, decimal bool, at int) (Length, error) {
	if sum.Cmp(new(big.Rat).SetInt64(int64(Most))) > 0 {
		return 0, &SyntaxError{Offset: at, Msg: "longer than a kilometre"}
	}
	if sum.IsInt() {
		return Length(sum.Num().Int64()), nil
	}
	return 0, &SyntaxError{
		Offset: at,
		Msg:    "too fine: not a whole number of " + Base.String(),
		Hint:   "the nearest that can be measured is " + nearest(sum, system, decimal),
	}
}

// nearest returns the length nearest to sum that can be written: in 1/128 in,
// for decimals in 0.001 in, and in millimetres in base units.
func nearest(sum *big.Rat, system System, decimal bool) string {
	step := Base
	switch {
	case system == Imperial && decimal:
		step = Inch / 1000
	case system == Imperial:
		step = Inch / 128
	}
	steps := new(big.Rat).Quo(sum, new(big.Rat).SetInt64(int64(step)))
	steps.Add(steps, big.NewRat(1, 2))
	l := step * Length(new(big.Int).Quo(steps.Num(), steps.Denom()).Int64())
	if system == Imperial && decimal {
		thousandths := int64(l / step)
		return new(big.Rat).SetFrac64(thousandths, 1000).FloatString(3) + " in"
	}
	return Format{System: system, Finest: step}.Unit(l)
}
