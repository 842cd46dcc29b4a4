// Package parts tells what a part is in the drawing, whatever the sheet looks like:
// its symbol and name, what stands in a block or relay, the wires at its ends.
package parts

import "fusewright/harness/network/circuit"

// TerminalName is how a terminal is called in the drawing: the reference, and
// the terminal where a part has several that feed.
func TerminalName(t *circuit.Terminal) string {
	p := t.Part
	switch {
	case t.FuseRef != "":
		return t.FuseRef + " (" + p.Ref + ":" + t.Name + ")"
	case p.Kind == circuit.Relay || Fans(p):
		return p.Ref + ":" + t.Name
	}
	return p.Ref
}

// ShortName is how a flag calls a terminal: by the fuse before it when it has one.
func ShortName(t *circuit.Terminal) string {
	if t.FuseRef != "" {
		return t.FuseRef
	}
	return TerminalName(t)
}

// NameOf is the wording of a part: its label, else its name.
func NameOf(p *circuit.Part) string {
	if p.Label != "" {
		return p.Label
	}
	return p.Name
}

// SourceParts finds the parts that stand with the battery: a generator does unless its cable is drawn.
func SourceParts(c *circuit.Circuit) (generator, vehicle *circuit.Part) {
	for _, p := range c.Parts {
		switch p.Kind {
		case circuit.Generator:
			if !Cabled(p) {
				generator = p
			}
		case circuit.VehicleLoads:
			vehicle = p
		}
	}
	return generator, vehicle
}

// Cabled tells of a charging system whose cable the design says.
func Cabled(p *circuit.Part) bool {
	return p.Kind == circuit.Generator && p.Source != nil
}

// BatteryPostText names the negative post.
func BatteryPostText(p *circuit.Part) string { return p.Ref + " −" }

// Wiring is every wire of a circuit filed under the terminals and parts at its
// ends, in the order of the circuit.
type Wiring struct {
	Feeds   map[*circuit.Terminal][]*circuit.Wire // that leave a terminal, returns apart
	Returns map[*circuit.Part][]*circuit.Wire     // return wires that leave a part
	Landed  map[*circuit.Part][]*circuit.Wire     // return wires that arrive at a part
}

// WiringOf files the wires of a circuit; those between batteries in series are drawn with these.
func WiringOf(c *circuit.Circuit) *Wiring {
	w := &Wiring{map[*circuit.Terminal][]*circuit.Wire{}, map[*circuit.Part][]*circuit.Wire{}, map[*circuit.Part][]*circuit.Wire{}}
	for _, x := range c.Wires {
		if x.Role == circuit.LinkWire {
			continue
		}
		if ToHalf(x) {
			w.Feeds[x.To] = append(w.Feeds[x.To], x)
			continue
		}
		if IsReturn(x) {
			w.Returns[x.From.Part] = append(w.Returns[x.From.Part], x)
			w.Landed[x.To.Part] = append(w.Landed[x.To.Part], x)
			continue
		}
		w.Feeds[x.From] = append(w.Feeds[x.From], x)
	}
	return w
}

// IsReturn tells of wires that end at a ground, or begin at one, as listed with the
// grounds. One from a load to what stands in its return, or to the half of a contactor
// that turns it, is drawn as a feed is.
func IsReturn(w *circuit.Wire) bool {
	return w.Role.Returns() && !ToHalf(w) && (!w.To.Part.InReturn || w.From.Part.Kind == circuit.Ground)
}

// ToHalf tells of the wire from a motor to the other half of its reversing contactor:
// it is drawn as the feed that it is when the motor runs the other way round.
func ToHalf(w *circuit.Wire) bool {
	return w.Role.Returns() && w.To.Part.Kind == circuit.Relay && !w.To.Part.InReturn
}
