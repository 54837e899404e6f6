package sizes

import "testing"

// Hours are rounded to the nearest tenth, weights up: 3 h and 1 minute are 3.0 h.
func TestRounding(t *testing.T) {
	for n, want := range map[int64]string{0: "?", 18000: "3.0", 18100: "3.0", 18299: "3.0", 18300: "3.1", 18600: "3.1", 59: "0.0"} {
		if got := hours(n); got != want {
			t.Errorf("%d hundredths of a minute are %s h; want %s", n, got, want)
		}
	}
	for n, want := range map[int64]string{0: "?", 100: "1.0", 101: "1.1", 110: "1.1"} {
		if got := tenths(n); got != want {
			t.Errorf("%d hundredths are %s; want %s", n, got, want)
		}
	}
}
