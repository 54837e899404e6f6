package design

import (
	"math/big"
	"strings"

	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// bottles reads the customer's own bottles, [bottle.NAME].
func bottles(r *reader, path string, n *node) {
	if n.shape != tree {
		r.fault(n.value, "write [bottle.NAME] and its measures below it", "`bottle` is a table, not %s", n.shape)
		return
	}
	for _, k := range n.kids {
		r.bottle(join(path, k.key), k)
	}
}

func (r *reader) bottle(path string, n *node) {
	if !bottleName(n.key) {
		r.fault(n.at, "use small letters, figures, - and _, at most 40", "a bottle's name can't be `%s`", n.key)
		return
	}
	if n.shape != tree {
		hint := "write [bottle.NAME] and its measures below it"
		if n.key == "diameter" || n.key == "height" || n.key == "body" || n.key == "mass" {
			hint = "give the bottle a name: [bottle.NAME]"
		}
		r.fault(n.value, hint, "`%s` is a table, not %s", path, n.shape)
		return
	}
	r.table(n, path, "bottle")
	measured := n.kid("diameter")
	if measured == nil {
		r.fault(n.value, "measure the body at its widest", "the bottle has no diameter")
		return
	}
	diameter, said, ok := r.span(path+".diameter", measured)
	like := lender(n.key, diameter.Nominal)
	b := Bottle{Name: n.key, Kind: like, Like: like.ID, Text: said.Text, Unit: said.Unit, Place: measured.value}
	b.Kind.ID, b.Kind.Name, b.Kind.Note = n.key, n.key, ""
	b.Kind.Diameter = diameter
	b.Kind.Closure, b.Kind.Millilitres = "", 0
	if k := n.kid("height"); k != nil {
		if span, _, ok := r.span(path+".height", k); ok {
			b.Kind.Height = span
		}
	}
	if k := n.kid("body"); k != nil {
		if span, _, ok := r.span(path+".body", k); ok {
			b.Kind.Body = span
		}
	}
	if k := n.kid("mass"); k != nil {
		if grams, ok := r.mass(path+".mass", k); ok {
			b.Kind.Mass = table.Mass{Min: grams, Nominal: grams, Max: grams, Origin: measuredOrigin, Spread: measuredOrigin}
		}
	}
	if ok {
		r.bodyWithin(b, n.kid("body"), n.kid("height"))
	}
	if ok { // only then are the lent figures those of a bottle alike
		r.d.Bottles = append(r.d.Bottles, b)
	}
}

// bodyWithin sees that the body of a bottle is no higher than the bottle, where
// one of the two was measured; the other may be lent.
func (r *reader) bodyWithin(b Bottle, body, height *node) {
	lent := func(l unit.Length) string {
		return (unit.Format{System: r.d.Units}).Unit(l) + " of " + b.Like
	}
	switch {
	case body != nil && height != nil:
		if b.Kind.Body.Min > b.Kind.Height.Max {
			r.fault(body.value, "", "the body is higher than the bottle")
		}
	case body != nil && b.Kind.Body.Nominal > b.Kind.Height.Nominal:
		r.fault(body.value, "measure the height too", "the body is higher than the bottle, whose height is taken to be the %s", lent(b.Kind.Height.Nominal))
	case height != nil && b.Kind.Body.Nominal > b.Kind.Height.Nominal:
		r.fault(height.value, "measure the body too: up to where the shoulder begins", "the bottle is lower than its body, whose height is taken to be the %s", lent(b.Kind.Body.Nominal))
	}
}

// measuredOrigin is the origin of the customer's figures.
var measuredOrigin = table.Origin{Standing: "measured", Source: "the design file"}

func bottleName(s string) bool {
	return s != "" && len(s) <= 40 && strings.Trim(s, "abcdefghijklmnopqrstuvwxyz0123456789-_") == ""
}

// lender returns the bottle of the table that lends what was not measured: the
// one of the same name, else the one of nearest nominal diameter, the earlier
// of two.
func lender(name string, diameter unit.Length) table.Bottle {
	if b, ok := table.FindBottle(name); ok {
		return b
	}
	all := table.Bottles()
	best := all[0]
	for _, b := range all[1:] {
		if (b.Diameter.Nominal - diameter).Abs() < (best.Diameter.Nominal - diameter).Abs() {
			best = b
		}
	}
	return best
}

// span reads a measured length: one figure, or a range whose middle is taken
// as nominal.
func (r *reader) span(path string, n *node) (table.Range, Length, bool) {
	l, ok := r.length(path, n, false)
	if !ok {
		return table.Range{}, l, false
	}
	if l.Kind != Exact && l.Kind != Between {
		r.fault(n.value, "write the figure measured, or \"75 .. 80 mm\"", "`%s` must be one length or a range", path)
		return table.Range{}, l, false
	}
	if l.Lo == 0 {
		r.fault(n.value, "", "`%s` must be more than zero", path)
		return table.Range{}, l, false
	}
	return table.Range{
		Min: l.Lo, Nominal: l.Lo + (l.Hi-l.Lo)/2, Max: l.Hi,
		Origin: measuredOrigin, Spread: measuredOrigin,
	}, l, true
}

// mass reads a mass in grams; a bare figure is in grams. Pounds and ounces are
// rounded to the gram.
func (r *reader) mass(path string, n *node) (int64, bool) {
	if n.shape != words && n.shape != number {
		r.fault(n.value, `write a mass such as "1.3 kg"`, "`%s` is a mass, not %s", path, n.shape)
		return 0, false
	}
	s := strings.TrimSpace(n.literal)
	if n.shape == words {
		s = strings.TrimSpace(n.text)
	}
	// The pound is 453.59237 g exactly (international yard and pound agreement
	// of 1959), the ounce a sixteenth of it.
	grams := big.NewRat(1, 1)
	for _, u := range []struct {
		name  string
		grams *big.Rat
	}{
		{"kg", big.NewRat(1000, 1)}, {"lb", big.NewRat(45359237, 100000)},
		{"oz", big.NewRat(45359237, 1600000)}, {"g", big.NewRat(1, 1)},
	} {
		if rest, ok := strings.CutSuffix(s, u.name); ok {
			s, grams = strings.TrimSpace(rest), u.grams
			break
		}
	}
	value, err := unit.Number(s)
	if err != nil {
		r.fault(n.value, `write a mass such as "1.3 kg"`, "not a mass")
		return 0, false
	}
	value.Mul(value, grams)
	if value.Cmp(big.NewRat(1, 1)) < 0 || value.Cmp(big.NewRat(100_000, 1)) > 0 {
		r.fault(n.value, "", "the mass of a bottle is from 1 g to 100 kg")
		return 0, false
	}
	value.Add(value, big.NewRat(1, 2))
	return new(big.Int).Quo(value.Num(), value.Denom()).Int64(), true
}
