package cutting

// leastWidth divides each glued-up part the way that takes the least width,
// and solves the job for that division alone: with many different tops there
// are too many divisions to try them all.
func leastWidth(job Job, sources []source, options [][]stave, free [][]int) (*answer, error) {
	choice := make([]int, len(job.Parts))
	for _, members := range free {
		best := 0
		list := options[members[0]]
		for o := range list {
			if int64(list[o].n)*int64(list[o].width) < int64(list[best].n)*int64(list[best].width) {
				best = o
			}
		}
		for _, i := range members {
			choice[i] = best
		}
	}
	a, err := solve(job, sources, pool(job, options, choice), never)
	if err != nil {
		return nil, err
	}
	a.choice, a.divided = choice, true
	return a, nil
}
