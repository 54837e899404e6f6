package report

import (
	"bytes"
	"encoding/json"

	"slatwright/geometry/cutting"
	"slatwright/geometry/quote"
	"slatwright/geometry/saw"
)

// The cutting plan as it is written for other programs.
type (
	sawFile struct {
		Cost   json.Number `json:"cost"`
		Bound  json.Number `json:"bound"`
		Proven bool        `json:"proven"`
		Boards []sawBoard  `json:"boards"`
	}
	sawBoard struct {
		Nominal   string       `json:"nominal"`
		Length    json.Number  `json:"length_mm"`
		Width     json.Number  `json:"width_mm"`
		Thickness json.Number  `json:"thickness_mm"`
		Price     json.Number  `json:"price"`
		Count     int          `json:"count"`
		Sections  []sawSection `json:"sections"`
	}
	sawSection struct {
		Length json.Number `json:"length_mm"`
		Strips []sawStrip  `json:"strips"`
	}
	sawStrip struct {
		Width json.Number `json:"width_mm"`
		Parts []sawPart   `json:"parts"`
	}
	sawPart struct {
		Order  string      `json:"order"`
		Mark   string      `json:"mark"`
		Length json.Number `json:"length_mm"`
	}
)

// CutJSON returns cutting plans, one for each wood, as one for other programs.
func CutJSON(plans []*saw.Plan) ([]byte, error) {
	f := sawFile{Proven: true, Boards: []sawBoard{}}
	var cost, bound int64
	for _, p := range plans {
		cost, bound, f.Proven = cost+p.Cost, bound+p.Bound, f.Proven && p.Proven
		for _, b := range p.Boards {
			f.Boards = append(f.Boards, sawBoardOf(b))
		}
	}
	f.Cost, f.Bound = money(cost), money(bound)
	var b bytes.Buffer
	if err := encode(&b, f, "  "); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

func sawBoardOf(b cutting.BoardPlan) sawBoard {
	out := sawBoard{
		Nominal: b.Board.Nominal, Length: mm(b.Board.Length), Width: mm(b.Board.Width), Thickness: mm(b.Board.Thickness),
		Price: money(b.Board.Price), Count: b.Count, Sections: []sawSection{},
	}
	for _, s := range b.Sections {
		section := sawSection{Length: mm(s.Length), Strips: []sawStrip{}}
		for _, t := range s.Strips {
			strip := sawStrip{Width: mm(t.Width), Parts: []sawPart{}}
			for _, x := range t.Parts {
				strip.Parts = append(strip.Parts, sawPart{x.Order, x.Mark, mm(x.Length)})
			}
			section.Strips = append(section.Strips, strip)
		}
		out.Sections = append(out.Sections, section)
	}
	return out
}

// money writes hundredths as an exact decimal.
func money(n int64) json.Number { return json.Number(quote.Hundredths(n)) }
