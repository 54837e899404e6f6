package main

import (
	"path"
	"time"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
	"slatwright/render/drawing"
	"slatwright/render/label"
	"slatwright/render/pdf"
	"slatwright/render/report"
	"slatwright/render/sheet"
	"slatwright/render/svg"
	"slatwright/render/template"
)

// outFile is a file of the packet, whole in memory.
type outFile struct {
	name string // with slashes, below the output folder
	data []byte
}

// packet makes every file of a rack's packet in memory. Cuts is its cutting plan,
// nil where uncut says why there is none. The order of the files
// and their bytes hang on the rack alone; goroutines only compute.
func packet(r *rack.Rack, findings []check.Finding, cuts *saw.Plan, uncut string) ([]outFile, error) {
	mark := report.Mark(r)
	drawings, err := sheet.Packet(sheet.Input{Rack: r, Findings: findings, Mark: mark, Cutting: cuts, Uncut: uncut})
	if err != nil {
		return nil, &bugError{err} // whatever was asked for, a sheet must hold it
	}
	templates, err := template.Sheets(r, mark)
	if err != nil {
		return nil, err
	}
	labels, err := labelled(r, mark, cuts)
	if err != nil {
		return nil, err
	}
	jobs := []job{
		{"drawings.pdf", func() ([]byte, error) { return pdf.Encode(document(r, "drawings", drawings, false)) }},
		{"template.pdf", func() ([]byte, error) { return pdf.Encode(document(r, "full-size templates", templates, true)) }},
		{"labels.pdf", func() ([]byte, error) { return pdf.Encode(document(r, "labels", labels, true)) }},
		{"parts.csv", func() ([]byte, error) { return report.Parts(r) }},
		{"boards.csv", func() ([]byte, error) { return shopping(r, cuts, uncut) }},
		{"report.json", func() ([]byte, error) { return report.JSON(r, findings) }},
	}
	for _, s := range drawings {
		jobs = append(jobs, job{path.Join("svg", s.Name+".svg"), func() ([]byte, error) { return svg.Encode(s) }})
	}
	return all(jobs)
}

// labelled returns the labels, in cutting order where there is a plan.
func labelled(r *rack.Rack, mark string, cuts *saw.Plan) ([]*drawing.Sheet, error) {
	if cuts == nil {
		return label.Sheets(r, mark)
	}
	return label.InCuttingOrder(cuts, []string{mark})
}

// shopping returns the shopping list, of the parts alone where there is no plan.
func shopping(r *rack.Rack, cuts *saw.Plan, uncut string) ([]byte, error) {
	if cuts == nil {
		return report.NoBoards(r, uncut)
	}
	return report.Boards(cuts)
}

// document says what the PDF's properties show.
func document(r *rack.Rack, what string, sheets []*drawing.Sheet, fullSize bool) pdf.Document {
	d := r.Design
	title := d.Title
	if title == "" {
		title = "Bottle rack"
	}
	return pdf.Document{
		Title: title + ", " + what, Subject: d.Order, Keywords: "revision " + d.Revision,
		Date: day(d.Date), Sheets: sheets, FullSize: fullSize,
	}
}

// day returns the day that a design's date names, "" where it is other text: the
// title block shows any date as it was written, a PDF's properties hold a day.
func day(date string) string {
	date = date[:min(len(date), len(time.DateOnly))]
	if _, err := time.Parse(time.DateOnly, date); err != nil {
		return ""
	}
	return date
}
