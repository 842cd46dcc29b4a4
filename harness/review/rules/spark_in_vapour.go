package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var sparkInVapour = &Rule{
	Name:  "spark-in-vapour",
	Title: "a part that may spark is in petrol vapour",
	Says:  "may spark in petrol vapour",
	Doc: "Switches, a load's own switch, relays, fuses, breakers, blocks with fuses, sockets, and plugs that are not sealed, at a place " +
		"where `petrol vapour` can gather. What the library or the design calls `ignition protected` may stand there. Motors " +
		"and electronics (inverters, chargers, radios) may have brushes, relays or switches inside: nothing saying that they are protected is advice, the design saying that they are not a danger, and so is a protected socket: what is plugged in stands in the vapour as well. Where the design does not " +
		"say that vapour can gather, nothing is judged; a boat with a place that it is likely at is asked (data-missing), and its papers say so in their caution.",
	Formula:  "none",
	Limits:   "`petrol vapour` of the place; `ignition protected` of the part or its library row",
	Why:      "one part of petrol vapour in a hundred of air burns as an explosion, and a contact that opens is enough to light it",
	Change:   "move the part out of the space, or use one that is ignition protected",
	Severity: "danger; advice for motors and electronics of which nothing says that they are ignition protected, and for protected sockets",
	Source:   "33 CFR 183.410(a): a part near petrol must not light a mixture of propane and air (two sources)",
	Mend:     MendSpark,
	Bad: `
places:
  battery tray: {ambient: 40 °C, petrol vapour: yes}
  rear: {ambient: 35 °C}
`,
	Mended: []string{"petrol vapour: yes", "petrol vapour: no"},
	Run: func(p *Pass) {
		for _, part := range p.c.Parts {
			if part.Place != nil && part.Place.PetrolVapour {
				p.judgeSpark(part)
			}
		}
	},
}

func (p *Pass) judgeSpark(part *circuit.Part) {
	if plug := part.Plug; plug != nil && !plug.Family.Sealed {
		fin := ofPart(finding.Danger, part)
		fin.Change = "fit a sealed plug, or move it out of the space"
		p.say(fin, "the plug of %s, %s, may spark when it is parted, and petrol vapour can gather at %s",
			part.Name, plug.Family.Name, part.Place.Name)
	}
	l, not := accessory(part), false
	if s, ok := part.Source.(interface{ SaidUnprotected() bool }); ok {
		not = s.SaidUnprotected()
	}
	if s, ok := part.Source.(interface{ SaidSparkProof() bool }); ok && s.SaidSparkProof() || l != nil && l.Type != nil && l.Type.IgnitionProtected && !not {
		if l != nil && l.Sign == design.SignSocket {
			p.say(ofPart(finding.Advice, part), "%s is ignition protected, what is plugged into it need not be, and petrol vapour can gather at %s",
				part.Name, part.Place.Name)
		}
		return
	}
	if kind := sparking(part.Source, not); kind != "" {
		p.say(ofPart(finding.Danger, part), "%s, %s, may spark, and petrol vapour can gather at %s", part.Name, kind, part.Place.Name)
	}
	if l != nil {
		p.judgeLoadSpark(part, l, not)
	}
}

// judgeLoadSpark judges an accessory that nothing calls ignition protected, or that the
// design says is not.
func (p *Pass) judgeLoadSpark(part *circuit.Part, l *design.Load, not bool) {
	inside := part.Name
	if l.Behaves == design.Motor {
		inside = "the motor of " + part.Name
	}
	switch {
	case l.OwnSwitch:
		p.say(ofPart(finding.Danger, part), "the built-in switch of %s may spark, and petrol vapour can gather at %s", part.Name, part.Place.Name)
	case l.Sign == design.SignSocket:
		p.say(ofPart(finding.Danger, part), "plugging in or out at %s may spark, and petrol vapour can gather at %s", part.Name, part.Place.Name)
	case not:
		p.say(ofPart(finding.Danger, part), "%s is not ignition protected, and petrol vapour can gather at %s", inside, part.Place.Name)
	case l.Behaves == design.Motor || l.Sign.Electronic():
		fin := ofPart(finding.Advice, part)
		fin.Change = "see that its maker calls it ignition protected and write `ignition protected: yes`, or move it"
		p.say(fin, "nothing says that %s is ignition protected, and petrol vapour can gather at %s", inside, part.Place.Name)
	}
}

// sparking is what of a part may spark in use; "" = nothing, or its type is ignition
// protected, unless the design says that it is not.
func sparking(s design.Part, not bool) string {
	switch x := s.(type) {
	case *design.Switch:
		if x.Type == nil {
			return "a switch"
		} else if not || !x.Type.IgnitionProtected {
			return x.Type.Name
		}
	case *design.Relay:
		if x.Form != nil && (not || !x.Form.IgnitionProtected) {
			return x.Form.Name
		}
	case *design.Fuse:
		if x.Type != nil && (not || !x.Type.IgnitionProtected) {
			return x.Type.Name
		}
	case *design.Block:
		for _, w := range x.Ways {
			if w.Fuse != nil && w.FuseType != nil && (not || !w.FuseType.IgnitionProtected) {
				return "with " + w.FuseType.Name + " in it"
			}
		}
	}
	return ""
}
