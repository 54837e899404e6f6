// Package golden compares what a test produced with the expected output kept
// in this folder. UPDATE_GOLDEN=1 go test ./... renews the files; a file that
// no test produced fails the test that owns its folder.
package golden

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// Set is the golden files of one test: everything below a folder of its own.
type Set struct {
	t      testing.TB
	folder string
	seen   []string
}

// Open starts a set in the named folder below golden. When the test ends, a
// file of the folder that it did not produce is an error.
func Open(t testing.TB, folder string) *Set {
	t.Helper()
	s := &Set{t: t, folder: filepath.Join(Root(t), "golden", folder)}
	t.Cleanup(s.strays)
	return s
}

// Check compares got with the file of that name.
func (s *Set) Check(name string, got []byte) {
	s.t.Helper()
	s.seen = append(s.seen, name)
	path := filepath.Join(s.folder, filepath.FromSlash(name))
	if updating() {
		s.write(path, got)
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		s.t.Errorf("%v; UPDATE_GOLDEN=1 go test ./... writes it", err)
		return
	}
	if !bytes.Equal(got, want) {
		s.t.Errorf("%s differs from what was expected, first at %s; if that is meant, renew it with UPDATE_GOLDEN=1 go test ./...", name, difference(got, want))
	}
}

func updating() bool { return os.Getenv("UPDATE_GOLDEN") == "1" }

func (s *Set) write(path string, got []byte) {
	s.t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		s.t.Fatal(err)
	}
	if err := os.WriteFile(path, got, 0o644); err != nil {
		s.t.Fatal(err)
	}
}

// strays reports the files of the folder that the test did not produce, and
// removes them when files are being renewed.
func (s *Set) strays() {
	if s.t.Failed() || s.t.Skipped() {
		return
	}
	err := filepath.WalkDir(s.folder, func(path string, e os.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		name, err := filepath.Rel(s.folder, path)
		if err != nil || slices.Contains(s.seen, filepath.ToSlash(name)) {
			return err
		}
		if updating() {
			return os.Remove(path)
		}
		s.t.Errorf("no test produced %s", path)
		return nil
	})
	if err != nil {
		s.t.Error(err)
	}
}

// difference shows the first line in which two texts differ.
func difference(got, want []byte) string {
	g, w := strings.Split(string(got), "\n"), strings.Split(string(want), "\n")
	for i := range min(len(g), len(w)) {
		if g[i] != w[i] {
			return "line " + strconv.Itoa(i+1) + ":\n got  " + clip(g[i]) + "\n want " + clip(w[i])
		}
	}
	return "line " + strconv.Itoa(min(len(g), len(w))+1) + ": one is longer"
}

func clip(s string) string { return s[:min(len(s), 300)] }

// Root returns the module's folder, found upwards from the test's own.
func Root(t testing.TB) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
		up := filepath.Dir(dir)
		if up == dir {
			t.Fatal("golden: no go.mod above the test")
		}
		dir = up
	}
}
