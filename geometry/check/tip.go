package check

import (
	"fmt"
	"math"

	"slatwright/geometry/rack"
	"slatwright/specs/table"
)

var tip = Check{
	Code:  "stand.tip",
	Title: "what push, and what tilt, tips the rack",
	Doc: "Empty, full of its bottles as drawn, and with only its upper rows full: the push at the top, at most 56 in up, that tips the rack forward or " +
		"sideways, and the tilt at which it falls. From a height of 27 in under 10 lbf or 10 degrees is a caution.",
	run: lookTip,
}

var anchor = Check{
	Code:  "stand.anchor",
	Title: "whether the rack is to be anchored",
	Doc: "From a height of 27 in a rack that a small push or tilt tips, or that is more than four times as high as deep, is to be " +
		"anchored to the building. The benchmarks are those of other furniture; local codes and a licensed practitioner decide.",
	run: lookAnchor,
}

// A state is the rack as it is loaded at the time.
type state struct {
	name  string
	load  load
	push  float64 // N, the least that tips it
	angle float64 // degrees, the least
	way   string  // "forward" or "sideways"
}

// states returns the rack empty, full, and the worst of those with only their
// upper rows full.
func states(r *rack.Rack) []state {
	sum := woodLoad(r)
	list := []state{stateOf(r, "rack, empty", sum)}
	rows := bottleLoads(r, false)
	var worst state
	for row := len(rows) - 1; row > 0; row-- { // filled from the top down
		sum = sum.and(rows[row])
		if s := stateOf(r, "rack, only upper rows full", sum); worst.name == "" || s.angle < worst.angle {
			worst = s
		}
	}
	list = append(list, stateOf(r, "rack, full", sum.and(rows[0])))
	if worst.name != "" {
		list = append(list, worst)
	}
	return list
}

// stateOf finds what tips the rack: about the front edge of what stands on the
// floor, the lower front apron or else the legs, and about either side.
func stateOf(r *rack.Rack, name string, l load) state {
	x, y, _ := l.at()
	front := 0.0
	if r.Len("apron.lift") > 0 {
		front = r.Len("apron.thickness").MM()
	}
	s := state{name: name, load: l, way: "forward"}
	arm := y - front
	if side := min(x, r.Len("carcase.width").MM()-x); side < arm {
		arm, s.way = side, "sideways"
	}
	reach := min(r.Len("rack.height").MM(), table.Value("tip.reach"))
	s.push, s.angle = topple(l, arm, reach)
	return s
}

// topple returns the push in N at a height in mm that tips the load over an edge
// so many mm from below its centre of gravity, and the tilt in degrees that does:
// F = W x / h, tan θ = x / z.
func topple(l load, arm, high float64) (push, angle float64) {
	_, _, z := l.at()
	return l.newton() * arm / high, math.Atan2(arm, z) * 180 / math.Pi
}

// tall reports whether the rack is high enough for tipping to be looked at.
func tall(r *rack.Rack) bool { return r.Len("rack.height") >= lengthOf("tip.height") }

// filled says that the bottles of a loaded rack are those drawn: site.floor
// weighs the heaviest that it may hold.
func (s state) filled(r *rack.Rack) string {
	if s.name == "rack, empty" || len(r.Bottles) == 0 {
		return ""
	}
	return " with its bottles as drawn"
}

// steady reports whether the state holds against the benchmarks.
func (s state) steady() bool {
	return s.push >= table.Value("tip.push") && s.angle >= table.Value("tip.angle")
}

