package unit

// Down returns the greatest multiple of step that is not above l. It panics
// when step is not positive, as do Up and Nearest.
func (l Length) Down(step Length) Length {
	if step <= 0 {
		panic("unit: rounding to a step that is not positive")
	}
	rest := l % step
	if rest < 0 {
		rest += step
	}
	return l - rest
}

// Up returns the least multiple of step that is not below l.
func (l Length) Up(step Length) Length { return -(-l).Down(step) }

// Nearest returns the multiple of step nearest to l, halves away from zero.
func (l Length) Nearest(step Length) Length {
	if l < 0 {
		return -(-l).Nearest(step)
	}
	down := l.Down(step)
	if rest := l - down; rest >= step-rest {
		return down + step
	}
	return down
}

// On reports whether l is a whole multiple of step.
func (l Length) On(step Length) bool { return l.Down(step) == l }
