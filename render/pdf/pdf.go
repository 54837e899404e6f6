// Package pdf writes sheets as one PDF document, a page to a sheet. A Document
// goes in; the bytes of a file come out, the same for the same document. Nobody
// comes next: the file is what is shown and printed.
//
// Lettering is real text in embedded fonts, so that it can be searched and
// copied; a stacked fraction carries the text a person would type for it. A
// document of full-size sheets asks the print dialogue not to scale. Not every
// viewer obeys, so a full-size sheet still needs a ruler to be measured.
package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"time"
	"unicode"

	"github.com/go-pdf/fpdf"

	"slatwright/render/drawing"
	"slatwright/render/typeface"
)

// A Document is what one file holds.
type Document struct {
	Title, Author, Subject, Keywords string

	// Date is the day the document bears, as yyyy-mm-dd. Without one it bears
	// the first day of 2000, since the same input gives the same bytes.
	Date string

	Sheets   []*drawing.Sheet
	FullSize bool // to be printed at 100 %
}

const noDate = "2000-01-01"

// program is the creator and the producer that a file names.
const program = "slatwright"

// Encode returns the document as a PDF file. It refuses a document without
// sheets, a date that is none, and a sheet that does not pass its own Check.
func Encode(doc Document) ([]byte, error) {
	if len(doc.Sheets) == 0 {
		return nil, errors.New("a document needs at least one sheet")
	}
	if doc.Date == "" {
		doc.Date = noDate
	}
	date, err := time.Parse(time.DateOnly, doc.Date)
	if err != nil {
		return nil, fmt.Errorf("date %q is not a day written as yyyy-mm-dd", doc.Date)
	}
	for _, s := range doc.Sheets {
		if err := s.Check(); err != nil {
			return nil, err
		}
	}
	var out bytes.Buffer
	if err := compose(doc, date).Output(&out); err != nil {
		return nil, fmt.Errorf("compose pdf: %w", err)
	}
	return finish(out.Bytes(), doc.FullSize)
}

// compose draws the document with the library.
func compose(doc Document, date time.Time) *fpdf.Fpdf {
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: size(doc.Sheets[0])})
	f.SetCatalogSort(true) // without it fonts come in the order of a map
	f.SetCreationDate(date)
	f.SetModificationDate(date)
	f.SetProducer(program, true)
	f.SetCreator(program, true)
	f.SetTitle(clean(doc.Title), true)
	f.SetAuthor(clean(doc.Author), true)
	f.SetSubject(clean(doc.Subject), true)
	f.SetKeywords(clean(doc.Keywords), true)
	f.SetLang("en")
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(0, 0, 0)
	for _, bold := range []bool{false, true} {
		if bold && !anyBold(doc.Sheets) {
			continue // reading a font takes longer than drawing a page
		}
		// The library keeps the bytes it is given.
		f.AddUTF8FontFromBytes(family, style(bold), bytes.Clone(typeface.Of(bold).TTF))
	}
	last := doc.Sheets[len(doc.Sheets)-1]
	for _, s := range doc.Sheets {
		// Always upright: the library would swap the sides of any other page.
		f.AddPageFormat("P", size(s))
		p := &painter{pdf: f}
		p.font(false, drawing.FigureHeight)
		f.Bookmark(clean(s.Title), 0, bookmarkY(s, last))
		p.page(s)
	}
	return f
}

// bookmarkY returns the height to give a bookmark that is to point at the top
// of a sheet: the library counts it down from the top of the last page.
func bookmarkY(s, last *drawing.Sheet) float64 {
	y := (last.H - s.H).MM()
	if y == -1 { // which the library takes for "here"
		y = -0.999
	}
	return y
}

func size(s *drawing.Sheet) fpdf.SizeType {
	return fpdf.SizeType{Wd: s.W.MM(), Ht: s.H.MM()}
}

func anyBold(sheets []*drawing.Sheet) bool {
	for _, s := range sheets {
		for _, m := range s.Marks {
			if t, ok := m.(drawing.Text); ok && t.Bold {
				return true
			}
		}
	}
	return false
}

// clean returns text for the document's properties, with control characters
// and those that the library cannot hold replaced by U+FFFD.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		if r > 0xFFFF || unicode.Is(unicode.C, r) {
			return unicode.ReplacementChar
		}
		return r
	}, s)
}
