package quantity_test

import (
	"testing"

	"fusewright/harness/design/quantity"
)

func TestBelong(t *testing.T) {
	for _, c := range []struct {
		word, next string
		want       bool
	}{
		{"3.0", "%", true},
		{"(10", "A)", true},
		{"-14.2", "A", true},
		{"16", "AWG,", true},
		{"1/8", "in", true},
		{"3", "wires", false},
		{"W5", "A", false},
		{"12,", "V", false},
		{"", "V", false},
	} {
		if got := quantity.Belong(c.word, c.next); got != c.want {
			t.Errorf("%q %q: %v", c.word, c.next, got)
		}
	}
}
