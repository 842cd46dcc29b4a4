package schematic

import "fusewright/harness/network/circuit"

// terminalName is how a terminal is called in the drawing: the reference, and
// the terminal where a part has several that feed.
func terminalName(t *circuit.Terminal) string {
	p := t.Part
	switch {
	case t.FuseRef != "":
		return t.FuseRef + " (" + p.Ref + ":" + t.Name + ")"
	case p.Kind == circuit.Relay || p.Kind == circuit.Block:
		return p.Ref + ":" + t.Name
	}
	return p.Ref
}

// shortName is how a flag calls a terminal: by the fuse before it when it has one.
func shortName(t *circuit.Terminal) string {
	if t.FuseRef != "" {
		return t.FuseRef
	}
	return terminalName(t)
}

// nameOf is the wording of a part: its label, else its name.
func nameOf(p *circuit.Part) string {
	if p.Label != "" {
		return p.Label
	}
	return p.Name
}

// sourceParts finds the parts that stand with the battery.
func sourceParts(c *circuit.Circuit) (generator, vehicle *circuit.Part) {
	for _, p := range c.Parts {
		switch p.Kind {
		case circuit.Generator:
			generator = p
		case circuit.VehicleLoads:
			vehicle = p
		}
	}
	return generator, vehicle
}

// batteryPostText names the negative post.
func batteryPostText(p *circuit.Part) string { return p.Ref + " −" }
