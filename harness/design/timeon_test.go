package design

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fusewright/library"
)

// How long a load is on, how often and for what part of the time, each from the
// others by hand. Type S3 of IEC 60034-1 has a cycle of ten minutes (from memory).
func TestTimes(t *testing.T) {
	q := func(v float64) Quantity {
		if v == 0 {
			return Quantity{}
		}
		return Quantity{Value: v, Text: fmt.Sprint(v)}
	}
	winch := library.LoadType{Duty: 0.02, OnForS: 60, EveryS: 600, Behaves: "motor"}
	for _, c := range []struct {
		name                  string
		duty, on, every       float64 // of the design
		behaves               Behaviour
		of                    library.LoadType
		wantDuty, onS, everyS float64
		heats                 float64
	}{
		{"nothing said", 0, 0, 0, Motor, library.LoadType{}, 1, 0, 0, 1},
		{"duty of a motor", 0.1, 0, 0, Motor, library.LoadType{}, 0.1, 60, 600, 0.1},
		{"duty of a heater", 0.1, 0, 0, Resistor, library.LoadType{}, 0.1, 0, 0, 0.1},
		{"a motor that runs all the time", 1, 0, 0, Motor, library.LoadType{}, 1, 0, 0, 1},
		{"duty of the type", 0, 0, 0, Motor, library.LoadType{Duty: 0.1}, 0.1, 0, 0, 0.1},
		{"on for and every", 0, 60, 240, Motor, library.LoadType{}, 0.25, 60, 240, 0.25},
		{"all three", 0.05, 60, 240, Motor, library.LoadType{}, 0.05, 60, 240, 0.25},
		{"on for and duty", 0.1, 30, 0, Resistor, library.LoadType{}, 0.1, 30, 300, 0.1},
		{"on for alone", 0, 30, 0, Motor, library.LoadType{}, 1, 30, 0, 0},
		{"three hours is continuous", 0, 10800, 0, Motor, library.LoadType{}, 1, 10800, 0, 1},
		{"just less is not", 0, 10799, 0, Motor, library.LoadType{}, 1, 10799, 0, 0},
		{"the type's", 0, 0, 0, Motor, winch, 0.02, 60, 600, 0.1},
		{"the type's, of lower duty", 0.05, 0, 0, Motor, winch, 0.05, 60, 600, 0.1},
		{"the type's, more often", 0.5, 0, 0, Motor, winch, 0.5, 60, 120, 0.5},
		{"on for all of every", 0, 600, 600, Resistor, library.LoadType{}, 1, 600, 600, 1},
		{"before the type's", 0, 300, 600, Motor, winch, 0.5, 300, 600, 0.5},
	} {
		x := &Load{Duty: q(c.duty), OnForS: q(c.on), EveryS: q(c.every), Behaves: c.behaves, Type: &c.of}
		x.character()
		for what, v := range map[string][2]float64{"duty": {x.Duty.Value, c.wantDuty}, "on for": {x.OnForS.Value, c.onS},
			"every": {x.EveryS.Value, c.everyS}} {
			if math.Abs(v[0]-v[1]) > 1e-9 {
				t.Errorf("%s: %s %g, want %g", c.name, what, v[0], v[1])
			}
		}
		if got := x.HeatShare(); math.Abs(got-c.heats) > 1e-9 {
			t.Errorf("%s: heats %g of the time, want %g", c.name, got, c.heats)
		}
	}
}

// A duty may be rounded up by half from on for and every, here a tenth: 15 %
// of the time is read, 10.6 % is no way to be on for 1 min every 10 min.
func TestDutyWithinOnFor(t *testing.T) {
	const text = `fusewright: 1
title: x
practice: motorcycle
system: 12 V
battery: {chemistry: AGM, capacity: 12 Ah, at: tray}
places: {tray: {ambient: 40 °C}}
wire: {size: 1.5 mm²}
fuses: {main: {rating: 10 A, at: tray, fed by: battery, wire: {length: 100 mm}}}
loads: {lamp: {power: 5 W, duty: DUTY, on for: 1 min, every: 10 min, at: tray, fed by: main, returns to: battery negative, wire: {length: 1 m}, return wire: {length: 1 m}}}
`
	for duty, bad := range map[string]bool{"2 %": false, "15 %": false, "15.1 %": true} {
		_, err := Read("x.yaml", []byte(strings.Replace(text, "DUTY", duty, 1)), library.Default())
		if (err != nil) != bad {
			t.Errorf("%s: %v", duty, err)
		}
	}
}
