package cutting_test

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"slatwright/geometry/cutting"
	"slatwright/specs/unit"
)

// randomOrder is a small order with kerf, several boards and prices, now and
// then boards on hand. Sizes are few and coarse, so that the referee can write
// out every layout.
func randomOrder(seed int) cutting.Job {
	s := stream(seed*7919 + 17)
	job := cutting.Job{Shop: cutting.Shop{
		Kerf: unit.Length(s.below(3)), EndTrim: unit.Length(s.below(2)), EdgeTrim: unit.Length(s.below(4) / 3), MinRipLength: unit.Length(s.below(3) * 9),
	}}
	for i := range 2 + s.below(3) {
		job.Parts = append(job.Parts, cutting.Part{Order: "R", Mark: string(rune('A' + i)), Thickness: 1,
			Width: unit.Length(3 + s.below(3)*2), Length: unit.Length(8 + s.below(25)), Count: 1 + s.below(4)})
	}
	for i := range 2 + s.below(3) {
		w, l := 7+s.below(4)*2, 34+s.below(20)
		b := cutting.Board{Nominal: fmt.Sprint("b", i), Thickness: 1, Width: unit.Length(w), Length: unit.Length(l), Price: int64(w*l/4 + s.below(30))}
		if i > 0 && s.below(3) == 0 {
			b.OnHand, b.Price = 1+s.below(2), int64(s.below(2)*20)
		}
		job.Boards = append(job.Boards, b)
	}
	// one board always reaches for everything
	job.Boards[0].Width, job.Boards[0].Length = 11, 40
	return job
}

// A referee writes out every layout of every board by plain recursion over
// the parts' counts, and leaves the choice to a mixed-integer solver. It
// shares no code with the planner and prunes nothing but what is cut down to
// the demand.
type referee struct {
	job   cutting.Job
	need  []int
	rows  map[string]bool // of one section: counts
	found map[string]bool // of one board
}

// strips lists the counts of one strip of width w that fit a length.
func (r *referee) strips(w, length unit.Length) [][]int {
	var out [][]int
	counts := make([]int, len(r.need))
	var put func(i int, used unit.Length)
	put = func(i int, used unit.Length) {
		if i == len(counts) {
			out = append(out, append([]int(nil), counts...))
			return
		}
		put(i+1, used)
		p := r.job.Parts[i]
		if p.Width != w {
			return
		}
		for n := 1; n <= r.need[i]; n++ {
			used += p.Length
			if used > length {
				break
			}
			counts[i] = n
			put(i+1, used+r.job.Shop.Kerf)
			used += r.job.Shop.Kerf
		}
		counts[i] = 0
	}
	put(0, 0)
	return out
}

// sections lists the counts that one ripped section of a length can give.
func (r *referee) sections(b cutting.Board, length unit.Length) map[string][]int {
	out := map[string][]int{}
	room := b.Width - 2*r.job.Shop.EdgeTrim
	byWidth := map[unit.Length][][]int{}
	for _, p := range r.job.Parts {
		byWidth[p.Width] = r.strips(p.Width, length)
	}
	seen := map[string]bool{}
	var put func(counts []int, used unit.Length)
	put = func(counts []int, used unit.Length) {
		key := fmt.Sprint(counts, used)
		if seen[key] {
			return
		}
		seen[key] = true
		out[fmt.Sprint(counts)] = counts
		for w, list := range byWidth {
			if used+w > room {
				continue
			}
			for _, s := range list {
				if next, ok := r.plus(counts, s); ok {
					put(next, used+w+r.job.Shop.Kerf)
				}
			}
		}
	}
	put(make([]int, len(r.need)), 0)
	return out
}

// plus adds two counts; false when they exceed what is wanted.
func (r *referee) plus(a, b []int) ([]int, bool) {
	out := append([]int(nil), a...)
	for i, n := range b {
		if out[i] += n; out[i] > r.need[i] {
			return nil, false
		}
	}
	return out, true
}

// boards lists the counts that a board can give.
func (r *referee) boards(b cutting.Board) [][]int {
	room := b.Length - 2*r.job.Shop.EndTrim
	type piece struct {
		length unit.Length
		counts []int
	}
	var pieces []piece
	known := map[string]bool{}
	for length := unit.Length(1); length <= room; length++ {
		if length >= r.job.Shop.MinRipLength {
			for key, c := range r.sections(b, length) {
				if !known[key] {
					known[key] = true
					pieces = append(pieces, piece{length, c})
				}
			}
		}
		for i, p := range r.job.Parts {
			if p.Width == b.Width && p.Length == length {
				c := make([]int, len(r.need))
				c[i] = 1
				pieces = append(pieces, piece{length, c})
			}
		}
	}
	least := map[string]unit.Length{}
	var out [][]int
	var put func(from int, counts []int, used unit.Length)
	put = func(from int, counts []int, used unit.Length) {
		key := fmt.Sprint(counts)
		if at, ok := least[key]; !ok {
			out = append(out, counts)
		} else if at <= used {
			return
		}
		least[key] = used
		for _, p := range pieces {
			if used+p.length <= room {
				if next, ok := r.plus(counts, p.counts); ok && !same(next, counts) {
					put(0, next, used+p.length+r.job.Shop.Kerf)
				}
			}
		}
	}
	put(0, make([]int, len(r.need)), 0)
	return out
}

