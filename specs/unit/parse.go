package unit

import (
	"math/big"
	"strconv"
	"strings"
)

// Most is the greatest length that Parse reads: a kilometre. Anything that a
// design can say stays so far inside the range of Length that sums are safe.
const Most = 1_000_000 * Millimetre

// SyntaxError says why a text is no length.
type SyntaxError struct {
	Offset int    // byte offset into the text
	Msg    string // what is wrong, without the text itself
	Hint   string // what to write instead, or ""
}

func (e *SyntaxError) Error() string { return e.Msg }

// Quantity is a length with the unit it was written in.
type Quantity struct {
	Length Length
	System System // that of the unit named, or else that of bare figures
	Named  bool   // whether the text names a unit
}

// Parse reads one length, exactly. A bare figure is in the unit of the system
// given. It reads
//
//	24  24.5  3/4  24 3/4  24-3/4  ¾  24¾
//	610 mm  61 cm  0.61 m  24 in  24"  2 ft  2 ft 1 1/2 in  2' 1-1/2"
//
// with typographic primes and quotes too. Errors are of type *SyntaxError: a
// negative length, one over Most, or one that is no whole number of base units
// is refused, the last with the nearest that is.
func Parse(s string, bare System) (Length, error) {
	q, err := Scan(s, bare)
	return q.Length, err
}

// MustParse is Parse for texts that are part of a program or of its tables. It
// panics on an error.
func MustParse(s string, bare System) Length {
	l, err := Parse(s, bare)
	if err != nil {
		panic("unit: " + strconv.Quote(s) + ": " + err.Error())
	}
	return l
}

// Scan is Parse with the unit reported.
func Scan(s string, bare System) (Quantity, error) {
	if len(s) > 200 {
		return Quantity{}, &SyntaxError{Msg: "too long for a length"}
	}
	p := &parser{text: s}
	q, err := p.quantity(bare)
	if err != nil {
		return Quantity{}, err
	}
	return q, nil
}

// Number reads a pure number written as lengths are ("1.6", "3/4", "1 1/2"),
// exactly. Errors are of type *SyntaxError.
func Number(s string) (*big.Rat, error) {
	p := &parser{text: s}
	p.space()
	n, err := p.number()
	if err != nil {
		return nil, err
	}
	p.space()
	if p.at < len(s) {
		return nil, p.fail(p.at, "not part of a number", "")
	}
	return n.value, nil
}

// A unitName is a way to write a unit.
type unitName struct {
	text   string
	size   Length
	system System
}

// unitNames stands with longer names before their own beginnings.
var unitNames = []unitName{
	{"mm", Millimetre, Metric}, {"cm", 10 * Millimetre, Metric}, {"m", 1000 * Millimetre, Metric},
	{"inches", Inch, Imperial}, {"inch", Inch, Imperial}, {"in", Inch, Imperial},
	{"''", Inch, Imperial}, {`"`, Inch, Imperial}, {"″", Inch, Imperial}, {"”", Inch, Imperial}, {"“", Inch, Imperial},
	{"feet", Foot, Imperial}, {"foot", Foot, Imperial}, {"ft", Foot, Imperial},
	{"'", Foot, Imperial}, {"′", Foot, Imperial}, {"’", Foot, Imperial},
}

const unitHint = "units are mm, cm, m, in and ft"

// vulgar holds the fractions that are one character.
var vulgar = map[rune][2]int64{
	'½': {1, 2}, '⅓': {1, 3}, '⅔': {2, 3}, '¼': {1, 4}, '¾': {3, 4},
	'⅕': {1, 5}, '⅖': {2, 5}, '⅗': {3, 5}, '⅘': {4, 5}, '⅙': {1, 6}, '⅚': {5, 6},
	'⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8},
}

// parser walks over the text of one length.
type parser struct {
	text string
	at   int
}

func (p *parser) fail(at int, msg, hint string) *SyntaxError {
	return &SyntaxError{Offset: at, Msg: msg, Hint: hint}
}

func (p *parser) rest() string { return p.text[p.at:] }

func (p *parser) space() {
	p.at += len(p.rest()) - len(strings.TrimLeft(p.rest(), " \t\u00a0\u2009\u202f"))
}

// quantity reads the whole text: a number and a unit, or feet and inches.
func (p *parser) quantity(bare System) (Quantity, error) {
	p.space()
	start := p.at
	n, err := p.number()
	if err != nil {
		return Quantity{}, err
	}
	p.space()
	u, named := p.unit()
	q := Quantity{System: bare, Named: named}
	sum := new(big.Rat)
	if named {
		q.System = u.system
		sum.Mul(n.value, new(big.Rat).SetInt64(int64(u.size)))
	} else {
		sum.Mul(n.value, new(big.Rat).SetInt64(int64(bare.Unit())))
	}
	p.space()
	if named && u.size == Foot && p.at < len(p.text) {
		inches, err := p.inches()
		if err != nil {
			return Quantity{}, err
		}
		n.decimal = n.decimal || inches.decimal
		sum.Add(sum, new(big.Rat).Mul(inches.value, new(big.Rat).SetInt64(int64(Inch))))
	}
	p.space()
	if p.at < len(p.text) {
		return Quantity{}, p.unexpected(named)
	}
	q.Length, err = exactly(sum, q.System, n.decimal, start)
	return q, err
}

// inches reads what follows feet.
func (p *parser) inches() (number, error) {
	start := p.at
	n, err := p.number()
	if err != nil {
		return n, err
	}
	if n.value.Cmp(big.NewRat(12, 1)) >= 0 {
		return n, p.fail(start, "inches after feet must be fewer than 12", "")
	}
	p.space()
	at := p.at
	if u, named := p.unit(); named && u.size != Inch {
		return n, p.fail(at, "only inches can follow feet", "")
	}
	return n, nil
}

// unit reads the name of a unit, if one stands here.
func (p *parser) unit() (unitName, bool) {
	rest := p.rest()
	for _, u := range unitNames {
		if !strings.HasPrefix(rest, u.text) {
			continue
		}
		if after := rest[len(u.text):]; letter(u.text[0]) && after != "" && letter(after[0]) {
			continue // "min" is not metres
		}
		p.at += len(u.text)
		return u, true
	}
	return unitName{}, false
}

func letter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }

// unexpected says what stands where the length should have ended.
func (p *parser) unexpected(named bool) *SyntaxError {
	rest := p.rest()
	switch {
	case named:
		return p.fail(p.at, "the length should end here", "write one length, such as \"24 3/4 in\"")
	case rest[0] == ',':
		return p.fail(p.at, "a comma in a length", "write decimals with a point: 24.5")
	case rest[0] == '/':
		return p.fail(p.at, "a fraction needs two whole numbers", "such as 3/4")
	case letter(rest[0]):
		word := rest[:len(rest)-len(strings.TrimLeft(rest, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"))]
		return p.fail(p.at, "unknown unit `"+word+"`", unitHint)
	}
	return p.fail(p.at, "not part of a length", "write a length such as \"24 3/4\" or \"610 mm\"")
}
