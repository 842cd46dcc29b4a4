package rules

import (
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var bilgePumpKeyed = &Rule{
	Name:  "bilge-pump-keyed",
	Title: "a bilge pump is dead with the key off",
	Says:  "dead with the key off",
	Doc: "Boats only: every load whose library row, name or type says bilge pump must be one that the battery can " +
		"feed with the key off, by a float switch or another switch by hand. A battery switch counts as " +
		"such a switch. A pump that nothing can feed at all is fed-by-nothing or no-way-back.",
	Formula:  "none: it is a question of topology",
	Limits:   "the practice is afloat, such as marine",
	Why:      "water comes in while nobody is on board; the boat sinks at its mooring with a full battery",
	Change:   "feed the pump from the battery by a fuse of its own and a float switch, and give the reason as `stays live`",
	Severity: "danger",
	Source:   "ABYC H-22, electric bilge pumps: automatic pumps stay energised when the boat is left (from memory)",
	Bad: `
practice: marine
wire: {insulation: tinned marine 105 °C metric, size: 1.5 mm²}
loads:
  bilge pump: {type: bilge pump, at: rear, fed by: pump fuse, wire: {size: 1.5 mm²}, returns to: battery negative, return wire: {size: 1.5 mm²}}
fuses:
  pump fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1.5 mm², length: 100 mm}}
`,
	Good: `
practice: marine
wire: {insulation: tinned marine 105 °C metric, size: 1.5 mm²}
loads:
  bilge pump: {type: bilge pump, at: rear, fed by: [float switch, pump by hand], wire: {size: 1.5 mm², length: 400 mm}, returns to: battery negative, return wire: {size: 1.5 mm²}, stays live: "must run unattended"}
switches:
  pump by hand: {type: sealed rocker 20 A, at: rear, fed by: pump fuse, wire: {size: 1.5 mm²}, stays live: "works the pump"}
  float switch: {type: float switch 15 A, at: rear, fed by: pump fuse, wire: {size: 1.5 mm²}}
fuses:
  pump fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1.5 mm², length: 100 mm}}
`,
	Run: func(p *Pass) {
		parked, ever := p.live(keyOff, nil).nodes, p.live(anything, nil).nodes
		for _, part := range p.bilgePumps() {
			b := loadBranch(part)
			if parked[b.A.Index] || !ever[b.A.Index] {
				continue
			}
			fin := ofPart(finding.Danger, part)
			fin.What = part.Name + " is fed only with the key on: it cannot run on an unattended boat"
			p.report(fin)
		}
	},
}

// bilgePumps are a boat's bilge pumps; none where the practice is not afloat.
func (p *Pass) bilgePumps() (list []*circuit.Part) {
	if !p.practice.Afloat {
		return nil
	}
	for _, part := range p.partsOf(circuit.Load) {
		if loadBranch(part) != nil && isBilgePump(accessory(part)) {
			list = append(list, part)
		}
	}
	return list
}

// isBilgePump tells by a load's library row or, so that none is missed, by the
// words of its name or its type's; a bilge blower is none.
func isBilgePump(l *design.Load) bool {
	if l == nil {
		return false
	}
	return named("bilge pump", l.Name) ||
		l.Type != nil && (l.Type.Bilge || named("bilge pump", l.Name+" "+l.Type.Name))
}

// named tells whether a name has words in it.
func named(words, name string) bool { return strings.Contains(strings.ToLower(name), words) }
