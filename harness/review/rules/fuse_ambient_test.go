package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/reviewtest"
)

// A fuse in a place without an ambient is judged by a hotter one in the worst case
// than the study prints: the finding says both. A motor of 70 W takes 5.83 A, 7.00 A
// with its tolerance; 7.5 A may carry 6.89 A at 40 °C and 7.25 A at 30 °C.
func TestFuseOfAPlaceWithoutAmbient(t *testing.T) {
	const text = `fusewright: 1
title: t
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 10 Ah, at: a}
charging: {regulated: 14.2 V, output: {1200 rpm: 12 A, 3000 rpm: 24 A}, idle: 1200 rpm, cruise: 3000 rpm}
places: {a: {ambient: 30 °C}, b: {AMBIENT}}
runs: [{from: a, to: b, length: 1 m}]
wire: {insulation: ISO 6722 thin wall class B, size: 2.5 mm²}
fuses:
  main: {type: blade C, rating: 20 A, at: a, fed by: battery, wire: {length: 100 mm}}
  fan: {type: blade C, rating: 7.5 A, at: b, fed by: main}
loads:
  blower: {power: 70 W, behaves: motor, at: b, fed by: fan, returns to: battery negative}
situations:
  hot: {engine: idle, on: [blower]}
`
	for ambient, want := range map[string]string{
		"":                "at 40 °C, the worst case for a place without an ambient, where 30 °C is assumed, it may carry 6.89 A",
		"ambient: 40 °C":  "at 40 °C it may carry 6.89 A",
		"ambient: -10 °C": "",
	} {
		r := reviewtest.Of(t, strings.Replace(text, "AMBIENT", ambient, 1))
		var said string
		for _, f := range r.Findings {
			if f.Rule == "fuse-under-load" && f.Part == "fan" {
				said = f.What
			}
		}
		if (said == "") != (want == "") || !strings.Contains(said, want) {
			t.Errorf("%q: %q, want %q", ambient, said, want)
		}
	}
}
