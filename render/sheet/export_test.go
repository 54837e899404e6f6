package sheet

import "slatwright/render/drawing"

// Bare composes the sheets of what stays bare for glue, without the others.
func Bare(in Input) []*drawing.Sheet {
	var out []*drawing.Sheet
	for i, p := range bareSheets(in) {
		p.finish(i+1, 1)
		out = append(out, p.sheet)
	}
	return out
}

// InWords is a statement of the design as the order sheets have it.
func InWords(statement string) string { return inWords(statement) }

// Plainly is what a check is called at the bench.
func Plainly(code string) string { return plainly(code) }
