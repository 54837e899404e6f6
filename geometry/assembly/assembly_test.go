package assembly_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"slatwright/geometry/assembly"
	"slatwright/geometry/finish"
	"slatwright/geometry/rack/racktest"
	"slatwright/specs/unit"
)

const hour = time.Hour

// staves is a top of four.
var staves = finish.Panel{Tops: 1, Staves: 4, StaveWidth: 4 * unit.Inch, Length: 40 * unit.Inch}

// longest walks every chain that ends in step i and returns the longest sum of
// waits: it shares nothing with the schedule.
func longest(steps []assembly.Step, i int, wait func(assembly.Span) time.Duration) time.Duration {
	most := time.Duration(0)
	for _, k := range steps[i].After {
		most = max(most, longest(steps, k, wait))
	}
	return most + wait(steps[i].Wait)
}

// The time until a rack is ready is the longest path through its steps.
func TestReadyIsTheLongestPath(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		steps := make([]assembly.Step, 1+rng.IntN(9))
		for i := range steps {
			least := time.Duration(rng.IntN(5)) * hour
			steps[i].Wait = assembly.Span{Least: least, Greatest: least + time.Duration(rng.IntN(3))*hour}
			for k := range i {
				if rng.IntN(3) == 0 {
					steps[i].After = append(steps[i].After, k)
				}
			}
		}
		check(t, steps)
	}
	for _, text := range []string{
		"", "[finish]\nstain = \"oil_stain\"\n", "[finish]\ncoat = \"none\"\n", "[top]\npresent = false\n",
		"[finish]\ncoat = \"none\"\nstain = \"water_stain\"\n[top]\npresent = false\n",
	} {
		r := racktest.Build(t, "[rack]\ncolumns = 4\nrows = 5\n"+text)
		check(t, assembly.Steps(r, finish.Panel{}, nil))
		if r.HasTop() {
			check(t, assembly.Steps(r, staves, nil))
		}
	}
}

func check(t *testing.T, steps []assembly.Step) {
	t.Helper()
	for _, long := range []bool{false, true} {
		wait := func(s assembly.Span) time.Duration {
			if long {
				return s.Greatest
			}
			return s.Least
		}
		got := assembly.Plan(steps, long)
		want := time.Duration(0)
		for i := range steps {
			end := longest(steps, i, wait)
			if got.End[i] != end || got.Begin[i] != end-wait(steps[i].Wait) {
				t.Errorf("step %d of %+v runs %v to %v; want its end at %v", i, steps, got.Begin[i], got.End[i], end)
			}
			want = max(want, end)
		}
		if got.Ready != want {
			t.Errorf("ready after %v; want %v\n%+v", got.Ready, want, steps)
		}
		sum := time.Duration(0)
		for n, i := range got.Chain {
			sum += wait(steps[i].Wait)
			if n > 0 && !slices.Contains(steps[i].After, got.Chain[n-1]) {
				t.Errorf("chain %v: step %d does not follow %d", got.Chain, i, got.Chain[n-1])
			}
		}
		if sum != got.Ready {
			t.Errorf("the chain %v waits %v; ready after %v", got.Chain, sum, got.Ready)
		}
	}
}

// By hand for oil-based polyurethane in three coats, four ladders and a top:
// 2 x 4 to 6 h between coats and 24 h after them; clamped 30 to 60 min for each
// of six faces of ladders (two ends with one, two inner ones with two), the
// front, the back and the top; filler 1 to 2 h and a coat 4 to 6 h on the slats;
// filler and 24 h for the touching up, which outlasts the glue.
func TestWaitByHand(t *testing.T) {
	steps := assembly.Steps(racktest.Build(t, "[rack]\ncolumns = 3\nrows = 2\n"), finish.Panel{}, nil)
	for long, want := range map[bool]time.Duration{
		false: (2*4+24)*hour + 9*hour/2 + 5*hour + 25*hour,
		true:  (2*6+24)*hour + 9*hour + 8*hour + 26*hour,
	} {
		if got := assembly.Plan(steps, long).Ready; got != want {
			t.Errorf("long %v: ready after %v; want %v", long, got, want)
		}
	}
	stained := assembly.Steps(racktest.Build(t, "[rack]\ncolumns = 3\nrows = 2\n[finish]\nstain = \"oil_stain\"\n"), finish.Panel{}, nil)
	// Conditioner 5 to 15 min, stain 24 to 48 h.
	if got, want := assembly.Plan(stained, true).Ready-assembly.Plan(steps, true).Ready, 48*hour+15*time.Minute; got != want {
		t.Errorf("stain adds %v; want %v", got, want)
	}
	// A glued-up top is clamped 30 to 60 min and cures 24 h before it is coated,
	// beside the ladders, which wait 6 times 30 to 60 min, for filler and a coat, and
	// front and back once: less than its day. The stain, of all parts at once, waits
	// for it.
	panel := assembly.Steps(racktest.Build(t, "[rack]\ncolumns = 3\nrows = 2\n"), staves, nil)
	for long, want := range map[bool]time.Duration{
		false: 24*hour + hour/2 + (2*4+24)*hour + hour/2 + 25*hour,
		true:  24*hour + hour + (2*6+24)*hour + hour + 26*hour,
	} {
		if got := assembly.Plan(panel, long).Ready; got != want {
			t.Errorf("glued-up top, long %v: ready after %v; want %v", long, got, want)
		}
	}
	both := assembly.Steps(racktest.Build(t, "[rack]\ncolumns = 3\nrows = 2\n[finish]\nstain = \"oil_stain\"\n"), staves, nil)
	if got, want := assembly.Plan(both, true).Ready-assembly.Plan(stained, true).Ready, 25*hour; got != want {
		t.Errorf("a glued-up top adds %v to a stained rack; want %v", got, want)
	}
}

