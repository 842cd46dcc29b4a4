package sizing

import (
	"math"
	"testing"

	"fusewright/harness/review/finding"
	"fusewright/library"
)

// Weights of the cost: 40 g a size, 10 g a crimp part,
// 20 g a connector family, half a gram an ampere of plugs. A metre of
// 1 mm² of copper is 8.89 g (IEC 60028: 8.89 g/cm³).
func TestCostByHand(t *testing.T) {
	for _, c := range []struct {
		name string
		cost Cost
		want float64
	}{
		{"copper", Cost{CopperG: 7}, 7}, {"thickness", Cost{ThickG: 7}, 7}, {"sizes", Cost{Sizes: 3}, 120},
		{"crimp parts", Cost{Terminals: 3}, 30}, {"families", Cost{Plugs: 3}, 60}, {"amperes of plugs", Cost{PlugsA: 18}, 9},
		{"fuses", Cost{FusesG: 15}, 15},
		{"all", Cost{CopperG: 7, ThickG: 7, Sizes: 3, Terminals: 3, Plugs: 3, PlugsA: 18, FusesG: 15}, 248},
	} {
		if got := c.cost.TotalG(); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %g g, want %g g", c.name, got, c.want)
		}
	}
	wire := library.Default().WireType("ISO 6722 thin wall class B")
	for label, want := range map[string]float64{"0.5 mm²": 0, "0.75 mm²": 0, "1.5 mm²": 90, "6 mm²": 270} { // 2⁰, 2¹, 2³ times 0.75 mm²
		x := slot{sizes: []*library.WireSize{wire.Size(label)}}
		if g := x.thickG(0); math.Abs(g-want) > 1e-9 {
			t.Errorf("%s counts %g g for its thickness, want %g g", label, g, want)
		}
	}
	if copperGPerMm2M != 8.89 {
		t.Errorf("a metre of 1 mm² of copper is %g g", float64(copperGPerMm2M))
	}
}

// 35 g an ampere of the rating and 20 g a kiloampere that a fuse breaks; one below
// 3 A counts as one of 3.5 A, behind that of 3 A,
// one of 4 A behind that of 5 A.
func TestFuseCostByHand(t *testing.T) {
	lib := library.Default()
	for _, c := range []struct {
		kind    string
		ratingA float64
		want    float64
	}{{"blade C", 1, 142.5}, {"blade C", 2, 142.5}, {"blade C", 3, 125}, {"blade C", 4, 212.5}, {"blade C", 5, 195}, {"blade C", 10, 370}, {"class T", 60, 2500}} {
		kind := lib.FuseType(c.kind)
		f := fuseCandidate{kind: kind, rating: kind.Rating(c.ratingA)}
		if got := f.costG(); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s %g A: %g g, want %g g", c.kind, c.ratingA, got, c.want)
		}
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
	s := &search{}
	for margin, want := range map[float64]int{-0.5: 0, -1: 0, -1.0099: 0, -1.0105: 1, -2: 1} {
		if got := len(s.allNew(before, []*finding.Finding{figures(margin, 10)})); got != want {
			t.Errorf("a margin of %g after −1: %d new", margin, got)
		}
	}
	if got := len(s.allNew(nil, before)); got != 1 {
		t.Errorf("a finding that was not there: %d new", got)
	}
}

// TestWholeLimit: limit 0.36 V, a fault above 0.54 V; between them while the wires take
// less than half.
func TestWholeLimit(t *testing.T) {
	for _, c := range [][2]float64{{0, 0.36}, {0.17, 0.36}, {0.18, 0.36}, {0.2, 0.4}, {0.27, 0.54}, {0.4, 0.54}} {
		if got := wholeLimitV(0.36, c[0]); math.Abs(got-c[1]) > 1e-9 {
			t.Errorf("contacts lose %g V: limit %g V, want %g V", c[0], got, c[1])
		}
	}
}

// Of a second choice that costs the same in every way nothing speaks against the first: either may be fitted.
func TestEitherMayBeFitted(t *testing.T) {
	c := Cost{CopperG: 12, Sizes: 2}
	if got := difference(c, c, ""); got != "it would do no better: either may be fitted" {
		t.Errorf("%q", got)
	}
	if got := difference(c, Cost{CopperG: 12, Sizes: 3}, ""); got != "1 more size of wire to buy" {
		t.Errorf("%q", got)
	}
}
