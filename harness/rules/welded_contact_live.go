package rules

import (
	"fmt"

	"fusewright/harness/circuit"
	"fusewright/harness/design"
	"fusewright/harness/fault"
	"fusewright/harness/finding"
)

var weldedContactLive = &Rule{
	Name:  "welded-contact-live",
	Title: "a welded relay contact leaves a heater or motor running",
	Doc: "Each relay's make contact is taken as welded, with the key off. Reported when a heater of 20 W or " +
		"more, or a motor, then runs with no switch by hand between it and the battery; it is found on " +
		"only by its heat. Lamps and electronics that stay on are seen or merely drain the battery: they " +
		"are in the fault table, like what a switch still stops. `stays live` on the part excuses it.",
	Formula:  "none: it is a question of topology",
	Limits:   "20 W (our choice)",
	Why:      "contacts that switch lamps and motors do weld; a seat heater or a pump that runs on over night can start a fire",
	Change:   "put a switch in the part's own feed, or feed the relay behind the key",
	Severity: "fault",
	Source:   "relay data sheets: contacts may weld at lamp and motor currents (one source); the limit is ours",
	Bad: `
fuses:
  main fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: battery, wire: {size: 1.5 mm², length: 100 mm}}
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
relays:
  seat relay: {form: mini make, at: battery tray, fed by: main fuse, wire: {size: 1.5 mm², length: 100 mm}, coil: {fed by: lamp fuse, wire: {length: 100 mm}, returns to: frame, suppressed by: resistor}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  heated seat: {power: 35 W, behaves: resistor, at: rear, fed by: seat relay, wire: {size: 1.5 mm²}, returns to: frame, return wire: {size: 1.5 mm²}}
`,
	Good: `
fuses:
  main fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: battery, wire: {size: 1.5 mm², length: 100 mm}}
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
relays:
  seat relay: {form: mini make, at: battery tray, fed by: main fuse, wire: {size: 1.5 mm², length: 100 mm}, coil: {fed by: lamp fuse, wire: {length: 100 mm}, returns to: frame, suppressed by: resistor}}
switches:
  seat switch: {rating: 10 A, at: rear, fed by: seat relay, wire: {size: 1.5 mm²}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  heated seat: {power: 35 W, behaves: resistor, at: rear, fed by: seat switch, wire: {size: 1.5 mm², length: 100 mm}, returns to: frame, return wire: {size: 1.5 mm²}}
`,
	Run: func(p *Pass) {
		if p.in.Faults == nil {
			return
		}
		for _, w := range p.in.Faults.Welded {
			p.judgeWeld(w)
		}
	},
}

// warmW is from where a heater left on unseen is dangerous.
const warmW = 20.0

func (p *Pass) judgeWeld(w *fault.Welded) {
	var left []*circuit.Branch
	watts := 0.0
	for _, h := range w.Hot {
		if !h.ByHand && runsUnseen(h.Branch) {
			left = append(left, h.Branch)
			watts += h.Branch.Load.PowerW
		}
	}
	if len(left) == 0 || staysLive(w.Contact.Part) {
		return
	}
	fin := ofPart(finding.Fault, w.Contact.Part)
	fin.What = fmt.Sprintf("if contact %s welds, %s run with the key off and no switch stops them",
		w.Contact.Name, few(names(left), 4))
	if len(left) == 1 {
		fin.What = fmt.Sprintf("if contact %s welds, %s runs with the key off and no switch stops it",
			w.Contact.Name, left[0].Part.Name)
	}
	fin.Numbers = []finding.Number{{Name: "left on", Value: watts, Unit: "W"}}
	p.report(fin)
}

// runsUnseen tells whether a load left on is a hazard.
func runsUnseen(b *circuit.Branch) bool {
	l := b.Load.Load
	return !staysLive(b.Part) && (l.Behaves == design.Motor ||
		l.Behaves == design.Resistor && l.PowerW >= warmW)
}
