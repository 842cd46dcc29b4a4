package rules_test

import (
	"testing"

	"fusewright/harness/review/finding"
)

// The rear is 600 mm away: a wire a millimetre shorter is a question, one below a tenth a
// slip. By way of a bracket, 500 mm and 100 mm, it may be as near as 400 mm.
func TestShorterThanTheWay(t *testing.T) {
	const lamp = `
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm², length: LENGTH}, returns to: frame}
`
	gravities(t, "wire-too-short", lamp, "LENGTH", map[string]finding.Severity{"600 mm": 0, "599 mm": finding.Advice, "60 mm": finding.Advice, "59 mm": finding.Fault})
	const round = `
places: {battery tray: {ambient: 40 °C}, rear: {ambient: 35 °C}, bracket: {ambient: 35 °C}}
runs:
  - {from: battery tray, to: bracket, length: 500 mm}
  - {from: bracket, to: rear, length: 100 mm}
`
	gravities(t, "wire-too-short", round+lamp, "LENGTH", map[string]finding.Severity{"400 mm": 0, "399 mm": finding.Advice})
	half := replace(round, "500 mm", "300 mm", "100 mm", "300 mm") // no nearer than nothing: a tenth of 600 mm
	gravities(t, "wire-too-short", half+lamp, "LENGTH", map[string]finding.Severity{"61 mm": 0, "60 mm": finding.Advice, "20 mm": finding.Advice})
}

// What tolerances alone break of a limit for the conductors is no word. Of the whole drop, two thirds of it in contacts
// and fuses, 8.34 mV a watt are lost at nominal, so that it passes 3 % of 12 V from 43.2 W on, as advice, and one and a
// half times that from 64.7 W on, a fault; 36 W are likely to lose 3.1 %.
func TestDropOfTheWorstCaseIsNoWord(t *testing.T) {
	const lamp = `
battery: {chemistry: AGM, capacity: 60 Ah, rate: 10 h, resistance: 5 mΩ, at: battery tray}
loads:
  tail lamp: {power: POWER, behaves: resistor, critical: yes, at: rear, fed by: lamp fuse, wire: {size: 1.5 mm²}, returns to: battery negative}
`
	gravities(t, "voltage-drop", lamp, "POWER", map[string]finding.Severity{"10 W": 0, "36 W": 0, "43 W": 0, "44 W": finding.Advice, "64 W": finding.Advice, "66 W": finding.Fault})
}
