package sizing

import (
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/library"
)

// Blocks whose fuses break 32 V are left out where the system reaches more, at and above it;
// bus bars have no fuses.
func TestBlocksAreRatedForTheVoltage(t *testing.T) {
	for _, c := range []struct {
		systemV, regulatedV float64
		blades              bool
	}{{12, 14.4, true}, {24, 28.4, true}, {24, 32, true}, {24, 32.1, false}, {48, 56.8, false}} {
		d := &design.Design{Library: library.Default(), SystemV: design.Quantity{Value: c.systemV, Text: "V"}}
		d.Charging.RegulatedV = design.Quantity{Value: c.regulatedV, Text: "V"}
		d.Charging.Output = make([]design.OutputPoint, 1)
		blades, high, bars := false, false, false
		for _, b := range ratedFor(d, d.Library.Blocks) {
			blades = blades || b.FuseType == "blade C"
			high = high || b.FuseType == "blade F 58 V"
			bars = bars || strings.HasPrefix(b.Name, "bus bar")
		}
		if blades != c.blades || !high || !bars {
			t.Errorf("%g V: blades %v, 58 V %v, bars %v", c.regulatedV, blades, high, bars)
		}
	}
	d := &design.Design{Library: library.Default(), SystemV: design.Quantity{Value: 48, Text: "V"}}
	if only := d.Library.Blocks[:1]; len(ratedFor(d, only)) != 1 {
		t.Error("no block is left where none is rated")
	}
}
