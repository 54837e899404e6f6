package cutting_test

import (
	"testing"

	"slatwright/geometry/cutting"
	"slatwright/specs/unit"
)

func bars(price int64, lengths ...unit.Length) []cutting.Bar {
	var out []cutting.Bar
	for _, l := range lengths {
		p := price
		if p == 0 {
			p = int64(l)
		}
		out = append(out, cutting.Bar{Length: l, Price: p})
	}
	return out
}

// pieces reads length, count pairs.
func pieces(pairs ...int) []cutting.Piece {
	var out []cutting.Piece
	for i := 0; i < len(pairs); i += 2 {
		out = append(out, cutting.Piece{Length: unit.Length(pairs[i]), Count: pairs[i+1]})
	}
	return out
}

// Worked examples whose answers were printed, or were computed by two other
// formulations where the source gives only the data.
var published = []struct {
	name, source string
	bars         []cutting.Bar
	pieces       []cutting.Piece
	want         int64
}{
	{"Chvatal, raws of 100",
		"V. Chvatal, Linear Programming, 1983, ch. 13, p. 195: LP bound 452.25, 453 raws",
		bars(1, 200), pieces(90, 97, 72, 610, 62, 395, 28, 211), 453},
	{"roll trim",
		"data: Fourer, Gay, Kernighan, AMPL, cut.dat; answer computed: LP bound 46.25",
		bars(1, 110), pieces(20, 48, 45, 35, 50, 24, 55, 10, 75, 8), 47},
	{"boards of 17 ft",
		"W. Winston, Operations Research, p. 570 (Woodco): LP bound 18 1/3, 19 boards",
		bars(1, 17*unit.Foot), []cutting.Piece{{3 * unit.Foot, 25}, {5 * unit.Foot, 20}, {9 * unit.Foot, 15}}, 19},
	{"paper rolls of 5600",
		"Wikipedia, Cutting stock problem: material bound 72.7, 73 rolls",
		bars(1, 5600), pieces(1380, 22, 1520, 25, 1560, 12, 1710, 14, 1820, 18, 1880, 18, 1930, 20, 2000, 10, 2050, 12, 2100, 14, 2140, 16, 2150, 18, 2200, 20), 73},
	{"rolls of 94",
		"Mosel user guide, cutting stock by column generation: LP bound 160.95, 161 rolls; demands from memory, confirmed by both figures",
		bars(1, 188), pieces(34, 150, 42, 96, 45, 48, 48, 108, 59, 227), 161},
	{"rolls of 91",
		"data: Chvatal, Linear Programming, 1983, p. 198, raw width from memory; answer computed",
		bars(1, 182), pieces(51, 78, 45, 40, 40, 30, 30, 30), 44},
	{"two limited stocks",
		"J. Kantor, CBE40455 notebook 05.07: cost 60, no waste",
		[]cutting.Bar{{15, 15, 3}, {10, 10, 3}}, pieces(7, 3, 6, 2, 4, 6, 3, 1), 60},
}

func TestPublished(t *testing.T) {
	for _, c := range published {
		t.Run(c.name, func(t *testing.T) {
			got, err := cutting.CutBars(c.bars, c.pieces, 0, 0)
			if err != nil {
				t.Fatal(err)
			}
			if got.Cost != c.want || !got.Proven {
				t.Errorf("cost %d, bound %d, want %d proven (%s)", got.Cost, got.Bound, c.want, c.source)
			}
			if err := auditBars(c.bars, c.pieces, 0, got); err != nil {
				t.Error(err)
			}
		})
	}
}
