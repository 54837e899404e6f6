package table_test

import (
	"testing"

	"slatwright/specs/table"
)

func TestUnknownConstantPanics(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("an unknown constant has a value")
		}
	}()
	table.Value("no.such")
}
