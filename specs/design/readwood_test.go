package design_test

import (
	"testing"

	"slatwright/specs/design"
)

// What a file says about wood and joints is read, and what it leaves unsaid is
// the default: glued crossings, a slotted top, flat-sawn boards, no moisture.
func TestWoodAndJoints(t *testing.T) {
	for _, c := range []struct {
		text                    string
		moisture                int64
		quarter, glue, topGlued bool
		glueLine, topLine       int
	}{
		{"", 0, false, true, false, 0, 0},
		{"[wood]\nmoisture = \"8.5 %\"\nsawn = \"quarter\"\n[joint]\nglue = false\ntop = \"glued\"\n", 850, true, false, true, 5, 6},
		{"[wood]\nmoisture = 12\nsawn = \"flat\"\n[joint]\nglue = true\ntop = \"slotted\"\n", 1200, false, true, false, 5, 6},
	} {
		d, err := design.Read("test.toml", []byte(c.text))
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if d.Wood.Moisture != c.moisture || d.Wood.QuarterSawn != c.quarter || d.Joint.Glue != c.glue || d.Joint.TopGlued != c.topGlued ||
			d.Joint.GluePlace.Line != c.glueLine || d.Joint.TopPlace.Line != c.topLine {
			t.Errorf("%q: wood %+v, joint %+v", c.text, d.Wood, d.Joint)
		}
	}
}
