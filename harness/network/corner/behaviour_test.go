package corner_test

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/library"
)

// Every behaviour that a design may name has its tolerance in the library.
func TestEveryBehaviourHasItsTolerance(t *testing.T) {
	for _, b := range design.Behaviours {
		if library.Default().Tolerance("power of "+string(b)) == nil {
			t.Errorf("no tolerance of the power of %s", b)
		}
	}
}
