package rules

import (
	"fmt"
	"math"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/corner"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/ride"
)

var chargingDeficit = &Rule{
	Name:  "charging-deficit",
	Title: "the charging system does not keep up in a situation",
	Says:  "charging does not keep up",
	Doc: "For every situation with the engine running: the hot output at its speed less the vehicle's own " +
		"loads and the accessories, duty counted, at the regulated voltage; what the situation lists and is on for a while at a " +
		"time counts at least once in half an hour. The finding names the speed " +
		"from which the output is enough, and what the battery then gives and for how long: the posts " +
		"fall to its voltage, where loads that keep their power take more and others less. It goes by " +
		"the situation's name. Where only the demand as is likely exceeds the output, loads at the root of the " +
		"sum of the squares of their tolerances, it is advice, and so is a spare current below the design's " +
		"own limit, and a ride that never puts back what its starts take. Where the charging system's cable is open or blocked in a situation, " +
		"its output is 0 there, at any speed: always a fault.",
	Formula: "spare = output(speed)·(1 − hot derating) − vehicle − accessories; break-even: the lowest speed from idle up, on the " +
		"output between its points, at which spare is 0; the battery's current by " +
		"the solved network, each load at its average; hours by Peukert's law down to the start reserve",
	Limits: "spare ≥ 0, or `limits: {spare: …}`, and the battery gives nothing; on a ride, output less loads ≥ " +
		"starts · what one takes / charge efficiency",
	Why:    "the battery makes up the rest and is flat at the next start",
	Change: "run fewer loads in this situation, or keep the engine above its break-even speed",
	Severity: "fault at cruising speed and above, or when no speed covers it; advice below cruising " +
		"speed, where the nominal demand is covered, and where a further battery makes up all of it",
	Source: "arithmetic on the design's output curve; Peukert's law, battery monitor manuals (two " +
		"sources)",
	Bad: `
vehicle loads:
  machine: {power: 200 W, when: running}
`,
	Mended: []string{"power: 200 W", "power: 90 W"},
	Run: func(p *Pass) {
		if p.in.Budget == nil || !p.d.Charging.Present() {
			return
		}
		for _, l := range p.in.Budget.Lines {
			if l.Usable && l.Situation.EngineRPM > 0 {
				p.judgeBalance(l)
			}
		}
		for _, r := range p.ridden() {
			p.judgeStarts(r)
		}
	},
}

// spareNoiseA is what a spare current may be below the one asked for: the source
// that holds the posts in the reckoning is not quite stiff.
const spareNoiseA = 1e-3

// judgeBalance reports a situation that is short, or close to it.
func (p *Pass) judgeBalance(l *budget.Line) {
	v := p.held("charging balance", demandOf(l), figure.Larger, l.OutputA, l.OutputA, always(p.deficitSeverity(l)))
	if v.severity != 0 && v.by != corner.AtWorst || l.BatteryA > 0 {
		p.reportDeficit(l)
		return
	}
	f := p.ofSituation(finding.Advice, l)
	f.Leave = true
	least := p.d.Limits.SpareA
	switch what := p.balance(l) + amps(l.SpareA) + " to spare"; {
	case v.severity != 0:
		f.Change = "measure what the loads draw, or run the engine faster"
		atMost(&f, "likely demand", l.LikelyA, l.OutputA, "A")
		p.say(f, "%s at nominal; with the tolerances of the loads demand is likely to reach %s, %s short", what,
			amps(l.LikelyA), amps(l.LikelyA-l.OutputA))
	case least.Given() && l.SpareA < least.Value-spareNoiseA:
		atLeast(&f, "spare", l.SpareA, least.Value, "A")
		p.say(f, "%s, and the design asks for %s", what, amps(least.Value))
	}
}

// demandOf is what a situation asks for. Of the loads' tolerances it has the likely sum
// at worst: what one load takes more another takes less, and the battery evens it out.
func demandOf(l *budget.Line) measure {
	return func(by corner.Kind) cornered {
		return cornered{corner.Value{Nominal: l.OutputA - l.SpareA, Likely: l.LikelyA, Corner: l.LikelyA}, l.Situation, by}
	}
}

// deficitSeverity is advice where riding on at cruising speed covers the situation.
func (p *Pass) deficitSeverity(l *budget.Line) finding.Severity {
	cruise := p.d.Charging.CruiseRPM
	slow := cruise.Given() && l.Situation.EngineRPM < cruise.Value && l.BreakEvenRPM <= cruise.Value
	return graver(!slow, finding.Advice, finding.Fault)
}

// judgeStarts reports a ride on which the battery does not get back what the starts
// of the engine take. One that empties it is reported as such.
func (p *Pass) judgeStarts(r *ride.Result) {
	start := p.in.Budget.Start
	backAh := float64(r.Starts()) * p.in.Budget.StartBackAh
	if !math.IsNaN(r.EmptyS) || r.GivenUp || !(backAh > 0) || r.SpareAh() >= backAh {
		return
	}
	f := finding.Finding{Severity: finding.Advice, Part: r.Ride.Name, Ref: r.Ride.Name, Pos: r.Ride.Pos, Leave: true,
		Change: "run the engine longer or faster, or run fewer loads", Why: "each ride of this kind leaves the " +
			"battery a little lower, until it no longer starts the engine"}
	atLeast(&f, "to spare", r.SpareAh(), backAh, "Ah")
	each := amps(start.CurrentA) + " for " + quantity.Format(start.Seconds, quantity.Duration) + " each"
	if start.Assumed {
		each += ", assumed: " + start.Starter
	}
	left := quantity.Format(math.Abs(r.SpareAh()), quantity.Charge)
	if r.SpareAh() < 0 {
		left = "is itself " + left + " short"
	} else {
		left = "has " + left + " to spare"
	}
	p.say(f, "ride %s: it never puts back what %s (%s); that needs %s, and charging %s",
		r.Ride.Name, wording.Count(r.Starts(), "start takes", "starts take"), each,
		quantity.Format(backAh, quantity.Charge), left)
}

