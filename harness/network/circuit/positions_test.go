package circuit_test

import (
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"
)

const lights = `fusewright: 1
title: t
system: 12 V
practice: marine
battery: {chemistry: AGM, capacity: 60 Ah, at: locker}
charging: {regulated: 14.2 V, output: {1000 rpm: 10 A}, idle: 1000 rpm, cruise: 1000 rpm}
places: {locker: {}}
wire: {insulation: tinned marine 105 °C metric, size: 2.5 mm²}
fuses:
  f: {type: blade C, rating: 5 A, at: locker, fed by: battery}
switches:
  lights: {type: rocker 16 A, at: locker, fed by: f, positions: {off: none, navigation: [bow, stern], anchor: Stern}}
  gauges: {pole of: lights, fed by: f, positions: {navigation: lamp}}
  pump: {type: rocker 16 A, at: locker, fed by: f, positions: [manual, off, automatic]}
  float: {type: float switch 15 A, at: locker, fed by: pump automatic}
loads:
  sidelights: {power: 4 W, at: locker, fed by: lights bow, returns to: battery negative}
  masthead: {power: 4 W, at: locker, fed by: lights stern, returns to: battery negative}
  gauge: {power: 1 W, at: locker, fed by: gauges lamp, returns to: battery negative}
  bilge: {power: 40 W, at: locker, fed by: [pump manual, float], returns to: battery negative}
situations:
  s: SITUATION
`

// The position follows from what is on, with the least else; the situation's word goes before.
func TestPositions(t *testing.T) {
	tests := []struct {
		name, situation string
		lights, pump    string
		closed, unmet   string
	}{
		{"nothing on", "{}", "off", "off", "", ""},
		{"one lamp in two positions: the one with nothing else", "{on: [masthead]}", "anchor", "off", "S1:stern", ""},
		{"both lamps", "{on: [masthead, sidelights]}", "navigation", "off", "S1:bow S1:stern S2:lamp", ""},
		{"the pole moves with its handle", "{on: [gauge]}", "navigation", "off", "S1:bow S1:stern S2:lamp", ""},
		{"by hand before the float", "{on: [bilge]}", "off", "manual", "S3:manual", ""},
		{"automatic as said: the float closes", "{on: [bilge], switches: {pump: automatic}}", "off", "automatic", "S3:automatic S4", ""},
		{"the float closed: the pump is on by it", "{on: [bilge], closed: [float]}", "off", "automatic", "S3:automatic S4", ""},
		{"the float closed, and manual as said", "{on: [bilge], closed: [float], switches: {pump: manual}}", "off", "manual", "S3:manual S4", ""},
		{"a position said without need", "{switches: {lights: Anchor}}", "anchor", "off", "S1:stern", ""},
		{"said, and not enough", "{on: [sidelights], switches: {lights: anchor}}", "anchor", "off", "S1:stern", "lights: sidelights"},
		{"everything: no position is asked for", "{on: all, switches: {lights: anchor}}", "anchor", "manual", "S1:stern S3:manual", ""},
	}
	for _, tt := range tests {
		c := buildtest.Circuit(t, strings.Replace(lights, "SITUATION", tt.situation, 1))
		d := c.Design
		at, unmet := circuit.Positions(c, d.Situations[0])
		if at[d.Switches[0]] != tt.lights || at[d.Switches[2]] != tt.pump {
			t.Errorf("%s: lights at %q, pump at %q", tt.name, at[d.Switches[0]], at[d.Switches[2]])
		}
		var closed, missing []string
		for i, on := range circuit.Contacts(c, d.Situations[0]) {
			if on && c.Branches[i].Closer.Switch != nil {
				closed = append(closed, c.Branches[i].Name)
			}
		}
		for _, u := range unmet {
			for _, b := range u.Loads {
				missing = append(missing, u.Switch.Name+": "+b.Part.Name)
			}
		}
		if got := strings.Join(closed, " "); got != tt.closed {
			t.Errorf("%s: closed %q, want %q", tt.name, got, tt.closed)
		}
		if got := strings.Join(missing, " "); got != tt.unmet {
			t.Errorf("%s: unmet %q, want %q", tt.name, got, tt.unmet)
		}
	}
}

// Without situations of the design each position that gives something is looked at.
func TestPositionsAreDerived(t *testing.T) {
	text, _, _ := strings.Cut(lights, "situations:")
	d := buildtest.Design(t, text)
	var names []string
	for _, s := range d.Situations {
		names = append(names, s.Name)
	}
	want := "key off; key on, engine stopped; key on, lights at navigation; key on, lights at anchor; key on, pump at manual; key on, pump at automatic; idle; cruise"
	if got := strings.Join(names, "; "); got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
}

// A handset that springs back is in the position that turns the motor as the situation has it.
func TestPositionTurnsAMotor(t *testing.T) {
	const src = `fusewright: 1
title: t
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 60 Ah, at: bay}
places: {bay: {}}
fuses:
  f: {type: blade C, rating: 5 A, at: bay, fed by: battery}
  main: {type: marine strip, rating: 200 A, at: bay, fed by: battery}
switches:
  handset: {type: rocker 16 A, momentary: yes, at: bay, fed by: f, positions: {in: reel, off: none, out: unreel}}
relays:
  haul: {form: winch reversing contactor, at: bay, fed by: main, returns to: battery negative, coil: {fed by: handset reel, returns to: battery negative, suppressed by: diode}}
  pay: {other half of: haul, coil: {fed by: handset unreel, returns to: battery negative, suppressed by: diode}}
loads:
  winch: {type: winch small, at: bay, fed by: haul, returns to: pay}
situations:
  s: SITUATION
`
	for _, tt := range []struct{ situation, position string }{
		{"{}", "off"},
		{"{on: [winch]}", "in"},
		{"{on: [winch], reversed: [winch]}", "out"},
		{"{on: [winch], switches: {handset: out}}", "out"},
	} {
		c := buildtest.Circuit(t, strings.Replace(src, "SITUATION", tt.situation, 1))
		at, unmet := circuit.Positions(c, c.Design.Situations[0])
		if got := at[c.Design.Switches[0]]; got != tt.position {
			t.Errorf("%s: handset at %q, want %q", tt.situation, got, tt.position)
		}
		if wants := strings.Contains(tt.situation, "switches"); (len(unmet) > 0) != wants { // out turns it the other way
			t.Errorf("%s: unmet %v", tt.situation, unmet)
		}
	}
}
