package rules

import (
	"fmt"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var loadNeverOn = &Rule{
	Name:  "load-never-on",
	Title: "a load is on in no situation",
	Says:  "on in no situation",
	Doc: "Every check of currents, voltages and heat is made in the situations of the design. A load that draws " +
		"in none of them was not checked at all, nor were its wires, switch and fuse. That a situation lists a " +
		"load as on proves nothing when its feed is dead there, or the situation has no solution. The same of a charger whose source, " +
		"the sun, the shore or the running engine, is there in no situation.",
	Formula:  "none",
	Limits:   "none",
	Why:      "silence about this load would pass for a clean check",
	Change:   "add the load to the situation in which it is used most heavily with others",
	Severity: "advice; fault when a situation lists it as on and it gets nothing",
	Source:   "common practice, no source",
	Named:    true,
	Bad: `
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  work lamp: {power: 5 W, behaves: resistor, own switch: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
situations:
  night: {engine: cruise, on: [tail lamp]}
`,
	Mended: []string{"on: [tail lamp", "on: [tail lamp, work lamp"},
	Run: func(p *Pass) {
		able := p.live(anything, nil)
		for _, part := range p.partsOf(circuit.Load) {
			b := loadBranch(part)
			if b == nil || !able.nodes[b.A.Index] || !p.cold[b.B.Index] || p.draws(b) || onOneHalf(b) || p.amongConverters(b) {
				continue
			}
			p.reportNeverOn(part, b, p.listedOn(b))
		}
		for part, x := range each[*design.Charger](p.facts) {
			p.judgeSourceless(part, x)
		}
	},
}

// judgeSourceless asks about a charger whose source gives in no situation.
func (p *Pass) judgeSourceless(part *circuit.Part, x *design.Charger) {
	if x.Converts() || slices.ContainsFunc(p.usable, func(s *solve.Solution) bool { return p.couldCharge(x, s) }) {
		return
	}
	source := "`sun`"
	switch {
	case x.FromBattery():
		source = "a running engine"
	case x.PanelW.Value == 0:
		source = "`shore`"
	}
	p.say(ofPart(finding.Advice, part), "%s: no situation has %s, so what it charges was not checked; its wires and fuses were, at its rated current", part.Name, source)
}

func (p *Pass) reportNeverOn(part *circuit.Part, b *circuit.Branch, listed string) {
	fin := ofPart(finding.Advice, part)
	fin.What = fmt.Sprintf("%s: on in no situation, so current, voltage and fuse were not checked", part.Name)
	if listed != "" {
		fin.Severity = finding.Fault
		fin.What = fmt.Sprintf("%s: listed as on in %q but without power there, so current, voltage and fuse were not checked",
			part.Name, listed)
		fin.Change = "list it in a situation in which its feed is live: the tap hot, the switches and relays on the way closed"
		if in, held := p.mostHeld(b); in != nil {
			fin.What = fmt.Sprintf("%s: listed as on in %q, where the resistor before it takes %s: it does not run on what is left, so current, voltage and fuse were not checked",
				part.Name, in.Name, volts(held))
			fin.Change = "take less resistance in series with it, or feed it by itself"
		}
	}
	p.report(fin)
	p.standsAside(nil, situationUnsolved, relayCoilVoltage, relayNeverEnergised, fedByNothing)
}

// mostHeld is where resistors take the most of the volts for a load that is listed as on and does not run on
// the rest; nil = its feed is dead wherever it is listed.
func (f *facts) mostHeld(b *circuit.Branch) (in *design.Situation, most float64) {
	for _, s := range f.usable {
		if held := s.HeldV(b); lists(s.Situation, b.Load.Load) && held > most && over(held, s.PostsV(b)/2) {
			in, most = s.Situation, held
		}
	}
	return in, most
}

// draws tells whether a load draws in any situation that has a solution.
func (f *facts) draws(b *circuit.Branch) bool {
	return slices.ContainsFunc(f.usable, func(s *solve.Solution) bool { return s.LoadOn[b.Index] })
}

// listedOn names the situation, of several the first by name, that lists a load as
// on; "" for none.
func (f *facts) listedOn(b *circuit.Branch) (first string) {
	for _, s := range f.in.Solutions {
		if name := s.Situation.Name; lists(s.Situation, b.Load.Load) && (first == "" || name < first) {
			first = name
		}
	}
	return first
}
