package cutting

import (
	"errors"
	"fmt"

	"slatwright/specs/unit"
)

// The kinds of fault in a job. Error wraps one of them; test with errors.Is.
var (
	ErrBadPart     = errors.New("bad part")
	ErrBadBoard    = errors.New("bad board")
	ErrBadShop     = errors.New("bad shop figure")
	ErrPrice       = errors.New("negative price")
	ErrNoBoards    = errors.New("no boards")
	ErrTooLong     = errors.New("part longer than every board")
	ErrTooWide     = errors.New("part wider than every board")
	ErrNoThickness = errors.New("no board serves the thickness")
	ErrStockOut    = errors.New("boards on hand run out")
)

// Error is a fault in a job: which part or board, what is wrong with it in
// figures, and what would help.
type Error struct {
	Kind  error  // one of the Err... values
	Part  *Part  // the part concerned, or nil
	Board *Board // the board concerned, or nil
	// Have and Need are the figures that clash (lengths, widths or
	// thicknesses); both 0 where no length is concerned.
	Have, Need unit.Length
	Help       string // what would help
	detail     string
}

func (e *Error) Error() string {
	who := ""
	switch {
	case e.Part != nil:
		who = fmt.Sprintf("part %s: ", partName(*e.Part))
	case e.Board != nil:
		who = fmt.Sprintf("board %s: ", boardName(*e.Board))
	}
	s := who + e.Kind.Error()
	if e.detail != "" {
		s += ": " + e.detail
	}
	if e.Help != "" {
		s += "; " + e.Help
	}
	return s
}

// Unwrap returns the kind of fault.
func (e *Error) Unwrap() error { return e.Kind }

func partName(p Part) string {
	s := p.Mark
	if p.Name != "" {
		if s != "" {
			s += " "
		}
		s += p.Name
	}
	if p.Order != "" {
		s = p.Order + " " + s
	}
	return s
}

func boardName(b Board) string { return fmt.Sprintf("%s of %s", b.Nominal, mm(b.Length)) }

// mm prints a length in millimetres to two decimals, for messages.
func mm(l unit.Length) string {
	n := int64(l.Micrometres())
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	n = (n + 5) / 10
	if n%100 == 0 {
		return fmt.Sprintf("%s%d mm", sign, n/100)
	}
	return fmt.Sprintf("%s%d.%02d mm", sign, n/100, n%100)
}
