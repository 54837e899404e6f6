package main

import (
	"path"

	"slatwright/geometry/assembly"
	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/render/drawing"
	"slatwright/render/label"
	"slatwright/render/pdf"
	"slatwright/render/report"
	"slatwright/render/reprint"
	"slatwright/render/sheet"
	"slatwright/render/svg"
	"slatwright/render/template"
)

// outFile is a file of the packet, whole in memory.
type outFile struct {
	name string // with slashes, below the output folder
	data []byte
}

// contents is what the sheets of a rack's packet show: it, what the checks say
// of it, its cutting plan, and the mark that keeps papers apart.
func contents(r *rack.Rack, findings []check.Finding, mark string) (sheet.Input, error) {
	cuts, uncut, err := planOne(r)
	return sheet.Input{Rack: r, Findings: findings, Mark: mark, Cutting: cuts, Uncut: uncut}, err
}

// packet makes every file of a packet in memory. The order of the files and
// their bytes hang on the contents alone; goroutines only compute.
func packet(in sheet.Input) ([]outFile, error) {
	s, err := compose(in)
	if err != nil {
		return nil, err
	}
	r := in.Rack
	jobs := []job{
		{"drawings.pdf", func() ([]byte, error) { return pdf.Encode(document(r, "drawings", s.Drawings, false)) }},
		{"template.pdf", func() ([]byte, error) { return pdf.Encode(document(r, "full-size templates", s.Templates, true)) }},
		{"labels.pdf", func() ([]byte, error) { return pdf.Encode(document(r, "labels", s.Labels, true)) }},
		{"parts.csv", func() ([]byte, error) { return report.Parts(r) }},
		{"boards.csv", func() ([]byte, error) { return shopping(in) }},
		{"report.json", func() ([]byte, error) { return report.JSON(r, in.Findings) }},
	}
	for _, s := range s.Drawings {
		jobs = append(jobs, job{path.Join("svg", s.Name+".svg"), func() ([]byte, error) { return svg.Encode(s) }})
	}
	return all(jobs)
}

// compose makes every sheet of a packet, not yet in any form of file.
func compose(in sheet.Input) (reprint.Packet, error) {
	drawings, err := sheet.Packet(in)
	if err != nil {
		return reprint.Packet{}, &bugError{err} // whatever was asked for, a sheet must hold it
	}
	templates, err := template.WithTop(in.Rack, in.Cutting.Panel(), in.Mark)
	if err != nil {
		return reprint.Packet{}, err
	}
	labels, err := labelled(in)
	return reprint.Packet{Drawings: drawings, Templates: templates, Labels: labels}, err
}

// labelled returns the labels, in cutting order where there is a plan.
func labelled(in sheet.Input) ([]*drawing.Sheet, error) {
	if in.Cutting == nil {
		return label.Sheets(in.Rack, in.Mark)
	}
	return label.InCuttingOrder(label.Batch{Plan: in.Cutting, Marks: []string{in.Mark}})
}

// shopping returns the shopping list, of the parts alone where there is no plan.
func shopping(in sheet.Input) ([]byte, error) {
	if in.Cutting == nil {
		return report.NoBoards(in.Rack, in.Uncut)
	}
	return report.Boards(in.Cutting)
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
	day, _ := assembly.Day(date, 0)
	return day
}
