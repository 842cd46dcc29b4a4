package parts

import (
	"testing"

	"fusewright/harness/design"
)

// Every sign that a design may name has its symbol.
func TestEverySignHasItsSymbol(t *testing.T) {
	for _, s := range design.Signs {
		if _, ok := loadKinds[s]; !ok {
			t.Errorf("%s has no symbol", s)
		}
	}
}
