package rules

import (
	"fmt"
	"math"

	"fusewright/harness/circuit"
	"fusewright/harness/corner"
	"fusewright/harness/fault"
	"fusewright/harness/finding"
)

var sneakPath = &Rule{
	Name:  "sneak-path",
	Title: "with a return lost, current finds a way back through another part",
	Doc: "Each return wire and frame stud that more than one part shares is opened in turn, in every " +
		"situation. Reported when a load that was off gets a tenth of its voltage or more, or a relay " +
		"that was at rest pulls in, because the current of another part goes back through it. Parts " +
		"that only stop working are in the fault table. A part that suffers from reversed or too much " +
		"voltage is ground-lost-overvoltage.",
	Formula: "the whole network solved again with the return open",
	Limits:  "a tenth of the load's rated voltage; pull-in voltage of the relay",
	Why: "a loose ground shows as lamps that glow with the switch off and gear that starts by itself, " +
		"and nobody looks at the ground",
	Change:   "give the part a return of its own, or take the parts to grounds that cannot fail together",
	Severity: "fault",
	Source:   "common practice, no source",
	Bad: `
grounds:
  frame: {kind: frame stud, at: battery tray, limit: 60 A, frame resistance: 2 mΩ}
  rear block: {kind: ground block, at: rear, limit: 30 A, returns to: battery negative, wire: {size: 1.5 mm²}}
switches:
  flood switch: {rating: 10 A, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: rear block, return wire: {length: 100 mm}}
  left flood: {power: 10 W, behaves: resistor, at: rear, fed by: flood switch, wire: {size: 1 mm²}, returns to: rear block, return wire: {length: 100 mm}}
  right flood: {power: 10 W, behaves: resistor, at: rear, fed by: flood switch, wire: {size: 1 mm²}, returns to: frame}
situations:
  riding: {engine: cruise, on: [tail lamp]}
  working: {engine: idle, on: all}
`,
	Good: `
grounds:
  frame: {kind: frame stud, at: battery tray, limit: 60 A, frame resistance: 2 mΩ}
  rear block: {kind: ground block, at: rear, limit: 30 A, returns to: battery negative, wire: {size: 1.5 mm²}}
switches:
  flood switch: {rating: 10 A, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  left flood: {power: 10 W, behaves: resistor, at: rear, fed by: flood switch, wire: {size: 1 mm²}, returns to: rear block, return wire: {length: 100 mm}}
  right flood: {power: 10 W, behaves: resistor, at: rear, fed by: flood switch, wire: {size: 1 mm²}, returns to: rear block, return wire: {length: 100 mm}}
situations:
  riding: {engine: cruise, on: [tail lamp]}
  working: {engine: idle, on: all}
`,
	Run: func(p *Pass) {
		if p.in.Faults == nil {
			return
		}
		for _, l := range p.in.Faults.Lost {
			if p.suffering(l) == nil {
				p.judgeSneak(l)
			}
		}
	},
}

func (p *Pass) judgeSneak(l *fault.Lost) {
	var parts []*circuit.Branch
	var worst *fault.Affected
	for i := range l.Affected {
		if a := &l.Affected[i]; a.Effect == fault.Woken || a.Effect == fault.Pulled {
			parts = append(parts, a.Branch)
			if worst == nil || corner.Beyond(math.Abs(a.AfterV), math.Abs(worst.AfterV)) {
				worst = a
			}
		}
	}
	if worst == nil {
		return
	}
	fin := p.ofReturn(finding.Fault, l.Branch)
	fin.What = fmt.Sprintf("with %s lost, %s gets %s though it is off: current goes back through %s",
		returnText(l.Branch), worst.Branch.Part.Name, volts(math.Abs(worst.AfterV)), few(names(parts), 4))
	fin.Numbers = []finding.Number{{Name: "voltage of a part that is off", Value: math.Abs(worst.AfterV), Unit: "V"}}
	fin.Situation = worst.Situation.Name
	p.report(fin)
}

// ofReturn starts a finding about a return wire or a ground's frame path.
func (p *Pass) ofReturn(s finding.Severity, b *circuit.Branch) finding.Finding {
	if b.Wire != nil {
		return ofWire(s, b.Wire)
	}
	return ofPart(s, b.Part)
}

func returnText(b *circuit.Branch) string {
	if b.Wire != nil {
		return "return " + wireText(b.Wire)
	}
	return "the frame path of " + b.Part.Name
}
