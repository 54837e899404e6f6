package assembly_test

import (
	"slices"
	"strings"
	"testing"

	"slatwright/geometry/assembly"
	"slatwright/geometry/finish"
	"slatwright/geometry/rack/racktest"
)

const four = "[rack]\ncolumns = 4\nrows = 5\n"

// jobSteps are the steps of a job, by name, with the order they come in.
func jobSteps(t *testing.T, j assembly.Job) (text map[string]string, at map[string]int) {
	t.Helper()
	text, at = map[string]string{}, map[string]int{}
	for i, s := range j.Steps() {
		text[s.Name], at[s.Name] = s.Text, i
	}
	return text, at
}

// What no drill reaches later is bored before the finish goes on, and only where
// the top is held by screws in slots.
func TestBoredBeforeTheFinish(t *testing.T) {
	for _, c := range []struct {
		text  string
		panel finish.Panel
		bored bool
	}{
		{"", finish.Panel{}, true},
		{"", staves, true},
		{"[finish]\nstain = \"oil_stain\"\n", staves, true},
		{"[finish]\ncoat = \"none\"\n", staves, true},
		{"[joint]\nglue = false\n", finish.Panel{}, true},
		{"[joint]\ntop = \"glued\"\n", staves, false},
		{"[top]\npresent = false\n", finish.Panel{}, false},
	} {
		r := racktest.Build(t, four+c.text)
		steps := assembly.Steps(r, c.panel, nil)
		find := func(name string) int {
			return slices.IndexFunc(steps, func(s assembly.Step) bool { return s.Name == name })
		}
		top, apron := find("Bore: top"), find("Bore: apron")
		if (top >= 0) != c.bored || (apron >= 0) != c.bored {
			t.Errorf("%q: bored at %d and %d; want any: %v", c.text, top, apron, c.bored)
		}
		if !c.bored {
			continue
		}
		for _, w := range []string{"4 holes", "3/32 in wide, 7/16 in deep", "3/4 in thick", "a stop on the bit"} {
			if !strings.Contains(steps[top].Text, w) {
				t.Errorf("%q: no %q in %q", c.text, w, steps[top].Text)
			}
		}
		for _, w := range []string{"8 holes", "11/64 in", "countersink"} {
			if !strings.Contains(steps[apron].Text, w) {
				t.Errorf("%q: no %q in %q", c.text, w, steps[apron].Text)
			}
		}
		for _, name := range []string{"Condition", "Stain", "Coat: top", "Coat: parts", "Fit the top"} {
			if at := find(name); at >= 0 && (!follows(steps, at, top) && name != "Coat: parts" || !follows(steps, at, apron) && name != "Coat: top") {
				t.Errorf("%q: %s does not follow what is bored", c.text, name)
			}
		}
	}
}

// follows reports whether step i comes after step k by the chains of After.
func follows(steps []assembly.Step, i, k int) bool {
	for _, a := range steps[i].After {
		if a == k || follows(steps, a, k) {
			return true
		}
	}
	return false
}

// Clamps go on when the glue's least open time is over, at a minute a slat: five
// slats with glue that stays open for 5 min, so 12 of them in three turns.
func TestTurns(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"rows = 5\n", "As soon as the face's last slat is nailed"},
		{"rows = 12\n", "After every 5 slats (a minute a slat, the glue open for 5 to 10 min; cut the cauls in 3"},
		{"rows = 12\n[finish]\nglue = \"hide_liquid\"\n", "After every 10 slats (a minute a slat, the glue open for 10 to 20 min; cut the cauls in 2"},
	} {
		text, _ := jobSteps(t, assembly.Job{Rack: racktest.Build(t, "[rack]\ncolumns = 2\n"+c.text)})
		if got := text["Ladders, first faces"]; !strings.Contains(got, c.want) {
			t.Errorf("%q: no %q in %q", c.text, c.want, got)
		}
	}
}

