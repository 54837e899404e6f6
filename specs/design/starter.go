package design

import (
	"strings"

	"slatwright/specs/unit"
)

// Starter returns a commented design to start from, with figures in the
// system's unit. It states bottles and columns and leaves the rest to the
// defaults.
func Starter(sys unit.System) string {
	figures := []string{
		"UNITS", "in", "GRID", "1/16", "SITE", "40", "WIDE", "<= 36", "HIGH", "~ 40", "PITCH", "4 7/8",
		"GAP", "2 1/4", "MILLED", "23/32", "LEG", "1x2", "SLAT", "1", "APRON", "1x3", "TOP", "3/4", "SIDE", "3/4", "DIAM", "3 1/8",
		"TALL", "11 3/4", "BOARD", "1x4", "LONG", "8 ft", "KERF", "1/8", "NAIL", "18 ga x 1 1/4", "PAPER", "letter", "OTHER", "mm", "LABELS", "letter-30", "PADDING", "2", "RULER", "4",
	}
	if sys == unit.Metric {
		figures = []string{
			"UNITS", "mm", "GRID", "1", "SITE", "1000", "WIDE", "<= 900", "HIGH", "~ 1000", "PITCH", "124",
			"GAP", "57", "MILLED", "19.5", "LEG", "20x45", "SLAT", "25", "APRON", "20x65", "TOP", "20", "SIDE", "20", "DIAM", "80",
			"TALL", "298", "BOARD", "20x95", "LONG", "2400 mm", "KERF", "3", "NAIL", "18 ga x 32", "PAPER", "a4", "OTHER", "in", "LABELS", "a4-24", "PADDING", "50", "RULER", "100",
		}
	}
	for i := 0; i < len(figures); i += 2 {
		figures[i] = "{" + figures[i] + "}"
	}
	return strings.NewReplacer(figures...).Replace(starter)
}

const starter = `# A rack for bottles. Take the # from a line to say more; what is not said is
# solved, or gets the default that "slatwright tables defaults" lists.

title = "Bottle rack"
# order = ""
# customer = ""
# date = ""                     # year-month-day: "2026-05-04"
# revision = ""
units = "{UNITS}"                 # of bare figures, and of the drawings
# grid = "{GRID}"                 # the finest mark the shop sets by
# where = ["rack.height <= 1.6 * rack.width"]   # relations between lengths

# A length can be "24", "<= 24" at most, ">= 20" at least, "20 .. 24" between,
# or "~ 24" near; with a unit of its own as in "610 mm", "24 in", "2 ft 1 1/2 in".

# [site]                          # the room it goes in
# width = ["{SITE}"]              # measured at several places: the least counts
# fit = 0                         # air kept on each side, at the wall and above

[rack]                            # overall, the top included
columns = 4                       # or "3 .. 6", "<= 6", "~ 5", "most"
rows = 5
# width = "{WIDE}"
# height = "{HIGH}"

[bottles]
fit = ["claret-750"]              # every cell holds each of these; "slatwright tables bottles" lists them

# [bottle.house]                  # a bottle of your own, measured; then: fit = ["house"]
# diameter = "{DIAM}"             # at its widest
# height = "{TALL}"

# [ladder]
# pitch = "{PITCH}"               # centre to centre of neighbouring legs

# [cell]
# gap = "{GAP}"                   # clear between the two slats under a bottle

# [leg]
# stock = "{LEG}"                 # a nominal size, or thickness and width as measured

# [slat]
# height = "{SLAT}"

# [apron]
# stock = "{APRON}"

# [top]
# present = true                  # false for a rack without a top
# thickness = "{TOP}"

# [overhang]                      # the top over the carcase
# side = "{SIDE}"

# [[column]]                      # columns that differ, left to right
# count = 1
# rows = 4

# [measured]                      # what the wood measured, by the name of the length; or "later"
# leg.thickness = "{MILLED}"
# slat.thickness = "later"        # aprons and top are then marked to be cut after measuring

# [wood]
# species = "ponderosa_pine"      # "slatwright tables species" lists them
# humidity = "30 .. 60 %"         # of the room, over the year
# moisture = "8 %"                # of the wood today, by the meter
# sawn = "flat"                   # or "quarter", which moves less

# [[board]]                       # what may be bought, or lies in the rack (on_hand = 3)
# nominal = "{BOARD}"
# length = "{LONG}"
# price = 7.50

# [shop]
# kerf = "{KERF}"
# spares.slat = 2

# [joint]
# slat_nail = "{NAIL}"
# glue = true                     # crossings are glued as well as nailed
# top = "slotted"                 # glued in front, slotted screws behind; or "glued" all round

# [finish]                        # "slatwright tables finishes" and "... adhesives" list them
# coat = "oil_poly"               # "none" for bare wood
# coats = 3
# stain = "oil_stain"             # none, unless it is named
# colour = "dark walnut"          # as agreed with the customer
# glue = "pva"

# [price]
# labour = 40                     # for an hour
# markup = "20 %"                 # of the costs; "slatwright tables prices" lists the other keys

# [carton]
# padding = {PADDING}                     # on every side

# [paper]
# drawings = "{PAPER}"
# second_unit = "{OTHER}"            # each dimension stands in it too, in brackets

# [labels]                        # on plain paper, to be cut apart, unless it says more
# grid = "{LABELS}"              # sheets that "slatwright tables labels" lists
# first = 1                       # the first free label of a sheet already begun

# [printer]                       # what the ruler on a printed sheet measured
# across = "{RULER}"
`
