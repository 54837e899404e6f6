package cutting

// Bounds returns the bound of the linear program on the cost of a job's plans,
// and what it is lifted to by looking at whole boards.
func Bounds(job Job) (root, lifted int64, err error) {
	sources := sourcesFor(job, thicknesses(job))
	options, err := staveOptions(job, sources)
	if err != nil {
		return 0, 0, err
	}
	for _, in := range split(job.Shop, pool(job, options), sources) {
		s := newSearch(in, &effort{limit: QuickEffort})
		s.root()
		root += s.bound
		s.lift(never, QuickEffort)
		lifted += s.bound
	}
	return root, lifted, nil
}
