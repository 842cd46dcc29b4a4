package rules

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var partUnused = &Rule{
	Name:  "part-unused",
	Title: "nothing uses a ground, a splice, a connector, a fuse, a resistor or an output of a switch",
	Says:  "nothing uses it",
	Doc: "A ground point, or a fuse or switch of a return, to which nothing returns, a splice or an output of an isolator, or of a switch with positions, that feeds nothing or takes nothing back, a connector that no wire passes, or a dropping resistor past which all behind it is always fed: it is drawn and " +
		"bought all the same. A fuse or way whose rating is left open, `auto`, through which nothing draws: there is nothing to choose it for, and none is bought; often a name is missing where it was meant to be used. The fuse of a way of a block behind which nothing is left is bought and tested all the same; one already there, or a spare way, is not said. A tap that nothing uses costs nothing and is not said, and what is live with the key off is always-hot-conductor.",
	Formula:  "none: it is a question of topology",
	Limits:   "none",
	Why:      "something else may be wired where this was meant, or a bolt or splice is bought for nothing",
	Change:   "connect what it is meant for, or take it out",
	Severity: "advice always",
	Source:   "common practice, no source",
	Bad: `
splices:
  spare joint: {at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
`,
	Good: `
splices:
  lamp joint: {at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp joint, wire: {size: 1 mm², length: 100 mm}, returns to: frame}
`,
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Ground) {
			if !arrivedAt(part, circuit.ReturnWire, circuit.CoilReturnWire) {
				p.sayUnused(part, "nothing returns to %s")
			}
		}
		for _, part := range p.c.Parts {
			if part.InReturn && part.Kind != circuit.Relay && !arrivedAt(part, circuit.ReturnWire, circuit.CoilReturnWire) {
				p.sayUnused(part, "nothing returns to %s")
			}
		}
		for _, b := range p.fuses() {
			switch {
			case b.Returns() || p.c.Serves(b):
			case b.Fuse.Auto:
				p.sayUnusedFuse(b, "the fuse of %s is left open, and nothing is fed by it: none is bought", fusePlace(b))
				if to := wiresTo(b.Part.Inlet()); b.Part.Kind == circuit.Fuse && len(to) > 0 {
					p.standsAside(to[0], alwaysHotConductor)
				}
			case b.Part.Kind == circuit.Block && !b.Part.Fitted:
				p.sayUnusedFuse(b, "%s feeds nothing: it is bought all the same", fuseText(b))
			}
		}
		for _, x := range p.c.Inlines() {
			if len(x.Poles) == 0 {
				p.sayUnused(x.Part, "no wire passes %s")
			}
		}
		for _, part := range p.partsOf(circuit.Switch) {
			p.judgeOutputs(part)
		}
		for part, x := range each[*design.Diode](p.facts) {
			if x.Isolates > 0 {
				p.judgeIsolator(part, x)
			}
		}
		for part := range each[*design.DroppingResistor](p.facts) {
			p.judgeBypassed(part)
		}
		parked := p.live(keyOff, nil).nodes // always-hot-conductor has those
		for _, part := range p.partsOf(circuit.Splice) {
			if !leadsOn(part) && !parked[part.Terminals[0].Node.Index] {
				p.sayUnused(part, "%s feeds nothing")
			}
		}
	},
}

// judgeOutputs tells of outputs that positions of a switch name and nothing is fed by.
func (p *Pass) judgeOutputs(part *circuit.Part) {
	sw, ok := part.Source.(*design.Switch)
	if !ok || part.InReturn && !arrivedAt(part, circuit.ReturnWire, circuit.CoilReturnWire) { // of which that is said
		return
	}
	for _, output := range sw.Outputs() {
		if len(part.Terminal(output).Wires) > 0 {
			continue
		}
		fin := ofPart(finding.Advice, part)
		fin.Leave = true
		what := "%s of %s feeds nothing"
		fin.Change = "name the output as `fed by` where it is meant to feed, or write `none` for the position"
		if part.InReturn {
			what, fin.Change = "nothing returns to %s of %s", "name the output as `returns to` where it is meant to take current back, or write `none` for the position"
		}
		p.say(fin, what, output, part.Name)
	}
}

// judgeIsolator tells of outputs of an isolator that lead nowhere.
func (p *Pass) judgeIsolator(part *circuit.Part, x *design.Diode) {
	for _, output := range x.Outputs() {
		if len(part.Terminal(output).Wires) > 0 {
			continue
		}
		fin := ofPart(finding.Advice, part)
		fin.Leave = true
		fin.Change = "name the output as `fed by` where it is meant to charge a battery, or write fewer outputs; an output that is there is left free and covered"
		p.say(fin, "output %s of %s feeds nothing", output, part.Name)
	}
}

// bypassed is the share of what draws behind a resistor below which it is fed past it: a contact of 20 mΩ leaves a
// tenth to 0.2 Ω (our choice).
const bypassed = 0.1

// judgeBypassed tells of a resistor past which all is fed that is ever on behind it, or behind which there is nothing.
func (p *Pass) judgeBypassed(part *circuit.Part) {
	b := part.Branches[0]
	draws, on := p.drawsOf(b), false
	for _, s := range p.allSolutions() {
		total := 0.0
		for _, x := range draws {
			if a := math.Abs(s.Amps(x)); s.Status == solve.Converged && !math.IsNaN(a) {
				total += a
			}
		}
		if total > 0 && math.Abs(s.Amps(b)) >= bypassed*total {
			return
		}
		on = on || total > 0
	}
	fin := ofPart(finding.Advice, part)
	fin.Leave = true
	switch {
	case len(draws) == 0:
		p.say(fin, "nothing draws through %s", part.Name)
	case on:
		fin.Change = "leave out what feeds past it in the position where it is meant to hold back, or take it out"
		p.say(fin, "%s is fed past %s in every position and situation: it holds nothing back", wording.And(names(draws)), part.Name)
	}
}

// sayUnusedFuse is the same of a fuse.
func (p *Pass) sayUnusedFuse(b *circuit.Branch, what, named string) {
	fin := ofFuse(finding.Advice, b)
	fin.Leave = true
	fin.Change = "write `spare` for the way, or name it as `fed by` where it is meant to feed; or take the fuse out"
	p.say(fin, what, named)
}

// sayUnused is advice that sizing can do nothing about.
func (p *Pass) sayUnused(part *circuit.Part, what string) {
	fin := ofPart(finding.Advice, part)
	fin.Leave = true
	p.say(fin, what, part.Name)
}

// arrivedAt tells whether a wire of one of some roles ends at one of a part's terminals.
func arrivedAt(part *circuit.Part, roles ...circuit.Role) bool {
	for _, t := range part.Terminals {
		for _, w := range t.Wires {
			if w.To == t && slices.Contains(roles, w.Role) {
				return true
			}
		}
	}
	return false
}
