package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

var unsealedInWetPlace = &Rule{
	Name:  "unsealed-in-wet-place",
	Title: "an unsealed part is in a wet place",
	Says:  "not sealed in a wet place",
	Doc: "Plugs, connectors, splices, and switches, relays and blocks of a library type, at a place that is `wet`: the library says of each " +
		"family, type and splice whether it is sealed. A plug or splice hangs in the open and is a fault; a switch, relay or block may " +
		"stand in a closed box that the design does not show, and is advice; of relays on boats, where spray is salt, a fault. The library has no such figure for " +
		"sockets, fuse holders and other bare terminals, and a part that gives only its ratings has no type: " +
		"those are not judged, and the purchase list asks for sealed sockets and holders there.",
	Formula: "none",
	Limits:  "`sealed` of the library row, `wet` of the place",
	Why: "water creeps between the contacts: they corrode, their resistance rises, and a green bridge " +
		"of salts makes a circuit of its own",
	Change:   "use a sealed type, or move the part to a dry place or a closed box",
	Severity: "fault; advice for switches, blocks and, ashore, relays",
	Source: "common practice, no source; ISO 10133 asks for IP 55 at least where water splashes on a " +
		"boat (from memory)",
	Mend: MendSeal,
	Bad: `
places:
  battery tray: {ambient: 40 °C}
  rear: {ambient: 35 °C, wet: yes}
loads:
  tail lamp: {power: 5 W, behaves: resistor, plug: open 6.3, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"plug: open 6.3", "plug: sealed 1.5"},
	Run: func(p *Pass) {
		for _, part := range p.c.Parts {
			if part.Place == nil || !part.Place.Wet {
				continue
			}
			p.judgeSealing(part)
		}
	},
}

// judgeSealing reports the plug of a part, and the part itself.
func (p *Pass) judgeSealing(part *circuit.Part) {
	if plug := part.Plug; plug != nil && !plug.Family.Sealed {
		name := "the plug of " + part.Name
		if part.Kind == circuit.Connector {
			name = part.Name
		}
		p.say(ofPart(finding.Fault, part), "%s, %s, is not sealed, and %s is wet", name, plug.Family.Name, part.Place.Name)
	}
	p.judgeSplice(part)
	kind, severity := "", finding.Advice
	switch s := part.Source.(type) {
	case *design.Switch:
		if s.Type != nil && !s.Type.Sealed {
			kind = s.Type.Name
		}
	case *design.Relay:
		if s.Form != nil && !s.Form.Sealed {
			kind, severity = s.Form.Name, graver(p.practice.Afloat, finding.Advice, finding.Fault)
		}
	case *design.Block:
		if s.Type != nil && !s.Type.Sealed {
			kind = s.Type.Name
		}
	}
	if kind == "" {
		return
	}
	p.say(ofPart(severity, part), "%s, %s, is not sealed, and %s is wet", part.Name, kind, part.Place.Name)
}

// judgeSplice reports the first splice of a part that is not sealed.
func (p *Pass) judgeSplice(part *circuit.Part) {
	for _, t := range part.Terminals {
		if t.KindAssumed && part.Kind != circuit.Splice { // how the leads of an accessory are joined nobody said
			continue
		}
		for _, w := range t.Wires {
			end := w.Crimp(w.From == t)
			if end != nil && !end.Sealed && (end.Kind == library.FlyingLeads || end.Kind == circuit.JointEnd && !t.Jointed) {
				fin := ofPart(finding.Fault, part)
				fin.Change = "shrink an adhesive-lined sleeve over the splice, or choose a sealed one as the wire's `ends`"
				p.say(fin, "%s at %s, %s, is not sealed, and %s is wet", w.Text(), part.Name, end.Name, part.Place.Name)
				return
			}
		}
	}
}
