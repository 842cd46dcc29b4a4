package cranking_test

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/example"
	"fusewright/harness/study/cranking"
	"fusewright/library"
)

func of(t *testing.T, snippet string) *cranking.Study {
	t.Helper()
	d, err := design.Read("crank.yaml", []byte(example.Design(snippet)), library.Default())
	if err != nil {
		t.Fatal(err)
	}
	c, err := circuit.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	return cranking.Compute(c)
}

// A 12 Ah AGM battery of 12 mΩ and the library's motorcycle starter of 120 A, nothing else
// on: 12.8 V full at 25 °C, less the chemistry's share per kelvin and 120 A through the
// resistance as cold as it is.
func TestPosts(t *testing.T) {
	s := of(t, "")
	t.Logf("%+v", s)
	agm := library.Default().Chemistry("AGM")
	for i, want := range []struct{ celsius, amps float64 }{{20, 120}, {0, 120 * 1.39}} {
		k := s.Cases[i]
		ohm := 0.012 * math.Pow(agm.ColdOhmRatio, (25-want.celsius)/43)
		posts := agm.OpenCircuitV(1) + (want.celsius-25)*agm.OpenCircuitVPerC - want.amps*ohm
		if math.Abs(k.CurrentA-want.amps) > 0.01 || math.Abs(k.PostsV-posts) > 0.02 {
			t.Errorf("%s: %.2f A, %.3f V; want %.2f A, %.3f V", k.Name, k.CurrentA, k.PostsV, want.amps, posts)
		}
	}
}
