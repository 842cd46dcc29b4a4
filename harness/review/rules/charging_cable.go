package rules

import (
	"math"

	"fusewright/harness/formula/charging"
	"fusewright/harness/network/circuit"
)

// chargingCable is the way between the charging system and the battery that the design
// says: the branches from the machine up to a battery's post, then its return; nil where it says none.
func (f *facts) chargingCable() (way []*circuit.Branch) {
	for _, part := range f.partsOf(circuit.Generator) {
		for n := part.Terminal("B+").Node; !f.c.IsPost(n) && len(n.FedBy()) > 0; n = n.FedBy()[0].A {
			way = append(way, n.FedBy()[0])
		}
		for n := part.Terminal("B-").Node; n != f.c.Negative() && len(n.ReturnsBy()) > 0; n = n.ReturnsBy()[0].B {
			way = append(way, n.ReturnsBy()[0])
		}
	}
	return way
}

// chargerCable is the way between the output of a charger and the battery that it charges, and back; of a converter
// all before the fuses of what it feeds.
func (f *facts) chargerCable(out *circuit.Branch) (way []*circuit.Branch) {
	plus, minus := f.c.Supply(out.A)
	if out.OfCharger().Converts() {
		way, minus = f.unfusedFrom(out.A), f.c.Negative()
	}
	for n := out.A; n != plus && len(n.FeedsOn()) > 0 && !f.c.IsPost(n); n = n.FeedsOn()[0].B {
		way = append(way, n.FeedsOn()[0])
	}
	for n := out.B; n != minus && n != f.c.Negative() && len(n.ReturnsBy()) > 0; n = n.ReturnsBy()[0].B {
		way = append(way, n.ReturnsBy()[0])
	}
	return way
}

// unfusedFrom are the branches that a node feeds, but for fuses and what is behind them.
func (f *facts) unfusedFrom(n *circuit.Node) (list []*circuit.Branch) {
	f.below(n, func(b *circuit.Branch) bool {
		fused := b.Kind == circuit.FuseBranch
		if !fused && b.Feeds() {
			list = append(list, b)
		}
		return !fused
	})
	return list
}

// chargingLostV is what the charging cable loses of the machine's greatest hot output, and the
// wire that loses most.
func (f *facts) chargingLostV() (lostV float64, most *circuit.Wire) {
	_, hotA := charging.MostA(&f.d.Charging)
	return f.lostAlong(f.chargingCable(), hotA)
}

// lostAlong is what a way loses of a current, contacts and fuses included, its wires as warm as the
// current makes them, and the wire that loses most.
func (f *facts) lostAlong(way []*circuit.Branch, amps float64) (lostV float64, most *circuit.Wire) {
	worst := math.Inf(-1)
	for _, b := range way {
		ohm := f.laid.Ohm(b, amps)
		lostV += ohm * amps
		if b.Wire != nil && ohm > worst {
			worst, most = ohm, b.Wire
		}
	}
	return lostV, most
}
