package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"slatwright/geometry/quote"
	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
	"slatwright/specs/unit"
)

// Boards returns the shopping list of cutting plans, one for each wood: the
// boards that are on hand first and then those to buy, with what they cost and
// weigh, how much of them becomes parts, and what to look out for.
func Boards(plans ...*saw.Plan) ([]byte, error) {
	rows := [][]string{boardTitles(plans[0].Format.System)}
	for _, p := range plans {
		cautions := p.Cautions()
		needs := p.Needs()
		slices.SortStableFunc(needs, func(a, b saw.Need) int { return min(b.Board.OnHand, 1) - min(a.Board.OnHand, 1) })
		for _, n := range needs {
			rows = append(rows, boardRow(p, n, plans[0].Format, cautions))
		}
	}
	return encodeRows(rows)
}

// boardRow is the row of one kind of board.
func boardRow(p *saw.Plan, n saw.Need, f unit.Format, cautions []saw.Caution) []string {
	b := n.Board
	from, each, sum, standing := "to buy", quote.Hundredths(b.Price), quote.Hundredths(b.Price*int64(n.Count)), "stated"
	switch {
	case b.OnHand > 0:
		from, each, sum, standing = "on hand", "", "", ""
	case n.Offer.Example:
		standing = "example"
	}
	weight := ""
	if g := p.Grams(b.Thickness, b.Width, b.Length) * float64(n.Count); g > 0 {
		weight = strconv.FormatFloat(g/1000, 'f', 1, 64)
	}
	var notes []string
	for _, c := range cautions {
		if slices.ContainsFunc(c.Boards, func(i int) bool { return slices.Contains(n.Layouts, i) }) {
			notes = append(notes, c.Text)
		}
	}
	return []string{
		b.Nominal, p.Species.Name, strconv.Itoa(n.Count), f.Text(b.Thickness), f.Text(b.Width), f.Text(b.Length),
		b.Thickness.Decimal(), b.Width.Decimal(), b.Length.Decimal(), from, each, sum, standing, strconv.Itoa(n.Yield), weight,
		marksOf(p, n), strings.Join(notes, "; "),
	}
}

// NoBoards returns a shopping list of the parts alone, where there is no plan:
// the reason stands in its last column.
func NoBoards(r *rack.Rack, reason string) ([]byte, error) {
	rows := [][]string{boardTitles(r.Format.System)}
	for _, p := range r.Parts {
		row := make([]string, len(rows[0]))
		row[3], row[6] = r.Format.Text(p.Thickness), p.Thickness.Decimal()
		row[len(row)-2], row[len(row)-1] = fmt.Sprintf("%d %s", p.Count+saw.Spares(r, p.Name), p.Mark), reason
		rows = append(rows, row)
	}
	return encodeRows(rows)
}

func boardTitles(sys unit.System) []string {
	u := sys.String()
	return []string{
		"board", "wood", "count", "thickness " + u, "width " + u, "length " + u, "thickness_mm", "width_mm", "length_mm",
		"from", "price each", "price", "price is", "yield percent", "weight kg", "for", "note",
	}
}

// marksOf lists what is cut from a kind of board, counted over all of them.
func marksOf(p *saw.Plan, n saw.Need) string {
	var labels []string
	count := map[string]int{}
	for _, i := range n.Layouts {
		b := p.Boards[i]
		for _, s := range b.Sections {
			for _, t := range s.Strips {
				for _, x := range t.Parts {
					label := p.Label(x)
					if count[label] == 0 {
						labels = append(labels, label)
					}
					count[label] += b.Count
				}
			}
		}
	}
	slices.Sort(labels)
	for i, l := range labels {
		labels[i] = fmt.Sprintf("%d %s", count[l], l)
	}
	return strings.Join(labels, ", ")
}
