package rules

import (
	"fmt"
	"slices"

	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/cranking"
)

var starterDoesNotTurn = &Rule{
	Name:  "starter-does-not-turn",
	Title: "the battery cannot turn the starter, or not well",
	Says:  "does not start the engine well",
	Doc: "What a full battery leaves while the starter draws its current, the first moment left out: at the starter, of the library's at the posts, against what it needs, in mild " +
		"air and in the cold; and at the posts against what a sound start leaves in mild air. A design without a starter is judged with the one that its charging names, " +
		"else with the library's that suits the vehicle and its battery; where a new battery of this size would not start well with that either, the starter is likely a smaller one. " +
		"A battery run down is in the study.",
	Formula: "V posts = V at rest − I starter · R battery, less what else is on; a starter below a fifth of its voltage stands and is a resistance",
	Limits: "what the starter needs, the design's or the library's, 7 V of 12 V without (from memory); 9.5 V of 12 V at the posts in mild air; mild is 20 °C, cold 0 °C (our choice); more current in " +
		"the cold by the same manual as the 9.5 V",
	Why:    "the engine does not start: whoever is out with it is stranded",
	Change: "charge the battery and measure its resistance; fit one that is rated for the starter's current; where the starter is another one, write which",
	Severity: "fault where the starter gets too little in mild air; advice below a sound start, where only a cold start of a starter that is known fails, and where the starter is " +
		"assumed and no battery of this size would do",
	Named:  true,
	Source: "sound start and current in the cold: car service manual of 1998, 1.9 l engine (one source); Ohm's law; currents of starters: library",
	Bad: `
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 130 mΩ, at: battery tray}
`,
	Mended: []string{"resistance: 130 mΩ", "resistance: 12 mΩ"},
	Run: func(p *Pass) {
		s := p.in.Cranking
		if s == nil || len(s.Cases) == 0 || p.battery == nil {
			return
		}
		mild, cold := &s.Cases[0], &s.Cases[min(1, len(s.Cases)-1)]
		switch {
		case !mild.Turns():
			p.reportStart(graver(s.Suits, finding.Advice, finding.Fault), mild, "voltage at the starter", mild.StarterV, mild.NeedsV)
		case s.Suits && over(s.LeastV, mild.PostsV):
			p.reportStart(finding.Advice, mild, "voltage at the posts", mild.PostsV, s.LeastV)
		case !s.Start.Assumed && !cold.Turns():
			p.reportStart(finding.Advice, cold, "voltage at the starter", cold.StarterV, cold.NeedsV)
		}
	},
}

// reportStart reports what is too low of a start, against its limit.
func (p *Pass) reportStart(severity finding.Severity, k *cranking.Case, what string, gets, limit float64) {
	start := p.in.Cranking.Start
	fin := ofPart(severity, p.battery.Part)
	says := "does not turn the engine"
	if k.Turns() {
		says = "turns the engine poorly"
	}
	if k != &p.in.Cranking.Cases[0] {
		says += " in the cold, " + quantity.Plain(k.CelsiusC, quantity.Temperature)
	}
	atLeast(&fin, what, gets, limit, "V")
	drawn := "draws " + amps(k.CurrentA)
	if over(k.CurrentA, k.FlowsA) {
		drawn = "stands and draws " + amps(k.FlowsA)
	}
	value, least := quantity.Against(gets, limit, quantity.Voltage)
	at, needs := "the posts", "it needs "+least
	switch {
	case k.Turns():
		needs = "a sound start leaves " + least
	case start.Own:
		at = "the starter"
	}
	text := fmt.Sprintf("the battery %s: %s %s, which leaves %s of the full battery, of %s inside, %s; %s", says, starterName(start), drawn,
		at, quantity.Format(p.battery.Ohm, quantity.Resistance), value, needs)
	if i := slices.IndexFunc(k.Drops, p.beforeStarter); i >= 0 {
		text += "; " + k.Drops[i].Name + " lets go meanwhile, and the starter with it"
	}
	if k.HeldV > k.PostsV {
		var relays []string
		for _, x := range p.in.Cranking.Relays() {
			relays = append(relays, x.Name)
		}
		text += fmt.Sprintf("; with %s still closed the posts have %s", wording.And(relays), volts(k.HeldV))
	}
	p.say(fin, "%s", text)
}

// beforeStarter tells of a relay that the design's own starter is fed through.
func (p *Pass) beforeStarter(relay *circuit.Part) bool {
	for _, part := range p.partsOf(circuit.Load) {
		if b := loadBranch(part); b != nil && b.Load.Load != nil && b.Load.Load.Starts() {
			if slices.ContainsFunc(p.c.NeededBy(b), func(x *circuit.Branch) bool { return x.Part == relay }) {
				return true
			}
		}
	}
	return false
}

// starterName is a starter in a sentence.
func starterName(s battery.Start) string {
	if s.Assumed {
		return s.Starter + ", the usual one for such a battery,"
	}
	return s.Starter
}
