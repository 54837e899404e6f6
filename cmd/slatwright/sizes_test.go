package main

import (
	"bytes"
	"encoding/csv"
	"path/filepath"
	"testing"
	"time"
)

// A chart of 10 by 12 sizes, with cutting plans and prices, takes less than five
// seconds on two processors: less than ten processor seconds, whatever else the
// machine does.
func TestSizesInTime(t *testing.T) {
	var stdout, stderr bytes.Buffer
	before := cpuTime(t)
	args := []string{"sizes", filepath.Join(designsDir(t), "harbour-small.toml"), "--columns", "1-10", "--rows", "1-12", "--csv"}
	if got := run(args, &stdout, &stderr); got != statusDone {
		t.Fatalf("exit status %d\n%s", got, stderr.String())
	}
	took := cpuTime(t) - before
	rows, err := csv.NewReader(&stdout).ReadAll()
	if err != nil || len(rows) != 1+10*12 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for _, row := range rows[1:] {
		if row[2] != "fits" || row[13] != "yes" || row[17] == "" {
			t.Errorf("size %q", row)
		}
	}
	t.Logf("%v of processors", took)
	if took > 2*5*time.Second {
		t.Errorf("%v of processors; want less than 10 s", took)
	}
}
