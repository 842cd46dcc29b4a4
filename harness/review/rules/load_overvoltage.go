package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var loadOvervoltage = &Rule{
	Name:  "load-overvoltage",
	Title: "a load gets more than its maximum voltage",
	Says:  "too much voltage",
	Doc: "The highest voltage at each load's terminals over the situations in which it is on, in its worst case " +
		"(a regulator at the top of its tolerance) against its maximum voltage or, when none is given, at nominal against one " +
		"and a half times the voltage it is rated at: a part made for 12 V on a 24 V system. Overvoltage of a failed regulator " +
		"is not looked at here.",
	Formula:  "V load ≤ maximum voltage, or 1.5 × rated voltage",
	Limits:   "`maximum voltage` of the load; 1.5 × `rated at` without one (our choice)",
	Why:      "it ages fast or fails for good",
	Change:   "use a load rated for the charging voltage",
	Severity: "fault; danger for a critical load",
	Source:   "the load's own figure",
	Bad: `
loads:
  tail lamp: {power: 5 W, behaves: constant power, maximum voltage: 13.5 V, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"voltage: 13.5 V", "voltage: 16 V"},
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Load) {
			if l := accessory(part); l != nil && !(p.amongMotors(loadBranch(part)) && !l.Critical && !l.MaxV.Given()) {
				p.judgeHighest(part, l)
			}
		}
	},
}

// amongMotors tells of a motor in series with others that together are rated for the system voltage:
// series-uneven says that its share is not known.
func (f *facts) amongMotors(b *circuit.Branch) bool {
	if b == nil || b.Load.Behaves != design.Motor || len(motorsOf(b.String)) < 2 {
		return false
	}
	sum := 0.0
	for _, m := range motorsOf(b.String) {
		sum += m.Load.RatedV
	}
	return !over(f.c.NominalAt(b.String[0].A), sum)
}

// ratedMostShare is how far above its rated voltage a part that gives no maximum
// may be run: more than any regulator does, less than the next system voltage.
const ratedMostShare = 1.5

func (p *Pass) judgeHighest(part *circuit.Part, l *design.Load) {
	highest, severity := p.loadV(part, 1), always(graver(l.Critical, finding.Fault, finding.Danger))
	most, can := l.MaxV.Value, "its maximum is "+volts(l.MaxV.Value)
	v := p.held("maximum voltage", highest, figure.Larger, most, most, severity)
	if !l.MaxV.Given() {
		most, can = ratedMostShare*l.RatedV, "it is rated "+volts(l.RatedV)
		v = p.held("share of rated voltage", highest, figure.Larger, most, most, severity)
	}
	if v.severity == 0 || most <= 0 {
		return
	}
	fin := ofPart(v.severity, part)
	p.isOfOther(&fin, l)
	v.decides(&fin, "voltage", figure.Larger, 1, most, "V")
	p.say(fin, "voltage at %s: %s; %s", part.Name, v.split(func(x float64) string { return voltsOver(x, most) }), can)
}
