package sheet

import "testing"

func TestStatementsInWords(t *testing.T) {
	for _, c := range []struct{ say, want string }{
		{"rack.columns = 4", "rack columns: 4"},
		{`column.1.fit = ["magnum-1500"]`, "column 1 fit: magnum-1500"},
		{"column.2.row.1.rise = 3.5", "column 2 row 1 rise: 3.5"},
		{"slat.length = 9.5", "slat length: 9.5"},
		{`rack.width = "<= 700"`, "rack width: <= 700"},
		{"leg.length = slat.length + 2", "leg length = slat length + 2"},
		{"shop.edge_trim = 0.125", "shop edge trim: 0.125"},
		{"rack.width", "rack width"},
	} {
		if got := inWords(c.say); got != c.want {
			t.Errorf("%s: got %q, want %q", c.say, got, c.want)
		}
	}
}
