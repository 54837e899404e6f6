package sheet

import (
	"strings"

	"slatwright/geometry/check"
)

// plain are the checks in words of the bench. Codes are for the design file and
// the lists that programs read.
var plain = map[string]string{
	"fit.rest":        "bottle rests in the gap",
	"fit.side":        "bottle clears the legs",
	"fit.above":       "bottle clears what is above",
	"fit.lower_apron": "bottle clears lower aprons",
	"fit.upper_apron": "bottle clears upper aprons",
	"fit.depth":       "bottle lies deep enough",
	"joint.nail":      "nails reach and stay inside",
	"joint.end_grain": "no joint on end grain",
	"load.slat":       "slats bear the bottles",
	"load.joint":      "joints bear the push",
	"stand.tip":       "what tips the rack",
	"stand.anchor":    "anchor, or none",
	"stand.rack":      "rack stays square",
	"site.floor":      "weight on the floor",
	"site.air":        "air beside and above",
	"site.front":      "bottles within the site's depth",
	"space.empty":     "no row's height left empty",
	"site.raise":      "can be raised upright",
	"site.doorway":    "passes the doorway",
	"wood.top":        "top can swell and shrink",
	"wood.cross":      "crossings can swell",
	"shop.tolerance":  "sizes a little off still fit",
	"shop.saw":        "rips are safe at the saw",
	"default.kept":    "usual sizes are kept",
}

// plainly returns what a check is called at the bench; its code where it has no
// such name.
func plainly(code string) string {
	if p, ok := plain[code]; ok {
		return p
	}
	return code
}

// verdict is what the checks say of a thing that has one finding, what to do
// about it included, as a sentence; "" where there is none.
func verdict(list []check.Finding, code string) string {
	for _, f := range list {
		if f.Name != code {
			continue
		}
		text := strings.ToUpper(f.Says[:1]) + f.Says[1:] + "."
		if f.Change != "" {
			text += " " + strings.ToUpper(f.Change[:1]) + f.Change[1:] + "."
		}
		return text
	}
	return ""
}
