package diag

import (
	"cmp"
	"slices"
	"strings"
)

// Nearest returns at most four of the known names that word may have been
// meant for, the nearest first. A name that differs only in case or in the
// signs "-", "_", ".", " " is nearest of all; then at most two names whose edit
// distance is at most a third of the word's length. One edit is a letter too
// many, too few, wrong, or two neighbours exchanged (the restricted
// Damerau-Levenshtein distance). Where there is none, the names that hold the
// word as a part count: "claret" may mean "claret-750".
func Nearest(word string, known []string) []string {
	type candidate struct {
		name string
		far  int
	}
	plain := plainly(word)
	limit := max(len([]rune(plain)), 3) / 3
	var found []candidate
	for _, name := range known {
		if far := distance(plain, plainly(name), limit); far <= limit && name != word {
			found = append(found, candidate{name, far})
		}
	}
	slices.SortStableFunc(found, func(a, b candidate) int { return cmp.Compare(a.far, b.far) })
	var names []string
	for _, c := range found {
		if len(names) < 2 && !slices.Contains(names, c.name) && (len(names) == 0 || c.far == found[0].far) {
			names = append(names, c.name)
		}
	}
	for _, name := range known {
		if len(found) == 0 && len(names) < 4 && len(plain) >= 3 && name != word && strings.Contains(plainly(name), plain) && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

// DidYouMean returns the hint that offers the known names nearest to word, ""
// where none is near.
func DidYouMean(word string, known []string) string {
	names := Nearest(word, known)
	if len(names) == 0 {
		return ""
	}
	return "did you mean `" + strings.Join(names, "` or `") + "`?"
}

func plainly(s string) string {
	return strings.NewReplacer("-", "", "_", "", ".", "", " ", "").Replace(strings.ToLower(s))
}

// distance returns the restricted Damerau-Levenshtein distance of a and b, or
// something over limit where it is over limit.
func distance(a, b string, limit int) int {
	x, y := []rune(a), []rune(b)
	if d := len(x) - len(y); d > limit || -d > limit {
		return limit + 1
	}
	before, last, row := make([]int, len(y)+1), make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(x); i++ {
		row[0] = i
		for j := 1; j <= len(y); j++ {
			change := last[j-1]
			if x[i-1] != y[j-1] {
				change++
			}
			row[j] = min(last[j]+1, row[j-1]+1, change)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(y)]
}
