package design

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"slatwright/specs/diag"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// DefaultSpecies is the wood of a design that names none.
const DefaultSpecies = "ponderosa_pine"

func species(r *reader, path string, n *node) {
	s, ok := r.says(path, n)
	if !ok {
		return
	}
	found, ok := table.FindSpecies(s)
	if !ok {
		var names []string
		for _, s := range table.AllSpecies() {
			names = append(names, s.ID)
		}
		r.fault(n.value, cmp.Or(diag.DidYouMean(s, names), "`slatwright tables species` lists them"), "unknown species %s", n.literal)
		return
	}
	r.d.Wood.Species, r.d.Wood.Place = found, n.value
}

// humidity reads the relative humidity of the room over the year, in percent.
func humidity(r *reader, path string, n *node) {
	const hint = `write whole percents, such as "30 .. 60 %"`
	if n.shape != words && n.shape != number {
		r.fault(n.value, hint, "`%s` is a range in percent, not %s", path, n.shape)
		return
	}
	s := n.literal
	if n.shape == words {
		s = n.text
	}
	lo, hi, ranged := strings.Cut(strings.TrimSuffix(strings.TrimSpace(s), "%"), "..")
	if !ranged {
		hi = lo
	}
	low, err1 := strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(lo), "%")))
	high, err2 := strconv.Atoi(strings.TrimSpace(hi))
	if err1 != nil || err2 != nil || low < 0 || low > high || high > 100 {
		r.fault(n.value, hint, "not a range of humidity")
		return
	}
	r.d.Wood.HumidityLo, r.d.Wood.HumidityHi, r.d.Wood.HumidityPlace = low, high, n.value
}

// MostBoardPrice is the highest price of one board, in cents: the planner adds
// prices up, and its sums must not overflow.
const MostBoardPrice = 1_000_000_000

// boards reads the [[board]]s.
func boards(r *reader, path string, n *node) {
	r.tables(path, n, func(i int, n *node) {
		r.table(n, path, "board")
		if b, ok := r.board(path, n); ok {
			r.d.Boards = append(r.d.Boards, b)
		}
	})
}

func (r *reader) board(path string, n *node) (Board, bool) {
	b := Board{Place: n.value}
	faults := len(r.list)
	var text []string
	get := func(key string, into *unit.Length) {
		if k := n.kid(key); k != nil {
			*into, _ = r.exact(path+"."+key, k, false)
		}
	}
	if k := n.kid("nominal"); k != nil {
		b.Nominal, _ = r.nominal(path+".nominal", k)
		b.Thickness, b.Width = b.Nominal.Thickness, b.Nominal.Width
		text = append(text, b.Nominal.Name)
	}
	get("thickness", &b.Thickness)
	get("width", &b.Width)
	get("length", &b.Length)
	if k := n.kid("price"); k != nil {
		b.Price, b.Priced = r.hundredths(path+".price", k)
		if b.Price > MostBoardPrice {
			r.fault(k.value, "state the price of one board", "`%s` is an amount of at most %d", path+".price", int64(MostBoardPrice/100))
		}
	}
	if k := n.kid("on_hand"); k != nil {
		b.OnHand = r.quantity(path+".on_hand", k)
	}
	if len(r.list) > faults {
		return b, false
	}
	switch {
	case n.kid("length") == nil:
		r.fault(n.value, `add a line such as length = "8 ft"`, "the board has no length")
	case b.Thickness == 0:
		r.fault(n.value, `add nominal = "1x4", or thickness and width as measured`, "the board has no size")
	case b.Width == 0:
		r.fault(n.value, "add its width: such lumber comes in random widths", "the board has no width")
	case !b.Priced && n.kid("on_hand") == nil:
		r.fault(n.value, "add price for a board to be bought, on_hand for boards in the rack", "the board can neither be bought nor is it there")
	}
	for _, key := range []string{"thickness", "width", "length"} {
		if k := n.kid(key); k != nil {
			text = append(text, key+" = "+k.literal)
		}
	}
	b.Text = strings.Join(text, ", ")
	return b, len(r.list) == faults
}

// quantity reads a whole number from 0 to 10,000.
func (r *reader) quantity(path string, n *node) int {
	v, _ := r.wholeNumber(path, n, 0, 10_000, "")
	return v
}

// hundredths reads an amount with at most two decimals, exactly. A percent
// sign may stand behind it.
func (r *reader) hundredths(path string, n *node) (int64, bool) {
	if n.shape != words && n.shape != number {
		r.fault(n.value, "", "`%s` is an amount, not %s", path, n.shape)
		return 0, false
	}
	s := n.literal
	if n.shape == words {
		s = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(n.text), "%"))
	}
	whole, part, _ := strings.Cut(strings.ReplaceAll(strings.TrimPrefix(s, "+"), "_", ""), ".")
	v, err := strconv.ParseUint(whole+(part + "00")[:2], 10, 64)
	if err != nil || len(strings.TrimRight(part, "0")) > 2 || len(whole) > 9 {
		r.fault(n.value, "write an amount such as 12.50", "`%s` must be from 0 to 999999999.99, with two decimals at most", path)
		return 0, false
	}
	return int64(v), true
}

