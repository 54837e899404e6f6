package typeface

import (
	"fmt"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// stepOf turns a segment as the font reader gives it into a step.
func stepOf(s sfnt.Segment) (Step, error) {
	switch s.Op {
	case sfnt.SegmentOpMoveTo:
		return Step{Op: MoveTo, To: vec(s.Args[0])}, nil
	case sfnt.SegmentOpLineTo:
		return Step{Op: LineTo, To: vec(s.Args[0])}, nil
	case sfnt.SegmentOpQuadTo:
		return Step{Op: QuadTo, Ctrl: vec(s.Args[0]), To: vec(s.Args[1])}, nil
	}
	return Step{}, fmt.Errorf("outline step %d is of no kind a TrueType font has", s.Op)
}

func vec(p fixed.Point26_6) Vec { return Vec{int64(p.X), int64(p.Y)} }
