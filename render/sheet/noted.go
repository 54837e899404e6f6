package sheet

import "slatwright/render/drawing"

// noted records a figure that stands in a note at a place.
func noted(s *drawing.Sheet, at drawing.Point, v length, text string) {
	s.Dims = append(s.Dims, drawing.DimRecord{Role: drawing.Note, Value: v, Printed: text, From: at, To: at, ScaleNum: 1, ScaleDen: 1})
}
