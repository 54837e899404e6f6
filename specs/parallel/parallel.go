// Package parallel does independent work side by side, with results that do not
// depend on which is done first. Whatever makes many of one kind uses it: the
// sizes of a chart, the sheets of a packet, its files.
package parallel

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"sync"
)

// A Panic is what a call of Each panicked with, and where: by the time that it is
// raised again the stack of the call is gone.
type Panic struct {
	Bug   any
	Stack []byte // as debug.Stack prints it
}

// Error says what the panic was about.
func (p *Panic) Error() string { return fmt.Sprint(p.Bug) }

// Each calls do with every number from 0 to n-1 and returns when all have come
// back. They are begun in order, as many at a time as Go's processors. A call
// keeps what it finds at a place of its own number, and shares with others only
// what all just read. A panic in a call is raised again here, as a *Panic, where
// the caller can catch it: of several that of the least number.
func Each(n int, do func(i int)) {
	var (
		bugs  = make([]*Panic, n)
		next  = make(chan int)
		group sync.WaitGroup
	)
	one := func(i int) {
		defer func() {
			switch bug := recover().(type) {
			case nil:
			case *Panic: // of an Each within
				bugs[i] = bug
			default:
				bugs[i] = &Panic{bug, debug.Stack()}
			}
		}()
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
