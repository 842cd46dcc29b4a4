package design

import (
	"strings"
	"testing"
)

// A part is made for the system whose voltages, nominal to charging, are nearest to what it is
// rated at; the least volts of a type go with it.
func TestClassOfARatedVoltage(t *testing.T) {
	for ratedV, want := range map[float64]float64{0: 12, 6: 6, 7.2: 6, 9: 6, 9.5: 12, 12: 12, 13.5: 12, 14.4: 12, 18.6: 12, 18.7: 24, 24: 24, 28.4: 24,
		37.3: 24, 37.4: 48, 48: 48, 56.8: 48} {
		if got := classV(ratedV); got != want {
			t.Errorf("%g V is of a %g V system, want %g V", ratedV, got, want)
		}
	}
	const head = "fusewright: 1\ntitle: t\nsystem: 24 V\npractice: camper\nbattery: {chemistry: AGM, capacity: 12 Ah}\nloads:\n  radio: {type: radio, fed by: battery, wire: {length: 1 m}"
	for more, want := range map[string]float64{"": 10, ", rated at: 13.5 V": 10, ", rated at: 24 V": 20, ", rated at: 48 V": 40, ", rated at: 24 V, minimum voltage: 11 V": 11} {
		d, err := Read("t.yaml", []byte(head+more+"}\n"), nil)
		if err != nil {
			t.Fatal(err)
		}
		if got := d.Loads[0].MinV.Value; got != want {
			t.Errorf("radio%s: least %g V, want %g V", more, got, want)
		}
	}
	// 5 A at 12 V are 60 W, on 24 and 48 V too; at 13.5 V the amperes stay.
	for rated, want := range map[string]float64{"12 V": 60, "13.5 V": 67.5, "24 V": 60, "48 V": 60} {
		text := strings.Replace(head, "radio: {type: radio", "pump: {type: fresh water pump", 1) + ", rated at: " + rated + "}\n"
		d, err := Read("t.yaml", []byte(text), nil)
		if err != nil {
			t.Fatal(err)
		}
		if got := d.Loads[0].PowerW; got != want {
			t.Errorf("pump at %s: %g W, want %g W", rated, got, want)
		}
	}
}
