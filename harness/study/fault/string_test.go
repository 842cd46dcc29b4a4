package fault_test

import (
	"math"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/study/fault"
)

// Two resistors for 6 V, 6 Ω and 12 Ω, share 12 V as 4 V and 8 V. Either shorted, the other has 12 V of the 9 V that
// it bears; so has the first when the wire between them touches the frame. A maximum that is said counts instead.
func TestStrung(t *testing.T) {
	c := buildtest.Circuit(t, `fusewright: 1
title: t
system: 12 V
practice: camper
battery: {chemistry: AGM, capacity: 60 Ah, resistance: 1 mΩ, at: bay}
places: {bay: {ambient: 40 °C}}
wire: {size: 6 mm²}
fuses: {main: {type: blade C, rating: 15 A, at: bay, fed by: battery}}
loads:
  low: {resistance: 6 Ω, rated at: 6 V, at: bay, fed by: main}
  high: {resistance: 12 Ω, rated at: 6 V, maximum voltage: 16 V, at: bay, in series with: low, returns to: battery negative}
situations: {on: {key: on}}
`)
	study := fault.Compute(c)
	if len(study.Strung) != 3 {
		t.Fatalf("%d faults, want one of each load and one of the wire between them", len(study.Strung))
	}
	for i, want := range []struct {
		suffers      string
		share, bears float64
		over         bool
	}{{"high", 2.0 / 3, 16, false}, {"low", 1.0 / 3, 9, true}, {"low", 1.0 / 3, 9, true}} {
		x := study.Strung[i]
		if x.Suffers == nil || x.Suffers.Part.Name != want.suffers || x.BearsV != want.bears || x.Over() != want.over || len(x.Unsolved) > 0 {
			t.Errorf("%d: %+v", i, x)
			continue
		}
		if math.Abs(x.BeforeV-want.share*x.AfterV) > 0.02 || !(x.AfterV > 12) {
			t.Errorf("%d: %.3f V, then %.3f V", i, x.BeforeV, x.AfterV)
		}
	}
}
