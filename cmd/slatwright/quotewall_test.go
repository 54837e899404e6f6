package main

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"

	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
)

// wallToQuote is a wall of 3,750 bottles whose cutting plan is not proven.
const wallToQuote = `[rack]
columns = 75
rows = 50
[[board]]
nominal = "1x3"
length = "30 ft"
price = 21
[[board]]
nominal = "1x3"
length = "20 ft"
price = 14
[[board]]
nominal = "1x2"
length = "20 ft"
price = 9
[[board]]
nominal = "1x12"
length = "30 ft"
price = 75
`

// A wall is quoted in a few seconds; the boards that the quote bills are those
// that the cutting sheet and the packet take, though no plan of them is proven.
func TestQuoteOfAWall(t *testing.T) {
	path := filepath.Join(t.TempDir(), "wall.toml")
	if err := os.WriteFile(path, []byte(wallToQuote), 0o600); err != nil {
		t.Fatal(err)
	}
	var stdout, stderr bytes.Buffer
	before := cpuTime(t)
	if got := run([]string{"quote", path, "--json"}, &stdout, &stderr); got != statusDone {
		t.Fatalf("status %d\n%s", got, stderr.String())
	}
	took := cpuTime(t) - before
	t.Logf("%v of processors", took)
	if took > 10*time.Second {
		t.Errorf("%v of processors; want less than 10 s", took)
	}
	var file struct {
		Lines []struct {
			Section          string
			Quantity, Amount float64
		}
	}
	if err := json.Unmarshal(stdout.Bytes(), &file); err != nil {
		t.Fatal(err)
	}
	boards, cost := 0, int64(0)
	for _, l := range file.Lines {
		if l.Section == "wood" {
			boards += int(math.Round(l.Quantity))
			cost += int64(math.Round(100 * l.Amount))
		}
	}
	plans, err := planAll([]string{path})
	if err != nil {
		t.Fatal(err)
	}
	packed, _, err := planOne(plans[0].Orders[0].Rack)
	if err != nil {
		t.Fatal(err)
	}
	for name, p := range map[string]*saw.Plan{"cut": plans[0], "the packet": packed} {
		taken := 0
		for _, b := range p.Boards {
			taken += b.Count
		}
		if p.Proven || taken != boards || p.Cost != cost {
			t.Errorf("%s takes %d boards at %d, proven %v; the quote bills %d at %d", name, taken, p.Cost, p.Proven, boards, cost)
		}
	}
}

// What a wall could gain by the effort of a batch. Long: some minutes.
func TestWallsGainNothingByMoreEffort(t *testing.T) {
	if os.Getenv("SLATWRIGHT_LONG") != "1" {
		t.Skip("long: set SLATWRIGHT_LONG=1")
	}
	for _, text := range []string{wallToQuote, "[rack]\ncolumns = 24\nrows = 20\n", "[rack]\ncolumns = 30\nrows = 12\n"} {
		r := []*rack.Rack{solved(t, []byte(text))}
		quick, err := saw.Make(r, saw.EffortFor(1))
		if err != nil {
			t.Fatal(err)
		}
		thorough, err := saw.Make(r, saw.Thorough)
		if err != nil {
			t.Fatal(err)
		}
		if quick.Cost != thorough.Cost {
			t.Errorf("%d with little effort, %d with much", quick.Cost, thorough.Cost)
		}
	}
}
