package check_test

import (
	"path/filepath"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/golden"
	"slatwright/specs/design"
)

// Each demo design passes its checks, except for the one made to fail.
func TestDemoDesigns(t *testing.T) {
	paths, err := filepath.Glob(filepath.Join(golden.Root(t), "testdata", "designs", "*.toml"))
	if err != nil || len(paths) < 6 {
		t.Fatalf("%d demo designs, %v; want at least 6", len(paths), err)
	}
	for _, path := range paths {
		t.Run(filepath.Base(path), func(t *testing.T) {
			d, err := design.Load(path)
			if err != nil {
				t.Fatal(err)
			}
			r, err := rack.Build(d)
			if err != nil {
				t.Fatal(err)
			}
			list := check.All(r)
			for _, f := range list {
				t.Logf("%-16s %-14s %-8s %10s %10s %-6s %s", f.Name, f.Where, f.Status, f.Figure, f.Limit, f.Unit, f.Says)
			}
			want := filepath.Base(path) == "counter-wide-gap.toml"
			if got := check.Worst(list) == check.Fail; got != want {
				t.Errorf("a check fails: %v; want %v", got, want)
			}
		})
	}
}
