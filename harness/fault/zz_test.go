package fault

import (
	"fmt"
	"os"
	"testing"
	"time"

	"fusewright/harness/circuit"
	"fusewright/harness/design"
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
		t0 := time.Now()
		s := Compute(c)
		fmt.Println(f, time.Since(t0), s.States)
		for _, sh := range s.Shorts {
			n := ""
			if sh.Wire != nil {
				n = sh.Wire.Number
			} else {
				n = sh.Part.Name
			}
			fmt.Printf("%-14s %-8s %-14s %.2f", n, sh.Where, sh.At, sh.AlongM)
			for _, r := range sh.Results {
				dev := "-"
				if r.Device != nil {
					dev = r.Device.Name
				}
				fmt.Printf(" | %.1f A %s %.4f..%.4f", r.CurrentA, dev, r.FastS, r.SlowS)
				if r.Worst != nil {
					fmt.Printf(" %s %.0f/%.0f m=%.1f", r.Worst.Wire.Number, r.Worst.EndC, r.Worst.LimitC, r.Worst.Margin())
				}
			}
			fmt.Println()
		}
		for _, l := range s.Lost {
			fmt.Println("lost", l.Branch.Name, l.Unsolved)
			for _, a := range l.Affected {
				fmt.Println("   ", a.Branch.Name, a.Effect, a.Situation.Name, a.BeforeV, a.AfterV)
			}
		}
		for _, w := range s.Welded {
			fmt.Println("weld", w.Contact.Name, w.DrawA)
			for _, h := range w.Hot {
				fmt.Println("   ", h.Branch.Name, h.ByHand)
			}
		}
		for _, e := range s.Exposed {
			fmt.Println("exp", e.Branch.Name, e.HighV, e.BearsV, e.Reached, e.Suffers, e.Diode)
		}
	}
}
