package table_test

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"slatwright/specs/table"
	"slatwright/specs/unit"
)

func TestUnknownConstantPanics(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("an unknown constant has a value")
		}
	}()
	table.Value("no.such")
}

// Each constant is read by the program: a row that nothing reads would look like
// a rule that is kept.
func TestEveryConstantIsRead(t *testing.T) {
	var code []byte
	err := filepath.WalkDir(filepath.Join("..", ".."), func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		text, err := os.ReadFile(path)
		code = append(code, text...)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	for _, name := range table.Names() {
		l, _ := table.List(name, unit.Imperial)
		for _, r := range l.Rows {
			if family, _, ok := strings.Cut(r.Name, "."); !ok || family == "" {
				continue // no constant: those have names such as "tip.push"
			}
			if rows++; !bytes.Contains(code, []byte(strconv.Quote(r.Name))) {
				t.Errorf("nothing reads %s", r.Name)
			}
		}
	}
	if rows < 40 {
		t.Errorf("%d constants seen", rows)
	}
}

// What one caller does with a list is nobody else's business.
func TestOperationsAreCopied(t *testing.T) {
	first := table.Operations()[0]
	table.Operations()[0].Name = "spoiled"
	if got := table.Operations()[0]; got != first {
		t.Errorf("%+v; want %+v", got, first)
	}
}
