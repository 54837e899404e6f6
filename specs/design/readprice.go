package design

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"slatwright/specs/diag"
	"slatwright/specs/table"
)

// priceLimit is what figures of [price] are and the most they can be: limits
// keep every sum of a quote within 64 bits.
type priceLimit struct {
	names []string
	most  int64 // hundredths
	says  string
}

var priceLimits = []priceLimit{
	{[]string{"labour", "conditioner", "stain", "finish", "glue", "nails", "sandpaper", "hardware", "packing", "delivery", "freight", "wood"}, 100_000_000, "amount"},
	{[]string{"hours"}, 10_000_00, "time in hours"},
	{[]string{"overhead", "markup"}, 1000_00, "share in percent"},
	{[]string{"tax"}, 100_00, "share in percent"},
	{[]string{"margin"}, 95_00, "share of the price in percent"},
	{[]string{"yield"}, 100_00, "share in percent"},
}

// priceEntries are the keys of [price].
func priceEntries() []entry {
	list := []entry{{"currency", currency}, {"send", send}, {"minutes", minutes}}
	for _, l := range priceLimits {
		list = append(list, each(l.read, l.names...)...)
	}
	return list
}

// read reads a figure within its limit.
func (l priceLimit) read(r *reader, path string, n *node) {
	v, ok := r.hundredths(path, n)
	if !ok {
		return
	}
	if strings.HasSuffix(l.says, "percent") && r.fraction(path, n, v) {
		return
	}
	if v > l.most {
		r.fault(n.value, "", "`%s` is a %s of at most %d", path, l.says, l.most/100)
		return
	}
	name := path[len("price."):]
	if name == "yield" && v < 100 {
		r.fault(n.value, "wood is divided by it", "`%s` must be from 1 to 100 percent", path)
		return
	}
	if name == "yield" {
		r.later = append(r.later, func() {
			if _, ok := r.d.Price.Item("wood"); !ok {
				r.fault(n.value, "whole boards come from the cutting plan; add price.wood to reckon wood by its volume", "`%s` without price.wood divides nothing", path)
			}
		})
	}
	if other, both := r.d.Price.Item(map[string]string{"markup": "margin", "margin": "markup"}[name]); both {
		r.fault(n.value, "a markup is a percent of the costs, a margin one of the price: keep one", "`%s` stands beside `price.%s` of line %d", path, other.Name, other.Place.Line)
		return
	}
	r.d.Price.Items = append(r.d.Price.Items, PriceItem{Name: name, Hundredths: v, Text: statementText(path, n), Place: n.value})
}

// fraction refuses a share under one percent that has no sign behind it: 0.3 is
// more often meant for 30 percent than for three in a thousand.
func (r *reader) fraction(path string, n *node, v int64) bool {
	if v == 0 || v >= 100 || strings.HasSuffix(strings.TrimSpace(n.text), "%") {
		return false
	}
	r.fault(n.value, fmt.Sprintf(`write "%d %%" or %d; or "%s %%" if that is meant`, v, v, plainHundredths(v)),
		"`%s` is in percent, and %s of one percent is next to nothing", path, plainHundredths(v))
	return true
}

// plainHundredths prints an amount under one, as it is typed.
func plainHundredths(v int64) string { return strings.TrimRight(fmt.Sprintf("0.%02d", v), "0") }

func currency(r *reader, path string, n *node) { r.d.Price.Currency, _ = r.says(path, n) }

// send reads in which state the rack leaves the shop.
func send(r *reader, path string, n *node) {
	if s, ok := r.choice(path, n, "assembled", "flat"); ok {
		r.d.Price.Flat = s == "flat"
	}
}

// mostMinutes is the most that a setup or a piece can take, in hundredths.
const mostMinutes = 10_000_00

// minutes reads the times of operations: rip = { setup = 5, each = 0.5 }.
func minutes(r *reader, path string, n *node) {
	if n.shape != tree {
		r.fault(n.value, "write [price.minutes] and below it rip = { setup = 5, each = 0.5 }", "`%s` is a table, not %s", path, n.shape)
		return
	}
	var names []string
	for _, o := range table.Operations() {
		names = append(names, o.ID)
	}
	for _, k := range n.kids {
		switch {
		case !slices.Contains(names, k.key):
			r.fault(k.at, cmp.Or(diag.DidYouMean(k.key, names), "operations are "+strings.Join(names, ", ")), "unknown operation `%s`", k.key)
		case k.shape != tree:
			r.fault(k.value, "write "+k.key+" = { setup = 5, each = 0.5 }, in minutes", "`%s` is a table, not %s", join(path, k.key), k.shape)
		default:
			r.operation(join(path, k.key), k)
		}
	}
}

func (r *reader) operation(path string, n *node) {
	for _, k := range n.kids {
		at := join(path, k.key)
		if k.key != "setup" && k.key != "each" {
			r.fault(k.at, "an operation has setup and each, in minutes", "unknown key `%s` in [%s]", k.key, path)
			continue
		}
		v, ok := r.hundredths(at, k)
		if ok && v > mostMinutes {
			r.fault(k.value, "", "`%s` is a time of at most %d minutes", at, int64(mostMinutes/100))
		} else if ok {
			r.d.Price.Items = append(r.d.Price.Items, PriceItem{Name: at[len("price."):], Hundredths: v, Text: statementText(at, k), Place: k.value})
		}
	}
}

func cartonPadding(r *reader, path string, n *node) {
	if l, ok := r.exact(path, n, true); ok {
		r.d.Carton.Padding, r.d.Carton.PaddingPlace = l, n.value
	}
}

// cartonDivisor reads a carrier's divisor.
func cartonDivisor(r *reader, path string, n *node) {
	v, ok := r.wholeNumber(path, n, 1, 100_000, "cubic inches to the pound, such as 139, or cubic centimetres to the kilogram, such as 5000")
	if ok {
		r.d.Carton.Divisor, r.d.Carton.DivisorPlace = v, n.value
	}
}
