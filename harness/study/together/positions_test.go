package together_test

import (
	"slices"
	"strings"
	"testing"
)

// byPositions is a three-position switch for a bow lamp of 3 A and a stern lamp of 1 A, both
// or the second alone, and a deck lamp of 2.5 A beside it.
const byPositions = `fusewright: 1
title: by positions
system: 12 V
practice: marine
battery: {chemistry: AGM, capacity: 60 Ah, rate: 20 h, resistance: 5 mΩ}
charging: {regulated: 14 V, output: {1000 rpm: CHARGE, 4000 rpm: 25 A}, idle: 1000 rpm, cruise: 4000 rpm}
vehicle loads: {machine: 112 W}
wire: {insulation: tinned marine 105 °C AWG, size: 8 AWG}
fuses: {f: {type: blade C, rating: 30 A, fed by: battery, wire: {length: 20 mm}}}
switches:
  lights: {rating: 20 A, fed by: f, wire: {length: 20 mm}, positions: {off: none, navigation: [bow, stern], anchor: stern}}
  deck: {rating: 20 A, fed by: f, wire: {length: 20 mm}}
loads:
  bow lamp: {power: 42 W, rated at: 14 V, behaves: constant power, symbol: lamp, fed by: lights bow, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
  stern lamp: {power: 14 W, rated at: 14 V, behaves: constant power, symbol: lamp, fed by: lights stern, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
  deck lamp: {power: 35 W, rated at: 14 V, behaves: constant power, symbol: lamp, fed by: deck, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
situations:
  anchored: {engine: idle, on: [stern lamp]}
`

// By hand at idle: the machine takes 8 A. Of 4.8 A left the lights at navigation take 4 A, and the
// deck lamp does not fit beside them; at anchor they take 1 A and it does. Of 6.8 A all fit, and
// what is on at anchor is on at navigation too. Of 3 A the bow lamp does not fit at all.
func TestByPositions(t *testing.T) {
	const nav, anchor, deck = "lights at navigation (bow lamp, stern lamp)", "lights at anchor (stern lamp)", "deck lamp"
	for charge, want := range map[string][][]string{
		"12.8 A": {{nav}, {anchor, deck}},
		"14.8 A": {{nav, deck}},
		"11 A":   {{anchor}, {deck}},
	} {
		p, _ := plan(t, []byte(strings.Replace(byPositions, "CHARGE", charge, 1)))
		for _, c := range p.Choices {
			if c.Name != "anchored" {
				continue
			}
			var got [][]string
			for _, s := range c.Sets {
				got = append(got, names(p.Members(s)))
			}
			if !slices.EqualFunc(got, want, sameNames) {
				t.Errorf("%s: %q, want %q", charge, got, want)
			}
			if on := names(c.On); !slices.Equal(on, []string{anchor}) {
				t.Errorf("%s: on %q", charge, on)
			}
		}
	}
}

func sameNames(a, b []string) bool {
	a, b = slices.Sorted(slices.Values(a)), slices.Sorted(slices.Values(b))
	return slices.Equal(a, b)
}
