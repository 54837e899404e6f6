package cutting

import "math"

// Limits of the parts of a dive.
const (
	mostDives     = 400
	firstDives    = 2          // before the best plan is worked on
	finishStates  = 100000     // open demands that the exact method finishes
	finishSteps   = 20_000_000 // its effort
	pricingRounds = 40         // of the first step of a dive, fewer later
	mostPooled    = 3000       // patterns carried from step to step
)

// A dive fixes patterns of the linear program's solution, solves it again for
// the demand that is left, and goes on until nothing is left.
type dive struct {
	*search
	open   []int // demand left
	left   []int // limited boards left
	done   []pattern
	cost   int64
	find   *pricer
	pool   []pattern
	below  int64 // plans that cost no less are no use
	astray int   // the step at which the second-best pattern is fixed; -1: none
	second int   // and how far down the list it goes
}

func newDive(s *search) *dive {
	d := &dive{search: s, find: newRoughPricer(s.in, s.work), astray: -1, below: never}
	d.open = append(d.open, s.need...)
	d.left = append(d.left, s.limits...)
	d.pool = append(d.pool, s.pool...)
	return d
}

// dives makes dives that differ in one choice each, until the bound is met or
// the effort is used up.
func (s *search) dives(from, to int) {
	find := newRoughPricer(s.in, s.work)
	for n := from; n < to; n++ {
		if s.best != nil && (s.best.cost <= s.bound || s.work.out()) {
			return
		}
		d := newDive(s)
		d.find = find
		if s.best != nil {
			d.below = s.best.cost
		}
		if n > 0 {
			d.astray, d.second = (n-1)/3, (n-1)%3+1
		}
		if sol := d.run(); sol != nil && sol.cost < d.below {
			s.best = sol
		}
	}
}

// run returns the dive's plan, or nil when it finds none of use.
func (d *dive) run() *solution {
	for step := 0; !d.closed(); {
		if d.states(d.open) <= finishStates {
			if sol, ok := d.solveExactly(d.open, d.left, finishSteps, d.below-d.cost); sol != nil {
				return d.end(sol)
			} else if ok && d.below < never {
				return nil
			}
		}
		if d.below < never && d.work.out() {
			return nil
		}
		m := d.program(step)
		if d.work.out() {
			return d.greedy()
		}
		if d.cost+int64(math.Ceil(m.value()-1e-3)) >= d.below {
			return nil
		}
		if !d.fixFloors(m) {
			if !d.fixLargest(m, step) {
				return d.greedy()
			}
			step++
		}
	}
	return d.end(&solution{})
}

func (d *dive) closed() bool {
	for _, n := range d.open {
		if n > 0 {
			return false
		}
	}
	return true
}

func (d *dive) end(rest *solution) *solution {
	return &solution{cost: d.cost + rest.cost, patterns: append(append([]pattern(nil), d.done...), rest.patterns...)}
}
