package report

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"

	"slatwright/geometry/rack"
)

// Mark returns the content mark of a solved rack: eight hexadecimal figures
// that stand on every sheet and in the report. Two packets with one mark show
// the same rack, finished alike, for the same order; comments and spelling of the design file
// do not change it.
func Mark(r *rack.Rack) string {
	h := sha256.New()
	d := r.Design
	fmt.Fprintf(h, "%q %q %q %q %q %s\n", d.Title, d.Order, d.Customer, d.Date, d.Revision, d.Units)
	for _, l := range r.Lengths {
		fmt.Fprintf(h, "%s %d\n", l.Name, l.Value)
	}
	for _, p := range r.Parts {
		fmt.Fprintf(h, "%s %q %d %d %d %d %q\n", p.Mark, p.Name, p.Count, p.Thickness, p.Width, p.Length, p.Stock)
	}
	for _, m := range r.Measured {
		fmt.Fprintf(h, "measured %s %t\n", m.Name, m.Later)
	}
	for _, p := range r.Pieces {
		fmt.Fprintf(h, "%d %v %d\n", p.Part, p.Box, p.Grain)
	}
	for _, b := range r.Bottles {
		fmt.Fprintf(h, "%d %d %q\n", b.Column, b.Row, b.Kind.ID)
	}
	f := d.Finish
	fmt.Fprintf(h, "%s %s %d %s %s %s %d\n", d.Wood.Species.ID, f.Coat.ID, f.Coats, f.Stain.ID, f.Conditioner.ID, f.Glue.ID, d.Shop.Tolerance)
	if f.Colour != "" { // a design without one keeps its mark
		fmt.Fprintf(h, "%q\n", f.Colour)
	}
	return hex.EncodeToString(h.Sum(nil))[:8]
}

// BatchMark returns the content mark of several racks that are cut together: of
// one rack its own.
func BatchMark(racks []*rack.Rack) string {
	if len(racks) == 1 {
		return Mark(racks[0])
	}
	h := sha256.New()
	for _, r := range racks {
		fmt.Fprintln(h, Mark(r))
	}
	return hex.EncodeToString(h.Sum(nil))[:8]
}
