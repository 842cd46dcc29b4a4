package rules

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// A plug-in relay of 40 A carries 35 A at 85 °C: 47.25 A for 10 s, by 1.35 times for 1800 s, and surely not 70 A, twice for 5 s; for 5 s those 70 A, and for 0.4 s
// 122.5 A. A contactor with 400 A for 60 s bears that, and what it does not bear for less is not known; the 500 A one surely not 2500 A for longer than 10 s.
func TestBornAtStart(t *testing.T) {
	for _, c := range []struct {
		form         string
		s            float64
		bears, fails float64
	}{
		{"mini make", 10, 47.25, 70},
		{"mini make", 5, 70, 122.5},
		{"mini make", 0.4, 122.5, 210},
		{"mini make", 0.05, 210, math.Inf(1)},
		{"voltage-sensing relay", 10, 189, 280},
		{"winch contactor", 10, 400, math.Inf(1)},
		{"contactor 500 A", 10, 2500, math.Inf(1)},
		{"contactor 500 A", 11, 1100, 2500},
		{"mini make", 3600, 35, 47.25},
	} {
		form := library.Default().RelayFormFor(c.form, 12)
		if form == nil {
			t.Fatalf("no %s", c.form)
		}
		b := &circuit.Branch{Kind: circuit.ContactBranch, Closer: &circuit.Closer{}, Part: &circuit.Part{Source: &design.Relay{Form: form}}}
		if bears, fails := bornAtStart(b, c.s); math.Abs(bears-c.bears) > 1e-9 || !(math.Abs(fails-c.fails) < 1e-9 || fails == c.fails) {
			t.Errorf("%s for %g s: %g and %g A, want %g and %g A", c.form, c.s, bears, fails, c.bears, c.fails)
		}
	}
}
