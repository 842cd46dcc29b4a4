package document

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/study/ride"
)

// A battery has one look in the pictures of charge, volts and currents, and no other curve has it.
func TestOneLookABattery(t *testing.T) {
	r := &ride.Result{Ride: &design.Ride{Name: "out"}, Legs: []*ride.Leg{{ToS: 60, Leg: &design.Leg{}}},
		Banks:  []ride.BankRide{{Bank: &design.Bank{Common: design.Common{Name: "house"}}}, {Bank: &design.Bank{Common: design.Common{Name: "bow"}}}},
		Points: []ride.Point{{Banks: make([]ride.BankPoint, 2)}, {TimeS: 60, Banks: make([]ride.BankPoint, 2)}}}
	looks := map[string]int{}
	for i, plot := range ridePanels(0, r).Plots {
		seen := map[int]string{}
		for _, c := range plot.Curves {
			if other, met := seen[c.Look]; met {
				t.Errorf("picture %d: %s and %s look the same", i+1, c.Name, other)
			}
			seen[c.Look] = c.Name
			for _, name := range []string{"first battery", "house", "bow"} {
				if c.Name != name && c.Name != "into "+name {
					continue
				}
				if was := looks[name]; was != 0 && was != c.Look {
					t.Errorf("%s has look %d, then %d", name, was, c.Look)
				}
				looks[name] = c.Look
			}
		}
	}
	if len(looks) != 3 {
		t.Errorf("looks of %v, want those of three batteries", looks)
	}
}
