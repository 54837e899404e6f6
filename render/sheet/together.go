package sheet

import "sync"

// together composes pages side by side and returns them in the order of their
// composers, which share nothing but the input and only read it. A panic in one
// is raised again here, where the caller can catch it.
func together(in Input, composers ...func(Input) []*page) []*page {
	var (
		made  = make([][]*page, len(composers))
		bugs  = make([]any, len(composers))
		group sync.WaitGroup
	)
	for i, compose := range composers {
		group.Go(func() {
			defer func() { bugs[i] = recover() }()
			made[i] = compose(in)
		})
	}
	group.Wait()
	var pages []*page
	for i := range composers {
		if bugs[i] != nil {
			panic(bugs[i])
		}
		pages = append(pages, made[i]...)
	}
	return pages
}
