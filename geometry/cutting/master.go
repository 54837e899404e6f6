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
	left    []float64 // reduced costs of the columns
	weight  []float64 // of the columns
	heft    []float64 // of the surplus of each row
}

// A column is a pattern as the program sees it.
type column struct {
	cost  float64
	at    []int32
	value []float64
	p     pattern
}

// Entries of the inverse below tiny count as zero, and so much of a variable may
// be missing when it leaves the basis.
const (
	tiny   = 1e-7
	nearly = 1e-9
)

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

// solve brings the program to its optimum over the columns at hand. The column
// that enters is the one whose reduced cost is largest for its weight (devex,
// Forrest and Goldfarb 1992), which takes far fewer exchanges than the largest
// reduced cost.
func (m *master) solve() {
	m.weigh()
	for pivots := 0; pivots < 50*(m.rows+20) && !m.work.out(); pivots++ {
		best, enter := 0.0, -1
		for j, r := range m.left {
			if r < -1e-7 && !m.inBasis[j] && r*r > float64(best*m.weight[j]) {
				best, enter = r*r/m.weight[j], j
			}
		}
		surplus := -1
		for i := range m.rows {
			if r := m.ofSurplus(i, m.y); r < -1e-7 && r*r > float64(best*m.heft[i]) {
				best, surplus = r*r/m.heft[i], i
			}
		}
		if enter < 0 && surplus < 0 {
			return
		}
		if !m.pivot(enter, surplus) {
			return
		}
		if pivots%100 == 99 {
			m.refresh()
			m.remain()
		}
	}
}

// ofSurplus picks from a row of prices or of the inverse what belongs to the
// surplus of need i, or to the slack of limit i.
func (m *master) ofSurplus(i int, row []float64) float64 {
	if i >= m.kinds {
		return -row[i]
	}
	return row[i]
}

// weigh starts with equal weights.
func (m *master) weigh() {
	for len(m.weight) < len(m.cols) {
		m.weight, m.left = append(m.weight, 0), append(m.left, 0)
	}
	for j := range m.weight {
		m.weight[j] = 1
	}
	m.heft = m.heft[:0]
	for range m.rows {
		m.heft = append(m.heft, 1)
	}
	m.remain()
}

// remain computes the reduced costs anew.
func (m *master) remain() {
	for j := range m.cols {
		m.left[j] = m.reduced(&m.cols[j])
	}
	m.work.spend(4 * len(m.cols))
}

// reweigh updates weights and reduced costs for the exchange at hand: the
// variable that enters has the weight and the reduced cost given.
func (m *master) reweigh(leave int, weight, reduced float64) {
	row, f := m.inv[leave], 1/m.entered[leave]
	for j := range m.cols {
		s := 0.0
		c := &m.cols[j]
		for i, at := range c.at {
			s += float64(row[at] * c.value[i])
		}
		if s *= f; s != 0 {
			m.left[j] -= float64(reduced * s)
			m.weight[j] = max(m.weight[j], float64(s*s)*weight)
		}
	}
	for i, s := range row {
		s *= f
		m.heft[i] = max(m.heft[i], float64(s*s)*weight)
	}
	m.work.spend(4 * len(m.cols))
	weight = max(1, weight*f*f)
	switch b := m.basis[leave]; {
	case b >= 0:
		m.weight[b] = weight
	case b <= surplusBase:
		m.heft[surplusBase-b] = weight
	}
}

// Basis entries below surplusBase stand for the surplus of a need.
const surplusBase = -1 << 30

func (m *master) pivot(enter, surplus int) bool {
	a := m.entered
	reduced, weight := 0.0, 0.0
	if surplus >= 0 {
		reduced, weight = m.ofSurplus(surplus, m.y), m.heft[surplus]
	} else {
		reduced, weight = m.left[enter], m.weight[enter]
	}
	for r := range a {
		row, s := m.inv[r], 0.0
		if surplus >= 0 {
			s = -m.ofSurplus(surplus, row)
		} else {
			c := &m.cols[enter]
			for i, at := range c.at {
				s += float64(row[at] * c.value[i])
			}
		}
		a[r] = s
	}
	leave, least := m.leaving()
	if leave < 0 {
		return false
	}
	m.reweigh(leave, weight, reduced)
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

// leaving picks the row whose variable leaves the basis: of those that come to
// zero first, or next to first, the one with the largest entry, because small
// ones spoil the inverse (Harris 1973).
func (m *master) leaving() (leave int, step float64) {
	first := math.Inf(1)
	for r, s := range m.entered {
		if s > tiny {
			first = min(first, (max(0, m.x[r])+nearly)/s)
		}
	}
	leave, largest := -1, 0.0
	for r, s := range m.entered {
		if s > tiny && s > largest && max(0, m.x[r])/s <= first {
			leave, largest, step = r, s, max(0, m.x[r])/s
		}
	}
	return leave, step
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
