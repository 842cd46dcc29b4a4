package rules

import (
	"fmt"
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var relayNeverEnergised = &Rule{
	Name:  "relay-never-energised",
	Title: "a relay's coil can never be energised",
	Says:  "never energised",
	Doc: "With the key on and every switch closed the coil still has no live end or no return: it is " +
		"not fed, fed through its own contact, or its return leads nowhere. Loads behind the " +
		"relay are named, and not reported again by fed-by-nothing.",
	Formula:  "none: it is a question of topology",
	Limits:   "none",
	Why:      "what the relay feeds will never work",
	Change:   "feed terminal 86 from a live point and run 85 to a ground",
	Severity: "fault; danger for a critical load behind it",
	Source:   "common practice, no source",
	Bad: `
relays:
  lamp relay: {form: mini make, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}, coil: {fed by: lamp relay 87, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp relay, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"relay 87", "fuse"},
	Run: func(p *Pass) {
		able := p.live(anything, nil)
		for _, part := range p.partsOf(circuit.Relay) {
			coil := p.coilOf[part.Index]
			if coil == nil || able.coils[coil] {
				continue
			}
			fin := ofPart(finding.Fault, part)
			why := "no supply reaches its coil"
			if able.nodes[coil.A.Index] || able.nodes[coil.B.Index] {
				why = "its coil has no return path to the battery"
			}
			fin.What = fmt.Sprintf("%s can never be energised: %s", part.Name, why)
			setBehind(&fin, p.deadBehind(part, able))
			if p.criticalBehind(part, able) {
				fin.Severity = finding.Danger
			}
			p.report(fin)
		}
	},
}

// criticalBehind tells of a critical load that a relay's contacts alone would switch on.
func (p *Pass) criticalBehind(part *circuit.Part, able *liveness) bool {
	return slices.ContainsFunc(p.onlyBy(part, able), func(b *circuit.Branch) bool { return b.Load.Load.Critical })
}

// deadBehind names the loads that a relay's contacts alone would switch on.
func (p *Pass) deadBehind(part *circuit.Part, able *liveness) (loads []string) {
	for _, b := range p.onlyBy(part, able) {
		loads = append(loads, b.Part.Name)
	}
	return loads
}

// onlyBy are the loads behind a relay's contacts that nothing else can switch on.
func (p *Pass) onlyBy(part *circuit.Part, able *liveness) (loads []*circuit.Branch) {
	for _, contact := range part.Branches {
		if contact.Closer == nil || contact.Closer.Coil == nil {
			continue
		}
		for _, b := range p.drawsOf(contact) {
			if b.Load != nil && b.Load.Load != nil && !able.draws(b) {
				loads = append(loads, b)
			}
		}
	}
	return loads
}
