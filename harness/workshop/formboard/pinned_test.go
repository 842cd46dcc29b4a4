package formboard

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// Clamps by hand: one in the middle up to 250 mm, else one 100 mm from each end
// and as many between as keep them within the limit.
func TestSupportsByHand(t *testing.T) {
	for _, c := range []struct {
		name   string
		length float64
		flexes bool
		want   []float64
	}{
		{"nothing", 0, false, nil},
		{"short", 250, false, []float64{125}},
		{"just over", 251, false, []float64{100, 151}},
		{"one space of the limit", 650, false, []float64{100, 550}},
		{"just over the limit", 651, false, []float64{100, 325.5, 551}},
		{"two spaces", 1100, false, []float64{100, 550, 1000}},
		{"it flexes", 1100, true, []float64{100, 1000}},
	} {
		got := supports(c.length, 450, c.flexes)
		same := len(got) == len(c.want)
		for i := range c.want {
			same = same && math.Abs(got[i]-c.want[i]) < 1e-9
		}
		if !same {
			t.Errorf("%s, %g mm: %v, want %v", c.name, c.length, got, c.want)
		}
	}
}

// A bundle whose thickest wire is 2.4 mm bends over ten times that, or three
// times where it is held.
func TestBendsByHand(t *testing.T) {
	wire := func(mm float64) *circuit.Wire {
		return &circuit.Wire{Spec: design.WireSpec{Size: &library.WireSize{OuterMm: mm}}}
	}
	r := newRun(1, &circuit.Bundle{Run: &design.Run{LengthM: design.Quantity{Value: 0.3, Text: "300 mm"}},
		Wires: []*circuit.Wire{wire(1.7), wire(2.4), wire(2.1)}, OuterMm: 5}, supportGeneral)
	if r.Thick != 2.4 || math.Abs(r.BendMm-24) > 1e-9 || math.Abs(r.BendHeldMm-7.2) > 1e-9 || r.Length != 300 {
		t.Errorf("%+v", r)
	}
	if TieMm != 12*25.4 {
		t.Errorf("ties from %g mm on, AC 43.13-1B says 12 in", float64(TieMm))
	}
}

// Ten runs of a hub make one section, eleven two.
func TestRunsOfASection(t *testing.T) {
	for runs, want := range map[int]int{10: 1, 11: 2} {
		var places, list, loads strings.Builder
		for i := range runs {
			fmt.Fprintf(&places, ", p%d: {}", i)
			fmt.Fprintf(&list, "  - {name: r%d, from: hub, to: p%d, length: 500 mm}\n", i, i)
			fmt.Fprintf(&loads, "  l%d: {power: 3 W, behaves: resistor, at: p%d, fed by: main, returns to: stud}\n", i, i)
		}
		src := "fusewright: 1\ntitle: hub\nsystem: 12 V\npractice: off-road\nbattery: {chemistry: AGM, capacity: 20 Ah, at: hub}\n" +
			"places: {hub: {}" + places.String() + "}\nruns:\n" + list.String() +
			"wire: {insulation: ISO 6722 thin wall class C, size: 1 mm²}\ngrounds: {stud: {kind: frame stud, at: hub}}\n" +
			"fuses: {main: {type: blade C, rating: 10 A, at: hub, fed by: battery}}\nloads:\n" + loads.String()
		d, err := design.Read("hub.yaml", []byte(src), library.Default())
		if err != nil {
			t.Fatal(err)
		}
		c, err := circuit.Build(d)
		if err != nil {
			t.Fatal(err)
		}
		if got := len(Lay(c).Sections); got != want {
			t.Errorf("%d runs make %d sections, want %d", runs, got, want)
		}
	}
}
