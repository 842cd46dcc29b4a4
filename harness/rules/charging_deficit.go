package rules

import (
	"fmt"
	"math"

	"fusewright/harness/budget"
	"fusewright/harness/design"
	"fusewright/harness/finding"
	"fusewright/harness/problem"
	"fusewright/harness/quantity"
)

var chargingDeficit = &Rule{
	Name:  "charging-deficit",
	Title: "the charging system does not cover a situation",
	Doc: "For every situation with the engine running: the hot output at its speed less the vehicle's own " +
		"loads and the accessories, duty counted, at the regulated voltage. The finding names the speed " +
		"from which the output suffices and how long the battery makes up the rest. It goes by the " +
		"situation's name.",
	Formula: "spare = output(speed)·(1 − hot derating) − vehicle − accessories; hours by Peukert's " +
		"law down to the start reserve",
	Limits: "spare ≥ 0",
	Why:    "the battery makes up the rest and is found empty at the next start",
	Change: "run fewer loads in this situation, or keep the engine above the break-even speed",
	Severity: "fault at cruising speed and above, or when no speed covers it; advice below cruising " +
		"speed",
	Source: "arithmetic on the design's output curve; Peukert's law, battery monitor manuals (two " +
		"sources)",
	Bad: `
vehicle loads:
  machine: {power: 200 W, when: running}
`,
	Good: `
vehicle loads:
  machine: {power: 90 W, when: running}
`,
	Run: func(p *Pass) {
		if p.in.Budget == nil || !p.d.Charging.Present() {
			return
		}
		for _, l := range p.in.Budget.Lines {
			if l.Usable && l.Situation.EngineRPM > 0 && l.SpareA < 0 {
				p.reportDeficit(l)
			}
		}
	},
}

func (p *Pass) reportDeficit(l *budget.Line) {
	s := l.Situation
	severity := finding.Fault
	if cruise := p.d.Charging.CruiseRPM; cruise.Given() && s.EngineRPM < cruise.Value &&
		l.BreakEvenRPM <= cruise.Value {
		severity = finding.Advice
	}
	f := finding.Finding{Severity: severity, Part: s.Name, Ref: s.Name, Pos: p.situationPos(s), Situation: s.Name}
	f.What = fmt.Sprintf("at %s the charging system gives %s, the vehicle takes %s and the accessories %s: %s short",
		quantity.Plain(s.EngineRPM, quantity.Speed), amps(l.OutputA), amps(l.VehicleA), amps(l.AccessoryA), amps(-l.SpareA))
	if math.IsNaN(l.BreakEvenRPM) {
		f.What += "; no engine speed covers it"
	} else {
		f.What += "; it breaks even at " + quantity.Format(l.BreakEvenRPM, quantity.Speed)
	}
	if !math.IsNaN(l.BatteryHours) {
		f.What += "; a full battery makes it up for " + quantity.Format(l.BatteryHours*3600, quantity.Duration)
	}
	atMost(&f, "demand", l.VehicleA+l.AccessoryA, l.OutputA, "A")
	f.Numbers = append(f.Numbers, finding.Number{Name: "break-even speed", Value: l.BreakEvenRPM, Unit: "rpm"},
		finding.Number{Name: "battery covers", Value: l.BatteryHours, Unit: "h"})
	p.report(f)
}

// situationPos is where the design says a situation, or for a derived one the
// charging section.
func (p *Pass) situationPos(s *design.Situation) problem.Pos {
	if s.Derived && p.d.Charging.Pos.Line != 0 {
		return p.d.Charging.Pos
	}
	return s.Pos
}
