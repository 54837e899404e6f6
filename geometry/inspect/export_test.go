package inspect

import (
	"slatwright/geometry/rack"
	"slatwright/specs/unit"
)

// Walked is a dimension's limits as found, and by walking in single steps.
type Walked struct {
	Name      string
	Got, Want [2]unit.Length
}

// Walk finds the limits of every dimension of a rack a second time, one step
// after the other.
func Walk(r *rack.Rack) []Walked {
	var out []Walked
	for kind := range r.Kinds {
		for _, p := range ofKind(r, kind) {
			d := p.limit(r, kind)
			w := Walked{Name: d.Where + " " + d.Name, Got: [2]unit.Length{d.Least, d.Greatest}}
			if d.Fails == "" {
				w.Want = [2]unit.Length{p.walk(r, kind, -1), p.walk(r, kind, 1)}
			}
			out = append(out, w)
		}
	}
	return out
}

// walk returns the last length one way at which no check fails in any place, 0
// where none fails within reach. Beyond the first failure it walks on, to see
// that no length further off passes.
func (p probe) walk(r *rack.Rack, kind, way int) unit.Length {
	step := r.Format.System.Finest()
	last, failed := p.Drawn, false
	for v := p.Drawn; v > 0 && (v-p.Drawn).Abs() <= reach+step; v = (v + unit.Length(way)*step).Down(step) {
		if way < 0 && v == p.Drawn && !v.On(step) {
			v = v.Up(step) // the next turn is the step below
			continue
		}
		fails := false
		for _, change := range p.change {
			c := alone(r, kind)
			change(c, v-p.Drawn)
			fails = fails || failing(c) != ""
		}
		switch {
		case !fails && failed:
			panic("inspect: " + p.Name + " passes again beyond its limit")
		case !fails:
			last = v
		default:
			failed = true
		}
	}
	if !failed {
		return 0
	}
	return last
}
