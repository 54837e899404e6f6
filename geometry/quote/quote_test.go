package quote_test

import (
	"math"
	"math/big"
	"testing"

	"slatwright/geometry/quote"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/saw"
	"slatwright/specs/unit"
)

func reckon(t *testing.T, text string) *quote.Quote {
	t.Helper()
	r := racktest.Build(t, text)
	cuts, err := saw.Make([]*rack.Rack{r}, saw.Quick)
	if err != nil {
		t.Fatal(err)
	}
	return quote.Make(r, cuts)
}

func TestAmount(t *testing.T) {
	for _, c := range []struct{ quantity, rate, per, want int64 }{
		{300, 785, 100, 2355},      // 3 boards at 7.85
		{100, 1, 200, 1},           // half a cent goes up
		{99, 1, 200, 0},            // less goes down
		{16000, 120, 10000, 192},   // 160 nails at 1.20 a hundred
		{48844, 3000, 7000, 20933}, // a margin of 30 % on costs of 488.44: 209.3314
		{1_000_000_000_000, 100_000_000, 6000, 16_666_666_666_666_667}, // beyond 64 bits in between
	} {
		if got := quote.Amount(c.quantity, c.rate, c.per); got != c.want {
			t.Errorf("%d * %d / %d = %d; want %d", c.quantity, c.rate, c.per, got, c.want)
		}
	}
}

const cell = "[rack]\ncolumns = 1\nrows = 1\n[top]\npresent = false\n[[board]]\nnominal = \"1x3\"\nlength = \"8 ft\"\nprice = 4\n[price]\n"

// find returns the line of the name.
func find(t *testing.T, q *quote.Quote, what string) quote.Line {
	t.Helper()
	for _, l := range q.Lines {
		if l.What == what {
			return l
		}
	}
	t.Fatalf("no line %q", what)
	return quote.Line{}
}

// A rack of one cell: two slats, four legs, four aprons and no top, so 4 + 8
// crossings of two nails each.
func TestOneCellByHand(t *testing.T) {
	q := reckon(t, cell+"nails = 2.5\nlabour = 30\nminutes.ladder = { setup = 4, each = 1.5 }\noverhead = 10\nmarkup = 50\n")
	for _, c := range []struct {
		what             string
		quantity, amount int64
	}{
		{"nails, slats: 18 ga × 1 1/4 in", 800, 20},
		{"nails, aprons: 18 ga × 1 1/2 in", 1600, 40},
		{"glue and nail ladders", 1100, 550}, // 2 ladders of 4 min, 2 slats of 1 1/2 min, at half a unit of money a minute
	} {
		if l := find(t, q, c.what); l.Quantity != c.quantity || l.Amount != c.amount {
			t.Errorf("%s: %d, %d cents; want %d, %d", c.what, l.Quantity, l.Amount, c.quantity, c.amount)
		}
	}
	for _, l := range q.Lines {
		if l.What == "fit the top" || l.What == "nails, the top: 18 ga × 1 1/2 in" {
			t.Errorf("a rack without a top has the line %+v", l)
		}
	}
	direct := q.Sum(quote.Direct()...)
	if over := q.Sum(quote.Overhead); over != (direct+5)/10 {
		t.Errorf("overhead of 10 %% on %d is %d", direct, over)
	}
	if profit := q.Sum(quote.Profit); profit != (q.Costs+1)/2 || q.Price != q.Costs+profit || q.Due != q.Price {
		t.Errorf("costs %d, markup of 50 %% %d, price %d, due %d", q.Costs, profit, q.Price, q.Due)
	}
}

// Hours that are stated take the place of all operations.
func TestStatedHours(t *testing.T) {
	q := reckon(t, cell+"labour = 30\nhours = 1.5\n")
	if got := q.Sum(quote.Labour); got != 4500 || q.Minutes != 9000 {
		t.Errorf("1.5 h at 30.00: %d cents, %d hundredths of a minute", got, q.Minutes)
	}
}

// A margin is a share of the price, a markup one of the costs.
func TestMargin(t *testing.T) {
	q := reckon(t, cell+"margin = \"30 %\"\n")
	want := math.Round(float64(q.Costs)/0.7) - float64(q.Costs)
	if got := q.Sum(quote.Profit); !q.Margin || math.Abs(float64(got)-want) > 1 {
		t.Errorf("margin of 30 %% on costs of %d: %d; want %v", q.Costs, got, want)
	}
}

