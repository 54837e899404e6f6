package report_test

import (
	"encoding/json"
	"math/big"
	"slices"
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/quote"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/saw"
	"slatwright/render/report"
)

// priced are designs with every kind of line.
var priced = map[string]string{
	"margin, tax, freight": "[rack]\ncolumns = 3\nrows = 4\n[finish]\nstain = \"oil_stain\"\n[price]\nlabour = 37.77\nmargin = 33.33\noverhead = 12.34\n" +
		"tax = 7.77\nfreight = 1.11\ndelivery = 9.99\nsend = \"flat\"\nminutes.rip = { setup = 3.33, each = 0.37 }\n",
	"wood by volume": "units = \"mm\"\n[rack]\ncolumns = 3\nrows = 4\n[price]\nwood = 1499.99\nyield = 61.7\nhours = 7.77\nmarkup = 0\n",
}

// read is the quote as another program reads it.
type read struct {
	Lines []struct {
		Section, What, Standing, Source string
		RateIn                          string `json:"rate_in"`
		Quantity, Rate, Per, Amount     json.Number
		Line                            int
		Of                              []string
		Inputs                          []struct {
			Name, Standing, Source string
			Value                  json.Number
			Line                   int
		}
	}
	Sums struct {
		Direct, Costs, Price json.Number
		Due                  json.Number `json:"to_pay"`
	}
}

func number(t *testing.T, n json.Number) *big.Rat {
	t.Helper()
	v, ok := new(big.Rat).SetString(string(n))
	if !ok {
		t.Fatalf("%q is no number", n)
	}
	return v
}

// cents rounds to two decimals, halves up, by writing out the digits.
func cents(v *big.Rat) string { return v.FloatString(2) }

// The JSON of a quote is added up again from nothing but itself: each amount
// from its line, each quantity from its inputs, each share from the sections it
// is of, each sum from amounts; and every figure says where it is from.
func TestQuoteAddsUp(t *testing.T) {
	texts := map[string]string{}
	for k, v := range priced {
		texts[k] = v
	}
	for f, text := range racktest.Demos(t) {
		texts[f] = text
	}
	for name, text := range texts {
		t.Run(name, func(t *testing.T) {
			q, findings := quoteOf(t, text)
			data, err := report.QuoteJSON(q, findings)
			if err != nil {
				t.Fatal(err)
			}
			var got read
			if err := json.Unmarshal(data, &got); err != nil {
				t.Fatal(err)
			}
			addUp(t, got)
		})
	}
}

func quoteOf(t *testing.T, text string) (*quote.Quote, []check.Finding) {
	t.Helper()
	r := racktest.Build(t, text)
	cuts, err := saw.Make([]*rack.Rack{r}, saw.Quick)
	if err != nil {
		t.Fatal(err)
	}
	return quote.Make(r, cuts), check.All(r)
}

func addUp(t *testing.T, got read) {
	t.Helper()
	sections := map[string]*big.Rat{}
	for _, l := range got.Lines {
		v := number(t, l.Quantity)
		if l.RateIn == "%" {
			sum := new(big.Rat)
			for _, s := range l.Of {
				if sections[s] != nil {
					sum.Add(sum, sections[s])
				}
			}
			if sum.Cmp(v) != 0 {
				t.Errorf("%s: a share of %s; its sections come to %s", l.What, l.Quantity, cents(sum))
			}
		}
		v.Mul(v, number(t, l.Rate)).Quo(v, number(t, l.Per))
		if want := cents(v); want != string(l.Amount) {
			t.Errorf("%s: %s * %s / %s = %s; the line says %s", l.What, l.Quantity, l.Rate, l.Per, want, l.Amount)
		}
		if sections[l.Section] == nil {
			sections[l.Section] = new(big.Rat)
		}
		sections[l.Section].Add(sections[l.Section], number(t, l.Amount))
		if l.Standing == "" || l.Source == "" || (l.Standing == "stated") != (l.Line > 0) && l.Standing != "on hand" {
			t.Errorf("%s: from %q, %q, line %d", l.What, l.Standing, l.Source, l.Line)
		}
		values := map[string]*big.Rat{}
		var in []*big.Rat
		for _, x := range l.Inputs {
			if x.Standing == "" || x.Source == "" || (x.Standing == "stated") != (x.Line > 0) {
				t.Errorf("%s: %s from %q, %q, line %d", l.What, x.Name, x.Standing, x.Source, x.Line)
			}
			values[x.Name] = number(t, x.Value)
			in = append(in, values[x.Name])
		}
		if l.Section == "labour" && len(in) == 4 {
			sum := new(big.Rat).Mul(in[0], in[1])
			if sum.Add(sum, new(big.Rat).Mul(in[2], in[3])); sum.Cmp(number(t, l.Quantity)) != 0 {
				t.Errorf("%s: %s min; the inputs give %s", l.What, l.Quantity, cents(sum))
			}
		}
		if net := values["parts, spares included"]; net != nil {
			v := new(big.Rat).Quo(net, values["yield"])
			v.Mul(v, big.NewRat(100, 1)).Sub(number(t, l.Quantity), v)
			if v.Sign() < 0 || v.Cmp(big.NewRat(1, 100)) >= 0 {
				t.Errorf("%s: %s is not %s over the yield, rounded up", l.What, l.Quantity, cents(net))
			}
		}
	}
	sum := func(names ...string) string {
		v := new(big.Rat)
		for _, n := range names {
			if sections[n] != nil {
				v.Add(v, sections[n])
			}
		}
		return cents(v)
	}
	direct := []string{"wood", "supplies", "labour", "packing"}
	for _, c := range []struct {
		name, want string
		got        json.Number
	}{
		{"direct", sum(direct...), got.Sums.Direct},
		{"costs", sum(append(direct, "overhead")...), got.Sums.Costs},
		{"price", sum(append(direct, "overhead", "profit")...), got.Sums.Price},
		{"to pay", sum(append(direct, "overhead", "profit", "delivery", "tax")...), got.Sums.Due},
	} {
		if c.want != string(c.got) {
			t.Errorf("%s: %s; the lines add up to %s", c.name, c.got, c.want)
		}
	}
	for _, name := range []string{"wood", "supplies", "labour", "overhead"} {
		if sections[name] == nil {
			t.Errorf("no line of %s", name)
		}
	}
}

// The customer's page bears the price and no cost.
func TestCustomerPageHasNoCosts(t *testing.T) {
	q, findings := quoteOf(t, priced["margin, tax, freight"])
	page := string(report.CustomerPage(q, findings))
	shown := func(cents int64) string { return quote.Money(q.Rack.Design, cents) }
	if !strings.Contains(page, shown(q.Price)) || !strings.Contains(page, shown(q.Due)) {
		t.Errorf("no price in\n%s", page)
	}
	for _, s := range []quote.Section{quote.Wood, quote.Supplies, quote.Labour, quote.Packing, quote.Overhead, quote.Profit} {
		if text := shown(q.Sum(s)); strings.Contains(page, text) {
			t.Errorf("the customer reads %s, %s", s, text)
		}
	}
	for _, word := range []string{"margin", "markup", "overhead", "labour", "yield"} {
		if strings.Contains(page, word) {
			t.Errorf("the customer reads of %s", word)
		}
	}
	if !slices.ContainsFunc(strings.Split(page, "\n"), func(l string) bool { return strings.HasPrefix(l, "DRAFT, NOT AN OFFER: example") }) {
		t.Error("example figures are not said to be such")
	}
}
