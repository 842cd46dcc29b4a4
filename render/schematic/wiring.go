package schematic

import "fusewright/harness/network/circuit"

// wiring is every wire of a circuit filed under the terminals and parts at its
// ends, in the order of the circuit.
type wiring struct {
	feeds   map[*circuit.Terminal][]*circuit.Wire // that leave a terminal, returns apart
	returns map[*circuit.Part][]*circuit.Wire     // return wires that leave a part
	landed  map[*circuit.Part][]*circuit.Wire     // return wires that arrive at a part
}

func wiringOf(c *circuit.Circuit) *wiring {
	w := &wiring{map[*circuit.Terminal][]*circuit.Wire{}, map[*circuit.Part][]*circuit.Wire{}, map[*circuit.Part][]*circuit.Wire{}}
	for _, x := range c.Wires {
		if isReturn(x) {
			w.returns[x.From.Part] = append(w.returns[x.From.Part], x)
			w.landed[x.To.Part] = append(w.landed[x.To.Part], x)
			continue
		}
		w.feeds[x.From] = append(w.feeds[x.From], x)
	}
	return w
}

// isReturn tells of wires on the way back to the source.
func isReturn(w *circuit.Wire) bool {
	return w.Role == circuit.ReturnWire || w.Role == circuit.CoilReturnWire
}
