package document

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
)

// Up to a page of wires all have bars; of more, those below a fiftieth of what they may
// carry are named in a sentence.
func TestSlightlyLoaded(t *testing.T) {
	of := func(count int) (list []*loading) {
		for i := range count {
			list = append(list, &loading{wire: &circuit.Wire{Number: fmt.Sprint("W", i)}, worstA: 5, allowed: conductor.Allowed{AllowedA: 10}})
		}
		list[0].worstA, list[1].worstA = 0.2, 0.199
		return list
	}
	if barred, slight := slightly(of(50)); len(barred) != 50 || slight != nil {
		t.Errorf("of 50: %d bars, without %q", len(barred), slight)
	}
	if barred, slight := slightly(of(51)); len(barred) != 50 || !slices.Equal(slight, []string{"W1"}) {
		t.Errorf("of 51: %d bars, without %q", len(barred), slight)
	}
}

// A page of names is read; of more, their number is told.
func TestSlightNote(t *testing.T) {
	names := func(n int) (list []string) {
		for i := range n {
			list = append(list, fmt.Sprint("W", i+1))
		}
		return list
	}
	if got := slightNote(names(50)); !strings.Contains(got, "W49, W50.") {
		t.Error(got)
	}
	if got, want := slightNote(names(51)), "Less than 2.0 % of what they may carry: 51 wires, W1 the most."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
