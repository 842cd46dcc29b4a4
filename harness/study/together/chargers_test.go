package together_test

import (
	"math"
	"slices"
	"strings"
	"testing"
)

// withBooster charges a house battery and turns a starter.
var withBooster = strings.NewReplacer(
	"battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 10 mΩ}",
	"battery: {chemistry: AGM, capacity: 80 Ah, resistance: 6 mΩ}\nbatteries: {house: {chemistry: LiFePO4, capacity: 100 Ah, fed by: {booster end: {size: 6 mm², length: 100 mm}}, returns to: battery negative, return wire: {length: 100 mm}}}",
	"loads:\n", `  booster end: {type: blade C, rating: 30 A, fed by: booster, wire: {length: 100 mm}}
chargers:
  booster: {type: DC-DC charger 20 A, fed by: f, wire: {length: 100 mm}, returns to: battery negative, return wire: {length: 100 mm}}
loads:
  starter: {type: starter car petrol, own switch: yes, fed by: f, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
`, "  off: {key: off}", "  half: {engine: cruise, on: [lamp], charge: {house: 50 %}}\n  off: {key: off}").Replace(byHand)

// What is left for what is switched is the spare current of the balance and what is switched on in
// it, in a situation that has the house full and in one that has it half full; a starter is no choice.
func TestChargersAsInTheBalance(t *testing.T) {
	p, b := plan(t, []byte(withBooster))
	if slices.ContainsFunc(names(p.Items), func(n string) bool { return n == "starter" }) {
		t.Errorf("items %q", names(p.Items))
	}
	tookA := map[string]float64{}
	for _, name := range []string{"fast", "half"} {
		for _, c := range p.Choices {
			for _, l := range b.Lines {
				if c.Name != name || l.Situation.Name != name {
					continue
				}
				tookA[name] = c.BaseA
				if want := l.SpareA + c.On[0].CurrentA; math.Abs(c.CapacityA-want) > 0.02*math.Abs(want) {
					t.Errorf("%s: %.3f A for what is switched, want %.3f A", name, c.CapacityA, want)
				}
			}
		}
	}
	if tookA["half"] < tookA["fast"]+5 { // the booster of 20 A gives more to a house half full
		t.Errorf("base %.2f A with the house full, %.2f A with it half full", tookA["fast"], tookA["half"])
	}
}
