package rules

import (
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/charging"
	"fusewright/harness/review/finding"
)

var shuntSurplus = &Rule{
	Name:  "shunt-surplus",
	Title: "most of the stator's output is shorted",
	Says:  "shorts most of what the stator gives",
	Doc: "What a shunt regulator has to short in a situation with the engine running: the hot output at its speed less what is drawn, the battery full. The " +
		"winding carries its full current whatever is on. A load that goes, such as filament lamps for LED, adds what it drew to what is shorted: the " +
		"regulator gets warmer, and the stator no cooler. The situation with the most to short is reported.",
	Formula:  "shorted = hot output − demand; heat in the regulator = shorted × volts of the shunt",
	Limits:   "half of the output (our choice)",
	Why:      "regulator and stator run hot all the time, and fail the sooner",
	Change:   "keep the regulator in moving air and its connector sound; a series regulator makes no more than is used",
	Severity: "advice",
	Source:   "0.9 to 1.0 of the full current in the winding at no load, some 1.2 V in the shunt: from memory",
	Bad: `
charging: {regulated: 14.3 V, output: {1300 rpm: 14 A, 3000 rpm: 24 A, 6000 rpm: 28 A}, idle: 1300 rpm, cruise: 4000 rpm, hot derating: 0 %, kind: stator with shunt regulator}
`,
	Mended: []string{"with shunt", "with series"},
	Run: func(p *Pass) {
		if p.in.Budget == nil {
			return
		}
		most := p.in.Budget.MostShorted(p.d)
		if most == nil || !over(most.SpareA, mostShorted*most.OutputA) {
			return
		}
		fin := p.ofSituation(finding.Advice, most)
		fin.Leave = true
		atMost(&fin, "shorted share", 100*most.SpareA/most.OutputA, 100*mostShorted, "%")
		p.say(fin, "the regulator shorts %s of the stator's %s, and turns %s into heat; with less on it shorts more", amps(most.SpareA), amps(most.OutputA),
			quantity.Format(charging.ShuntW(&p.d.Charging, most.SpareA), quantity.Power))
	},
}

// mostShorted is the share of the output that may be shorted before it is said.
const mostShorted = 0.5
