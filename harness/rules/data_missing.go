package rules

import (
	"fmt"
	"math"

	"fusewright/harness/circuit"
	"fusewright/harness/design"
	"fusewright/harness/finding"
	"fusewright/harness/fusing"
	"fusewright/harness/problem"
)

var dataMissing = &Rule{
	Name:  "data-missing",
	Title: "a number the review needs is not given",
	Doc: "What other rules had to leave out or assume: the battery's internal resistance, the ambient of " +
		"a place that wires or parts stand in, whether a tap is supervised and what it has to spare " +
		"when something draws from it, whether a coil is suppressed, the limit of a switch, a block or a " +
		"shared ground, " +
		"opening times or inrush figures that the library does not hold. One finding a gap.",
	Formula:  "none",
	Limits:   "none",
	Why:      "a check made on an assumed number proves nothing, and one left out even less",
	Change:   "measure or look it up and write it into the design",
	Severity: "advice",
	Source:   "common practice, no source",
	Bad: `
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, at: battery tray}
`,
	Good: `
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 12 mΩ, at: battery tray}
`,
	Run: func(p *Pass) {
		if b := p.d.Battery; !b.ResistanceOhm.Given() {
			p.reportMissing("battery", b.Pos, "the battery's internal resistance is not given; "+
				p.assumedResistance()+" is taken")
		}
		p.missingAmbients()
		for _, part := range p.c.Parts {
			p.missingOf(part)
		}
		p.missingTimes()
	},
}

func (p *Pass) reportMissing(part string, pos problem.Pos, what string) {
	p.report(finding.Finding{Severity: finding.Advice, Part: part, Ref: part, Pos: pos, What: what})
}

func (p *Pass) assumedResistance() string {
	if p.battery == nil {
		return "a usual value"
	}
	return fmt.Sprintf("%.3g mΩ", p.battery.Ohm*1000)
}

// missingAmbients reports places without an ambient in which a part stands or
// at which a wire ends.
func (p *Pass) missingAmbients() {
	used := map[*design.Place]bool{}
	for _, part := range p.c.Parts {
		if part.Place != nil {
			used[part.Place] = true
		}
	}
	for _, place := range p.d.Places {
		if used[place] && !place.AmbientC.Given() {
			p.reportMissing(place.Name, place.Pos, fmt.Sprintf("the ambient of %s is not given; %s is taken",
				place.Name, celsius(circuit.DefaultAmbientC)))
		}
	}
}

// missingOf reports the gaps of one part.
func (p *Pass) missingOf(part *circuit.Part) {
	say := func(format string, args ...any) {
		p.report(finding.Finding{Severity: finding.Advice, Part: part.Name, Ref: part.Ref, Pos: part.Pos,
			What: fmt.Sprintf(format, args...)})
	}
	switch s := part.Source.(type) {
	case *design.Tap:
		if len(p.drawsBelow(part.Terminals[0].Node)) == 0 {
			return
		}
		if !s.SpareA.Given() {
			say("what %s has to spare is not given, and %s is drawn from it", s.Name, amps(p.tapWorst(part).A))
		}
		if !s.SupervisedGiven {
			say("whether a module supervises %s is not said", s.Name)
		}
	case *design.Relay:
		if s.Coil.Suppressed == "" {
			say("how the coil of %s is suppressed is not said", s.Name)
		}
	case *design.Switch:
		if s.Type == nil && !s.RatingA.Given() {
			say("neither type nor rating of %s is given", s.Name)
		}
	case *design.Block:
		if wayLimit(s) <= 0 || totalLimit(s) <= 0 {
			say("the way limit or total limit of %s is not given", s.Name)
		}
	case *design.Ground:
		if n := returnsTo(part); n > 1 && !s.LimitA.Given() {
			say("what %s may carry is not given, and %d returns meet there", s.Name, n)
		}
	}
}

// returnsTo is how many wires bring current back to a ground.
func returnsTo(part *circuit.Part) int {
	n := 0
	for _, t := range part.Terminals {
		n += len(wiresTo(t))
	}
	return n
}

// missingTimes reports fuse types that have no fast edge although a load with
// a starting current hangs on one.
func (p *Pass) missingTimes() {
	for _, part := range p.partsOf(circuit.Load) {
		fuse := p.fuseAbove(part)
		if fuse == nil {
			continue
		}
		l := accessory(part)
		c := fusing.Carries(device(fuse), p.ratedDrawA(loadBranch(part)), l.Inrush)
		if c.EdgeKnown || !math.IsNaN(c.MeltShare) {
			continue
		}
		f := ofFuse(finding.Advice, fuse)
		f.Cause = "times of " + fuse.Fuse.Type.Name
		f.What = fmt.Sprintf("whether %s bears the start of %s is not known: %s",
			fuseText(fuse), part.Name, c.Note)
		p.report(f)
	}
}
