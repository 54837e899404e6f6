package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"slatwright/golden"
)

// layers are the code folders; a package imports from its own and from those
// before it.
var layers = []string{"specs", "geometry", "render", "cmd"}

// The imports of every file keep the direction specs, geometry, render, cmd.
// The files are read, not listed by a tool, so that no cached result hides a
// break of the rule.
func TestImportDirection(t *testing.T) {
	root := golden.Root(t)
	seen := 0
	for layer, folder := range layers {
		err := filepath.WalkDir(filepath.Join(root, folder), func(path string, e fs.DirEntry, err error) error {
			if err != nil || e.IsDir() || filepath.Ext(path) != ".go" {
				return err
			}
			seen++
			for _, fault := range wrongImports(t, path, layer) {
				t.Errorf("%s imports %s, which is not to the left of %s", path, fault, folder)
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if seen < 100 {
		t.Errorf("%d files read; the walk misses some", seen)
	}
}

// wrongImports lists what a file of the layer must not import.
func wrongImports(t *testing.T, path string, layer int) []string {
	t.Helper()
	f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, i := range f.Imports {
		name, err := strconv.Unquote(i.Path.Value)
		if err != nil {
			t.Fatal(err)
		}
		// A package named for tests, such as racktest, is nothing but tests' own.
		test := strings.HasSuffix(path, "_test.go") || strings.HasSuffix(filepath.Dir(path), "test")
		if forbidden(name, layer, test) {
			list = append(list, name)
		}
	}
	return list
}

// forbidden reports whether a file of the layer must not import the package.
// Tests may use the helper that compares golden files.
func forbidden(name string, layer int, test bool) bool {
	rest, ours := strings.CutPrefix(name, "slatwright/")
	if !ours {
		return false
	}
	folder, _, _ := strings.Cut(rest, "/")
	if folder == "golden" {
		return !test
	}
	at := slices.Index(layers, folder)
	return at < 0 || at > layer
}

func TestForbidden(t *testing.T) {
	for _, c := range []struct {
		name  string
		layer int
		test  bool
		want  bool
	}{
		{"fmt", 0, false, false}, {"slatwright/specs/unit", 1, false, false}, {"slatwright/render/svg", 1, false, true},
		{"slatwright/geometry/rack", 0, true, true}, {"slatwright/golden", 2, true, false}, {"slatwright/golden", 2, false, true},
	} {
		if got := forbidden(c.name, c.layer, c.test); got != c.want {
			t.Errorf("forbidden(%q, %s, %v) = %v; want %v", c.name, layers[c.layer], c.test, got, c.want)
		}
	}
}
