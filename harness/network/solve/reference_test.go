package solve_test

import (
	"fmt"
	"os"
	"testing"

	"gopkg.in/yaml.v3"

	"fusewright/harness/design"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/solvetest"
)

// Published drop examples, each built as a two-wire feeder: half of the run out,
// half back, at the end a load of constant current. The drop is what the source
// has and the load does not.
func TestPublishedVoltageDrops(t *testing.T) {
	src, err := os.ReadFile("../../../testdata/reference/solve/voltage_drop.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var rows []struct {
		Name      string
		Source    string
		RunFt     float64 `yaml:"run_ft"`
		OhmPerFt  float64 `yaml:"ohm_per_ft"`
		CurrentA  float64 `yaml:"current_A"`
		DropV     float64 `yaml:"drop_V"`
		Tolerance float64 `yaml:"tolerance_V"`
	}
	if err := yaml.Unmarshal(src, &rows); err != nil || len(rows) < 10 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for _, r := range rows {
		t.Run(r.Name, func(t *testing.T) {
			b := solvetest.New()
			plus, end, back := b.Node("+"), b.Node("end"), b.Node("back")
			bat := b.Battery(plus, 1e-6)
			b.Resistor("out", plus, end, r.RunFt/2*r.OhmPerFt)
			load := b.Load("E1", end, back, design.Motor, 28*r.CurrentA, 28)
			b.Resistor("back", back, b.Ground(), r.RunFt/2*r.OhmPerFt)
			s := solve.Solve(b.C, solvetest.Situation(0), solve.Options{BatteryV: 28})
			converged(t, s)
			if r.Source == "" {
				t.Error("no source")
			}
			near(t, "drop", s.Volts(bat)-s.Volts(load), r.DropV, r.Tolerance)
		})
	}
}

// Example of use: which voltage is left at a lamp.
func ExampleSolve() {
	b := solvetest.New()
	plus, end := b.Node("battery +"), b.Node("lamp")
	b.Battery(plus, 0.010)
	b.Wire("W1", plus, end, 3, 1.5)
	b.Load("lamp", end, b.Ground(), design.FilamentLamp, 55, 12)
	s := solve.Solve(b.C, solvetest.Situation(0), solve.Options{})
	fmt.Printf("%s, %.2f V\n", s.Status, s.NodeV[end.Index])
	// Output: converged, 12.49 V
}
