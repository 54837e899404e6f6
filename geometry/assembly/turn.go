package assembly

import (
	"fmt"
	"time"

	"slatwright/geometry/rack"
	"slatwright/specs/word"
)

// perSlat is how long a slat takes from the first drop of glue to its last nail,
// which was started in its bored hole before (common practice, no source).
const perSlat = time.Minute

// Turn is how many slats of a face are glued and nailed before the clamps go on:
// as many as the least open time of the glue allows, at least one.
func Turn(r *rack.Rack) int { return max(1, int(r.Design.Finish.Glue.Open.Least/perSlat)) }

// longest is how many slats the face with the most has.
func longest(r *rack.Rack) (most int) {
	for _, f := range Faces(r) {
		most = max(most, len(f.Slats))
	}
	return most
}

// turnText says when the clamps go on: when a face's slats are nailed, or so many
// of them.
func turnText(r *rack.Rack) string {
	n, most := Turn(r), longest(r)
	if most <= n {
		return "as soon as the face's last slat is nailed"
	}
	turns := (most + n - 1) / n
	return fmt.Sprintf("after every %s (a minute a slat, the glue open for %s; cut the cauls in %d, a length to a turn)", word.Count(n, "slat"), r.Design.Finish.Glue.Open, turns)
}