// The steps say what the packet knows besides the rack, and nothing of what it
// doesn't.
func TestStepsSayWhatThePacketKnows(t *testing.T) {
	r := racktest.Build(t, four+"[finish]\nstain = \"oil_stain\"\ncolour = \"chestnut\"\n")
	bare, _ := jobSteps(t, assembly.Job{Rack: r})
	told, at := jobSteps(t, assembly.Job{Rack: r, Sawn: true, Sent: "assembled, in one carton", Gauges: []assembly.Gauge{
		{Upright: true}, {Upright: true, Where: "column 2", Tight: true}, {Where: "column 3", Tight: true},
	}})
	for _, c := range []struct{ step, told, bare string }{
		{"Label", "the saw's steps cut", "ladder by ladder"},
		{"Ladders, first faces", "upright gauge (gauges sheets) from each slat to the next (TIGHT, with nothing to spare, so first: column 2)", ""},
		{"Dry fit", "sideways gauges between facing slats (TIGHT, with nothing to spare, so first: column 3)", ""},
		{"Pack", "Sent assembled, in one carton.", ""},
		{"Stain", "Colour: chestnut, as agreed.", "Colour: chestnut, as agreed."},
	} {
		if !strings.Contains(told[c.step], c.told) || strings.Contains(bare[c.step], c.told) != (c.told == c.bare) || !strings.Contains(bare[c.step], c.bare) {
			t.Errorf("%s: %q and %q", c.step, told[c.step], bare[c.step])
		}
	}
	if at["Pack"] != len(told)-1 {
		t.Errorf("packed as step %d of %d", at["Pack"], len(told))
	}
	open, _ := jobSteps(t, assembly.Job{Rack: racktest.Build(t, four+"[finish]\nstain = \"oil_stain\"\n")})
	if !strings.Contains(open["Stain"], "as agreed with the customer: ____") {
		t.Errorf("no line for the colour: %q", open["Stain"])
	}
	flat, _ := jobSteps(t, assembly.Job{Rack: racktest.Build(t, four+"[price]\nsend = \"flat\"\n"), Sent: "flat"})
	if !strings.Contains(flat["Pack"], "on site") {
		t.Errorf("sent flat: %q", flat["Pack"])
	}
}

// One strip serves all aprons only where ladders stand alike from both ends.
func TestStripOfAprons(t *testing.T) {
	for text, want := range map[string]string{
		four: "the one strip",
		"[[column]]\ncount = 1\nrows = 3\nfit = [\"magnum-1500\"]\n[[column]]\ncount = 3\nrows = 4\n": "the strip of its pair",
	} {
		if got, _ := jobSteps(t, assembly.Job{Rack: racktest.Build(t, text)}); !strings.Contains(got["Mark out"], want) {
			t.Errorf("%q: no %q in %q", text, want, got["Mark out"])
		}
	}
}

// A caul is explained once, where it first stands.
func TestCaulIsExplainedOnce(t *testing.T) {
	for _, text := range []string{"", "[joint]\nglue = false\n", "[joint]\nglue = false\ntop = \"glued\"\n"} {
		all := ""
		for _, s := range assembly.Steps(racktest.Build(t, four+text), finish.Panel{}, nil) {
			all += s.Text + "\n"
		}
		if first, said := strings.Index(all, "caul"), strings.Index(all, "cauls (straight sticks"); first != said || strings.Count(all, "straight sticks") != 1 {
			t.Errorf("%q: a caul is named at %d, explained at %d", text, first, said)
		}
	}
}

// Tools are those of what the design has.
func TestTools(t *testing.T) {
	for _, c := range []struct {
		text     string
		panel    finish.Panel
		has, not []string
	}{
		{"", finish.Panel{}, []string{"bit of 1/32 in, a stop at 3/4 in (the slats' nails, the aprons' nails)", "bit of 3/32 in, a stop at 7/16 in (the screws in the top)", "right-angle", "moisture meter", "glue brush", "lint-free"}, []string{"plane"}},
		{"", staves, []string{"plane"}, nil},
		{"[joint]\ntop = \"glued\"\n", finish.Panel{}, []string{"glue brush"}, []string{"right-angle", "slots", "moisture"}},
		{"[joint]\nglue = false\n[top]\npresent = false\n[finish]\ncoat = \"none\"\n", finish.Panel{}, []string{"hammer"}, []string{"glue", "lint-free", "right-angle"}},
	} {
		all := ""
		for _, x := range assembly.Tools(racktest.Build(t, four+c.text), c.panel) {
			all += x.What + " (" + x.For + "); "
		}
		for _, w := range c.has {
			if !strings.Contains(all, w) {
				t.Errorf("%q: no %q in %s", c.text, w, all)
			}
		}
		for _, w := range c.not {
			if strings.Contains(all, w) {
				t.Errorf("%q: %q in %s", c.text, w, all)
			}
		}
	}
}
