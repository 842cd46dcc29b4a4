package sizing

import (
	"fmt"
	"strings"
	"testing"
)

// TestBetterInsulation: where the design leaves it open and the place is hot, the wires get
// an insulation that costs less than the copper; beside an exhaust of 130 °C the one that
// stands it. What the design says stays.
func TestBetterInsulation(t *testing.T) {
	hot := func(ambientC int) string {
		return strings.Replace(single("off-road", "20 A", "constant power", 2), "far: {ambient: 35 °C}", fmt.Sprintf("far: {ambient: %d °C}", ambientC), 1)
	}
	class := "ISO 6722 thin wall class "
	for _, c := range []struct {
		name, src, want string
		most            float64
	}{
		{"warm", hot(70), "B", 10},
		{"at the edge", hot(75), "B", 10},
		{"hot", hot(85), "C", 6},
		{"hotter than the usual one stands", hot(100), "C", 6},
		{"beside an exhaust", exhaust, "D", 1.5},
		{"hot, and given", hot(85) + "wire: {insulation: " + class + "B}\n", "B", 25},
	} {
		d := read(t, c.src)
		for range 2 { // choosing again gives the same
			p, err := Complete(d)
			if err != nil {
				t.Fatal(err)
			}
			w := d.Loads[0].FedBy[0].Wire
			if w.Type.Name != class+c.want || w.Size.AreaMm2 > c.most || d.Loads[0].Returns[0].Wire.Type != w.Type {
				t.Errorf("%s: %s %s, want class %s, %g mm² at most", c.name, w.Size.Label, w.Type.Name, c.want, c.most)
			}
			if f := d.Fuses[0]; f.Type.Name != "blade C" && c.want != "B" {
				t.Errorf("%s: a fuse %s for the copper of another insulation", c.name, f.Type.Name)
			}
			said := false
			for _, x := range p.Choices {
				said = said || x.Usual != "" && x.Set[0] == Setting{"insulation", w.Type.Name}
			}
			if said != (c.want != "B") {
				t.Errorf("%s: insulation said %v", c.name, said)
			}
		}
	}
}
