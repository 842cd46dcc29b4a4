package rules

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/formula/charging"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/ride"
)

var batteryNotCharged = &Rule{
	Name:  "battery-not-charged",
	Title: "nothing charges a battery",
	Says:  "never charges",
	Doc: "Further batteries that are `fed by` nothing; chargers that give nothing in any situation in which their source does: the engine runs, " +
		"the sun shines, there is shore power; and batteries whose link joins them to the engine's charge in none in which it runs.",
	Formula:  "none",
	Limits:   "a DC-DC charger starts, and a voltage-sensing relay closes, at their own voltages; a charger gives 10 mA at least (our choice)",
	Why:      "it runs flat, and a lead battery left flat is soon spoilt",
	Change:   "name what charges it as `fed by`: the fuse at its end of the link to the first battery; of what never gives correct its voltages, or join what feeds it",
	Severity: "fault",
	Source:   "common practice, no source",
	Bad: `
batteries:
  house: {chemistry: AGM, capacity: 14 Ah, resistance: 12 mΩ, at: rear, returns to: frame, return wire: {size: 4 mm²}}
`,
	Good: linkEndUnfused.Mends(),
	Run: func(p *Pass) {
		for part, b := range each[*design.Bank](p.facts) {
			if len(b.FedBy) == 0 {
				p.say(ofPart(finding.Fault, part), "nothing charges %s", part.Name)
			}
		}
		for part, x := range each[*design.Charger](p.facts) {
			p.judgeIdleCharger(part, x)
		}
		p.judgeIdleLinks()
	},
}

// leastChargeA is what a charger that works gives at the least, to a full battery too; our choice.
const leastChargeA = 0.01

// judgeIdleCharger reports a charger that gives nothing wherever its source gives.
func (p *Pass) judgeIdleCharger(part *circuit.Part, x *design.Charger) {
	bank := p.c.Charged(part)
	if bank == nil {
		return
	}
	could, inV := false, math.Inf(-1)
	for _, s := range p.usable {
		if !p.couldCharge(x, s) {
			continue
		}
		if s.Given(part.Output()) > leastChargeA {
			return
		}
		could = true
		if x.FromBattery() {
			inV = max(inV, s.Volts(part.Converts()))
		}
	}
	if !could || x.FromBattery() && p.ridesCharge(bank.Name) {
		return
	}
	why := "it holds " + volts(x.HeldV())
	switch {
	case x.FromBattery() && !(inV > 0):
		why = "nothing reaches its input"
	case x.FromBattery() && inV < x.Type.StartsV:
		why = "its input has " + volts(inV) + " at most, and it starts at " + volts(x.Type.StartsV)
	}
	p.say(ofPart(finding.Fault, part), "%s gives %s nothing in any situation: %s", part.Name, bank.Name, why)
}

// couldCharge tells of a situation in which a charger's source gives.
func (p *Pass) couldCharge(x *design.Charger, s *solve.Solution) bool {
	return (!x.FromBattery() || p.engineCharges(s)) && x.Gives(s.Situation) > 0
}

// engineCharges tells of a situation in which the engine could charge.
func (p *Pass) engineCharges(s *solve.Solution) bool {
	return s.Situation.EngineRPM > 0 && p.d.Charging.Present() && charging.OutputA(p.d, s.Situation.EngineRPM) > 0
}

// ridesCharge tells of a further battery that some ride charges with the engine.
func (p *Pass) ridesCharge(bank string) bool {
	for _, r := range p.ridden() {
		for i, b := range r.Banks {
			if b.Bank.Name == bank && slices.ContainsFunc(r.Legs, func(l *ride.Leg) bool { return l.Runs() && l.Banks[i].GivenAh > leastChargeA }) {
				return true
			}
		}
	}
	return false
}

// judgeIdleLinks reports batteries with no charger that no running engine reaches over their links.
func (p *Pass) judgeIdleLinks() {
	charged := map[string]bool{}
	for part := range each[*design.Charger](p.facts) {
		if bank := p.c.Charged(part); bank != nil {
			charged[bank.Name] = true
		}
	}
	for part, link := range p.links() {
		name, could := part.Name, false
		if charged[name] || p.ridesCharge(name) {
			continue
		}
		charged[name] = true // judged once
		for _, s := range p.usable {
			if !p.engineCharges(s) {
				continue
			}
			could = true
			joined := circuit.Reach(p.c, func(b *circuit.Branch) bool { return s.Closed[b.Index] }, p.c.Positive())
			if s.Hunts != nil || joined[part.Terminal("+").Node.Index] {
				could = false
				break
			}
		}
		if could {
			p.say(ofPart(finding.Fault, part), "nothing charges %s: with the engine running its link over %s is closed in no situation%s",
				name, link.A.Terminals[0].Part.Name, p.sensesTooLow(link))
		}
	}
}

// sensesTooLow words why the voltage-sensing relay of a link stays open; "" = there is none, or another reason.
func (p *Pass) sensesTooLow(link *circuit.Branch) string {
	for _, b := range append(p.c.MainFeed(link.A).Branches, link) {
		if b.Kind != circuit.ContactBranch {
			continue
		}
		if r, _ := b.Part.Source.(*design.Relay); r != nil && r.Form != nil && r.Form.Senses && p.d.Charging.RegulatedV.Value < r.Form.PullInV {
			return ": " + r.Name + " closes at " + volts(r.Form.PullInV) + ", and charging is regulated to " + volts(p.d.Charging.RegulatedV.Value)
		}
	}
	return ""
}
