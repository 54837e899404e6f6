package assembly_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"slatwright/geometry/assembly"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

const hour = time.Hour

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
		check(t, assembly.Steps(racktest.Build(t, "[rack]\ncolumns = 4\nrows = 5\n"+text)))
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
// ladder, the front, the back and the top; 24 h for the glue and the touching up.
func TestWaitByHand(t *testing.T) {
	steps := assembly.Steps(racktest.Build(t, "[rack]\ncolumns = 3\nrows = 2\n"))
	for long, want := range map[bool]time.Duration{
		false: (2*4+24)*hour + 7*hour/2 + 24*hour,
		true:  (2*6+24)*hour + 7*hour + 24*hour,
	} {
		if got := assembly.Plan(steps, long).Ready; got != want {
			t.Errorf("long %v: ready after %v; want %v", long, got, want)
		}
	}
	stained := assembly.Steps(racktest.Build(t, "[rack]\ncolumns = 3\nrows = 2\n[finish]\nstain = \"oil_stain\"\n"))
	// Conditioner 5 to 15 min, stain 24 to 48 h.
	if got, want := assembly.Plan(stained, true).Ready-assembly.Plan(steps, true).Ready, 48*hour+15*time.Minute; got != want {
		t.Errorf("stain adds %v; want %v", got, want)
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

// Every clamp stands on a glued joint, and none is further from the next than
// the table allows unless the ladders are.
func TestClamps(t *testing.T) {
	for _, text := range []string{"[rack]\ncolumns = 4\nrows = 5\n", "[rack]\ncolumns = 1\nrows = 1\n", "units = \"mm\"\n[rack]\ncolumns = 9\nrows = 3\n"} {
		r := racktest.Build(t, text)
		sets := assembly.Sets(r)
		if len(sets) != 3 {
			t.Fatalf("%d sets", len(sets))
		}
		if got, want := sets[0].Count, 2*r.Counts.Rows; got != want || len(sets[0].Places) != want {
			t.Errorf("%s%d clamps for a ladder, at %d places; want %d", text, got, len(sets[0].Places), want)
		}
		for _, p := range sets[0].Places {
			inside := 0
			for _, q := range r.Pieces {
				for _, c := range q.Fixed {
					if c.Axis == space.X && c.Patch.Min.Y < p.Y && p.Y < c.Patch.Max.Y && c.Patch.Min.Z < p.Z && p.Z < c.Patch.Max.Z {
						inside++
					}
				}
			}
			if inside == 0 {
				t.Errorf("%sa clamp at %+v is on no joint", text, p)
			}
		}
		for _, s := range sets[1:] {
			if s.Count != len(s.Places) {
				t.Errorf("%s%s: %d clamps at %d places", text, s.For, s.Count, len(s.Places))
			}
			for i := 1; i < len(s.Places); i++ {
				a, b := s.Places[i-1], s.Places[i]
				if step := b.X - a.X; a.Z == b.Z && step > max(12*unit.Inch+1, r.Kinds[0].Pitch) {
					t.Errorf("%s%s: clamps %v apart", text, s.For, step)
				}
			}
		}
	}
	// 1 1/2 x 1 in of ponderosa pine at 100 to 150 psi.
	f := assembly.Sets(racktest.Build(t, "[rack]\ncolumns = 2\nrows = 1\n"))[0].Force
	if got := f.Text(unit.Imperial); got != "150 to 230 lbf" || math.Abs(f.Greatest-225) > 1e-9 {
		t.Errorf("force %q", got)
	}
	if got := f.Text(unit.Metric); got != "0.7 to 1.0 kN" {
		t.Errorf("force %q", got)
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
