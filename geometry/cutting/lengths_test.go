package cutting

import (
	"slices"
	"testing"
)

// The set gives back what was put in, in rising order, also what is put in ahead
// while it is walked through.
func TestLengthSet(t *testing.T) {
	const greatest = 300_000_000
	s := newLengthSet(greatest)
	want := []int{1, 2, 63, 64, 65, 4095, 4096, 4097, 1 << 20, 123_456_789, greatest}
	for _, l := range want[:9] {
		s.add(l)
	}
	var got []int
	for l := s.next(0); l > 0; l = s.next(l) {
		got = append(got, l)
		if l == 4097 {
			s.add(123_456_789)
			s.add(greatest)
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	if l := newLengthSet(greatest).next(0); l != -1 {
		t.Errorf("an empty set holds %d", l)
	}
}
