package fault_test

import (
	"math"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/study/fault"
)

// A short behind a converter of 10 A: 15 A where it limits at one and a half times its rating, 10 A where it
// limits there. A blade fuse of 5 A opens at twice its rating; one of 10 A may stay whole, and the wires
// before either carry what the converter gives.
func TestShortBehindAConverter(t *testing.T) {
	c := buildtest.Circuit(t, `fusewright: 1
title: t
system: 24 V
practice: camper
battery: {chemistry: AGM, capacity: 60 Ah, at: bay}
places: {bay: {ambient: 40 °C}}
wire: {size: 2.5 mm²}
chargers: {dropper: {type: 24 V to 12 V converter 10 A, at: bay, fed by: main, returns to: battery negative}}
fuses:
  main: {type: blade C, rating: 15 A, at: bay, fed by: battery}
  small: {type: blade C, rating: 5 A, at: bay, fed by: dropper}
  great: {type: blade C, rating: 10 A, at: bay, fed by: dropper}
loads:
  lamp: {power: 24 W, at: bay, fed by: small, returns to: battery negative}
  heater: {power: 60 W, behaves: resistor, at: bay, fed by: great, returns to: battery negative}
`)
	study := fault.Compute(c)
	seen := map[string]bool{}
	for _, sh := range study.Shorts {
		name := ""
		switch {
		case sh.Wire != nil && sh.Where == fault.FarEnd:
			name = sh.Wire.To.Part.Name
		case sh.Part != nil:
			name = "in " + sh.Part.Name
		}
		most, least := &sh.Results[fault.Strong], &sh.Results[fault.Weak]
		switch name {
		case "lamp", "heater", "small", "great":
			if math.Abs(most.CurrentA-15) > 1e-9 || math.Abs(least.CurrentA-10) > 1e-9 {
				t.Errorf("%s: %g A and %g A, want 15 A and 10 A", name, most.CurrentA, least.CurrentA)
			}
		case "in dropper": // at its input, which the battery feeds
			if !(least.CurrentA > 100) || least.Device == nil {
				t.Errorf("%s: %g A", name, least.CurrentA)
			}
		default:
			continue
		}
		seen[name] = true
		switch name {
		case "lamp":
			if least.Device == nil || least.TooWeak() {
				t.Errorf("%s: the fuse of 5 A does not open", name)
			}
		case "heater":
			if !least.TooWeak() {
				t.Errorf("%s: the fuse of 10 A opens in %g s", name, least.SlowS)
			}
		case "small", "great":
			if least.Device != nil || !least.Limited || most.Worst != nil && !most.Worst.Survives() {
				t.Errorf("%s: the wire before its fuse is not left to the converter's limit", name)
			}
		}
	}
	if len(seen) != 5 {
		t.Errorf("seen %v", seen)
	}
}
