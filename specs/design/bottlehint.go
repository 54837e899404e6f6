package design

import (
	"slices"
	"strings"

	"slatwright/specs/diag"
	"slatwright/specs/table"
)

// likeBottle returns the hint that offers the bottles nearest to a name that is
// none: by the whole name, else by its first part, read as the trade's word for
// a kind or with its letters mended, with what follows it kept where there is
// such a bottle. "" where none is near.
func likeBottle(name string, known []string) string {
	if hint := diag.DidYouMean(name, known); hint != "" {
		return hint
	}
	first, rest, _ := strings.Cut(strings.ToLower(strings.NewReplacer("_", "-", " ", "-").Replace(name)), "-")
	kinds := firstParts(known)
	kind := table.BottleCalled(first)
	if !slices.Contains(kinds, kind) {
		near := diag.Nearest(first, kinds)
		if slices.Contains(kinds, first) {
			near = []string{first}
		}
		if len(near) == 0 {
			return ""
		}
		kind = near[0]
	}
	var of []string
	for _, k := range known {
		if k == kind+"-"+rest {
			of = []string{k}
			break
		}
		if first, _, _ := strings.Cut(k, "-"); first == kind && len(of) < 4 {
			of = append(of, k)
		}
	}
	return "did you mean `" + strings.Join(of, "` or `") + "`?"
}

// firstParts returns the names' parts before the first "-", each once.
func firstParts(names []string) []string {
	var list []string
	for _, n := range names {
		if first, _, _ := strings.Cut(n, "-"); !slices.Contains(list, first) {
			list = append(list, first)
		}
	}
	return list
}
