package trace_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/trace"
	"fusewright/library"
)

func assess(t *testing.T, file string) *harness.Review {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	d, err := design.Read(filepath.Base(file), text, library.Default())
	if err != nil {
		t.Fatal(err)
	}
	r, err := harness.Assess(d)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// The way of every load that is on is one chain from post to post, and what its elements
// lose adds up to what the load's circuit loses, at nominal and at worst.
func TestWaysAddUp(t *testing.T) {
	designs, _ := filepath.Glob("../../../designs/*.yaml")
	on := 0
	for _, file := range designs {
		r := assess(t, file)
		tracer := trace.New(r.Corners)
		for _, draw := range trace.Draws(r.Circuit) {
			for i := range r.Design.Situations {
				x := tracer.Of(draw, i)
				if !x.Solved || !x.On {
					continue
				}
				on++
				if !x.Whole {
					t.Errorf("%s, %s: the way is not whole", file, draw.Name)
				}
				lost, worst := 0.0, 0.0
				var at *circuit.Node
				for k, s := range x.Steps {
					if at != nil && at != s.From && k != x.Out {
						t.Errorf("%s, %s: step %s begins elsewhere", file, draw.Name, s.Branch.Name)
					}
					at = s.To
					lost, worst = lost+s.LostV, worst+s.WorstV
				}
				if math.Abs(lost-x.Drop.Nominal) > 1e-9 || math.Abs(worst-x.Drop.Corner) > 1e-9 {
					t.Errorf("%s, %s in %q: the elements lose %.9f and %.9f V, the way %.9f and %.9f V", file, draw.Name,
						r.Design.Situations[i].Name, lost, worst, x.Drop.Nominal, x.Drop.Corner)
				}
				if sum := lost + x.Volts.Nominal - x.SupplyV; math.Abs(sum) > 1e-9 {
					t.Errorf("%s, %s: %.9f V do not add up", file, draw.Name, sum)
				}
			}
		}
	}
	if on < 50 {
		t.Errorf("only %d ways were followed", on)
	}
}

// The left lamp of the demo, element by element, as one follows it with a finger.
func TestLeftLamp(t *testing.T) {
	r := assess(t, "../../../designs/fen-runner.yaml")
	tracer := trace.New(r.Corners)
	for _, draw := range trace.Draws(r.Circuit) {
		if draw.Part.Name != "left lamp" {
			continue
		}
		x := tracer.Of(draw, tracer.Worst(draw))
		var names []string
		fuses := map[string]string{}
		for _, s := range x.Steps {
			names = append(names, s.Branch.Name)
			fuses[s.Branch.Name] = "none"
			if s.Fuse != nil {
				fuses[s.Branch.Name] = s.Fuse.Fuse.Ref
			}
			if s.Shared {
				fuses[s.Branch.Name] = "shared"
			}
		}
		if got, want := fmt.Sprint(names), "[W1 F1 W2 K1:30-87 W3 F3 W4 S1 W5 W6 W16 X5:frame]"; got != want || x.Out != 10 {
			t.Errorf("the way is %s with %d out, want %s with 10", got, x.Out, want)
		}
		if got, want := fmt.Sprint(fuses), "map[F1:F1 F3:F3 K1:30-87:F1 S1:F3 W1:none W16:F3 W2:F1 W3:F1 W4:F3 W5:F3 W6:F3 X5:frame:shared]"; got != want {
			t.Errorf("behind the fuses %s, want %s", got, want)
		}
		return
	}
	t.Error("no left lamp")
}
