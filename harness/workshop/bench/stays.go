package bench

import (
	"fmt"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
)

// stays says of relays that do not follow their coils at once what to do and what to time
// in a pass.
func (m *maker) stays(s *solved) (lines []string) {
	closed := circuit.Contacts(m.c, s.situation)
	for _, p := range m.c.Parts {
		r, ok := p.Source.(*design.Relay)
		if !ok {
			continue
		}
		name := p.Ref + " " + r.Name
		switch {
		case r.Latches:
			state := "open"
			for _, b := range p.Branches {
				if b.Closer != nil && b.Closer.Coil != nil && closed[b.Index] {
					state = "closed"
				}
			}
			lines = append(lines, fmt.Sprintf("%s must be %s: give its coil a pulse where it is not, and it must stay so when the pulse ends.", name, state))
		case slices.Contains(s.situation.Held, r):
			lines = append(lines, fmt.Sprintf("Supply the coil of %s, take the supply off and start a clock: it must open after about %s. Read before that.",
				name, quantity.Plain(r.OffDelayS.Value, quantity.Duration)))
		case slices.Contains(s.situation.Waiting, r):
			lines = append(lines, fmt.Sprintf("Supply the coil of %s and start a clock: it must close after about %s. Read before that.",
				name, quantity.Plain(r.OnDelayS.Value, quantity.Duration)))
		case r.OnDelayS.Given() && s.situation.Key == design.KeyOn:
			lines = append(lines, fmt.Sprintf("%s closes about %s after its coil is supplied: time it, and read after that.",
				name, quantity.Plain(r.OnDelayS.Value, quantity.Duration)))
		}
	}
	return lines
}
