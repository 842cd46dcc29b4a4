package rules

import (
	"slices"

	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var loadDump = &Rule{
	Name:  "load-dump",
	Title: "the engine may be left charging into nothing",
	Says:  "may leave the engine without a battery",
	Doc: "A first battery that has a protection of its own, in every situation with the engine running: whether another battery stays joined to the " +
		"charging system when it opens, as it does on too much current or voltage, or in the cold. A link that is open, a diode and a " +
		"charger join nothing. And hand switches in the cable of an alternator that carry its charge with the engine running.",
	Formula:  "none",
	Limits:   "none",
	Why:      "the voltage jumps until the regulator follows, up to 35 V with a clamped alternator and 79 to 101 V with another (12 V, ISO 16750-2, from memory): electronics and lamps that are on die",
	Change:   "keep a lead battery on the charging system and charge the lithium battery from it over a DC-DC charger; or fit a surge protector at the alternator; of a battery switch: one with a contact that cuts the field first, or take the cable past it",
	Severity: "advice: protections that open under way are rare where all is chosen well; fault where the regulated voltage opens it",
	Source:   "common practice, no source; pulse: ISO 16750-2 (from memory)",
	Bad: `
battery: {chemistry: LiFePO4, capacity: 40 Ah, board: 300 A, resistance: 6 mΩ, at: battery tray}
`,
	Good: `
battery: {chemistry: LiFePO4, capacity: 12 Ah, resistance: 6 mΩ, at: battery tray}
`,
	Run: func(p *Pass) {
		p.judgeCableSwitch()
		if p.battery == nil || p.d.Battery.BoardA() == 0 || !p.d.Charging.Present() {
			return
		}
		for _, s := range p.usable {
			if s.Situation.EngineRPM > 0 && !p.otherJoined(s) {
				fin := ofPart(finding.Advice, p.battery.Part)
				fin.Leave, fin.Situation = true, s.Situation.Name
				opens := "when the battery's protection opens"
				if highV := p.boardHighV(&p.d.Battery); over(p.d.Charging.RegulatedV.Value, highV) {
					fin.Severity, fin.Leave = finding.Fault, false
					opens = "when the battery's protection opens, as it does at " + quantity.Plain(highV, quantity.Voltage) + " on its way to the " +
						volts(p.d.Charging.RegulatedV.Value) + " that are regulated"
				}
				p.say(fin, "in %q no other battery is joined to the charging system %s", s.Situation.Name, opens)
				return
			}
		}
	},
}

// judgeCableSwitch reports a switch that a hand can open between the running machine and the battery.
func (p *Pass) judgeCableSwitch() {
	if !p.d.Charging.Apart() {
		return
	}
	machine := p.branchesOf(circuit.ChargerBranch)[0]
	for _, s := range p.usable {
		for _, b := range p.branchesOf(circuit.ContactBranch) {
			if b.Closer == nil || b.Closer.Switch == nil || !s.Closed[b.Index] || !(s.Situation.EngineRPM > 0) {
				continue
			}
			joined := circuit.Reach(p.c, func(x *circuit.Branch) bool { return s.Closed[x.Index] && x != b }, machine.A)
			if p.postJoined(joined) || !joined[b.A.Index] && !joined[b.B.Index] {
				continue
			}
			fin := ofPart(finding.Advice, b.Part)
			fin.Leave, fin.Situation, fin.Short = true, s.Situation.Name, "opened under way it leaves the charging system without a battery"
			p.say(fin, "%s, opened with the engine running, parts the charging system from every battery", b.Part.Name)
			return
		}
	}
}

// postJoined tells whether the post of a battery is among the nodes reached.
func (p *Pass) postJoined(joined []bool) bool {
	return slices.ContainsFunc(p.c.Posts(), func(n *circuit.Node) bool { return joined[n.Index] })
}

// otherJoined tells whether a further battery takes what the charging system gives, in a solution: it is joined to
// the first one's post, or to the machine's own stud over a diode of its own.
func (p *Pass) otherJoined(s *solve.Solution) bool {
	from := p.c.Positive()
	if stud := p.c.Stud(); stud != nil {
		from = stud
	}
	joined := circuit.Reach(p.c, func(b *circuit.Branch) bool { return s.Closed[b.Index] }, from)
	for _, post := range p.c.Posts()[1:] {
		if joined[post.Index] {
			return true
		}
	}
	return false
}
