package rules

import (
	"fmt"
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var loadUndervoltage = &Rule{
	Name:  "load-undervoltage",
	Title: "a load gets less than its minimum voltage",
	Says:  "too little voltage",
	Doc: "For every load with a minimum voltage, from the design or the library, or without one rated for a higher system voltage: the lowest voltage at " +
		"its terminals over the situations in which it is on, at nominal values and in its worst case " +
		"(battery down to its reserve for starting); the worst case decides. A motor, heater or lamp with a resistor in series, or on through a dropping resistor, which keeps half of its " +
		"share or more, a motor a third, is not held against the library's minimum unless it is critical: it is meant to go slower. While the engine is started the starter alone is judged: what else is on is resets-at-start's. Where the volts go between battery and load is said with it.",
	Formula:  "V load ≥ minimum voltage",
	Limits:   "`minimum voltage` of the load; two thirds of `rated at` without one, where that is 1.5 × the system's or more (our choice)",
	Why:      "below it electronics reset, drivers flicker and relays drop out",
	Change:   "use a thicker feed and return, or do not use it with the engine stopped",
	Severity: "fault; danger for a critical load",
	Source:   "the load's own figure",
	Mend:     MendLowest,
	Bad: `
loads:
  tail lamp: {power: 5 W, behaves: constant power, minimum voltage: 13 V, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"voltage: 13 V", "voltage: 10 V"},
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Load) {
			least := minimumV(part)
			if l := accessory(part); least == 0 && l != nil && l.RatedV >= ratedMostShare*p.d.NominalOf(l) {
				least = l.RatedV / ratedMostShare
			}
			if least > 0 && !p.slowed(part) {
				p.judgeLowest(part, least)
			}
		}
	},
}

// slowed tells of a motor or lamp that a resistor in series is there to hold back, and that
// keeps enough to work: the library's minimum is that of the part by itself. One that the design
// gives holds, and so does that of a critical load.
func (p *Pass) slowed(part *circuit.Part) bool {
	b := loadBranch(part)
	if !mayGoSlower(b) || !drops(others(b.String, b)) {
		return false
	}
	_, least, in, _ := p.seriesShares(b, b.String)
	return in != nil && !over(workingShare(b), least)
}

func mayGoSlower(b *circuit.Branch) bool {
	return b != nil && !b.Load.Load.Critical && b.Load.Load.MinV.Pos.Line == 0 && b.Load.Behaves != design.ConstantPower
}

// heldBack tells the same of a dropping resistor, through which a load is on at an operating point and
// past which it may be at another.
func (p *Pass) heldBack(s *solve.Solution, b *circuit.Branch) bool {
	return mayGoSlower(b) && s.HeldV(b) > heldShare*s.LoadV(b) && !over(workingShare(b), shareOf(s, b, b.Load.RatedV/p.c.NominalAt(b.A)))
}

// heldShare is the share of a load's volts from which a resistor before it is no mere joint (our choice).
const heldShare = 0.05

func (p *Pass) judgeLowest(part *circuit.Part, least float64) {
	free := func(s *solve.Solution) bool {
		return !p.heldBack(s, loadBranch(part)) && (!s.Situation.Cranks() || accessory(part).Starts())
	}
	v := p.held("minimum voltage", p.loadVIn(part, -1, free), figure.Smaller, least, least,
		always(graver(accessory(part).Critical, finding.Fault, finding.Danger)))
	if v.severity == 0 {
		return
	}
	fin := ofPart(v.severity, part)
	p.isOfOther(&fin, accessory(part))
	v.decides(&fin, "voltage", figure.Smaller, 1, least, "V")
	b := loadBranch(part)
	if s := p.solutionOf(v.in); len(b.String) > 0 || s != nil && s.HeldV(b) > 0 {
		fin.Change = "take less resistance in series with it, or feed it by itself"
	}
	starts := accessory(part).Starts()
	if starts {
		fin.Change = "fit a battery of less resistance and keep it charged, or thicker cables to the starter and back"
	}
	fin.Unsourced = p.unsourcedDrop(p.lossFor(part, v.cornered), false, p.worstDrop(b)(v.by).decisive()*p.c.NominalAt(b.A), v.decisive()-least)
	p.say(fin, "voltage at %s: %s; it needs %s%s", part.Name, v.split(volts), volts(least), p.whereLow(part, v.in))
	if starts {
		p.standsAside(nil, starterDoesNotTurn)
	}
}

// whereLow says what is left at the battery's posts, and where the rest goes, at nominal.
func (p *Pass) whereLow(part *circuit.Part, in *design.Situation) string {
	s := p.solutionOf(in)
	if s == nil {
		return ""
	}
	at := "the battery posts"
	if x := p.c.ConverterOf(loadBranch(part).A); x != nil {
		at = "the output of " + x.Name
	}
	b := loadBranch(part)
	text := fmt.Sprintf("; then %s at %s, at nominal", volts(s.PostsV(b)), at)
	for _, x := range others(b.String, b) {
		text += fmt.Sprintf("; %s, in series with it, takes %s", x.Part.Name, volts(math.Abs(s.Volts(x))))
	}
	if held := s.HeldV(b); held > 0 {
		text += fmt.Sprintf("; the resistor before it takes %s", volts(held))
	}
	if l := p.lossOf(part, b, in); l != nil && l.whole > 0 {
		text += l.text()
	}
	return text
}

// minimumV is the voltage a load needs; zero of what is no accessory.
func minimumV(part *circuit.Part) float64 {
	if l := accessory(part); l != nil {
		return l.NeedsV()
	}
	return 0
}

// loadV is the voltage of a load that is on, the least (sign -1) or the highest
// (sign 1) being the worst.
func (f *facts) loadV(part *circuit.Part, sign float64) measure {
	return f.loadVIn(part, sign, func(*solve.Solution) bool { return true })
}

// loadVIn is loadV at some operating points alone.
func (f *facts) loadVIn(part *circuit.Part, sign float64, in func(*solve.Solution) bool) measure {
	b := loadBranch(part)
	return f.figureOf(sign, func(s *solve.Solution) bool { return b != nil && s.LoadOn[b.Index] && in(s) }, func(s *solve.Solution) float64 {
		if v := s.LoadV(b); !math.IsNaN(v) {
			return v
		}
		return 0 // no closed path leads to it
	})
}
