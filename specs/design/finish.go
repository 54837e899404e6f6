package design

import (
	"strconv"
	"strings"

	"slatwright/specs/diag"
	"slatwright/specs/table"
)

// Finish is how the wood is finished and glued. What the file leaves unsaid is
// the default: the table's first glue and first coat in its usual number of
// coats, no stain, and conditioner before a stain on a wood that blotches.
type Finish struct {
	Glue        table.Adhesive
	Coat        table.Finish
	Coats       int          // of Coat; 0 where the wood stays bare
	Stain       table.Finish // the zero Finish where there is none
	Colour      string       // of the stain, in the customer's words; "" where the file leaves it open
	Conditioner table.Finish // the zero Finish where there is none
	Places      []NamedPlace // of what the file says, such as "finish.coat"
}

// Stained reports whether the wood is stained.
func (f Finish) Stained() bool { return f.Stain.ID != "" }

// Conditioned reports whether the wood is conditioned before the stain.
func (f Finish) Conditioned() bool { return f.Conditioner.ID != "" }

// noFinish is how a design says that there is no stain, or no coat.
const noFinish = "none"

// maxCoats is the most coats that a design can ask for.
const maxCoats = 12

// setFinish fills in the defaults.
func (d *Design) setFinish() {
	d.Finish.Glue = table.Adhesives()[0]
	d.Finish.Coat = table.Finishes(table.Coat)[0]
	d.Finish.Coats = d.Finish.Coat.Usual
}

// finishes reads [finish]. Some of its keys hang on others, and on the wood, so
// that what they come to is settled when the whole file has been seen.
func finishes(r *reader, path string, n *node) {
	r.table(n, path, "finish")
	if n.shape == tree {
		r.later = append(r.later, func() { r.settleFinish(n) })
	}
}

func finishGlue(r *reader, path string, n *node) {
	var ids []string
	for _, a := range table.Adhesives() {
		ids = append(ids, a.ID)
	}
	if id, ok := r.choice(path, n, ids...); ok {
		r.d.Finish.Glue, _ = table.FindAdhesive(id)
		r.finishPlace(path, n)
	}
}

// finishPlace keeps where the file says something of the finish.
func (r *reader) finishPlace(path string, n *node) {
	r.d.Finish.Places = append(r.d.Finish.Places, NamedPlace{path, n.value})
}

// material reads the id of a finishing material of the kind, or "none".
func (r *reader) material(k table.FinishKind, path string, n *node) (table.Finish, bool) {
	ids := []string{noFinish}
	for _, f := range table.Finishes(k) {
		ids = append(ids, f.ID)
	}
	id, ok := r.choice(path, n, ids...)
	if !ok {
		return table.Finish{}, false
	}
	r.finishPlace(path, n)
	f, _ := table.FindFinish(k, id)
	return f, true
}

func finishCoat(r *reader, path string, n *node) {
	if f, ok := r.material(table.Coat, path, n); ok {
		r.d.Finish.Coat, r.d.Finish.Coats = f, f.Usual
	}
}

func finishStain(r *reader, path string, n *node) {
	if f, ok := r.material(table.Stain, path, n); ok {
		r.d.Finish.Stain = f
	}
}

func finishColour(r *reader, path string, n *node) {
	if text, ok := r.says(path, n); ok {
		r.d.Finish.Colour = strings.TrimSpace(text)
		r.finishPlace(path, n)
	}
}

// finishCoats sees that the number of coats is one; settleFinish takes it.
func finishCoats(r *reader, path string, n *node) {
	if _, ok := r.wholeNumber(path, n, 1, maxCoats, "`coat = \"none\"` leaves the wood bare"); ok {
		r.finishPlace(path, n)
	}
}

func finishConditioner(r *reader, path string, n *node) {
	if _, ok := r.truth(path, n); ok {
		r.finishPlace(path, n)
	}
}

// settleFinish takes the coats and the conditioner, and reports what does not
// go together.
func (r *reader) settleFinish(n *node) {
	f := &r.d.Finish
	if k := n.kid("coats"); k != nil && f.stated("finish.coats") {
		if f.Coat.ID == "" {
			r.fault(k.value, "leave `coats` out, or name a coat", "coats of nothing: `finish.coat` is \"none\"")
		} else {
			f.Coats, _ = strconv.Atoi(k.literal)
		}
	}
	conditioned, _ := table.Blotches(r.d.Wood.Species.ID)
	conditioned = conditioned && f.Stained()
	if k := n.kid("conditioner"); k != nil && f.stated("finish.conditioner") {
		if conditioned = k.literal == "true"; conditioned && !f.Stained() {
			r.fault(k.value, "name a stain, or leave `conditioner` out", "conditioner goes before a stain, and there is none")
		}
	}
	if k := n.kid("colour"); k != nil && f.Colour != "" && !f.Stained() {
		r.fault(k.value, "name a stain, or leave `colour` out", "a colour is a stain's, and there is none")
	}
	if conditioned {
		f.Conditioner = table.Finishes(table.Conditioner)[0]
	}
}

// stated reports whether the file says something sound of the name.
func (f Finish) stated(name string) bool {
	for _, p := range f.Places {
		if p.Name == name {
			return p.Place != diag.Place{}
		}
	}
	return false
}
