package drawing_test

import (
	"testing"

	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

func TestSum(t *testing.T) {
	pitch, leg := drawing.Of("ladder.pitch"), drawing.Of("leg.thickness")
	of := func(name string) unit.Length {
		return map[string]unit.Length{"ladder.pitch": 100, "leg.thickness": 7}[name]
	}
	for _, c := range []struct {
		sum   drawing.Sum
		text  string
		value unit.Length
	}{
		{nil, "", 0},
		{pitch, "ladder.pitch", 100},
		{drawing.Sum{}.Plus(3, pitch).Plus(1, leg), "3 ladder.pitch + leg.thickness", 307},
		{leg.Plus(-2, pitch), "-2 ladder.pitch + leg.thickness", -193},
		{pitch.Plus(-1, leg), "ladder.pitch - leg.thickness", 93},
		{pitch.Plus(1, leg).Plus(-1, pitch), "leg.thickness", 7},
	} {
		if got := c.sum.String(); got != c.text {
			t.Errorf("got %q, want %q", got, c.text)
		}
		if got := c.sum.Value(of); got != c.value {
			t.Errorf("%s is %d, want %d", c.text, got, c.value)
		}
	}
	if len(pitch) != 1 || pitch[0].Times != 1 {
		t.Error("Plus changed what it was called on")
	}
}
