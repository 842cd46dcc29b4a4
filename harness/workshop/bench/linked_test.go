package bench_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/bench"
)

// linked is a circuit with a house battery behind a sensing relay: F1 at the first battery,
// F2 at the house end of the link, F3 to a lamp.
func linked(t *testing.T) *circuit.Circuit {
	t.Helper()
	text, err := os.ReadFile("../../../testdata/rules/ok/house-by-sensing-relay.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return read(t, string(text))
}

// The link gets its first power from neither battery but through a limit: the fuses at both
// ends are first ones, and every battery is isolated.
func TestFirstPowerOfALink(t *testing.T) {
	test := bench.Make(linked(t))
	if !strings.HasPrefix(test.Cautions[0], "Isolate every battery") {
		t.Errorf("caution %q", test.Cautions[0])
	}
	for _, s := range test.Sections {
		if s.Kind != bench.FirstPower {
			continue
		}
		var refs []string
		for _, c := range s.Groups[0].Checks {
			refs = append(refs, c.Ref)
		}
		slices.Sort(refs)
		if strings.Join(refs, " ") != "F1 F2 F3" {
			t.Errorf("first power at %v, want F1, F2 and F3", refs)
		}
	}
}

// A sensing relay has no coil to read: it closes at 13.3 V and opens at 12.8 V.
func TestSensingRelayIsReadInVolts(t *testing.T) {
	test := bench.Make(linked(t))
	for _, c := range []struct {
		word string
		want float64
	}{{"closes", 13.3}, {"opens", 12.8}} {
		if got := find(t, test, bench.Sensing, "K1", c.word); got.Nominal != c.want {
			t.Errorf("%s at %g V, want %g", c.word, got.Nominal, c.want)
		}
	}
	for _, s := range test.Sections {
		if s.Kind == bench.Coils {
			t.Error("its coil is to be read")
		}
	}
}
