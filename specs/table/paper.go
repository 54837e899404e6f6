package table

import (
	_ "embed"
	"sync"

	"slatwright/specs/unit"
)

// Paper is a size of paper, upright.
type Paper struct {
	ID            string // "a4", "letter"
	Name          string // as the standard names it
	Width, Height unit.Length
	Origin        Origin
}

//go:embed papers.toml
var papersText []byte

var papers = sync.OnceValue(func() []Paper {
	var file struct {
		Paper []struct {
			ID, Name      string
			Width, Height length
			origin
		}
	}
	decode("papers", papersText, &file)
	var list []Paper
	for _, p := range file.Paper {
		list = append(list, Paper{
			ID: p.ID, Name: p.Name, Width: unit.Length(p.Width), Height: unit.Length(p.Height),
			Origin: p.origin.value(),
		})
	}
	return list
})

// FindPaper returns the paper with the id.
func FindPaper(id string) (Paper, bool) {
	for _, p := range papers() {
		if p.ID == id {
			return p, true
		}
	}
	return Paper{}, false
}
