package solve

// bound is a limit that may be missing.
type bound struct {
	set bool
	v   rat
}

// column is one variable of the tableau: its limits and its present value.
type column struct {
	lo, hi bound
	val    rat
}

// tableau is a general-form simplex in exact rationals. Variables are numbered
// from 0: parameters first, then one for each row. Each basic variable is a
// combination of the non-basic ones. Bland's rule (the smallest number
// everywhere) makes it end and makes it give one answer.
type tableau struct {
	vars  []column
	rows  [][]rat // coefficient of each non-basic column
	basic []int   // row -> variable
	free  []int   // column -> variable
	place []int   // variable -> row, or ^column
	trail []limits
}

// limits are what a variable's limits were before a change.
type limits struct {
	v      int
	lo, hi bound
}

func newTableau(params int) *tableau {
	t := &tableau{}
	for p := range params {
		t.vars = append(t.vars, column{})
		t.free = append(t.free, p)
		t.place = append(t.place, ^p)
	}
	return t
}

// mark and undo take limits back to an earlier state. The basis and the values
// stay as they are: non-basic variables within narrow limits are within wider
// ones too, and check mends the rest.
func (t *tableau) mark() int { return len(t.trail) }

func (t *tableau) undo(mark int) {
	for i := len(t.trail) - 1; i >= mark; i-- {
		c := t.trail[i]
		t.vars[c.v].lo, t.vars[c.v].hi = c.lo, c.hi
	}
	t.trail = t.trail[:mark]
}

// addRow adds a variable equal to the combination of parameters and returns
// its number. The parameters may be basic by now.
func (t *tableau) addRow(terms []term) int {
	row := make([]rat, len(t.free))
	var val rat
	for _, f := range terms {
		val = val.add(f.c.mul(t.vars[f.v].val))
		at := t.place[f.v]
		if at < 0 {
			row[^at] = row[^at].add(f.c)
			continue
		}
		for j, c := range t.rows[at] {
			if !c.isZero() {
				row[j] = row[j].add(f.c.mul(c))
			}
		}
	}
	v := len(t.vars)
	t.vars = append(t.vars, column{val: val})
	t.place = append(t.place, len(t.rows))
	t.basic = append(t.basic, v)
	t.rows = append(t.rows, row)
	return v
}

// atLeast and atMost narrow a variable. They report false when its limits have
// passed each other, which must be seen at once: check looks at values only.
func (t *tableau) atLeast(v int, x rat) bool {
	c := &t.vars[v]
	if c.lo.set && !c.lo.v.less(x) {
		return true
	}
	t.trail = append(t.trail, limits{v, c.lo, c.hi})
	c.lo = bound{true, x}
	if c.hi.set && c.hi.v.less(x) {
		return false
	}
	if t.place[v] < 0 && c.val.less(x) {
		t.shift(v, x.sub(c.val))
	}
	return true
}

func (t *tableau) atMost(v int, x rat) bool {
	c := &t.vars[v]
	if c.hi.set && !x.less(c.hi.v) {
		return true
	}
	t.trail = append(t.trail, limits{v, c.lo, c.hi})
	c.hi = bound{true, x}
	if c.lo.set && x.less(c.lo.v) {
		return false
	}
	if t.place[v] < 0 && x.less(c.val) {
		t.shift(v, x.sub(c.val))
	}
	return true
}

// shift moves a non-basic variable by d and the basic ones with it.
func (t *tableau) shift(v int, d rat) {
	t.vars[v].val = t.vars[v].val.add(d)
	j := ^t.place[v]
	for i, r := range t.rows {
		if !r[j].isZero() {
			b := &t.vars[t.basic[i]]
			b.val = b.val.add(r[j].mul(d))
		}
	}
}

