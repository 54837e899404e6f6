package saw_test

import (
	"regexp"
	"strings"
	"testing"

	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
)

// Steps call parts as the labels on them do, whatever their orders are called:
// one name may end in another, or hold a comma.
func TestStepsNamePartsAsLabelsDo(t *testing.T) {
	var racks []*rack.Rack
	for _, name := range []string{"kitchen rack", "north kitchen rack", "rack, strip", "strip"} {
		racks = append(racks, racktest.Build(t, "order = \""+name+"\"\n"+small))
	}
	p := mustMake(t, racks...)
	labels := map[string]bool{}
	for _, b := range p.Boards {
		for _, s := range b.Sections {
			for _, t := range s.Strips {
				for _, x := range t.Parts {
					labels[p.Label(x)] = true
				}
			}
		}
	}
	said := map[string]bool{}
	for _, s := range p.Steps {
		_, list, ok := strings.Cut(p.Yields(s), ": ")
		if !ok {
			continue
		}
		list, _, _ = strings.Cut(list, "; ") // what is still to rip
		for _, name := range regexp.MustCompile(", | and ").Split(list, -1) {
			if said[name] = true; !labels[name] && name != "sections" {
				t.Errorf("%q names %q, which no label bears", p.Yields(s), name)
			}
		}
	}
	if len(said) < 4 {
		t.Errorf("the steps name %d parts", len(said))
	}
}
