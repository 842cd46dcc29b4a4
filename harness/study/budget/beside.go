package budget

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/formula/charging"
	"fusewright/harness/network/circuit"
)

// Further is a further alternator: what it gives for good over engine speed, and which batteries it charges. No balance
// counts it, since what it charges may have no part in the first battery's demand; what it gives is said beside them.
type Further struct {
	Charger *design.Charger
	To      []string
	Output  []Point
	curve   *charging.Curve
}

// FurtherOf are those of a circuit, in its order.
func FurtherOf(c *circuit.Circuit) (list []Further) {
	for _, p := range c.Parts {
		x, ok := p.Source.(*design.Charger)
		if !ok || !x.FromEngine() {
			continue
		}
		f := Further{Charger: x, curve: charging.Of(&x.Engine), Output: outputCurve(&x.Engine)}
		for _, b := range p.Output().A.FeedsOn() {
			for _, battery := range c.BatteriesBelow(b) {
				if battery.Name != "" && !slices.Contains(f.To, battery.Name) {
					f.To = append(f.To, battery.Name)
				}
			}
		}
		list = append(list, f)
	}
	return list
}

// BesideAt says in words what further alternators give at engine speeds, each speed once, as words before what
// comes of it; "" = nothing.
func BesideAt(further []Further, so string, rpm ...float64) (text string) {
	slices.Sort(rpm)
	rpm = slices.Compact(rpm)
	for _, f := range further {
		var each []string
		for _, n := range rpm {
			if n > 0 {
				each = append(each, quantity.Format(f.curve.Amps(n), quantity.Current)+" at "+quantity.Plain(math.Round(n), quantity.Speed))
			}
		}
		if len(each) > 0 {
			text += " Beside the charging system " + f.Charger.Name + " gives " + wording.And(f.To) + " up to " + wording.And(each) + so
		}
	}
	return text
}

// Uncounted is what comes of it in a balance.
const Uncounted = ": output, spare and break-even speed here count without it."

// Beside is that at the speeds of the balances.
func (b *Budget) Beside() string {
	var rpm []float64
	for _, l := range b.Lines {
		rpm = append(rpm, l.Situation.EngineRPM)
	}
	return BesideAt(b.Further, Uncounted, rpm...)
}
