package circuit_test

import (
	"slices"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
)

// grounded is a light bar whose switch joins its halves to ground, with a pilot lamp on a second pole and a
// relay whose coil is switched to ground with the wide half.
const grounded = `fusewright: 1
title: t
system: 12 V
practice: marine
battery: {chemistry: AGM, capacity: 60 Ah, at: locker}
places: {locker: {}}
wire: {insulation: tinned marine 105 °C metric, size: 2.5 mm²}
fuses:
  f: {type: blade C, rating: 30 A, at: locker, fed by: battery}
switches:
  bar: {type: rocker 16 A, at: locker, positions: {off: none, dim: narrow, full: [Narrow, wide]}, returns to: battery negative}
  lit: {pole of: bar, positions: {dim: pilot, full: pilot}, returns to: battery negative}
  horn push: {type: rocker 16 A, at: locker, returns to: bar narrow}
relays:
  fan relay: {form: mini make, at: locker, fed by: f, coil: {fed by: f, returns to: bar wide}}
loads:
  narrow beam: {resistance: 4 Ω, at: locker, fed by: f, returns to: bar narrow}
  wide beam: {resistance: 2 Ω, at: locker, fed by: f, returns to: bar wide}
  pilot: {resistance: 100 Ω, at: locker, fed by: f, returns to: lit pilot}
  fan: {power: 60 W, behaves: motor, at: locker, fed by: fan relay, returns to: battery negative}
  horn: {resistance: 3 Ω, at: locker, fed by: f, returns to: horn push}
situations:
  s: SITUATION
`

// A switch in a return is at the position that gives what is on its way back, as one in a feed is.
func TestPositionsInReturn(t *testing.T) {
	for _, tt := range []struct{ name, situation, position, closed, unmet string }{
		{"nothing on", "{}", "off", "", ""},
		{"one half, the least else", "{on: [narrow beam]}", "dim", "S1:narrow S2:pilot", ""},
		{"the other half, which comes with the first", "{on: [wide beam]}", "full", "S1:narrow S1:wide S2:pilot", ""},
		{"a coil that is switched to ground", "{on: [fan]}", "full", "S1:narrow S1:wide S2:pilot", ""},
		{"a plain switch before an output", "{on: [horn]}", "dim", "S1:narrow S2:pilot S3", ""},
		{"said, and not enough", "{on: [wide beam, fan], switches: {bar: dim}}", "dim", "S1:narrow S2:pilot", "wide beam fan"},
		{"off, with a load on", "{on: [horn], switches: {bar: off}}", "off", "S3", "horn"},
	} {
		c := buildtest.Circuit(t, strings.Replace(grounded, "SITUATION", tt.situation, 1))
		d := c.Design
		at, unmet := circuit.Positions(c, d.Situations[0])
		var closed, missing []string
		for i, on := range circuit.Contacts(c, d.Situations[0]) {
			if on && c.Branches[i].Closer.Switch != nil {
				closed = append(closed, c.Branches[i].Name)
			}
		}
		for _, u := range unmet {
			for _, b := range u.Loads {
				missing = append(missing, b.Part.Name)
			}
		}
		if at[d.Switches[0]] != tt.position || strings.Join(closed, " ") != tt.closed || strings.Join(missing, " ") != tt.unmet {
			t.Errorf("%s: at %q, closed %q, without %q", tt.name, at[d.Switches[0]], closed, missing)
		}
	}
}

// At 12.8 V of a full battery, wires and contacts apart (they take under 2 %): at dim 12.8 V / 4 Ω = 3.2 A and
// 0.128 A of the pilot; at full 12.8 V / 2 Ω = 6.4 A more, and none of it through the other output.
func TestCurrentsToGround(t *testing.T) {
	c := buildtest.Circuit(t, strings.Replace(grounded, "SITUATION", "{on: [narrow beam]}\n  full: {on: [wide beam]}\n  off: {}", 1))
	d := c.Design
	for i, want := range [][3]float64{{3.2, 0, 0.128}, {3.2, 6.4 + 0.15, 0.128}, {}} { // the relay's coil beside the wide half
		s := solve.Solve(c, d.Situations[i], solve.Options{BatteryV: 12.8})
		for k, name := range []string{"S1:narrow", "S1:wide", "S2:pilot"} {
			if a := s.Amps(branch(t, c, name)); a > want[k]*1.01+1e-3 || a < want[k]*0.97-1e-3 {
				t.Errorf("%s: %s carries %.3f A, by hand %.3f A", d.Situations[i].Name, name, a, want[k])
			}
		}
	}
}

// Day and night, which exclude each other in the feed, do so in the return.
func TestAtOnceInReturn(t *testing.T) {
	src := strings.NewReplacer("light: {rating: 16 A, fed by: f,", "light: {rating: 16 A, returns to: battery negative,",
		"fed by: light day, returns to: battery negative", "fed by: f, returns to: light day",
		"fed by: light night, returns to: battery negative", "fed by: f, returns to: light night").Replace(apart)
	c := build(t, "t.yaml", src)
	var draws []*circuit.Branch
	for _, b := range c.Branches {
		if b.Load != nil {
			draws = append(draws, b)
		}
	}
	var got []string
	for _, b := range c.Exclusive().AtOnce(draws) {
		got = append(got, b.Part.Name)
	}
	if !slices.Contains(got, "day") || slices.Contains(got, "night") {
		t.Errorf("at once: %v", got)
	}
}
