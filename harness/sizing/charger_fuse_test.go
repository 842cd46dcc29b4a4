package sizing

import (
	"strings"
	"testing"
)

const sunny = `fusewright: 1
title: "camper, a solar charger left open"
vehicle: invented
system: 12 V
practice: camper
battery: {chemistry: AGM, capacity: 95 Ah, resistance: 1.6 mΩ, at: bay}
batteries:
  house: {chemistry: LiFePO4, capacity: 200 Ah, resistance: 2.3 mΩ, board: 200 A, at: box, fed by: [booster end, sun end], wire: {length: 150 mm}, returns to: battery negative, return wire: {length: 500 mm}}
charging: {regulated: 14.4 V, output: {800 rpm: 50 A, 3000 rpm: 130 A}, idle: 800 rpm, cruise: 2300 rpm}
places: {bay: {ambient: 60 °C}, box: {ambient: 40 °C}}
runs:
  - {from: bay, to: box, length: 2.6 m}
wire: {size: auto}
chargers:
  solar: {type: MPPT controller 20 A 12 V, panel: PANEL, at: box, returns to: house negative, return wire: {length: 500 mm}}
  booster: {type: DC-DC charger 30 A, at: box, fed by: start end, returns to: house negative, return wire: {length: 400 mm}}
fuses:
  start end: {type: battery post fuse, rating: 50 A, at: bay, fed by: battery, wire: {length: 150 mm}}
  booster end: {type: battery post fuse, rating: auto, at: box, fed by: booster, wire: {length: 300 mm}}
  sun end: {type: battery post fuse, rating: auto, at: box, fed by: solar, wire: {length: 300 mm}}
  inverter fuse: {type: battery post fuse, rating: 110 A, at: box, fed by: house, wire: {length: 150 mm}}
loads:
  inverter: {power: 1000 W, behaves: constant power, at: box, own switch: yes, stays live: it has a switch, fed by: inverter fuse, wire: {length: 900 mm}, returns to: house negative, return wire: {length: 900 mm}}
situations:
  coffee: {key: off, on: [inverter]}
  at the lake: {key: off, sun: 10 %}
`

// So does that at its input, whatever a situation has it take for likely, and whatever else is wrong: 35 A
// are more than 40 A may carry at 60 °C.
func TestInputFuseGoesByItsRating(t *testing.T) {
	src := strings.NewReplacer("PANEL", "220 W", "type: battery post fuse, rating: 50 A", "rating: auto").Replace(sunny)
	for _, more := range []string{"", "  driving: {engine: cruise, on: []}\n"} {
		for _, inverters := range []string{"rating: 110 A", "rating: 50 A"} { // right and too small
			if got := sizesOf(t, strings.Replace(src, "rating: 110 A", inverters, 1)+more); !strings.Contains(got, "start end battery post fuse 50 A") {
				t.Errorf("%q, %s: %s", more, inverters, got)
			}
		}
	}
}

// The fuse of a charger goes by what that is rated for, whatever its panel and the sun: 20 A over 0.8 are 25 A, of
// post fuses 30 A; 30 A are 37.5 A, so 40 A. Nothing that the battery feeds hangs on it, and its wires are no thicker than
// the fuse needs: those of the inverter are none of theirs.
func TestChargerFuseGoesByItsRating(t *testing.T) {
	for _, panel := range []string{"220 W", "60 W"} {
		got := sizesOf(t, strings.Replace(sunny, "PANEL", panel, 1))
		t.Log(got)
		for _, want := range []string{"sun end battery post fuse 30 A", "booster end battery post fuse 40 A"} {
			if !strings.Contains(got, want) {
				t.Errorf("panel of %s: no %q in %s", panel, want, got)
			}
		}
		for _, thick := range []string{"10 mm²", "16 mm²", "25 mm²", "35 mm²"} {
			if strings.Contains(got, "solar, return wire "+thick) || strings.Contains(got, "sun end, wire "+thick) {
				t.Errorf("panel of %s: %s in %s", panel, thick, got)
			}
		}
	}
}
