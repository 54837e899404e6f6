package main

import (
	"runtime"
	"sync"
)

// job makes one file.
type job struct {
	name string
	make func() ([]byte, error)
}

// all runs the jobs side by side and returns their files in the order of the
// jobs. The error is that of the first job that has one. A panic in a job is
// raised again here, where run can catch it.
func all(jobs []job) ([]outFile, error) {
	var (
		files = make([]outFile, len(jobs))
		errs  = make([]error, len(jobs))
		bugs  = make([]any, len(jobs))
		next  = make(chan int)
		group sync.WaitGroup
	)
	one := func(i int) {
		defer func() { bugs[i] = recover() }()
		files[i].name = jobs[i].name
		files[i].data, errs[i] = jobs[i].make()
	}
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for i := range next {
				one(i)
			}
		})
	}
	for i := range jobs {
		next <- i
	}
	close(next)
	group.Wait()
	for i := range jobs {
		if bugs[i] != nil {
			panic(bugs[i])
		}
		if errs[i] != nil {
			return nil, errs[i]
		}
	}
	return files, nil
}
