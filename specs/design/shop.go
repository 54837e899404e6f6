package design

import (
	"slatwright/specs/diag"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Wood is the species and the room's air.
type Wood struct {
	Species                table.Species // ponderosa pine where the file names none
	Place                  diag.Place    // of the species
	HumidityLo, HumidityHi int           // relative humidity in percent; 30 and 60 by default
	HumidityPlace          diag.Place
	Moisture               int64 // of the wood today, in hundredths of a percent; 0 where it was not measured
	QuarterSawn            bool  // boards are quarter-sawn; else flat-sawn is taken, which moves more
}

// Board is lumber that may be bought or lies in the rack.
type Board struct {
	Nominal   table.Nominal // the zero Nominal where only sizes are given
	Thickness unit.Length   // as measured, else dressed
	Width     unit.Length   // as measured, else dressed
	Length    unit.Length
	Price     int64 // hundredths of the currency, for one board
	Priced    bool  // whether the file gives a price, so that it can be bought
	OnHand    int   // how many lie in the rack
	Text      string
	Place     diag.Place
}

// Shop is how the shop cuts. What the file leaves unsaid is the default.
type Shop struct {
	Kerf, EndTrim, EdgeTrim unit.Length
	MinRipLength, Tolerance unit.Length
	Spares                  []Spare // in the order of the file
	Places                  []NamedPlace
}

// NamedPlace is where the file states something, such as "shop.kerf".
type NamedPlace struct {
	Name  string
	Place diag.Place
}

// Spare is how many parts of a kind are cut over and above.
type Spare struct {
	Part  string // "leg", "slat", "apron", "top"
	Count int
	Place diag.Place
}

// Joint is how the parts are fixed. What the file leaves unsaid is the default.
type Joint struct {
	SlatNail, ApronNail, TopNail Nail
	Glue                         bool // crossings are glued as well as nailed; true unless the file says otherwise
	TopGlued                     bool // the top is glued all round; else in front, with slotted screws behind
	TopPlace, GluePlace          diag.Place
}

// Nail is a nail to be driven.
type Nail struct {
	Gauge  int
	Length unit.Length
	Text   string     // as written, or as it would be
	Place  diag.Place // the zero Place for a default
}

// Price is what the quote reckons with.
type Price struct {
	Currency string // text in front of amounts, "" where absent
	Flat     bool   // sent flat, aprons and top fixed on site; else assembled
	Items    []PriceItem
}

// Carton is how a rack is packed. Where a place is none the table's figure is
// taken.
type Carton struct {
	Padding      unit.Length // on every side
	PaddingPlace diag.Place
	Divisor      int // cubic inches to the pound, or cubic centimetres to the kilogram
	DivisorPlace diag.Place
}

// PriceItem is one figure of [price].
type PriceItem struct {
	Name       string // such as "labour", "markup" or "minutes.rip.each"
	Hundredths int64  // of the currency, of a percent, of an hour or of a minute
	Text       string
	Place      diag.Place
}

// Item returns the figure of the name, if the file gives it.
func (p Price) Item(name string) (PriceItem, bool) {
	for _, item := range p.Items {
		if item.Name == name {
			return item, true
		}
	}
	return PriceItem{}, false
}

// Paper is what the packet is printed on: ids that table.FindPaper knows.
type Paper struct {
	Drawings     string      // "letter" in an inch design, "a4" in a metric one, where the file is silent
	Template     string      // "letter", "a4" or "roll"
	Labels       string      // "letter" or "a4", where Design.Labels states no sheet
	TemplateRoll unit.Length // width of the roll; zero unless Template is "roll"
	SecondUnit   bool        // each dimension's figure stands in the other unit too, in brackets
	Place        diag.Place  // of the template's paper
	LabelsPlace  diag.Place  // of the labels' paper; the zero Place for a default
}

// Printer is what a printed ruler measured: where nothing was measured, the
// nominal length itself.
type Printer struct {
	Across, Along               unit.Length
	AcrossNominal, AlongNominal unit.Length // 100 mm or 4 in
	AcrossPlace, AlongPlace     diag.Place
}
