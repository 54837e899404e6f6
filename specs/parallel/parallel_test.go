package parallel

import (
	"slices"
	"sync/atomic"
	"testing"
)

func TestEachDoesAllOnce(t *testing.T) {
	for _, n := range []int{0, 1, 2, 1000} {
		got, want := make([]int, n), make([]int, n)
		for i := range want {
			want[i] = i + 1
		}
		Each(n, func(i int) { got[i] += i + 1 })
		if !slices.Equal(got, want) {
			t.Errorf("%d calls left %v; want %v", n, got, want)
		}
	}
}

func TestEachRaisesTheFirstPanic(t *testing.T) {
	var done atomic.Int32
	defer func() {
		if got, want := recover(), 3; got != want {
			t.Errorf("panic %v; want %v", got, want)
		}
		if got := done.Load(); got != 8 {
			t.Errorf("%d calls came back; want 8", got)
		}
	}()
	Each(10, func(i int) {
		if i == 3 || i == 7 {
			panic(i)
		}
		done.Add(1)
	})
}
