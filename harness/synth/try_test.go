package synth_test

import (
	"fmt"
	"sort"
	"testing"
	"time"

	"fusewright/harness/budget"
	"fusewright/harness/rules"
	"fusewright/harness/solve"
	"fusewright/harness/synth"
)

func TestTry(t *testing.T) {
	for _, n := range []int{5, 10, 30, 100, 400, 1000, 10000} {
		c := build(t, synth.YAML(n, 1))
		t0 := time.Now()
		sols := solve.All(c, solve.Options{})
		t1 := time.Now()
		bud := budget.Compute(c, sols)
		f := rules.Check(&rules.Input{Circuit: c, Solutions: sols, Budget: bud})
		t2 := time.Now()
		m := map[string]int{}
		ex := map[string]string{}
		for _, x := range f {
			k := x.Severity.String() + " " + x.Rule
			m[k]++
			if ex[k] == "" {
				ex[k] = x.What
			}
		}
		keys := []string{}
		for k := range m {
			keys = append(keys, k)
		}
		sort.Strings(keys)
		fmt.Println("==", n, len(c.Branches), t1.Sub(t0), t2.Sub(t1), sols[len(sols)-1].Status, sols[0].Status, sols[0].BatteryA, sols[len(sols)-1].ChargingA)
		for _, k := range keys {
			fmt.Println("  ", m[k], k, ex[k])
		}
	}
}
