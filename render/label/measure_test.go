package label_test

import (
	"cmp"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/saw"
	"slatwright/render/drawing"
	"slatwright/render/label"
	"slatwright/render/pdf"
)

// own is a sheet whose labels begin at the third: at x = 137.7 mm in the first row,
// then at 12.3, 75 and 137.7 mm; the rows at 9.7, 51.2 and 92.7 mm.
const own = metricDesign + `
[labels]
paper_width = 215
paper_height = 152
columns = 3
rows = 3
width = 60.2
height = 40
left = 12.3
top = 9.7
across_gap = 2.5
down_gap = 1.5
first = 3
cut = true
`

// poppler runs a program on a document. Where it is absent the test ends, with a
// failure where referees are called for.
func poppler(t *testing.T, name string, sheets []*drawing.Sheet, args ...string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		if os.Getenv("SLATWRIGHT_REFEREES") == "1" {
			t.Fatalf("no %s to measure with", name)
		}
		t.Skipf("no %s to measure with", name)
	}
	data, err := pdf.Encode(pdf.Document{Sheets: sheets, FullSize: true})
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "labels.pdf")
	if err := os.WriteFile(file, data, 0o666); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(path, append(args, file, "-")...).Output()
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// The lines that the labels of the own sheet are cut along lie, as poppler
// draws them, within 0.05 mm of where the design says.
func TestLinesLieWhereStated(t *testing.T) {
	sheets, err := label.Sheets(racktest.Build(t, own), "3f9a77c1")
	if err != nil {
		t.Fatal(err)
	}
	text := poppler(t, "pdftocairo", sheets[:1], "-svg", "-noshrink", "-nocenter")
	if !strings.Contains(text, `viewBox="0 0 609.45 `) {
		t.Errorf("the page is not 215 mm, 609.449 points, wide")
	}
	xs, ys := segments(t, text)
	const tolerance = 0.05
	near := func(at float64, all []float64) bool {
		for _, v := range all {
			if math.Abs(v-at) <= tolerance {
				return true
			}
		}
		return false
	}
	for _, at := range []float64{12.3, 72.5, 75, 135.2, 137.7, 197.9} {
		if !near(at, xs) {
			t.Errorf("no line stands at %v mm; there are %.3f", at, xs)
		}
	}
	for _, at := range []float64{9.7, 49.7, 51.2, 91.2, 92.7, 132.7} {
		if !near(at, ys) {
			t.Errorf("no line lies at %v mm; there are %.3f", at, ys)
		}
	}
}

// segments returns where the straight lines of more than 20 mm stand and lie in
// an SVG file of poppler's, in millimetres from the top left.
func segments(t *testing.T, svg string) (xs, ys []float64) {
	t.Helper()
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	path := regexp.MustCompile(`<path [^>]*d="M ([-0-9.]+) ([-0-9.]+) L ([-0-9.]+) ([-0-9.]+) "[^>]*>`)
	matrix := regexp.MustCompile(`transform="matrix\(([-0-9.]+), ?0, ?0, ?([-0-9.]+), ?([-0-9.]+), ?([-0-9.]+)\)"`)
	for _, m := range path.FindAllStringSubmatch(svg, -1) {
		a, d, e, f := 1.0, 1.0, 0.0, 0.0
		if k := matrix.FindStringSubmatch(m[0]); k != nil {
			a, d, e, f = number(k[1]), number(k[2]), number(k[3]), number(k[4])
		}
		const point = 25.4 / 72
		x1, y1 := (a*number(m[1])+e)*point, (d*number(m[2])+f)*point
		x2, y2 := (a*number(m[3])+e)*point, (d*number(m[4])+f)*point
		switch {
		case math.Abs(x1-x2) < 0.001 && math.Abs(y1-y2) > 20:
			xs = append(xs, x1)
		case math.Abs(y1-y2) < 0.001 && math.Abs(x1-x2) > 20:
			ys = append(ys, y1)
		}
	}
	return xs, ys
}

// The lettering of each label stands where the label before it stands, one step
// of the grid farther, and begins at the first free label.
func TestLetteringStandsOnTheGrid(t *testing.T) {
	sheets, err := label.Sheets(racktest.Build(t, own), "3f9a77c1")
	if err != nil {
		t.Fatal(err)
	}
	text := poppler(t, "pdftotext", sheets[:1], "-bbox")
	var got [][2]float64
	word := regexp.MustCompile(`xMin="([0-9.]+)" yMin="([0-9.]+)" xMax="([0-9.]+)" yMax="[0-9.]+">3f9a77c1<`)
	for _, m := range word.FindAllStringSubmatch(text, -1) {
		y, _ := strconv.ParseFloat(m[2], 64)
		x, _ := strconv.ParseFloat(m[3], 64)
		got = append(got, [2]float64{x * 25.4 / 72, y * 25.4 / 72})
	}
	if len(got) != 7 {
		t.Fatalf("%d labels on the first sheet; want those from the third to the ninth", len(got))
	}
	slices.SortFunc(got, func(a, b [2]float64) int { // row by row
		return cmp.Or(cmp.Compare(math.Round(a[1]), math.Round(b[1])), cmp.Compare(a[0], b[0]))
	})
	for i, g := range got {
		place := i + 2
		x, y := g[0]-got[0][0], g[1]-got[0][1]
		wantX, wantY := 62.7*float64(place%3-2), 41.5*float64(place/3)
		if math.Abs(x-wantX) > 0.05 || math.Abs(y-wantY) > 0.05 {
			t.Errorf("label %d is %.3f, %.3f mm from the first; want %.3f, %.3f", place+1, x, y, wantX, wantY)
		}
	}
	// The paper's edge is 17.1 mm away, so that 2 mm of the label are kept.
	if right := 12.3 + 2*62.7 + 60.2 - 2; math.Abs(got[0][0]-right) > 0.3 {
		t.Errorf("the mark ends at %.3f mm; want it before %.3f", got[0][0], right)
	}
}

// Labels begin at the first free one, and those of a second plan follow those of
// the first on the same sheet.
func TestLabelsFollowEachOther(t *testing.T) {
	const board = "[top]\npresent = false\n[[board]]\nnominal = \"1x3\"\nlength = \"8 ft\"\nprice = 5\n"
	text := "order = \"R-1\"\n[rack]\ncolumns = 1\nrows = 1\n" + board
	var batches []label.Batch
	for range 2 {
		plan, err := saw.Make([]*rack.Rack{racktest.Build(t, text+"[labels]\nfirst = 21\n")}, saw.Quick)
		if err != nil {
			t.Fatal(err)
		}
		batches = append(batches, label.Batch{Plan: plan, Marks: []string{"aaaaaaaa"}})
	}
	sheets, err := label.InCuttingOrder(batches...)
	if err != nil {
		t.Fatal(err)
	}
	var each []int
	for _, s := range sheets {
		n := 0
		for _, m := range s.Marks {
			if text, ok := m.(drawing.Text); ok && text.Class == drawing.ItemText {
				n++
			}
		}
		each = append(each, n)
	}
	// Ten pieces an order; ten labels are left of thirty on the first sheet.
	if len(each) != 2 || each[0] != 10 || each[1] != 10 {
		t.Errorf("sheets of %v labels; want 10 and 10", each)
	}
}
