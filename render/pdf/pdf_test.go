package pdf

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"slatwright/render/drawing"
	"slatwright/render/drawing/sample"
)

const mm = drawing.MM

// installed returns the path of an outside program. The test is skipped without
// it, and fails where all must be there.
func installed(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		if os.Getenv("SLATWRIGHT_REFEREES") == "1" {
			t.Fatalf("%s is not installed", name)
		}
		t.Skipf("%s is not installed", name)
	}
	return path
}

// run runs an outside program and returns what it prints.
func run(t *testing.T, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(installed(t, name), args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s %s: %v\n%s", name, strings.Join(args, " "), err, out)
	}
	return string(out)
}

func encode(t *testing.T, doc Document) []byte {
	t.Helper()
	b, err := Encode(doc)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// write encodes a document into a file and returns its path.
func write(t *testing.T, doc Document) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "doc.pdf")
	if err := os.WriteFile(path, encode(t, doc), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// packet is a document of three pages of different sizes.
func packet() Document {
	return Document{
		Title: "Rack — drawings (1)", Author: `Joiner \ "Co"`, Subject: "Order", Keywords: "rack, slats", Date: "2026-02-03",
		Sheets: []*drawing.Sheet{
			sample.Sheet(),
			sample.FullSize(420*mm, 297*mm, 100*mm),
			sample.FullSize(279400, 215900, 100*mm),
		},
	}
}

func TestStructure(t *testing.T) {
	for _, full := range []bool{false, true} {
		doc := packet()
		doc.FullSize = full
		path := write(t, doc)
		if out := run(t, "qpdf", "--check", path); strings.Contains(strings.ToLower(out), "warning") || !strings.Contains(out, "PDF Version: 1.7") {
			t.Errorf("qpdf: %s", out)
		}
		out := run(t, "mutool", "draw", "-q", "-F", "trace", path)
		if strings.Contains(out, "error:") || strings.Contains(out, "warning: invalid") || strings.Contains(out, "NaN") {
			t.Errorf("mutool: %s", out[:min(len(out), 500)])
		}
	}
}

func TestPagesAndProperties(t *testing.T) {
	path := write(t, packet())
	out := run(t, "pdfinfo", "-l", "3", path)
	for _, want := range []string{
		`Title: +Rack — drawings \(1\)\n`, `Author: +Joiner \\ "Co"\n`, `Subject: +Order\n`, `Keywords: +rack, slats\n`,
		`Creator: +slatwright\n`, `Producer: +slatwright\n`, `CreationDate: +.*Feb +3 .*2026`, `Pages: +3\n`,
		`Page +1 size: +595.28 x 841.89 pts`, `Page +2 size: +1190.55 x 841.89 pts`, `Page +3 size: +792 x 612 pts`,
	} {
		if !regexp.MustCompile(want).MatchString(out) {
			t.Errorf("no %s in\n%s", want, out)
		}
	}
}

func TestFontsAreEmbedded(t *testing.T) {
	out := strings.Split(strings.TrimSpace(run(t, "pdffonts", write(t, packet()))), "\n")
	if len(out) != 4 {
		t.Fatalf("want two fonts, got\n%s", strings.Join(out, "\n"))
	}
	for _, line := range out[2:] {
		if !regexp.MustCompile(`TrueType.* yes +(yes|no) +yes +`).MatchString(line) {
			t.Errorf("not embedded, or without its characters: %s", line)
		}
	}
}

func TestBookmarksPointToTheTopOfTheirPages(t *testing.T) {
	out := run(t, "mutool", "show", write(t, packet()), "outline")
	want := regexp.MustCompile(`(?s)"Sample sheet"\s+#page=1\b.*"Ruler"\s+#page=2\b.*"Ruler"\s+#page=3\b`)
	if !want.MatchString(out) {
		t.Errorf("got\n%s", out)
	}
	tops := regexp.MustCompile(`/XYZ\s+0\s+([0-9.]+)\s+null`).FindAllStringSubmatch(string(encode(t, packet())), -1)
	if len(tops) != 3 {
		t.Fatalf("%d bookmarks, want 3", len(tops))
	}
	for i, m := range tops {
		if height := []string{"841.89", "841.89", "612.00"}[i]; m[1] != height {
			t.Errorf("bookmark %d points at %s, the page is %s high", i+1, m[1], height)
		}
	}
}

func TestPrintScaling(t *testing.T) {
	doc := packet()
	if out := run(t, "mutool", "show", write(t, doc), "trailer/Root"); strings.Contains(out, "PrintScaling") || !strings.Contains(out, "/DisplayDocTitle true") {
		t.Errorf("scaled drawings: %s", out)
	}
	doc.FullSize = true
	if out := run(t, "mutool", "show", write(t, doc), "trailer/Root"); !strings.Contains(out, "/PrintScaling /None") {
		t.Errorf("full size: %s", out)
	}
}

func TestFractionsAreFoundAsWords(t *testing.T) {
	out := run(t, "pdftotext", "-bbox", write(t, packet()), "-")
	for _, want := range []string{
		"[38 7/16&quot;]", "2&apos;-7 1/2&quot;", "4 7/64", "58 1/2&quot;", "1 3/8&quot;", "4 7/8&quot;", "dia.", "×",
	} {
		if !strings.Contains(out, ">"+want+"</word>") {
			t.Errorf("%s is not a word of its own", want)
		}
	}
	if got := strings.Count(out, ">15/16&quot;</word>"); got != 4 {
		t.Errorf("15/16\" is found in %d turns, want 4", got)
	}
}

func TestSameBytes(t *testing.T) {
	want := encode(t, packet())
	for range 5 {
		if !bytes.Equal(want, encode(t, packet())) {
			t.Fatal("two runs give two files")
		}
	}
	other := packet()
	other.Date = "2026-02-04"
	if bytes.Equal(want, encode(t, other)) {
		t.Error("the date changes nothing")
	}
}

func TestHostileText(t *testing.T) {
	for _, h := range []string{`)>> /JS (x) <<(`, `\)`, "</title>", "a\x00b\x1b", "\u202eturned", "\U0001F600", "\xff", "(((", "漢字"} {
		s := sample.FullSize(100*mm, 100*mm, 50*mm)
		s.Title = h
		path := write(t, Document{Title: h, Author: h, Subject: h, Keywords: h, Sheets: []*drawing.Sheet{s}})
		if out := run(t, "qpdf", "--check", path); strings.Contains(strings.ToLower(out), "warning") {
			t.Errorf("%q: %s", h, out)
		}
		if out := run(t, "mutool", "show", path, "trailer/Info"); strings.Contains(out, "/JS") && !strings.Contains(out, "Title (") {
			t.Errorf("%q: %s", h, out)
		}
	}
	s := sample.FullSize(300*mm, 100*mm, 50*mm)
	const text = `) Tj ET (\ "<&> ((`
	s.Add(drawing.Label(drawing.NoteText, 0, drawing.Pt(10*mm, 20*mm), 3500, drawing.Left, drawing.Plain(text)))
	if out := run(t, "pdftotext", write(t, Document{Sheets: []*drawing.Sheet{s}}), "-"); !strings.Contains(out, text) {
		t.Errorf("got %q, want %q in it", out, text)
	}
}

func TestEncodeRefuses(t *testing.T) {
	bad := sample.FullSize(100*mm, 100*mm, 50*mm)
	bad.Add(drawing.Label(drawing.NoteText, 0, drawing.Pt(10*mm, 20*mm), 3500, drawing.Left, drawing.Plain("\U0001F600")))
	good := []*drawing.Sheet{sample.Sheet()}
	for _, tt := range []struct {
		doc  Document
		want string
	}{
		{Document{}, "a document needs at least one sheet"},
		{Document{Sheets: good, Date: "3 Feb"}, `date "3 Feb" is not a day written as yyyy-mm-dd`},
		{Document{Sheets: []*drawing.Sheet{bad}}, `sheet 01-ruler: mark 1: text "😀" has no glyph for [U+1F600]`},
	} {
		if b, err := Encode(tt.doc); b != nil || err == nil || err.Error() != tt.want {
			t.Errorf("got %d bytes and %v, want %s", len(b), err, tt.want)
		}
	}
}

// The patch of the catalog holds only for files of the form that the library
// writes; another form is refused, not guessed at.
func TestFinishRefusesOtherForms(t *testing.T) {
	const good = "%PDF-1.3\n1 0 obj\n<<\n/Type /Catalog\n>>\nendobj\nxref\n0 1\n\ntrailer\n<<\n/Size 1\n>>\nstartxref\n49\n%%EOF\n"
	if _, err := finish([]byte(good), true); err != nil {
		t.Fatalf("the plain form: %v", err)
	}
	for _, change := range [][2]string{
		{"%PDF-1.3", "%PDF-1.5"},
		{"/Type /Catalog", "/Type/Catalog"},
		{"endobj", "endobj\n2 0 obj\n<<\n/Type /Catalog\n>>\nendobj"},
		{">>\nendobj\nxref", ">>\nendobj\n2 0 obj\nendobj\nxref"},
		{"startxref\n49", "startxref\n4x"},
		{"startxref\n49", "startxref\n9"},
		{"\ntrailer\n<<\n", "\ntrailer <<\n"},
		{"startxref", "start"},
	} {
		file := strings.Replace(good, change[0], change[1], 1)
		if change[1] != "" && strings.Contains(change[1], "2 0 obj\nendobj") {
			file = strings.Replace(file, "startxref\n49", "startxref\n64", 1)
		}
		if _, err := finish([]byte(file), true); err == nil {
			t.Errorf("%q for %q is not refused", change[1], change[0])
		}
	}
}

// A packet of twenty pages is written while nobody has to wait.
func TestSpeed(t *testing.T) {
	doc := Document{}
	for i := range 20 {
		s := sample.Sheet()
		s.Name = fmt.Sprintf("%02d", i)
		doc.Sheets = append(doc.Sheets, s)
	}
	start := time.Now()
	encode(t, doc)
	took := time.Since(start)
	t.Logf("20 pages took %v", took)
	if took > time.Second {
		t.Errorf("20 pages took %v", took)
	}
}
