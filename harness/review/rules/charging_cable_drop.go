package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var chargingCableDrop = &Rule{
	Name:  "charging-cable-drop",
	Title: "the battery misses what the charging cable loses",
	Says:  "loses too much of the charge",
	Doc: "What the charging cable loses of the greatest hot output, with its fuse, contacts and return, where the regulator senses at the machine: the " +
		"battery then gets so much less than the regulated voltage. Wires are as warm as the current makes them. One that senses the battery makes up for it. A diode between, as in an isolator, loses its knee at any current, to the last: where that alone is " +
		"above the limit it is a fault. The same of a charger at its " +
		"rated current, whatever the sun: it holds its voltage at its own output. And of one that another battery feeds, what the way to its input loses at full output, and whether its input keeps " +
		"the voltage below which it takes less.",
	Formula:  "greatest hot output, or rated current of a charger, × resistance of the way / nominal system voltage; at the input of one that is fed, regulated voltage − current there × resistance of the way",
	Limits:   "2 % of the system voltage (our choice, after makers' tables of charging leads), at the input of a charger 4 % (our choice, after theirs); `stops V` of the charger, in the library",
	Why:      "a battery charged some tenths of a volt too low never gets full, and sulphates",
	Change:   "use a thicker or shorter cable, or a regulator that senses the battery",
	Severity: "fault behind a diode; else advice",
	Source:   "makers' installation tables: charging leads lose 1 to 2 % (one source)",
	Mend:     MendWire,
	Bad: `
charging: {regulated: 14.3 V, output: {1300 rpm: 14 A, 3000 rpm: 24 A, 6000 rpm: 28 A}, idle: 1300 rpm, cruise: 4000 rpm, hot derating: 0 %, senses: machine, at: rear, fed by: charge fuse, wire: {size: 6 mm²}}
runs:
  - {from: battery tray, to: rear, length: 2 m}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  charge fuse: {type: blade E, rating: 40 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
`,
	Mended: []string{"senses: machine", "senses: battery"},
	Run: func(p *Pass) {
		for x := range each[*design.Charger](p.facts) {
			p.chargerDrop(x)
			p.chargerStarved(x)
		}
		if !p.d.Charging.SensesMachine() {
			return
		}
		lost := p.chargingLost()
		if !p.judgeDiodeLost(lost) {
			for _, x := range lost {
				p.judgeChargeLost(x)
			}
		}
	},
}

func (p *Pass) judgeChargeLost(x chargeLost) {
	share, regulatedV := x.volts/p.d.NominalV(), p.d.Charging.RegulatedV.Value
	if !over(share, mostChargeDrop) {
		return
	}
	fin := ofWire(finding.Advice, x.wire)
	atMost(&fin, "lost at full output", 100*share, 100*mostChargeDrop, "%")
	p.say(fin, "the charging cable loses %s at full output, %s: the battery gets %s of the %s that the regulator holds at the machine", volts(x.volts),
		against(mostChargeDrop, quantity.Share)(share), volts(regulatedV-x.volts), volts(regulatedV))
}

// judgeDiodeLost reports the batteries that the diodes of an isolator leave undercharged, once for all.
func (p *Pass) judgeDiodeLost(lost []chargeLost) bool {
	var names []string
	var worst chargeLost
	for _, x := range lost {
		if !over(x.kneeV, mostChargeDrop*p.d.NominalV()) {
			continue
		}
		if names = append(names, x.battery.Name); x.kneeV > worst.kneeV {
			worst = x
		}
	}
	if len(names) == 0 {
		return false
	}
	regulatedV := p.d.Charging.RegulatedV.Value
	fin := ofPart(finding.Fault, p.partsOf(circuit.Generator)[0])
	fin.Change = "have the regulator sense a battery, or isolate the batteries by a voltage-sensing relay"
	atMost(&fin, "lost at any current", 100*worst.kneeV/p.d.NominalV(), 100*mostChargeDrop, "%")
	p.say(fin, "%s keeps %s undercharged: its diode loses %s at any current, and the regulator holds its %s at the machine: no more than %s arrive, %s at full output",
		worst.diode.Name, wording.And(names), volts(worst.kneeV), volts(regulatedV), volts(regulatedV-worst.kneeV), volts(regulatedV-worst.volts))
	return true
}

