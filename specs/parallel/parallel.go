// Package parallel does independent work side by side, with results that do not
// depend on which is done first. Whatever makes many of one kind uses it: the
// sizes of a chart, the sheets of a packet, its files.
package parallel

import (
	"runtime"
	"sync"
)

// Each calls do with every number from 0 to n-1 and returns when all have come
// back. They are begun in order, as many at a time as Go's processors. A call
// keeps what it finds at a place of its own number, and shares with others only
// what all just read. A panic in a call is raised again here, where the caller
// can catch it: of several that of the least number.
func Each(n int, do func(i int)) {
	var (
		bugs  = make([]any, n)
		next  = make(chan int)
		group sync.WaitGroup
	)
	one := func(i int) {
		defer func() { bugs[i] = recover() }()
		do(i)
	}
	for range min(runtime.GOMAXPROCS(0), n) {
		group.Go(func() {
			for i := range next {
				one(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	group.Wait()
	for _, bug := range bugs {
		if bug != nil {
			panic(bug)
		}
	}
}
