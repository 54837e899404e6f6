package typeface

import (
	"strings"
	"unicode"
)

// A Run is a stretch of lettering: plain text, and after it a stacked fraction
// where Num is not empty. "38 7/16 in" is the run 38 with 7 over 16 and then
// the run " in".
type Run struct {
	Text     string
	Num, Den string
}

// Plain returns s as it stands, fractions with a slash included.
func Plain(s string) []Run { return []Run{{Text: s}} }

// maxDenominator is the finest division a shop rule is read to.
const maxDenominator = 128

// Figure returns s with its inch fractions stacked: "38 7/16\"" becomes 38, a
// stack of 7 over 16, and the inch mark. A fraction is less than one, in
// lowest terms or not, over a power of two up to 128, and stands by itself or
// after a whole number and a space or a hyphen; anything else, such as a scale
// of 1:4, a date or a mixed word, stays plain.
func Figure(s string) []Run {
	var runs []Run
	rest := 0 // start of what is not yet in a run
	for i := 0; i < len(s); i++ {
		num, den, ok := fractionAt(s, i)
		if !ok {
			continue
		}
		runs = append(runs, Run{Text: whole(s[rest:i]), Num: num, Den: den})
		rest = i + len(num) + 1 + len(den)
		i = rest - 1
	}
	if rest < len(s) || len(runs) == 0 {
		runs = append(runs, Run{Text: s[rest:]})
	}
	return runs
}

// whole takes the space or hyphen between a whole number and its fraction off
// the end of s: the stack sets itself apart.
func whole(s string) string {
	if n := len(s); n >= 2 && (s[n-1] == ' ' || s[n-1] == '-') && digit(s[n-2]) {
		return s[:n-1]
	}
	return s
}

// fractionAt finds an inch fraction that starts at s[i].
func fractionAt(s string, i int) (num, den string, ok bool) {
	num = digits(s[i:])
	after := i + len(num)
	if num == "" || after >= len(s) || s[after] != '/' || joined(s, i) {
		return "", "", false
	}
	den = digits(s[after+1:])
	end := after + 1 + len(den)
	if end < len(s) && (digit(s[end]) || letter(s[end]) || s[end] == '/' || s[end] == '.') {
		if !(s[end] == '.' && (end+1 == len(s) || s[end+1] == ' ')) { // a full stop is no decimal point
			return "", "", false
		}
	}
	n, d := small(num), small(den)
	if d < 2 || d > maxDenominator || d&(d-1) != 0 || n < 1 || n >= d {
		return "", "", false
	}
	return num, den, true
}

// joined reports whether s[i] continues a word or a number.
func joined(s string, i int) bool {
	if i == 0 || strings.HasSuffix(s[:i], "≈") {
		return false
	}
	c := s[i-1]
	return digit(c) || letter(c) || c == '/' || c == '.'
}

func digits(s string) string {
	i := 0
	for i < len(s) && digit(s[i]) {
		i++
	}
	return s[:i]
}

func digit(c byte) bool  { return '0' <= c && c <= '9' }
func letter(c byte) bool { return 'a' <= c|0x20 && c|0x20 <= 'z' || c >= 0x80 }

// small returns the value of up to three digits, and 0 for more or none.
func small(s string) int {
	if len(s) > 3 {
		return 0
	}
	n := 0
	for i := range len(s) {
		n = n*10 + int(s[i]-'0')
	}
	return n
}

// Readable returns runs as one string, fractions with a slash: what a person
// would type for it.
func Readable(runs []Run) string {
	var b strings.Builder
	for _, r := range runs {
		b.WriteString(r.Text)
		if r.Num != "" {
			b.WriteString(stack(r))
		}
	}
	return b.String()
}

// stack returns a run's fraction as text, set apart from a whole number.
func stack(r Run) string {
	s := r.Num + "/" + r.Den
	if n := len(r.Text); n > 0 && digit(r.Text[n-1]) {
		s = " " + s
	}
	return s
}

// Unprintable returns the characters of s that cannot be lettered in the
// regular or the bold face, in the order of their first appearance. Controls
// and the marks that turn the direction of writing are among them, so that no
// text can show itself as another.
func Unprintable(s string) []rune {
	var bad []rune
	seen := map[rune]bool{}
	for _, r := range s {
		if seen[r] || printable(r) {
			continue
		}
		seen[r] = true
		bad = append(bad, r)
	}
	return bad
}

func printable(r rune) bool {
	if unicode.Is(unicode.C, r) || r == unicode.ReplacementChar {
		return false
	}
	return Of(false).Has(r) && Of(true).Has(r)
}
