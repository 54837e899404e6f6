package main

import (
	"fmt"
	"strings"

	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
	"slatwright/render/label"
	"slatwright/render/pdf"
	"slatwright/render/report"
	"slatwright/render/sheet"
)

// bench makes the files that go to the saw with a batch.
func bench(plans []*saw.Plan) ([]outFile, error) {
	var inputs []sheet.Input
	var batches []label.Batch
	for _, p := range plans {
		racks := racksOf(p)
		inputs = append(inputs, sheet.Input{Rack: together(p), Mark: report.BatchMark(racks), Cutting: p})
		var marks []string
		for _, r := range racks {
			marks = append(marks, report.Mark(r))
		}
		batches = append(batches, label.Batch{Plan: p, Marks: marks})
	}
	labels, err := label.InCuttingOrder(batches...)
	if err != nil {
		return nil, err
	}
	sheets, err := sheet.Cutting(inputs...)
	if err != nil {
		return nil, &bugError{err}
	}
	head := inputs[0].Rack
	return all([]job{
		{"cutting.pdf", func() ([]byte, error) { return pdf.Encode(document(head, "cutting plan", sheets, false)) }},
		{"cutting-labels.pdf", func() ([]byte, error) { return pdf.Encode(document(head, "labels", labels, true)) }},
		{"cutting-boards.csv", func() ([]byte, error) { return report.Boards(plans...) }},
		{"cutting.json", func() ([]byte, error) { return report.CutJSON(plans) }},
	})
}

func racksOf(p *saw.Plan) []*rack.Rack {
	var out []*rack.Rack
	for _, o := range p.Orders {
		out = append(out, o.Rack)
	}
	return out
}

// together returns the rack of a plan for its title blocks: of several orders a
// copy of the first, whose design names them all.
func together(p *saw.Plan) *rack.Rack {
	first := p.Orders[0].Rack
	if len(p.Orders) == 1 {
		return first
	}
	var names []string
	for _, o := range p.Orders {
		names = append(names, o.Name)
	}
	d := *first.Design
	d.Title, d.Order = strings.Join(names, ", "), fmt.Sprintf("%d orders", len(names))
	d.Customer, d.Date, d.Revision = p.Species.Name, "", ""
	r := *first
	r.Design = &d
	return &r
}
