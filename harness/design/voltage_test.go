package design_test

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/library"
)

// The highest voltage is the regulated one where the design says it, at 48 V
// too, and 14.4 V of 12 V where nothing charges.
func TestHighestVoltage(t *testing.T) {
	volts := func(v float64) design.Quantity { return design.Quantity{Value: v, Text: "given"} }
	charging := func(v float64) design.Charging {
		return design.Charging{Output: make([]design.OutputPoint, 1), RegulatedV: volts(v)}
	}
	var none *design.Design
	if v := none.NominalV(); v != 12 {
		t.Errorf("no design: %g V", v)
	}
	for _, test := range []struct {
		name         string
		d            design.Design
		nominal, top float64
	}{
		{"without charging", design.Design{SystemV: volts(12)}, 12, 14.4},
		{"48 V without charging", design.Design{SystemV: volts(48)}, 48, 57.6},
		{"regulated", design.Design{SystemV: volts(12), Charging: charging(14.3)}, 12, 14.3},
		{"regulated below the nominal", design.Design{SystemV: volts(12), Charging: charging(11)}, 12, 12},
		{"48 V regulated at 57 V", design.Design{SystemV: volts(48), Charging: charging(57)}, 48, 57},
		{"empty", design.Design{}, 12, 14.4},
	} {
		near := func(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }
		if n, h := test.d.NominalV(), test.d.HighestV(); !near(n, test.nominal) || !near(h, test.top) {
			t.Errorf("%s: nominal %g V, highest %g V, want %g V and %g V", test.name, n, h, test.nominal, test.top)
		}
	}
}

// A way's limit is the design's, else the block type's, else not known.
func TestWayLimit(t *testing.T) {
	kind := &library.BlockType{WayA: 20, TotalA: 60}
	own := design.Quantity{Value: 5, Text: "5 A"}
	for _, test := range []struct {
		name       string
		b          design.Block
		way, total float64
	}{
		{"nothing says", design.Block{}, 0, 0},
		{"the type", design.Block{Type: kind}, 20, 60},
		{"the design over the type", design.Block{Type: kind, WayA: own, TotalA: own}, 5, 5},
		{"the design alone", design.Block{WayA: own}, 5, 0},
	} {
		if w, total := test.b.WayLimitA(), test.b.TotalLimitA(); w != test.way || total != test.total {
			t.Errorf("%s: %g A a way, %g A in all, want %g A and %g A", test.name, w, total, test.way, test.total)
		}
	}
}
