package report_test

import (
	"bytes"
	"strings"
	"testing"

	"fusewright/harness/proof/reviewtest"
	"fusewright/render/report"
)

// A boat whose pump draws 3.3 A at 12 V for a twentieth of the time, and its windlass
// 90 A for a tenth of half an hour.
const moored = `fusewright: 1
title: moored
system: 12 V
practice: marine
battery: {chemistry: AGM, capacity: 90 Ah, rate: 20 h, resistance: 5 mΩ}
charging: {regulated: 14 V, output: {800 rpm: 30 A, 4000 rpm: 35 A}, idle: 800 rpm, cruise: 4000 rpm}
vehicle loads: {engine: 112 W}
wire: {insulation: tinned marine 105 °C AWG, size: 2 AWG}
fuses:
  windlass fuse: {type: class T, rating: 125 A, fed by: battery, wire: {length: 100 mm}}
  pump fuse: {type: blade C, rating: 5 A, fed by: battery, wire: {length: 100 mm, size: 16 AWG}}
switches:
  deck switch: {rating: 150 A, fed by: windlass fuse, wire: {length: 100 mm}}
  float: {type: float switch 15 A, fed by: pump fuse, wire: {length: 100 mm, size: 16 AWG}}
loads:
  windlass: {current: 90 A, behaves: motor, duty: 1 %, on for: 3 min, fed by: deck switch, wire: {length: 100 mm}, returns to: battery negative, return wire: {length: 100 mm}}
  pump: {type: bilge pump, fed by: float, wire: {length: 100 mm, size: 16 AWG}, returns to: battery negative, return wire: {length: 100 mm, size: 16 AWG}}
situations:
  anchoring: {engine: idle, on: [windlass]}
  under way: {engine: cruise, on: none}
  rain: {key: off, on: [pump]}
`

// Budget and check say the same of the battery: what it gives on average, and at peak.
// By hand, anchoring: 30 A less 8 A and 9 A to spare, and a full battery takes 0.3 A; at peak
// the 90 A and the engine's 9 A at 12.45 V are 69 A more than the 30 A. A pump fed without its
// float draws the same: its duty is its own, whatever closes it. In the rain 36 Ah at 165 mA last
// 9.1 days, and 8.7 of them with the self-discharge of k = -ln(0.95)/30 · √2 a day:
// ln((1 + 0.044/k) / (0.6 + 0.044/k)) / k.
func TestPeakBesideAverage(t *testing.T) {
	for name, src := range map[string]string{"behind its float": moored,
		"on for good": strings.NewReplacer("fed by: float", "fed by: pump fuse", "\n  float:", "\n  idle float:", "on: [pump]}", "on: none}").Replace(moored)} {
		r := reviewtest.Of(t, src)
		var budget, check bytes.Buffer
		if err := report.WriteBudget(&budget, report.NewBudget(r)); err != nil {
			t.Fatal(err)
		}
		if err := report.WriteText(&check, report.New(r)); err != nil {
			t.Fatal(err)
		}
		words := func(b bytes.Buffer) string { return strings.Join(strings.Fields(b.String()), " ") }
		if want := "rain: output 0 A, battery gives 165 mA on average, 3.30 A at peak"; !strings.Contains(words(check), want) {
			t.Errorf("%s: check has no %q in\n%s", name, want, check.String())
		}
		if !strings.Contains(words(budget), "165 mA") {
			t.Errorf("%s: budget says\n%s", name, budget.String())
		}
		if name != "behind its float" {
			continue
		}
		if want := "anchoring: output 30.0 A, 30.0 A used, battery takes 333 mA on average, gives 69.0 A at peak"; !strings.Contains(words(check), want) {
			t.Errorf("check has no %q in\n%s", want, check.String())
		}
		for _, want := range []string{"idle nothing 69.0 A", "4000 rpm 35.0 A 8.00 A 0 A 27.0 A 8.80 A idle nothing nothing",
			`In "rain" the engine still starts after 8.7 days at 165 mA (3.30 A at peak).`} {
			if !strings.Contains(words(budget), want) {
				t.Errorf("budget has no %q in\n%s", want, budget.String())
			}
		}
	}
}
