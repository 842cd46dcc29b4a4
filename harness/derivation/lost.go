package derivation

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// lostIn says where the volts of a load's circuit are lost, most first; nil where its way is
// not one.
func (v *view) lostIn(load *circuit.Branch) (list []Rest) {
	way, ok := v.way(load)
	if !ok {
		return nil
	}
	sums, total := map[string]float64{}, 0.0
	for _, b := range way {
		if b.Dropper() {
			continue // it is there to take volts
		}
		lost := math.Abs(v.sol.Volts(b))
		total += lost
		if b.Wire == nil {
			sums[kindOf(b)] += lost
			continue
		}
		r := solve.ResistanceOf(b, &v.opt)
		ends := r.EndsOhm * r.Ends / r.Ohm()
		sums["crimps"] += lost * ends
		sums["copper"] += lost * (1 - ends)
	}
	for kind, lost := range sums {
		x := &value{v: lost, dim: volts, digits: 3}
		list = append(list, Rest{On: kind, Share: lost / total, Value: x.text()})
	}
	slices.SortFunc(list, func(a, b Rest) int { return cmp.Or(cmp.Compare(b.Share, a.Share), cmp.Compare(a.On, b.On)) })
	return list
}

// kindOf is what an element that is no wire counts as.
func kindOf(b *circuit.Branch) string {
	switch {
	case b.Kind == circuit.FuseBranch:
		return "fuses"
	case b.OfLead():
		return "its own lead"
	case b.Kind == circuit.DiodeBranch:
		return "diodes"
	case b.Part == nil:
		return "other"
	}
	switch b.Part.Kind {
	case circuit.Switch:
		return "switches"
	case circuit.Relay:
		return "relays"
	case circuit.Ground:
		return "frame"
	case circuit.Tap:
		return "factory loom"
	case circuit.Block:
		return "blocks"
	}
	return "other"
}

// littleCopper is the share of a drop below which thicker wire does little against it.
const littleCopper = 1.0 / 3

// copperWords says whether thicker wire would help.
func copperWords(lost []Rest) string {
	for _, r := range lost {
		if r.On == "copper" && r.Share < littleCopper {
			return fmt.Sprintf("Only %.0f %% is lost in copper: thicker wire alone does little.", 100*r.Share)
		}
	}
	return ""
}
