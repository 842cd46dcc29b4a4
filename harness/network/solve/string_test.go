package solve_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/referencetest"
)

// inSeries is a lamp of 576 W at 24 V, 1 Ω, on batteries of 5 mΩ each.
const inSeries = `fusewright: 1
title: in series
system: %s
practice: camper
battery: {chemistry: AGM, capacity: 100 Ah, resistance: 5 mΩ%s}
fuses: {main: {type: marine strip, rating: 60 A, fed by: battery, wire: {size: 16 mm², length: 150 mm}}}
loads:
  lamp: {power: 576 W, rated at: 24 V, behaves: resistor, own switch: yes, fed by: main, wire: {size: 16 mm², length: 2 m}, returns to: battery negative, return wire: {size: 16 mm², length: 2 m}}
situations: {lit: {key: off, on: [lamp]}}
`

func stringOf(t *testing.T, system, more string) (*circuit.Circuit, *solve.Solution) {
	t.Helper()
	c := buildtest.Circuit(t, fmt.Sprintf(inSeries, system, more))
	s := solve.Solve(c, c.Design.Situations[0], solve.Options{})
	if s.Status != solve.Converged {
		t.Fatal(s.Trouble())
	}
	return c, s
}

// TestBatteriesInSeries: the volts and ohms of all and of their links drive the current: AGM rests full
// at 12.8 V, one of 6 V at 6.4 V. The link carries all of it, towards the positive post, and the posts lose it times what is between them.
func TestBatteriesInSeries(t *testing.T) {
	const link = ", link: {size: 25 mm², length: 300 mm}"
	for _, x := range []struct {
		system, more string
		emfV, ohm    float64
		links        int
	}{
		{"24 V", "", 25.6, 0.005, 0},
		{"24 V", ", in series: 2" + link, 25.6, 0.010, 1},
		{"24 V", ", in series: 4" + link, 25.6, 0.020, 3},
		{"48 V", ", in series: 4" + link, 51.2, 0.020, 3},
		{"12 V", ", in series: 2" + link, 12.8, 0.010, 1},
	} {
		c, s := stringOf(t, x.system, x.more)
		battery := c.PartOf(&design.BatteryPart{})
		links := battery.LinkWires()
		if len(links) != x.links {
			t.Fatalf("%s%s: %d links, want %d", x.system, x.more, len(links), x.links)
		}
		way, linkOhm := 1.0, 0.0
		for _, w := range c.Wires {
			way += w.Branch.Ohm
		}
		for _, w := range links {
			// 25 mm² has at most 0.743 mΩ/m by ISO 6722, and a lug at each end.
			if math.Abs(w.ConductorOhm20-0.3*0.743e-3) > 1e-9 {
				t.Errorf("a link of %g Ω", w.ConductorOhm20)
			}
			linkOhm += w.Branch.Ohm
		}
		for _, b := range c.Branches {
			if b.Kind == circuit.FuseBranch || b.Kind == circuit.ContactBranch {
				way += b.Ohm
			}
		}
		want := x.emfV / (way + x.ohm)
		if math.Abs(s.BatteryA-want) > 1e-6*want {
			t.Errorf("%s%s: %.6f A, want %.6f", x.system, x.more, s.BatteryA, want)
		}
		for _, w := range links {
			if a := s.Amps(w.Branch); math.Abs(a-want) > 1e-6*want {
				t.Errorf("%s: %.6f A in link %s, want %.6f", x.system, a, w.Number, want)
			}
		}
		posts := x.emfV - want*(x.ohm+linkOhm)
		if v := s.Volts(battery.Branches[0]); math.Abs(v-posts) > 1e-6*posts {
			t.Errorf("%s%s: posts at %.6f V, want %.6f", x.system, x.more, v, posts)
		}
	}
}

// TestStringAgainstNgspice: two batteries as they stand, each of 12.8 V behind 5 mΩ, with the link between, give the
// current and the volts at the posts that the one source with the link behind it does.
func TestStringAgainstNgspice(t *testing.T) {
	program := referencetest.Program(t, "ngspice")
	c, s := stringOf(t, "24 V", ", in series: 2, link: {size: 25 mm², length: 300 mm}")
	var out strings.Builder
	out.WriteString("two batteries in series\nV1 b1 mid1 12.8\nR1 b1 post 5m\nV2 b2 0 12.8\nR2 b2 mid2 5m\n")
	link := c.PartOf(&design.BatteryPart{}).LinkWires()[0]
	fmt.Fprintf(&out, "RL mid2 link %.9g\nVL link mid1 0\n", link.Branch.Ohm)
	at := "post"
	for i, b := range c.Branches {
		ohm := b.Ohm
		switch {
		case b.Kind == circuit.BatteryBranch || b == link.Branch:
			continue
		case b.Load != nil:
			ohm = 1
		}
		next := fmt.Sprintf("n%d", i)
		fmt.Fprintf(&out, "R%d %s %s %.9g\n", i+10, at, next, ohm)
		at = next
	}
	fmt.Fprintf(&out, "VE %s 0 0\n.op\n.end\n", at)
	values, err := referencetest.Simulate(program, t.TempDir(), "string", out.String())
	if err != nil {
		t.Fatal(err)
	}
	if got, want := s.Amps(link.Branch), values["i(vl)"]; math.Abs(got-want) > 1e-6*want {
		t.Errorf("%.7f A in the link, ngspice %.7f", got, want)
	}
	if got, want := s.Volts(c.PartOf(&design.BatteryPart{}).Branches[0]), values["v(post)"]; math.Abs(got-want) > 1e-6*want {
		t.Errorf("%.7f V at the posts, ngspice %.7f", got, want)
	}
}
