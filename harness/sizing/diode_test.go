package sizing

import (
	"strings"
	"testing"
)

// TestDiodeWireIsChosen: the wire to a diode is chosen as that to any other part: thick
// enough for the load behind it, and listed among the choices.
func TestDiodeWireIsChosen(t *testing.T) {
	src := strings.Replace(single("off-road", "8 A", "resistor", 4), "fed by: f,", "fed by: apart,", 1) +
		"diodes:\n  apart: {type: Schottky diode 10 A, at: far, fed by: f}\n"
	d := read(t, src)
	_, err := Complete(d)
	if err != nil {
		t.Fatal(err)
	}
	w := d.Diodes[0].FedBy[0].Wire
	if w.Size == nil || w.Size.AreaMm2 < 1.5 { // 8 A over 2 · 4 m: 4 % of 12 V asks for more than 1 mm²
		t.Errorf("size %v", w.Size)
	}
}
