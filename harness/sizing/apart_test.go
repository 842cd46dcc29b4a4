package sizing

import (
	"fmt"
	"math"
	"testing"

	"fusewright/harness/proof/referencetest"
)

// TestTogetherAsAlone: what is said of a move does not hang on the moves that
// are judged in the same pass, and together they take far fewer passes.
func TestTogetherAsAlone(t *testing.T) {
	for _, c := range []struct {
		wires int
		seed  int64
	}{{10, 1}, {40, 1}, {40, 2}, {100, 3}} {
		t.Run(fmt.Sprintf("%d wires, seed %d", c.wires, c.seed), func(t *testing.T) {
			p, err := Complete(openedSeed(t, c.wires, c.seed))
			if err != nil {
				t.Fatal(err)
			}
			s := p.s
			var moves []move
			for i, x := range s.slots {
				if x.count() > 1 {
					moves = append(moves, move{i, x.other()})
				}
			}
			s.judgements = 0
			together := s.try(moves)
			if passes := s.judgements; c.wires >= 100 && passes > len(moves)/2 {
				t.Errorf("%d passes for %d moves", passes, len(moves))
			}
			every := 1
			if c.wires >= 100 && !referencetest.Required() {
				every = 4 // the small ones try each move alone; here the pass is what is large
			}
			for k := 0; k < len(moves); k += every {
				m := moves[k]
				alone := s.try([]move{m})[0]
				if a, b := ruleOf(together[k]), ruleOf(alone); a != b {
					t.Errorf("%s, %s: %q together, %q alone", s.slots[m.slot].part, s.slots[m.slot].label(m.to), a, b)
				}
				if d := together[k].cost.TotalG() - alone.cost.TotalG(); math.Abs(d) > 1e-6 {
					t.Errorf("%s: %g g more together", s.slots[m.slot].part, d)
				}
			}
		})
	}
}

func ruleOf(x trial) string {
	if x.worse == nil {
		return ""
	}
	return x.worse.Rule + " " + x.worse.Ref
}
