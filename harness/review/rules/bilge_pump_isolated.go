package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var bilgePumpIsolated = &Rule{
	Name:  "bilge-pump-isolated",
	Title: "a bilge pump with a float switch is fed through the battery switch",
	Says:  "dead with the battery switch off",
	Doc: "Boats only: a bilge pump that a float switch may start (a switch whose library type or name says float) must " +
		"still have power when every battery switch is open. A pump without a float switch is worked by " +
		"hand and not judged.",
	Formula: "none: it is a question of topology",
	Limits:  "the practice is afloat, such as marine",
	Why: "the battery switch is opened on leaving, so the float switch calls for a pump that has no " +
		"current",
	Change:   "feed the pump's fuse from the battery side of the battery switch, and give the reason as `stays live`",
	Severity: "fault",
	Source: "common practice, no source; ABYC E-11 and ISO 10133 let bilge pumps be wired before the battery " +
		"switch (from memory)",
	Bad: `
practice: marine
wire: {insulation: tinned marine 105 °C metric, size: 1.5 mm²}
loads:
  bilge pump: {type: bilge pump, at: rear, fed by: [float switch, pump by hand], wire: {size: 1.5 mm², length: 400 mm}, returns to: battery negative, return wire: {size: 1.5 mm²}, stays live: "must run unattended"}
switches:
  isolator: {type: battery switch 100 A, at: battery tray, fed by: main, wire: {size: 4 mm², length: 100 mm}}
  pump by hand: {type: sealed rocker 20 A, at: rear, fed by: pump fuse, wire: {size: 1.5 mm²}, stays live: "works the pump"}
  float switch: {type: float switch 15 A, at: rear, fed by: pump fuse, wire: {size: 1.5 mm²}}
fuses:
  main: {type: blade C, rating: 20 A, at: battery tray, fed by: battery, wire: {size: 4 mm², length: 50 mm}}
  pump fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: isolator, wire: {size: 4 mm², length: 100 mm}}
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
		closed, opened := p.live(keyOff, nil).nodes, p.live(keyOff, isolates).nodes
		for _, part := range p.bilgePumps() {
			b := loadBranch(part)
			if !closed[b.A.Index] || opened[b.A.Index] {
				continue
			}
			float, isolator := p.switchesBefore(b.A)
			if float == "" {
				continue
			}
			fin := ofPart(finding.Fault, part)
			fin.What = part.Name + " has a float switch and is fed through " + isolator +
				": with the battery switch open it cannot run"
			p.report(fin)
		}
	},
}

// switchesBefore names the float switch and the battery switch on the way to a
// node, "" for one that is not there.
func (p *Pass) switchesBefore(n *circuit.Node) (float, isolator string) {
	feeding := p.c.Feeding(n)
	for _, part := range p.partsOf(circuit.Switch) {
		s, ok := part.Source.(*design.Switch)
		if !ok || len(part.Branches) == 0 || !feeding[part.Branches[0].Index] {
			continue
		}
		switch {
		case isolates(part.Branches[0]):
			isolator = firstName(isolator, part.Name)
		case isFloatSwitch(s):
			float = firstName(float, part.Name)
		}
	}
	return float, isolator
}

// isFloatSwitch tells by a switch's library row or, so that none is missed, by the words of
// its name or its type's.
func isFloatSwitch(s *design.Switch) bool {
	return named("float", s.Name) || s.Type != nil && (s.Type.Float || named("float", s.Type.Name))
}

// firstName is the first of two names by the alphabet; "" is none.
func firstName(a, b string) string {
	if a == "" {
		return b
	}
	return min(a, b)
}
