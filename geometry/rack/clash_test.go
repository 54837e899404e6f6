package rack

import (
	"testing"

	"slatwright/geometry/solve"
)

// A change that was not looked for to the end is not said to be of no help.
func TestAdviceTellsWhatIsOpen(t *testing.T) {
	a := &adviser{}
	if got := a.none(); got != NoChange {
		t.Errorf("with all answered: %q", got)
	}
	if a.answered(solve.ErrTooHard) {
		t.Error("a question that was too hard counts as answered")
	}
	for _, c := range []struct {
		changes []LineText
		want    string
	}{
		{[]LineText{{3, "rack.rows 4"}, {5, a.none()}}, "this would do: rack.rows 4 (line 3); whether a change of line 5 alone helps was not worked out"},
		{[]LineText{{5, a.none()}, {6, NoChange}}, "no change of one of these lines alone is known to help"},
		{[]LineText{{5, NoChange}}, "no change of one of these lines alone helps"},
	} {
		if got := Advice(c.changes); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}
