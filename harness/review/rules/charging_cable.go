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

// chargingLostV is what the charging cable loses of the machine's greatest hot output, contacts
// and fuses included, and the wire that loses most.
func (f *facts) chargingLostV() (lostV float64, most *circuit.Wire) {
	_, hotA := charging.MostA(&f.d.Charging)
	worst := math.Inf(-1)
	for _, b := range f.chargingCable() {
		lostV += b.Ohm * hotA
		if b.Wire != nil && b.Ohm > worst {
			worst, most = b.Ohm, b.Wire
		}
	}
	return lostV, most
}
