package word

import "testing"

func TestCount(t *testing.T) {
	for n, want := range []string{"0 slats", "1 slat", "2 slats"} {
		if got := Count(n, "slat"); got != want {
			t.Errorf("Count(%d) = %q; want %q", n, got, want)
		}
	}
}

func TestNumber(t *testing.T) {
	for n, want := range []string{"0 leaves", "1 leaf", "2 leaves"} {
		if got := Number(n, "leaf", "leaves"); got != want {
			t.Errorf("Number(%d) = %q; want %q", n, got, want)
		}
	}
}

func TestCapital(t *testing.T) {
	for text, want := range map[string]string{"": "", "a": "A", "red oak": "Red oak", "Oak": "Oak", "2 slats": "2 slats", "élite": "Élite", "ärmel": "Ärmel", "\xffx": "\xffx"} {
		if got := Capital(text); got != want {
			t.Errorf("Capital(%q) = %q; want %q", text, got, want)
		}
	}
}

func TestList(t *testing.T) {
	for want, words := range map[string][]string{"": nil, "A": {"A"}, "A and B": {"A", "B"}, "A, B and C": {"A", "B", "C"}} {
		if got := List(words); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}
