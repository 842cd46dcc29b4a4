package parts

import "fusewright/harness/network/circuit"

// Wiring is every wire of a circuit filed under the terminals and parts at its
// ends, in the order of the circuit.
type Wiring struct {
	Feeds   map[*circuit.Terminal][]*circuit.Wire // that leave a terminal, returns apart
	Returns map[*circuit.Part][]*circuit.Wire     // return wires that leave a part
	Landed  map[*circuit.Part][]*circuit.Wire     // return wires that arrive at a part
}

func WiringOf(c *circuit.Circuit) *Wiring {
	w := &Wiring{map[*circuit.Terminal][]*circuit.Wire{}, map[*circuit.Part][]*circuit.Wire{}, map[*circuit.Part][]*circuit.Wire{}}
	for _, x := range c.Wires {
		if IsReturn(x) {
			w.Returns[x.From.Part] = append(w.Returns[x.From.Part], x)
			w.Landed[x.To.Part] = append(w.Landed[x.To.Part], x)
			continue
		}
		w.Feeds[x.From] = append(w.Feeds[x.From], x)
	}
	return w
}

// IsReturn tells of wires on the way back to the source.
func IsReturn(w *circuit.Wire) bool {
	return w.Role == circuit.ReturnWire || w.Role == circuit.CoilReturnWire
}
