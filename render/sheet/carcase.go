package sheet

import (
	"fmt"
	"math/big"
	"slices"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// carcase returns the sheet for putting ladders and aprons together: spacing
// between faces, centre distances in brackets, the diagonals, and the order of
// gluing.
func carcase(in Input) *page {
	p := in.newPage("08-carcase", "Carcase assembly")
	notes := carcaseNotes(in)
	box := p.area
	foot := p.area
	foot.Min.Y = foot.Max.Y - needed(notes, foot.W(), 5*drawing.MM) - 8*drawing.MM
	w := newScribe(p.sheet, foot)
	w.heading("Order of work")
	for _, n := range notes {
		w.note(n, 5*drawing.MM)
	}
	box.Max.Y = foot.Min.Y - 10*drawing.MM
	box.Min.Y += 62 * drawing.MM
	box.Min.X += 34 * drawing.MM
	box.Max.X -= 20 * drawing.MM

	s := sceneOf(in.Rack, func(q rack.Piece) bool {
		return in.Rack.Parts[q.Part].Name == "leg" || in.Rack.Parts[q.Part].Name == "apron"
	})
	v := pictured(in, s, view.Front, false, box)
	v.draw(p.sheet, view.Lines(s, view.Front), func(l view.Line) (drawing.Class, bool) {
		if l.Hidden {
			return drawing.Hidden, true
		}
		return drawing.Visible, true
	})
	out := v.extent(s)
	captionBelow(p.sheet, drawing.Pt(out.Centre().X, out.Max.Y), "Seen from the front, slats left out, "+scaleText(v))
	diagonals(p, v)
	spacing(p, v, out)
	return p
}

// spacing puts on the dimensions: between faces nearest to the view, centres
// over them, the whole over all; at the left where the aprons sit.
func spacing(p *page, v picture, out drawing.Rect) {
	r := p.in.Rack
	b := dim.New(p.sheet, r.Format, drawing.Ratio{Num: v.proj.Num, Den: v.proj.Den})
	across := func(x length) dim.Stop {
		return dim.Stop{At: v.point(space.Point{X: x}).X, Value: x, From: out.Min.Y}
	}
	leg := r.Len("leg.thickness")
	var faces, centres []dim.Stop
	for _, l := range r.Ladders {
		faces = append(faces, across(l.X), across(l.X+leg))
		centres = append(centres, across(l.X+leg/2))
	}
	if shown := legibleFaces(faces); len(shown) < len(faces) {
		b.Chain(dim.Above, shown, dim.Options{})
	} else {
		b.Chain(dim.Above, faces, dim.Options{})
		if leg%2 == 0 {
			b.Chain(dim.Above, centres, dim.Options{Brackets: true})
		}
	}
	b.Overall(dim.Above, faces[0], faces[len(faces)-1], dim.Options{})

	up := func(z length) dim.Stop {
		return dim.Stop{At: v.point(space.Point{Z: z}).Y, Value: z, From: out.Min.X}
	}
	lift, high, tall := r.Len("apron.lift"), r.Len("apron.height"), r.Len("leg.length")
	stops := []dim.Stop{up(0)}
	for _, z := range []length{lift, lift + high, tall - high, tall} {
		if s := up(z); s.Value > stops[len(stops)-1].Value {
			stops = append(stops, s)
		}
	}
	slices.Reverse(stops) // from the top of the sheet down
	b.Chain(dim.LeftOf, stops, dim.Options{})
	b.Overall(dim.LeftOf, stops[0], stops[len(stops)-1], dim.Options{})
	b.Draw(out)
}

// legibleFaces returns the leg faces that a chain has room for: all of them, or
// those of the first column only, where figures would crowd each other.
func legibleFaces(faces []dim.Stop) []dim.Stop {
	const figure = 9 * drawing.MM // that many fit side by side, one row of them pulled out
	if faces[len(faces)-1].At-faces[0].At < figure*drawing.Um(len(faces)-1) {
		return faces[:4]
	}
	return faces
}

// diagonalOf returns the diagonal of the carcase's front, from the outer foot
// of one end leg to the outer top of the other, as far as a tape is read: to
// 1/32 in or 1 mm, with the sign for a rounded figure where it is not exact.
func diagonalOf(r *rack.Rack) (printed length, text string) {
	square := func(l length) *big.Int {
		n := big.NewInt(int64(l))
		return n.Mul(n, n)
	}
	sum := new(big.Int).Add(square(r.Len("carcase.width")), square(r.Len("leg.length")))
	root := new(big.Int).Sqrt(sum)
	whole := new(big.Int).Mul(root, root).Cmp(sum) == 0
	step := unit.Inch / 32
	if r.Format.System == unit.Metric {
		step = unit.Millimetre
	}
	// The root rounded down is off by less than a base unit, which does not
	// change what it rounds to unless it lies on a half: then it is short of it
	// only where the root is not whole, and the true one lies above.
	l := length(root.Int64())
	printed = l.Nearest(step)
	text = unit.Format{System: r.Format.System, Finest: step}.Text(printed)
	if !whole || printed != l {
		text = unit.About + text
	}
	return printed, text
}

// diagonals draws both diagonals and letters one of them.
func diagonals(p *page, v picture) {
	r := p.in.Rack
	w, h := r.Len("carcase.width"), r.Len("leg.length")
	a, b := v.point(space.Point{}), v.point(space.Point{X: w, Z: h})
	c, d := v.point(space.Point{Z: h}), v.point(space.Point{X: w})
	g := p.sheet.Group()
	p.sheet.Add(drawing.Line(drawing.Dimension, g, a, b), drawing.Arrow(g, a, b), drawing.Arrow(g, b, a))
	p.sheet.Add(drawing.Line(drawing.Dimension, g, c, d), drawing.Arrow(g, c, d), drawing.Arrow(g, d, c))
	printed, text := diagonalOf(r)
	label := drawing.Label(drawing.FigureText, p.sheet.Group(), drawing.Point{}, drawing.FigureHeight, drawing.Middle,
		drawing.Figure(text+" both ways")).CentredOn(drawing.Pt((a.X+b.X)/2, (a.Y+b.Y)/2))
	plate := label.Bounds().Inset(-drawing.MM)
	p.sheet.Add(drawing.Rectangle(drawing.Solid, label.Group, drawing.White, plate), label)
	p.sheet.Dims = append(p.sheet.Dims, drawing.DimRecord{
		Role: drawing.Note, Value: printed, Printed: text, From: a, To: a, ScaleNum: v.proj.Num, ScaleDen: v.proj.Den,
	})
}

// carcaseNotes are the steps of the work, numbered.
func carcaseNotes(in Input) []string {
	r, f := in.Rack, in.Rack.Format
	apron, _ := r.PartNamed("apron")
	_, diagonal := diagonalOf(r)
	steps := []string{
		fmt.Sprintf("Mark the ladders' places on all four aprons %s together, from one end. Dry-fit the %d ladders before any glue.", apron.Mark, r.Counts.Ladders),
		"Back on the bench: glue and fasten the front aprons to the end ladders first, flush with their outer faces, then to the inner ladders. " + channelText(r),
		fmt.Sprintf("Measure both diagonals before the glue sets: equal, and %s %s. Rack it square, then turn it over and set the back aprons alike.", diagonal, f.System),
		"Clear squeezed-out glue where a bottle or a slat will touch. Clamp and wait as the glue's maker says.",
	}
	if r.HasTop() {
		steps = append(steps, fmt.Sprintf("Top last: standing out %s at either side, %s at the front, %s at the back.",
			f.Unit(r.Len("overhang.side")), f.Unit(r.Len("overhang.front")), f.Unit(r.Len("overhang.back"))))
	}
	for i := range steps {
		steps[i] = fmt.Sprintf("%d  %s", i+1, steps[i])
	}
	return steps
}

// channelText says what is clear between facing legs.
func channelText(r *rack.Rack) string {
	first := r.Kinds[0].Channel
	if slices.ContainsFunc(r.Kinds, func(k rack.Kind) bool { return k.Channel != first }) {
		return "Between facing legs as drawn: use a spacer for each kind of column."
	}
	return fmt.Sprintf("Between facing legs: %s clear; use a spacer.", r.Format.Unit(first))
}
