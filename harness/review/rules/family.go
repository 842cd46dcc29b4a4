package rules

import (
	"cmp"
	"fmt"
	"slices"

	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/library"
)

// familyFor is advice to use the nearest connector family, by rating, that takes all the wires of a
// connector in the loom as they are, and their currents in the worst case; "" where the library has
// none.
func (p *Pass) familyFor(x *circuit.Inline) string {
	fits := slices.DeleteFunc(slices.Clone(p.d.Library.Connectors), func(f *library.Connector) bool {
		wet := x.Part.Place != nil && (x.Part.Place.Wet || x.Part.Place.PetrolVapour)
		return f.Housing(len(x.Poles)) == 0 || (wet || x.Part.Plug.Family.Sealed) && !f.Sealed ||
			slices.ContainsFunc(x.Poles, func(pole *circuit.Pole) bool { return !p.familyTakes(f, pole) })
	})
	if len(fits) == 0 {
		return ""
	}
	nearest := slices.MinFunc(fits, func(a, b *library.Connector) int { return cmp.Compare(a.MaxA, b.MaxA) })
	return "use " + nearest.Name + ", the nearest family that fits"
}

// forTooManyWires is what to do where more wires pass a connector than its housings have ways: the nearest
// family with enough; of wires side by side, of which no family takes so many, one in place of them. "" = what the rule says.
func (p *Pass) forTooManyWires(x *circuit.Inline) string {
	if use := p.familyFor(x); use != "" {
		return use
	}
	ways, mm2 := 0, 0.0
	for _, pole := range x.Poles {
		w := pole.Wire
		if w.Spec.Size == nil {
			return ""
		}
		if side := w.Parallel(); side[0] == w {
			ways, mm2 = ways+1, max(mm2, float64(len(side))*w.Spec.Size.AreaMm2)
		}
	}
	if ways == len(x.Poles) {
		return ""
	}
	fits := slices.DeleteFunc(slices.Clone(p.d.Library.Connectors), func(f *library.Connector) bool {
		return f.Housing(ways) == 0 || x.Part.Plug.Family.Sealed && !f.Sealed || outside(&circuit.Plug{Family: f}, mm2)
	})
	if len(fits) == 0 {
		return ""
	}
	nearest := slices.MinFunc(fits, func(a, b *library.Connector) int { return cmp.Compare(a.MaxA, b.MaxA) })
	return fmt.Sprintf("lay one wire of at least %s in place of those side by side: %s takes it", quantity.Plain(mm2, quantity.Area), nearest.Name)
}

func (p *Pass) familyTakes(f *library.Connector, pole *circuit.Pole) bool {
	w := pole.Wire
	if w.Spec.Size == nil {
		return false
	}
	contact := p.d.Library.TerminalFor(f.PinKind, w.Spec.Size.AreaMm2)
	if contact == nil || outside(&circuit.Plug{Family: f}, w.Spec.Size.AreaMm2) {
		return false
	}
	limitA, _, _ := contactLimit(f, contact)
	return p.cornerAmps(w.Branch)(corner.AtWorst).decisive() <= limitA*f.Share(pole.Inline.Part.AmbientC())
}
