package design

// moisture reads the moisture content of the wood as it is today, in percent.
func moisture(r *reader, path string, n *node) {
	v, ok := r.hundredths(path, n)
	if !ok {
		return
	}
	if v < 100 || v > 3000 {
		r.fault(n.value, `write what the meter shows, such as "8 %"`, "`%s` must be from 1 to 30 percent", path)
		return
	}
	r.d.Wood.Moisture = v
}

// sawn reads how the rings lie in the boards.
func sawn(r *reader, path string, n *node) {
	if s, ok := r.choice(path, n, "flat", "quarter"); ok {
		r.d.Wood.QuarterSawn = s == "quarter"
	}
}

// jointGlue reads whether crossings are glued as well as nailed.
func jointGlue(r *reader, path string, n *node) {
	if v, ok := r.truth(path, n); ok {
		r.d.Joint.Glue, r.d.Joint.GluePlace = v, n.value
	}
}

// jointTop reads how the top is fixed: "glued" all round, or "slotted", glued in
// front and held by screws in slots behind.
func jointTop(r *reader, path string, n *node) {
	if s, ok := r.choice(path, n, "glued", "slotted"); ok {
		r.d.Joint.TopGlued, r.d.Joint.TopPlace = s == "glued", n.value
	}
}
