package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// TestPanelReturn: the minus of a panel of two ways of 5 A carries 10 A of their fuses, but the fuse before the panel lets more
// through as soon as a third way is used. 2.5 mm² among two wires at 40 °C carries 31 A: less than 35 A, more than 30 A. A bar
// that brings back but one of the loads is no minus of a panel; what else returns there changes nothing. A block
// without a third way brings back the 10 A of its fuses and no more.
func TestPanelReturn(t *testing.T) {
	const src = `
grounds:
  bar: {kind: ground block, at: rear, limit: 60 A, returns to: battery negative, wire: {size: 2.5 mm², length: 700 mm}}
fuses:
  main: {type: blade E, rating: RATING, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
  other fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1.5 mm², length: 100 mm}}
blocks:
  panel: {BLOCK, at: rear, fed by: main, wire: {size: 6 mm²}, ways: {1: 5 A, 2: 5 A}}
loads:
  left: {power: 20 W, behaves: resistor, at: rear, own switch: yes, fed by: panel 1, wire: {size: 1.5 mm², length: 200 mm}, returns to: bar, return wire: {size: 1.5 mm², length: 200 mm}}
  right: {power: 20 W, behaves: resistor, at: rear, own switch: yes, fed by: panel 2, wire: {size: 1.5 mm², length: 200 mm}, returns to: RIGHT, return wire: {size: 1.5 mm², length: 900 mm}}
  other: {power: 20 W, behaves: resistor, at: rear, own switch: yes, fed by: other fuse, wire: {size: 1.5 mm²}, returns to: OTHER, return wire: {size: 1.5 mm², length: 900 mm}}
`
	const ways4 = "type: fuse block 4 way blade C"
	for _, c := range []struct {
		rating              int
		right, other, block string
		want                finding.Severity
	}{
		{20, "bar", "battery negative", ways4, 0},
		{30, "bar", "battery negative", ways4, 0},
		{40, "bar", "battery negative", ways4, finding.Advice},
		{60, "bar", "battery negative", ways4, finding.Advice},
		{60, "battery negative", "battery negative", ways4, 0},
		{60, "bar", "bar", ways4, finding.Advice},
		{60, "bar", "bar", "way limit: 30 A, total limit: 100 A", 0},
	} {
		text := strings.NewReplacer("RATING", fmt.Sprint(c.rating)+" A", "RIGHT", c.right, "OTHER", c.other, "BLOCK", c.block).Replace(src)
		var most finding.Severity
		for _, f := range assess(t, "panel.yaml", []byte(example.Design(text))) {
			if f.Rule == "shared-return-thin" {
				most = max(most, f.Severity)
			}
		}
		if most != c.want {
			t.Errorf("%d A, right to %s, other to %s: %s, want %s", c.rating, c.right, c.other, most, c.want)
		}
	}
}
