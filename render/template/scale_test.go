package template_test

import (
	"os"
	"strings"
	"testing"

	"slatwright/geometry/assembly"
	"slatwright/geometry/finish"
	"slatwright/geometry/rack/racktest"
	"slatwright/render/template"
	"slatwright/specs/word"
)

// The page, the step and the manual answer alike what to do when a ruler does not
// measure true.
func TestOneAnswerForRulersThatAreOut(t *testing.T) {
	r := racktest.Build(t, inchDesign)
	sheets, err := template.Sheets(r, "test")
	if err != nil {
		t.Fatal(err)
	}
	manual, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	step := ""
	for _, s := range assembly.Steps(r, finish.Panel{}, nil) {
		if s.Name == assembly.StepMark {
			step = s.Text
		}
	}
	flat := func(s string) string { return strings.Join(strings.Fields(strings.ReplaceAll(s, "`", "")), " ") }
	for _, c := range []struct{ where, text string }{
		{"first page", strings.Join(wordsOf(sheets[0]), " ")}, {"step", step}, {"manual", string(manual)},
	} {
		text := flat(c.text)
		if !strings.Contains(text, assembly.OutOfScale) && !strings.Contains(text, word.Capital(assembly.OutOfScale)) {
			t.Errorf("the %s does not say what to do when a ruler is out", c.where)
		}
	}
}
