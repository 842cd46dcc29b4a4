package sizing

import (
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/cutting"
	"fusewright/harness/workshop/purchase"
)

// leftG is the copper of a harness that is bought and not cut, in grams: the offcuts and
// the rest of the last length of each insulation, size and colour (package purchase).
func leftG(c *circuit.Circuit) (g float64) {
	type item struct {
		stock
		colour string
	}
	cutM := map[item]float64{}
	for _, x := range c.Wires {
		if x.Spec.Size == nil {
			continue
		}
		of := item{stock{x.Spec.Type, x.Spec.Size}, x.Spec.Colour.Code()}
		was, now := cutM[of], cutM[of]+cutting.Break(x).CutM
		g += copperGPerMm2M * x.Spec.Size.AreaMm2 * (purchase.WireToBuyM(now) - now - purchase.WireToBuyM(was) + was)
		cutM[of] = now
	}
	return g
}

// CopperG is the copper of a harness as it is cut, in grams; what is fitted already does not count.
func CopperG(c *circuit.Circuit) (g float64) {
	for _, x := range c.ToCut() {
		if x.Spec.Size != nil {
			g += copperGPerMm2M * x.Spec.Size.AreaMm2 * cutting.Break(x).CutM
		}
	}
	return g
}
