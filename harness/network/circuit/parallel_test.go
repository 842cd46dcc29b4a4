package circuit

import (
	"testing"

	"fusewright/harness/design"
)

// Of 12 A each of two wires side by side has 6 A and each of three 4 A; a lone wire, and what is
// none, has all.
func TestShareOfWiresSideBySide(t *testing.T) {
	for n, want := range map[int]float64{0: 12, 2: 6, 3: 4} {
		b := &Branch{Wire: &Wire{Spec: design.WireSpec{Parallel: n}}}
		if got := b.ShareA(12); got != want {
			t.Errorf("of %d: %g A, want %g A", n, got, want)
		}
	}
	if got := (&Branch{}).ShareA(12); got != 12 {
		t.Errorf("no wire: %g A", got)
	}
}
