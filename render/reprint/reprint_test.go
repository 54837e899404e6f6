package reprint_test

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"slatwright/render/drawing"
	"slatwright/render/reprint"
)

const mm = drawing.MM

// sheet returns a sheet that shows a text, numbered in its title block.
func sheet(page, of int, name, shows string) *drawing.Sheet {
	s := &drawing.Sheet{Name: fmt.Sprintf("%02d-%s", page, name), Title: name, W: 200 * mm, H: 100 * mm, Frame: drawing.Box(10*mm, 10*mm, 180*mm, 80*mm)}
	text := func(y drawing.Um, words string) drawing.Mark {
		return drawing.Label(drawing.NoteText, 0, drawing.Pt(100*mm, y), 3*mm, drawing.Left, drawing.Plain(words))
	}
	s.Add(text(20*mm, shows), text(88*mm, fmt.Sprintf("%d of %d", page, of)))
	return s
}

func TestCompare(t *testing.T) {
	old := reprint.Packet{
		Drawings: []*drawing.Sheet{sheet(1, 4, "order", "20 bottles"), sheet(2, 4, "front", "wide"), sheet(3, 4, "old", "x"), sheet(4, 4, "parts-1", "A")},
		Labels:   []*drawing.Sheet{sheet(1, 1, "labels", "slat")},
	}
	new := reprint.Packet{
		Drawings: []*drawing.Sheet{sheet(1, 3, "order", "24 bottles"), sheet(2, 3, "front", "wide"), sheet(3, 3, "parts-1", "A")},
		Labels:   []*drawing.Sheet{sheet(1, 2, "labels", "slat"), sheet(2, 2, "labels", "leg")},
	}
	// A label's own "1 of 2" is no sheet number.
	for _, p := range []reprint.Packet{old, new} {
		for _, s := range p.Labels {
			s.FullSize = true
		}
	}
	var got []string
	for _, s := range reprint.Compare(old, new) {
		got = append(got, fmt.Sprintf("%s %s %s %d %d", s.Verdict, s.File, s.Name, s.Old, s.New))
	}
	want := []string{
		"reprint drawings.pdf order 1 1", "keep drawings.pdf front 2 2", "keep drawings.pdf parts-1 4 3", "void drawings.pdf old 3 0",
		"reprint labels.pdf 01-labels 1 1", "new labels.pdf 02-labels 0 2",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// A text like the sheet's number elsewhere on the sheet is what it shows.
func TestNumberOnlyInTheTitleBlock(t *testing.T) {
	old, new := sheet(1, 3, "order", "1 of 3"), sheet(1, 3, "order", "2 of 3")
	if got := reprint.Compare(reprint.Packet{Drawings: []*drawing.Sheet{old}}, reprint.Packet{Drawings: []*drawing.Sheet{new}}); got[0].Verdict != reprint.Print {
		t.Errorf("verdict %s; want %s", got[0].Verdict, reprint.Print)
	}
}