// pivot lets the variable of column j into the basis in place of row i's.
func (t *tableau) pivot(i, j int) {
	in, out := t.free[j], t.basic[i]
	row := t.rows[i]
	inv := row[j].inv()
	for k := range row {
		if k != j && !row[k].isZero() {
			row[k] = row[k].mul(inv).neg()
		}
	}
	row[j] = inv
	for h, r := range t.rows {
		if h == i || r[j].isZero() {
			continue
		}
		f := r[j]
		r[j] = rat{}
		for k, c := range row {
			if !c.isZero() {
				r[k] = r[k].add(f.mul(c))
			}
		}
	}
	t.free[j], t.basic[i] = out, in
	t.place[in], t.place[out] = i, ^j
}

func (c *column) canRise() bool { return !c.hi.set || c.val.less(c.hi.v) }
func (c *column) canFall() bool { return !c.lo.set || c.lo.v.less(c.val) }

// check brings every variable within its limits, or reports that none of the
// points does that.
func (t *tableau) check() bool {
	for {
		row, low := t.worst()
		if row < 0 {
			return true
		}
		j := t.entering(row, low)
		if j < 0 {
			return false
		}
		out := &t.vars[t.basic[row]]
		want := out.hi.v
		if low {
			want = out.lo.v
		}
		t.shift(t.free[j], want.sub(out.val).quo(t.rows[row][j]))
		t.pivot(row, j)
	}
}

// worst finds the row of the smallest basic variable outside its limits, and
// whether it is too low; -1 when there is none.
func (t *tableau) worst() (row int, low bool) {
	row = -1
	for i, v := range t.basic {
		if row >= 0 && v > t.basic[row] {
			continue
		}
		c := &t.vars[v]
		if c.lo.set && c.val.less(c.lo.v) {
			row, low = i, true
		} else if c.hi.set && c.hi.v.less(c.val) {
			row, low = i, false
		}
	}
	return row, low
}

// entering finds the column of the smallest non-basic variable that can move
// the basic variable of the row up, or down.
func (t *tableau) entering(row int, up bool) int {
	best := -1
	for j, c := range t.rows[row] {
		s := c.sign()
		if s == 0 || best >= 0 && t.free[j] > t.free[best] {
			continue
		}
		v := &t.vars[t.free[j]]
		if (s > 0) == up && v.canRise() || (s > 0) != up && v.canFall() {
			best = j
		}
	}
	return best
}

// minimise lowers obj, the variable of a row without limits (so that it never
// leaves the basis), as far as the others let it. The limits must hold
// already. It reports false when there is no least value.
func (t *tableau) minimise(obj int) bool { return t.push(obj, false) }

// push is minimise, or with up its opposite.
func (t *tableau) push(obj int, up bool) bool {
	for {
		at := t.place[obj]
		j := t.entering(at, up)
		if j < 0 {
			return true
		}
		if !t.step(j, t.rows[at][j].sign() > 0 == up, at) {
			return false
		}
	}
}

// step moves the non-basic variable of column j up or down until a limit stops
// it, and pivots where the limit is a basic variable's. The row skip takes no
// part: it is the objective, which has no limit below.
func (t *tableau) step(j int, up bool, skip int) bool {
	v := &t.vars[t.free[j]]
	var most rat
	found, stop := false, -1
	if far := v.hi; up && far.set {
		most, found = far.v.sub(v.val), true
	} else if far := v.lo; !up && far.set {
		most, found = v.val.sub(far.v), true
	}
	for i, r := range t.rows {
		if i == skip || r[j].isZero() {
			continue
		}
		b := &t.vars[t.basic[i]]
		rises := (r[j].sign() > 0) == up
		limit := b.lo
		if rises {
			limit = b.hi
		}
		if !limit.set {
			continue
		}
		room := limit.v.sub(b.val).quo(r[j]).abs()
		c := 1
		if found {
			c = most.cmp(room)
		}
		if c > 0 || c == 0 && (stop < 0 && t.basic[i] < t.free[j] || stop >= 0 && t.basic[i] < t.basic[stop]) {
			most, found, stop = room, true, i
		}
	}
	if !found {
		return false
	}
	if !up {
		most = most.neg()
	}
	t.shift(t.free[j], most)
	if stop >= 0 {
		t.pivot(stop, j)
	}
	return true
}
