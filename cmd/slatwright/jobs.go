package main

import "slatwright/specs/parallel"

// job makes one file.
type job struct {
	name string
	make func() ([]byte, error)
}

// all runs the jobs side by side and returns their files in the order of the
// jobs. The error is that of the first job that has one.
func all(jobs []job) ([]outFile, error) {
	files, errs := make([]outFile, len(jobs)), make([]error, len(jobs))
	parallel.Each(len(jobs), func(i int) {
		files[i].name = jobs[i].name
		files[i].data, errs[i] = jobs[i].make()
	})
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	return files, nil
}
