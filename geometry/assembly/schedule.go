// Package assembly puts the work after the saw in order: steps of finishing and
// gluing with their waiting times, the earliest day on which a rack can be
// ready, the faces of ladders and the clamps each glue-up takes and where, what
// is to be bought and what the shop makes itself, and the diagonals that show
// whether it is square. A solved rack goes in; plain data comes out, which the
// assembly sheets show. Diagonals are decided exactly; times and forces come
// from the tables.
package assembly

import (
	"fmt"
	"time"
)

// Span is a time from the least to the greatest that the tables give.
type Span struct{ Least, Greatest time.Duration }

// Step is one thing to do, and how long to wait after it before what builds on
// it.
type Step struct {
	Name  string
	Text  string // what to do, in a sentence or two
	After []int  // steps that must be over, with their waits; each before this one
	Wait  Span
}

// Schedule is when steps can begin and end, counted from the first step's
// beginning. It counts waiting alone, not the work.
type Schedule struct {
	Begin, End []time.Duration // of each step; End is Begin and the wait
	Ready      time.Duration   // the latest End
	Chain      []int           // the steps of a longest chain of waits, in order
}

// Plan returns the earliest schedule: the longest chain of waits decides. With
// long it takes the greatest of each wait, else the least. It panics where a
// step is to follow itself or a later one.
func Plan(steps []Step, long bool) Schedule {
	var s Schedule
	before := make([]int, len(steps)) // the step that each one waits for, -1 for none
	last := -1
	for i, st := range steps {
		begin, from := time.Duration(0), -1
		for _, k := range st.After {
			if k >= i {
				panic(fmt.Sprintf("assembly: step %d is to follow step %d", i, k))
			}
			if s.End[k] >= begin {
				begin, from = s.End[k], k
			}
		}
		wait := st.Wait.Least
		if long {
			wait = st.Wait.Greatest
		}
		s.Begin, s.End = append(s.Begin, begin), append(s.End, begin+wait)
		before[i] = from
		if last < 0 || s.End[i] >= s.Ready {
			s.Ready, last = s.End[i], i
		}
	}
	for ; last >= 0; last = before[last] {
		s.Chain = append([]int{last}, s.Chain...)
	}
	return s
}

// Day returns the day that the design's date and a wait come to, the wait
// rounded up to whole days. It reports false where the date does not begin with
// a day such as 2031-03-04.
func Day(date string, wait time.Duration) (string, bool) {
	day, err := time.Parse(time.DateOnly, date[:min(len(date), len(time.DateOnly))])
	if err != nil {
		return "", false
	}
	const full = 24 * time.Hour
	return day.AddDate(0, 0, int((wait+full-1)/full)).Format(time.DateOnly), true
}
