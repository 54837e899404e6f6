package unit

import (
	"strconv"
	"strings"
)

// About is the sign in front of a figure that was rounded to be printed.
const About = "≈"

// Format is how lengths are printed on a drawing. The zero Format prints
// inches down to 1/64.
type Format struct {
	System System
	Finest Length // the finest step printed; zero means System.Finest()
}

// Mixed is a printed length in pieces, for fractions set one figure over the
// other: Whole and Num/Den units, in lowest terms. Num is zero where there is
// no fraction; then Den is 1. A metric figure has its decimals as Num/Den too,
// with Den a power of ten.
type Mixed struct {
	Approx, Neg     bool
	Whole, Num, Den int64
}

func (f Format) finest() Length {
	if f.Finest > 0 {
		return f.Finest
	}
	return f.System.Finest()
}

// Round returns the length that Text prints, halves rounded away from zero,
// and whether that is exactly l.
func (f Format) Round(l Length) (printed Length, exact bool) {
	printed = l.Nearest(f.finest())
	return printed, printed == l
}

// Split returns l as Text prints it, in pieces.
func (f Format) Split(l Length) Mixed {
	printed, exact := f.Round(l)
	one := int64(f.System.Unit())
	size := int64(printed.Abs())
	m := Mixed{Approx: !exact, Neg: printed < 0, Whole: size / one, Den: 1}
	rest := size % one
	if rest == 0 {
		return m
	}
	if f.System == Imperial {
		d := gcd(rest, one)
		m.Num, m.Den = rest/d, one/d
		return m
	}
	for m.Den < one*one && rest%one != 0 { // at most seven decimals: 80,000 divides 10^7
		rest *= 10
		m.Den *= 10
	}
	m.Num = rest / one
	return m
}

// Text returns l as it is printed on a drawing, without a unit: "4 7/8",
// "3/4", "24"; in millimetres "390", "123.8". A figure that had to be rounded
// has "≈" before it. Without that sign the text parses back, as a bare figure
// of the same system, to the length that Round returns.
func (f Format) Text(l Length) string {
	m := f.Split(l)
	var b strings.Builder
	if m.Approx {
		b.WriteString(About)
	}
	if m.Neg {
		b.WriteByte('-')
	}
	switch {
	case m.Num == 0:
		b.WriteString(strconv.FormatInt(m.Whole, 10))
	case f.System == Metric:
		b.WriteString(strconv.FormatInt(m.Whole, 10))
		b.WriteByte('.')
		digits := strconv.FormatInt(m.Den, 10)[1:]
		num := strconv.FormatInt(m.Num, 10)
		b.WriteString(digits[len(num):])
		b.WriteString(num)
	default:
		if m.Whole != 0 {
			b.WriteString(strconv.FormatInt(m.Whole, 10))
			b.WriteByte(' ')
		}
		b.WriteString(strconv.FormatInt(m.Num, 10))
		b.WriteByte('/')
		b.WriteString(strconv.FormatInt(m.Den, 10))
	}
	return b.String()
}

// Unit returns Text with the unit after it: "4 7/8 in".
func (f Format) Unit(l Length) string { return f.Text(l) + " " + f.System.String() }

// Both returns l in the system of f and, in brackets, in the other one:
// "4 7/8 in (123.8 mm)". The figure in brackets is there for orientation; it
// is rounded to that system's usual finest step and bears no "≈".
func (f Format) Both(l Length) string {
	other := Format{System: Metric}
	if f.System == Metric {
		other.System = Imperial
	}
	return f.Unit(l) + " (" + strings.TrimPrefix(other.Unit(l), About) + ")"
}

// Decimal returns l in millimetres as an exact decimal without trailing
// zeros: "123.825", "0.0000125".
func (l Length) Decimal() string {
	return Format{System: Metric, Finest: Base}.Text(l)
}

// String returns the exact length in millimetres with its unit, for messages
// to programmers; drawings use a Format.
func (l Length) String() string { return l.Decimal() + " mm" }

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
