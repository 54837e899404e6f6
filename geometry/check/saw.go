package check

import (
	"fmt"

	"slatwright/geometry/rack"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

var saw = Check{
	Code:  "shop.saw",
	Title: "rips are not too narrow, too short or too thin for a table saw",
	Doc: "Parts narrower than 3/4 in or thinner than 1/4 in are for a band saw or a jig. Rips under 1 1/2 in ask for a push block and a " +
		"featherboard, under 6 in for a push stick; parts under 12 in are ripped before they are cut to length. The saw maker's instructions come first.",
	run: lookSaw,
}

// lookSaw takes the narrowest part that is ripped, the thinnest and the
// shortest. A part as wide as its stock is not ripped.
func lookSaw(r *rack.Rack) []Finding {
	var narrow, thin, short rack.Part
	for i, p := range r.Parts {
		if !asWideAsStock(r, p) && (narrow.Name == "" || p.Width < narrow.Width) {
			narrow = p
		}
		if i == 0 || p.Thickness < thin.Thickness {
			thin = p
		}
		if i == 0 || p.Length < short.Length {
			short = p
		}
	}
	least := lengthOf("saw.narrow")
	blank := lengthOf("saw.short")
	if r.Design.Units == unit.Metric {
		blank = blank.Down(100 * unit.Millimetre) // 300 mm in a metric shop
	}
	f := Finding{Where: "rips", Status: OK, Figure: micro(narrow.Width), Limit: least.Decimal(), Unit: "mm", Source: sources("saw.push_stick", "saw.push_block", "saw.narrow", "saw.short", "saw.thin")}
	ripped := narrow.Name != ""
	if ripped {
		f.Says = fmt.Sprintf("%s, %s", narrow.Name, r.Format.Unit(narrow.Width)) + careFor(narrow.Width)
	} else { // a part is judged by its length alone
		f.Figure, f.Says = micro(short.Width), "nothing is ripped"
	}
	if short.Length < lengthOf("saw.short") {
		f.Says += fmt.Sprintf("; %s, %s long: rip first, then cut off", short.Name, r.Format.Unit(short.Length))
	}
	if ripped && narrow.Width < least {
		f.beware(micro(narrow.Width), least, "",
			"use a band saw or a jig made for thin strips, with the strip on the side away from the fence, or make it wider: "+named(r, narrow.Name+"."+secondSize(narrow.Name)))
	}
	if least := lengthOf("saw.thin"); thin.Thickness < least {
		f.beware(micro(thin.Thickness), least, fmt.Sprintf("; %s is %s thin and may lift or slip under the fence", thin.Name, r.Format.Unit(thin.Thickness)),
			"close the gap under the fence and hold it down with a featherboard, or make it thicker: "+named(r, thin.Name+".thickness"))
	}
	if at := r.Design.Shop.MinRipLength; at < blank {
		f.beware(at.Decimal(), blank, fmt.Sprintf("; blanks down to %s may be ripped, short ones kick back", r.Format.Unit(at)),
			"state shop.min_rip_length of "+r.Format.Unit(blank)+" or more")
	}
	return []Finding{f}
}

// beware makes the finding a caution, or adds to one. Figure and limit stay those
// of the first.
func (f *Finding) beware(figure string, limit unit.Length, says, change string) {
	f.Says += says
	if f.Status == Caution {
		f.Change += "; " + change
		return
	}
	f.Status, f.Figure, f.Limit, f.Change = Caution, figure, limit.Decimal(), change
}

// careFor says what a rip of the width asks for.
func careFor(width unit.Length) string {
	switch {
	case width < lengthOf("saw.push_block"):
		return ": push block, featherboard, guard, riving knife, dust drawn off"
	case width < lengthOf("saw.push_stick"):
		return ": push stick, guard, riving knife, dust drawn off"
	}
	return ""
}

// asWideAsStock reports whether the part is as wide as the board it is made of.
func asWideAsStock(r *rack.Rack, p rack.Part) bool {
	if p.Stock == "" {
		return false
	}
	n, ok := table.FindNominal(p.Stock)
	return ok && n.Width == p.Width
}

// secondSize is what a design calls the width of a part.
func secondSize(part string) string {
	if part == "leg" || part == "top" {
		return "width"
	}
	return "height"
}
