package cutting

import "math"

// Limits of the parts of a dive.
const (
	mostDives     = 400
	finishStates  = 4000       // open demands that the exact method finishes
	finishSteps   = 20_000_000 // its effort
	pricingRounds = 30         // of the first step of a dive, fewer later
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
	astray int // the step at which the second-best pattern is fixed; -1: none
	second int // and how far down the list it goes
}

// dives makes dives that differ in one choice each, until the bound is met or
// the effort is used up.
func (s *search) dives() {
	find := newPricer(s.in, false, s.work)
	for n := range mostDives {
		if s.best != nil && (s.best.cost <= s.bound || s.work.out()) {
			return
		}
		d := &dive{search: s, find: find, astray: -1}
		d.open = append(d.open, s.need...)
		d.left = append(d.left, s.limits...)
		d.pool = append(d.pool, s.pool...)
		if n > 0 {
			d.astray, d.second = (n-1)/3, (n-1)%3+1
		}
		if sol := d.run(); sol != nil && (s.best == nil || sol.cost < s.best.cost) {
			s.best = sol
		}
	}
}

// run returns the dive's plan, or nil when it ends above the best one known.
func (d *dive) run() *solution {
	for step := 0; !d.closed(); {
		if d.statesLeft() <= finishStates {
			if sol := d.solveExactly(d.open, d.left, finishSteps); sol != nil {
				return d.end(sol)
			}
		}
		if d.best != nil && d.work.out() {
			return nil
		}
		m := d.program(step)
		if d.work.out() {
			return d.greedy()
		}
		if d.best != nil && d.cost+int64(math.Ceil(m.value()-1e-3)) >= d.best.cost {
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

func (d *dive) statesLeft() int {
	n := 1
	for _, k := range d.open {
		if n *= k + 1; n > finishStates {
			break
		}
	}
	return n
}

func (d *dive) end(rest *solution) *solution {
	return &solution{cost: d.cost + rest.cost, patterns: append(append([]pattern(nil), d.done...), rest.patterns...)}
}