func same(a, b []int) bool {
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// program writes the choice among all layouts in LP format.
func (r *referee) program() string {
	var goal, ints bytes.Buffer
	rows := make([]bytes.Buffer, len(r.need))
	limits := make([]bytes.Buffer, len(r.job.Boards))
	n := 0
	for bi, b := range r.job.Boards {
		for _, counts := range r.boards(b) {
			name := fmt.Sprintf("x%d", n)
			n++
			fmt.Fprintf(&goal, " + %d %s\n", b.Price, name)
			fmt.Fprintf(&ints, " %s\n", name)
			for i, c := range counts {
				if c > 0 {
					fmt.Fprintf(&rows[i], " + %d %s\n", c, name)
				}
			}
			if b.OnHand > 0 {
				fmt.Fprintf(&limits[bi], " + %s\n", name)
			}
		}
	}
	var out bytes.Buffer
	fmt.Fprintf(&out, "Minimize\n cost:%s\nSubject To\n", goal.String())
	for i := range rows {
		fmt.Fprintf(&out, " need%d:%s >= %d\n", i, rows[i].String(), r.need[i])
	}
	for i, b := range r.job.Boards {
		if b.OnHand > 0 {
			fmt.Fprintf(&out, " limit%d:%s <= %d\n", i, limits[i].String(), b.OnHand)
		}
	}
	fmt.Fprintf(&out, "General\n%sEnd\n", ints.String())
	return out.String()
}

// judge solves the program; ok is false when there is no plan.
func judge(t testing.TB, solver, program string) (cost int64, ok bool) {
	dir := t.TempDir()
	model, answer := filepath.Join(dir, "m.lp"), filepath.Join(dir, "m.sol")
	if err := os.WriteFile(model, []byte(program), 0o666); err != nil {
		t.Fatal(err)
	}
	log, err := exec.Command(solver, model, "ratio", "0", "allow", "0", "solve", "solution", answer).CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, log)
	}
	text, err := os.ReadFile(answer)
	if err != nil {
		t.Fatal(err)
	}
	head, _, _ := strings.Cut(string(text), "\n")
	if strings.Contains(head, "nfeasible") {
		return 0, false
	}
	_, value, found := strings.Cut(head, "objective value")
	v, err := strconv.ParseFloat(strings.TrimSpace(value), 64)
	if !found || !strings.HasPrefix(head, "Optimal") || err != nil {
		t.Fatalf("answer not understood: %q", head)
	}
	return int64(v + 0.5), true
}

// TestReferee compares random small orders with a mixed-integer solver.
func TestReferee(t *testing.T) {
	must := os.Getenv("SLATWRIGHT_REFEREES") == "1"
	solver, err := exec.LookPath("cbc")
	if err != nil {
		if must {
			t.Fatal("cbc is not installed (Debian: coinor-cbc)")
		}
		t.Skip("cbc is not installed (Debian: coinor-cbc)")
	}
	n := 25
	if must || os.Getenv("SLATWRIGHT_LONG") == "1" {
		n = 200
	}
	solved := 0
	for seed := range n {
		job := randomOrder(seed)
		plan, err := cutting.Make(job)
		if errors.Is(err, cutting.ErrTooLong) || errors.Is(err, cutting.ErrTooWide) {
			continue // nothing to compare; the errors have their own tests
		}
		if err != nil {
			t.Fatalf("order %d: %v", seed, err)
		}
		if len(plan.GlueUps) > 0 {
			continue
		}
		if err := audit(job, plan); err != nil {
			t.Fatalf("order %d: %v", seed, err)
		}
		r := &referee{job: job}
		for _, p := range job.Parts {
			r.need = append(r.need, p.Count)
		}
		want, ok := judge(t, solver, r.program())
		if !ok || plan.Cost != want || !plan.Proven {
			t.Errorf("order %d: cost %d, proven %v; the referee has %d (%v)\n%+v", seed, plan.Cost, plan.Proven, want, ok, job)
		}
		if _, lifted, err := cutting.Bounds(job); err != nil || lifted > want {
			t.Errorf("order %d: bound lifted to %d (%v), the referee has %d", seed, lifted, err, want)
		}
		solved++
	}
	if solved < n*4/5 {
		t.Errorf("only %d of %d orders could be compared", solved, n)
	}
	t.Logf("%d orders compared", solved)
}