// Wood by its volume is divided by the yield: never added to.
func TestYieldDivides(t *testing.T) {
	q := reckon(t, cell+"wood = 6\nyield = \"50 %\"\n")
	l := find(t, q, "wood in the parts, over the yield")
	sum := 0.0 // cubic inches
	for _, p := range q.Rack.Parts {
		sum += float64(p.Count) * p.Thickness.MM() * p.Width.MM() * p.Length.MM() / (25.4 * 25.4 * 25.4)
	}
	want := sum / 144 / 0.5 // board feet
	if got := float64(l.Quantity) / 100; got < want || got > want+0.03 {
		t.Errorf("%v board feet; want %.4f rounded up", got, want)
	}
	if len(l.Inputs) != 2 || l.Inputs[1].Hundredths != 5000 {
		t.Errorf("inputs %+v", l.Inputs)
	}
}

// The rack's weight against its pieces in floating point.
func TestWeight(t *testing.T) {
	q := reckon(t, cell)
	litres := 0.0
	for _, p := range q.Rack.Pieces {
		s := p.Box.Size()
		litres += s.X.MM() * s.Y.MM() * s.Z.MM() / 1e6
	}
	want := litres * q.Rack.Design.Wood.Species.Density()
	if got := float64(q.Grams); got < want-1e-6 || got > want+1 {
		t.Errorf("%v g; want %.3f rounded up", got, want)
	}
	if got, want := float64(q.Weight()), want*100/453.59237; got < want-0.3 || got > want+1.3 {
		t.Errorf("%v hundredths of a pound; want %.2f", got, want)
	}
}

// The shift of nested ladders is the least at which no slat meets one of the
// next ladder, found here by trying every step of 1/64 in or 1/2 mm.
func TestNestedSlatsKeepApart(t *testing.T) {
	for f, text := range racktest.Demos(t) {
		q := reckon(t, text)
		r, step := q.Rack, unit.Inch/64
		if r.Design.Units == unit.Metric {
			step = unit.Millimetre / 2
		}
		if !q.Flat.Nested {
			t.Errorf("%s: not nested", f)
		}
		at := unit.Length(0)
		for meets(r, at) {
			at += step
		}
		if q.Flat.Shift > at || meets(r, q.Flat.Shift) {
			t.Errorf("%s: shift %v; %v will do", f, r.Format.Unit(q.Flat.Shift), r.Format.Unit(at))
		}
	}
}

// meets reports whether slats of neighbours overlap where every second ladder
// is pushed up.
func meets(r *rack.Rack, by unit.Length) bool {
	high := r.Len("slat.height")
	for i := range r.Ladders[1:] {
		up := [2]unit.Length{0, by}
		a, b := up[i%2], up[(i+1)%2]
		for _, x := range r.Shapes[r.Ladders[i].Shape].Right {
			for _, y := range r.Shapes[r.Ladders[i+1].Shape].Left {
				if x+a < y+b+high && y+b < x+a+high {
					return true
				}
			}
		}
	}
	return false
}

// Chargeable weight of a carton by hand: 10 in of padding all round.
func TestChargeable(t *testing.T) {
	q := reckon(t, cell+"[carton]\npadding = 10\ndivisor = 200\n")
	p := q.Assembled
	volume := new(big.Rat).SetInt64(1)
	for _, s := range []unit.Length{p.Length, p.Width, p.Height} {
		if !s.On(unit.Inch / 2) {
			t.Errorf("side %v", s)
		}
		volume.Mul(volume, big.NewRat(int64(s), int64(unit.Inch)))
	}
	pounds, _ := volume.Quo(volume, big.NewRat(200, 1)).Float64()
	if got := float64(p.ByVolume) / 100; got < pounds || got > pounds+0.01 {
		t.Errorf("%v lb by volume; want %v", got, pounds)
	}
	if p.Chargeable != int64(math.Ceil(pounds)) || p.Divided.Standing != quote.Stated {
		t.Errorf("chargeable %d lb of %v; %+v", p.Chargeable, pounds, p.Divided)
	}
	if low := q.Rack.Len("rack.height") + 20*unit.Inch; p.Length < low && p.Width < low && p.Height < low {
		t.Errorf("%v x %v x %v does not hold the rack", p.Length, p.Width, p.Height)
	}
}