func TestDay(t *testing.T) {
	for _, c := range []struct {
		date string
		wait time.Duration
		want string
	}{
		{"2031-03-04", 0, "2031-03-04"}, {"2031-03-04", hour, "2031-03-05"}, {"2031-03-04", 24 * hour, "2031-03-05"},
		{"2031-12-31", 25 * hour, "2032-01-02"}, {"2032-02-28 noon", 24 * hour, "2032-02-29"}, {"spring", hour, ""}, {"", hour, ""},
	} {
		if got, ok := assembly.Day(c.date, c.wait); got != c.want || ok != (c.want != "") {
			t.Errorf("Day(%q, %v) = %q, %v; want %q", c.date, c.wait, got, ok, c.want)
		}
	}
}

// By hand: magnums in the first of four columns make four kinds of ladder, of
// which the two inner ones are turned; the slats of ladder 2 differ from face to
// face, so that its second face rests on a packer under each slat.
func TestFacesAndAids(t *testing.T) {
	r := racktest.Build(t, "[[column]]\ncount = 1\nrows = 3\nfit = [\"magnum-1500\"]\n[[column]]\ncount = 3\nrows = 4\n")
	got := ""
	for _, f := range assembly.Faces(r) {
		got += fmt.Sprint(f.Ladders, f.Turn(), " ", len(f.Slats), "; ")
	}
	if want := "[1]the only face 3; [2]left face, first 3; [3 4]left face, first 4; [5]the only face 4; [2]right face, after turning 4; [3 4]right face, after turning 4; "; got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
	list := ""
	for _, a := range assembly.Aids(racktest.Build(t, "[rack]\ncolumns = 4\nrows = 5\n"), finish.Panel{}) {
		list += fmt.Sprint(a.Count, " ", a.Name, " ", a.Size(unit.Format{System: unit.Imperial}), "; ")
	}
	for _, want := range []string{"4 block E 3/4 × 1 1/2 × 2 in", "8 spacer 3/4 × 1 × ", "1 jig board 3/4 × 10 1/4 × ", "4 packer 3/4 × 1 × 3 in", "2 caul 3/4 × 1 1/8 × ", "4 caul 3/4 × 1 7/8 × "} {
		if !strings.Contains(list, want) {
			t.Errorf("no %q in %s", want, list)
		}
	}
	for _, text := range []string{"[rack]\ncolumns = 4\nrows = 5\n", "[rack]\ncolumns = 1\nrows = 2\n[joint]\nglue = false\n", "[rack]\ncolumns = 2\nrows = 2\n[joint]\ntop = \"glued\"\n"} {
		r, top := racktest.Build(t, text), finish.Panel{Tops: 1, Staves: 4, StaveWidth: 3 * unit.Inch, Length: 20 * unit.Inch}
		steps := assembly.Steps(r, top, nil)
		for _, a := range assembly.Aids(r, top) {
			if !slices.ContainsFunc(steps, func(s assembly.Step) bool { return s.Name == a.By }) {
				t.Errorf("%q: %s is needed by %q, which is no step", text, a.Name, a.By)
			}
		}
	}
	if n := assembly.Packers(racktest.Build(t, "[rack]\ncolumns = 1\nrows = 2\n")); n != 0 {
		t.Errorf("%d packers where no ladder is turned", n)
	}
	under := 0 // slats of ladder 2 with none below
	s := r.Shapes[r.Ladders[1].Shape]
	for _, z := range s.Right {
		if !slices.Contains(s.Left, z) {
			under++
		}
	}
	if got := assembly.Packers(r); got != 4+2*under {
		t.Errorf("%d packers; want %d", got, 4+2*under)
	}
}

