package harness_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/example"
	"fusewright/harness/review/rules"
	"fusewright/library"
)

func read(t testing.TB, src string) *design.Design {
	t.Helper()
	d := buildtest.Design(t, src)
	return d
}

// TestAssess checks that the chain gives every stage and warms the wires: the
// drop on a loaded wire must exceed that at 20 °C by the copper's coefficient,
// 0.00393 per kelvin, for a temperature between ambient and class.
func TestAssess(t *testing.T) {
	d := read(t, example.Design(rules.Find("wire-over-current").Mends()))
	r, err := harness.Assess(d)
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Solutions) != len(d.Situations) || r.Budget == nil || len(r.Findings) != 0 {
		t.Fatalf("%d solutions of %d situations, budget %v, %d findings",
			len(r.Solutions), len(d.Situations), r.Budget != nil, len(r.Findings))
	}
	for _, w := range r.Circuit.Wires {
		for _, s := range r.Solutions {
			ratio := (s.Ohm[w.Branch.Index] - w.EndsOhm) / w.ConductorOhm20
			low := 1 + 0.00393*(w.AmbientC-20)
			high := 1 + 0.00393*(w.Spec.Type.ClassC-20)
			if ratio < low-1e-9 || ratio > high+1e-9 {
				t.Errorf("%s: warmed by %.4f, want %.4f to %.4f", w.Number, ratio, low, high)
			}
		}
	}
	hot := r.Circuit.Wires[len(r.Circuit.Wires)-1] // the winch's return
	s := r.Solutions[0]
	for _, other := range r.Solutions {
		if math.Abs(other.Amps(hot.Branch)) > math.Abs(s.Amps(hot.Branch)) {
			s = other
		}
	}
	if s.Status != solve.Converged || !((s.Ohm[hot.Branch.Index]-hot.EndsOhm)/hot.ConductorOhm20 > 1+0.00393*(hot.AmbientC-20+1)) {
		t.Errorf("%s carries %.1f A and is no warmer than its place", hot.Number, s.Amps(hot.Branch))
	}
}

func TestAssessReportsProblems(t *testing.T) {
	d := read(t, strings.Replace(example.Design(""), "returns to: frame}", "returns to: frame, return wire: {size: 1 mm²}}", 1))
	for i := range d.Runs {
		d.Runs[i].To = d.Runs[i].From // no way between the places any more
	}
	if _, err := harness.Assess(d); err == nil {
		t.Error("no problem although no run joins the places")
	}
}

func ExampleAssess() {
	src := `fusewright: 1
title: one lamp
vehicle: invented
revision: A
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 12 mΩ, at: tray}
places: {tray: {ambient: 40 °C}}
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm²}
loads:
  lamp: {power: 5 W, at: tray, fed by: battery, wire: {length: 1 m}, returns to: battery negative, return wire: {length: 1 m}, stays live: "marks the parked machine", own switch: yes}
`
	d, err := design.Read("lamp.yaml", []byte(src), library.Default())
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := harness.Assess(d)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range r.Findings {
		fmt.Printf("%s: %s: %s [%s]\n", f.Pos, f.Severity, f.What, f.Rule)
	}
	// Output:
	// lamp.yaml:11:40: danger: wire W1 (1 mm², battery to lamp) has no fuse between the battery and its end [unfused-conductor]
}

// TestOptions: a situation solved under the review's options gives the review's
// solution, warm wires included.
func TestOptions(t *testing.T) {
	r, err := harness.Assess(read(t, example.Design(rules.Find("wire-over-current").Mends())))
	if err != nil {
		t.Fatal(err)
	}
	for i, s := range r.Design.Situations {
		again := solve.Solve(r.Circuit, s, r.Options(s))
		for n, v := range r.Solutions[i].NodeV {
			if x := again.NodeV[n]; !(math.Abs(x-v) <= 1e-6) && !(math.IsNaN(x) && math.IsNaN(v)) {
				t.Errorf("%s: node %d at %.9g V, again %.9g V", s.Name, n, v, x)
			}
		}
	}
}
