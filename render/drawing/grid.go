package drawing

import "slices"

// A grid finds boxes by place without looking at all of them: it keeps, for
// each square of the sheet, the numbers of the boxes that reach into it.
type grid struct {
	cols, rows Um
	cells      [][]int
}

// gridStep is the side of a square, about the length of a dimension figure.
const gridStep = 10 * MM

func newGrid(w, h Um) grid {
	g := grid{cols: w/gridStep + 1, rows: h/gridStep + 1}
	g.cells = make([][]int, g.cols*g.rows)
	return g
}

// add notes a box under a number.
func (g *grid) add(r Rect, number int) {
	g.each(r, func(c *[]int) { *c = append(*c, number) })
}

// near returns the numbers of the boxes that share a square with r, sorted,
// each once. What lies off the sheet counts to the squares at its edge.
func (g *grid) near(r Rect) []int {
	var found []int
	g.each(r, func(c *[]int) { found = append(found, *c...) })
	slices.Sort(found)
	return slices.Compact(found)
}

func (g *grid) each(r Rect, f func(*[]int)) {
	x0, x1 := clampTo(r.Min.X/gridStep, g.cols), clampTo(r.Max.X/gridStep, g.cols)
	y0, y1 := clampTo(r.Min.Y/gridStep, g.rows), clampTo(r.Max.Y/gridStep, g.rows)
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			f(&g.cells[y*g.cols+x])
		}
	}
}

// clampTo returns n within 0 .. count-1.
func clampTo(n, count Um) Um { return min(max(n, 0), count-1) }
