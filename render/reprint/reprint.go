// Package reprint tells which printed sheets of an old packet still show what
// the new one shows. The sheets of both packets go in, composed with the same
// content mark, date and revision, so that these make no difference; a list of
// sheets comes out, for the program to print.
package reprint

import (
	"bytes"
	"fmt"
	"strings"

	"slatwright/render/drawing"
)

// Packet is the sheets of one packet.
type Packet struct {
	Drawings  []*drawing.Sheet // numbered in their title blocks
	Templates []*drawing.Sheet
	Labels    []*drawing.Sheet
}

// Verdict says what to do with a printed sheet.
type Verdict string

// The verdicts.
const (
	Keep  Verdict = "keep"    // shows the same, though its number may be another
	Print Verdict = "reprint" // shows something else
	Add   Verdict = "new"     // the old packet has no such sheet
	Void  Verdict = "void"    // the new packet has no such sheet
)

// Sheet is what to do with one sheet.
type Sheet struct {
	Verdict  Verdict
	File     string // that it is printed from: "drawings.pdf"
	Old, New int    // its page there, from 1; 0 where the packet has no such sheet
	Name     string // without its number: "ladder-1"
	Title    string // "Ladder, left end"
}

// Compare returns every sheet of the new packet in order, file by file, and
// after each file the sheets that only the old packet has.
func Compare(old, new Packet) []Sheet {
	out := compare("drawings.pdf", old.Drawings, new.Drawings)
	out = append(out, compare("template.pdf", old.Templates, new.Templates)...)
	return append(out, compare("labels.pdf", old.Labels, new.Labels)...)
}

func compare(file string, old, new []*drawing.Sheet) []Sheet {
	before := map[string]int{}
	for i, s := range old {
		before[plainName(s, i+1)] = i + 1
	}
	var out []Sheet
	for i, s := range new {
		one := Sheet{Verdict: Print, File: file, New: i + 1, Name: plainName(s, i+1), Title: s.Title}
		one.Old = before[one.Name]
		delete(before, one.Name)
		switch {
		case one.Old == 0:
			one.Verdict = Add
		case bytes.Equal(shown(old[one.Old-1], one.Old, len(old)), shown(s, i+1, len(new))):
			one.Verdict = Keep
		}
		out = append(out, one)
	}
	for i, s := range old {
		if name := plainName(s, i+1); before[name] == i+1 {
			out = append(out, Sheet{Verdict: Void, File: file, Old: i + 1, Name: name, Title: s.Title})
		}
	}
	return out
}

// plainName returns a sheet's name without its number in front. A name that is
// nothing without it keeps it: pages of labels go by their number.
func plainName(s *drawing.Sheet, page int) string {
	name := strings.TrimPrefix(s.Name, fmt.Sprintf("%02d-", page))
	if name == "labels" {
		return s.Name
	}
	return name
}

// blockHeight is how high above the lower edge of the frame a sheet's number
// may stand.
const blockHeight = 12 * drawing.MM

// shown returns the sheet's marks as text, its number in the title block left
// out; full-size sheets have none there. The records of what the marks mean are left out too: they are no ink.
func shown(s *drawing.Sheet, page, of int) []byte {
	number := fmt.Sprintf("%d of %d", page, of)
	ink := *s
	ink.Name, ink.Marks, ink.Dims, ink.Items = "", nil, nil, nil
	for _, m := range s.Marks {
		if t, ok := m.(drawing.Text); ok && !s.FullSize && t.At.Y > s.Frame.Max.Y-blockHeight && t.String() == number {
			continue
		}
		ink.Marks = append(ink.Marks, m)
	}
	var b bytes.Buffer
	if err := ink.Fprint(&b); err != nil {
		panic("reprint: " + err.Error()) // a buffer takes everything
	}
	return b.Bytes()
}
