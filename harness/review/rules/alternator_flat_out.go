package rules

import (
	"fmt"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

// flatOutHours is how long a charging system may give all it has: a winding is as hot as it gets within half an hour or
// so (common practice, no source).
const flatOutHours = 0.5

// flatOutShare of its hot output is flat out: a battery that takes nearly all, since it has some resistance, spares the windings nothing (our choice).
const flatOutShare = 0.9

var alternatorFlatOut = &Rule{
	Name:  "alternator-flat-out",
	Title: "a further battery keeps the charging system at its full output",
	Says:  "keeps the charging system flat out",
	Doc: "Of each further battery of a chemistry with a protection of its own, lithium, that is charged over a link and not through a DC-DC charger: the situations with the engine running, solved with the " +
		"battery half full. Where the system gives nine tenths or more of all it has, hot, the time in which the other half would be full is said. A lead battery takes so much for minutes only. " +
		"A stator with a shunt regulator is silent too: its winding carries its full current whatever is on.",
	Formula:  "half the capacity / current into it ≤ 0.5 h, while 90 % of the output or more is used",
	Limits:   "half an hour, and nine tenths: our choice",
	Why:      "lithium takes what it is given until it is full: the alternator runs at its full output, at idle with little air, and its windings and rectifier fail of the heat",
	Change:   "charge it through a DC-DC charger, or limit the current otherwise",
	Severity: "advice",
	Source:   "common practice, no source",
	Bad: strings.NewReplacer("14 Ah", "60 Ah", "12 mΩ", "20 mΩ", "20 A", "40 A", "4 mm²", "6 mm²", "voltage-sensing relay", "mini make", "coil: {returns", "coil: {fed by: lamp fuse, wire: {size: 1 mm²}, suppressed by: resistor, returns").
		Replace(relayLink("LiFePO4", "20 A", "")),
	Mended: []string{"capacity: 60 Ah", "capacity: 16 Ah"},
	Run: func(p *Pass) {
		if kind := p.d.Charging.Kind; kind != nil && kind.ShuntV > 0 {
			return
		}
		for part, bank := range each[*design.Bank](p.facts) {
			p.judgeFlatOut(part, bank)
		}
	},
}

// judgeFlatOut reports the situation in which a battery would keep the charging system at its full output longest.
func (p *Pass) judgeFlatOut(part *circuit.Part, bank *design.Bank) {
	store := battery.New(&bank.Store, p.d.NominalV())
	if store == nil || bank.Store.Chemistry == nil || !(bank.Store.Chemistry.HouseAh > 0) {
		return
	}
	var longest *solve.Solution
	hours, into := 0.0, 0.0
	for _, s := range p.usable {
		if !p.engineCharges(s) {
			continue
		}
		full := s.Again(solve.Options{Rush: true, Changes: p.heldClosed(s), BankCharge: map[*design.Bank]float64{bank: halfCharge}})
		if full.Status != solve.Converged || over(flatOutShare*full.ChargingLimitA, full.ChargingA) {
			continue
		}
		taken := p.fromEngineA(full, part.Terminal("+").Node)
		if h := (1 - halfCharge) * store.CapacityAh() / taken; taken > leastChargeA && h > hours {
			longest, hours, into = full, h, taken
		}
	}
	if longest == nil || !over(hours, flatOutHours) {
		return
	}
	fin := ofPart(finding.Advice, part)
	fin.Situation, fin.Leave = longest.Situation.Name, true
	atMost(&fin, "time at full output", hours, flatOutHours, "h")
	gives := "all its " + amps(longest.ChargingA)
	if !longest.Limited {
		gives = fmt.Sprintf("%s of its %s", amps(longest.ChargingA), amps(longest.ChargingLimitA))
	}
	p.say(fin, "in %q the charging system gives %s hot, of which half-full %s takes %s: %s until it is full", longest.Situation.Name,
		gives, part.Name, amps(into), duration(hours*3600))
}
