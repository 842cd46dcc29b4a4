package schematic

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/render/symbol"
)

// relayShape is where things stand inside a relay, in modules from its contact
// row; see paint_relay.go.
type relayShape struct {
	changeover bool
	suppressor symbol.Kind // "" when it has none
	coil       int         // row of the coil
	floor      int         // lower edge of the outline, where 85 leaves
	roof       float64     // upper edge
	drop       int         // from the floor to the ground's sign
}

// relayForm is what a relay has inside.
func relayForm(p *circuit.Part) (g relayShape) {
	if r, ok := p.Source.(*design.Relay); ok {
		g.changeover = r.Form != nil && r.Form.Changeover
		g.suppressor = map[string]symbol.Kind{
			"resistor": symbol.Resistor, "diode": symbol.Diode, "zener": symbol.Zener,
		}[r.Coil.Suppressed]
	}
	return g
}
