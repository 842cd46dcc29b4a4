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
		"feed with the key off, by a float switch or another switch by hand, and the float switch itself, such as the one on the " +
		"automatic position of its switch. A battery switch counts as such a switch. A pump that nothing can feed at all is fed-by-nothing or no-way-back.",
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
			fin := ofPart(finding.Danger, part)
			float := p.keyedFloat(b.A)
			switch {
			case !ever[b.A.Index]:
				continue
			case !parked[b.A.Index]:
				fin.What = part.Name + " is fed only with the key on: it cannot run on an unattended boat"
			case float != "":
				fin.What = part.Name + " runs by hand alone with the key off: " + float + " is fed only with the key on, so water starts nothing on an unattended boat"
			default:
				continue
			}
			p.report(fin)
		}
	},
}

// keyedFloat names the float switch before a node of which the key cuts off the feed, when
// every one of them is such; "" = none, or water starts the pump with the key off.
func (p *Pass) keyedFloat(n *circuit.Node) (name string) {
	feeding := p.c.Feeding(n)
	coils := p.live(keyOff, nil).coils
	for _, part := range p.partsOf(circuit.Switch) {
		s, ok := part.Source.(*design.Switch)
		if !ok || !isFloatSwitch(s) || len(part.Branches) == 0 || !feeding[part.Branches[0].Index] {
			continue
		}
		if p.fedBy(part.Branches[0].A, func(b *circuit.Branch) bool { return mayClose(b, keyOff, coils) }) {
			return ""
		}
		name = firstName(name, part.Name)
	}
	return name
}

// fedBy tells whether the battery's positive post feeds a node over branches that pass.
func (p *Pass) fedBy(n *circuit.Node, passes func(*circuit.Branch) bool) bool {
	seen := map[*circuit.Node]bool{n: true}
	for queue := []*circuit.Node{n}; len(queue) > 0; queue = queue[1:] {
		if p.c.IsPost(queue[0]) {
			return true
		}
		for _, b := range queue[0].FedBy() {
			if !seen[b.A] && b.Passes(b.A) && passes(b) {
				seen[b.A] = true
				queue = append(queue, b.A)
			}
		}
	}
	return false
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
