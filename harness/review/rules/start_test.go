package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// startDesign has electronics and a lamp behind a keyed relay; with a starter of its own behind a relay it says how it is started.
func startDesign(ohm string, own bool, more string) string {
	const text = `
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: OHM mΩ, at: battery tray}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
relays:
  keyed: {form: mini make, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm²}, coil: {fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, return wire: {size: 1 mm²}, suppressed by: resistor}}
RELAY
loads:
  tail lamp: {power: 20 W, behaves: constant power, symbol: electronics, minimum voltage: 9 V, at: rear, fed by: keyed, wire: {size: 1 mm²}, returns to: frame MORE}
STARTER
situations:
  riding: {engine: cruise, on: [tail lamp]}
STARTING
`
	relay, starter, starting := "", "", ""
	if own {
		relay = "  starter relay: {form: winch contactor 12 V, at: battery tray, fed by: battery, wire: {size: 25 mm², length: 300 mm}, coil: {fed by: button, wire: {size: 1 mm²}, returns to: frame, return wire: {size: 1 mm²}, suppressed by: diode}}\nswitches:\n  button: {rating: 5 A, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm²}, momentary: yes}"
		starter = "  starter: {type: starter motorcycle, at: rear, fed by: starter relay, wire: {size: 25 mm², length: 800 mm}, returns to: battery negative, return wire: {size: 25 mm², length: 800 mm}}"
		starting = "  starting: {on: [starter, tail lamp]}"
	}
	return replace(text, "OHM", ohm, "RELAY\n", relay+"\n", "STARTER\n", starter+"\n", "STARTING\n", starting+"\n", " MORE", more)
}

// gravestOf is the gravest finding of each rule.
func gravestOf(t *testing.T, text string) map[string]finding.Severity {
	t.Helper()
	most := map[string]finding.Severity{}
	for _, f := range assess(t, "start.yaml", []byte(text)) {
		most[f.Rule] = max(most[f.Rule], f.Severity)
	}
	return most
}

// What a start does to electronics is the same whether the design writes the start out or not: advice, of what is
// critical too. A relay that has pulled in before the start is not asked to pull in again, and a start flattens no battery.
func TestStartWrittenOutOrNot(t *testing.T) {
	for _, own := range []bool{false, true} {
		for _, c := range []struct {
			ohm, more string
			want      finding.Severity
		}{{"12", "", 0}, {"38", "", finding.Advice}, {"38", ", critical: yes", finding.Advice}} {
			// One that needs what no start leaves, so that the weak battery does not speak for it.
			text := strings.Replace(startDesign(c.ohm, own, c.more), "minimum voltage: 9 V", "minimum voltage: 9.6 V", 1)
			got := gravestOf(t, example.Design(text))
			if got["resets-at-start"] != c.want || got["relay-coil-voltage"] != 0 || got["battery-flattened"] != 0 || got["situation-unsolved"] != 0 {
				t.Errorf("own starter %v, %s mΩ%s: %v", own, c.ohm, c.more, got)
			}
			if !own && got["load-undervoltage"] != 0 {
				t.Errorf("%s mΩ%s: %v", c.ohm, c.more, got)
			}
		}
	}
}

// A worse battery never gets a milder verdict, and one that does not start the engine never a clean sheet.
func TestWorseBatteryIsNotMilder(t *testing.T) {
	for _, own := range []bool{false, true} {
		var most finding.Severity
		for ohm := 5.0; ohm < 600; ohm *= 1.05 {
			got := gravestOf(t, example.Design(startDesign(fmt.Sprintf("%.2f", ohm), own, "")))
			now := max(got["starter-does-not-turn"], got["situation-unsolved"], got["load-undervoltage"])
			if now < most {
				t.Errorf("own starter %v, %.2f mΩ: %s, with less %s: %v", own, ohm, now, most, got)
			}
			most = max(most, now)
			if ohm > 46 && most < finding.Fault {
				t.Errorf("own starter %v, %.2f mΩ: %v", own, ohm, got)
			}
		}
	}
}
