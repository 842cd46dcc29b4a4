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
		"the sun shines, there is shore power; and batteries whose link joins them neither to the engine's charge in any in which it runs, nor to a charger that gives in any.",
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
		for part := range each[*design.Bank](p.facts) {
			if len(part.Terminal("+").Node.FedBy()) == 0 { // a fuse on the post feeds it too
				p.say(ofPart(finding.Fault, part), "nothing charges %s", part.Name)
			}
		}
		for part, x := range each[*design.Charger](p.facts) {
			p.judgeIdleCharger(part, x)
		}
		p.judgeIdleLinks()
		p.judgeIdleStud()
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

// judgeIdleLinks reports batteries with no charger that no running engine, and no charger of another one, reaches over
// their links.
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
		post := part.Terminal("+").Node
		for _, s := range p.usable {
			could = could || p.engineCharges(s)
			if p.engineCharges(s) && s.Hunts != nil || p.chargeReaches(s, post) {
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

// judgeIdleStud reports batteries that the charging system's own stud is joined to in no situation with the engine running.
func (p *Pass) judgeIdleStud() {
	stud := p.c.Stud()
	if stud == nil {
		return
	}
	for _, post := range p.c.Posts() {
		ways := p.waysFromStud(post)
		reached := func(s *solve.Solution) bool {
			return circuit.Reach(p.c, func(b *circuit.Branch) bool { return s.Closed[b.Index] }, stud)[post.Index]
		}
		running := slices.DeleteFunc(slices.Clone(p.usable), func(s *solve.Solution) bool { return !p.engineCharges(s) })
		if part := storeAt(post); len(ways) > 0 && len(p.c.Links(post)) == 0 && len(running) > 0 && !slices.ContainsFunc(running, reached) {
			fin := ofPart(finding.Fault, part)
			fin.Change = "close what stands open on its way with the engine running, or take it out"
			p.say(fin, "nothing charges %s: with the engine running its way from the charging system over %s is closed in no situation",
				part.Name, ways[0].A.Terminals[0].Part.Name)
		}
	}
}

// chargeReaches tells of a situation in which closed contacts join a post to what charges: to the running engine, or
// to a charger that gives. What a charger has filled, in time, may close a relay that senses it.
func (p *Pass) chargeReaches(s *solve.Solution, post *circuit.Node) bool {
	joins := func(s *solve.Solution, from []*circuit.Node) bool {
		return circuit.Reach(p.c, func(b *circuit.Branch) bool { return s.Closed[b.Index] }, from...)[post.Index]
	}
	if p.engineCharges(s) && joins(s, []*circuit.Node{p.c.Positive()}) {
		return true
	}
	var from []*circuit.Node
	full := map[*design.Bank]float64{}
	for part := range each[*design.Charger](p.facts) {
		if bank := p.c.Charged(part); bank != nil && s.Given(part.Output()) > leastChargeA {
			from, full[bank] = append(from, part.Output().A), 1
		}
	}
	return len(from) > 0 && (joins(s, from) || joins(s.Again(solve.Options{BankCharge: full}), from))
}

// sensesTooLow words why the voltage-sensing relay of a link stays open; "" = there is none, or another reason.
func (p *Pass) sensesTooLow(link *circuit.Branch) string {
	for _, b := range p.c.Sensing(link) {
		if r, _ := b.Part.Source.(*design.Relay); r != nil && r.Form != nil && p.d.Charging.RegulatedV.Value < r.Form.PullInV {
			return ": " + r.Name + " closes at " + volts(r.Form.PullInV) + ", and charging is regulated to " + volts(p.d.Charging.RegulatedV.Value)
		}
	}
	return ""
}
