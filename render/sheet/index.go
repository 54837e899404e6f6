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
	about       []about
}

// about is a part that a sheet of a run is about.
type about struct {
	part string
	at   int
}

// kinds are the titles of kinds whose sheets have titles of their own each.
var kinds = map[string]string{
	"order": "Order", "ladder": "Ladders", "section": "Sections", "carcase": "Carcase assembly",
	"parts": "Parts", "bare": "Bare for glue", "jig": "Jig",
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
		n := len(out)
		if n > 0 && out[n-1].kind == kind && out[n-1].title == title {
			out[n-1].last = from + i
		} else {
			out = append(out, indexed{kind: kind, title: title, first: from + i, last: from + i})
			n++
		}
		for _, part := range p.about {
			out[n-1].about = append(out[n-1].about, about{part, from + i})
		}
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

// partRef is the same for those sheets of a kind that are about a part.
func partRef(kind, part string) string { return sheetRef(kind + "." + part) }

// of narrows a row to the sheets about a part; it is empty where there are none.
func (x indexed) of(part string) (out indexed) {
	for _, a := range x.about {
		if a.part != part {
			continue
		}
		if out.kind == "" {
			out.kind, out.first = x.kind, a.at
		}
		out.last = a.at
	}
	return out
}

// widestRef is as wide as any numbers of sheets below a thousand.
const widestRef = "sheets 000–000"

var sheetRefs = regexp.MustCompile(`\{sheets\.([a-z.]+)\}`)

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

// sheetsOf names the sheets of a kind, or of those the ones about a part, by their
// numbers: those of its first row.
func sheetsOf(index []indexed, kind string) string {
	kind, part, of := strings.Cut(kind, ".")
	all := indexed{}
	for _, x := range index {
		if of {
			x = x.of(part)
		}
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
