package cutting

import "math"

// A master is the linear program over the patterns found so far: meet every
// need, use no limited board too often, at least cost. It is solved by the
// primal simplex method with an explicit inverse, in floating point: nothing
// it says is taken on trust, it only proposes prices and patterns. Products
// are converted before they are added, so that no machine fuses the two and
// every machine computes the same.
type master struct {
	rows    int
	need    []float64
	cols    []column
	basis   []int // column in each row; -1-i: the artificial or slack of row i
	x       []float64
	y       []float64
	inv     [][]float64
	kinds   int     // rows that are needs; the rest are limits
	big     float64 // price of an unmet need
	work    *effort
	entered []float64
	inBasis []bool
}

// A column is a pattern as the program sees it.
type column struct {
	cost  float64
	at    []int32
	value []float64
	p     pattern
}

const tiny = 1e-9

// newMaster returns a program that meets no need but by its big price.
func newMaster(need []int, limits []int, big float64, work *effort) *master {
	m := &master{rows: len(need) + len(limits), kinds: len(need), big: big, work: work}
	for i, n := range need {
		// a touch more than the need, a different one for each, keeps the
		// method from going round in circles
		m.need = append(m.need, float64(n)+float64(i*7919%101+1)*1e-8)
	}
	for i, n := range limits {
		m.need = append(m.need, float64(n)+float64(i%13+1)*1e-8)
	}
	m.x = append([]float64(nil), m.need...)
	m.y = make([]float64, m.rows)
	m.entered = make([]float64, m.rows)
	for i := range m.rows {
		m.basis = append(m.basis, -1-i)
		row := make([]float64, m.rows)
		row[i] = 1
		m.inv = append(m.inv, row)
		if i < m.kinds {
			m.y[i] = big
		}
	}
	return m
}

// add takes up a column.
func (m *master) add(c column) {
	m.cols = append(m.cols, c)
	m.inBasis = append(m.inBasis, false)
}

// reduced is what a column costs beyond what its pieces are worth.
func (m *master) reduced(c *column) float64 {
	r := c.cost
	for i, at := range c.at {
		r -= float64(m.y[at] * c.value[i])
	}
	return r
}

// solve brings the program to its optimum over the columns at hand.
func (m *master) solve() {
	for pivots := 0; pivots < 50*(m.rows+20) && !m.work.out(); pivots++ {
		best, enter := -1e-7, -1
		for j := range m.cols {
			if m.inBasis[j] {
				continue
			}
			if r := m.reduced(&m.cols[j]); r < best {
				best, enter = r, j
			}
		}
		m.work.spend(4 * len(m.cols))
		surplus := -1
		for i := range m.rows {
			r := m.y[i] // of a need's surplus
			if i >= m.kinds {
				r = -m.y[i] // of a limit's slack
			}
			if r < best {
				best, surplus = r, i
			}
		}
		if enter < 0 && surplus < 0 {
			return
		}
		if !m.pivot(enter, surplus, best) {
			return
		}
		if pivots%100 == 99 {
			m.refresh()
		}
	}
}

// Basis entries below surplusBase stand for the surplus of a need.
const surplusBase = -1 << 30

func (m *master) pivot(enter, surplus int, reduced float64) bool {
	a := m.entered
	for r := range a {
		row, s := m.inv[r], 0.0
		switch {
		case surplus >= m.kinds:
			s = row[surplus]
		case surplus >= 0:
			s = -row[surplus]
		default:
			c := &m.cols[enter]
			for i, at := range c.at {
				s += float64(row[at] * c.value[i])
			}
		}
		a[r] = s
	}
	leave, least := -1, math.Inf(1)
	for r, s := range a {
		if s <= tiny {
			continue
		}
		ratio := max(0, m.x[r]) / s
		if ratio < least-1e-12 || (ratio < least+1e-12 && s > a[leave]) {
			leave, least = r, ratio
		}
	}
	if leave < 0 {
		return false
	}
	m.update(leave, least, reduced)
	if b := m.basis[leave]; b >= 0 {
		m.inBasis[b] = false
	}
	if surplus >= 0 {
		m.basis[leave] = surplusBase - surplus
	} else {
		m.basis[leave] = enter
		m.inBasis[enter] = true
	}
	return true
}

// update changes inverse, values and prices for one exchange.
func (m *master) update(leave int, step, reduced float64) {
	a := m.entered
	pr := m.inv[leave]
	f := 1 / a[leave]
	for i := range m.y {
		m.y[i] += float64(float64(reduced*f) * pr[i])
	}
	for i := range pr {
		pr[i] *= f
	}
	for r, row := range m.inv {
		if s := a[r]; r != leave && (s > 1e-12 || s < -1e-12) {
			for i, v := range pr {
				row[i] -= float64(s * v)
			}
			m.x[r] -= float64(s * step)
			m.work.spend(m.rows)
		}
	}
	m.x[leave] = step
}

// refresh computes values and prices anew from the inverse.
func (m *master) refresh() {
	clear(m.y)
	for r, row := range m.inv {
		x, c := 0.0, m.costOf(m.basis[r])
		for i, v := range row {
			x += float64(v * m.need[i])
			m.y[i] += float64(c * v)
		}
		m.x[r] = x
	}
	m.work.spend(2 * m.rows * m.rows)
}

func (m *master) costOf(b int) float64 {
	switch {
	case b >= 0:
		return m.cols[b].cost
	case b > surplusBase && -1-b < m.kinds:
		return m.big
	}
	return 0
}

// value is the cost of the program's solution.
func (m *master) value() float64 {
	v := 0.0
	for r, b := range m.basis {
		v += float64(m.costOf(b) * m.x[r])
	}
	return v
}
