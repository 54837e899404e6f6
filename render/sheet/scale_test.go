package sheet

import (
	"slices"
	"testing"

	"slatwright/geometry/rack"
	"slatwright/specs/unit"
)

// The largest scale at which a picture fits, and past the scales in use whole
// hundreds.
func TestLargestScale(t *testing.T) {
	for _, c := range []struct {
		system unit.System
		least  int64 // the divisor that has room
		want   int64
	}{
		{unit.Imperial, 0, 1}, {unit.Imperial, 3, 4}, {unit.Imperial, 96, 96}, {unit.Imperial, 97, 100}, {unit.Imperial, 101, 200},
		{unit.Metric, 3, 5}, {unit.Metric, 100, 100}, {unit.Metric, 101, 200}, {unit.Metric, 950, 1000},
	} {
		in := Input{Rack: &rack.Rack{Format: unit.Format{System: c.system}}}
		if got := largestScale(in, func(den int64) bool { return den >= c.least }); got != c.want {
			t.Errorf("%v, room from 1:%d on: 1:%d; want 1:%d", c.system, c.least, got, c.want)
		}
	}
}

func TestSmallestScale(t *testing.T) {
	in := Input{Rack: &rack.Rack{}}
	for most, want := range map[int64]int64{0: 1, 1: 1, 15: 12, 96: 96, 500: 96} {
		if got := smallestScale(in, func(den int64) bool { return den <= most }); got != want {
			t.Errorf("large enough to 1:%d: 1:%d; want 1:%d", most, got, want)
		}
	}
}

func TestNoScaleFitsNoRoom(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("no panic")
		}
	}()
	largestScale(Input{Rack: &rack.Rack{}}, func(int64) bool { return false })
}

func TestScalesAscend(t *testing.T) {
	for _, s := range []unit.System{unit.Imperial, unit.Metric} {
		if list := shopScales(Input{Rack: &rack.Rack{Format: unit.Format{System: s}}}); !slices.IsSorted(list) || list[0] != 1 {
			t.Errorf("%v: %v", s, list)
		}
	}
}
