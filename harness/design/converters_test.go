package design

import (
	"strings"
	"testing"
)

const converterHead = `fusewright: 1
title: t
system: 24 V
practice: camper
battery: {chemistry: AGM, capacity: 60 Ah, at: bay}
places: {bay: {}}
chargers:
  dropper: {at: bay, type: 24 V to 12 V converter 10 A, fed by: battery}
`

// What a converter feeds, over whatever, has its voltage: 12 V on a 24 V machine.
func TestFedByAConverter(t *testing.T) {
	d, err := Read("t.yaml", []byte(converterHead+`
fuses:
  end: {at: bay, type: blade C, rating: 5 A, fed by: dropper}
relays:
  inner: {at: bay, form: mini make, fed by: end, coil: {fed by: end, suppressed by: diode}}
  mixed: {at: bay, form: mini make, fed by: battery, coil: {fed by: end, suppressed by: diode}}
  outer: {at: bay, form: mini make, fed by: end, coil: {fed by: battery, suppressed by: diode}}
  open: {at: bay, fed by: end, coil: {fed by: end, suppressed by: diode}}
  named: {at: bay, form: mini make 24 V, fed by: end, coil: {fed by: end, suppressed by: diode}}
loads:
  radio: {at: bay, type: radio, fed by: inner}
  lamp: {at: bay, power: 24 W, fed by: end}
  heater: {at: bay, current: 2 A, fed by: outer}
  wire: {at: bay, resistance: 6 Ω, fed by: dropper}
  said: {at: bay, power: 24 W, rated at: 13.5 V, fed by: end}
  left: {at: bay, power: 3 W, rated at: 6 V, fed by: end}
  right: {at: bay, power: 3 W, rated at: 6 V, in series with: left}
  main: {at: bay, power: 24 W, fed by: mixed}
`), nil)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []struct{ ratedV, powerW, netV float64 }{{12, 20, 12}, {12, 24, 12}, {12, 24, 12}, {12, 24, 12}, {13.5, 24, 12}, {6, 3, 12}, {6, 3, 12}, {24, 24, 24}} {
		if l := d.Loads[i]; l.RatedV != want.ratedV || l.PowerW != want.powerW || d.NominalOf(l) != want.netV {
			t.Errorf("%s: rated %g V, %g W, fed %g V; want %v", l.Name, l.RatedV, l.PowerW, d.NominalOf(l), want)
		}
	}
	if v := d.Loads[0].MinV.Value; v != 10 {
		t.Errorf("the radio needs %g V, want 10 V", v)
	}
	for i, want := range []float64{12, 12, 24, 12, 24} { // the last is named so, and is wrong there
		if x := d.Relays[i]; x.Form.CoilV != want {
			t.Errorf("%s: a coil for %g V, want %g V", x.Name, x.Form.CoilV, want)
		}
	}
	for i, want := range []float64{12, 12, 24, 12, 12} {
		if got := d.CoilV(d.Relays[i]); got != want {
			t.Errorf("%s: its coil is fed %g V, want %g V", d.Relays[i].Name, got, want)
		}
	}
	if v := d.HighestV(); v < 28.79 || v > 28.81 { // 1.2 times 24 V; the converter's 13.8 V are not of the system
		t.Errorf("the system reaches %g V", v)
	}
}

// What a converter cannot do is refused, at the place where it is said.
func TestConverterRefused(t *testing.T) {
	for name, c := range map[string]struct{ more, want string }{
		"battery":         {"batteries: {house: {at: bay, chemistry: AGM, capacity: 60 Ah, fed by: dropper}}\n", `t.yaml:9:71: battery "house" is fed by "dropper", a converter, which charges nothing`},
		"charger":         {"  booster: {at: bay, type: DC-DC charger 10 A, fed by: dropper}\n", `"booster" is fed by "dropper", a converter`},
		"two voltages":    {"loads: {lamp: {at: bay, power: 5 W, fed by: [battery, dropper]}}\n", `"lamp" is fed by a battery and by converter "dropper" (12 V)`},
		"two of them":     {"  other: {at: bay, type: 24 V to 12 V converter 10 A, fed by: battery}\nloads: {lamp: {at: bay, power: 5 W, fed by: [dropper, other]}}\n", `"lamp" is fed by converter "dropper" (12 V) and by converter "other" (12 V)`},
		"other system":    {"  other: {at: bay, type: 48 V to 12 V converter 10 A, fed by: battery}\n", `48 V to 12 V converter 10 A is for 48 V (expected one for 24 V, such as 24 V to 12 V converter 10 A)`},
		"fed by nothing":  {"  other: {at: bay, type: 24 V to 12 V converter 10 A}\n", "nothing feeds it"},
		"a converter too": {"  other: {at: bay, type: 24 V to 12 V converter 10 A, fed by: dropper}\n", `"other" is fed by "dropper", a converter`},
	} {
		if _, err := Read("t.yaml", []byte(converterHead+c.more), nil); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %s", name, err, c.want)
		}
	}
}

// A charger for another system is refused with the one for this system that is most like it, if there is one.
func TestChargerForTheSystem(t *testing.T) {
	const text = "fusewright: 1\ntitle: t\nsystem: 48 V\npractice: off-road\nbattery: {chemistry: AGM, capacity: 60 Ah, in series: 4, at: bay}\nplaces: {bay: {}}\nchargers: {c: {at: bay, TYPE}}\n"
	for charger, want := range map[string]string{
		"type: MPPT controller 30 A 24 V, panel: 180 W":      "(expected one for 48 V, such as MPPT controller 30 A 48 V)",
		"type: shore charger 40 A":                           "(expected one for 48 V, such as shore charger 20 A 48 V)",
		"type: PWM controller 10 A, panel: 90 W":             "(expected one for 48 V, of which the library has none of its kind)",
		"type: DC-DC charger 30 A 24 V, fed by: battery":     "(expected one for 48 V, of which the library has none of its kind)",
		"type: 24 V to 12 V converter 20 A, fed by: battery": "(expected one for 48 V, such as 48 V to 12 V converter 20 A)",
	} {
		if _, err := Read("t.yaml", []byte(strings.ReplaceAll(text, "TYPE", charger)), nil); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %s", charger, err, want)
		}
	}
}
