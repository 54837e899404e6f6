package quote

import (
	"strings"

	"slatwright/geometry/cutting"
	"slatwright/geometry/finish"
	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
	"slatwright/specs/table"
)

// work is how often an operation is set up and for how many pieces it is done.
type work struct{ settings, pieces int }

// labour adds the time of each operation; or the hours that the design states,
// in one line.
func (q *Quote) labour() {
	if item, ok := q.Rack.Design.Price.Item("hours"); ok {
		q.Minutes = 60 * item.Hundredths
		q.add(Line{Section: Labour, What: "all work, as stated", Quantity: q.Minutes,
			Inputs: []Input{{"hours", item.Hundredths, "h", from(item)}}}, "labour")
		return
	}
	done := q.works()
	for _, o := range table.Operations() {
		w := done[o.ID]
		if w.pieces == 0 {
			continue
		}
		setup, each := q.time(o.ID+".setup", o.Setup, o), q.time(o.ID+".each", o.Each, o)
		minutes := setup.Hundredths*int64(w.settings) + each.Hundredths*int64(w.pieces)
		q.Minutes += minutes
		q.add(Line{Section: Labour, What: o.Name, Quantity: minutes, Inputs: []Input{
			setup, {o.Settings, int64(100 * w.settings), "", reckoned("rack and cutting plan")},
			each, {o.Pieces, int64(100 * w.pieces), "", reckoned("rack and cutting plan")},
		}}, "labour")
	}
}

// time returns a time of an operation: the design's, or else the example.
func (q *Quote) time(name string, example int64, o table.Operation) Input {
	what := "setup"
	if name == o.ID+".each" {
		what = "each"
	}
	if item, ok := q.Rack.Design.Price.Item("minutes." + name); ok {
		return Input{what, item.Hundredths, "min", from(item)}
	}
	return Input{what, example, "min", Source{Example, o.Origin.Source, 0}}
}

// sawn returns what the table of labour calls an operation of a cutting plan; ""
// for glue-ups, whose staves are counted by themselves. It panics on one that it
// does not know, which would otherwise cost nothing.
func sawn(o cutting.Operation) string {
	switch o {
	case cutting.GluingUp:
		return ""
	case cutting.Resawing, cutting.Planing, cutting.TrimmingEnds, cutting.Crosscutting, cutting.Ripping, cutting.CuttingToLength:
		return strings.ReplaceAll(string(o), " ", "_")
	}
	panic("quote: no labour for " + string(o))
}

// works counts settings and pieces of every operation.
func (q *Quote) works() map[string]work {
	r := q.Rack
	done := map[string]work{}
	for _, s := range q.Cuts.Steps {
		if id := sawn(s.Operation); id != "" {
			w := done[id]
			done[id] = work{w.settings + 1, w.pieces + s.Count}
		}
	}
	for _, g := range q.Cuts.GlueUps {
		w := done["panel"]
		done["panel"] = work{w.settings + g.Count, w.pieces + g.Count*g.Staves}
	}
	parts := 0
	for _, p := range r.Parts {
		parts += p.Count + saw.Spares(r, p.Name)
	}
	passes, coats := sandings(r), coatings(r)
	done["sand"] = work{passes, passes * parts}
	done["mark"] = work{1, r.Counts.Ladders}
	if coats > 0 {
		rows := finish.Rows(r)
		faces := 0
		for _, w := range rows {
			faces += w.Count
		}
		done["tape"] = work{len(rows), faces}
		done["finish"] = work{coats, coats * parts}
	}
	done["ladder"] = work{r.Counts.Ladders, r.Counts.Slats}
	done["carcase"] = work{r.Counts.Aprons, len(fixing.Crossings(r, "apron"))}
	if r.HasTop() {
		done["top"] = work{1, r.Counts.Ladders}
	}
	done["inspect"] = work{1, r.Counts.Bottles}
	done["pack"] = work{1, packed(r)}
	return done
}

// packed counts what goes into the parcel: the rack, or what it comes apart into.
func packed(r *rack.Rack) int {
	if !r.Design.Price.Flat {
		return 1
	}
	n := r.Counts.Ladders + r.Counts.Aprons
	if r.HasTop() {
		n++
	}
	return n
}

// sandings counts how often all parts are sanded: with each grit, and between
// coats.
func sandings(r *rack.Rack) int {
	n := len(finish.Sequence(r).Grits)
	if f := r.Design.Finish; f.Coats > 1 && f.Coat.Grit > 0 {
		n += f.Coats - 1
	}
	return n
}

// coatings counts how often all parts are coated with anything.
func coatings(r *rack.Rack) int {
	f := r.Design.Finish
	n := f.Coats
	if f.Conditioned() {
		n++
	}
	if f.Stained() {
		n++
	}
	return n
}
