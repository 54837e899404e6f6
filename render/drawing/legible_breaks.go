package drawing

// breaks finds extension and dimension lines that a light shape inked after
// them hides in part: whoever follows such a line by eye loses it. A line's own
// figure may stand in it on a ground of its group.
func (l *legibility) breaks() {
	if len(l.masks) == 0 {
		return
	}
	for i, m := range l.sheet.Marks {
		p, ok := m.(Path)
		if !ok || p.Class != Extension && p.Class != Dimension {
			continue
		}
		for _, k := range l.masks {
			_, group, _ := l.sheet.Marks[k.mark].base()
			if k.mark < i || group != 0 && group == p.Group || !p.Bounds().Meets(k.box) {
				continue
			}
			if crossed(p, k.box) {
				l.report(LineBroken, k.box.Centre(), i, k.mark, "a %s hides part of a %s", nameOf(l.sheet.Marks[k.mark]), nameOf(m))
			}
		}
	}
}

// crossed reports whether a path enters a box.
func crossed(p Path, box Rect) bool {
	pts := flatten(p)
	for k := 1; k < len(pts); k++ {
		if Crosses(pts[k-1], pts[k], box) {
			return true
		}
	}
	return false
}