// Hardware by hand: 4 columns in 5 rows have 5 ladders; slats stand on 8 faces
// of them, 5 to a face, each with two crossings of two nails: 160. Five ladders
// cross 4 aprons with two nails each: 40.
func TestHardwareByHand(t *testing.T) {
	text := "[rack]\ncolumns = 4\nrows = 5\n"
	lines := func(more string, p finish.Panel) string {
		out := ""
		for _, i := range assembly.Hardware(racktest.Build(t, text+more), p) {
			out += fmt.Sprintf("%s: %s: %d + %d%s\n", i.What, i.For, i.Count, i.Spare, i.Amount)
		}
		return out
	}
	has := func(all, want string, yes bool) {
		t.Helper()
		if strings.Contains(all, want) != yes {
			t.Errorf("%q in the list: %v; want %v\n%s", want, !yes, yes, all)
		}
	}
	all := lines("", finish.Panel{})
	has(all, "brad nail, 18 ga × 1 1/4 in: slats on legs: 160 + 10\n", true)
	has(all, ": aprons on legs: 40 + 10\n", true)
	has(all, "wood screw, No. 8 × 1 1/4 in, round head: up through the blocks' slots into the top: 4 + 2\n", true)
	has(all, "wood screw, No. 8 × 1 1/2 in, countersunk: through the apron into the blocks: 8 + 2\n", true)
	has(all, "top on", false)
	has(all, "anchor", false)
	has(all, "wood screw, No. 8 × 1 1/2 in, countersunk: the jig: from below into fence and stop: 7 + 0\n", true) // 4 in a leg's length of 16 to 24 in, 3 in 11 in
	has(lines("[joint]\ntop = \"glued\"\n", finish.Panel{}), " top: ", false)
	has(lines("[joint]\ntop = \"glued\"\n", finish.Panel{}), "blocks", false)
	has(all, "angle bracket, with screws: behind, where it stands on a counter: 2", true)
	has(lines("[joint]\ntop_nail = \"18 ga x 1 1/2\"\n", finish.Panel{}), "top on the front upper apron", true)
	has(lines("[finish]\ncoat = \"none\"\n", finish.Panel{}), "tape", false)
	if all == lines("", staves) {
		t.Error("staves take no glue")
	}
	tall := racktest.Build(t, "[rack]\ncolumns = 4\nrows = \"most\"\nheight = \"<= 62\"\n")
	if l := assembly.Hardware(tall, finish.Panel{}); l[len(l)-1].Count != 2 || !strings.Contains(l[len(l)-1].What, "anchor") {
		t.Errorf("a tall rack: %+v", l[len(l)-1])
	}
}

// What the design doesn't glue no step glues, and a step names no fixing of the
// top that the design doesn't have.
func TestStepsSayWhatTheDesignSays(t *testing.T) {
	for _, c := range []struct {
		text     string
		has, not []string
	}{
		{"", []string{"Blocks", "front upper apron alone", "Behind, no glue and no nail", "glue and nail", "Fill: slats", "needs no anchor", "spacers between the legs in front; try a bottle", "Packers"}, []string{"Nail it there", "Anchor it", "Glue up the top"}},
		{"[joint]\ntop = \"glued\"\n", []string{"both upper aprons"}, []string{"Blocks", "front upper apron alone"}},
		{"[joint]\ntop_nail = \"18 ga x 1 1/2\"\n", []string{"Nail it there from above", "Behind, no glue and no nail"}, nil},
		{"[joint]\nglue = false\n[top]\npresent = false\n", []string{"nail"}, []string{"glue", "clamps", "Let the glue cure"}},
		{"[finish]\nstain = \"oil_stain\"\n", []string{"stained wood's colour"}, nil},
	} {
		all := ""
		for _, s := range assembly.Steps(racktest.Build(t, "[rack]\ncolumns = 4\nrows = 5\n"+c.text), finish.Panel{}, nil) {
			all += s.Name + ": " + s.Text + "\n"
		}
		for _, w := range c.has {
			if !strings.Contains(all, w) {
				t.Errorf("%q: no %q in\n%s", c.text, w, all)
			}
		}
		for _, w := range c.not {
			if strings.Contains(all, w) {
				t.Errorf("%q: %q in\n%s", c.text, w, all)
			}
		}
	}
}

// Diagonals against floating point, and an exact one.
func TestDiagonals(t *testing.T) {
	for _, text := range []string{"[rack]\ncolumns = 4\nrows = 5\n", "units = \"mm\"\n[rack]\ncolumns = 7\nrows = 2\n"} {
		r := racktest.Build(t, text)
		step := 0.5 / 32 * 25.4
		if r.Format.System == unit.Metric {
			step = 0.5
		}
		for _, d := range assembly.Diagonals(r) {
			if want := math.Hypot(d.A.MM(), d.B.MM()); math.Abs(d.Length.MM()-want) > step+1e-9 {
				t.Errorf("%s%s: %v; want %.3f mm", text, d.Name, d.Length, want)
			}
		}
	}
	r := racktest.Build(t, "units = \"mm\"\n[slat]\nlength = 300\n[leg]\nlength = 400\n[rack]\ncolumns = 2\nrows = 2\n")
	if d := assembly.Diagonals(r)[0]; !d.Exact || d.Text(unit.Metric) != "500" || d.Apart != 2*unit.Millimetre {
		t.Errorf("3, 4, 5: %+v", d)
	}
}
