package revision

import (
	"slices"

	"slatwright/geometry/rack"
	"slatwright/specs/unit"
)

// asMeasured is what parts cut for a rack measure in truth, by the names of
// their lengths: "slat.thickness". The file that was drawn before anything was
// measured does not have it; the one drawn after does.
type asMeasured map[string]unit.Length

// found returns the sizes of boards, and the lengths of slats and legs, that the
// new rack has measured and the old one has not.
func found(old, new *rack.Rack) asMeasured {
	out := asMeasured{}
	for _, m := range new.Measured {
		known := slices.ContainsFunc(old.Measured, func(o rack.Measured) bool { return o.Name == m.Name && !o.Later })
		if !m.Later && !known && old.Has(m.Name) {
			out[m.Name] = m.Value
		}
	}
	return out
}

// part returns a part as it is; changed reports whether that differs from how
// it was drawn.
func (w asMeasured) part(p rack.Part) (out rack.Part, changed bool) {
	out = p
	second := p.Name + ".width"
	if p.Name == "slat" || p.Name == "apron" {
		second = p.Name + ".height"
	}
	for _, size := range []struct {
		name string
		to   *unit.Length
	}{{p.Name + ".thickness", &out.Thickness}, {second, &out.Width}, {p.Name + ".length", &out.Length}} {
		if v, ok := w[size.name]; ok && v != *size.to {
			*size.to, changed = v, true
		}
	}
	return out, changed
}

// moved returns the seats of a piece that was drawn of one size and is of
// another: what reached its far face still does.
func moved(list []seat, drawn, is [3]unit.Length) []seat {
	out := slices.Clone(list)
	for i := range out {
		for a := range drawn {
			for _, at := range []*unit.Length{&out[i].lo[a], &out[i].hi[a]} {
				if *at == drawn[a] {
					*at = is[a]
				}
			}
		}
	}
	return out
}
