package sheet

import (
	"fmt"
	"regexp"
	"strings"

	"slatwright/render/drawing"
)

// An indexed is a run of sheets of one kind in the packet's index, counted from
// 1, both ends included.
type indexed struct {
	kind, title string
	first, last int
}

// kinds are the titles of kinds whose sheets have titles of their own each.
var kinds = map[string]string{
	"order": "Order", "ladder": "Ladders", "section": "Sections", "carcase": "Carcase assembly",
}

// indexOf returns the index of pages that are numbered from a number on: sheets
// of one kind and title side by side are one row.
func indexOf(pages []*page, from int) []indexed {
	var out []indexed
	for i, p := range pages {
		kind, _, _ := strings.Cut(p.sheet.Name, "-")
		title := p.sheet.Title
		if t, ok := kinds[kind]; ok {
			title = t
		}
		if n := len(out); n > 0 && out[n-1].kind == kind && out[n-1].title == title {
			out[n-1].last = from + i
			continue
		}
		out = append(out, indexed{kind, title, from + i, from + i})
	}
	return out
}

// numbers are a row's sheets: "13", "9-12".
func (x indexed) numbers() string {
	if x.first == x.last {
		return fmt.Sprint(x.first)
	}
	return fmt.Sprintf("%d–%d", x.first, x.last)
}

// sheetRef stands in a note for the numbers of the sheets of a kind, which are
// known when the whole packet is: "sheet 13", "sheets 9-12". Lines are broken as if
// it were widestRef. On sheets that are not of a whole packet it becomes
// the kind's own words.
func sheetRef(kind string) string { return "{sheets." + kind + "}" }

// widestRef is as wide as any numbers of sheets below a thousand.
const widestRef = "sheets 000–000"

var sheetRefs = regexp.MustCompile(`\{sheets\.([a-z]+)\}`)

// refer puts numbers in place of what sheetRef left in the notes of a page.
func (p *page) refer(index []indexed) {
	for i, m := range p.sheet.Marks {
		t, ok := m.(drawing.Text)
		if !ok {
			continue
		}
		changed := false
		runs := append([]drawing.Run{}, t.Runs...)
		for k := range runs {
			if strings.Contains(runs[k].Text, "{sheets.") {
				runs[k].Text, changed = sheetRefs.ReplaceAllStringFunc(runs[k].Text, func(s string) string {
					return sheetsOf(index, sheetRefs.FindStringSubmatch(s)[1])
				}), true
			}
		}
		if changed {
			t.Runs = runs
			p.sheet.Marks[i] = t
		}
	}
}

// sheetsOf names the sheets of a kind by their numbers: those of its first row.
func sheetsOf(index []indexed, kind string) string {
	all := indexed{}
	for _, x := range index {
		switch {
		case x.kind != kind:
		case all.kind == "":
			all = x
		case x.first == all.last+1:
			all.last = x.last
		}
	}
	switch {
	case all.kind == "":
		return kind + " sheets"
	case all.first == all.last:
		return "sheet " + all.numbers()
	}
	return "sheets " + all.numbers()
}
