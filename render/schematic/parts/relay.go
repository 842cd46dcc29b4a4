package parts

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/render/symbol"
)

// RelayShape is where things stand inside a relay, in modules from its contact
// row; see paint_relay.go.
type RelayShape struct {
	Changeover bool
	Suppressor symbol.Kind // "" when it has none
	Coil       int         // row of the coil
	Floor      int         // lower edge of the outline, where 85 leaves
	Roof       float64     // upper edge
	Drop       int         // from the floor to the ground's sign
}

// RelayForm is what a relay has inside.
func RelayForm(p *circuit.Part) (g RelayShape) {
	if r, ok := p.Source.(*design.Relay); ok {
		g.Changeover = r.Form != nil && r.Form.Changeover
		g.Suppressor = map[string]symbol.Kind{
			"resistor": symbol.Resistor, "diode": symbol.Diode, "zener": symbol.Zener,
		}[r.Coil.Suppressed]
	}
	return g
}