func shopLength(r *reader, path string, n *node) {
	l, ok := r.exact(path, n, true)
	if !ok {
		return
	}
	s := &r.d.Shop
	s.Places = append(s.Places, NamedPlace{path, n.value})
	switch path {
	case "shop.kerf":
		s.Kerf = l
	case "shop.end_trim":
		s.EndTrim = l
	case "shop.edge_trim":
		s.EdgeTrim = l
	case "shop.min_rip_length":
		s.MinRipLength = l
	case "shop.tolerance":
		s.Tolerance = l
	}
}

func spares(r *reader, path string, n *node) {
	parts := []string{"leg", "slat", "apron", "top"}
	if n.shape != tree {
		r.fault(n.value, "write spares.slat = 2", "`%s` is a table, not %s", path, n.shape)
		return
	}
	for _, k := range n.kids {
		if i := strings.Join(parts, " "); !strings.Contains(" "+i+" ", " "+k.key+" ") {
			r.fault(k.at, cmp.Or(diag.DidYouMean(k.key, parts), "parts are "+strings.Join(parts, ", ")), "unknown part `%s`", k.key)
			continue
		}
		r.d.Shop.Spares = append(r.d.Shop.Spares, Spare{Part: k.key, Count: r.quantity(join(path, k.key), k), Place: k.value})
	}
}

// jointNail reads a nail such as "18 ga x 1 1/4".
func jointNail(r *reader, path string, n *node) {
	s, ok := r.says(path, n)
	if !ok {
		return
	}
	const hint = `write gauge and length, such as "18 ga x 1 1/4 in"`
	gauge, length, ok := strings.Cut(strings.ReplaceAll(s, "×", "x"), "x")
	number, err := strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(gauge), "ga")))
	if !ok || err != nil {
		r.fault(n.value, hint, "not a nail")
		return
	}
	if _, ok := table.FindNail(number); !ok {
		r.fault(n.value, "`slatwright tables nails` lists them", "unknown gauge %d", number)
		return
	}
	l, err := unit.Parse(length, r.d.Units)
	if err != nil || l == 0 || l > 12*unit.Inch {
		r.fault(n.value, hint, "not the length of a nail")
		return
	}
	*r.d.Joint.named(path) = Nail{Gauge: number, Length: l, Text: s, Place: n.value}
}

// named returns the nail of the path "joint.slat_nail" and so on.
func (j *Joint) named(path string) *Nail {
	switch path {
	case "joint.slat_nail":
		return &j.SlatNail
	case "joint.apron_nail":
		return &j.ApronNail
	}
	return &j.TopNail
}

func paperDrawings(r *reader, path string, n *node) {
	if s, ok := r.choice(path, n, "letter", "tabloid", "a4", "a3"); ok {
		r.d.Paper.Drawings = s
	}
}

func paperLabels(r *reader, path string, n *node) {
	if s, ok := r.choice(path, n, "letter", "a4"); ok {
		r.d.Paper.Labels, r.d.Paper.LabelsPlace = s, n.value
	}
}

// paperSecond reads the unit that figures are to stand in besides the design's.
func paperSecond(r *reader, path string, n *node) {
	s, ok := r.choice(path, n, "in", "mm")
	if ok && s == r.d.Units.String() {
		r.fault(n.value, "name the other unit, or leave the line out", "this is the first unit already")
		return
	}
	r.d.Paper.SecondUnit = ok
}

// paperTemplate reads "letter", "a4", or "roll 24 in".
func paperTemplate(r *reader, path string, n *node) {
	s, ok := r.says(path, n)
	if !ok {
		return
	}
	r.d.Paper.Place = n.value
	width, roll := strings.CutPrefix(s, "roll")
	if !roll {
		if s, ok := r.choice(path, n, "letter", "a4", "roll 24 in", "roll 610 mm"); ok {
			r.d.Paper.Template = s
		}
		return
	}
	l, err := unit.Parse(width, r.d.Units)
	if err != nil || l < 200*unit.Millimetre || l > 2000*unit.Millimetre {
		r.fault(n.value, `write the roll's width, from 200 mm to 2 m: "roll 24 in"`, "not a roll of paper")
		return
	}
	r.d.Paper.Template, r.d.Paper.TemplateRoll = "roll", l
}

// printerRuler reads what a printed ruler measured. One measured in
// millimetres was 100 mm long, one in inches 4 in.
func printerRuler(r *reader, path string, n *node) {
	l, ok := r.exactStatement(path, n, false)
	if !ok {
		return
	}
	nominal := rulerLength(l.Unit)
	if off := (l.Lo - nominal).Abs(); 10*off > nominal {
		r.fault(n.value, "print at 100 %, and measure the ruler on the sheet",
			"a printed ruler of %s can't measure that", (unit.Format{System: l.Unit}).Unit(nominal))
		return
	}
	p := &r.d.Printer
	if path == "printer.across" {
		p.Across, p.AcrossNominal, p.AcrossPlace = l.Lo, nominal, n.value
	} else {
		p.Along, p.AlongNominal, p.AlongPlace = l.Lo, nominal, n.value
	}
}

func rulerLength(s unit.System) unit.Length {
	if s == unit.Metric {
		return 100 * unit.Millimetre
	}
	return 4 * unit.Inch
}

// text returns the nail as a design states it.
func (n Nail) text(f unit.Format) string { return fmt.Sprintf("%d ga x %s", n.Gauge, f.Unit(n.Length)) }
