package report

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// writeColumns writes rows as lines indented by two, columns two apart. A
// column whose letter in align is "r" stands to the right. Short rows end early,
// and nothing trails.
func writeColumns(w io.Writer, align string, rows [][]string) {
	wide := make([]int, len(align))
	for _, row := range rows {
		for i, cell := range row {
			wide[i] = max(wide[i], utf8.RuneCountInString(cell))
		}
	}
	for _, row := range rows {
		var b strings.Builder
		for i, cell := range row {
			gap := strings.Repeat(" ", wide[i]-utf8.RuneCountInString(cell))
			if align[i] == 'r' {
				b.WriteString("  " + gap + cell)
			} else {
				b.WriteString("  " + cell + gap)
			}
		}
		fmt.Fprintln(w, strings.TrimRight(b.String(), " "))
	}
}
