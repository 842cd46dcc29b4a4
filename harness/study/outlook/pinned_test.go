package outlook

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// A thousand states up to 40 wires, 40 000 by their number above.
func TestMostOf(t *testing.T) {
	for wires, want := range map[int]int{0: 1000, 1: 1000, 40: 1000, 41: 975, 400: 100, 40_000: 1, 40_001: 0} {
		if got := mostOf(wires); got != want {
			t.Errorf("%d wires: %d states, want %d", wires, got, want)
		}
	}
}

// Of controls with two words each as many are moved as have no more combinations than may be, those of most watts first.
func TestMovesAtTheEdge(t *testing.T) {
	start := &Start{situation: &design.Situation{}}
	p := &Planner{Circuit: &circuit.Circuit{Design: &design.Design{}}, Starts: []*Start{start}}
	for id, watts := range map[string]float64{"a": 5, "b": 60} {
		p.Controls = append(p.Controls, &Control{ID: id, Words: []string{"on", "off"}, Loads: []*design.Load{{PowerW: watts}}})
	}
	for most, want := range map[int]string{1: "", 2: "b", 3: "b", 4: "ba"} {
		chosen, sets := p.moves(start, most)
		got := ""
		for _, x := range chosen {
			got += x.ID
		}
		if got != want || len(sets) > most {
			t.Errorf("%d: %q in %d sets, want %q", most, got, len(sets), want)
		}
	}
}