// chargerDrop is the same of the wires of a charger.
func (p *Pass) chargerDrop(part *circuit.Part) {
	out := part.Output()
	x := out.OfCharger()
	lostV, wire := p.lostAlong(p.chargerCable(out), x.Type.RatingA)
	if wire == nil || x.Converts() || !over(lostV, mostChargeDrop*p.d.NominalV()) { // what it feeds has its own limits
		return
	}
	fin := ofWire(finding.Advice, wire)
	atMost(&fin, "lost at the rated current", 100*lostV/p.d.NominalV(), 100*mostChargeDrop, "%")
	p.say(fin, "between %s and the battery %s are lost at its rated %s, %s: the battery gets %s of the %s that it holds", part.Name, volts(lostV),
		rated(x.Type.RatingA), quantity.Format(lostV/p.d.NominalV(), quantity.Share), volts(x.HeldV()-lostV), volts(x.HeldV()))
}

// chargerStarved reports a charger that is pulled down at its input by what the cable to it loses.
func (p *Pass) chargerStarved(part *circuit.Part) {
	in := part.Converts()
	if in == nil || !p.d.Charging.RegulatedV.Given() || p.d.Charging.RegulatedV.Value < in.OfCharger().Type.StartsV {
		return
	}
	x := in.OfCharger()
	takes, inV, starved := p.ratedInput(x, in)
	feed, back := p.inputWay(in)
	_, wire := p.lostAlong(append(feed, back...), takes)
	if wire == nil {
		return
	}
	if !starved {
		p.inputDrop(part, wire, takes, p.d.Charging.RegulatedV.Value-inV)
		return
	}
	gives := takes * inV * x.Type.Efficiency / x.HeldV()
	fin := ofWire(finding.Advice, wire)
	fin.Why = "the battery is charged slower than the charger is bought for, and at less engine speed not at all"
	if x.Converts() {
		fin.Why = "what it feeds gets less than it is bought for"
	}
	fin.Change = "use a thicker or shorter cable to its input"
	atLeast(&fin, "current given", gives, x.Type.RatingA, "A")
	p.say(fin, "the cable to %s pulls its input from %s down to %s, below which it takes less: it gives %s of its rated %s", part.Name,
		volts(p.d.Charging.RegulatedV.Value), volts(x.Type.StopsV), amps(gives), rated(x.Type.RatingA))
}

// inputDrop reports what the cable to a charger loses of what feeds it, short of pulling it down: the engine slower, the battery
// low or the joints older, it starts later and gives less.
func (p *Pass) inputDrop(part *circuit.Part, wire *circuit.Wire, takes, lostV float64) {
	if part.Output().OfCharger().Converts() || !over(lostV, mostInputDrop*p.d.NominalV()) {
		return
	}
	fin := ofWire(finding.Advice, wire)
	fin.Why = "with the engine slower or the battery low it starts later and gives less than it is bought for"
	fin.Change = "use a thicker or shorter cable to its input"
	atMost(&fin, "lost at the rated current", 100*lostV/p.d.NominalV(), 100*mostInputDrop, "%")
	p.say(fin, "the cable to %s loses %s at the %s that it takes for its rated output, %s", part.Name, volts(lostV), amps(takes),
		against(mostInputDrop, quantity.Share)(lostV/p.d.NominalV()))
}

// mostInputDrop is what the cable to a charger's input may lose, fuses and contacts with it (our choice: a worked example of
// a maker of battery-to-battery chargers loses 3.2 % in the cable alone).
const mostInputDrop = 0.04

// mostChargeDrop is the share of the system voltage that the charging cable or a charger's wires may lose.
const mostChargeDrop = 0.02
