package design

import (
	"fmt"
	"math"
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
		continuous            bool
	}{
		{"nothing said", 0, 0, 0, Motor, library.LoadType{}, 1, 0, 0, true},
		{"duty of a motor", 0.1, 0, 0, Motor, library.LoadType{}, 0.1, 60, 600, false},
		{"duty of a heater", 0.1, 0, 0, Resistor, library.LoadType{}, 0.1, 0, 0, false},
		{"a motor that runs all the time", 1, 0, 0, Motor, library.LoadType{}, 1, 0, 0, true},
		{"duty of the type", 0, 0, 0, Motor, library.LoadType{Duty: 0.1}, 0.1, 0, 0, false},
		{"on for and every", 0, 60, 240, Motor, library.LoadType{}, 0.25, 60, 240, false},
		{"all three", 0.05, 60, 240, Motor, library.LoadType{}, 0.05, 60, 240, false},
		{"on for and duty", 0.1, 30, 0, Resistor, library.LoadType{}, 0.1, 30, 300, false},
		{"on for alone", 0, 30, 0, Motor, library.LoadType{}, 1, 30, 0, false},
		{"three hours is continuous", 0, 10800, 0, Motor, library.LoadType{}, 1, 10800, 0, true},
		{"just less is not", 0, 10799, 0, Motor, library.LoadType{}, 1, 10799, 0, false},
		{"the type's", 0, 0, 0, Motor, winch, 0.02, 60, 600, false},
		{"the type's, of lower duty", 0.05, 0, 0, Motor, winch, 0.05, 60, 600, false},
		{"the type's, more often", 0.5, 0, 0, Motor, winch, 0.5, 60, 120, false},
		{"before the type's", 0, 300, 600, Motor, winch, 0.5, 300, 600, false},
	} {
		x := &Load{Duty: q(c.duty), OnForS: q(c.on), EveryS: q(c.every), Behaves: c.behaves, Type: &c.of}
		x.character()
		for what, v := range map[string][2]float64{"duty": {x.Duty.Value, c.wantDuty}, "on for": {x.OnForS.Value, c.onS},
			"every": {x.EveryS.Value, c.everyS}} {
			if math.Abs(v[0]-v[1]) > 1e-9 {
				t.Errorf("%s: %s %g, want %g", c.name, what, v[0], v[1])
			}
		}
		if x.Continuous() != c.continuous {
			t.Errorf("%s: continuous %v", c.name, x.Continuous())
		}
	}
}
