package assembly_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"slatwright/geometry/assembly"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/specs/unit"
)

const jointRack = "[rack]\ncolumns = 4\nrows = 5\n"

// Steps and clamps once took every crossing for glued, and every top for glued
// in front alone, whatever the design said.
func TestStepsAsTheJointsAre(t *testing.T) {
	const nailed, allRound, topless = "[joint]\nglue = false\n", "[joint]\ntop = \"glued\"\n", "[top]\npresent = false\n"
	for _, c := range []struct {
		text  string
		steps []string // names, in order
		sets  []string
		says  []string // among the steps' texts
		never []string
	}{
		{"", []string{"Sand", "Dry fit", "Tape", "Coat: top", "Coat: parts", "Ladders", "Front aprons", "Back aprons", "Fit the top", "Let the glue cure", "Touch up", "Ready"},
			[]string{"a ladder", "the carcase", "the top"},
			[]string{"Glue and nail slats", "front upper apron only", "with one set of clamps", "the glued faces square", "Pull the tape"}, []string{"all round"}},
		{nailed, []string{"Sand", "Dry fit", "Tape", "Coat: top", "Coat: parts", "Ladders", "Front aprons", "Back aprons", "Fit the top", "Let the glue cure", "Touch up", "Ready"},
			[]string{"the top"},
			[]string{"Nail slats", "nail the two front aprons", "before the last nails are driven", "front upper apron only", "the faces that meet square"},
			[]string{"Glue and nail", "clamps", "glue and nail"}},
		{nailed + topless, []string{"Sand", "Dry fit", "Coat: parts", "Ladders", "Front aprons", "Back aprons", "Touch up", "Ready"},
			nil, []string{"Nail slats"}, []string{"lue", "tape", "clamps"}},
		{nailed + topless + "[finish]\ncoat = \"none\"\n", []string{"Sand", "Dry fit", "Ladders", "Front aprons", "Back aprons", "Ready"}, nil, []string{"Nail slats"}, []string{"lue"}},
		{allRound, []string{"Sand", "Dry fit", "Tape", "Coat: top", "Coat: parts", "Ladders", "Front aprons", "Back aprons", "Fit the top", "Let the glue cure", "Touch up", "Ready"},
			[]string{"a ladder", "the carcase", "the top"}, []string{"Glue the top all round"}, []string{"front upper apron only", "can move"}},
	} {
		r := racktest.Build(t, jointRack+c.text)
		var names, texts, sets []string
		for _, s := range assembly.Steps(r) {
			names, texts = append(names, s.Name), append(texts, s.Text)
		}
		for _, s := range assembly.Sets(r) {
			sets = append(sets, s.For)
		}
		if !slices.Equal(names, c.steps) {
			t.Errorf("%q: steps %q; want %q", c.text, names, c.steps)
		}
		if !slices.Equal(sets, c.sets) {
			t.Errorf("%q: sets %q; want %q", c.text, sets, c.sets)
		}
		all := strings.Join(texts, "\n")
		for _, s := range c.says {
			if !strings.Contains(all, s) {
				t.Errorf("%q: no %q in\n%s", c.text, s, all)
			}
		}
		for _, s := range c.never {
			if strings.Contains(all, s) {
				t.Errorf("%q: %q in\n%s", c.text, s, all)
			}
		}
		check(t, assembly.Steps(r))
	}
}

// What is nailed alone waits for no glue: by hand, four ladders, the front and
// the back would be clamped for 30 to 60 min each, and the glue cures 24 h beside
// the 24 h of touching up.
func TestNailsWaitForNoGlue(t *testing.T) {
	const text = "[rack]\ncolumns = 3\nrows = 2\n[top]\npresent = false\n"
	glued := assembly.Plan(assembly.Steps(racktest.Build(t, text)), false)
	nailed := assembly.Plan(assembly.Steps(racktest.Build(t, text+"[joint]\nglue = false\n")), false)
	if got := glued.Ready - nailed.Ready; got != 3*hour {
		t.Errorf("glue takes %v longer; want 3 h", got)
	}
	bare := racktest.Build(t, text+"[joint]\nglue = false\n[finish]\ncoat = \"none\"\n")
	if got := assembly.Plan(assembly.Steps(bare), true).Ready; got != 0 {
		t.Errorf("a bare nailed rack waits %v", got)
	}
}

// A top that is glued all round is pressed on both upper aprons, each clamp with
// its share of the pressure on aprons and legs' ends together.
func TestTopClampsAllRound(t *testing.T) {
	top := func(r *rack.Rack) assembly.Clamps {
		sets := assembly.Sets(r)
		return sets[len(sets)-1]
	}
	front := top(racktest.Build(t, jointRack))
	r := racktest.Build(t, jointRack+"[joint]\ntop = \"glued\"\n")
	got := top(r)
	if got.Count != 2*front.Count || len(got.Places) != got.Count {
		t.Errorf("%d clamps at %d places; want %d", got.Count, len(got.Places), 2*front.Count)
	}
	lo, hi := got.Places[0].Y, got.Places[len(got.Places)-1].Y
	if depth := r.Len("carcase.depth"); lo+hi != depth || lo >= r.Len("apron.thickness") {
		t.Errorf("clamps %v and %v from the front of a carcase %v deep", lo, hi, depth)
	}
	inches := func(name string) float64 { return float64(r.Len(name)) / float64(unit.Inch) }
	area := 2*inches("carcase.width")*inches("apron.thickness") + float64(2*len(r.Ladders))*inches("leg.width")*inches("leg.thickness")
	if want := 100 * area / float64(got.Count); math.Abs(got.Force.Least-want) > 1e-6 { // ponderosa pine: 100 to 150 psi
		t.Errorf("force %v; want %v", got.Force.Least, want)
	}
}
