package main

import (
	"encoding/xml"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/render/sheet"
	"slatwright/specs/design"
)

// setWord is a word of a page with the box around it, in points.
type setWord struct {
	XMin float64 `xml:"xMin,attr"`
	YMin float64 `xml:"yMin,attr"`
	XMax float64 `xml:"xMax,attr"`
	YMax float64 `xml:"yMax,attr"`
	Text string  `xml:",chardata"`
}

// readWords has an outside program read the words of each page of a PDF. Their
// boxes are those of the font, from its highest accent to its lowest tail.
func readWords(t *testing.T, file []byte) [][]setWord {
	t.Helper()
	program := outside(t, "pdftotext")
	path := filepath.Join(t.TempDir(), "file.pdf")
	if err := os.WriteFile(path, file, 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(program, "-bbox", path, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	var doc struct {
		Pages []struct {
			Words []setWord `xml:"word"`
		} `xml:"body>doc>page"`
	}
	if err := xml.Unmarshal(out, &doc); err != nil {
		t.Fatal(err)
	}
	var pages [][]setWord
	for _, p := range doc.Pages {
		pages = append(pages, p.Words)
	}
	return pages
}

// Where words are read by a program that is not ours, none overlaps another on
// any page of any demo design.
func TestWordsKeepApart(t *testing.T) {
	const hair = 0.01 // what rounding to hundredths of a point can do
	for _, d := range designs(t) {
		files := drawInto(t, d)
		for _, name := range []string{"drawings.pdf", "template.pdf", "labels.pdf"} {
			read := 0
			for n, words := range readWords(t, files[name]) {
				read += len(words)
				for i, a := range words {
					for _, b := range words[:i] {
						wide := min(a.XMax, b.XMax) - max(a.XMin, b.XMin)
						high := min(a.YMax, b.YMax) - max(a.YMin, b.YMin)
						if wide > hair && high > hair {
							t.Errorf("%s, %s, page %d: %q and %q overlap by %.2f x %.2f points",
								filepath.Base(d), name, n+1, a.Text, b.Text, wide, high)
						}
					}
				}
			}
			if read < 100 {
				t.Errorf("%s, %s: only %d words read", filepath.Base(d), name, read)
			}
		}
	}
}

// Every length of a ladder is found as text on its pages of the PDF: where each
// slat's underside lies, and what the parts measure.
func TestLadderLengthsAreText(t *testing.T) {
	for _, path := range designs(t) {
		d, err := design.Load(path)
		if err != nil {
			t.Fatal(err)
		}
		r, err := rack.Build(d)
		if err != nil {
			t.Fatal(err)
		}
		in, err := contents(r, check.All(r), "0123abcd")
		if err != nil {
			t.Fatal(err)
		}
		sheets, err := sheet.Packet(in)
		if err != nil {
			t.Fatal(err)
		}
		pages := readWords(t, drawInto(t, path)["drawings.pdf"])
		if len(pages) != len(sheets) {
			t.Fatalf("%s: %d pages, %d sheets", path, len(pages), len(sheets))
		}
		texts := map[string]string{} // all pages of a shape, by its number in their names
		for i, s := range sheets {
			if _, name, ok := strings.Cut(s.Name, "-ladder-"); ok {
				texts[strings.TrimRight(name, "abcdefghijklmnopqrstuvwxyz")] += " " + joined(pages[i])
			}
		}
		for n, s := range r.Shapes {
			wants := slices.Concat(s.Left, s.Right)
			for _, name := range []string{"leg.length", "leg.width", "slat.height", "slat.length", "slat.thickness", "leg.thickness"} {
				wants = append(wants, r.Len(name))
			}
			for _, l := range wants {
				if f := r.Format.Text(l); !hasWord(texts[strconv.Itoa(n+1)], f) {
					t.Errorf("%s: ladder %s: the page has no %q", filepath.Base(path), s.Name, f)
				}
			}
		}
	}
}

// joined is the words of a page in the order in which they were read.
func joined(words []setWord) string {
	var all []string
	for _, w := range words {
		all = append(all, strings.Fields(w.Text)...)
	}
	return strings.Join(all, " ")
}

// hasWord reports whether a figure stands in a text by itself, not as a part of a
// longer one.
func hasWord(text, figure string) bool {
	for rest := text; ; {
		i := strings.Index(rest, figure)
		if i < 0 {
			return false
		}
		before, after := rest[:i], rest[i+len(figure):]
		if !strings.HasSuffix(before, "/") && !endsInDigit(before) && (after == "" || !strings.ContainsAny(after[:1], "0123456789/")) {
			return true
		}
		rest = after
	}
}

func endsInDigit(s string) bool { return s != "" && s[len(s)-1] >= '0' && s[len(s)-1] <= '9' }
