package labels

import (
	"testing"

	"fusewright/harness/network/circuit"
)

// TestLengthText: a wire of unknown length says so; TestOneLength of the command holds the others
// against the cut list.
func TestLengthText(t *testing.T) {
	for _, c := range []struct {
		lengthM float64
		unit    string
		want    string
	}{{0, "", "length ?"}, {0, "ft", "length ?"}} {
		l := &Labels{Lengths: c.unit}
		if got := l.lengthText(&circuit.Wire{LengthM: c.lengthM}); got != c.want {
			t.Errorf("%g m in %q: %q, want %q", c.lengthM, c.unit, got, c.want)
		}
	}
}
