package sizing

import (
	"math"
	"testing"

	"fusewright/harness/review/finding"
)

// Weights of the cost: half of what is left over, 40 g a size, 10 g a crimp part,
// 20 g a connector family, half a gram an ampere of plugs and fuses. A metre of
// 1 mm² of copper is 8.89 g (IEC 60028: 8.89 g/cm³).
func TestCostByHand(t *testing.T) {
	for _, c := range []struct {
		name string
		cost Cost
		want float64
	}{
		{"copper", Cost{CopperG: 7}, 7}, {"left over", Cost{LeftG: 7}, 3.5}, {"sizes", Cost{Sizes: 3}, 120},
		{"crimp parts", Cost{Terminals: 3}, 30}, {"families", Cost{Plugs: 3}, 60}, {"amperes of plugs", Cost{PlugsA: 18}, 9},
		{"amperes of fuses", Cost{FusesA: 15}, 7.5},
		{"all", Cost{CopperG: 7, LeftG: 7, Sizes: 3, Terminals: 3, Plugs: 3, PlugsA: 18, FusesA: 15}, 237},
	} {
		if got := c.cost.TotalG(); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %g g, want %g g", c.name, got, c.want)
		}
	}
	if copperGPerMm2M != 8.89 {
		t.Errorf("a metre of 1 mm² of copper is %g g", float64(copperGPerMm2M))
	}
}

func figures(margin, limit float64) *finding.Finding {
	return &finding.Finding{Rule: "r", Ref: "E1", Numbers: []finding.Number{{Name: "margin", Value: margin}, {Name: "limit", Value: limit}}}
}

// A figure within 3 % of its limit is on the edge; one that is further off by
// more than a thousandth of its limit is graver than before.
func TestEdgesByHand(t *testing.T) {
	for margin, want := range map[float64]bool{0: true, -0.29: true, 0.29: true, 0.31: false, -0.31: false} {
		if got := onEdge(figures(margin, 10)); got != want {
			t.Errorf("a margin of %g on 10: on the edge %t", margin, got)
		}
	}
	before := []*finding.Finding{figures(-1, 10)}
	for margin, want := range map[float64]int{-0.5: 0, -1: 0, -1.0099: 0, -1.0105: 1, -2: 1} {
		if got := len(allNew(before, []*finding.Finding{figures(margin, 10)})); got != want {
			t.Errorf("a margin of %g after −1: %d new", margin, got)
		}
	}
	if got := len(allNew(nil, before)); got != 1 {
		t.Errorf("a finding that was not there: %d new", got)
	}
}
