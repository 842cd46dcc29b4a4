package solve

import (
	"fmt"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/synth"
)

// The work of a fault is the ancestors of its nodes, that of a solution the
// conductances of the factorisation: the first must hardly grow with the wires,
// the second no faster than they.
func TestOrderingOfForms(t *testing.T) {
	for _, form := range synth.Forms {
		for _, wires := range []int{100, 1000, 5000} {
			t.Run(fmt.Sprintf("%s/%d", form, wires), func(t *testing.T) {
				c := buildtest.Circuit(t, form.YAML(wires, 1))
				p := Prepare(c).pattern
				n, most := len(p.pos), mostAncestors(p)
				if most > 4*storey {
					t.Errorf("a node has %d ancestors", most)
				}
				if len(p.col) > 3*n || len(p.fillTo) > 6*n {
					t.Errorf("%d conductances and %d additions for %d nodes", len(p.col), len(p.fillTo), n)
				}
				t.Logf("%d nodes, %d conductances, %d additions, %d ancestors", n, len(p.col), len(p.fillTo), most)
			})
		}
	}
}

func mostAncestors(p *pattern) int {
	above, most := make([]int, len(p.pos)), 0
	for k := len(p.pos) - 1; k >= 0; k-- {
		if p.rowStart[k] < p.rowStart[k+1] {
			above[k] = above[p.col[p.rowStart[k]]] + 1
		}
		most = max(most, above[k])
	}
	return most
}
