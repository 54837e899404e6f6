package saw_test

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"slatwright/geometry/quote"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/saw"
)

const (
	oneRack  = "order = \"R-1\"\n[rack]\ncolumns = 2\nrows = 3\n[top]\npresent = false\n[[board]]\nnominal = \"1x4\"\nlength = \"8 ft\"\nprice = 20\n"
	twoRack  = "order = \"R-2\"\n[rack]\ncolumns = 3\nrows = 3\n[top]\npresent = false\n[[board]]\nnominal = \"1x4\"\nlength = \"8 ft\"\nprice = 20\n"
	atHand3  = "[[board]]\nnominal = \"1x4\"\nlength = \"96 in\"\non_hand = 3\n"
	atHand1  = "[[board]]\nnominal = \"1x4\"\nlength = \"96 in\"\non_hand = 1\n"
	sameNote = "boards on hand that several designs list are taken to be the same boards"
)

// Of a board that several designs list, the least count is taken to be there;
// where they differ, the caution names both lines and figures.
func TestOnHandInSeveralDesigns(t *testing.T) {
	for _, c := range []struct {
		name, one, two string
		most           int
		note           string
	}{
		{"alike", atHand1, atHand1, 1, sameNote},
		{"three and one", atHand3, atHand1, 1, "caution: 1x4, 96 in long, on hand: R-1 says 3 (test.toml, line 11), R-2 says 1 (test.toml, line 11); they are taken to be the same boards, and 1 to be there: count them"},
		{"one and three", atHand1, atHand3, 1, "R-1 says 1 (test.toml, line 11), R-2 says 3"},
		{"twice in one", atHand1 + atHand1, atHand3, 2, "R-1 says 2"},
		{"in one only", atHand3, "", 3, ""},
	} {
		p, err := saw.Make([]*rack.Rack{racktest.Build(t, oneRack+c.one), racktest.Build(t, twoRack+c.two)}, saw.Quick)
		if err != nil {
			t.Fatal(err)
		}
		for _, b := range p.Job.Boards {
			if b.OnHand > 0 && b.OnHand != c.most {
				t.Errorf("%s: %d on hand; want %d", c.name, b.OnHand, c.most)
			}
		}
		used := 0
		for _, b := range p.Boards {
			if b.Board.OnHand > 0 {
				used += b.Count
			}
		}
		if used > c.most {
			t.Errorf("%s: the plan takes %d of %d", c.name, used, c.most)
		}
		if notes := strings.Join(p.Notes, "\n"); !strings.Contains(notes, c.note) || c.note == "" && notes != "" {
			t.Errorf("%s: notes %q; want %q", c.name, notes, c.note)
		}
		if c.most == 3 {
			continue
		}
		// Each by itself would take the one board that is there.
		if says := quote.Saved(p); !p.Doubled || !strings.Contains(says, "more boards on hand than there are") {
			t.Errorf("%s: doubled %v, of the saving it says %q", c.name, p.Doubled, says)
		}
	}
}

// Where several boards on hand run out, what would do names all of them, and
// does.
func TestSeveralBoardsRunOut(t *testing.T) {
	const text = "[rack]\ncolumns = 4\nrows = 5\n[top]\npresent = false\n[[board]]\nthickness = \"3/4\"\nwidth = 4\nlength = \"20 in\"\non_hand = 1\n" +
		"[leg]\nthickness = 1\n[[board]]\nthickness = 1\nwidth = \"1 1/2\"\nlength = \"30 in\"\non_hand = 1\n"
	_, err := saw.Make([]*rack.Rack{racktest.Build(t, text)}, saw.Quick)
	var f *saw.Fault
	if !errors.As(err, &f) {
		t.Fatalf("error %v; want a fault", err)
	}
	m := regexp.MustCompile(`^(\d+) more of these and (\d+) more of measured board, 20 in long, would do`).FindStringSubmatch(f.Message.Hint)
	if m == nil {
		t.Fatalf("hint %q; want both boards", f.Message.Hint)
	}
	enough := text
	for _, n := range []string{m[2], m[1]} { // in the order of the file
		more, _ := strconv.Atoi(n)
		enough = strings.Replace(enough, "on_hand = 1\n", fmt.Sprintf("on_hand = %d\n", 1+more), 1)
	}
	if _, err := saw.Make([]*rack.Rack{racktest.Build(t, enough)}, saw.Quick); err != nil {
		t.Errorf("%v\n%s", err, enough)
	}
}

// Where an order by itself has no plan there is nothing to compare with; that is
// said.
func TestSavingUntold(t *testing.T) {
	lone := "order = \"R-2\"\n[rack]\ncolumns = 3\nrows = 3\n[top]\npresent = false\n" + atHand1
	p, err := saw.Make([]*rack.Rack{racktest.Build(t, oneRack), racktest.Build(t, lone)}, saw.Quick)
	if err != nil {
		t.Fatal(err)
	}
	const want = "what cutting together saves cannot be told: R-2 by itself cannot be cut from the boards that it lists"
	if says := quote.Saved(p); says != want || p.Apart != 0 {
		t.Errorf("apart %d, %q; want %q", p.Apart, says, want)
	}
}
