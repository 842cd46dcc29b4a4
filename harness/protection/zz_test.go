package protection

import (
	"fmt"
	"os"
	"testing"
	"time"

	"fusewright/harness/circuit"
	"fusewright/harness/design"
	"fusewright/harness/fault"
	"fusewright/harness/solve"
	"fusewright/library"
)

func TestZZ(t *testing.T) {
	for _, f := range []string{"fen-runner", "reed-skiff"} {
		src, _ := os.ReadFile("../../designs/" + f + ".yaml")
		d, err := design.Read(f, src, library.Default())
		if err != nil {
			t.Fatal(err)
		}
		c, err := circuit.Build(d)
		if err != nil {
			t.Fatal(err)
		}
		fs := fault.Compute(c)
		t0 := time.Now()
		s := Compute(c, solve.All(c, solve.Options{}), fs)
		fmt.Println(f, time.Since(t0))
		for _, f := range s.Fuses {
			fmt.Printf("%s %.3g A runs %.2f share %.2f fault %.0f\n", f.Branch.Name, f.Device.Rating.RatingA, f.RunningA, f.Running.Share, f.FaultA)
			for _, w := range f.Wires {
				fmt.Printf("   %s %s ratio %.3f at %.1f (open %.3g damage %.3g known %v) known ratio %.3f at %.1f, %g..%.0f rated %.1f %v %s\n", w.Wire.Number, w.Wire.Spec.Size.Label, w.Ratio, w.WorstA, w.OpenS, w.DamageS, w.OpenKnown, w.KnownRatio, w.KnownWorstA, w.FromA, w.ToA, fs.Wires.Allowed(w.Wire).AllowedA, w.Missing, w.Note)
			}
			for _, w := range f.Starts {
				fmt.Printf("   start %s %.2f %v\n", w.Load.Name, w.Margin, w.StartHolds)
			}
			for _, w := range f.Above {
				fmt.Printf("   above %s %v up to %.1f fails %.1f by %s %s %+v\n", w.Above.Name, w.Selective, w.UpToA, w.FailsA, w.By, w.Note, w.Shorts)
			}
		}
	}
}
