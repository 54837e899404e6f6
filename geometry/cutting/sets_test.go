package cutting_test

import (
	"bufio"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"slatwright/geometry/cutting"
	"slatwright/specs/unit"
)

// auditBars re-adds a plan of one dimension.
func auditBars(bars []cutting.Bar, pieces []cutting.Piece, kerf unit.Length, plan *cutting.BarPlan) error {
	var cost int64
	have := map[unit.Length]int{}
	used := map[int]int{}
	for _, b := range plan.Bars {
		sum := -kerf
		for _, p := range b.Pieces {
			sum += p + kerf
			have[p] += b.Count
		}
		if sum > bars[b.Bar].Length {
			return fmt.Errorf("%d of pieces on a bar of %d", sum, bars[b.Bar].Length)
		}
		cost += bars[b.Bar].Price * int64(b.Count)
		used[b.Bar] += b.Count
	}
	for i, n := range used {
		if on := bars[i].OnHand; on > 0 && n > on {
			return fmt.Errorf("%d of bar %d used, %d on hand", n, i, on)
		}
	}
	for _, p := range pieces {
		have[p.Length] -= p.Count
	}
	for l, n := range have {
		if n != 0 {
			return fmt.Errorf("%d too many of %d", n, l)
		}
	}
	if cost != plan.Cost {
		return fmt.Errorf("bars cost %d, the plan says %d", cost, plan.Cost)
	}
	return nil
}

// A known is an instance with its optimum.
type known struct {
	name     string
	capacity unit.Length
	best     int64
	pieces   []cutting.Piece
}

// readSet reads one file of the shared sets: two lines an instance,
// "instance NAME CAPACITY DISTINCT LOWER OPTIMUM" and "size:count ...".
func readSet(t *testing.T, path string) []known {
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var out []known
	lines := bufio.NewScanner(f)
	lines.Buffer(nil, 1<<20)
	for lines.Scan() {
		words := strings.Fields(lines.Text())
		if len(words) == 6 && words[0] == "instance" {
			out = append(out, known{name: words[1], capacity: unit.Length(atoi(t, words[2])), best: int64(atoi(t, words[5]))})
			continue
		}
		for _, w := range words {
			size, count, _ := strings.Cut(w, ":")
			k := &out[len(out)-1]
			k.pieces = append(k.pieces, cutting.Piece{Length: unit.Length(atoi(t, size)), Count: atoi(t, count)})
		}
	}
	if len(out) == 0 {
		t.Fatalf("%s: no instances", path)
	}
	return out
}

func atoi(t *testing.T, s string) int {
	n, err := strconv.Atoi(s)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// fewSeconds is the effort of some eight seconds.
const fewSeconds = 4_000_000_000

// TestSets plans the bin-packing sets in the folder that
// SLATWRIGHT_CUTTING_DATA names and prints what was reached. Sets marked all
// must be proven throughout. SLATWRIGHT_CUTTING_SET picks one set.
func TestSets(t *testing.T) {
	dir := os.Getenv("SLATWRIGHT_CUTTING_DATA")
	if dir == "" {
		t.Skip("SLATWRIGHT_CUTTING_DATA names no folder of bin-packing sets")
	}
	for _, set := range []struct {
		file   string
		all    bool
		effort int64
	}{
		{"falkenauer_u", true, 0}, {"scholl_1", true, 0}, {"schwerin_1", true, 0},
		{"waescher", false, fewSeconds}, {"falkenauer_t", false, fewSeconds}, {"scholl_3", false, fewSeconds}, {"hard28", false, fewSeconds},
	} {
		if only := os.Getenv("SLATWRIGHT_CUTTING_SET"); only != "" && only != set.file {
			continue
		}
		t.Run(set.file, func(t *testing.T) {
			instances := readSet(t, filepath.Join(dir, set.file+".txt"))
			reached, proven, slowest := 0, 0, time.Duration(0)
			start := time.Now()
			for _, k := range instances {
				stock := []cutting.Bar{{Length: k.capacity, Price: 1}}
				one := time.Now()
				plan, err := cutting.CutBars(stock, k.pieces, 0, set.effort)
				if err != nil {
					t.Fatalf("%s: %v", k.name, err)
				}
				took := time.Since(one)
				slowest = max(slowest, took)
				if err := auditBars(stock, k.pieces, 0, plan); err != nil {
					t.Errorf("%s: %v", k.name, err)
				}
				if plan.Cost < k.best || plan.Bound > k.best {
					t.Errorf("%s: cost %d, bound %d, optimum %d", k.name, plan.Cost, plan.Bound, k.best)
				}
				if plan.Cost == k.best {
					reached++
				}
				if plan.Proven {
					proven++
				} else {
					t.Logf("%s: cost %d, bound %d, optimum %d, %v", k.name, plan.Cost, plan.Bound, k.best, took.Round(time.Millisecond))
				}
			}
			t.Logf("%s: %d instances, %d reached, %d proven, %v on average, %v at most", set.file, len(instances), reached, proven,
				(time.Since(start) / time.Duration(len(instances))).Round(time.Millisecond), slowest.Round(time.Millisecond))
			if set.all && proven < len(instances) {
				t.Errorf("%d of %d proven", proven, len(instances))
			}
		})
	}
}
