// Package page is the live page of a design: its sheets, its findings, and
// what is wrong with it. What the program has drawn or could not draw goes in
// through a Board; the board's handler serves the page to a browser on the
// same machine and tells it of each change. Nobody comes next.
//
// Nothing on the page comes from elsewhere, and nothing on it tells the time.
package page

import (
	"embed"
	"html/template"
	"io"

	"slatwright/geometry/check"
	"slatwright/render/drawing"
)

//go:embed page.html page.css page.js
var files embed.FS

var pages = template.Must(template.New("page").Funcs(template.FuncMap{"word": check.Status.Word, "mm": millimetres}).ParseFS(files, "page.html"))

// millimetres is a length in whole millimetres: the page keeps room for a sheet
// before it has come.
func millimetres(u drawing.Um) int64 { return int64((u + drawing.MM/2) / drawing.MM) }

// Sheet is one sheet of the page.
type Sheet struct {
	Name  string // in its address; each name once on a page: letters, figures and "-"
	Title string
	SVG   []byte
	W, H  drawing.Um // of the paper
}

// Group is the sheets that are printed from one file.
type Group struct {
	Title  string
	Sheets []Sheet
}

// Drawn is a design as it was drawn.
type Drawn struct {
	Title    string // of the design, may be ""
	Summary  string
	Findings []check.Finding
	Notes    string // more to know, in lines; may be ""
	Groups   []Group
}

// content is what the page shows at one time.
type content struct {
	File    string
	Turn    int // counts the changes of the page
	Version int // counts the drawn designs, in the sheets' addresses
	Drawn
	Trouble string // why the design as it stands is not drawn; then Drawn is the last that was
}

func (c content) write(w io.Writer, part string) error {
	return pages.ExecuteTemplate(w, part, c)
}