func lookTip(r *rack.Rack) []Finding {
	var list []Finding
	for _, s := range states(r) {
		f := Finding{
			Where: s.name, Status: OK, Figure: figure(s.push), Limit: figure(table.Value("tip.push")), Unit: "N",
			Source: "statics, F = W x / h; " + sources("tip.push", "tip.reach", "tip.angle", "tip.height"),
		}
		f.Says = fmt.Sprintf("%s%s, tips %s at a push of %s or a tilt of %s°", mass(r, s.load.kg), s.filled(r), s.way, force(r, s.push), plain(s.angle, 1))
		switch {
		case !tall(r):
			f.Says += fmt.Sprintf("; a rack under %s high is held to no benchmark", r.Format.Unit(lengthOf("tip.height")))
			// a low rack is held against nothing but standing at all
			f.Figure, f.Limit, f.Unit = figure(s.angle), "0", "degrees"
		case !s.steady():
			f.Status = Caution
			f.Says += fmt.Sprintf("; benchmarks %s and %s°", force(r, table.Value("tip.push")), plain(table.Value("tip.angle"), 0))
			f.Change = "anchor it, or make it deeper or lower: " + named(r, "slat.length") + ", " + named(r, "rack.height")
			if s.push >= table.Value("tip.push") {
				f.Figure, f.Limit, f.Unit = figure(s.angle), figure(table.Value("tip.angle")), "degrees"
			}
		}
		if s.angle <= 0 {
			f.Status, f.Figure, f.Limit, f.Unit = Fail, figure(s.angle), "0", "degrees"
			f.Says = "it falls over by itself, " + s.way
			f.Change = "make it deeper: " + named(r, "slat.length")
		}
		list = append(list, f)
	}
	return list
}

func lookAnchor(r *rack.Rack) []Finding {
	all := states(r)
	push, angle := all[0].push, all[0].angle
	for _, s := range all {
		push, angle = min(push, s.push), min(angle, s.angle)
	}
	height := r.Len("rack.height")
	f := Finding{
		Where: "rack", Status: OK, Figure: figure(height.MM()), Limit: figure(table.Value("tip.height")), Unit: "mm",
		Source: sources("tip.height", "tip.push", "tip.angle", "tip.slender", "tip.anchor"),
	}
	switch {
	case anchored(r, all):
		f.Status = Caution
		f.Says = fmt.Sprintf("anchor it near the top to studs or masonry, at two places, each to bear %s: it is %s high, %s times its depth, and tips at %s and %s°",
			force(r, eachAnchor(r, all)), r.Format.Unit(height), plain(slender(r), 1), force(r, push), plain(angle, 1))
		f.Change = "follow the anchor maker's instructions and local codes; a licensed practitioner decides. Fill it from below, empty it from above"
	case tall(r):
		f.Says = fmt.Sprintf("needs no anchor on a firm, level floor: %s high, it stands the benchmark push and tilt", r.Format.Unit(height))
	default:
		f.Says = fmt.Sprintf("needs no anchor on a firm, level floor: %s high, under %s; on a counter fix it there",
			r.Format.Unit(height), r.Format.Unit(lengthOf("tip.height")))
	}
	return []Finding{f}
}

// slender is how many times its depth a rack is high.
func slender(r *rack.Rack) float64 { return r.Len("rack.height").MM() / r.Len("rack.depth").MM() }

// anchored reports whether the rack, in the states in which it may be, is to be
// anchored.
func anchored(r *rack.Rack, all []state) bool {
	if !tall(r) {
		return false
	}
	for _, s := range all {
		if !s.steady() {
			return true
		}
	}
	return slender(r) > table.Value("tip.slender")
}

// Anchors returns how many anchors stand.anchor asks for, 0 where it asks for
// none, and the pull that each is to bear, in the design's own unit.
func Anchors(r *rack.Rack) (count int, each string) {
	all := states(r)
	if !anchored(r, all) {
		return 0, ""
	}
	return 2, force(r, eachAnchor(r, all))
}

// eachAnchor returns the pull that each of two anchors near the top is to bear:
// at least the benchmark, and alone what holds the rack, in any state, at the
// benchmark tilt.
func eachAnchor(r *rack.Rack, all []state) float64 {
	pull := table.Value("tip.anchor")
	tilt := table.Value("tip.angle") * math.Pi / 180
	for _, s := range all {
		_, _, z := s.load.at()
		arm := z * math.Tan(s.angle*math.Pi/180)
		pull = max(pull, s.load.newton()*(z*math.Sin(tilt)-arm*math.Cos(tilt))/r.Len("rack.height").MM())
	}
	return pull
}
