package sizing

import (
	"strings"
	"testing"
)

// TestBeforeTheFuse: the wire before a fuse is as thick as what follows, though what
// follows is given, or two wires hang on the fuse.
func TestBeforeTheFuse(t *testing.T) {
	src := strings.Replace(single("off-road", "6 A", "resistor", 3), "fed by: f, returns", "fed by: f, wire: {size: 4 mm²}, returns", 1)
	two := src + "  m: {current: 1 A, behaves: resistor, at: tray, own switch: yes, stays live: \"test\", fed by: f, returns to: battery negative}\n"
	for _, src := range []string{src, two} {
		p, err := Complete(read(t, src))
		if err != nil {
			t.Fatal(err)
		}
		if z := p.Design.Fuses[0].FedBy[0].Wire.Size; z.AreaMm2 < 4*0.99 {
			t.Errorf("%s before a fuse with 4 mm² behind it", z.Label)
		}
		if err := p.Explain(); err != nil {
			t.Fatal(err)
		}
		for _, c := range p.Choices {
			if strings.Contains(c.Lost, "not found by the search") {
				t.Errorf("%s: %s", c.Part, c.Lost)
			}
		}
	}
}
