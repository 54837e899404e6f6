package design_test

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"slatwright/specs/design"
)

func TestSaid(t *testing.T) {
	d, err := design.Read("d.toml", []byte(`title = "Rack" # a comment
rack = { columns = 2, rows = 3 }
where = [
  "rack.height  <= 1.6 * rack.width", # tall enough
  "cell.gap >= 2",
]
[[column]]
count = 1
[[column]]
count = 1
  [[column.row]]
  rise = '4 1/8'
[bottles]
fit = ["claret-750"]
`))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, s := range d.Said() {
		got = append(got, fmt.Sprintf("%d %s = %s", s.Place.Line, s.Name, s.Value))
	}
	want := []string{
		`1 title = "Rack"`, "2 rack.columns = 2", "2 rack.rows = 3",
		`3 where = ["rack.height <= 1.6 * rack.width", "cell.gap >= 2"]`,
		"8 column.1.count = 1", "10 column.2.count = 1", "12 column.2.row.1.rise = '4 1/8'", `14 bottles.fit = ["claret-750"]`,
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}
