package cutting_test

import (
	"slices"
	"strings"
	"testing"

	"slatwright/geometry/cutting"
	"slatwright/specs/unit"
)

func oneBoard(width, length unit.Length) []cutting.Board {
	return []cutting.Board{{Nominal: "1x4", Thickness: 19 * mmL, Width: width, Length: length, Price: 100}}
}

func parts(width, length unit.Length, n int) []cutting.Part {
	return []cutting.Part{{Order: "R", Mark: "A", Name: "slat", Thickness: 19 * mmL, Width: width, Length: length, Count: n}}
}

// Boards needed by hand for single rules of cutting.
func TestRules(t *testing.T) {
	for _, c := range []struct {
		name   string
		width  unit.Length // of the board, 1000 mm long
		shop   cutting.Shop
		parts  []cutting.Part
		boards int
	}{
		{"four strips without kerf", 100 * mmL, cutting.Shop{}, parts(25*mmL, 1000*mmL, 4), 1},
		{"three strips with a kerf", 100 * mmL, cutting.Shop{Kerf: 1}, parts(25*mmL, 1000*mmL, 4), 2},
		{"the last kerf may run out of the board", 103 * mmL, cutting.Shop{Kerf: 3 * mmL}, parts(50*mmL, 1000*mmL, 2), 1},
		{"both edges are trimmed", 103 * mmL, cutting.Shop{Kerf: 3 * mmL, EdgeTrim: 1}, parts(50*mmL, 1000*mmL, 2), 2},
		{"a part as wide as the board keeps its edges", 100 * mmL, cutting.Shop{EdgeTrim: 5 * mmL}, parts(100*mmL, 500*mmL, 2), 1},
		{"end trims", 100 * mmL, cutting.Shop{EndTrim: 1}, parts(100*mmL, 500*mmL, 2), 2},
		{"a full-width part may be short", 100 * mmL, cutting.Shop{MinRipLength: 2000 * mmL}, parts(100*mmL, 100*mmL, 10), 1},
		{"short parts come from long strips", 100 * mmL, cutting.Shop{MinRipLength: 600 * mmL}, parts(50*mmL, 100*mmL, 20), 1},
		{"a short rip is lengthened by no more than it must be", 100 * mmL, cutting.Shop{Kerf: 3 * mmL, MinRipLength: 440 * mmL},
			append(parts(45*mmL, 327*mmL, 1), parts(60*mmL, 547*mmL, 1)...), 1},
		{"no second section fits after a long one", 100 * mmL, cutting.Shop{MinRipLength: 600 * mmL}, append(parts(100*mmL, 500*mmL, 1), parts(50*mmL, 100*mmL, 1)...), 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			for i := range c.parts {
				c.parts[i].Mark = string(rune('A' + i))
			}
			plan := mustPlan(t, cutting.Job{Parts: c.parts, Boards: oneBoard(c.width, 1000*mmL), Shop: c.shop})
			if got := plan.Cost / 100; got != int64(c.boards) || !plan.Proven {
				t.Errorf("got %d boards (proven %v), want %d", got, plan.Proven, c.boards)
			}
		})
	}
}

// The short part is worth nothing at the linear program's prices, and has to go
// into the room beside the long one all the same.
func TestPartOfNoWorthFindsRoom(t *testing.T) {
	boards := append(oneBoard(5*mmL, 30*mmL), oneBoard(11*mmL, 40*mmL)...)
	boards[0].Price, boards[1].Price = 37, 80
	job := cutting.Job{Parts: append(parts(3*mmL, 21*mmL, 1), parts(4*mmL, 8*mmL, 1)...), Boards: boards}
	job.Parts[1].Mark = "B"
	if plan := mustPlan(t, job); plan.Cost != 37 || !plan.Proven {
		t.Errorf("cost %d (proven %v), want 37", plan.Cost, plan.Proven)
	}
}

func TestCleanEndsNeedNoTrim(t *testing.T) {
	boards := oneBoard(100*mmL, 1000*mmL)
	boards[0].CleanEnds = true
	plan := mustPlan(t, cutting.Job{Parts: parts(100*mmL, 500*mmL, 2), Boards: boards, Shop: cutting.Shop{EndTrim: 10 * mmL}})
	if plan.Cost != 100 {
		t.Errorf("cost %d, want 100", plan.Cost)
	}
}

func TestBoardsOnHandComeFirst(t *testing.T) {
	boards := append(oneBoard(100*mmL, 1000*mmL), cutting.Board{Nominal: "offcut", Thickness: 19 * mmL, Width: 100 * mmL, Length: 520 * mmL, OnHand: 2})
	plan := mustPlan(t, cutting.Job{Parts: parts(100*mmL, 500*mmL, 4), Boards: boards, Shop: cutting.Shop{Kerf: 3 * mmL}})
	// two offcuts give two; one board of 1000 gives only one more each
	if plan.Cost != 200 || !plan.Proven {
		t.Errorf("cost %d, want 200", plan.Cost)
	}
}

