package rules

import (
	"fmt"
	"testing"

	"fusewright/harness/review/finding"
)

// A solar controller whose battery's protection opens on 100 W, 7.5 A: what its lamp bears, against the 22 V of an unloaded
// panel. A protection that holds, one more battery beside it, and a charger that does not give leave nothing to say.
func TestChargerLeftAlone(t *testing.T) {
	const snippet = `
batteries:
  house: {chemistry: LiFePO4, capacity: 14 Ah, board: %s, resistance: 12 mΩ, at: rear, fed by: house end, wire: {size: 4 mm², length: 100 mm}, returns to: frame, return wire: {size: 4 mm²}}
%schargers:
  roof: {type: %s, at: rear, returns to: frame, return wire: {size: 4 mm²}}
fuses:
  house end: {type: blade C, rating: 20 A, at: rear, fed by: roof, wire: {size: 4 mm²}}
  lamp end: {type: blade C, rating: 15 A, at: rear, fed by: house, wire: {size: 2.5 mm², length: 100 mm}}
loads:
  cabin lamp: {power: 100 W, behaves: resistor%s, at: rear, fed by: lamp end, wire: {size: 2.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}, own switch: true, stays live: "lights the camp"}
situations:
  at camp: {key: off, on: [cabin lamp]}
`
	const roof, hookUp = "MPPT controller 10 A, panel: 100 W", "shore charger 10 A"
	const other = "  more: {chemistry: LiFePO4, capacity: 14 Ah, board: 5 A, resistance: 12 mΩ, at: rear, fed by: house, wire: {size: 4 mm², length: 100 mm}, returns to: frame, return wire: {size: 4 mm²}}\n"
	for _, c := range []struct {
		board, other, charger, bears string
		want                         finding.Severity
	}{
		{"5 A", "", roof, ", maximum voltage: 16 V", finding.Fault},
		{"5 A", "", roof, ", maximum voltage: 21.9 V", finding.Fault},
		{"5 A", "", roof, ", maximum voltage: 22 V", 0},
		{"5 A", "", roof, "", finding.Advice},
		{"14 A", "", roof, ", maximum voltage: 16 V", 0},
		{"2 A", other, roof, ", maximum voltage: 16 V", 0},
		{"5 A", "", hookUp, ", maximum voltage: 16 V", 0},
	} {
		says(t, c.board+c.other+c.charger+c.bears, passOf(t, loadDump, fmt.Sprintf(snippet, c.board, c.other, c.charger, c.bears)).run(), c.want)
	}
}
