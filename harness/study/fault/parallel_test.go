package fault

import (
	"reflect"
	"runtime"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/synth"
)

// The study does not depend on how many processors work on it.
func TestOneProcessorGivesTheSame(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	for _, src := range [][]byte{synth.YAML(300, 1), synth.Random(5), synth.Random(82)} {
		c := buildtest.Circuit(t, src)
		runtime.GOMAXPROCS(1)
		one := Compute(c)
		runtime.GOMAXPROCS(4)
		four := Compute(c)
		if len(one.Shorts) == 0 || len(one.Shorts) != len(four.Shorts) || len(one.Lost) != len(four.Lost) {
			t.Fatalf("%d and %d shorts, %d and %d lost", len(one.Shorts), len(four.Shorts), len(one.Lost), len(four.Lost))
		}
		for i, sh := range one.Shorts {
			if !reflect.DeepEqual(sh.Results, four.Shorts[i].Results) || sh.Where != four.Shorts[i].Where || sh.Branch != four.Shorts[i].Branch {
				t.Errorf("short %d: %+v and %+v", i, sh.Results, four.Shorts[i].Results)
			}
		}
		for i, l := range one.Lost {
			same(t, "processors", four.Lost[i], l)
		}
	}
}
