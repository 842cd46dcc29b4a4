package corner_test

import (
	"fmt"
	"math"
	"testing"

	"fusewright/harness/network/corner"
	"fusewright/harness/proof/buildtest"
)

// TestDropAim: what the load or its type says; else 4 % for what is on for long, 3 % for constant power from 25 A, none
// for what is on for five minutes or less, or for part of the time (common
// practice, no source).
func TestDropAim(t *testing.T) {
	for load, want := range map[string]float64{
		"current: 24.9 A, behaves: constant power":                    0.04,
		"current: 25 A, behaves: constant power":                      0.03,
		"current: 60 A, behaves: constant power":                      0.03,
		"current: 60 A, behaves: motor":                               0.04,
		"current: 60 A, behaves: motor, on for: 5 min":                math.Inf(1),
		"current: 60 A, behaves: motor, on for: 6 min":                0.04,
		"current: 60 A, behaves: constant power, duty: 50 %":          math.Inf(1),
		"current: 60 A, behaves: constant power, on for: 10 s":        math.Inf(1),
		"current: 5 A, behaves: constant power, critical: yes":        0.04,
		"current: 26 A, behaves: constant power, critical: yes":       0.03,
		"current: 60 A, behaves: motor, on for: 1 min, drop aim: 6 %": 0.06,
		"current: 5 A, behaves: constant power, drop aim: 2 %":        0.02,
		"type: compressor fridge":                                     0.025,
		"type: compressor fridge, drop aim: 1 %":                      0.01,
		"current: 26 A, behaves: resistor, every: 1 h, on for: 1 min": math.Inf(1),
	} {
		c := buildtest.Circuit(t, fmt.Sprintf(`fusewright: 1
title: aim
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 60 Ah, rate: 20 h, resistance: 4 mΩ, at: tray}
places: {tray: {ambient: 30 °C}}
fuses:
  f: {type: blade E, rating: 80 A, at: tray, fed by: battery, wire: {size: 16 mm², length: 100 mm}}
loads:
  l: {%s, at: tray, fed by: f, wire: {size: 16 mm², length: 1 m}, returns to: battery negative, return wire: {size: 16 mm², length: 1 m}}
`, load))
		for _, b := range c.Branches {
			if b.Load == nil || b.Load.Standby {
				continue
			}
			if got, _ := corner.DropAim(c, b); got != want {
				t.Errorf("%s: aim %g, want %g", load, got, want)
			}
		}
	}
}
