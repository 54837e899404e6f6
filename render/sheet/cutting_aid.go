package sheet

import (
	"cmp"
	"slices"

	"slatwright/geometry/saw"
	"slatwright/specs/table"
	"slatwright/specs/word"
)

// aidGroups are the shop aids: those of solid wood, from the boards' ends and from
// what is bought for them, the strips first, the widest before, then the lengths;
// and those of sheet stock all together, as their sizes are listed.
func (c *cutter) aidGroups() []setGroup {
	if len(c.p.Orders) > 1 {
		return nil
	}
	aids := aidsFound(c.in)
	panel := setGroup{heading: "Shop aids of sheet stock", rows: []setRow{panelRow(aids)}}
	aids = slices.DeleteFunc(aids, func(a aidFound) bool { return a.Sheet })
	slices.SortStableFunc(aids, func(a, b aidFound) int { return cmp.Or(cmp.Compare(b.Wide, a.Wide), cmp.Compare(b.Long, a.Long)) })
	rip := setGroup{heading: "Shop aids, rip: fence to blade", common: []string{"in time for the step that each is made before: " + sheetRef("hardware") + "; rip only where the piece is wider"}}
	cut := setGroup{heading: "Shop aids, cut to length: stop to blade"}
	for i := 0; i < len(aids); {
		n := 1
		for i+n < len(aids) && aids[i+n].Wide == aids[i].Wide {
			n++
		}
		rip.rows = append(rip.rows, aidRip(aids[i:i+n]))
		i += n
	}
	for _, a := range aids {
		r := aidCut(a)
		if r.care && len(cut.common) == 0 {
			cut.common = []string{"CARE, short pieces: clamp them or use a sled, hands out of the blade's line"}
		}
		cut.rows = append(cut.rows, r)
	}
	return []setGroup{rip, cut, panel}
}

// panelRow is the cutting of all aids of sheet stock. No part is set by them but for
// the straight and square edges of the jig.
func panelRow(aids []aidFound) setRow {
	n := 0
	var names []string
	for _, a := range aids {
		if !a.Sheet {
			continue
		}
		n += a.Count
		name := kindOf(a)
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return setRow{word: "as listed", gives: word.Count(n, "piece") + ": " + word.List(names), notes: []string{
		"sizes: " + sheetRef("hardware") + "; the jig's straight and square, narrow strips off a wide sheet"}}
}

// aidRip is the fence for aids of one width.
func aidRip(aids []aidFound) setRow {
	var names []string
	for _, a := range aids {
		if name := manyOf(a); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	r := setRow{at: aids[0].Wide, gives: "strips, for " + word.List(names)}
	if r.at < table.Length("saw.push_block") {
		r.care = true
		r.notes = []string{"narrow rip: push block, featherboard before the blade only"}
	}
	return r
}

// aidCut is the stop for the aids of one length; those that are too short to be held
// by hand ask for care.
func aidCut(a aidFound) setRow {
	r := setRow{at: a.Long, care: a.Long < saw.Held(), gives: word.Count(a.Count, "piece") + ": " + manyOf(a), notes: []string{"from " + a.source()}}
	if a.Together {
		r.notes[0] += "; worked as one piece before it is cut up"
	}
	if a.Name == "spacer" {
		r.notes = append(r.notes, a.For)
	}
	return r
}

// manyOf names the aids of a kind with their mark: "blocks E", "spacers".
func manyOf(a aidFound) string {
	if mark, ok := blockMark(a); ok {
		return kindOf(a) + " " + mark
	}
	return kindOf(a)
}
