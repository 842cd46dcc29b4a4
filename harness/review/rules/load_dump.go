package rules

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var loadDump = &Rule{
	Name:  "load-dump",
	Title: "the engine or a charger may be left charging into nothing",
	Says:  "may be left without a battery",
	Doc: "A first battery that has a protection of its own, in every situation with the engine running: whether another battery stays joined to the " +
		"charging system when it opens, as it does on too much current or voltage, or in the cold. A link that is open, a diode and a " +
		"charger join nothing. And hand switches in the cable of an alternator that carry its charge with the engine running. " +
		"And chargers whose battery's protection opens in a situation, on its current or on what they hold, while loads are on that are joined to their output and no other battery is: " +
		"a panel counts whenever it may shine, other chargers where they give.",
	Formula:  "of a panel's controller: open-circuit volts of a panel ≤ maximum voltage of the load",
	Limits:   "22 V for each 12 V of the system (panels of 36 cells, from memory); more where panels are in series",
	Why:      "the voltage jumps until the regulator follows, up to 35 V with a clamped alternator and 79 to 101 V with another (12 V, ISO 16750-2, from memory): electronics and lamps that are on die; a solar controller without its battery holds its output badly or passes the panel's open-circuit voltage, of which makers warn, and other chargers overshoot or stop",
	Change:   "keep a lead battery on the charging system and charge the lithium battery from it over a DC-DC charger; or fit a surge protector at the alternator; of a battery switch: one with a contact that cuts the field first, or take the cable past it",
	Severity: "advice: protections that open under way are rare where all is chosen well; fault where the regulated voltage opens it. Of a charger, whose battery's protection is known to open: fault where a load bears less than an unloaded panel, else advice",
	Source:   "common practice, no source (chargers too); pulse: ISO 16750-2 (from memory)",
	Bad: `
battery: {chemistry: LiFePO4, capacity: 40 Ah, board: 300 A, resistance: 6 mΩ, at: battery tray}
`,
	Good: `
battery: {chemistry: LiFePO4, capacity: 12 Ah, resistance: 6 mΩ, at: battery tray}
`,
	Run: func(p *Pass) {
		p.judgeCableSwitch()
		p.judgeChargersLeft()
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

// openPanelV is a panel without load, of a 12 V system (36 cells, from memory).
const openPanelV = 22.0

// judgeChargersLeft reports chargers that are left with loads alone when the protection of what they charge opens.
func (p *Pass) judgeChargersLeft() {
	for part, x := range each[*design.Charger](p.facts) {
		bank := p.c.Charged(part)
		if bank == nil || bank.Store.BoardA() == 0 {
			continue
		}
		for _, s := range p.usable {
			opens := p.opensIn(s, bank, x)
			if opens == "" || x.Type.From != "panel" && math.IsInf(s.Ohm[part.Output().Index], 1) {
				continue
			}
			if fin, left := p.leftWith(s, part, bank); left != "" {
				p.say(fin, "%s has %s alone on its output when the protection of %s opens, as it does %s", part.Name, left, bank.Name, opens)
				break
			}
		}
	}
}

// opensIn is why a battery's protection opens in a solution, with a charger on it; "" = it does not.
func (p *Pass) opensIn(s *solve.Solution, bank *design.Bank, x *design.Charger) string {
	b := p.c.PartOf(bank).Branches[0]
	switch a, limit, highV := s.Given(b), bank.Store.BoardA(), p.boardHighV(&bank.Store); {
	case over(a, limit):
		return fmt.Sprintf("on %s in %q", amps(a), s.Situation.Name)
	case over(x.HeldV(), highV):
		return "at " + quantity.Plain(highV, quantity.Voltage) + " on its way to the " + volts(x.HeldV()) + " that are held"
	}
	return ""
}

// leftWith is the loads on in a solution that a charger's output is left with without its battery, the one that bears
// least first; "" = none that suffers.
func (p *Pass) leftWith(s *solve.Solution, part *circuit.Part, bank *design.Bank) (fin finding.Finding, left string) {
	out := part.Output()
	own := p.c.PartOf(bank).Branches[0]
	joined := circuit.Reach(p.c, func(b *circuit.Branch) bool { return b.Kind != circuit.DiodeBranch && s.Closed[b.Index] }, out.A)
	plus, _ := own.Posts()
	for _, post := range p.c.Posts() {
		if post != plus && joined[post.Index] {
			return fin, ""
		}
	}
	mayV, panel := openPanelV*p.c.NominalAt(out.A)/12, part.Source.(*design.Charger).Type.From == "panel"
	var worst *circuit.Branch
	bears := func(b *circuit.Branch) float64 { return b.Load.Load.MaxV.Or(math.Inf(1)) }
	for _, b := range p.branchesOf(circuit.LoadBranch) {
		known := b.Load != nil && b.Load.Load != nil && s.LoadOn[b.Index] && joined[b.A.Index]
		if known && !(panel && b.Load.Load.MaxV.Given() && !over(mayV, bears(b))) && (worst == nil || bears(b) < bears(worst)) {
			worst = b
		}
	}
	if worst == nil {
		return fin, ""
	}
	fin = ofPart(finding.Advice, part)
	fin.Leave, fin.Situation = true, s.Situation.Name
	fin.Change = "mend what opens it; or fit a controller or charger that its maker says may run without a battery, and loads that bear what it may give"
	left = worst.Part.Name
	if maxV := worst.Load.Load.MaxV; panel && maxV.Given() {
		fin.Severity, fin.Leave = finding.Fault, false
		atMost(&fin, "open-circuit voltage of the panel", mayV, maxV.Value, "V")
		left += ", which bears " + quantity.Plain(maxV.Value, quantity.Voltage) + ","
	}
	return fin, left
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
