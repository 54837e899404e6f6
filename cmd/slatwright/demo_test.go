package main

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strings"
	"testing"

	"slatwright/golden"
)

// designsDir is the folder of the demo designs.
func designsDir(t testing.TB) string { return filepath.Join(golden.Root(t), "testdata", "designs") }

// designs lists the demo designs.
func designs(t testing.TB) []string {
	t.Helper()
	list, err := filepath.Glob(filepath.Join(designsDir(t), "*.toml"))
	if err != nil || len(list) < 6 {
		t.Fatalf("%d demo designs, %v; want at least 6", len(list), err)
	}
	return list
}

// outside returns the path of an outside program. Where there is none the test
// is skipped, or fails where the deeper checks are asked for.
func outside(t testing.TB, name string) string {
	t.Helper()
	p, err := exec.LookPath(name)
	if err == nil {
		return p
	}
	if os.Getenv("SLATWRIGHT_REFEREES") == "1" {
		t.Fatalf("%s is not installed and SLATWRIGHT_REFEREES=1 asks for it", name)
	}
	t.Skipf("%s is not installed", name)
	return ""
}

// drawInto draws a design into a folder of the test and returns its files.
func drawInto(t *testing.T, design string) map[string][]byte {
	t.Helper()
	dir := t.TempDir()
	want := statusDone
	if strings.HasPrefix(filepath.Base(design), "counter-wide-gap") {
		want = statusFails
	}
	var stdout, stderr bytes.Buffer
	if got := run([]string{"draw", design, "-o", dir}, &stdout, &stderr); got != want {
		t.Fatalf("exit status %d; want %d\n%s", got, want, stderr.String())
	}
	files := map[string][]byte{}
	for _, pattern := range []string{"*.*", "svg/*"} {
		names, err := filepath.Glob(filepath.Join(dir, pattern))
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range names {
			data, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			rel, _ := filepath.Rel(dir, name)
			files[filepath.ToSlash(rel)] = data
		}
	}
	return files
}

// Every demo design draws the whole packet, and each SVG is well-formed.
func TestDemoDesignsDraw(t *testing.T) {
	for _, d := range designs(t) {
		t.Run(filepath.Base(d), func(t *testing.T) {
			files := drawInto(t, d)
			for _, name := range []string{"drawings.pdf", "template.pdf", "labels.pdf", "parts.csv", "boards.csv", "report.json"} {
				if len(files[name]) == 0 {
					t.Errorf("no %s", name)
				}
			}
			svgs := 0
			for name, data := range files {
				if path.Ext(name) == ".svg" {
					svgs++
					if err := wellFormed(data); err != nil {
						t.Errorf("%s: %v", name, err)
					}
				}
			}
			if svgs < 8 {
				t.Errorf("%d sheets; want at least 8", svgs)
			}
		})
	}
}

func wellFormed(data []byte) error {
	dec := xml.NewDecoder(bytes.NewReader(data))
	for {
		if _, err := dec.Token(); errors.Is(err, io.EOF) {
			return nil
		} else if err != nil {
			return err
		}
	}
}

// Programs that are not ours find no fault with the files.
func TestOutsideProgramsAgree(t *testing.T) {
	for _, p := range []struct {
		program, ext string
		args         []string
	}{
		{"qpdf", ".pdf", []string{"--check"}},
		{"xmllint", ".svg", []string{"--noout", "--huge"}},
	} {
		t.Run(p.program, func(t *testing.T) {
			program := outside(t, p.program)
			for _, d := range designs(t) {
				dir := t.TempDir()
				args := p.args
				for name, data := range drawInto(t, d) {
					if path.Ext(name) == p.ext {
						at := filepath.Join(dir, path.Base(name))
						if err := os.WriteFile(at, data, 0o644); err != nil {
							t.Fatal(err)
						}
						if p.program == "qpdf" { // it takes one file at a time
							noFault(t, program, append(p.args[:1:1], at))
							continue
						}
						args = append(args[:len(args):len(args)], at)
					}
				}
				if len(args) > len(p.args) {
					noFault(t, program, args)
				}
			}
		})
	}
}

// noFault runs a program that must find no fault.
func noFault(t *testing.T, program string, args []string) {
	t.Helper()
	if out, err := exec.Command(program, args...).CombinedOutput(); err != nil {
		t.Errorf("%s %s: %v\n%s", filepath.Base(program), strings.Join(args, " "), err, out)
	}
}

// The same design gives the same bytes on every run and machine.
func TestSameBytes(t *testing.T) {
	design := filepath.Join(designsDir(t), "cellar-magnum.toml")
	first := drawInto(t, design)
	for _, env := range [][2]string{{"GOMAXPROCS", "1"}, {"TZ", "Pacific/Kiritimati"}, {"LANG", "tr_TR.UTF-8"}, {"LC_ALL", "de_DE.UTF-8"}, {"HOME", "/nowhere"}} {
		t.Run(env[0], func(t *testing.T) {
			dir := t.TempDir()
			self, err := os.Executable()
			if err != nil {
				t.Fatal(err)
			}
			// A process of its own, since these are read when a program starts.
			c := exec.Command(self, "-test.run=^TestDrawForAnother$")
			c.Env = append(os.Environ(), env[0]+"="+env[1], "SLATWRIGHT_TEST_DRAW="+design, "SLATWRIGHT_TEST_OUT="+dir)
			if out, err := c.CombinedOutput(); err != nil {
				t.Fatalf("%v\n%s", err, out)
			}
			for name, want := range first {
				got, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(name)))
				if err != nil || !bytes.Equal(got, want) {
					t.Errorf("%s differs with %s=%s, %v", name, env[0], env[1], err)
				}
			}
		})
	}
}

// TestDrawForAnother draws where TestSameBytes asks for it in a process of its own.
func TestDrawForAnother(t *testing.T) {
	design, out := os.Getenv("SLATWRIGHT_TEST_DRAW"), os.Getenv("SLATWRIGHT_TEST_OUT")
	if design == "" {
		t.Skip("runs only as a part of TestSameBytes")
	}
	var stderr bytes.Buffer
	if got := run([]string{"draw", design, "-o", out}, io.Discard, &stderr); got != statusDone {
		t.Fatal(fmt.Sprint(got, stderr.String()))
	}
}

// A rack of 20 bottles, from reading to the last file on the disk.
func BenchmarkDraw20(b *testing.B) {
	design := filepath.Join(designsDir(b), "harbour-small.toml")
	dir := b.TempDir()
	for b.Loop() {
		if got := run([]string{"draw", design, "-o", dir}, io.Discard, io.Discard); got != statusDone {
			b.Fatalf("exit status %d", got)
		}
	}
}
