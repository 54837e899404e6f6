package cutting

import "slices"

// mostFormable is the largest total for which every sum of prices is tried.
const mostFormable = 1 << 22

// formable returns the least total, not below least, that prices can add up to.
func (in *instance) formable(least int64) int64 {
	prices, step := in.prices()
	if len(prices) == 0 {
		return least
	}
	least = (least + step - 1) / step * step
	top := (least + slices.Max(prices)) / step
	if top > mostFormable {
		return least
	}
	can := make([]bool, top+1)
	can[0] = true
	for _, p := range prices {
		for x := p / step; x <= top; x++ {
			can[x] = can[x] || can[x-p/step]
		}
	}
	for x := least / step; x <= top; x++ {
		if can[x] {
			return x * step
		}
	}
	return least
}

// prices lists the different prices above zero and their greatest common
// divisor, 1 when there are none.
func (in *instance) prices() (list []int64, step int64) {
	for _, src := range in.sources {
		if src.cost == 0 || slices.Contains(list, src.cost) {
			continue
		}
		list = append(list, src.cost)
		a := src.cost
		for a != 0 {
			a, step = step%a, a
		}
	}
	return list, max(1, step)
}
