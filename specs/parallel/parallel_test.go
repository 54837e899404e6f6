package parallel

import (
	"slices"
	"strings"
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
		got, ok := recover().(*Panic)
		if !ok || got.Bug != 3 || !strings.Contains(string(got.Stack), "oddly") {
			t.Errorf("panic %+v; want 3, raised in oddly", got)
		}
		if got := done.Load(); got != 8 {
			t.Errorf("%d calls came back; want 8", got)
		}
	}()
	Each(10, func(i int) {
		if i == 3 || i == 7 {
			Each(1, func(int) { oddly(i) })
		}
		done.Add(1)
	})
}

//go:noinline
func oddly(i int) { panic(i) }
