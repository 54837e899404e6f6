package view

import (
	"cmp"
	"math"
	"runtime"
	"slices"
	"sync"
)

// grid sorts solids into the square cells of the picture plane that they may
// show in, so that a curve meets only those near its own picture.
type grid struct {
	frame  *frame
	solids []solid // nearest to the eye first
	bounds window
	cell   float64
	nx, ny int
	first  []int32 // of each cell in listed; one more at the end
	listed []int32 // solids by cell, nearest first in each
}

// newGrid makes a grid with about as many cells as there are solids.
func newGrid(f *frame, solids []solid) *grid {
	g := &grid{frame: f, solids: solids, bounds: noWindow(), nx: 1, ny: 1, cell: 1}
	slices.SortFunc(solids, func(p, q solid) int {
		return cmp.Or(cmp.Compare(q.near, p.near), cmp.Compare(p.place, q.place))
	})
	for i := range solids {
		g.bounds.join(solids[i].bounds)
	}
	if n := float64(len(solids)); n > 0 {
		w, h := g.bounds.x1-g.bounds.x0, g.bounds.y1-g.bounds.y0
		g.cell = max(math.Sqrt(float64(w*h)/n), w/n, h/n, 1)
		g.nx, g.ny = int(w/g.cell)+1, int(h/g.cell)+1
	}
	g.first = make([]int32, g.nx*g.ny+1)
	g.cover(func(cell int, _ int32) { g.first[cell+1]++ })
	for i := range g.nx * g.ny {
		g.first[i+1] += g.first[i]
	}
	g.listed = make([]int32, g.first[g.nx*g.ny])
	next := slices.Clone(g.first)
	g.cover(func(cell int, s int32) {
		g.listed[next[cell]] = s
		next[cell]++
	})
	return g
}

// cover calls put for each solid and each cell under the bounds of its picture.
func (g *grid) cover(put func(cell int, s int32)) {
	for i := range g.solids {
		b := g.solids[i].bounds
		x0, x1 := g.columns(b.x0, b.x1)
		y0, y1 := g.rows(b.y0, b.y1)
		for y := y0; y <= y1; y++ {
			for x := x0; x <= x1; x++ {
				put(y*g.nx+x, int32(i))
			}
		}
	}
}

// columns returns the first and the last column that x0..x1 meets, with a base
// unit in hand against rounding.
func (g *grid) columns(x0, x1 float64) (int, int) {
	return slot((x0-1-g.bounds.x0)/g.cell, g.nx), slot((x1+1-g.bounds.x0)/g.cell, g.nx)
}

func (g *grid) rows(y0, y1 float64) (int, int) {
	return slot((y0-1-g.bounds.y0)/g.cell, g.ny), slot((y1+1-g.bounds.y0)/g.cell, g.ny)
}

func slot(x float64, n int) int { return int(min(max(math.Floor(x), 0), float64(n-1))) }

// batch is how many curves a worker takes at a time.
const batch = 512

// hideAll puts the hidden stretches of each curve, in order and apart, into the
// slot of the curve. Curves are independent, so workers share them out without
// any effect on the result.
func (g *grid) hideAll(curves []curve, hidden [][]span) {
	var wg sync.WaitGroup
	jobs := make(chan int)
	for range max(1, min(runtime.GOMAXPROCS(0), len(curves)/batch)) {
		wg.Go(func() {
			w := worker{grid: g, seen: make([]int32, len(g.solids))}
			for i := range jobs {
				for n := i; n < min(i+batch, len(curves)); n++ {
					if curves[n].skipped {
						continue
					}
					hidden[n] = w.hidden(&curves[n], int32(n+1))
				}
			}
		})
	}
	for i := 0; i < len(curves); i += batch {
		jobs <- i
	}
	close(jobs)
	wg.Wait()
}

// worker passes curves through the grid; seen holds for each solid the last
// curve that met it.
type worker struct {
	*grid
	seen  []int32
	trace trace
}

func (w *worker) hidden(c *curve, mark int32) []span {
	t := &w.trace
	w.frame.trace(c, t)
	y0, y1 := w.rows(t.bounds.y0, t.bounds.y1)
	for y := y0; y <= y1 && !t.done(); y++ {
		x0, x1 := w.crossed(t, y)
		for x := x0; x <= x1 && !t.done(); x++ {
			w.visit(t, y*w.nx+x, mark)
		}
	}
	return slices.Clone(union(t.hits))
}

// crossed returns the first and the last column of a row that t may show in.
func (w *worker) crossed(t *trace, row int) (int, int) {
	if t.form == arc || t.way.y == 0 {
		return w.columns(t.bounds.x0, t.bounds.x1)
	}
	y := w.bounds.y0 + float64(float64(row)*w.cell)
	a := (y - 2 - t.start.y) / t.way.y
	b := (y + w.cell + 2 - t.start.y) / t.way.y
	a, b = max(min(a, b), 0), min(max(a, b), 1)
	p, q := t.start.x+float64(a*t.way.x), t.start.x+float64(b*t.way.x)
	return w.columns(min(p, q)-1, max(p, q)+1)
}

// visit passes t by the solids of one cell, until none is left that reaches in
// front of t.
func (w *worker) visit(t *trace, cell int, mark int32) {
	for _, s := range w.listed[w.first[cell]:w.first[cell+1]] {
		o := &w.solids[s]
		if o.near <= t.far {
			return
		}
		if w.seen[s] == mark || o.place == t.self {
			continue
		}
		w.seen[s] = mark
		if w.frame.pass(t, o); t.done() {
			return
		}
	}
}