func TestThickerStock(t *testing.T) {
	want := parts(50*mmL, 900*mmL, 4)
	want[0].Thickness = 8 * mmL
	for _, c := range []struct {
		name    string
		shop    cutting.Shop
		process cutting.Process
		leaves  int
		cost    int64
		step    string
	}{
		{"planed", cutting.Shop{}, cutting.Planed, 1, 200, "plane"},
		{"resawn", cutting.Shop{Kerf: 0, ResawHeight: 100 * mmL, ResawKerf: 2 * mmL, ResawAllowance: mmL / 4}, cutting.Resawn, 2, 100, "resaw"},
		{"too wide to resaw", cutting.Shop{ResawHeight: 99 * mmL, ResawKerf: 2 * mmL}, cutting.Planed, 1, 200, "plane"},
	} {
		t.Run(c.name, func(t *testing.T) {
			plan := mustPlan(t, cutting.Job{Parts: want, Boards: oneBoard(100*mmL, 1000*mmL), Shop: c.shop})
			b := plan.Boards[0]
			if b.Process != c.process || b.Leaves != c.leaves || plan.Cost != c.cost {
				t.Errorf("%v into %d leaves for %d, want %v, %d, %d", b.Process, b.Leaves, plan.Cost, c.process, c.leaves, c.cost)
			}
			if s := plan.Steps[0]; string(s.Operation) != c.step || len(s.Cautions) == 0 || s.Critical != (c.step == "resaw") {
				t.Errorf("first step %+v, want %s", s, c.step)
			}
		})
	}
}

func TestWideTopIsGluedUp(t *testing.T) {
	job := cutting.Job{Parts: parts(250*mmL, 600*mmL, 2), Boards: oneBoard(100*mmL, 2000*mmL),
		Shop: cutting.Shop{Kerf: 3 * mmL, JointAllowance: 2 * mmL, GlueLength: 20 * mmL, StaveGrid: mmL}}
	job.Parts[0].Spares = 1
	plan := mustPlan(t, job)
	if len(plan.GlueUps) != 1 {
		t.Fatalf("%d glue-ups, want 1", len(plan.GlueUps))
	}
	g := plan.GlueUps[0]
	if g.Staves != 3 || g.Count != 3 || plan.Cost != 300 {
		t.Errorf("got %+v for %d, want 3 parts of 3 staves for 300", g, plan.Cost)
	}
	if last := plan.Steps[len(plan.Steps)-1]; last.Operation != "glue up" || !slices.Equal(last.Pieces, []cutting.Yield{{Order: "R", Mark: "A"}}) {
		t.Errorf("last step %+v, want the glue-up", last)
	}
}

// Every setting comes once in each stage, long ones first, and the narrow rip
// is marked as critical.
func TestSteps(t *testing.T) {
	job := cutting.Job{Parts: rackParts("R-001", 4, 5, 7), Boards: yard(), Shop: shop}
	plan := mustPlan(t, job)
	type key struct {
		operation cutting.Operation
		setting   cutting.Setting
	}
	seen := map[key]bool{}
	var before cutting.Step
	for _, s := range plan.Steps {
		k := key{s.Operation, s.Setting}
		if s.HasStop && seen[k] {
			t.Errorf("%s at %d comes twice", s.Operation, s.Setting.At)
		}
		seen[k] = true
		if s.Operation == before.Operation && s.HasStop && s.Setting.At >= before.Setting.At {
			t.Errorf("%s at %d after %d", s.Operation, s.Setting.At, before.Setting.At)
		}
		if s.Operation == "rip" && s.Setting.At < 3*in2 {
			if !s.Critical || !strings.Contains(strings.Join(s.Cautions, "; "), "featherboard before the blade only") {
				t.Errorf("rip at %d is not marked: %+v", s.Setting.At, s)
			}
		}
		if s.Count < 1 || len(s.Cautions) == 0 {
			t.Errorf("step %+v", s)
		}
		before = s
	}
	if !seen[key{"rip", cutting.Setting{Kind: cutting.Fence, At: in + in8}}] {
		t.Error("no rip of the slats")
	}
}

func TestKnifeEdgeIsTold(t *testing.T) {
	plan := mustPlan(t, cutting.Job{Parts: parts(50*mmL, 1000*mmL, 2), Boards: oneBoard(103*mmL, 1000*mmL), Shop: cutting.Shop{Kerf: 3 * mmL}})
	if len(plan.Warnings) != 1 || plan.Warnings[0].Board != 0 {
		t.Errorf("warnings %+v, want one of board 0", plan.Warnings)
	}
}

// A short section that is ripped takes the board's rest where nobody would keep
// that; a rest worth keeping stays in one piece. The stop of the short section is
// set in either case.
func TestShortRipsTakeTheRest(t *testing.T) {
	for _, c := range []struct {
		name  string
		board unit.Length
		whole bool
	}{
		{"no rest to keep", 800 * mmL, true},
		{"a rest to keep", 1200 * mmL, false},
	} {
		job := cutting.Job{
			Parts:  append(parts(100*mmL, 300*mmL, 1), parts(45*mmL, 250*mmL, 2)...),
			Boards: oneBoard(100*mmL, c.board), Shop: cutting.Shop{Kerf: 3 * mmL, MinRipLength: 300 * mmL, KeepOffcut: 300 * mmL},
		}
		for i := range job.Parts {
			job.Parts[i].Mark = string(rune('A' + i))
		}
		plan := mustPlan(t, job)
		ripped := 0
		for _, b := range plan.Boards {
			for _, s := range b.Sections {
				if s.Ripped {
					ripped++
					if s.Whole != c.whole {
						t.Errorf("%s: a section of %s, whole %v", c.name, s.Length, s.Whole)
					}
				}
			}
		}
		if ripped == 0 {
			t.Errorf("%s: nothing is ripped", c.name)
		}
	}
}
