package fault_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"testing"

	"fusewright/harness/formula/conductor"
	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/study/fault"
	"fusewright/library"
)

// table reads a reference file into rows by column name.
func table(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../../../testdata/reference/fault/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, row := range all[1:] {
		m := map[string]string{}
		for i, cell := range row {
			m[all[0][i]] = cell
		}
		out = append(out, m)
	}
	return out
}

// answer finds one answer of the examples.
func answer(t *testing.T, id, quantity string) float64 {
	t.Helper()
	for _, row := range table(t, "examples.csv") {
		if row["id"] == id && row["quantity"] == quantity {
			return number(t, row["answer"])
		}
	}
	t.Fatalf("no example %s, %s", id, quantity)
	return 0
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.9g, want %.9g ± %.3g", what, got, want, tolerance)
	}
}

// bare is a small machine: a battery, a fuse, a load that returns by wire.
func bare(battery, fuse, load string) []byte {
	return fmt.Appendf(nil, `fusewright: 1
title: fault example
vehicle: invented machine
system: 12 V
practice: marine
battery: {chemistry: flooded, capacity: 40 Ah, %s, at: box}
places:
  box: {ambient: 20 °C}
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm²}
fuses:
  branch: {%s, at: box, fed by: battery}
loads:
  lamp: {power: 5 W, behaves: resistor, at: box, fed by: branch, returns to: battery negative, %s}
`, battery, fuse, load)
}

// The derived branch: what the study finds for a short inside the load, put on
// the example's open voltage and without the resistance of the wire's ends,
// which the example leaves out, and with no wire before the fuse.
func TestBranchExample(t *testing.T) {
	c := buildtest.Circuit(t, bare("resistance: 15 mΩ", "type: blade F, rating: 10 A, wire: {size: 6 mm², length: 1 mm}",
		"wire: {length: 2.5 m}, return wire: {length: 2.5 m}"))
	s := fault.Compute(c)
	sh := inside(t, s, "lamp")
	ends, path := 0.0, 0.015
	for _, w := range c.Wires {
		ends += w.EndsOhm
		path += w.ConductorOhm20
	}
	fuse := fuseBranch(c)
	near(t, "cold resistance of the fuse", fuse.Ohm, 0.00742, 1e-9)
	path += fuse.Ohm
	emf := 12.7 // flooded, full
	amps := sh.Results[fault.Strong].CurrentA
	near(t, "study", amps, emf/(path+ends), 1e-3*amps)
	want := answer(t, "branch-current", "prospective current")
	feed := c.Wires[0].ConductorOhm20 // 1 mm of wire before the fuse
	near(t, "example", amps*(path+ends)/(path-feed)*12.6/emf, want, 1e-3*want)
	near(t, "melting", fuse.Fuse.Rating.MeltI2t/(want*want), answer(t, "branch-melt", "time to melt"), 5e-5)
	if r := sh.Results[fault.Strong]; r.Device != fuse || !(r.SlowS < 0.1) || !r.Worst.Survives() {
		t.Errorf("the example's fuse clears it and the wire is whole; got %+v", r)
	}
	limit := answer(t, "branch-wire", "wire limit")
	near(t, "wire", conductor.WithstandI2t(1, 70, 160), limit, 0.03*limit)
}

func inside(t *testing.T, s *fault.Study, part string) *fault.Short {
	t.Helper()
	for _, sh := range s.Shorts {
		if sh.Where == fault.Inside && sh.Part.Name == part {
			return sh
		}
	}
	t.Fatalf("no short inside %s", part)
	return nil
}

func fuseBranch(c *circuit.Circuit) *circuit.Branch {
	for _, b := range c.Branches {
		if b.Kind == circuit.FuseBranch {
			return b
		}
	}
	return nil
}

// Prospective current right at the posts: the open voltage over the inner
// resistance, as the printed examples have it.
func TestPrintedFaultCurrents(t *testing.T) {
	// The bank: three strings of two 6 V batteries, each 6 V / 2400 A inside.
	for _, e := range []struct {
		id  string
		ohm float64
	}{{"fault-12v-20mohm", 0.020}, {"fault-12v-10mohm", 0.010}, {"bank", 2 * 6.0 / 2400 / 3}} {
		c := buildtest.Circuit(t, bare(fmt.Sprintf("resistance: %.9g mΩ", 1000*e.ohm), "type: blade F, rating: 10 A",
			"wire: {length: 1 m}, return wire: {length: 1 m}"))
		sh := fault.Compute(c).OfWire(c.Wires[0])[0]
		if sh.Where != fault.NearEnd {
			t.Fatalf("first short at the %s", sh.Where)
		}
		want := answer(t, e.id, "prospective current")
		near(t, e.id, sh.Results[fault.Strong].CurrentA*12/12.7, want, 1e-3*want)
	}
}

func TestOpeningExamples(t *testing.T) {
	lib := library.Default()
	open := func(kind string, rating, amps float64) fusing.Opening {
		return fusing.OpenAt(lib.FuseType(kind), rating, amps, fusing.RatedC)
	}
	for _, e := range []struct {
		id, quantity string
		got          float64
	}{
		{"stall", "soonest opening", open("blade C", 10, 20).FastS},
		{"stall", "latest opening", open("blade C", 10, 20).SlowS},
		{"maxi", "latest opening", open("blade E", 40, 80).SlowS},
		{"pair", "latest opening of the lower", open("blade F", 10, 60).SlowS},
		{"pair", "soonest opening of the upper", open("blade F", 30, 60).FastS},
	} {
		want := answer(t, e.id, e.quantity)
		near(t, e.id+", "+e.quantity, e.got, want, 1e-3*want)
	}
	want := answer(t, "adiabatic", "smallest area")
	near(t, "adiabatic", conductor.AreaForI2t(2500, 0.1, 70, 160), want, 0.05+0.01*want)
}

func TestConditions(t *testing.T) {
	for _, row := range table(t, "conditions.csv") {
		system := number(t, row["system_v"])
		got := fault.HighFor(system)
		if row["condition"] == "reversed" {
			got = fault.ReverseFor(system)
		}
		near(t, row["condition"], got.Volts, number(t, row["volts"]), 1e-9)
		near(t, row["condition"]+" time", got.Seconds, number(t, row["seconds"]), 1e-9)
		if got.Source.Certainty != row["certainty"] {
			t.Errorf("%s: certainty %q, want %q", row["condition"], got.Source.Certainty, row["certainty"])
		}
	}
}