func (p *Pass) ofSituation(severity finding.Severity, l *budget.Line) finding.Finding {
	s := l.Situation
	return finding.Finding{Severity: severity, Part: s.Name, Ref: s.Name, Pos: p.situationPos(s), Situation: s.Name}
}

// balance words what is given and taken in a situation, up to what is left.
func (p *Pass) balance(l *budget.Line) string {
	return fmt.Sprintf("at %s charging gives %s, the vehicle takes %s, the accessories %s: ",
		quantity.Plain(l.Situation.EngineRPM, quantity.Speed), amps(l.OutputA), amps(l.VehicleA), amps(l.AccessoryA))
}

func (p *Pass) reportDeficit(l *budget.Line) {
	f := p.ofSituation(p.deficitSeverity(l), l)
	speed := "no engine speed covers it"
	switch {
	case l.CutOff:
		speed = "nothing from the engine reaches the battery"
		f.Change = "close or turn round what stands in the charging system's cable"
		f.Severity = finding.Fault
	case !math.IsNaN(l.BreakEvenRPM):
		speed = "charging keeps up from " + quantity.Format(l.BreakEvenRPM, quantity.Speed) + " on, hot"
	}
	if banksMakeUp(l) != "" && !l.CutOff { // what starts the engine stays full
		f.Severity = finding.Advice
		f.Why = "what hangs on that battery stops once it is flat"
	}
	f.What = p.balance(l) + short(l) + "; " + speed + "; " + batteryDoes(l)
	for _, x := range p.in.Budget.Further {
		f.What += "; what " + x.Charger.Name + " gives is not counted"
	}
	f.Short = fmt.Sprintf("%s wanted, charging gives %s; %s; %s", amps(l.VehicleA+l.AccessoryA), amps(l.OutputA),
		strings.TrimPrefix(speed, "charging "), restOf(l))
	atMost(&f, "demand", l.VehicleA+l.AccessoryA, l.OutputA, "A")
	f.Numbers = append(f.Numbers, finding.Number{Name: "break-even speed", Value: l.BreakEvenRPM, Unit: "rpm"},
		finding.Number{Name: "battery gives", Value: l.BatteryA, Unit: "A"},
		finding.Number{Name: "battery covers", Value: l.BatteryHours, Unit: "h"})
	p.report(f)
}

// short says by how much the demand at the regulated voltage exceeds the output.
func short(l *budget.Line) string {
	if l.SpareA < 0 {
		return amps(-l.SpareA) + " short"
	}
	return "enough at the regulated voltage, but not enough to reach it"
}

// batteryDoes says what a full battery does where the posts settle.
func batteryDoes(l *budget.Line) string {
	switch volts := quantity.Format(l.BusV, quantity.Voltage); {
	case banksMakeUp(l) != "":
		return "the battery holds " + volts + "; " + banksMakeUp(l)
	case l.BatteryA <= 0:
		return "the battery settles at " + volts + ", where it still takes " + amps(-l.BatteryA)
	case math.IsNaN(l.BatteryHours):
		return "the battery falls to " + volts + " and makes up " + amps(l.BatteryA)
	default:
		return "the battery falls to " + volts + " and makes up " + amps(l.BatteryA) + ", for " +
			quantity.Format(l.BatteryHours*3600, quantity.Duration) + " when full"
	}
}

// banksMakeUp says which further batteries make up what is short, while the first gives nothing; "" = none does.
func banksMakeUp(l *budget.Line) string {
	if l.BatteryA > 0 {
		return ""
	}
	var list []string
	for _, b := range l.Banks {
		if b.A > 0 {
			list = append(list, b.Bank.Name+" makes up "+amps(b.A)+" for "+quantity.Format(b.Hours*3600, quantity.Duration)+" when full")
		}
	}
	return strings.Join(list, ", ")
}

// restOf says in few words what the battery does.
func restOf(l *budget.Line) string {
	switch {
	case banksMakeUp(l) != "":
		return banksMakeUp(l)
	case l.BatteryA <= 0:
		return "the battery holds " + quantity.Format(l.BusV, quantity.Voltage)
	case math.IsNaN(l.BatteryHours):
		return "the battery makes up the rest"
	}
	return "a full battery makes up the rest for " + quantity.Format(l.BatteryHours*3600, quantity.Duration)
}

// situationPos is where the design says a situation, or for a derived one the
// charging section.
func (p *Pass) situationPos(s *design.Situation) problem.Pos {
	if s.Derived && p.d.Charging.Pos.Line != 0 {
		return p.d.Charging.Pos
	}
	return s.Pos
}
